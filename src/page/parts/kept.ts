import type { KeptCloth } from '../../formats/shortlist.js';
import { Problem } from '../../problem.js';
import { plural } from '../../words/counts.js';
import { smallFigure } from '../paint/cloth-figure.js';
import { button, el } from '../paint/dom.js';
import type { Screen } from '../paint/screen.js';
import { LEAST_STARRED, TRAITS } from '../store/preference.js';
import type { Store } from '../store/store.js';
import { dialogBox } from './dialog.js';
import { markFields } from './star-field.js';

/** The list of what is kept: marks, notes, a file to save and to open again, and what the stars say. */
export function keptList(
  store: Store,
  screen: Screen,
): { readonly dialog: HTMLDialogElement; readonly opener: HTMLButtonElement; show(): void } {
  const shown = dialogBox('kept', () => undefined);
  const opener = button('', () => {
    build();
    shown.open('Kept cloths');
  });
  const said = el('p', { role: 'status' });
  const list = el('ol', { class: 'kept-cloths' });
  const liking = el('section', { class: 'liking', 'aria-label': 'What the stars say' });
  const file = el('input', {
    type: 'file',
    accept: '.json,application/json',
    class: 'unseen',
    tabindex: -1,
    'aria-label': 'Saved list',
    change: () => restore(),
  });
  const restore = async (): Promise<void> => {
    const given = file.files?.[0];
    if (given === undefined) return;
    try {
      const count = store.marks.read(await given.text(), given.name);
      said.textContent = `${count} kept ${plural(count, 'cloth')} read from ${given.name}.`;
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      said.textContent = error.message;
    }
    file.value = '';
    build();
    store.tell();
  };
  const save = button('Save shortlist.json', () => {
    const link = el('a', {
      href: URL.createObjectURL(new Blob([store.marks.text()], { type: 'application/json' })),
      download: 'shortlist.json',
    });
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
    said.textContent = 'Saved. The commands keep, plan and deal read it.';
  });
  shown.body.append(
    el(
      'p',
      {},
      'What is kept stays in this browser. Save it as a file to plan a warp from it, to hand it on, or to open it again anywhere.',
    ),
    el(
      'div',
      { class: 'controls' },
      save,
      button('Open a saved list', () => file.click()),
      file,
    ),
    said,
    list,
    liking,
  );

  const entry = ({ code, recipe, draft }: KeptCloth): HTMLElement => {
    const here = store.byCode.has(code);
    return el(
      'li',
      {},
      smallFigure(draft, screen.points / 2, `Cloth ${code} at half its size`),
      el(
        'div',
        {},
        el(
          'p',
          {},
          el('strong', { class: 'code' }, code),
          ` ${recipe}`,
          !here && el('span', { class: 'quiet' }, ' (of another gallery)'),
        ),
        markFields(store, code),
        el(
          'div',
          { class: 'controls' },
          here &&
            button('Details', () => {
              shown.close();
              store.show({ cloth: code }, true);
            }),
          button('Remove', () => {
            store.marks.drop(code);
            build();
            store.tell();
          }),
        ),
      ),
    );
  };
  const build = (): void => {
    list.replaceChildren(...store.marks.all.map(entry));
    if (store.marks.all.length === 0)
      list.append(el('li', { class: 'quiet' }, 'Nothing yet: press Keep under a cloth.'));
    showLiking();
  };
  const showLiking = (): void => {
    const found = store.liking();
    liking.replaceChildren(
      el('h3', {}, 'What the stars say'),
      ...(found === undefined
        ? [
            el(
              'p',
              { class: 'quiet' },
              `Give stars to ${LEAST_STARRED} cloths of this gallery or more: then it can be told which figures you like.`,
            ),
          ]
        : [
            el(
              'p',
              {},
              'Worked out from your stars and the figures alone: by how many stars a cloth gains where it stands above the others in a figure. Few stars, small bars.',
            ),
            el(
              'ul',
              { class: 'bars' },
              TRAITS.map((trait, t) =>
                bar(found.weights[t]! >= 0 ? trait.more : trait.less, Math.abs(found.weights[t]!)),
              ),
            ),
            button('Sort the cloths by this', () => {
              shown.close();
              store.show({ order: 'liked' });
            }),
          ]),
    );
  };
  const bar = (words: string, weight: number): HTMLElement => {
    const length = el('span', { class: 'bar', 'aria-hidden': 'true' });
    length.style.width = `${Math.min(1, weight / 1.5) * 100}%`;
    return el(
      'li',
      {},
      el('span', {}, words),
      el('span', { class: 'bar-room' }, length),
      el('span', {}, `+${weight.toFixed(2)}`),
    );
  };
  return {
    dialog: shown.dialog,
    opener,
    show() {
      opener.textContent = `Kept ${store.marks.all.length}`;
      if (shown.dialog.open) showLiking();
    },
  };
}
