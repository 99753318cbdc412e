import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawdown, isUp } from '../../src/cloth/drawdown.js';
import { type Draft, EVEN_WIDTHS } from '../../src/draft/draft.js';
import { AT_THE_LOOM, DRAWN_DOWN } from '../../src/draft/point-of-view.js';
import { draftSvg } from '../../src/render/draft-svg.js';

const YARNS = [
  { letter: 'D', name: 'dark', hex: '#1f2a44' },
  { letter: 'L', name: 'light', hex: '#efe6d2' },
  { letter: 'M', name: 'red', hex: '#a8452c' },
];
const TWILL = [
  [1, 2],
  [2, 3],
  [3, 4],
  [4, 1],
];

function twill(ends: number, picks: number, more: Partial<Draft> = {}): Draft {
  return {
    threading: Array.from({ length: ends }, (_, i) => [(i % 4) + 1]),
    tieUp: TWILL,
    treadling: Array.from({ length: picks }, (_, j) => [(j % 4) + 1]),
    pickKinds: Array(picks).fill('ground'),
    endUnits: Array(ends / 4).fill(4),
    pickUnits: Array(picks / 4).fill(4),
    widths: EVEN_WIDTHS,
    yarns: YARNS,
    warp: Array.from({ length: ends }, (_, i) => (i % 8 < 4 ? 0 : 1)),
    weft: Array.from({ length: picks }, (_, j) => (j % 8 < 4 ? 0 : 1)),
    sett: { ends: 20, picks: 20, per: 'inch' },
    ...more,
  };
}

const TITLE = { title: 'A draft', seen: DRAWN_DOWN };

/** The marked squares of a draft's three parts, by their paths, in the order threading, tie-up, treadling. */
function marked(svg: string): [number, number][][] {
  return [...svg.matchAll(/<path transform="[^"]*" d="((?:M\d+ \d+h\.76)+)"/g)].map(([, d]) =>
    [...d!.matchAll(/M(\d+) (\d+)h/g)].map(([, x, y]) => [Number(x), Number(y)]),
  );
}

/** The drawdown read back from its strokes: the colour that each cell shows. */
function cells(svg: string, ends: number, picks: number): string[][] {
  const ground = svg.match(/<rect [^>]*fill="(#\w+)"/)![1]!;
  const grid = Array.from({ length: picks }, () => Array<string>(ends).fill(ground));
  const group = svg.match(/shape-rendering="crispEdges">(.*?)<\/g>/)?.[1] ?? '';
  for (const [stroke] of group.matchAll(/<path [^>]*>/g)) {
    const attribute = (name: string) => stroke.match(new RegExp(` ${name}="([^"]*)"`))?.[1];
    const dashes = attribute('stroke-dasharray')?.split(' ').map(Number) ?? [ends, 0];
    const whole = dashes.reduce((sum, dash) => sum + dash, 0);
    const offset = Number(attribute('stroke-dashoffset') ?? 0);
    for (const [, row] of attribute('d')!.matchAll(/M0 (\d+)h/g)) {
      for (let i = 0; i < ends; i++) {
        let left = (i + offset) % whole;
        let dash = 0;
        while (left >= dashes[dash]!) left -= dashes[dash++]!;
        if (dash % 2 === 0) grid[Number(row)]![i] = attribute('stroke')!;
      }
    }
  }
  return grid;
}

