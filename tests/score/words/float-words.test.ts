import { describe, expect, it } from 'vitest';
import { EVEN_WIDTHS } from '../../../src/draft/draft.js';
import { longestFloatInWords, placeInWords, weftKindsInWords } from '../../../src/score/words/float-words.js';
import { draftWith } from '../../gallery/trial.js';

describe('the longest float in words', () => {
  it('names the thread, the side and the crossing, all from 1', () => {
    expect(placeInWords({ side: 'warpBack', strand: 2, from: 6, length: 3 })).toBe(
      'end 3 floats over 3 picks on the back, from pick 7 on',
    );
    expect(placeInWords({ side: 'weftFace', strand: 0, from: 0, length: 1 })).toBe(
      'pick 1 floats over 1 end on the face, from end 1 on',
    );
    expect(placeInWords({ side: 'weftBack', strand: 4, from: 0, length: null })).toBe('pick 5 never interlaces');
  });

  it('measures it as the threads lie: a pattern weft takes two thirds of the room of itself and a tabby', () => {
    // Ends 1 up in picks 1 to 4 of six at 20 an inch; of the six picks the odd ones are twice as thick.
    const lifts = [[1], [1], [1], [1], [2], [2]];
    const pickKinds = lifts.map((_, j) => (j % 2 === 0 ? ('pattern' as const) : ('tabby' as const)));
    const rib = draftWith(lifts, 'DL', 'DDDDDD', { pickKinds, widths: { ...EVEN_WIDTHS, pattern: 2 } });
    expect(longestFloatInWords(rib)).toBe(
      'end 1 floats over 4 picks on the face, from pick 1 on: 0.20 in as the threads lie',
    );
    const unevenly = { ...rib, pickKinds: pickKinds.map((kind, j) => (j < 4 ? kind : ('tabby' as const))) };
    // Rooms of 2, 1, 2, 1 of eight in all, on 0.3 in.
    expect(longestFloatInWords(unevenly)).toContain(': 0.23 in as the threads lie');
    const [ends, never] = [draftWith([[1]], 'D', 'D'), draftWith([[1, 2]], 'DL', 'D')];
    for (const loose of [ends, never]) expect(longestFloatInWords(loose)).toBe('end 1 never interlaces');
  });

  it('gives the weft floats of each kind of pick, where there are several kinds', () => {
    const lifts = [
      [1, 2],
      [1, 3],
      [3, 4],
      [2, 4],
    ];
    const pickKinds = ['pattern', 'tabby', 'pattern', 'tabby'] as const;
    const belt = draftWith(lifts, 'LLLL', 'DLDL', { pickKinds });
    expect(weftKindsInWords(belt)).toEqual([
      ['pattern weft', '2 on the face, 2 on the back'],
      ['tabby weft', '1 on the face, 1 on the back'],
    ]);
    expect(weftKindsInWords(draftWith(lifts, 'LLLL', 'DLDL'))).toEqual([]);
  });
});
