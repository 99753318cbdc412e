import type { Sett } from '../../draft/draft.js';
import type { KeptCloth } from '../../formats/shortlist.js';
import { didYouMean, Problem } from '../../problem.js';
import { counted } from '../../words/counts.js';
import { MEASURES, sayShare } from '../../words/measure.js';
import type { Finding, Learnt } from './learnt.js';
import type { Result } from './results-form.js';

/** The fields by which results are matched to a cloth. */
export type Which = Pick<KeptCloth, 'code' | 'structure'>;

/** One result that gives some figure, with the structure of its cloth. */
interface Witness extends Omit<Result, 'picks'> {
  readonly structure: string;
  /** Picks per millimetre, as counted and as planned; as planned by the list where the form does not say. */
  readonly picks?: number;
  readonly planned?: number;
}

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
  const figures = (cloth: Which): Learnt => ({
    ...of(({ structure }) => structure === cloth.structure),
    ...of(({ code }) => code === cloth.code),
  });
  if (kept.every((cloth) => Object.keys(figures(cloth)).length === 0)) {
    const found = [...new Set(witnesses.map(({ structure }) => structure))].join(', ');
    const wanted = [...new Set(kept.map(({ structure }) => structure))].join(', ');
    throw new Problem(`${file}: found results for ${found} alone; expected one for a structure of ${list}: ${wanted}`);
  }
  return (cloth) => {
    const last = witnesses.filter(({ code }) => code === cloth.code).map(remarksOf);
    return { ...figures(cloth), ...(last.some((words) => words !== '') && { last: last.filter(Boolean).join(' – ') }) };
  };
}

/** What a weaver wrote of a piece: how much it was liked, what was changed, how it was finished. */
function remarksOf({ weaver, stars, changed, howFinished }: Witness): string {
  const said = [
    ...(stars === undefined ? [] : [counted(stars, 'star')]),
    ...(changed === undefined ? [] : [`changed: ${changed}`]),
    ...(howFinished === undefined ? [] : [`finished ${howFinished}`]),
  ];
  return said.length > 0 && weaver !== undefined ? `${weaver}: ${said.join('; ')}` : said.join('; ');
}

/** The figures in words, `18 picks per inch, take-up 8 % (found in this cloth)`; empty if there are none. */
export function learntWords(learnt: Learnt, cloth: Which, { picks, per }: Sett): string[] {
  const beat = `${picks} picks per ${per}`;
  const said = [
    [
      learnt.picks,
      (value: number) => (learnt.picks!.ofPlanned ? `${beat}, ${sayShare(value)} of those planned` : beat),
    ],
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

function witnessOf(result: Result, kept: readonly KeptCloth[], file: string, list: string): Witness {
  const { code, picks: found, planned, ...rest } = result;
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
  if (found !== undefined && per === undefined) {
    throw new Problem(`${file}: ${code}: found ${found} picks; expected their measure too, as ${found} per inch`);
  }
  if (found === undefined) return { ...rest, code, structure };
  const sett = cloth?.draft.sett;
  const asked = planned === undefined ? sett && sett.picks / MEASURES[sett.per] : planned / MEASURES[per!];
  return { ...rest, code, structure, picks: found / MEASURES[per!], ...(asked && { planned: asked }) };
}

/**
 * Computes draw-in = 1 − width on the loom / width in the reed, take-up = 1 − off loom / warp used and shrinkage =
 * 1 − finished / off loom from the sums of all lengths, so that large pieces count for more. Picks are the mean of the shares of those planned.
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
  const drawIn = loss('inReed', 'width');
  const takeUp = loss('warpUsed', 'offLoom');
  const shrinkage = loss('offLoom', 'finished');
  const beaten = witnesses.filter(({ picks }) => picks !== undefined);
  const compared = beaten.filter(({ planned }) => planned !== undefined);
  const ofPlanned = compared.length > 0;
  const counts = ofPlanned
    ? compared.map(({ picks, planned }) => picks! / planned!)
    : beaten.map(({ picks }) => picks!);
  const value = counts.reduce((sum, count) => sum + count, 0) / counts.length;
  const codes = codesOf(ofPlanned ? compared : beaten);
  return {
    ...(drawIn !== undefined && { drawIn }),
    ...(takeUp !== undefined && { takeUp }),
    ...(shrinkage !== undefined && { shrinkage }),
    ...(counts.length > 0 && { picks: { value, codes, ofPlanned } }),
  };
}

function codesOf(witnesses: readonly Witness[]): string[] {
  return [...new Set(witnesses.map(({ code }) => code))];
}
