import type { Seen } from '../../score/look/look.js';
import { LOOK_FIGURES, ofEachLook } from '../../score/parts/look-figures.js';
import type { Look, Part } from '../../score/parts/parts.js';
import { finePart } from '../../score/parts/records/fine-part.js';
import { liveliness } from '../../score/parts/records/lively-parts.js';
import type { Reach } from './reach.js';

/** What each figure of the look leaves parts at the most; the figures that take least time first. */
const MOST: Readonly<Record<keyof Look, (look: Look) => Partial<Record<Part, number>>>> = {
  piece: ({ piece }) => ({ fine: finePart.of({ piece }) }),
  bits: ({ bits }) => ({ calm: 1 - liveliness({ bits, shapes: 0 }), lively: liveliness({ bits, shapes: Infinity }) }),
  unlike: ({ unlike }) => ({ unlike }),
  solid: ({ solid }) => ({ solid }),
  sharp: ({ sharp }) => ({ sharp }),
  shapes: (look) => ({ calm: 1 - liveliness(look), lively: liveliness(look) }),
};

/**
 * Measures the figures of the look that are wanted, one after the other, on a face that may fall short of the reach:
 * undefined once it does. The others are left 0.
 */
export function lookStages(wanted: ReadonlySet<string>): (seen: Seen, reach: Reach) => Look | undefined {
  const stages = (Object.keys(MOST) as (keyof Look)[])
    .filter((key) => wanted.has(key))
    .map((key) => ({ figure: LOOK_FIGURES.find((figure) => figure.key === key)!, most: MOST[key] }));
  return (seen, reach) => {
    const look = ofEachLook(() => 0);
    for (const { figure, most } of stages) {
      look[figure.key] = figure.measure(seen);
      const falls = Object.entries(most(look)).some(([part, value]) => reach.falls(part as Part, value));
      if (falls) return undefined;
    }
    return look;
  };
}
