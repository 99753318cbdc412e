import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  AT_THE_LOOM,
  asDrawn,
  draftSeenInWords,
  numberAt,
  SEEN,
  type Seen,
  seenWritten,
} from '../../src/draft/point-of-view.js';
import { DEFAULT_SETT, DEFAULT_YARNS } from '../../src/draft/yaml/yarns-given.js';
import { findStructure, weaveOf } from '../../src/structure/catalogue/catalogue.js';

const seen = fc.record<Seen>({
  pick: fc.constantFrom('top', 'bottom'),
  end: fc.constantFrom('left', 'right'),
  threading: fc.constantFrom('above', 'below'),
});

describe('the point of view', () => {
  it('reads what it writes, in any order', () => {
    fc.assert(
      fc.property(seen, (place) => {
        expect(SEEN.read(seenWritten(place))).toEqual(place);
        expect(SEEN.read([place.threading, place.end, place.pick])).toEqual(place);
      }),
    );
  });

  it('is as at the loom in what is not given', () => {
    expect(SEEN.read(undefined)).toEqual(AT_THE_LOOM);
    expect(SEEN.read('Right')).toEqual({ ...AT_THE_LOOM, end: 'right' });
    expect(draftSeenInWords(AT_THE_LOOM)).toBe('end 1 at the left, the first pick at the bottom, threading above');
  });

  it.each(['', 'up', 'top bottom', 'left, left', 'constructor'])('refuses “%s”', (text) => {
    expect(() => SEEN.read(text)).toThrow('expected first pick top or bottom, end 1 left or right');
  });

  it('draws each thread where its number says', () => {
    const weave = weaveOf(findStructure('crackle'), [...'AABC']);
    const draft = {
      ...weave,
      yarns: DEFAULT_YARNS,
      warp: weave.threading.map((_, end) => (end % 3 === 0 ? 0 : 1)),
      weft: weave.treadling.map((_, pick) => (pick % 5 === 0 ? 0 : 1)),
      sett: DEFAULT_SETT,
    };
    fc.assert(
      fc.property(seen, (place) => {
        const drawn = asDrawn(draft, place);
        const { length } = draft.threading;
        drawn.threading.forEach((on, at) => {
          const end = numberAt(at, length, place.end) - 1;
          expect([on, drawn.warp[at]]).toEqual([draft.threading[end], draft.warp[end]]);
        });
        drawn.treadling.forEach((on, at, all) => {
          const pick = numberAt(at, all.length, place.pick) - 1;
          expect([on, drawn.weft[at], drawn.pickKinds[at]]).toEqual([
            draft.treadling[pick],
            draft.weft[pick],
            draft.pickKinds[pick],
          ]);
        });
        expect(asDrawn(drawn, place)).toEqual(draft);
      }),
    );
  });
});
