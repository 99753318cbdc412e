import { luminance } from '../../colour/yarn.js';
import { Problem } from '../../problem.js';
import type { Question } from '../../search/question/question.js';
import { familiesOf } from '../../search/space/families.js';

/**
 * A structure as its weaver knows it, where no orders are asked for: the darkest yarn in the warp and the lightest in
 * the weft; under a pattern weft a light ground, so that the dark pattern shows; where colours end about carry the
 * blocks, in the warp with a dark weft, the fine one.
 *
 * @param given what the person asked for, by key, and is kept
 * @throws Problem where it is the orders that should choose the blocks
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
