/** How much cloth a swatch shows, one scale for all: 63.5 mm (2½ inches) each way. */
export const SWATCH_MILLIMETRES = 63.5;
