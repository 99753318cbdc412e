import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawdown, isUp } from '../../src/cloth/drawdown.js';
import { linearLight, luminance, type Yarn } from '../../src/colour/yarn.js';
import { type Draft, EVEN_WIDTHS, type Sett } from '../../src/draft/draft.js';
import { AT_THE_LOOM, DRAWN_DOWN, type Seen } from '../../src/draft/point-of-view.js';
import { type Picture, paintCloth } from '../../src/render/cloth.js';
import { thicknesses, trueLay } from '../../src/render/strands.js';
import { runs } from '../long.js';

const BLACK: Yarn = { letter: 'D', name: 'black', hex: '#000000' };
const WHITE: Yarn = { letter: 'L', name: 'white', hex: '#ffffff' };
const GREY: Yarn = { letter: 'G', name: 'grey', hex: '#777777' };
const SETT: Sett = { ends: 10, picks: 10, per: 'cm' };
const TWILL = [
  [1, 2],
  [2, 3],
  [3, 4],
  [4, 1],
];

/** A draft with one shaft an end and one treadle a pick, one whole repeat. */
function draft(threading: number[], tieUp: number[][], treadling: number[], more: Partial<Draft>): Draft {
  return {
    threading: threading.map((shaft) => [shaft]),
    tieUp,
    treadling: treadling.map((treadle) => [treadle]),
    pickKinds: treadling.map(() => 'ground'),
    endUnits: [threading.length],
    pickUnits: [treadling.length],
    widths: EVEN_WIDTHS,
    yarns: [BLACK, WHITE],
    warp: threading.map(() => 0),
    weft: treadling.map(() => 1),
    sett: SETT,
    ...more,
  };
}

const plain = (more: Partial<Draft> = {}) => draft([1, 2], [[1], [2]], [1, 2], more);
const eight = [1, 2, 3, 4, 1, 2, 3, 4];
const four = [0, 0, 0, 0, 1, 1, 1, 1];
const houndsTooth = draft(eight, TWILL, eight, { warp: four, weft: four });
/** A piece of cloth that begins at the upper left, as an array of points does. */
const scale = (mm: number, perMillimetre: number, seen = DRAWN_DOWN) => ({
  millimetres: { width: mm, height: mm },
  perMillimetre,
  seen,
});
const point = ({ width, rgb }: Picture, x: number, y: number) => [
  ...rgb.subarray((y * width + x) * 3, (y * width + x) * 3 + 3),
];

