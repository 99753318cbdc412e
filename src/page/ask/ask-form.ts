import type { Key as KeyOf } from '../../input/key.js';
import { QUESTION_TABLE } from '../../search/question/question-table.js';
import { capital } from '../../words/counts.js';
import { el } from '../paint/dom.js';
import { type AskedOf, fieldText } from './asked.js';
import { type AskField, choiceField, eachField, ticksField } from './choice-field.js';
import { draftField } from './draft-field.js';
import { ownOf } from './own-draft.js';
import { structureChoice } from './structure-choice.js';
import { yarnRows } from './yarn-rows.js';

type Key = keyof typeof QUESTION_TABLE.keys;
type Asks = Omit<KeyOf<unknown>, 'read'>;

/** The keys of the form, in the order in which a weaver decides them. */
const MAIN: readonly Key[] = [
  'blocks',
  'profile',
  'treadling',
  'lengths',
  'orders',
  'weft',
  'by',
  'fill',
  'times',
  'limits',
  'loom',
  'rank',
  'sett',
  'show',
  'seen',
];
const SELDOM: readonly Key[] = [
  'treadled',
  'profile lengths',
  'name draft',
  'warp',
  'tabby',
  'starts',
  'same',
  'seed',
  'tries',
];
/** What weavers call some of the keys. */
const CALLED: Partial<Record<Key, string>> = {
  blocks: 'number of blocks',
  profile: 'order of blocks',
  by: 'each colour covers',
  fill: 'each element is',
  times: 'size ×',
  starts: 'orders begin',
  seen: 'drawn with',
};

/** The fields of a question. */
export interface AskForm {
  readonly fields: HTMLElement;
  asked(): AskedOf;
  show(asked: AskedOf): void;
  /** Paints the pictures of the structures, once they are to be seen. */
  paint(): void;
}

/** Makes the fields of a question, with the words that the help of the command has for them. */
export function askForm(changed: () => void): AskForm {
  const structure = structureChoice(changed);
  const yarns = yarnRows(changed);
  yarns.show(undefined);
  const draft = draftField(changed);
  const lacking = el('p', { class: 'caution', hidden: true });
  const shown = new Map<string, { readonly value: unknown; readonly text: string }>();
  const inputs = new Map<Key, AskField>();
  const field = (key: Key): HTMLElement => {
    const input = fieldOf(key, changed);
    inputs.set(key, input);
    return input.element;
  };
  const main = MAIN.map(field);
  const fields = el(
    'div',
    { class: 'ask-fields' },
    lacking,
    el('div', {}, structure.field, draft.field, yarns.field),
    el('div', {}, main),
    el('details', { class: 'seldom' }, el('summary', {}, 'Seldom needed'), el('div', {}, SELDOM.map(field))),
  );
  return {
    fields,
    paint: structure.paint,
    asked() {
      const own = draft.value();
      const names = structure.chosen();
      const kept = draft.isOnTheLoom() ? 'on the loom' : 'draft';
      const woven = own ? { [kept]: own.name } : names.length > 0 ? { structure: names } : {};
      const values = [...inputs].flatMap(([key, input]) => {
        const text = input.value();
        const known = shown.get(key);
        return text === '' ? [] : [[key, known?.text === text ? known.value : text] as const];
      });
      return { asked: { ...woven, yarns: yarns.value(), ...Object.fromEntries(values) }, own };
    },
    show({ asked, own }) {
      const names = asked.structure;
      structure.choose(Array.isArray(names) ? names.map(String) : names === undefined ? [] : [String(names)]);
      yarns.show(asked.yarns);
      lacking.hidden = asked.done === undefined;
      lacking.textContent = `The question leaves out what was done before (${fieldText('done', asked.done)}). That needs those files, which only the command can open: here nothing is left out.`;
      const onTheLoom = asked['on the loom'];
      const file = asked.draft ?? onTheLoom;
      const text = asked['draft text'];
      const held = file !== undefined && typeof text === 'string' ? ownOf(String(file), text) : undefined;
      draft.show(own ?? held, onTheLoom !== undefined);
      if (own === undefined && held === undefined && file !== undefined) draft.miss(String(file));
      shown.clear();
      for (const [key, input] of inputs) {
        const value = asked[key];
        const text = fieldText(key, value);
        shown.set(key, { value, text });
        input.show(text);
      }
    },
  };
}

/** The field of a key: words to choose from where the key has such, else a line to write in. */
function fieldOf(key: Key, changed: () => void): AskField {
  const known: Asks = QUESTION_TABLE.keys[key];
  const { about, usual, example, choices, other, many, oneOfEach } = known;
  const name = capital(CALLED[key] ?? key);
  const written = { name, usual, other, example: example.replace(/[[\]]/g, '') };
  if (choices !== undefined) return (many === undefined ? choiceField : ticksField)({ ...written, choices }, changed);
  if (oneOfEach !== undefined) return eachField(name, oneOfEach, changed);
  const hint = `hint-${key.replaceAll(' ', '-')}`;
  const input = el('input', {
    type: 'text',
    placeholder: usual ?? written.example,
    'aria-describedby': hint,
    spellcheck: 'false',
    input: changed,
  });
  const element = el(
    'div',
    { class: 'asked-key' },
    el('label', {}, el('span', {}, name), input),
    el('p', { class: 'quiet', id: hint }, about),
  );
  return {
    element,
    value: () => input.value.trim(),
    show(text) {
      input.value = text;
    },
  };
}
