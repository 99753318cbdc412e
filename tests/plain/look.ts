// What the eye meets on a face, cell by cell, straight from the definitions: a reader can check them by eye.
import { blurred, type Field, mean, variance } from './contrast.js';

const at = (field: Field, j: number, i: number): number => {
  const row = field[((j % field.length) + field.length) % field.length]!;
  return row[((i % row.length) + row.length) % row.length]!;
};

/** Shannon's bits of the 2 × 2 patches of dark (value below one half) and light cells, of 4 at most. */
export function bits(v: Field): number {
  const dark = (j: number, i: number): number => (at(v, j, i) < 0.5 ? 1 : 0);
  const patches = v.flatMap((row, j) =>
    row.map((_, i) => [dark(j, i), dark(j, i + 1), dark(j + 1, i), dark(j + 1, i + 1)].join('')),
  );
  return [...new Set(patches)].reduce((sum, patch) => {
    const share = patches.filter((each) => each === patch).length / patches.length;
    return sum - share * Math.log2(share);
  }, 0);
}

/** Shares of cells that a blur of two ends leaves darker than 0.15, and lighter than 0.85. */
export function solid(v: Field, squareness: number): { dark: number; light: number } {
  const cells = blurred(v, 2, 2 * squareness).flat();
  const share = (is: (cell: number) => boolean): number => cells.filter(is).length / cells.length;
  return { dark: share((cell) => cell < 0.15), light: share((cell) => cell > 0.85) };
}

/**
 * Range of the two-end blur, and its median slope on both sides of the line half way between its ends, as a share of
 * the slope of a step from 0 to 1, which is 1/(2·√(2π)) for each end.
 */
export function outline(v: Field, squareness: number): { range: number; slope: number } {
  return outlineOf(blurred(v, 2, 2 * squareness), squareness);
}

/** The same of a field that is blurred already. */
export function outlineOf(light: Field, squareness: number): { range: number; slope: number } {
  const [least, most] = [Math.min(...light.flat()), Math.max(...light.flat())];
  const side = (j: number, i: number): number => {
    const above = at(light, j, i) - (least + most) / 2;
    return above < -1e-9 ? -1 : above > 1e-9 ? 1 : 0;
  };
  const slopes: number[] = [];
  light.forEach((row, j) => {
    row.forEach((_, i) => {
      const across = (at(light, j, i + 1) - at(light, j, i - 1)) / 2;
      const along = ((at(light, j + 1, i) - at(light, j - 1, i)) / 2) * squareness;
      for (const [dj, di] of SIDES) {
        if (side(j + dj, i + di) !== side(j, i)) slopes.push(Math.sqrt(across ** 2 + along ** 2));
      }
    });
  });
  slopes.sort((a, b) => a - b);
  const half = slopes.length / 2;
  const median = (slopes[Math.ceil(half) - 1]! + slopes[Math.floor(half)]!) / 2;
  const slope = slopes.length === 0 ? 0 : Math.min(1, median * 2 * Math.sqrt(2 * Math.PI));
  return { range: most - least, slope };
}

/** Crossings for each shift that carries every cell to one of its colour. */
export function piece(cells: Field): number {
  const shifts = cells.flatMap((row, y) => row.map((_, x) => [y, x] as const));
  const keeps = shifts.filter(([y, x]) =>
    cells.every((row, j) => row.every((cell, i) => cell === at(cells, j + y, i + x))),
  );
  return shifts.length / keeps.length;
}

const SIDES = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
] as const;

/**
 * Closed shapes that differ by more than a shift. An area is followed into the repeats all round: one that comes to a
 * place of its own a repeat away is endless.
 */
export function shapes(v: Field, across: number, along: number): { closed: number; endless: number } {
  const light = blurred(v, across, along);
  const [picks, ends] = [light.length, light[0]!.length];
  const tone = (j: number, i: number): string =>
    at(light, j, i) < 0.4 ? 'dark' : at(light, j, i) > 0.6 ? 'light' : '';
  const done = new Set<string>();
  const closed = new Set<string>();
  let endless = 0;
  for (let j = 0; j < picks; j++) {
    for (let i = 0; i < ends; i++) {
      if (tone(j, i) === '' || done.has(`${j} ${i}`)) continue;
      // Every place that is joined to this one, until one of them is another's neighbour a repeat away.
      const area: [number, number][] = [[j, i]];
      let meetsItself = false;
      for (let next = 0; next < area.length && !meetsItself; next++) {
        for (const [dj, di] of SIDES) {
          const [y, x] = [area[next]![0] + dj, area[next]![1] + di];
          if (tone(y, x) !== tone(j, i) || area.some(([b, a]) => b === y && a === x)) continue;
          if (area.some(([b, a]) => (b - y) % picks === 0 && (a - x) % ends === 0)) meetsItself = true;
          area.push([y, x]);
        }
      }
      const places = meetsItself ? joinedOnTheRepeat(j, i, picks, ends, tone) : area;
      for (const [y, x] of places) done.add(`${((y % picks) + picks) % picks} ${((x % ends) + ends) % ends}`);
      if (meetsItself) {
        endless++;
        continue;
      }
      const [top, left] = [Math.min(...area.map(([y]) => y)), Math.min(...area.map(([, x]) => x))];
      const told = area.map(([y, x]) => `${y - top},${x - left}`).sort();
      closed.add(`${tone(j, i)} ${told.join(' ')}`);
    }
  }
  return { closed: closed.size, endless };
}

function joinedOnTheRepeat(
  j: number,
  i: number,
  picks: number,
  ends: number,
  tone: (j: number, i: number) => string,
): [number, number][] {
  const area: [number, number][] = [[j, i]];
  for (let next = 0; next < area.length; next++) {
    for (const [dj, di] of SIDES) {
      const y = (area[next]![0] + dj + picks) % picks;
      const x = (area[next]![1] + di + ends) % ends;
      if (tone(y, x) === tone(j, i) && !area.some(([b, a]) => b === y && a === x)) area.push([y, x]);
    }
  }
  return area;
}

/**
 * 1 less the largest correlation, of either sign, of the face and the drawdown (rows of 1, end up, and 0), both blurred
 * by half an end, over all shifts, mirrors and half turns. An even face is 0, an even drawdown under any other face 1.
 */
export function unlike(v: Field, up: Field, squareness: number): number {
  const face = blurred(v, 0.5, 0.5 * squareness);
  const alone = blurred(up, 0.5, 0.5 * squareness);
  if (variance(face) < 1e-6) return 0;
  if (variance(alone) < 1e-6) return 1;
  const [faceMean, aloneMean] = [mean(face), mean(alone)];
  let best = 0;
  for (const [across, along] of [
    [1, 1],
    [-1, 1],
    [1, -1],
    [-1, -1],
  ] as const) {
    for (let y = 0; y < up.length; y++) {
      for (let x = 0; x < up[0]!.length; x++) {
        const products = face.flatMap((row, j) =>
          row.map((cell, i) => (cell - faceMean) * (at(alone, along * j + y, across * i + x) - aloneMean)),
        );
        best = Math.max(best, Math.abs(mean([products])));
      }
    }
  }
  return 1 - best / Math.sqrt(variance(face) * variance(alone));
}
