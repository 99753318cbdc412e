import { type Sett, spacing } from '../../draft/draft.js';
import { formatOrder } from '../../order/order.js';
import type { FloatLimit } from '../../score/model/float-limit.js';
import { limitInWords } from '../../score/words/figure-words.js';
import type { Question } from '../../search/question/question.js';
import {
  type Enlarged,
  type MotifSize,
  type Refusal,
  sizesRemedyInWords,
  USUAL_LIMITS,
  type Way,
} from '../../search/report/enlarge.js';
import { counted } from '../../words/counts.js';

/** Heading of each way of enlarging. */
export const WAY_WORDS: Readonly<Record<Way, string>> = {
  thread: 'by thread: repeated until in step with the weave, then each element stretched',
  unit: 'by unit: each element whole units of one colour',
  alternate: 'alternating: each element its own colour and the other in turn',
  block: 'by block: the order is the block order too',
  nest: 'nested: each element is the whole order again, with colours swapped where it is light',
};

/** `×4` threads or units, or words for an order that is not enlarged. */
export function timesInWords({ way, by, times }: MotifSize): string {
  const what = by === 'thread' ? 'thread' : 'unit';
  if (way === 'thread' && times === 1) return 'as written';
  return `${counted(times, what)} each`;
}

/** `0.90 in (22.9 mm)`, in the measure of the sett first. */
export function lengthOf(mm: number, per: Sett['per']): string {
  const inches = `${(mm / 25.4).toFixed(2)} in`;
  const millimetres = `${mm.toFixed(1)} mm`;
  return per === 'inch' ? `${inches} (${millimetres})` : `${millimetres} (${inches})`;
}

/** The longest float and its length: `8 ends, 0.40 in`. */
export function floatOf({ draft, floats }: MotifSize): string {
  const { longest, longestMm } = floats;
  if (longest === null || longestMm === null) return 'never interlaces';
  return `${longest}, ${lengthOf(longestMm, draft.sett.per).replace(/ \(.*/, '')}`;
}

/** The limits that the floats pass and fail: `passes 1/2 in, fails 3/8 in and 7 threads`. */
export function passesOf({ passes, draft }: MotifSize, limit: FloatLimit): string {
  const all: (readonly [string, boolean])[] = [
    ...USUAL_LIMITS.map(({ name }, at) => [name, passes.usual[at]!] as const),
    [limitInWords(limit, draft.sett), passes.own],
  ];
  const named = (passed: boolean): string => all.flatMap(([name, is]) => (is === passed ? [name] : [])).join(', ');
  return [named(true) && `passes ${named(true)}`, named(false) && `fails ${named(false)}`].filter(Boolean).join('; ');
}

/** Words for a refused size, and the nearest possible one. */
export function refusalInWords({ ends, nearest, why }: Refusal): string {
  return ends === undefined ? why : `${ends} ends are not possible: ${why}; the nearest is ${nearest}`;
}

/** `20 ends`, or where units differ `22 or 23 ends`. */
export function endsInWords({ ends, range }: MotifSize): string {
  if (range === undefined) return `${ends} ends`;
  const [least, most] = range;
  return `${least} ${most === least + 1 ? 'or' : 'to'} ${most} ends`;
}

/** Lines about all sizes under the heading of each way, the sizes refused, and remedies for too long floats. */
export function sizeLines(enlarged: Enlarged, question: Question): string[] {
  const limit = question.limits.float;
  const said = new Set<string>();
  return (Object.keys(WAY_WORDS) as Way[]).flatMap((way) => {
    const sizes = enlarged.sizes.filter((size) => size.way === way);
    const refused = enlarged.refused.filter((refusal) => refusal.way === way);
    if (sizes.length + refused.length === 0) return [];
    const rows = sizes.map((size) => {
      const pattern = size.pattern === undefined ? '' : `, pattern weft ${size.pattern.ends ?? 'never interlaces'}`;
      const wrong = size.holdsTogether ? '' : '; does not hold together as one cloth';
      return [
        endsInWords(size),
        timesInWords(size),
        `${lengthOf(size.finished, size.draft.sett.per)} finished`,
        `repeat ${size.repeat.ends} × ${size.repeat.picks}`,
        `float ${floatOf(size)}${pattern}; ${passesOf(size, limit)}${wrong}`,
      ];
    });
    const widths = [0, 1, 2, 3].map((column) => Math.max(0, ...rows.map((row) => row[column]!.length)));
    const help = sizesRemedyInWords(question, sizes);
    // Ways that make the same blocks have the same floats and the same remedy, which is written once.
    const remedy = help === undefined || said.has(help) ? undefined : help;
    if (remedy !== undefined) said.add(remedy);
    return [
      WAY_WORDS[way],
      ...rows.map((row) => `  ${row.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join('  ')}`.trimEnd()),
      ...refused.map((refusal) => `  ${refusalInWords(refusal)}`),
      ...(remedy === undefined ? [] : [`  ${remedy}`]),
      '',
    ];
  });
}

/** All sizes as plain values, for JSON. */
export function sizesAsData({ sizes, refused }: Enlarged) {
  return {
    sizes: sizes.map(({ draft, width, finished, passes, ...size }) => ({
      ...size,
      height: size.picks * spacing(draft.sett).along,
      width,
      finished,
      passes: { ...Object.fromEntries(USUAL_LIMITS.map(({ name }, at) => [name, passes.usual[at]])), own: passes.own },
      draft: {
        threading: draft.threading,
        tieUp: draft.tieUp,
        treadling: draft.treadling,
        pickKinds: draft.pickKinds,
        warp: formatOrder(draft.warp, draft.yarns),
        weft: formatOrder(draft.weft, draft.yarns),
      },
    })),
    refused,
  };
}
