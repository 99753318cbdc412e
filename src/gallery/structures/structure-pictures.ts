import type { Draft } from '../../draft/draft.js';
import { DEFAULT_SETT } from '../../draft/yaml/read-draft.js';
import { Problem } from '../../problem.js';
import { classicName, effectsOn } from '../../score/likeness/classic-effects.js';
import { readQuestion } from '../../search/question/read-question.js';
import { draftOf, weftOf } from '../../search/space/candidate.js';
import { familiesOf } from '../../search/space/families.js';
import { type Structure, weaveOf } from '../../structure/catalogue/catalogue.js';
import { usualSett } from '../../structure/catalogue/usual-sett.js';
import { longestFloat } from '../../structure/model/longest-float.js';
import { blocksForColours } from '../../structure/model/sized.js';

/** One cloth of a structure, with what is laid on it in a few words. */
interface Shown {
  readonly words: string;
  readonly draft: Draft;
}

/** The order that is laid on every structure. */
export const MOTIF = 'DLDDL';
/** Approximate width of the motif in ends, if the structure allows it. */
const WIDE = 40;
/** Longest float, in ends, to which a motif may grow if its floats grow with it (common practice, no source). */
const LONGEST = 8;

/**
 * The pictures of a structure: in its usual colours, then with one five-end order laid on it as block order, by block,
 * by unit, by thread and nested; then the cloths that have names. Pictures that the structure does not allow are left
 * out.
 */
export function picturesOf(structure: Structure): Shown[] {
  const weave = weaveOf(structure, structure.profile);
  const common = commonOf(structure);
  const plainly = plainlyOf(structure);
  const coloured = { ...common, orders: MOTIF, ...(weave.companions && { weft: 'D' }) };
  const times = String(timesFor(weave.endUnits[0]!));
  const blocks = blocksOfMotif(structure);
  const square = squareManner(structure);
  const asBlocks = blocks === undefined ? [] : [{ words: `${MOTIF} as block order`, profile: blocks.join(' ') }];
  // A profile with one unit per block is too small to show the weave.
  const isSmall = structure.profile.length === structure.blocks.length;
  const up = allBlocks(structure);
  const profile = isSmall ? (up ?? asBlocks[0]) : undefined;
  const asked: (Record<string, string> & { words: string })[] = [
    ...structure.manners.slice(0, 3).map(({ name }) => ({
      ...plainly,
      ...profile,
      treadling: name,
      words: structure.manners.length > 1 ? name : (profile?.words ?? 'in the usual way'),
    })),
    ...(profile === undefined || structure.manners.length > 1 ? asBlocks.map((way) => ({ ...plainly, ...way })) : []),
    ...(blocks === undefined
      ? []
      : [
          {
            ...coloured,
            by: 'block',
            times: String(blocks.length / MOTIF.length),
            words: `${MOTIF}, blocks and colours`,
          },
        ]),
    { ...coloured, ...square.flags, by: 'unit', times, words: `${MOTIF} by unit${square.words}` },
    { ...coloured, words: `${MOTIF} by thread` },
    { ...coloured, ...square.flags, by: 'unit', fill: 'alternate', times, words: `${MOTIF} alternate${square.words}` },
    { ...coloured, fill: 'nest', words: `${MOTIF} nested` },
  ];
  const pictures = asked.flatMap(({ words, ...flags }) => {
    const draft = drawnAs(flags);
    return draft === undefined ? [] : [{ words, draft }];
  });
  return [...pictures, ...classicsOf(structure)];
}

/** The cloths that have a name of their own on the weave: hairline, log cabin, hound’s tooth … */
function classicsOf(structure: Structure): Shown[] {
  const effects = effectsOn(weaveOf(structure, structure.profile));
  if (effects.size === 0) return [];
  const orders = [...effects.keys()].map((word) => ({ orders: word, weft: 'same' }));
  const named = [{ orders: 'DL', weft: 'LD' }, { orders: 'DL', weft: 'same' }, ...orders].flatMap((flags) => {
    const draft = drawnAs({ ...commonOf(structure), ...flags });
    const words = draft && classicName(draft);
    return words === undefined ? [] : [{ words, draft: draft! }];
  });
  return named.filter(({ words }, at) => named.findIndex((other) => other.words === words) === at);
}

