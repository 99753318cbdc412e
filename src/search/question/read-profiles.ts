import { describe, Misread, under } from '../../input/given.js';
import { NO_BLOCK } from '../../structure/model/block-weave.js';
import type { Structure } from '../../structure/model/structure.js';
import type { ProfilesAsked } from './question.js';
import type { Written } from './question-table.js';

/** The word for a block order that is searched. */
const SEARCH = 'search';
const USUAL_LENGTHS = [2, 3, 4, 5, 6];
/** Most blocks of which every set is an element: 1024 sets. */
const MOST_TOGETHER = 10;

/** Whether a block order is to be searched. */
export function isSearched(text: string | undefined): boolean {
  return text !== undefined && wordsOf(text)[0] === SEARCH;
}

const wordsOf = (text: string): string[] =>
  text
    .trim()
    .toLowerCase()
    .split(/[\s,]+/);

/** The block orders that are to be searched; undefined if none is. */
export function profilesOf(written: Written, structures: readonly Structure[]): ProfilesAsked | undefined {
  const { profile, treadled, 'profile lengths': lengths } = written;
  const threaded = under('profile', () => searched(profile, ['mirrored']));
  const picks = under('treadled', () => searched(treadled, ['mirrored', 'together']));
  if (threaded === undefined && picks === undefined) {
    if (lengths === undefined) return undefined;
    throw new Misread('found lengths of profiles, but none is searched; expected profile: search', {
      within: ['profile lengths'],
      key: true,
    });
  }
  if (threaded !== undefined && lengths?.every((length) => length < 2)) {
    throw new Misread('found profiles of one element, which have one block; expected lengths from 2', {
      within: ['profile lengths'],
    });
  }
  const key = threaded === undefined ? 'treadled' : 'profile';
  under(key, () => refuseUnsearchable(written, structures, picks?.includes('together') === true));
  return {
    lengths: lengths ?? USUAL_LENGTHS,
    ...(threaded && { threaded: { mirrored: threaded.includes('mirrored') } }),
    ...(picks && { treadled: { mirrored: picks.includes('mirrored'), together: picks.includes('together') } }),
  };
}

/** The words after `search`; undefined if the block order is not searched. */
function searched(text: string | undefined, known: readonly string[]): readonly string[] | undefined {
  if (text === undefined || !isSearched(text)) return undefined;
  const [, ...rest] = wordsOf(text);
  const strange = rest.find((word) => !known.includes(word));
  if (strange === undefined) return rest;
  throw new Misread(`found ${describe(strange)}; expected search, or search, ${known.join(', ')}`);
}

/** Throws where there is nothing to search: a structure of one block, or of blocks that never show together. */
function refuseUnsearchable(written: Written, structures: readonly Structure[], together: boolean): void {
  if (written.profile?.toLowerCase() === 'order') {
    throw new Misread('found search beside profile: order; expected a profile, or search for both');
  }
  if (written['name draft'] !== undefined) {
    throw new Misread('found search beside a name draft; expected one or the other');
  }
  for (const { name, blocks, withBlocks } of structures) {
    if ((written.blocks ?? blocks.length) < 2) {
      throw new Misread(`found search with one block of ${name}; expected two blocks or more`);
    }
    const most = written.blocks ?? blocks.length;
    if (together && most > MOST_TOGETHER) {
      throw new Misread(`found together with ${most} blocks; expected ${MOST_TOGETHER} blocks at most`);
    }
    const [manner] = withBlocks?.(2, [NO_BLOCK]).manners ?? [];
    if (together && manner?.blocks[NO_BLOCK] === undefined) {
      throw new Misread(`found together with ${name}, which weaves one block at a time; expected search`);
    }
  }
}
