import type { Choices } from '../../input/key.js';
import { nestedOrder } from '../../order/order.js';
import { el } from '../paint/dom.js';

/** A field of a question. Its value is the text that a person would write for the key. */
export interface AskField {
  readonly element: HTMLElement;
  value(): string;
  show(text: string): void;
}

/** What the words to choose from are, and what may be written in their place. */
interface Offer {
  readonly name: string;
  readonly choices: Choices;
  readonly usual?: string | undefined;
  readonly other?: string | undefined;
  readonly example: string;
}

/** Boxes to tick, one for each word; the usual word is ticked where nothing is given. */
export function ticksField({ name, choices, usual }: Offer, changed: () => void): AskField {
  const boxes = Object.keys(choices).map((word) => el('input', { type: 'checkbox', value: word, change: changed }));
  const element = el(
    'fieldset',
    { class: 'asked-key choices' },
    el('legend', {}, name),
    boxes.map((box) =>
      el('label', { class: 'ticked' }, box, stripOf(box.value), el('span', {}, `${box.value}: ${choices[box.value]}`)),
    ),
  );
  const show = (text: string): void => {
    const words = (text === '' ? (usual ?? '') : text).split(/[\s,;]+/);
    for (const box of boxes) box.checked = words.includes(box.value);
  };
  show('');
  const value = (): string =>
    boxes
      .filter(({ checked }) => checked)
      .map(({ value: word }) => word)
      .join(', ');
  return { element, value, show };
}

/** A list to choose one word from; where the key takes other values too, the last choice opens a field for one. */
export function choiceField({ name, choices, usual, other, example }: Offer, changed: () => void): AskField {
  const OTHER = 'other';
  const written = el('input', { type: 'text', 'aria-label': `${name}: ${other}`, spellcheck: 'false', input: changed });
  const select = el('select', {
    change: () => {
      open();
      if (select.value === OTHER) written.focus();
      changed();
    },
  });
  select.append(
    el('option', { value: '' }, usual === undefined ? 'as usual' : `as usual: ${usual}`),
    ...Object.entries(choices).map(([word, meaning]) => el('option', { value: word }, `${word}: ${meaning}`)),
    ...(other === undefined ? [] : [el('option', { value: OTHER }, `${other} …`)]),
  );
  written.placeholder = example;
  const open = (): void => {
    written.hidden = select.value !== OTHER;
  };
  open();
  return {
    element: el('div', { class: 'asked-key' }, el('label', {}, el('span', {}, name), select), written),
    value: () => (select.value === OTHER ? written.value.trim() : select.value),
    show(text) {
      const isWord = text === '' || Object.hasOwn(choices, text);
      select.value = isWord ? text : OTHER;
      written.value = isWord ? '' : text;
      open();
    },
  };
}

/** Lists side by side, of each of which one word is chosen. All of them the usual ones are the value of a key not given. */
export function eachField(
  name: string,
  oneOfEach: Readonly<Record<string, readonly string[]>>,
  changed: () => void,
): AskField {
  const lists = Object.entries(oneOfEach).map(([thing, words]) => {
    const select = el(
      'select',
      { change: changed },
      words.map((word) => el('option', {}, word)),
    );
    return { words, select, label: el('label', {}, el('span', {}, thing), select) };
  });
  return {
    element: el(
      'fieldset',
      { class: 'asked-key each' },
      el('legend', {}, name),
      lists.map(({ label }) => label),
    ),
    value: () =>
      lists.every(({ select }) => select.selectedIndex === 0) ? '' : lists.map(({ select }) => select.value).join(', '),
    show(text) {
      const said = text.split(/[\s,;]+/);
      for (const { words, select } of lists) {
        select.selectedIndex = Math.max(
          0,
          words.findIndex((word) => said.includes(word)),
        );
      }
    },
  };
}

/** Threads of one element, and an order, of which the ways of filling are shown. */
const THREADS = 4;
const ORDER = [0, 0, 1];

/** The threads that a way of filling the elements gives, dark and light side by side. */
const STRIPS: Readonly<Record<string, readonly number[]>> = {
  solid: ORDER.flatMap((colour) => new Array<number>(THREADS).fill(colour)),
  alternate: ORDER.flatMap((colour) => Array.from({ length: THREADS }, (_, at) => (colour + at) % 2)),
  nest: nestedOrder(ORDER, 2),
};

function stripOf(word: string): HTMLElement | false {
  const strip = STRIPS[word];
  if (strip === undefined) return false;
  const threads = strip.map((colour) => el('span', { class: colour === 0 ? 'dark' : 'light' }));
  return el('span', { class: 'threads', 'aria-hidden': 'true' }, threads);
}
