import { luminance } from '../../colour/yarn.js';
import { Problem } from '../../problem.js';
import type { Question } from '../question/question.js';
import { familiesOf } from '../space/families.js';

/**
 * Fills in the usual colours of a structure if no orders are given: the darkest yarn in the warp and the lightest in
 * the weft; with a pattern weft, a light ground so that the dark pattern shows; if alternating colours make the blocks,
 * both colours in the warp and a dark, fine weft.
 *
 * @param given values that the person gave, by key; they are kept
 * @throws Problem if the orders are to choose the blocks
 */
export function inTheUsualWay(question: Question, given: Readonly<Record<string, string>>): Question {
  const { yarns, by, profile } = question;
  if (by.includes('block') || profile === 'order') {
    const found = profile === 'order' ? '--profile: found “order”' : '--by: found “block”';
    throw new Problem(`${found} without --warp; expected an order, whose colours choose the blocks`);
  }
  const byLight = yarns.map((_, at) => at).sort((a, b) => luminance(yarns[a]!.hex) - luminance(yarns[b]!.hex));
  const [dark, light] = [byLight[0]!, byLight.at(-1)!];
  const [family] = familiesOf(question);
  const { pickKinds, companions } = family!.weave([dark], [light]);
  const hasPattern = pickKinds.includes('pattern');
  const weft = hasPattern || companions !== undefined ? dark : light;
  return {
    ...question,
    orders: [[hasPattern ? light : dark]],
    ...(given.weft === undefined && { weft: { rule: 'fixed', order: [weft] } }),
    ...(given.tabby === undefined && { tabby: light }),
    ...(given.by === undefined && companions !== undefined && { by: ['unit'] }),
  };
}
