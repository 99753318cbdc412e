import { setTimeout as rest } from 'node:timers/promises';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inFlight } from '../../../src/gallery/sheet/in-flight.js';
import { runs } from '../../long.js';

describe('work in flight', () => {
  test('does each item once, begun in order, and never more than so many at once', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.nat(3), { maxLength: 12 }), fc.integer({ min: 1, max: 5 }), async (waits, most) => {
        const begun: number[] = [];
        let under = 0;
        let highest = 0;
        await inFlight(waits.entries(), most, async ([at, wait]) => {
          begun.push(at);
          highest = Math.max(highest, ++under);
          await rest(wait);
          under--;
        });
        expect(begun).toEqual([...waits.keys()]);
        expect(under).toBe(0);
        expect(highest).toBe(Math.min(most, waits.length));
      }),
      { numRuns: runs(30) },
    );
  });

  test('begins nothing after a failure, and fails only when all that was under way has ended', async () => {
    const log: string[] = [];
    const work = async (item: number): Promise<void> => {
      log.push(`begin ${item}`);
      await rest(item * 5);
      if (item === 1) throw new Error('torn');
      log.push(`end ${item}`);
    };
    await expect(inFlight([1, 2, 3], 2, work)).rejects.toThrow('torn');
    expect(log).toEqual(['begin 1', 'begin 2', 'end 2']);
  });
});
