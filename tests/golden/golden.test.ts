import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, test, vi } from 'vitest';
import type { Draft } from '../../src/draft/draft.js';
import { swatch } from '../../src/gallery/sheet/swatch.js';
import type { WarpPlan } from '../../src/plan/piece/warp-plan.js';
import type { Picture } from '../../src/render/cloth.js';
import { draftSvg } from '../../src/render/draft-svg.js';
import { HOUNDS_TOOTH, trialOutcome } from '../gallery/trial.js';
import { contactSheet, DRAWINGS, pinned, SHARED, TWILL, teacherSheet, warpSheet } from './drawings.js';
import { different, golden, HELD, hold, TOLERANCE } from './golden.js';
import { pngPicture, svgPicture } from './raster.js';

describe('golden pictures', () => {
  test.each(Object.entries(DRAWINGS))('%s', async (name, draw) => hold(name, await draw()));

  test('are there for what is drawn, and for nothing else', () => {
    const files = readdirSync(HELD.folder).filter((file) => !file.endsWith('-changed.png'));
    expect(files.toSorted()).toEqual(
      Object.keys(DRAWINGS)
        .map((name) => `${name}.png`)
        .toSorted(),
    );
  });
});

type Wrong = (draft: Draft) => Draft;

/** End 3, and as many after it as there are, each on the next shaft. */
const oneShaftOff =
  (ends = Number.POSITIVE_INFINITY): Wrong =>
  (draft) => ({
    ...draft,
    threading: draft.threading.map((shafts, i) => (i < 2 || i >= 2 + ends ? shafts : [(shafts[0]! % 4) + 1])),
  });
const upsideDown: Wrong = (draft) => ({ ...draft, treadling: draft.treadling.toReversed() });

/** A plan whose threading goes wrong once it is reckoned: its figures are right. */
const misthreaded =
  (ends?: number) =>
  (warp: WarpPlan): WarpPlan => ({
    ...warp,
    pieces: warp.pieces.map((piece) => ({ ...piece, draft: oneShaftOff(ends)(piece.draft) })),
  });

/** A plan whose treadling alone is upside down: cloth and figures are right. */
const mistreadled = (warp: WarpPlan): WarpPlan => ({
  ...warp,
  pieces: warp.pieces.map((piece) => ({
    ...piece,
    tied: { ...piece.tied, treadling: piece.tied.treadling.toReversed(), lifts: piece.tied.lifts.toReversed() },
  })),
});

/** A plan whose lifts alone are mirrored: its highest shaft rises where the first should. */
const mirroredLifts = (warp: WarpPlan): WarpPlan => ({
  ...warp,
  pieces: warp.pieces.map((piece) => {
    const shafts = Math.max(...piece.draft.threading.flat());
    const lifts = piece.tied.lifts.map((lift) => lift.map((shaft) => shafts + 1 - shaft).toSorted((a, b) => a - b));
    return { ...piece, tied: { ...piece.tied, lifts } };
  }),
});

/** A plan whose cloth alone is another: its threading, tie-up and treadling are right. */
const anothersPicture = (warp: WarpPlan): WarpPlan => ({
  ...warp,
  pieces: warp.pieces.map((piece) => ({
    ...piece,
    draft: { ...piece.draft, tieUp: [...piece.draft.tieUp.slice(1), piece.draft.tieUp[0]!] },
  })),
});

/** Two cloths, each under the other's code; all else is right. */
const codesExchanged = <T extends { readonly code: string }>([one, other, ...more]: readonly T[]): T[] => [
  { ...one!, code: other!.code },
  { ...other!, code: one!.code },
  ...more,
];

