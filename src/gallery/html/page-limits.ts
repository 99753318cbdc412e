import type { Sett } from '../../draft/draft.js';
import { limitInWords } from '../../score/words/figure-words.js';
import type { Limits, Question } from '../../search/question/question.js';
import type { Loom, LoomKind } from '../../structure/loom/loom-fit.js';
import { counted } from '../../words/counts.js';

/** Words for the limits above which a cloth is set aside, one item each. */
export function limitsInWords(limits: Limits, sett: Sett): string[] {
  const { float, repeat, contrast, warpChanges, weftChanges, shuttles, treadles, shafts } = limits;
  const more: readonly (readonly [number | undefined, string])[] = [
    [repeat, 'threads in a repeat'],
    [warpChanges, 'warp changes'],
    [weftChanges, 'weft changes'],
    [shuttles, 'shuttles'],
    [treadles, 'treadles'],
    [shafts, 'shafts'],
  ];
  return [
    `floats longer than ${limitInWords(float, sett)}`,
    ...(contrast === undefined ? [] : [`less contrast than ${contrast}`]),
    ...more.filter(([most]) => most !== undefined).map(([most, what]) => `more than ${most} ${what}`),
  ];
}

/** The limits that a question sets, other than for floats and contrast: `repeat 80`. */
export function otherLimits({ limits, loom }: Pick<Question, 'limits' | 'loom'>): string[] {
  const { repeat, warpChanges, weftChanges, shuttles, treadles, shafts } = limits;
  return Object.entries({
    repeat,
    'warp changes': warpChanges,
    'weft changes': weftChanges,
    shuttles: shuttles ?? loom?.shuttles,
    treadles: treadles ?? loom?.treadles,
    shafts: shafts ?? loom?.shafts,
  }).flatMap(([name, limit]) => (limit === undefined ? [] : [`${name} ${limit}`]));
}

/** The reason for setting aside what is over a limit other than for floats and contrast, or has blocks without a draft. */
export function pastLimitInWords(question: Pick<Question, 'limits' | 'loom' | 'profile'>): string {
  const blocks = question.profile === 'order' ? ['blocks that cannot be neighbours'] : [];
  return `over a limit (${[...otherLimits(question), ...blocks].join(', ')})`;
}

/** Words for the loom: its kind, then its counts. */
export function loomInWords({ kind, shafts, treadles, heddles, ends, shuttles }: Loom): string {
  const counts: readonly (readonly [number | undefined, string, string?])[] = [
    [shafts, 'shaft'],
    [treadles, 'treadle'],
    [ends, 'end in the warp', 'ends in the warp'],
    [shuttles, 'shuttle'],
  ];
  return [
    KIND_WORDS[kind],
    ...counts.filter(([n]) => n !== undefined).map(([n, one, more]) => counted(n!, one, more)),
    ...(heddles === undefined ? [] : [heddlesInWords(heddles)]),
  ].join(', ');
}

const KIND_WORDS: Readonly<Record<LoomKind, string>> = {
  rising: 'rising shed',
  sinking: 'sinking shed',
  countermarch: 'countermarch',
  table: 'table loom',
};

function heddlesInWords(heddles: readonly number[]): string {
  const isEqual = heddles.every((count) => count === heddles[0]);
  return isEqual ? `${heddles[0]} heddles a shaft` : `heddles ${heddles.join(' ')} from shaft 1 on`;
}
