import * as v from 'valibot';
import {
  describe,
  type Given,
  isKeys,
  keys,
  Misread,
  readAs,
  reading,
  textOf,
  under,
  wholeOf,
  wordOf,
} from '../../input/given.js';
import type { NameAsked } from './question.js';

const NAME = 'a name such as INDIGO, or “INDIGO, all drafts, mirrored”';

const nameKeys = keys({
  text: reading((given) => textOf(given, 'a name')),
  drafts: v.optional(reading(draftsOf), 'usual'),
  mirrored: v.optional(
    reading((given) => wordOf(given, ['yes', 'no', 'true', 'false'] as const)),
    'no',
  ),
  letters: v.optional(reading(lettersOf), {}),
});

/** Reads a name to be drafted: `INDIGO`, `INDIGO, all drafts, mirrored`, `INDIGO, draft 3`, or the same as keys. */
export function nameOf(given: Given): NameAsked {
  if (isKeys(given)) {
    const { mirrored, ...name } = readAs(nameKeys, given);
    return { ...name, mirrored: mirrored === 'yes' || mirrored === 'true' };
  }
  const [text = '', ...wishes] = textOf(given, NAME)
    .split(',')
    .map((part) => part.trim());
  if (text === '') throw new Misread(`found ${describe(given)}; expected ${NAME}`);
  let drafts: NameAsked['drafts'] = 'usual';
  for (const wish of wishes) {
    if (wish === 'mirrored') continue;
    const asked = /^(?:drafts?\s+)?(all|usual|\d+)(?:\s+drafts)?$/.exec(wish)?.[1];
    if (asked === undefined) throw new Misread(`found ${describe(wish)}; expected all drafts, draft 3 or mirrored`);
    drafts = draftsOf(asked);
  }
  return { text, drafts, mirrored: wishes.includes('mirrored'), letters: {} };
}

function draftsOf(given: Given): NameAsked['drafts'] {
  const text = textOf(given, 'usual, all or the number of a draft');
  if (/^\d+$/.test(text)) return wholeOf(text, 'the number of a draft, from 1', 1, 2 ** 20);
  return wordOf(text, ['usual', 'all'] as const);
}

/** Reads the shafts of letters, for a weaver with a table of their own. */
function lettersOf(given: Given): NameAsked['letters'] {
  if (!isKeys(given)) throw new Misread(`found ${describe(given)}; expected letters with shafts, as { Y: 4, Z: 4 }`);
  return Object.fromEntries(
    Object.entries(given).map(([letter, shaft]) => {
      if (!/^[A-Z]$/.test(letter)) {
        throw new Misread(`found ${describe(letter)}; expected a letter from A to Z`, { within: [letter], key: true });
      }
      return [letter, under(letter, () => wholeOf(shaft, 'a shaft from 1 to 4', 1, 4))];
    }),
  );
}
