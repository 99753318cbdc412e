import { sayLong, sayWeight } from './measure.js';
import { MARGIN, type Sheets } from './paper.js';
import type { WarpPlan } from './warp-plan.js';

/** What has to be there of one yarn for all warps together, with what is kept back. mm and grams. */
export interface OrderedYarn {
  readonly letter: string;
  readonly name: string;
  readonly hex: string;
  readonly warps: number;
  readonly length: number;
  /** Null where the size of the yarn is not known. */
  readonly grams: number | null;
}

/** One line a yarn, in the order in which the warps first use them. Yarns of one colour, name and size are one. */
export function yarnOrder(warps: readonly WarpPlan[]): OrderedYarn[] {
  const lines = new Map<
    string,
    { letter: string; name: string; hex: string; warps: number; length: number; grams: number | null }
  >();
  for (const { yarns, yarn } of warps) {
    for (const { letter, withReserve, gramsWithReserve } of yarn) {
      const { name, hex, tex } = yarns.find((own) => own.letter === letter)!;
      const key = JSON.stringify([letter, name, hex, tex]);
      const line = lines.get(key) ?? { letter, name, hex, warps: 0, length: 0, grams: 0 };
      line.warps++;
      line.length += withReserve;
      line.grams = line.grams === null || gramsWithReserve === null ? null : line.grams + gramsWithReserve;
      lines.set(key, line);
    }
  }
  return [...lines.values()];
}

/** Adds the yarn order of a group: all yarns, and then the share of each warp. */
export function addYarnOrder(sheets: Sheets, title: string, warps: readonly WarpPlan[]): void {
  const right = sheets.width - MARGIN;
  const { per } = warps[0]!;
  let y = MARGIN + 4.5;
  const goOn = (): void => {
    sheets.page();
    sheets.text(title, MARGIN, MARGIN + 4.5, { size: 14, bold: true });
    sheets.text('10 % kept back; round up to whole balls, spools or cones of one dye lot', MARGIN, MARGIN + 9.5);
    y = MARGIN + 18;
  };
  goOn();
  for (const { letter, name, warps: count, length, grams } of yarnOrder(warps)) {
    const weight = grams === null ? 'size not given' : sayWeight(grams, per);
    sheets.text(letter, MARGIN, y, { bold: true });
    sheets.text(name === letter ? '' : sheets.wrapped(name, 60)[0]!, MARGIN + 6, y);
    sheets.text(`for ${count} warp${count === 1 ? '' : 's'}`, MARGIN + 70, y);
    sheets.text(`${sayLong(length, per)}, ${weight}`, right, y, { bold: true, align: 'right' });
    y += 5.2;
  }
  y += 3;
  for (const warp of warps) {
    if (y > sheets.height - MARGIN - 4) goOn();
    const shares = warp.yarn.map(({ letter, withReserve }) => `${letter} ${sayLong(withReserve, per)}`);
    const codes = warp.pieces.map(({ cloth }) => cloth.code).join(' ');
    sheets.text(`warp ${warp.number}`, MARGIN, y);
    sheets.text(sheets.wrapped(codes, 46)[0]!, MARGIN + 18, y);
    sheets.text(`wind ${sayLong(warp.length.wind, per)}; ${shares.join(', ')}`, right, y, { align: 'right' });
    y += 4.6;
  }
}
