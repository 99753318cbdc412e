import type { KeptCloth } from '../../formats/shortlist.js';
import { didYouMean, Problem } from '../../problem.js';
import { INCH, type Per, sayShare } from '../../words/measure.js';
import type { Result } from './results-form.js';

/** A figure that results show, and the codes of the cloths in which it was found. */
interface Finding {
  readonly value: number;
  readonly codes: readonly string[];
}

/** The figures that results give for one cloth; a figure is absent if no result gives it. */
export interface Learnt {
  /** Share of the width in the reed that is lost to draw-in. */
  readonly drawIn?: Finding;
  /** Share of the warp used that is lost to take-up. */
  readonly takeUp?: Finding;
  /** Share of the length off the loom that is lost in finishing. */
  readonly shrinkage?: Finding;
  /** Picks per millimetre. */
  readonly picks?: Finding;
}

/** The fields by which results are matched to a cloth. */
export type Which = Pick<KeptCloth, 'code' | 'structure'>;

/** One result that gives some figure, with the structure of its cloth. */
interface Witness extends Omit<Result, 'picks'> {
  readonly structure: string;
  /** Picks per millimetre. */
  readonly picks?: number;
}

const LENGTHS: Readonly<Record<Per, number>> = { inch: INCH, cm: 10 };

/**
 * Matches results to the cloths of a shortlist. Each figure comes from results of the cloth itself, else from results
 * of its structure, else it is absent. Results of a cloth that is not on the list count for the structure that they
 * name.
 *
 * @param file, list names of the results and of the shortlist, for messages
 * @throws Problem if no result gives a figure, or if a result's cloth and structure are both unknown
 */
export function learntBy(
  results: readonly Result[],
  kept: readonly KeptCloth[],
  file: string,
  list: string,
): (cloth: Which) => Learnt {
  const witnesses = results.map((result) => witnessOf(result, kept, file, list));
  const of = (is: (witness: Witness) => boolean): Learnt => findingsOf(witnesses.filter(is));
  const all = of(() => true);
  if (Object.keys(all).length === 0) {
    throw new Problem(
      `${file}: found nothing filled in that a plan can use; expected picks, width with in the reed, warp used with ` +
        'off the loom, or off the loom with finished, for at least one cloth',
    );
  }
  const learnt = (cloth: Which): Learnt => ({
    ...of(({ structure }) => structure === cloth.structure),
    ...of(({ code }) => code === cloth.code),
  });
  if (kept.every((cloth) => Object.keys(learnt(cloth)).length === 0)) {
    const found = [...new Set(witnesses.map(({ structure }) => structure))].join(', ');
    const wanted = [...new Set(kept.map(({ structure }) => structure))].join(', ');
    throw new Problem(`${file}: found results for ${found} alone; expected one for a structure of ${list}: ${wanted}`);
  }
  return learnt;
}

/** The figures in words, `18 picks per inch and take-up 8 % (found in this cloth)`; empty if there are none. */
export function learntWords(learnt: Learnt, cloth: Which, per: Per): string[] {
  const said = [
    [learnt.picks, (picks: number) => `${rounded(picks, per)} picks per ${per}`],
    [learnt.drawIn, (drawIn: number) => `draw-in ${sayShare(drawIn)}`],
    [learnt.takeUp, (takeUp: number) => `take-up ${sayShare(takeUp)}`],
    [learnt.shrinkage, (shrinkage: number) => `shrinkage ${sayShare(shrinkage)}`],
  ] as const;
  const bySource = new Map<string, string[]>();
  for (const [finding, say] of said) {
    if (finding === undefined) continue;
    const own = finding.codes.includes(cloth.code);
    const source = own ? 'found in this cloth' : `found in ${cloth.structure}: ${finding.codes.join(' ')}`;
    bySource.set(source, [...(bySource.get(source) ?? []), say(finding.value)]);
  }
  return [...bySource].map(([source, figures]) => `${figures.join(', ')} (${source})`);
}

/** Picks per inch or per centimetre, to a hundredth. */
export function picksPer({ value }: Finding, per: Per): number {
  return rounded(value, per);
}

function rounded(picks: number, per: Per): number {
  return Math.round(picks * LENGTHS[per] * 100) / 100;
}

function witnessOf(result: Result, kept: readonly KeptCloth[], file: string, list: string): Witness {
  const { code, picks: counted, ...rest } = result;
  const cloth = kept.find((each) => each.code === code);
  const structure = cloth?.structure ?? result.structure;
  if (structure === undefined) {
    const known = kept.map((each) => each.code);
    throw new Problem(
      `${file}: found ${code}, which is not in ${list}${didYouMean(code, known)}; expected a code of that list, or the ` +
        'structure beside it',
    );
  }
  const per = result.per ?? cloth?.draft.sett.per;
  if (counted !== undefined && per === undefined) {
    throw new Problem(`${file}: ${code}: found ${counted} picks; expected their measure too, as ${counted} per inch`);
  }
  const picks = counted === undefined ? {} : { picks: counted / LENGTHS[per!] };
  return { ...rest, code, structure, ...picks };
}

/**
 * Computes draw-in = 1 − width on the loom / width in the reed, take-up = 1 − off loom / warp used and shrinkage =
 * 1 − finished / off loom from the sums of all lengths, so that large pieces count for more; picks are averaged.
 */
function findingsOf(witnesses: readonly Witness[]): Learnt {
  const loss = (
    whole: 'inReed' | 'warpUsed' | 'offLoom',
    left: 'width' | 'offLoom' | 'finished',
  ): Finding | undefined => {
    const both = witnesses.filter((witness) => witness[whole] !== undefined && witness[left] !== undefined);
    const sum = (key: typeof whole | typeof left): number => both.reduce((total, witness) => total + witness[key]!, 0);
    return both.length === 0 ? undefined : { value: 1 - sum(left) / sum(whole), codes: codesOf(both) };
  };
  const counted = witnesses.filter(({ picks }) => picks !== undefined);
  const drawIn = loss('inReed', 'width');
  const takeUp = loss('warpUsed', 'offLoom');
  const shrinkage = loss('offLoom', 'finished');
  const picks = counted.reduce((sum, witness) => sum + witness.picks!, 0) / counted.length;
  return {
    ...(drawIn !== undefined && { drawIn }),
    ...(takeUp !== undefined && { takeUp }),
    ...(shrinkage !== undefined && { shrinkage }),
    ...(counted.length > 0 && { picks: { value: picks, codes: codesOf(counted) } }),
  };
}

function codesOf(witnesses: readonly Witness[]): string[] {
  return [...new Set(witnesses.map(({ code }) => code))];
}
