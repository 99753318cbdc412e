import { basename, dirname, extname, join } from 'node:path';
import type { Sett } from '../../draft/draft.js';
import { type KeptCloth, shortlistText } from '../../formats/shortlist.js';
import { remedies } from '../../plan/deal/remedies.js';
import { type Gamp, type GampNeeds, gampNeeds, gampOf } from '../../plan/gamp/gamp-plan.js';
import type { PlanOptions } from '../../plan/options/plan-options.js';
import { settWords } from '../../plan/piece/sett-advice.js';
import { checkLetters, planWarps, type WarpPlan } from '../../plan/piece/warp-plan.js';
import { type Learnt, picksAfter } from '../../plan/results/learnt.js';
import { learntBy, learntWords, type Which } from '../../plan/results/matching-results.js';
import { formEntries, readResults } from '../../plan/results/results-form.js';
import { Problem, quote } from '../../problem.js';
import { planText } from '../../sheets/plan-json.js';
import { tableText } from '../../sheets/plan-table.js';
import { albumSheets, planSheets, teacherSheets } from '../../sheets/sheets.js';
import { yarnOrder } from '../../sheets/yarn-order.js';
import { sayAbout, sayLength, sayLong } from '../../words/measure.js';
import { progressOn } from '../explore/progress.js';
import { readText } from '../shell/files.js';
import { bold, EXIT, type Io, say, sayJsonText } from '../shell/io.js';
import { loadShortlist } from '../shell/kept-file.js';
import { lackingLines } from '../shell/lacking-letters.js';
import { judgePlanFolder, writePlanFolder } from '../shell/plan-folder.js';
import { optionsOf } from '../shell/setup-file.js';
import { yarnLines } from '../shell/yarn-lines.js';

/** The arguments of the command. */
export interface PlanArguments {
  readonly shortlist: string;
  /** The file of plan options. */
  readonly setup?: string | undefined;
  readonly flags: Readonly<Record<string, string>>;
  /** Set for a gamp: the number of sections each way, `5 by 5`, or true for all orders. */
  readonly gamp?: string | true;
  readonly learnt?: string;
  readonly out?: string;
  readonly json?: boolean;
}

/** Most sections of a gamp each way. */
const MOST_SECTIONS = 100;

/** Plans the warps of a shortlist and writes plan, sheets and the form for results. */
export async function runPlan(given: PlanArguments, io: Io): Promise<number> {
  const kept = loadShortlist(given.shortlist);
  const folder =
    given.out ?? join(dirname(given.shortlist), `${basename(given.shortlist, extname(given.shortlist))}-plan`);
  await judgePlanFolder(folder, 'plan');
  const usual = optionsOf(given, kept);
  checkGamp(given, usual, kept);
  const learnt = learntOf(given, kept);
  // A gamp is one cloth of one weave, so it takes the results of the structure.
  const ofWeave = learnt({ code: '', structure: kept[0]?.structure ?? '' });
  const options = given.gamp !== undefined && kept.length > 0 ? corrected(usual, kept, ofWeave) : usual;
  const gamp = given.gamp === undefined ? undefined : gampFor(given.gamp, kept, options, io);
  const warps =
    gamp === undefined
      ? planWarps(kept, options, learnt)
      : planWarps([gamp.cloth], { ...gampNeeds(gamp, options), sett: settOf(usual, kept) }, () => ofWeave);
  checkLetters(gamp === undefined ? kept : [gamp.cloth], options);
  if (given.learnt !== undefined) for (const line of learntLines(warps)) say(io.stderr, `${given.learnt}: ${line}`);
  const yarn = yarnOrder(warps, options);
  const text = planText(warps, yarn, gamp);
  const entries = formEntries(
    warps.flatMap(({ pieces }) => pieces),
    undefined,
    gamp?.squares.map(({ kept: square }) => square),
  );
  const form = await writePlanFolder(
    folder,
    'plan',
    {
      'plan.json': text,
      'sheets.pdf': await planSheets(warps, options, gamp),
      'overview.pdf': await teacherSheets('Sample warps', warps, options, { gamp }),
      'album.pdf': await albumSheets(warps, options),
      'cloths.csv': tableText(warps, undefined, gamp),
      ...(gamp !== undefined && { 'squares.json': shortlistText(gamp.squares.map(({ kept: square }) => square)) }),
    },
    entries,
  );
  if (form !== undefined) say(io.stderr, form);
  for (const line of lackingLines([{ what: 'project', name: options.project }])) say(io.stderr, line);
  if (given.json) sayJsonText(io, text);
  else {
    for (const warp of warps) for (const line of warpLines(warp)) say(io.stdout, line);
    if (gamp !== undefined) say(io.stdout, gampLine(gamp));
    const { per } = warps[0]!;
    for (const line of settLines(warps, options)) say(io.stdout, line);
    for (const line of yarnLines(yarn, per)) say(io.stdout, line);
    const [sheets, overview] = ['sheets.pdf', 'overview.pdf'].map((name) => bold(io.stdout, join(folder, name)));
    say(io.stdout, `Print ${sheets} for the loom, ${overview} to choose, order yarn and label chains`);
    say(io.stdout, `${join(folder, 'album.pdf')}: pages for swatches; ${join(folder, 'cloths.csv')}: all measures`);
  }
  const unfit = warps.filter(({ faults }) => faults.length > 0);
  for (const warp of unfit) say(io.stderr, unfitLine(warp, options));
  return unfit.length === 0 ? EXIT.done : EXIT.nothingFits;
}