describe('what is drawn wrong differs, far beyond the tolerance', () => {
  const swatchOf = async (wrong: Wrong) => pngPicture(await swatch(wrong(HOUNDS_TOOTH)));
  const draftOf = (wrong: Wrong) => svgPicture(draftSvg(wrong(HOUNDS_TOOTH), { title: 'Draft of a trial cloth' }));
  const anothersCode = { ...TWILL, code: SHARED[1]!.code };

  test.each<[name: string, wrong: string, draw: () => Promise<Picture>]>([
    ['swatch-two-yarns', 'threaded one shaft off', () => swatchOf(oneShaftOff())],
    ['swatch-two-yarns', 'one end a shaft off', () => swatchOf(oneShaftOff(1))],
    ['swatch-two-yarns', 'treadled upside down', () => swatchOf(upsideDown)],
    ['draft-tie-up', 'threaded one shaft off', () => draftOf(oneShaftOff())],
    ['draft-tie-up', 'one end a shaft off', () => draftOf(oneShaftOff(1))],
    ['draft-tie-up', 'treadled upside down', () => draftOf(upsideDown)],
    ['warp-sheet-1', 'threaded one shaft off', () => warpSheet(TWILL, 1, { changed: misthreaded() })],
    ['warp-sheet-1', 'one end a shaft off', () => warpSheet(TWILL, 1, { changed: misthreaded(1) })],
    ['warp-sheet-1', 'treadled upside down', () => warpSheet(TWILL, 1, { changed: mistreadled })],
    ['warp-sheet-1', 'under another’s code', () => warpSheet(anothersCode, 1)],
    ['warp-sheet-2', 'threaded one shaft off', () => warpSheet(TWILL, 2, { changed: misthreaded() })],
    ['warp-sheet-2', 'one end a shaft off', () => warpSheet(TWILL, 2, { changed: misthreaded(1) })],
    ['warp-sheet-2', 'treadled upside down', () => warpSheet(TWILL, 2, { changed: mistreadled })],
    ['warp-sheet-2', 'under another’s code', () => warpSheet(anothersCode, 2)],
    ['contact-sheet', 'under another’s code', () => contactSheet(codesExchanged(trialOutcome().found))],
    ['teacher-contact-sheet', 'under another’s code', () => teacherSheet(codesExchanged(SHARED), 1)],
    ['teacher-labels', 'under another’s code', () => teacherSheet(codesExchanged(SHARED), 3)],
    ...(['thirty-two-ends', 'fifty-eight-ends', 'lift-plan-twelve'] as const).flatMap(
      (name) =>
        [
          [`pinned-${name}`, 'threaded one shaft off', () => pinned(name, 1, misthreaded())],
          [`pinned-${name}`, 'one end a shaft off', () => pinned(name, 1, misthreaded(1))],
          [`pinned-${name}`, 'treadled upside down', () => pinned(name, 1, mistreadled)],
          [`pinned-${name}`, 'with another cloth’s picture', () => pinned(name, 1, anothersPicture)],
        ] as [string, string, () => Promise<Picture>][],
    ),
    ['pinned-lift-plan-twelve', 'with mirrored lifts', () => pinned('lift-plan-twelve', 1, mirroredLifts)],
    ['pinned-lift-plan-long-lists', 'with mirrored lifts', () => pinned('lift-plan-long', 2, mirroredLifts)],
    ['pinned-lift-plan-long-letter', 'with mirrored lifts', () => pinned('lift-plan-long', 2, mirroredLifts, 'letter')],
    ['pinned-lift-plan-long-letter', 'treadled upside down', () => pinned('lift-plan-long', 2, mistreadled, 'letter')],
    ['pinned-lift-plan-long-letter', 'on the other paper', () => pinned('lift-plan-long', 2)],
    ...(['three-yarns', 'lift-plan-twelve', 'lift-plan-long'] as const).flatMap(
      (name) =>
        [
          [`pinned-${name}-lists`, 'threaded one shaft off', () => pinned(name, 2, misthreaded())],
          [`pinned-${name}-lists`, 'treadled upside down', () => pinned(name, 2, mistreadled)],
        ] as [string, string, () => Promise<Picture>][],
    ),
  ])('%s, %s', async (name, _, draw) => {
    // Fewest where one end is a shaft off in a list: two figures in bold type.
    expect(different(await golden(name), await draw())).toBeGreaterThan(150);
  });
});

describe('a golden picture', () => {
  const folder = mkdtempSync(join(tmpdir(), 'golden-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  afterEach(() => void vi.restoreAllMocks());
  const files = () => readdirSync(folder).toSorted();
  const fresh = { folder, accept: false, strict: false };
  const name = 'draft-tie-up';
  const [right, wrong] = [DRAWINGS[name]!, DRAWINGS['draft-lift-plan']!];

  test('is written where it is missing, but not where no person looks', async () => {
    vi.spyOn(console, 'log').mockImplementation(() => {});
    await expect(hold(name, await right(), { ...fresh, strict: true })).rejects.toThrow(
      'draft-tie-up.png: found no golden picture; expected one: npm run golden draws it',
    );
    expect(files()).toEqual([]);
    await hold(name, await right(), fresh);
    expect(files()).toEqual(['draft-tie-up.png']);
    expect(console.log).toHaveBeenCalledExactlyOnceWith(expect.stringContaining('look at it before you commit it'));
  });

  test('has what differs beside it, until that is accepted or mended', async () => {
    vi.spyOn(console, 'log').mockImplementation(() => {});
    const both = ['draft-tie-up-changed.png', 'draft-tie-up.png'];
    await expect(hold(name, await wrong(), fresh)).rejects.toThrow(
      /tie-up-changed\.png: found \d+ points that differ from .*tie-up\.png; expected none\. .*: npm run golden$/,
    );
    expect(files()).toEqual(both);
    expect(different(await golden(`${name}-changed`, folder), await wrong())).toBe(0);
    await hold(name, await right(), fresh);
    expect(files()).toEqual(['draft-tie-up.png']);
    await hold(name, await wrong(), { ...fresh, accept: true });
    await hold(name, await wrong(), fresh);
    expect(files()).toEqual(['draft-tie-up.png']);
  });

  test('is different from one point that is farther off than the tolerance, or from another size', async () => {
    const picture = await right();
    const spoilt = (points: number, levels: number) => {
      const rgb = picture.rgb.slice();
      for (let at = 0; at < points; at++) rgb[3 * at + 1]! -= levels;
      return { ...picture, rgb };
    };
    expect(different(picture, spoilt(100, TOLERANCE))).toBe(0);
    expect(different(picture, spoilt(1, TOLERANCE + 1))).toBe(1);
    expect(different(picture, { ...picture, width: 2 * picture.width, height: picture.height / 2 })).toBeGreaterThan(0);
  });
});
