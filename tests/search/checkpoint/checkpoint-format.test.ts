import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  entryBytes,
  openingBytes,
  readCheckpoint,
  resultAt,
} from '../../../src/search/checkpoint/checkpoint-format.js';
import type { JobResult } from '../../../src/search/pool/jobs.js';
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

  it('the same work gives the same bytes, however its numbers lie in memory', () => {
    // A field that has once held a fraction keeps whole numbers as fractions, and a list that had a gap stays one with gaps.
    const promised = (index: number) => ({ index, hope: 1, place: 0 });
    const bytes = (promising: JobResult['promising']) => entryBytes({ key: 'k', result: { ...result(1), promising } });
    const before = bytes([promised(3)]);
    promised(0.5);
    const gapped: ReturnType<typeof promised>[] = [];
    gapped[1] = promised(3);
    gapped.shift();
    expect(bytes(gapped)).toEqual(before);
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

  it('what has a right checksum and is no search is refused, and what is no job ends it', () => {
    for (const header of [null, 'x', 1, {}, { program: '0', question: 1, space: {} }]) {
      expect(() => readCheckpoint(inMemory(openingBytes(header as never)))).toThrow(
        'found it damaged from its beginning; expected the progress of a search',
      );
    }
    const { batch, ...others } = result(1);
    const odd = [
      {},
      { batch },
      { ...others, batch: {} },
      { ...others, batch, pruned: -1 },
      { ...others, batch, promising: [{ index: 'x', hope: 1, place: 0 }] },
      { ...others, batch, promising: [{ index: 1, hope: 1 }] },
      { ...others, batch: { ...batch, length: 2 } },
      { ...others, batch: { ...batch, niche: [0] } },
      { ...others, batch: { ...batch, key: Float64Array.of(1, 2, 3, 4) } },
      { ...others, batch: { ...batch, setAside: { float: 0 } } },
    ];
    expect(readCheckpoint(inMemory(Buffer.concat([start, entryBytes({ key: 'k', result: result(1) })])))).toMatchObject(
      {
        places: { size: 1 },
      },
    );
    for (const entry of [
      ...[null, 'x', {}, { key: 'x' }, { key: 1, result: result(1) }, { end: 'all' }],
      ...odd.map((each) => ({ key: 'k', result: each })),
    ]) {
      const read = readCheckpoint(
        inMemory(Buffer.concat([whole, entryBytes(entry as never), whole.subarray(start.length)])),
      );
      expect([read.places.size, read.whole, read.ended]).toEqual([keys.length, whole.length, false]);
    }
  });

  it('a record that says it is longer than any job’s is not read', () => {
    const lead = Buffer.alloc(12);
    lead.writeUInt32LE(100_000_001);
    const opened = Buffer.concat([start, lead]);
    const size = 4e9;
    const read = (from: number, length: number): Buffer => {
      expect(length).toBeLessThan(1e6);
      return opened.subarray(from, from + length);
    };
    expect(readCheckpoint({ size, read })).toMatchObject({ whole: start.length, ended: false });
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