/** The gamp of a shortlist; on a terminal a bar shows how far the choice of its sections is. */
function gampFor(text: string | true, kept: readonly KeptCloth[], options: PlanOptions, io: Io): Gamp {
  const progress = progressOn(io.stderr, false);
  try {
    return gampOf(kept, options, { ...sectionsOf(text), ...partsOf(options) }, (done, of) => {
      progress.tell({ name: 'cross orders', done, of });
    });
  } finally {
    progress.end();
  }
}

/** A line about a warp that the loom cannot weave, and what would help. */
function unfitLine(warp: WarpPlan, options: PlanOptions): string {
  const helps = remedies(warp, options).join('; ');
  return `warp ${warp.number}: not on this loom: ${warp.faults.join(', ')}; its yarn is not ordered. What would help: ${helps}`;
}

/** The figures that the given results have for each cloth. */
function learntOf({ shortlist, learnt: file }: PlanArguments, kept: readonly KeptCloth[]): (cloth: Which) => Learnt {
  if (file === undefined) return () => ({});
  return learntBy(readResults(readText(file, 'results of earlier pieces'), file), kept, file, shortlist);
}

/** The options of a gamp, with figures from results in place of the usual ones. */
function corrected(options: PlanOptions, kept: readonly KeptCloth[], learnt: Learnt): PlanOptions {
  const sett = settOf(options, kept);
  const { picks, shrinkage } = learnt;
  return {
    ...options,
    ...(picks !== undefined && { sett: { ...sett, picks: picksAfter(learnt, sett) } }),
    ...(shrinkage !== undefined && { shrinkage: shrinkage.value }),
  };
}

/** The sett of a gamp before results correct it. */
function settOf(options: PlanOptions, [cloth]: readonly KeptCloth[]): Sett {
  return options.sett ?? cloth!.draft.sett;
}

/** Lines about the results used for each cloth; cloths with equal results share a line. */
function learntLines(warps: readonly WarpPlan[]): string[] {
  const lines = new Map<string, string[]>();
  for (const { pieces } of warps) {
    for (const { cloth, draft, learnt } of pieces) {
      const words = learntWords(learnt, cloth, draft.sett);
      for (const line of words.length === 0 ? ['no result of it or its structure: as planned'] : words) {
        lines.set(line, [...(lines.get(line) ?? []), cloth.code]);
      }
    }
  }
  return [...lines].map(([line, codes]) => `${codes.join(' ')}: ${line}`);
}

