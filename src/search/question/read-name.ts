import { describe, type Given, isKeys, Misread, textOf, under, wholeOf, wordOf } from '../../input/given.js';
import { type Kind, needed, nested, table, withDefault } from '../../input/key.js';
import { kind, text, yesNo } from '../../input/kinds.js';
import type { NameAsked } from './question.js';

const NAME = 'a name such as INDIGO, or “INDIGO, all drafts, mirrored”';

const nameTable = table({
  text: needed(text('a name'), { about: 'the name', example: 'INDIGO' }),
  drafts: withDefault(kind('usual, all or the number of a draft', draftsOf), 'usual', {
    about: 'which of the drafts that the name has',
    example: 'all',
  }),
  mirrored: withDefault(yesNo, 'no', { about: 'whether the threading is turned back at its end', example: 'yes' }),
  letters: withDefault(
    kind('letters with shafts, as { Y: 4, Z: 4 }', lettersOf),
    {},
    {
      about: 'shafts of letters that differ from the usual table',
      example: '{ Y: 4, Z: 4 }',
    },
  ),
});

/** A name to be drafted: keys, or `INDIGO`, `INDIGO, all drafts, mirrored`, `INDIGO, draft 3`. */
export const NAME_DRAFT: Kind<NameAsked> = nested(nameTable, NAME, partsOfName);

function partsOfName(given: string): Given {
  const [text = '', ...wishes] = textOf(given, NAME)
    .split(',')
    .map((part) => part.trim());
  if (text === '') throw new Misread(`found ${describe(given)}; expected ${NAME}`);
  const parts: Record<string, Given> = { text };
  for (const wish of wishes) {
    const asked = /^(?:drafts?\s+)?(all|usual|\d+)(?:\s+drafts)?$/.exec(wish)?.[1];
    if (wish === 'mirrored') parts.mirrored = 'yes';
    else if (asked !== undefined) parts.drafts = asked;
    else throw new Misread(`found ${describe(wish)}; expected all drafts, draft 3 or mirrored`);
  }
  return parts;
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
