import fc from 'fast-check';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { drawdown, isUp } from '../../src/cloth/drawdown.js';
import { type Cells, cellsFromText, factor } from '../../src/cloth/factor.js';
import { cellsFromPicture } from '../../src/cloth/factor-picture.js';
import { findStructure, structures, weaveOf } from '../../src/structure/catalogue/catalogue.js';
import { runs } from '../long.js';

const anyCells: fc.Arbitrary<Cells> = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 }))
  .chain(([ends, picks]) =>
    fc.array(
      fc.array(fc.constantFrom(0, 1), { minLength: ends, maxLength: ends }).map((row) => Uint8Array.from(row)),
      { minLength: picks, maxLength: picks },
    ),
  );

const text = (cells: Cells): string => cells.map((row) => [...row].map((up) => (up ? '#' : '.')).join('')).join('\n');

function picture(cells: Cells, dots: number, shade = [0, 255]): Buffer {
  const png = new PNG({ width: cells[0]!.length * dots, height: cells.length * dots });
  for (let y = 0; y < png.height; y++) {
    for (let x = 0; x < png.width; x++) {
      const light = shade[cells[Math.floor(y / dots)]![Math.floor(x / dots)] === 1 ? 0 : 1]!;
      png.data.set([light, light, light, 255], (y * png.width + x) * 4);
    }
  }
  return PNG.sync.write(png);
}

/** The fewest shafts by trying every way of sharing them: ends on one shaft must be alike at every pick. */
function fewestShafts(columns: readonly string[]): number {
  const share = (left: readonly string[], used: readonly string[]): number => {
    const [first, ...rest] = left;
    if (first === undefined) return used.length;
    const choices = used.filter((column) => column === first).map(() => share(rest, used));
    return Math.min(share(rest, [...used, first]), ...choices);
  };
  return share(columns, []);
}

describe('a draft from its drawdown', () => {
  it('weaves the same cells', () => {
    fc.assert(
      fc.property(anyCells, (cells) => {
        const weave = factor(cells);
        const cloth = drawdown(weave);
        cells.forEach((row, j) => {
          row.forEach((up, i) => {
            expect(isUp(cloth, j % cloth.picks, i % cloth.ends)).toBe(up === 1);
          });
        });
      }),
    );
  });

  it('has the fewest shafts and treadles, one a thread', () => {
    const small = anyCells.filter((cells) => cells.length <= 8 && cells[0]!.length <= 8);
    fc.assert(
      fc.property(small, (cells) => {
        const { threading, tieUp } = factor(cells);
        const columns = Array.from(cells[0]!, (_, i) => cells.map((row) => row[i]).join(''));
        expect(Math.max(...threading.flat())).toBe(fewestShafts(columns));
        expect(tieUp.length).toBe(fewestShafts(cells.map((row) => row.join(''))));
      }),
      { numRuns: runs(60) },
    );
  });

  // The shafts and treadles of the handbooks' drafts, which nobody would thread on more.
  it.each(structures.map((structure) => [structure.name] as const))('%s needs no more than its own', (name) => {
    const structure = findStructure(name);
    const weave = weaveOf(structure, structure.profile);
    const cloth = drawdown(weave);
    const cells = Array.from({ length: cloth.picks }, (_, j) =>
      Uint8Array.from({ length: cloth.ends }, (_, i) => (isUp(cloth, j, i) ? 1 : 0)),
    );
    const found = factor(cells);
    expect(Math.max(...found.threading.flat())).toBeLessThanOrEqual(structure.shafts);
    expect(found.tieUp.length).toBeLessThanOrEqual(weave.tieUp.length);
  });

  it('of a straight twill is the draft that everyone writes', () => {
    const weave = factor(cellsFromText('##..\n.##.\n..##\n#..#'));
    expect(weave.threading.flat()).toEqual([1, 2, 3, 4]);
    expect(weave.tieUp).toEqual([
      [1, 2],
      [2, 3],
      [3, 4],
      [1, 4],
    ]);
  });

  it('refuses a cloth beyond any loom', () => {
    const rows = Array.from({ length: 300 }, (_, j) => Uint8Array.from({ length: 300 }, (_, i) => (i === j ? 1 : 0)));
    expect(() => factor(rows)).toThrow('found 300 different ends, as many shafts; expected 256 at most');
  });
});

describe('cells as text', () => {
  it('reads signs of every habit', () => {
    expect(cellsFromText('; a cloth\n# . 1 0\r\n\nx-X_\n').map((row) => [...row])).toEqual([
      [1, 0, 1, 0],
      [1, 0, 1, 0],
    ]);
  });

  it('reads what it is given', () => {
    fc.assert(
      fc.property(anyCells, (cells) => {
        expect(cellsFromText(text(cells))).toEqual(cells);
      }),
    );
  });

  it.each([
    ['#.?', 'line 1: found “?” at place 3; expected # where the warp is up, else .'],
    ['#.\n#', 'line 2: found 1 cells; expected 2, as in the first row'],
    ['\n', 'found no cells; expected rows as #.#. with # where the warp is up'],
    ['#'.repeat(2001), 'found 2001 ends; expected 2000 at most'],
  ])('refuses %j', (given, message) => {
    expect(() => cellsFromText(given)).toThrow(message);
  });
});

describe('cells as a picture', () => {
  it('reads what another library wrote, at one dot a cell and larger', async () => {
    const cells = cellsFromText('##..\n.##.\n..#.\n#..#\n####');
    expect(await cellsFromPicture(picture(cells, 1))).toEqual({ cells, couldBe: 1 });
    expect((await cellsFromPicture(picture(cells, 7), 7)).cells).toEqual(cells);
  });

  it('says that a picture may be drawn larger, and does not guess', async () => {
    const basket = cellsFromText('##..\n##..\n..##\n..##');
    expect(await cellsFromPicture(picture(basket, 1))).toEqual({ cells: basket, couldBe: 2 });
  });

  it('refuses what is grey, is cut, or is no picture', async () => {
    const cells = cellsFromText('#.\n.#');
    await expect(cellsFromPicture(picture(cells, 1, [128, 255]))).rejects.toThrow('grey dot at 1 across, 1 down');
    await expect(cellsFromPicture(picture(cells, 3), 2)).rejects.toThrow(
      'black and white in the cell of end 2, pick 1',
    );
    await expect(cellsFromPicture(picture(cells, 3), 4)).rejects.toThrow('whole cells of 4 dots');
    await expect(
      cellsFromPicture(new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg" width="2" height="2"/>')),
    ).rejects.toThrow('black and white PNG');
    await expect(cellsFromPicture(picture(cells, 1).subarray(0, 40))).rejects.toThrow('black and white PNG');
  });
});
