/** Cautions on every sheet about the finished cloth. They prompt the maker; rules differ by place, and change. */
export const USUAL_CAUTIONS: readonly string[] = [
  'Wash a dark and a light end together before you start: dye that bleeds spoils the pattern. Mordants of chrome, copper and tin are harmful.',
  'Long floats and loose ends can catch and wind round a baby’s finger or toe; nothing loose belongs where a baby sleeps.',
  'Fringes and raised surfaces burn faster. For what is worn, sold or given to a child, local codes and licensed practice decide, not this sheet.',
];