describe('paintCloth', () => {
  it('mixes threads finer than a point in linear light: half black, half white is sRGB 188, not 128', () => {
    // One thread is a millimetre; one point takes in eight each way.
    const far = paintCloth(plain(), scale(80, 1 / 8));
    expect([far.width, far.height]).toEqual([10, 10]);
    expect(new Set(far.rgb)).toEqual(new Set([188]));
  });

  it('keeps on the average the colour of a yarn, however it is shaded', () => {
    for (const cloth of [plain({ yarns: [GREY, GREY] }), { ...houndsTooth, yarns: [GREY, GREY] }]) {
      const { rgb } = paintCloth(cloth, scale(8, 9));
      const mean =
        [...rgb].reduce((sum, v) => sum + linearLight(`#${v.toString(16).padStart(2, '0').repeat(3)}`)[0], 0) /
        rgb.length;
      expect(mean / luminance(GREY.hex)).toBeCloseTo(1, 2);
    }
  });

  it('is at true scale: ten ends of a warp with ten to the centimetre are 10 mm', () => {
    const stripes = draft(Array(20).fill(1), [[1]], [1], { warp: [...Array(10).fill(0), ...Array(10).fill(1)] });
    const picture = paintCloth({ ...stripes, weft: [0] }, scale(20, 5));
    const lit = Array.from({ length: picture.width }, (_, x) => point(picture, x, 3)[0]! > 60);
    expect(lit.indexOf(true)).toBe(50);
    expect(lit.lastIndexOf(true)).toBe(99);
  });

  it('draws threads that look the same just as if each were drawn by itself', () => {
    const strands = fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 9 });
    const cloth = fc.record({
      threading: strands,
      treadling: strands,
      colours: fc.array(fc.nat(1), { minLength: 9, maxLength: 9 }),
      fine: fc.boolean(),
    });
    const view = fc.record({
      side: fc.constantFrom('face' as const, 'back' as const),
      perMillimetre: fc.constantFrom(0.7, 2, 5.3, 8),
    });
    fc.assert(
      fc.property(cloth, view, ({ threading, treadling, colours, fine }, seen) => {
        const warp = threading.map((_, i) => colours[i]!);
        const weft = treadling.map((_, j) => 1 - colours[8 - j]!);
        const one = (list: number[]) => list.map((n) => n + 1);
        const widths = { ...EVEN_WIDTHS, ground: fine ? 0.5 : 1 };
        const woven = draft(one(threading), TWILL, one(treadling), { warp, weft, widths });
        // A yarn of its own for every thread, so that no two are known to be alike.
        const own = [...warp, ...weft].map((colour) => woven.yarns[colour]!);
        const apart = { ...woven, yarns: own, warp: warp.map((_, i) => i), weft: weft.map((_, j) => warp.length + j) };
        const options = { ...scale(12, seen.perMillimetre), side: seen.side };
        expect(Buffer.compare(paintCloth(woven, options).rgb, paintCloth(apart, options).rgb)).toBe(0);
      }),
      { numRuns: runs(60) },
    );
  });

  it('goes on without a seam', () => {
    // Eight ends of 1 mm at 6 points to the millimetre: 48 points a repeat.
    const picture = paintCloth(houndsTooth, scale(24, 6));
    for (let y = 0; y < 96; y++) {
      for (let x = 0; x < 96; x++) {
        const here = point(picture, x, y);
        expect(point(picture, x + 48, y)).toEqual(here);
        expect(point(picture, x, y + 48)).toEqual(here);
      }
    }
  });

  it('shows the back as a cloth turned over left to right, warp and weft changed about', () => {
    const down = draft(
      eight.toReversed(),
      TWILL.map((up) => [1, 2, 3, 4].filter((s) => !up.includes(s))),
      eight,
      {
        warp: [0, 0, 1, 0, 1, 1, 0, 1],
        weft: four,
      },
    );
    const face = { ...draft(eight, TWILL, eight, { warp: down.warp.toReversed(), weft: four }) };
    expect(paintCloth(face, { ...scale(16, 5.3), side: 'back' })).toEqual(paintCloth(down, scale(16, 5.3)));
  });

  it('shows value only as the grey of each yarn’s luminance', () => {
    const yarns = [
      { ...BLACK, hex: '#c0392b' },
      { ...WHITE, hex: '#2e8b57' },
    ];
    const { rgb } = paintCloth({ ...houndsTooth, yarns }, { ...scale(16, 0.25), grey: true });
    for (let at = 0; at < rgb.length; at += 3) expect(new Set(rgb.subarray(at, at + 3)).size).toBe(1);
  });

  it('gives a pattern weft twice the room of tabby, and a yarn room by the root of its tex', () => {
    const pickKinds = ['pattern', 'tabby'] as const;
    const belt = plain({ pickKinds, widths: { ...EVEN_WIDTHS, pattern: 2 } });
    const { pitch } = trueLay(belt, 1, 0).picks;
    expect(pitch[0]! / pitch[1]!).toBeCloseTo(2, 12);
    expect(pitch[0]! + pitch[1]!).toBeCloseTo(2, 12);
    const weighed = plain({
      yarns: [
        { ...BLACK, tex: 100 },
        { ...WHITE, tex: 25 },
      ],
    });
    expect([...thicknesses(weighed).ends, ...thicknesses(weighed).picks]).toEqual([10, 10, 5, 5]);
    // One yarn for warp and pattern weft: the structure says how it is wound; a thick yarn is as thick as it is.
    const wound = (warp: number, weft: number) => ({
      ...weighed,
      widths: { warp: 1, ground: 1, pattern: 2, tabby: 1 },
      pickKinds: ['pattern', 'tabby'] as const,
      yarns: [
        { ...BLACK, tex: weft },
        { ...WHITE, tex: warp },
      ],
      warp: [1, 1],
      weft: [0, 1],
    });
    expect([...thicknesses(wound(100, 100)).picks]).toEqual([20, 10]);
    expect([...thicknesses(wound(100, 900)).picks]).toEqual([30, 10]);
    expect([...thicknesses(wound(100, 49)).picks]).toEqual([7, 10]);
    const halfKnown = plain({ yarns: [{ ...BLACK, tex: 100 }, WHITE] });
    expect([...thicknesses(halfKnown).ends]).toEqual([1, 1]);
  });

  it('draws a thin weft thinner than its room where the warp predominates', () => {
    const rep = plain({ widths: { ...EVEN_WIDTHS, ground: 0.5 }, sett: { ends: 20, picks: 10, per: 'cm' } });
    const { ends, picks } = trueLay(rep, 10, 0);
    expect(ends.body[0]! / ends.pitch[0]!).toBe(1);
    // Half as thick, and half as many to the centimetre.
    expect(picks.body[0]! / picks.pitch[0]!).toBeCloseTo(0.5 * Math.sqrt(0.5), 12);
    const belt = plain({ pickKinds: ['pattern', 'tabby'], widths: { ...EVEN_WIDTHS, pattern: 2 } });
    const laid = trueLay(belt, 10, 0);
    for (const { body, pitch } of [laid.ends, laid.picks]) expect([...body]).toEqual([...pitch]);
  });
});