/** The treadling in which a unit of picks is as tall as a unit of ends is wide, where the usual one is not so. */
function squareManner(structure: Structure): { flags: Record<string, string>; words: string } {
  const isSquare = (manner: string): boolean => {
    const { endUnits, pickUnits } = weaveOf(structure, structure.profile, { manner });
    const { ends, picks } = usualSett(structure, DEFAULT_SETT, manner);
    return endUnits[0]! / ends === pickUnits[0]! / picks;
  };
  const [usual, ...others] = structure.manners.map(({ name }) => name);
  const other = isSquare(usual!) ? undefined : others.find(isSquare);
  return other === undefined ? { flags: {}, words: '' } : { flags: { treadling: other }, words: `, ${other}` };
}

/** The draft of a structure as its weavers know it: its usual block order in its usual colours. */
export function usualDraft(structure: Structure): Draft {
  return drawnAs(plainlyOf(structure))!;
}

const commonOf = ({ name, blocks }: Structure) => ({ structure: name, blocks: String(blocks.length), tabby: 'L' });

/** The flags for the usual colours of a structure. */
function plainlyOf(structure: Structure): Record<string, string> {
  const { pickKinds, companions } = weaveOf(structure, structure.profile);
  const colours = pickKinds.includes('pattern') ? { orders: 'L', weft: 'D' } : { orders: 'D', weft: 'L' };
  // If colours make the blocks, they are in the warp, and the fine weft has one colour.
  return { ...commonOf(structure), ...colours, ...(companions && { weft: 'D', by: 'unit' }) };
}

/** Units per element for a motif of about {@link WIDE} ends. */
function timesFor(unit: number): number {
  return Math.max(1, Math.round(WIDE / (MOTIF.length * unit)));
}

/** All blocks of three or more, up and down again, as wide as wanted and as their floats allow. */
function allBlocks({ blocks, ...structure }: Structure): { words: string; profile: string } | undefined {
  if (blocks.length < 3) return undefined;
  const point = [...blocks, ...blocks.slice(1, -1).toReversed()];
  const wide = (times: number): string[] => point.flatMap((block) => new Array<string>(times).fill(block));
  const allowed = [2, 1]
    .map(wide)
    .find((profile) => (longestFloat({ blocks, ...structure }, profile) ?? Infinity) <= LONGEST);
  return allowed && { words: `blocks ${blocks[0]} to ${blocks.at(-1)} and back`, profile: allowed.join(' ') };
}

/** The motif as a block order (dark: first block, light: second), as large as wanted and as its floats allow. */
function blocksOfMotif(structure: Structure): string[] | undefined {
  const [dark, light] = blocksForColours(structure, undefined);
  if (light === undefined) return undefined;
  for (let times = timesFor(weaveOf(structure, structure.profile).endUnits[0]!); times >= 1; times--) {
    const profile = [...MOTIF].flatMap((letter) => new Array<string>(times).fill(letter === 'D' ? dark! : light));
    const longest = longestFloat(structure, profile);
    if (longest === undefined) return undefined;
    if (times === 1 || longest <= LONGEST) return profile;
  }
  return undefined;
}

/** The draft for these flags; undefined if the structure has no such draft. */
function drawnAs(flags: Record<string, string>): Draft | undefined {
  try {
    const question = readQuestion({ flags }, () => {
      throw new Problem('no draft is asked for');
    });
    const warp = question.orders[0]!;
    const [family] = familiesOf(question);
    return draftOf({ family: family!, warp, weft: weftOf(question, warp), start: [0, 0] }, question);
  } catch (problem) {
    if (problem instanceof Problem) return undefined;
    throw problem;
  }
}
