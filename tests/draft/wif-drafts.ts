import fc from 'fast-check';
import type { Draft, PickKind } from '../../src/draft/draft.js';

/** Any draft that the type holds: several shafts an end, idle treadles, two feet, units, companions, unused yarns. */
export const anyDraft: fc.Arbitrary<Draft> = fc
  .record({
    shafts: fc.integer({ min: 1, max: 12 }),
    treadles: fc.integer({ min: 1, max: 14 }),
    ends: fc.integer({ min: 1, max: 60 }),
    picks: fc.integer({ min: 1, max: 60 }),
    yarns: fc.uniqueArray(fc.constantFrom(...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'), { minLength: 1, maxLength: 26 }),
  })
  .chain(({ shafts, treadles, ends, picks, yarns }) => {
    const some = (most: number, count: number, least = 0) =>
      fc.array(fc.uniqueArray(fc.integer({ min: 1, max: most }), { minLength: least, maxLength: 3 }), {
        minLength: count,
        maxLength: count,
      });
    const each = <T>(one: fc.Arbitrary<T>, count: number) => fc.array(one, { minLength: count, maxLength: count });
    const units = (count: number) =>
      fc.uniqueArray(fc.integer({ min: 1, max: count }), { maxLength: 6 }).map((cuts) => {
        const stops = [0, ...cuts.filter((cut) => cut < count).sort((a, b) => a - b), count];
        return stops.slice(1).map((stop, index) => stop - stops[index]!);
      });
    const flag = fc.constantFrom(0, 1);
    const sett = fc.integer({ min: 100, max: 400_000 }).map((n) => n / 1000);
    const width = fc.integer({ min: 1, max: 50 }).map((n) => n / 10);
    return fc.record(
      {
        name: fc.constantFrom('Tide-line', 'Rosengång för löpare', 'M’s and O’s; “two” = 2', '名'),
        threading: some(shafts, ends, 1),
        tieUp: some(shafts, treadles),
        treadling: some(treadles, picks),
        pickKinds: each(fc.constantFrom<PickKind[]>('ground', 'pattern', 'tabby'), picks),
        endUnits: units(ends),
        pickUnits: units(picks),
        companions: fc.record({ ends: each(flag, ends), picks: each(flag, picks) }),
        widths: fc.record({ warp: width, ground: width, pattern: width, tabby: width }),
        yarns: fc
          .tuple(
            ...yarns.map((letter) =>
              fc.record(
                {
                  letter: fc.constant(letter),
                  name: fc.constantFrom('dark', 'grå', 'a, b', '=;['),
                  hex: fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`),
                  tex: fc.integer({ min: 1, max: 9000 }).map((n) => n / 10),
                },
                { requiredKeys: ['letter', 'name', 'hex'] },
              ),
            ),
          )
          .map((list) => [...list]),
        warp: each(fc.integer({ min: 0, max: yarns.length - 1 }), ends),
        weft: each(fc.integer({ min: 0, max: yarns.length - 1 }), picks),
        sett: fc.record({ ends: sett, picks: sett, per: fc.constantFrom('inch' as const, 'cm' as const) }),
      },
      {
        requiredKeys: [
          'threading',
          'tieUp',
          'treadling',
          'pickKinds',
          'endUnits',
          'pickUnits',
          'widths',
          'yarns',
          'warp',
          'weft',
          'sett',
        ],
      },
    );
  }) as fc.Arbitrary<Draft>;