describe('a fine weft in a close warp', () => {
  // Two ends of each colour by turns on the face, as in turned taqueté: dark over three picks, then light.
  const threading = [1, 2, 1, 2];
  const tieUp = [[1], [1, 2], [2]];
  const widths = { ...EVEN_WIDTHS, ground: 0.5 };
  const yarns = [BLACK, WHITE, GREY];
  const woven = (more: Partial<Draft> = {}) =>
    draft(threading, tieUp, [1, 1, 1, 2, 3, 3, 3, 2], {
      widths,
      yarns,
      warp: [0, 1, 0, 1],
      weft: Array(8).fill(0),
      ...more,
    });

  it('hides the end that is down behind the ends that are up beside it', () => {
    const { rgb, width } = paintCloth(woven(), scale(8, 10));
    // In the second pick every dark end is up: no light end is seen.
    for (let y = 11; y < 19; y++)
      expect(Math.max(...rgb.subarray(y * width * 3, (y + 1) * width * 3))).toBeLessThan(40);
  });

  it('shows it where no end is up, and where the weft is not fine', () => {
    const bare = draft([1], [[]], [1], { widths, yarns, warp: [1], weft: [0] });
    expect(Math.max(...paintCloth(bare, scale(4, 10)).rgb)).toBeGreaterThan(100);
    const open = woven({ widths: EVEN_WIDTHS, sett: { ends: 20, picks: 10, per: 'cm' } });
    const { rgb, width } = paintCloth(open, scale(8, 10));
    expect(Math.max(...rgb.subarray(11 * width * 3, 19 * width * 3))).toBeGreaterThan(100);
  });

  it('parts the room of several between the two that close over them', () => {
    // Ends 1 (white) and 4 (grey) are up; of ends 2 and 3 the first shows white, the second grey, beside the weft.
    const cloth = draft([1, 2, 2, 1], [[1], [2]], [1, 2], { widths, yarns, warp: [1, 0, 0, 2], weft: [0, 0] });
    const picture = paintCloth(cloth, scale(4, 10));
    expect(point(picture, 15, 0)[0]).toBeGreaterThan(200);
    const grey = point(picture, 25, 0)[0]!;
    expect(grey).toBeGreaterThan(60);
    expect(grey).toBeLessThan(140);
  });
});

describe('points of view', () => {
  it.each([
    ['bottom', 'left'],
    ['bottom', 'right'],
    ['top', 'right'],
  ] as const)('first pick at the %s, end 1 at the %s: the same picture, turned over', (pick, end) => {
    const seen: Seen = { pick, end, threading: 'above' };
    const plain = paintCloth(houndsTooth, scale(5.3, 4.7));
    const turned = paintCloth(houndsTooth, scale(5.3, 4.7, seen));
    expect([turned.width, turned.height]).toEqual([plain.width, plain.height]);
    for (let y = 0; y < plain.height; y++) {
      for (let x = 0; x < plain.width; x++) {
        const there = [
          end === 'right' ? plain.width - 1 - x : x,
          pick === 'bottom' ? plain.height - 1 - y : y,
        ] as const;
        expect(point(turned, x, y)).toEqual(point(plain, ...there));
      }
    }
  });

  it('is that of the loom where none is given', () => {
    const { seen: _, ...usual } = scale(5, 4);
    expect(paintCloth(houndsTooth, usual)).toEqual(paintCloth(houndsTooth, scale(5, 4, AT_THE_LOOM)));
  });
});

