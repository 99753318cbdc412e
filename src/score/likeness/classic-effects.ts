import { drawdown } from '../../cloth/drawdown.js';
import { colourFace, type Face, faceFromRows } from '../../cloth/face.js';
import type { Draft, Weave } from '../../draft/draft.js';
import { smallestPeriod } from '../../draft/repeat.js';
import { clothKey, type Sameness } from '../symmetry/canonical-cloth.js';

const PLAIN = { structure: 'plain weave', rows: ['#.', '.#'] };
/** Threads of the smallest log cabin: below it nobody sees blocks (a choice of ours). */
const SMALLEST_CABIN = 8;
const TWILL = { structure: '2/2 twill', rows: ['##..', '.##.', '..##', '#..#'] };

/**
 * What weavers call a classic order on a certain weave. Hound’s tooth, step, log cabin and shepherd’s check after
 * handbooks and dictionaries of the trade; pinwheel, gingham and glen check are common practice. Usage varies.
 */
export const EFFECTS: readonly { readonly name: string; readonly weave: typeof PLAIN; readonly word: string }[] = [
  { name: 'pinwheel', weave: PLAIN, word: 'DDLL' },
  { name: 'gingham', weave: PLAIN, word: 'DDDDLLLL' },
  { name: 'log cabin', weave: PLAIN, word: 'DLDLDLDLLDLDLDLD' },
  { name: 'step', weave: TWILL, word: 'DL' },
  { name: 'hound’s tooth', weave: TWILL, word: 'DDDDLLLL' },
  { name: 'shepherd’s check', weave: TWILL, word: 'DDDDDDLLLLLL' },
  { name: 'shepherd’s check', weave: TWILL, word: 'DDDDDDDDLLLLLLLL' },
  { name: 'glen check', weave: TWILL, word: 'DDDDLLLLDDDDLLLLDDLLDDLLDDLLDDLL' },
];

/** Weaves are the same however they are turned, and whichever side is up. */
const SAME: readonly Sameness[] = ['mirror', 'half-turn', 'quarter-turn', 'exchange'];

/** The names that orders have on a weave, by the order; none for most. */
export function effectsOn(weave: Weave): ReadonlyMap<string, string> {
  const cloth = drawdown(weave);
  const dark = new Uint8Array(cloth.ends);
  const light = new Uint8Array(cloth.picks).fill(1);
  const key = clothKey(colourFace(cloth, dark, light), SAME, 2).join();
  return new Map(EFFECTS.filter(({ weave }) => keyOf(weave.rows) === key).map(({ word, name }) => [word, name]));
}

function keyOf(rows: readonly string[]): string {
  const cells = rows.map((row) => Array.from(row, (cell) => (cell === '#' ? 0 : 1)));
  return clothKey(faceFromRows(cells), SAME, 2).join();
}

/** Whether threads have the order of log cabin, at any size: two colours in turn, which change places half-way. */
export function isLogCabin(strands: readonly number[]): boolean {
  const repeat = strands.slice(0, smallestPeriod(strands));
  const next = (at: number): number => repeat[(at + 1) % repeat.length]!;
  const doubled = repeat.flatMap((strand, at) => (strand === next(at) ? [at] : []));
  const [first, second] = doubled;
  return (
    doubled.length === 2 &&
    repeat.length >= SMALLEST_CABIN &&
    new Set(repeat).size === 2 &&
    second! - first! === repeat.length / 2
  );
}

/**
 * Lines one thread wide, on whatever weave: hairline where they run up the cloth, tricot where they run across it (Bell;
 * that the word goes by the direction is common practice, no source).
 */
export function linesOf({ row, column, rowKinds, columnKinds }: Face): 'hairline' | 'tricot' | undefined {
  const single = (kinds: Uint16Array): boolean => kinds.every((kind, at) => kind !== kinds.at(at - 1));
  if (rowKinds === 1 && single(column)) return 'hairline';
  return columnKinds === 1 && single(row) ? 'tricot' : undefined;
}

/**
 * What weavers call a cloth that is a classic one: lines one thread wide, or its weave with the same order in warp and
 * weft; undefined otherwise.
 */
export function classicName(draft: Weave & Pick<Draft, 'warp' | 'weft'>): string | undefined {
  const lines = linesOf(colourFace(drawdown(draft), draft.warp, draft.weft));
  if (lines !== undefined) return lines;
  const colours = [...new Set([...draft.warp, ...draft.weft])];
  if (colours.length !== 2) return undefined;
  const effects = effectsOn(draft);
  const cabin = [...effects].find(([, name]) => name === 'log cabin')?.[1];
  if (cabin !== undefined && isLogCabin(draft.warp) && isLogCabin(draft.weft)) return cabin;
  const orders = [draft.warp, draft.weft].map((strands) =>
    strands.slice(0, smallestPeriod(strands)).map((colour) => (colour === colours[0] ? 'D' : 'L')),
  );
  return [...effects].find(([word]) => orders.every((order) => isOrder(order, word)))?.[1];
}

/** Whether an order is that of a word, begun anywhere, read either way, in either colour. */
function isOrder(order: readonly string[], word: string): boolean {
  const exchanged = order.map((letter) => (letter === 'D' ? 'L' : 'D'));
  const readings = [order, exchanged].flatMap((each) => [each.join(''), each.toReversed().join('')]);
  return order.length === word.length && readings.some((reading) => word.repeat(2).includes(reading));
}
