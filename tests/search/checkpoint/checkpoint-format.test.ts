import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  entryBytes,
  openingBytes,
  readCheckpoint,
  resultAt,
} from '../../../src/search/checkpoint/checkpoint-format.js';
import { BOUNDED, headerOf, result } from './searches.js';

describe('the file', () => {
  const keys = ['a', 'b', 'c', 'd'];
  const start = openingBytes(headerOf(BOUNDED));
  const whole = Buffer.concat([start, ...keys.map((key, n) => entryBytes({ key, result: result(n) }))]);

  it('gives back what was put in', () => {
    const read = readCheckpoint(inMemory(whole));
    expect(read.header).toEqual(headerOf(BOUNDED));
    expect(keys.map((key) => resultAt(inMemory(whole), read.places.get(key)!))).toEqual(keys.map((_, n) => result(n)));
  });

  it('wherever it is cut, the whole records before the cut count and nothing else', () => {
    for (let cut = start.length; cut < whole.length; cut++) {
      const read = readCheckpoint(inMemory(whole.subarray(0, cut)));
      expect([...read.places.keys()]).toEqual(keys.slice(0, read.places.size));
      expect(read.whole).toBeLessThanOrEqual(cut);
      expect(read.ended).toBe(false);
    }
    for (let cut = 0; cut < start.length; cut++) {
      expect(() => readCheckpoint(inMemory(whole.subarray(0, cut)))).toThrow(
        /^found .*; expected the progress of a search$/,
      );
    }
  });

  it('whichever byte is hurt, nothing false is read', () => {
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 }), (at, change) => {
        const hurt = Buffer.from(whole);
        hurt[at] = hurt[at]! ^ change;
        if (at < start.length) {
          expect(() => readCheckpoint(inMemory(hurt))).toThrow('expected the progress');
          return;
        }
        const { places } = readCheckpoint(inMemory(hurt));
        expect([...places.keys()]).toEqual(keys.slice(0, places.size));
        expect(places.size).toBeLessThan(keys.length);
        for (const [key, place] of places) expect(resultAt(inMemory(hurt), place)).toEqual(result(keys.indexOf(key)));
      }),
    );
  });
});

function inMemory(bytes: Buffer) {
  return { size: bytes.length, read: (from: number, length: number) => bytes.subarray(from, from + length) };
}
