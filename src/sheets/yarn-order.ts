import type { WarpPlan } from '../plan/piece/warp-plan.js';
import { buyWords, type Stock, type ToBuy, toBuy } from '../plan/yarn/in-hand.js';
import { type YarnAmount, yarnName } from '../plan/yarn/yarn-amounts.js';
import { counted } from '../words/counts.js';
import { sayLong, sayShort, sayWeight } from '../words/measure.js';
import { MARGIN, type Pdf } from './paper/paper.js';

/** The amount of one yarn for all warps together, reserve included. Millimetres and grams. */
export interface OrderedYarn {
  readonly letter: string;
  readonly use?: NonNullable<YarnAmount['use']>;
  readonly name: string;
  readonly hex: string;
  readonly warps: number;
  readonly length: number;
  /** Parts of the length for warp and weft. */
  readonly warp: number;
  readonly weft: number;
  /** Null if the size of the yarn is unknown. */
  readonly grams: number | null;
  readonly toBuy: ToBuy;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/**
 * One line per yarn, in order of first use. Yarns with the same colour, name and size are one yarn. Nothing is ordered
 * for a warp that its loom cannot weave.
 */
export function yarnOrder(warps: readonly WarpPlan[], stock: Stock): OrderedYarn[] {
  const lines = new Map<string, Mutable<Omit<OrderedYarn, 'toBuy'>>>();
  for (const { yarns, yarn } of warps.filter(({ faults }) => faults.length === 0)) {
    for (const { letter, use, tex, warp, weft, total, withReserve, gramsWithReserve } of yarn) {
      const { name, hex } = yarns.find((own) => own.letter === letter)!;
      const key = JSON.stringify([letter, use, name, hex, tex]);
      const line = lines.get(key) ?? {
        letter,
        ...(use !== undefined && { use }),
        name,
        hex,
        warps: 0,
        length: 0,
        warp: 0,
        weft: 0,
        grams: 0,
      };
      line.warps++;
      line.length += withReserve;
      line.warp += (warp * withReserve) / total;
      line.weft += (weft * withReserve) / total;
      line.grams = line.grams === null || gramsWithReserve === null ? null : line.grams + gramsWithReserve;
      lines.set(key, line);
    }
  }
  // What is in hand of a letter is counted once.
  const used = new Set<string>();
  return [...lines.values()].map((line) => {
    const key = line.use === undefined ? line.letter : 'pattern';
    const inHand = used.has(key) ? undefined : stock.inHand[key];
    used.add(key);
    return { ...line, toBuy: toBuy(yarnName(line), line, inHand, stock.putUps[key] ?? stock.putUps['']) };
  });
}

/** Millimetres from line to line of a table. */
const LINE = 5.6;

/**
 * Adds the yarn order of a group: all yarns with a blank for the amount bought, then the share of each warp.
 *
 * @param weavers the weaver of each warp, if cloths were dealt
 */
export function addYarnOrder(
  pdf: Pdf,
  title: string,
  warps: readonly WarpPlan[],
  stock: Stock,
  weavers?: readonly string[],
): void {
  const right = pdf.width - MARGIN;
  const { per } = warps[0]!;
  let y = 0;
  const newPage = (): void => {
    pdf.page();
    pdf.text(title, MARGIN, MARGIN + 4.5, { size: 14, bold: true });
    pdf.text('includes 10 % reserve; round up to whole balls, spools or cones of one dye lot', MARGIN, MARGIN + 9.5);
    y = MARGIN + 18;
  };
  const row = (draw: (y: number) => void): void => {
    draw(y);
    pdf.line(MARGIN, y + 1.6, right, y + 1.6, 0.1);
    y += LINE;
  };
  const place = { name: 6, warps: 62, length: 82, weight: 124, bought: 160 };
  newPage();
  row((at) => {
    for (const [words, x] of [
      ['yarn', 0],
      ['for', place.warps],
      ['length', place.length],
      ['weight', place.weight],
      ['bought', place.bought],
    ] as const) {
      pdf.text(words, MARGIN + x, at);
    }
  });
  for (const { letter, use, name, warps: count, length, grams, ...parts } of yarnOrder(warps, stock)) {
    row((at) => {
      pdf.text(letter, MARGIN, at, { bold: true });
      const said = [...(name === letter ? [] : [name]), ...(use === undefined ? [] : [use])].join(', ');
      if (said !== '') pdf.text(pdf.fitted([said], place.warps - place.name - 2), MARGIN + place.name, at);
      pdf.text(`${counted(count, 'warp')}`, MARGIN + place.warps, at);
      pdf.text(sayLong(length, per), MARGIN + place.length, at, { bold: true });
      pdf.text(grams === null ? 'size not given' : sayWeight(grams, per), MARGIN + place.weight, at, {
        bold: grams !== null,
      });
    });
    row((at) => {
      const [ofWarp, ofWeft] = [parts.warp, parts.weft].map((mm) => sayLong(mm, per));
      const buy = buyWords(parts.toBuy, per);
      const said = `${parts.warp > 0 ? `warp ${ofWarp}, ` : ''}weft ${ofWeft}${buy === '' ? '' : `; ${buy}`}`;
      pdf.text(pdf.fitted([said], right - MARGIN - place.name), MARGIN + place.name, at);
    });
  }
  y += 4;
  for (const [at, warp] of warps.entries()) {
    if (y > pdf.height - MARGIN - 2) newPage();
    const shares = warp.yarn.map((own) => `${yarnName(own)} ${sayShort(own.withReserve, per)}`);
    const codes = warp.pieces.map(({ cloth }) => cloth.code).join(' ');
    const who = weavers?.[at] === undefined ? codes : `${weavers[at]}  ${codes}`;
    row((line) => {
      pdf.text(`warp ${warp.number}`, MARGIN, line);
      pdf.text(pdf.fitted([who], 44), MARGIN + 16, line);
      pdf.text(warp.onTheLoom ? 'on the loom' : `wind ${sayLong(warp.length.wind, per)}`, MARGIN + place.warps, line);
      const said = warp.faults.length > 0 ? 'not on this loom: nothing ordered' : shares.join(', ');
      pdf.text(said, right, line, { align: 'right' });
    });
  }
}
