import { textPath } from '../../src/render/text.js';

const AT = { x: 0, y: 0, size: 10 };

/** Whether every character of a text is drawn as itself: none as the empty box that stands for a missing one. */
export const canDraw = (text: string): boolean => [...text].every((sign) => textPath(sign, AT) !== textPath('織', AT));