/** Throws on options that do not go with a gamp, and on flags for gamps without one. */
function checkGamp(
  { gamp, flags }: PlanArguments,
  { mirror, border }: PlanOptions,
  cloths: readonly KeptCloth[],
): void {
  const part = ['section', 'separator'].find((key) => flags[key] !== undefined);
  if (gamp === undefined && part !== undefined) {
    throw new Problem(`--${part}: found it without --gamp; expected it with --gamp alone`);
  }
  const kept = mirror.warp ? 'mirror' : mirror.weft ? 'mirror weft' : border ? 'border' : undefined;
  if (gamp !== undefined && kept !== undefined) {
    throw new Problem(
      `${kept}: found it beside --gamp; expected none, since a gamp is laid out in sections of its own`,
    );
  }
  const there = cloths.find(({ onTheLoom }) => onTheLoom);
  if (gamp !== undefined && there !== undefined) {
    throw new Problem(
      `--gamp: found ${there.code}, whose warp is on the loom; expected cloths to wind a new warp for, since a gamp is ` +
        'wound in sections; without --gamp the cloths are woven one after another',
    );
  }
}

/** Reads the number of warp and weft sections, `5 by 5`; one number is for both. */
function sectionsOf(text: string | true): Pick<GampNeeds, 'warps' | 'wefts'> {
  if (text === true) return {};
  const found = /^\s*(\d{1,3})(?:\s*(?:by|x|×)\s*(\d{1,3}))?\s*$/.exec(text);
  const [warps, wefts] = [Number(found?.[1]), Number(found?.[2] ?? found?.[1])];
  if (!(warps >= 1 && wefts >= 1 && warps <= MOST_SECTIONS && wefts <= MOST_SECTIONS)) {
    throw new Problem(
      `--gamp: found ${quote(text)}; expected warp sections by weft sections, 1 to ${MOST_SECTIONS}, such as "5 by 5"`,
    );
  }
  return { warps, wefts };
}

function partsOf({ section, separator }: PlanOptions): Pick<GampNeeds, 'section' | 'separator'> {
  return { ...(section !== undefined && { section }), ...(separator !== undefined && { separator }) };
}

/** Lines with the yarn sizes as understood, and the advice on the sett of each weave. */
function settLines(warps: readonly WarpPlan[], options: PlanOptions): string[] {
  const sizes = Object.values(options.yarns).map(({ said }) => said);
  const setts = warps
    .filter(({ onTheLoom }) => !onTheLoom)
    .flatMap(({ pieces }) => pieces)
    .flatMap(({ draft, settAdvice }) =>
      settAdvice === undefined ? [] : [`closest sett, ${draft.sett.ends} planned: ${settWords(settAdvice, draft)}`],
    );
  return [...new Set([...sizes, ...setts])];
}

/** Two lines and the cautions of a warp. */
function warpLines(warp: WarpPlan): string[] {
  const { ends, floating, wound, length, per, pieces } = warp;
  const counts = wound.map(({ letter, ends: count }) => `${letter} ${count}`).join(', ');
  const codes = pieces.map(({ cloth }) => cloth.code).join(' ');
  const [best] = warp.winding.ways;
  return [
    best === undefined
      ? `warp ${warp.number}: on the loom, so nothing to wind, thread or sley; ${sayAbout(length.total, per)} of it must be left; ${sayLength(warp.widthInReed, per)} wide as planned (--width says otherwise)`
      : `warp ${warp.number}: ${ends.length + floating.ends} ends (${counts}), ${sayAbout(warp.widthInReed, per)} wide in the reed; wind ${sayLong(length.wind, per)}, ${best.way}, ${best.knots} knots; ${dentingWords(warp)}`,
    `  weaves ${codes}`,
    ...warp.cautions.map((caution) => `  note: ${caution}`),
    ...[...new Set(pieces.flatMap(({ cautions }) => cautions))].map((caution) => {
      const own = pieces.filter(({ cautions }) => cautions.includes(caution)).map(({ cloth }) => cloth.code);
      return `  note, ${own.join(' ')}: ${caution}`;
    }),
  ];
}

/** Words for a denting: `10-dent reed, 2 per dent`; uneven dents as `1-2-2 in the dents`. */
function dentingWords({ denting: { reed, dents } }: WarpPlan): string {
  return `${reed}-dent reed, ${dents.length === 1 ? `${dents[0]} per dent` : `${dents.join('-')} in the dents`}`;
}

function gampLine({ squares, choice }: Gamp): string {
  const most = choice.exact ? 'no choice weaves more' : `no choice weaves more than ${choice.atMost}`;
  return `gamp: ${squares.length} squares, ${choice.cloths} different cloths (${most}); squares.json has each with its code`;
}
