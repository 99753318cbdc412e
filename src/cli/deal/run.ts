import { basename, dirname, extname, join } from 'node:path';
import type { DealWritten } from '../../formats/plan-schema.js';
import { type Deal, dealOut, needsFor, type Share, type Weaver, warpFor, weaverLetters } from '../../plan/deal/deal.js';
import { readWeavers } from '../../plan/deal/weavers.js';
import type { PlanOptions } from '../../plan/options/plan-options.js';
import { checkLetters, type WarpPlan } from '../../plan/piece/warp-plan.js';
import { formEntries } from '../../plan/results/results-form.js';
import { Problem, quote } from '../../problem.js';
import { planText } from '../../sheets/plan-json.js';
import { tableText } from '../../sheets/plan-table.js';
import { albumSheets, dealSheets, teacherSheets } from '../../sheets/sheets.js';
import { yarnOrder } from '../../sheets/yarn-order.js';
import { counted } from '../../words/counts.js';
import { readText } from '../shell/files.js';
import { bold, EXIT, type Io, say, sayJson } from '../shell/io.js';
import { loadShortlist } from '../shell/kept-file.js';
import { lackingLines } from '../shell/lacking-letters.js';
import { judgePlanFolder, writePlanFolder } from '../shell/plan-folder.js';
import { optionsOf } from '../shell/setup-file.js';
import { yarnLines } from '../shell/yarn-lines.js';

/** The arguments of the command. */
export interface DealArguments {
  readonly shortlist: string;
  /** The file of plan options. */
  readonly setup?: string | undefined;
  readonly flags: Readonly<Record<string, string>>;
  /** A number, or a file of weavers. */
  readonly weavers: string;
  readonly out?: string;
  readonly json?: boolean;
}

/** Deals a shortlist to weavers; writes a sheet for each weaver, and contact sheet and yarn order for the teacher. */
export async function runDeal(given: DealArguments, io: Io): Promise<number> {
  const list = loadShortlist(given.shortlist);
  // Every weaver of a deal has a loom of their own, and so a warp to wind.
  const kept = list.map(({ onTheLoom: _, ...cloth }) => cloth);
  const options = optionsOf(given, kept);
  const folder =
    given.out ?? join(dirname(given.shortlist), `${basename(given.shortlist, extname(given.shortlist))}-deal`);
  await judgePlanFolder(folder, 'deal');
  checkLetters(kept, options);
  const deal = dealOut(kept, weaversOf(given.weavers, options), options);
  const warps = deal.shares.map(({ cloth, weaver }, at) =>
    numbered(warpFor(cloth, needsFor(weaver, options), weaver.loom), at + 1),
  );
  const yarn = yarnOrder(warps, options);
  const names = deal.shares.map(({ weaver }) => weaver.name);
  const entries = formEntries(
    warps.flatMap(({ pieces }) => pieces),
    names,
  );
  const form = await writePlanFolder(
    folder,
    'deal',
    {
      'deal.json': `${JSON.stringify(dealData(deal), null, 1)}\n`,
      'plan.json': planText(warps, yarn),
      'sheets.pdf': await dealSheets(deal.shares, warps, options),
      'teacher.pdf': await teacherSheets('Cloths of the group', warps, options, { weavers: names }),
      'album.pdf': await albumSheets(warps, options, names),
      'cloths.csv': tableText(warps, names),
    },
    entries,
  );
  if (form !== undefined) say(io.stderr, form);
  const there = list.filter(({ onTheLoom }) => onTheLoom).length;
  if (there > 0) say(io.stderr, `${counted(there, 'cloth')} of a warp on the loom: each weaver winds one of their own`);
  const named = names.map((name, at) => ({ what: `weaver ${at + 1},`, name }));
  for (const line of lackingLines([{ what: 'project', name: options.project }, ...named])) say(io.stderr, line);
  if (given.json) sayJson(io, dealData(deal));
  else {
    for (const share of deal.shares) say(io.stdout, shareLine(share));
    if (deal.shares.length > 1) say(io.stdout, leastLine(deal));
    if (deal.alike.length > 0) say(io.stdout, alikeLine(deal.alike));
    for (const { cloth, weavers } of deal.spares) {
      say(io.stdout, `spare: ${cloth.code} ${cloth.recipe} (for ${weavers.join(' ')})`);
    }
    const { per } = warps[0]!;
    for (const line of yarnLines(yarn, per)) say(io.stdout, line);
    const [sheets, teacher] = ['sheets.pdf', 'teacher.pdf'].map((name) => bold(io.stdout, join(folder, name)));
    say(io.stdout, `Print ${sheets} for the weavers, ${teacher} for the teacher`);
    say(io.stdout, `${join(folder, 'album.pdf')}: pages for swatches; ${join(folder, 'cloths.csv')}: all measures`);
  }
  return EXIT.done;
}

function weaversOf(text: string, options: PlanOptions): Weaver[] {
  if (!/^\d+$/.test(text)) return readWeavers(readText(text, 'a number of weavers, or a list of them'), text);
  const count = Number(text);
  if (count < 1 || count > 200) throw new Problem(`--weavers: found ${quote(text)}; expected a number from 1 to 200`);
  return weaverLetters(count).map((name) => ({ name, loom: options.loom }));
}

/** A warp and its pieces, numbered like their sheet. */
function numbered(warp: WarpPlan, number: number): WarpPlan {
  return { ...warp, number, pieces: warp.pieces.map((piece) => ({ ...piece, number })) };
}

function dealData(deal: Deal): DealWritten {
  const cloth = ({ code, recipe }: Share['cloth']) => ({ code, recipe });
  return {
    format: 'shedlight-deal',
    version: 1,
    shares: deal.shares.map((share, at) => ({
      sheet: at + 1,
      weaver: share.weaver.name,
      ...cloth(share.cloth),
      apart: share.apart,
    })),
    spares: deal.spares.map((spare) => ({ ...cloth(spare.cloth), apart: spare.apart, weavers: spare.weavers })),
    least: deal.least,
    atMost: deal.atMost,
    alike: deal.alike,
    refused: deal.refused,
  };
}

function shareLine({ weaver, cloth, apart }: Share): string {
  return `${weaver.name}: ${cloth.code} ${cloth.recipe} (differs by ${apart.toFixed(2)} from the most similar)`;
}

/** How much the two most similar cloths differ, and whether any deal could make that more. */
function leastLine({ least, atMost }: Deal): string {
  const most =
    atMost > least ? `no deal could make that more than ${atMost.toFixed(2)}` : 'no deal could make that more';
  return `the two most alike differ by ${least.toFixed(2)} (0 the same, 1 as different as possible); ${most}`;
}

/** A line about weavers with nearly alike cloths, naming the nearest pair and a remedy. */
function alikeLine(alike: Deal['alike']): string {
  const pairs = alike.slice(0, 3).map(({ weavers, apart }) => `${weavers.join(' and ')} (${apart.toFixed(2)})`);
  const more = alike.length > pairs.length ? `, and ${alike.length - pairs.length} pairs more` : '';
  return (
    `nearly alike: ${pairs.join(', ')}${more}; a shortlist of more kinds would set them apart: ` +
    'explore --show "one of each kind"'
  );
}
