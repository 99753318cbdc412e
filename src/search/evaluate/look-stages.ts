import type { Eye } from '../../score/look/look.js';
import { LOOK_FIGURES } from '../../score/parts/look-figures.js';
import type { Look } from '../../score/parts/parts.js';
import { finePart } from '../../score/parts/records/fine-part.js';
import { liveliness, MANY_SHAPES } from '../../score/parts/records/lively-parts.js';
import type { Reach } from './reach.js';

/** Whether a cloth falls short of the reach now that a figure of the look is known; what takes least time first. */
const FALLS: Readonly<Record<keyof Look, (look: Look, reach: Reach) => boolean>> = {
  piece: ({ piece }, reach) => reach.falls('fine', finePart.of({ piece })),
  bits: ({ bits }, reach) => {
    const [least, most] = [liveliness({ bits, shapes: 0 }), liveliness({ bits, shapes: Infinity })];
    return reach.falls('calm', 1 - least) || reach.falls('lively', most);
  },
  unlike: ({ unlike }, reach) => reach.falls('unlike', unlike),
  solid: ({ solid }, reach) => reach.falls('solid', solid),
  sharp: ({ sharp }, reach) => reach.falls('sharp', sharp),
  shapes: (look, reach) => reach.falls('calm', 1 - liveliness(look)) || reach.falls('lively', liveliness(look)),
};

/** From where on no part asks how large a figure is. */
const ENOUGH: Partial<Look> = { shapes: MANY_SHAPES };

/**
 * Measures the figures of the look that are wanted, one after the other, into `look`, where the others are left as they
 * are. Where there is a reach, it stops once the cloth falls short of it, and says so by false.
 */
export function lookStages(wanted: ReadonlySet<string>) {
  const stages = (Object.keys(FALLS) as (keyof Look)[])
    .filter((key) => wanted.has(key))
    .map((key) => ({ figure: LOOK_FIGURES.find((figure) => figure.key === key)!, falls: FALLS[key] }));
  return (seen: Eye, look: { -readonly [K in keyof Look]: number }, reach: Reach | undefined): boolean => {
    for (const { figure, falls } of stages) {
      look[figure.key] = figure.measure(seen, ENOUGH[figure.key]);
      if (reach && falls(look, reach)) return false;
    }
    return true;
  };
}
