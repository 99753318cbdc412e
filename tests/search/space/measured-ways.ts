import { PRESETS } from '../../../src/score/rank/presets.js';
import type { Question } from '../../../src/search/question/question.js';
import { QUESTION } from '../question.js';

/** A question with the seconds of user time that it took either way. */
interface Measured {
  readonly name: string;
  readonly question: Question;
  readonly scored: number;
  readonly bounded: number;
}

const measured = (
  structure: string,
  longest: number,
  how: string,
  change: Partial<Question>,
  [scored, bounded]: readonly [number, number],
): Measured => ({
  name: `${structure}, orders of 2 to ${longest}, ${how}`,
  question: {
    ...QUESTION,
    structures: [structure],
    lengths: Array.from({ length: longest - 1 }, (_, k) => k + 2),
    ...change,
  },
  scored,
  bounded,
});

const { calm, clear, unexpected } = PRESETS;

/**
 * Questions on either side of where bounds begin to pay, each measured in a process of its own on 29 November 2026, Node
 * 20, one thread of a busy server. `npm run bench -- ways` measures them again, once their code is compiled.
 */
export const MEASURED: readonly Measured[] = [
  measured('halvdräll', 10, 'the unexpected', { rank: unexpected }, [6.4, 11.6]),
  measured('1/3 rosepath', 11, 'the unexpected', { rank: unexpected }, [1.9, 2.7]),
  measured('2/2 twill', 12, 'the unexpected', { rank: unexpected }, [3.8, 3.1]),
  measured('2/2 twill', 12, 'figure', { rank: { ...QUESTION.rank, figure: 2 } }, [2.8, 1.5]),
  measured('2/2 twill', 13, 'the clear', { rank: clear }, [12.5, 11.9]),
  measured('3/1 twill', 12, 'the calm', { rank: calm }, [5.7, 2.5]),
  measured('crackle', 8, 'the calm', { rank: calm }, [7.5, 2.7]),
  measured('turned satin', 10, 'contrast', {}, [2.7, 1.6]),
  measured(
    'overshot',
    12,
    'weft as warp, by unit',
    { weft: { rule: 'same' }, by: ['unit'], times: [2], show: 12 },
    [4.5, 3.3],
  ),
];
