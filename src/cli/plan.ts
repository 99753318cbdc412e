import { basename, dirname, extname, join } from 'node:path';
import { type Gamp, type GampNeeds, gampNeeds, gampOf } from '../plan/gamp-plan.js';
import { corrected, learntFrom, readResults, resultsForm } from '../plan/learnt.js';
import { sayLong, sayShare, sayWeight } from '../plan/measure.js';
import { type Needs, readNeeds } from '../plan/needs.js';
import { planText } from '../plan/plan-text.js';
import { settWords } from '../plan/sett-advice.js';
import { albumSheets, planSheets, teacherSheets } from '../plan/sheets.js';
import type { KeptCloth } from '../plan/shortlist.js';
import { tableText } from '../plan/table.js';
import { planWarps, type WarpPlan } from '../plan/warp-plan.js';
import { yarnOrder } from '../plan/yarn-order.js';
import { Problem } from '../problem.js';
import { readText } from './files.js';
import { bold, EXIT, type Io, say } from './io.js';
import { loadShortlist } from './kept-file.js';
import { judgePlanFolder, writePlanFolder } from './plan-folder.js';

/** What a person gave on the command line. */
export interface PlanArguments {
  readonly shortlist: string;
  readonly needs?: string | undefined;
  readonly flags: Readonly<Record<string, string>>;
  readonly gamp?: boolean;
  readonly warps?: string;
  readonly wefts?: string;
  readonly section?: string;
  readonly separator?: string;
  readonly learnt?: string;
  readonly out?: string;
  readonly json?: boolean;
}

/** Plans the warps of a shortlist and writes plan, sheets and the form for results. */
export async function runPlan(given: PlanArguments, io: Io): Promise<number> {
  const kept = loadShortlist(given.shortlist);
  const needs = needsOf(given, io);
  const gamp = given.gamp ? gampOf(kept, needs, sectionsOf(given)) : undefined;
  const folder =
    given.out ?? join(dirname(given.shortlist), `${basename(given.shortlist, extname(given.shortlist))}-plan`);
  await judgePlanFolder(folder, 'plan');
  const warps = planned(kept, needs, gamp);
  const yarn = yarnOrder(warps);
  const text = planText(warps, yarn, gamp);
  const { formKept } = await writePlanFolder(folder, 'plan', {
    'plan.json': text,
    'sheets.pdf': await planSheets(warps, needs, gamp),
    'overview.pdf': await teacherSheets('Sample warps', warps, needs),
    'album.pdf': await albumSheets(warps, needs.paper),
    'cloths.csv': tableText(warps),
    'results.yaml': resultsForm(warps.flatMap((warp) => warp.pieces.map(({ cloth }) => cloth))),
  });
  if (formKept) say(io.stderr, `${join(folder, 'results.yaml')}: left as it is`);
  if (given.json) io.stdout.write(text);
  else {
    for (const warp of warps) for (const line of warpLines(warp)) say(io.stdout, line);
    if (gamp !== undefined) say(io.stdout, gampLine(gamp));
    const { per } = warps[0]!;
    for (const line of settLines(warps, needs)) say(io.stdout, line);
    for (const { letter, name, length, grams } of yarn) {
      const weight = grams === null ? '' : `, ${sayWeight(grams, per)}`;
      say(
        io.stdout,
        `yarn ${letter}${name === letter ? '' : ` ${name}`}: ${sayLong(length, per)}${weight}, 10 % kept back`,
      );
    }
    const [sheets, overview] = ['sheets.pdf', 'overview.pdf'].map((name) => bold(io.stdout, join(folder, name)));
    say(io.stdout, `Print ${sheets} for the loom, ${overview} to choose, order yarn and label chains`);
    say(io.stdout, `${join(folder, 'album.pdf')}: pages for swatches; ${join(folder, 'cloths.csv')}: all measures`);
  }
  return EXIT.done;
}

function planned(kept: readonly KeptCloth[], needs: Needs, gamp: Gamp | undefined): WarpPlan[] {
  return gamp === undefined ? planWarps(kept, needs) : planWarps([gamp.cloth], gampNeeds(gamp, needs));
}

/** What the plan is made from, with what was learnt in the place of the usual. */
function needsOf({ needs: file, flags, learnt }: PlanArguments, io: Io): Needs {
  const needs = readNeeds(file === undefined ? '' : readText(file, 'needs of a plan'), file ?? 'needs', flags);
  if (learnt === undefined) return needs;
  const found = learntFrom(readResults(readText(learnt, 'results of earlier pieces'), learnt));
  if (found.takeUp !== undefined) say(io.stderr, `${learnt}: take-up ${sayShare(found.takeUp)}`);
  if (found.shrinkage !== undefined) say(io.stderr, `${learnt}: shrinkage ${sayShare(found.shrinkage)}`);
  if (found.picks !== undefined) say(io.stderr, `${learnt}: ${found.picks.toFixed(1)} picks`);
  return corrected(needs, found);
}

function sectionsOf({ warps, wefts, section, separator = '4' }: PlanArguments): GampNeeds {
  const whole = (text: string, flag: string, least: number, most = 100): number => {
    const count = /^\d{1,4}$/.test(text) ? Number(text) : -1;
    if (count < least || count > most)
      throw new Problem(`${flag}: found “${text}”; expected a number from ${least} to ${most}`);
    return count;
  };
  return {
    ...(warps !== undefined && { warps: whole(warps, '--warps', 1) }),
    ...(wefts !== undefined && { wefts: whole(wefts, '--wefts', 1) }),
    ...(section !== undefined && { section: whole(section, '--section', 2, 1000) }),
    separator: whole(separator, '--separator', 0),
  };
}

/** The sizes of the yarns as they were understood, and the sett that each weave bears in them. */
function settLines(warps: readonly WarpPlan[], needs: Needs): string[] {
  const sizes = Object.values(needs.yarns).map(({ said }) => said);
  const setts = warps
    .flatMap(({ pieces }) => pieces)
    .flatMap(({ draft, settAdvice }) =>
      settAdvice === undefined ? [] : [`closest sett, ${draft.sett.ends} planned: ${settWords(settAdvice, draft)}`],
    );
  return [...new Set([...sizes, ...setts])];
}

/** Two lines and the cautions of a warp. */
export function warpLines(warp: WarpPlan): string[] {
  const { ends, floating, wound, length, per, pieces } = warp;
  const counts = wound.map(({ letter, ends: count }) => `${letter} ${count}`).join(', ');
  const codes = pieces.map(({ cloth }) => cloth.code).join(' ');
  const best = warp.winding.ways[0]!;
  return [
    `warp ${warp.number}: ${ends.length + floating.ends} ends (${counts}), ${sayLong(length.wind, per)}, reed ${warp.denting.reed} at ${warp.denting.dents.join('-')}; ${best.way}, ${best.knots} knots`,
    `  weaves ${codes}`,
    ...warp.cautions.map((caution) => `  mind: ${caution}`),
    ...[...new Set(pieces.flatMap(({ cautions }) => cautions))].map((caution) => {
      const own = pieces.filter(({ cautions }) => cautions.includes(caution)).map(({ cloth }) => cloth.code);
      return `  mind, ${own.join(' ')}: ${caution}`;
    }),
  ];
}

function gampLine({ squares, choice }: Gamp): string {
  const most = choice.exact ? 'no choice weaves more' : `no choice weaves more than ${choice.atMost}`;
  return `gamp: ${squares.length} squares, ${choice.cloths} different cloths (${most})`;
}
