import type { Weave } from '../../draft/draft.js';
import type { By, Fill } from '../../order/laid-order.js';
import { brief, Problem } from '../../problem.js';
import {
  findStructure,
  letterBlocks,
  nameDraft,
  type Structure,
  spelledStructure,
} from '../../structure/catalogue/catalogue.js';
import { sized } from '../../structure/model/sized.js';
import { structureOn, treadledOn } from '../../structure/rethread/on-draft.js';
import { ITS_OWN, onTieUpOf, type WayOn } from '../../structure/rethread/treadlings-on.js';
import type { Question } from '../question/question.js';
import { ALL, waysTried } from '../question/treadlings-tried.js';
import { blockFamily, elementsOf, type Profile, profileFamily, type Woven } from './block-family.js';
import type { Family } from './family.js';
import { searchedFamily, withUnions } from './profile-search.js';

/**
 * Every way of laying orders that a question asks for, in the order in which they are tried. Where block orders are
 * searched, one family stands for all of them (see `profile-search.ts`).
 */
export function familiesOf(question: Question): Family[] {
  const families: Family[] = [];
  for (const base of basesOf(question)) {
    for (const by of question.profile === 'order' ? (['block'] as const) : question.by) {
      for (const fill of question.fill) {
        for (const times of question.times) {
          // One thread an element has no companion beside it: alternate is solid.
          const same = fill === 'alternate' && by === 'thread' && times === 1 && question.fill.includes('solid');
          const family = same ? undefined : base(by, fill, times);
          if (family !== undefined) families.push(family);
        }
      }
    }
  }
  return families;
}

/** The families of one weave or structure; none where it cannot be laid so. */
type Base = (by: By, fill: Fill, times: number) => Family | undefined;

function basesOf(question: Question): Base[] {
  if (question.draft) return waysTried(question).map((way) => draftBase(question, question.draft!, way));
  return question.structures
    .map((name) => sized(findStructure(name), question.blocks))
    .flatMap((structure) =>
      mannersTried(question, structure).flatMap((manner) =>
        profilesOf(question, structure).map((profile): Base => {
          const woven = question.name === undefined ? structure : spelledStructure(structure)!.structure;
          return structureBase(question, { structure: woven, manner }, profile);
        }),
      ),
    );
}

function mannersTried({ treadlings }: Question, structure: Structure): readonly string[] {
  if (treadlings.includes(ALL)) return structure.manners.map(({ name }) => name);
  return treadlings.length > 0 ? treadlings : [''];
}

function structureBase(question: Question, asked: Woven, profile: Profile): Base {
  const { structure } = asked;
  const woven = question.profiles?.treadled?.together ? { ...asked, structure: withUnions(structure) } : asked;
  return (by, fill, times) => {
    const lay = (other: Partial<Profile>): Family =>
      profileFamily(question, woven, { ...profile, ...other }, { by, fill, times });
    if (question.profiles !== undefined) return searchedFamily(question, woven.structure, lay);
    // Without a profile, the order is the profile too.
    const chooses = by === 'block' && (question.profile === 'order' || question.profile.length === 0);
    return chooses ? blockFamily(question, woven, fill, times) : lay({});
  };
}

/**
 * One way of weaving on a draft: as its threads lie, or with other blocks of the structure that it was found to be. Of
 * blocks only the manners of that structure know.
 */
function draftBase(question: Question, { file, draft }: NonNullable<Question['draft']>, way: WayOn): Base {
  const { profile, profiles, treadled } = question;
  const called = draft.name ?? file;
  const manner = way.name === ITS_OWN ? '' : way.name;
  const inBlocks = (): Woven | undefined => {
    const on = structureOn(draft);
    if (on === undefined)
      throw new Problem(`blocks: ${brief(file)} is no structure known here; expected by thread or by unit`);
    return way.free
      ? undefined
      : { structure: sized(on.structure, question.blocks), manner, called, tied: onTieUpOf(draft) };
  };
  return (by, fill, times) => {
    const asItLies = (treadled: readonly string[]): Family => {
      const weave = treadled.length === 0 ? way.weave : ownTreadled(draft, file, manner, treadled);
      const own = { structure: called, manner, profile: [], ...(treadled.length > 0 && { treadled }) };
      return { ...own, by, fill, times, fixedWeave: true, weave: () => weave, laid: elementsOf(question, fill) };
    };
    if (by !== 'block' && profile.length === 0 && profiles?.threaded === undefined) {
      if (profiles === undefined) return asItLies(treadled);
      const woven = inBlocks();
      return woven && searchedFamily(question, woven.structure, (laid) => asItLies(laid.treadled ?? []));
    }
    const woven = inBlocks();
    const own = profiles === undefined || woven === undefined ? [] : structureOn(draft)!.blocks;
    const blocks = profile === 'order' || profile.length === 0 ? own : profile;
    return woven && structureBase(question, woven, { blocks })(by, fill, times);
  };
}

/** The draft's own threading, treadled in other blocks. */
function ownTreadled(draft: Weave, file: string, manner: string, treadled: readonly string[]): Weave {
  const on = structureOn(draft);
  const weave = on && treadledOn(draft, on, { ...(manner !== '' && { manner }), treadled });
  if (weave === undefined) {
    throw new Problem(
      `treadled: ${brief(file)} has no blocks that can be treadled otherwise; expected a profile as well`,
    );
  }
  return onTieUpOf(draft)(weave);
}

/** The block orders that are tried: the one asked for, the structure's own, or those of a name. */
function profilesOf({ name, profile }: Question, structure: Structure): Profile[] {
  if (name === undefined) {
    return [{ blocks: profile === 'order' || profile.length === 0 ? structure.profile : profile }];
  }
  const { text, drafts, mirrored, letters: table } = name;
  const said = `${text}${mirrored ? ' mirrored' : ''}`;
  const spelling = spelledStructure(structure)!;
  if (spelling.by === 'blocks') {
    const blocks = letterBlocks(text, structure.blocks);
    return [{ blocks: mirrored ? [...blocks, ...blocks.slice(1, -1).reverse()] : blocks, called: said }];
  }
  const options = { mirrored, letters: table };
  const first = nameDraft(text, {
    ...options,
    ...(drafts !== 'usual' && { alternative: drafts === 'all' ? 0 : drafts - 1 }),
  });
  const all = 2 ** first.gaps;
  const rest = drafts === 'all' ? Array.from({ length: all - 1 }, (_, at) => at + 1) : [];
  // A twill is treadled on, whatever the threading.
  const treadled = structure.blocks.length === 1 ? { treadled: [spelling.structure.blocks[0]!], isPlain: true } : {};
  return [first, ...rest.map((alternative) => nameDraft(text, { ...options, alternative }))].map((draft) => ({
    blocks: draft.profile,
    called: `${said}${all > 1 ? `, draft ${draft.alternative + 1} of ${all}` : ''}`,
    ...treadled,
  }));
}
