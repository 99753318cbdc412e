import { EVEN_WIDTHS } from '../../draft/draft.js';
import type { Structure } from '../model/structure.js';
import { picks, shafts } from '../model/unit.js';

const plain: Structure = {
  name: 'plain weave',
  aliases: ['plain', 'tabby', 'tuskaft'],
  about: 'Over one, under one. All the pattern comes from the colours: hairlines, steps, pinwheels, log cabin.',
  shafts: 2,
  blocks: ['A'],
  profile: ['A'],
  threading: { blocks: { A: { lay: shafts('1-2') } } },
  tieUp: { a: [1], b: [2] },
  tabby: ['a', 'b'],
  manners: [{ name: 'as drawn in', blocks: { A: { lay: picks('a b') } } }],
  widths: EVEN_WIDTHS,
  floatLaw: '1, always',
  colour: 'Single ends and picks; log cabin where two colours alternate and the order switches.',
  scale: 'Longer stretches of one order; the float stays 1.',
  source: 'common practice, no source',
};

const plainOnFour: Structure = {
  ...plain,
  name: 'plain weave on four shafts',
  aliases: ['plain on four shafts', 'straight draw plain weave'],
  about: 'Plain weave on a straight draw over four shafts: the same cloth, less crowded heddles.',
  shafts: 4,
  threading: { blocks: { A: { lay: shafts('1-2-3-4') } } },
  tieUp: { a: [1, 3], b: [2, 4] },
  // As many picks to a unit as ends.
  manners: [{ name: 'as drawn in', blocks: { A: { lay: picks('a b a b') } } }],
};

const basket: Structure = {
  name: 'basket',
  aliases: ['basket weave', 'hopsack', '2/2 basket', '2/2 hopsack', 'panama'],
  about: 'Plain weave with two ends and two picks working as one.',
  shafts: 4,
  blocks: ['A'],
  profile: ['A'],
  threading: { blocks: { A: { lay: shafts('1-2-3-4') } } },
  tieUp: { a: [1, 3], b: [2, 4], x: [1, 2], y: [3, 4] },
  tabby: ['a', 'b'],
  manners: [
    { name: 'in pairs', blocks: { A: { lay: picks('x x y y') } } },
    {
      name: 'half basket',
      about: 'Ends in pairs, picks single.',
      blocks: { A: { lay: picks('x y') } },
    },
  ],
  widths: EVEN_WIDTHS,
  floatLaw: '2 in both systems; in half basket 2 in the weft, 1 in the warp',
  colour: 'Pairs of one colour enlarge the effects of plain weave; other orders make effects of their own.',
  scale: 'Larger groups: the float is the size of the group.',
  source: 'common practice, no source',
};

const basketOfThree: Structure = {
  name: '3/3 basket',
  aliases: ['3/3 hopsack', 'basket of three'],
  about: 'Plain weave with three ends and three picks working as one.',
  shafts: 4,
  blocks: ['A'],
  profile: ['A'],
  threading: { blocks: { A: { lay: shafts('1-2-1-3-4-3') } } },
  tieUp: { a: [1, 4], b: [2, 3], x: [1, 2], y: [3, 4] },
  tabby: ['a', 'b'],
  manners: [{ name: 'in threes', blocks: { A: { lay: picks('x x x y y y') } } }],
  widths: EVEN_WIDTHS,
  floatLaw: '3 in both systems',
  colour: 'Threes of one colour enlarge the effects of plain weave; other orders make effects of their own.',
  scale: 'Larger groups: the float is the size of the group.',
  source: 'common practice, no source',
};

/** Plain weave and its enlargements. */
export const PLAIN: readonly Structure[] = [plain, plainOnFour, basket, basketOfThree];
