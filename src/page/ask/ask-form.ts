import { QUESTION_TABLE } from '../../search/question/question-table.js';
import { capital } from '../../words/counts.js';
import { el } from '../paint/dom.js';
import { type AskedOf, fieldText } from './asked.js';
import { draftField } from './draft-field.js';
import { structureChoice } from './structure-choice.js';
import { yarnRows } from './yarn-rows.js';

type Key = keyof typeof QUESTION_TABLE.keys;

/** The keys that are text in the form, in the order in which a weaver decides them. */
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
];
const SELDOM: readonly Key[] = ['treadled', 'name draft', 'warp', 'tabby', 'starts', 'same', 'seed', 'tries'];
/** What weavers call some of the keys. */
const CALLED: Partial<Record<Key, string>> = {
  blocks: 'number of blocks',
  profile: 'order of blocks',
  by: 'each colour covers',
  times: 'size ×',
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
  const shown = new Map<string, { readonly value: unknown; readonly text: string }>();
  const inputs = new Map<Key, HTMLInputElement>();
  const field = (key: Key): HTMLElement => {
    const { about, usual, example } = QUESTION_TABLE.keys[key] as { about: string; usual?: string; example: string };
    const hint = `hint-${key.replaceAll(' ', '-')}`;
    const input = el('input', {
      type: 'text',
      placeholder: usual ?? example.replace(/[[\]]/g, ''),
      'aria-describedby': hint,
      spellcheck: 'false',
      input: changed,
    });
    inputs.set(key, input);
    return el(
      'div',
      { class: 'asked-key' },
      el('label', {}, el('span', {}, capital(CALLED[key] ?? key)), input),
      el('p', { class: 'quiet', id: hint }, about),
    );
  };
  const main = MAIN.map(field);
  const fields = el(
    'div',
    { class: 'ask-fields' },
    el('div', {}, structure.field, draft.field, yarns.field),
    el('div', {}, main, el('details', {}, el('summary', {}, 'Seldom needed'), SELDOM.map(field))),
  );
  return {
    fields,
    paint: structure.paint,
    asked() {
      const own = draft.value();
      const names = structure.chosen();
      const woven = own ? { draft: own.name } : names.length > 0 ? { structure: names } : {};
      const values = [...inputs].flatMap(([key, { value }]) => {
        const text = value.trim();
        const known = shown.get(key);
        return text === '' ? [] : [[key, known?.text === text ? known.value : text] as const];
      });
      return { asked: { ...woven, yarns: yarns.value(), ...Object.fromEntries(values) }, own };
    },
    show({ asked, own }) {
      const names = asked.structure;
      structure.choose(Array.isArray(names) ? names.map(String) : names === undefined ? [] : [String(names)]);
      yarns.show(asked.yarns);
      const file = asked.draft ?? asked['on the loom'];
      if (own !== undefined) draft.show(own);
      else if (file !== undefined) draft.miss(String(file));
      shown.clear();
      for (const [key, input] of inputs) {
        const value = asked[key];
        const text = fieldText(key, value);
        shown.set(key, { value, text });
        input.value = text;
      }
    },
  };
}
