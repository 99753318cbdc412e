import { formatOrder, nestedOrder, type Order } from '../../order/order.js';
import type { Question } from '../question/question.js';
import type { Candidate } from '../space/candidate.js';

/** One flag of the command `draw`, without its dashes (`draft` for a file of one's own), and its value. */
type RedrawFlag = readonly [flag: string, value: string];

/** The flags with which the command `draw` draws the same draft as a candidate's. */
export function redrawOf(candidate: Candidate, question: Question): RedrawFlag[] {
  const { family, warp, weft, start } = candidate;
  const { yarns, sett } = question;
  const hasTabby = family.weave(warp, weft).pickKinds.includes('tabby');
  const perCm = sett.per === 'cm' ? ' per cm' : '';
  const begins = start[0] === 0 && start[1] === 0 ? undefined : `${start[0] + 1}/${start[1] + 1}`;
  const flags: readonly (readonly [string, string | undefined])[] = [
    ...(question.draft ? [['draft', question.draft.file] as const] : [['structure', family.structure] as const]),
    ['treadling', family.manner || undefined],
    ...laidAs(candidate, question),
    ['times', family.times > 1 ? String(family.times) : undefined],
    ['start', begins],
    ['tabby', hasTabby ? yarns[question.tabby]!.letter : undefined],
    ['yarns', yarns.map(({ letter, hex }) => `${letter} ${hex}`).join(', ')],
    ['sett', `${sett.ends}/${sett.picks}${perCm}`],
  ];
  return flags.filter((flag): flag is RedrawFlag => flag[1] !== undefined);
}

/** The flags for blocks, orders and laying. */
function laidAs({ family, warp, weft }: Candidate, question: Question): (readonly [string, string | undefined])[] {
  const { yarns } = question;
  const said = (order: Order): string => formatOrder(order, yarns);
  const treadled = family.treadled?.join(' ');
  if (family.letters === undefined || question.weft.rule !== 'own') {
    const { rule } = question.weft;
    return [
      ['blocks', question.blocks === undefined ? undefined : String(question.blocks)],
      ['profile', family.profile.length > 0 ? family.profile.join(' ') : undefined],
      ['treadled', treadled],
      ['warp', said(warp)],
      ['weft', rule === 'same' || rule === 'exchange' ? rule : said(weft)],
      ['by', family.by],
      ['fill', family.fill],
    ];
  }
  // The weft order chose the blocks of the treadling, so both block orders and both colour orders are written in full.
  const weave = family.weave(warp, weft);
  const blocks = (order: Order): string => {
    const elements = family.fill === 'nest' ? nestedOrder(order, yarns.length) : order;
    return elements.flatMap((colour) => new Array<string>(family.times).fill(family.letters![colour]!)).join(' ');
  };
  return [
    ['blocks', question.blocks === undefined ? undefined : String(question.blocks)],
    ['profile', blocks(warp)],
    ['treadled', treadled ?? blocks(weft)],
    ['warp', said(family.laid(warp, 'ends', weave))],
    ['weft', said(family.laid(weft, 'picks', weave))],
    ['by', 'unit'],
    ['fill', family.fill === 'nest' ? 'solid' : family.fill],
  ];
}