describe('draftSvg', () => {
  it('threads shaft 1 nearest the cloth, reads treadles from the left, ties what is raised', () => {
    const [threading, tieUp, treadling] = marked(draftSvg(twill(8, 8), TITLE));
    expect(threading).toEqual([0, 1, 2, 3, 4, 5, 6, 7].map((i) => [i, 3 - (i % 4)]));
    expect(tieUp).toEqual(TWILL.flatMap((up, treadle) => up.map((shaft) => [treadle, 4 - shaft])));
    expect(treadling).toEqual([0, 1, 2, 3, 4, 5, 6, 7].map((j) => [j % 4, j]));
  });

  it('sets two marks in a row where two feet work', () => {
    const direct = { tieUp: [[1], [2], [3], [4]], treadling: TWILL };
    const [, , treadling] = marked(draftSvg(twill(4, 4, direct), TITLE));
    expect(treadling).toEqual(TWILL.flatMap((pair, j) => pair.map((treadle) => [treadle - 1, j])));
  });

  it('shows every cell of the drawdown in the colour of the thread on top', () => {
    const colours = (length: number) =>
      fc.array(fc.integer({ min: 0, max: 2 }), { minLength: length, maxLength: length });
    const shafts = fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 12, maxLength: 12 });
    fc.assert(
      fc.property(colours(12), colours(8), shafts, (warp, weft, threading) => {
        const draft = twill(12, 8, { warp, weft, threading: threading.map((shaft) => [shaft]) });
        const cloth = drawdown(draft);
        const shown = Array.from({ length: 8 }, (_, j) =>
          Array.from({ length: 12 }, (_, i) => YARNS[isUp(cloth, j, i) ? warp[i]! : weft[j]!]!.hex),
        );
        expect(cells(draftSvg(draft, TITLE), 12, 8)).toEqual(shown);
      }),
    );
  });

  it('turns threads over with the point of view, and keeps shaft 1 nearest the cloth', () => {
    const draft = twill(8, 4, { warp: [0, 0, 1, 1, 1, 1, 1, 1], weft: [0, 1, 1, 1] });
    const asWritten = cells(draftSvg(draft, TITLE), 8, 4);
    const seen = { pick: 'bottom', end: 'right', threading: 'below' } as const;
    const svg = draftSvg(draft, { title: 'A draft', seen });
    expect(cells(svg, 8, 4)).toEqual(asWritten.toReversed().map((row) => row.toReversed()));
    const [threading, tieUp, treadling] = marked(svg);
    expect(threading).toEqual([0, 1, 2, 3, 4, 5, 6, 7].map((i) => [i, 3 - (i % 4)]));
    expect(tieUp).toEqual(TWILL.flatMap((up, treadle) => up.map((shaft) => [treadle, shaft - 1])));
    expect(treadling).toEqual([0, 1, 2, 3].map((j) => [3 - j, j]));
    expect(draftSvg(draft, { title: 'A draft' })).toBe(draftSvg(draft, { title: 'A draft', seen: AT_THE_LOOM }));
  });

  it('says the colour orders in letters, runs by one letter', () => {
    const svg = draftSvg(twill(8, 8, { warp: [0, 0, 0, 1, 1, 0, 2, 2] }), TITLE);
    // D stands in the middle of its first run of three and on its single end, L and M each in the middle of theirs.
    expect(svg).toContain('<text x="1.5 5.5" y=".76">DD</text>');
    expect(svg).toContain('<text x="4" y=".76">L</text>');
    expect(svg).toContain('<text x="7" y=".76">M</text>');
  });

  it('says where to begin, and numbers shafts and treadles', () => {
    const svg = draftSvg(twill(8, 8), TITLE);
    expect(svg).toContain('>begin here</text>');
    for (const n of [1, 2, 3, 4]) expect(svg.split(`>${n}</text>`).length - 1).toBeGreaterThanOrEqual(2);
  });

  it('is a picture with a title, and lets no markup through', () => {
    const nasty = twill(8, 8, { yarns: [{ ...YARNS[0]!, letter: '<' }, YARNS[1]!] });
    const svg = draftSvg(nasty, { title: '</title><script>&"' });
    expect(svg).toMatch(/^<svg [^>]*role="img"/);
    expect(svg).toContain('<title>&lt;/title&gt;&lt;script&gt;&amp;&quot;</title>');
    expect(svg).not.toContain('<script');
    expect(svg).toContain('>&lt;</text>');
  });

  it('stays small for a repeat of 320 ends and picks', () => {
    const bits = Array.from({ length: 320 }, (_, i) => ((i * i) % 7 < 3 ? 0 : 1));
    expect(draftSvg(twill(320, 320, { warp: bits, weft: bits }), TITLE).length).toBeLessThan(60_000);
  });
});
