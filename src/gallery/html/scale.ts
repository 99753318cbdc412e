/** Millimetres of cloth in a swatch each way, the same for all: 63.5 mm (2½ inches). */
export const SWATCH_MILLIMETRES = 63.5;

/** How much cloth a small picture shows each way, and how large it stands on the page: a quarter of its size. */
export const QUARTER_CLOTH = 127;
export const QUARTER_SIDE = QUARTER_CLOTH / 4;