describe('light is gathered exactly', () => {
  /** Light (0–1, uneven) at one place of a cloth with one grey level a strand, said plainly, place by place. */
  function lightAt(cloth: Draft, perMm: number, relief: number, light: number[], x: number, y: number): number {
    const grid = drawdown(cloth);
    const lay = trueLay(cloth, perMm, relief);
    const find = ({ pitch, before, body, line }: typeof lay.ends, place: number) => {
      const whole = pitch.reduce((sum, p) => sum + p, 0);
      let left = place % whole;
      let strand = 0;
      while (left >= pitch[strand]!) left -= pitch[strand++]!;
      const t = left - before[strand]! - body[strand]! / 2;
      const half = body[strand]! / 2;
      const inBody = Math.abs(t) < half;
      const inLine = t >= half && t < half + line[strand]!;
      const round = inBody ? 1 - relief * 0.35 * (t / half) ** 2 : inLine ? 1 - relief * 0.6 : 0;
      return { strand, round, covered: inBody || inLine, left, room: pitch[strand]! };
    };
    const end = find(lay.ends, x);
    const pick = find(lay.picks, y);
    const P = grid.ends;
    const Q = grid.picks;
    const up = (j: number, i: number) => isUp(grid, (j + Q) % Q, (i + P) % P);
    const isEnd = up(pick.strand, end.strand);
    const across = isEnd ? end : pick;
    const along = isEnd ? pick : end;
    const on = (step: number) =>
      (isEnd ? up(pick.strand + step, end.strand) : up(pick.strand, end.strand + step)) === isEnd;
    const dive = (distance: number) => relief * 0.35 * Math.max(0, 1 - distance / (along.room / 2)) ** 2;
    const own = light[(isEnd ? cloth.warp : cloth.weft)[across.strand]!]!;
    // Under a fine weft the ends that are up on both sides meet over those that are down, in the middle of them.
    const seen = (): number => {
      const at = end.strand + end.left / end.room;
      let left = end.strand;
      let right = end.strand;
      while (!up(pick.strand, left) && left > end.strand - P) left--;
      while (!up(pick.strand, right) && right < end.strand + P) right++;
      if (cloth.widths.ground >= cloth.widths.warp || !up(pick.strand, left)) return end.strand;
      return (((at - (left + 1) < right - at ? left : right) % P) + P) % P;
    };
    const under = light[isEnd ? cloth.weft[pick.strand]! : cloth.warp[seen()]!]!;
    if (!across.covered) return under * (1 - relief * 0.3);
    return own * across.round * (1 - (on(-1) ? 0 : dive(along.left)) - (on(1) ? 0 : dive(along.room - along.left)));
  }

  const anyDraft = fc
    .record({
      threading: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: 5 }),
      treadling: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: 5 }),
      tieUp: fc.array(fc.subarray([1, 2, 3]), { minLength: 3, maxLength: 3 }),
      bits: fc.array(fc.integer({ min: 0, max: 1 }), { minLength: 10, maxLength: 10 }),
      thin: fc.constantFrom(0.5, 1, 1.7),
      ends: fc.integer({ min: 6, max: 14 }),
    })
    .map(({ threading, treadling, tieUp, bits, thin, ends }) =>
      draft(threading, tieUp, treadling, {
        warp: threading.map((_, i) => bits[i]!),
        weft: treadling.map((_, j) => bits[5 + j]!),
        widths: { ...EVEN_WIDTHS, ground: thin },
        sett: { ends, picks: 9, per: 'cm' },
        yarns: [
          { ...BLACK, hex: '#404040' },
          { ...WHITE, hex: '#909090' },
        ],
      }),
    );

  it('as a fine sampling of every point finds it', () => {
    fc.assert(
      fc.property(anyDraft, fc.double({ min: 0.8, max: 6, noNaN: true }), (cloth, perMm) => {
        const finest = Math.min(10 / cloth.sett.ends, 10 / cloth.sett.picks) * perMm;
        const relief = Math.max(0, Math.min(1, (finest - 1) / 3));
        const sheen = 0.03 * relief;
        const light = cloth.yarns.map((yarn) => luminance(yarn.hex) + sheen);
        const sampled = (at: (x: number, y: number) => number, width: number, height: number, n: number) => {
          let sum = 0;
          for (let a = 0; a < n; a++) {
            for (let b = 0; b < n; b++) sum += at(((a + 0.5) / n) * width, ((b + 0.5) / n) * height);
          }
          return sum / (n * n);
        };
        const lay = trueLay(cloth, perMm, relief);
        const span = (pitch: Float64Array) => pitch.reduce((sum, p) => sum + p, 0);
        const lost = sampled(
          (x, y) => lightAt(cloth, perMm, relief, [1, 1], x, y),
          span(lay.ends.pitch),
          span(lay.picks.pitch),
          120,
        );
        const picture = paintCloth(cloth, scale(3 / perMm, perMm));
        for (const [x, y] of [
          [0, 0],
          [1, 2],
          [2, 1],
        ] as const) {
          const exact = sampled((u, v) => lightAt(cloth, perMm, relief, light, x + u, y + v), 1, 1, 40) / lost - sheen;
          const drawn = luminance(
            `#${point(picture, x, y)
              .map((v) => v.toString(16).padStart(2, '0'))
              .join('')}`,
          );
          expect(Math.abs(drawn - exact)).toBeLessThan(0.01);
        }
      }),
      { numRuns: runs(20, 600) },
    );
  });
});
