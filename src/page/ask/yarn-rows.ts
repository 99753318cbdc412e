import { DEFAULT_YARNS } from '../../draft/yaml/read-draft.js';
import { button, el } from '../paint/dom.js';

/** A yarn as it is asked for. */
interface Row {
  readonly letter: string;
  readonly colour: string;
  readonly name: string;
}

const USUAL: readonly Row[] = DEFAULT_YARNS.map(({ letter, hex, name }) => ({ letter, colour: hex, name }));
/** Letters for further yarns. */
const LETTERS = 'DLABCEFGHIJKMNOPQRSTUVWXYZ';

/** The yarns, each with letter, colour and name. */
export function yarnRows(changed: () => void): {
  readonly field: HTMLElement;
  /** The yarns under the key of a question. */
  value(): Readonly<Record<string, { readonly colour: string; readonly name?: string }>>;
  show(yarns: unknown): void;
} {
  const list = el('ul', { class: 'yarn-rows' });
  const add = ({ letter, colour, name }: Row): void => {
    const remove = button('Remove', () => {
      item.remove();
      more.focus();
      changed();
    });
    remove.append(el('span', { class: 'unseen' }, ` yarn ${letter}`));
    const item: HTMLElement = el(
      'li',
      {},
      el('strong', { class: 'letter' }, letter),
      el('input', { type: 'color', value: colour, 'aria-label': `Colour of ${letter}`, input: changed }),
      el('input', {
        type: 'text',
        value: name,
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
    add({ letter, colour: '#888888', name: '' });
    changed();
  });
  return {
    field: el('fieldset', {}, el('legend', {}, 'Yarns'), list, more),
    value: () =>
      Object.fromEntries(
        [...list.children].map((item) => {
          const [colour, name] = [...item.querySelectorAll('input')].map(({ value }) => value.trim());
          return [item.querySelector('.letter')!.textContent!, { colour: colour!, ...(name && { name }) }];
        }),
      ),
    show(yarns) {
      const given = typeof yarns === 'object' && yarns !== null ? Object.entries(yarns) : [];
      const rows = given.map(([letter, yarn]: [string, Partial<Row>]) => ({
        letter,
        colour: yarn.colour ?? '#888888',
        name: yarn.name === undefined || yarn.name === letter ? '' : yarn.name,
      }));
      list.replaceChildren();
      for (const row of rows.length > 0 ? rows : USUAL) add(row);
    },
  };
}
