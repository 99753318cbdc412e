/** Millimetres of cloth in a swatch each way, the same for all: 63.5 mm (2½ inches). */
export const SWATCH_MILLIMETRES = 63.5;
