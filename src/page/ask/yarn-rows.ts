import type { Yarn } from '../../colour/yarn.js';
import { DEFAULT_YARNS, YARNS } from '../../draft/yaml/yarns-given.js';
import type { Given } from '../../input/given.js';
import { button, el } from '../paint/dom.js';

/** Letters for further yarns. */
const LETTERS = 'DLABCEFGHIJKMNOPQRSTUVWXYZ';

/** The yarns, each with letter, colour and name. */
export function yarnRows(changed: () => void): {
  readonly field: HTMLElement;
  /** The yarns under the key of a question. */
  value(): Readonly<Record<string, { readonly colour: string; readonly name?: string; readonly tex?: string }>>;
  show(yarns: unknown): void;
} {
  const list = el('ul', { class: 'yarn-rows' });
  const add = ({ letter, hex, name, tex }: Yarn): void => {
    const remove = button('Remove', () => {
      item.remove();
      more.focus();
      changed();
    });
    remove.append(el('span', { class: 'unseen' }, ` yarn ${letter}`));
    const item: HTMLElement = el(
      'li',
      { 'data-tex': tex },
      el('strong', { class: 'letter' }, letter),
      el('input', { type: 'color', value: hex, 'aria-label': `Colour of ${letter}`, input: changed }),
      el('input', {
        type: 'text',
        value: name === letter ? '' : name,
        maxlength: 200,
        placeholder: 'name',
        'aria-label': `Name of ${letter}`,
        input: changed,
      }),
      remove,
    );
    list.append(item);
  };
  const letters = (): string[] => [...list.querySelectorAll('.letter')].map(({ textContent }) => textContent!);
  const more = button('Another yarn', () => {
    const letter = [...LETTERS].find((each) => !letters().includes(each));
    if (letter === undefined) return;
    add({ letter, hex: '#888888', name: letter });
    changed();
  });
  return {
    field: el('fieldset', {}, el('legend', {}, 'Yarns'), list, more),
    value: () =>
      Object.fromEntries(
        [...list.querySelectorAll('li')].map((item) => {
          const [colour, name] = [...item.querySelectorAll('input')].map(({ value }) => value.trim());
          const { tex } = item.dataset;
          const yarn = { colour: colour!, ...(name && { name }), ...(tex !== undefined && { tex }) };
          return [item.querySelector('.letter')!.textContent!, yarn];
        }),
      ),
    show(yarns) {
      const given = yarns === undefined ? DEFAULT_YARNS : YARNS.read(asWritten(yarns));
      list.replaceChildren();
      for (const yarn of given) add(yarn);
    },
  };
}

/** A value as the reader of files has it: what is single is text. */
function asWritten(value: unknown): Given {
  return JSON.parse(JSON.stringify(value, (_, part) => (typeof part === 'number' ? String(part) : part)));
}
