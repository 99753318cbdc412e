import type { KeptCloth } from '../plan/shortlist.js';
import { Problem } from '../problem.js';
import { box } from './box.js';
import { clothFigure } from './cloth-figure.js';
import type { Desk } from './desk.js';
import { button, el } from './dom.js';
import { LEAST_STARRED, TRAITS } from './liking.js';
import type { Screen } from './screen.js';
import { markFields } from './star-field.js';

const SMALL = 120;

/** The list of what is kept: marks, notes, a file to save and to open again, and what the stars say. */
export function keptList(
  desk: Desk,
  screen: Screen,
): { readonly dialog: HTMLDialogElement; readonly opener: HTMLButtonElement; show(): void } {
  const shown = box('kept', () => undefined);
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
      const count = desk.marks.read(await given.text(), given.name);
      said.textContent = `${count} kept ${count === 1 ? 'cloth' : 'cloths'} read from ${given.name}.`;
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      said.textContent = error.message;
    }
    file.value = '';
    build();
    desk.tell();
  };
  const save = button('Save shortlist.json', () => {
    const link = el('a', {
      href: URL.createObjectURL(new Blob([desk.marks.text()], { type: 'application/json' })),
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
    const here = desk.byCode.has(code);
    return el(
      'li',
      {},
      clothFigure(draft, {
        side: 'face',
        repeats: 0,
        scale: screen.points / 2,
        width: SMALL,
        height: SMALL,
        grey: false,
        metres: 0,
        words: `Cloth ${code} at half its size`,
      }),
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
        markFields(desk, code),
        el(
          'div',
          { class: 'controls' },
          here &&
            button('Details', () => {
              shown.close();
              desk.show({ cloth: code }, true);
            }),
          button('Remove', () => {
            desk.marks.drop(code);
            build();
            desk.tell();
          }),
        ),
      ),
    );
  };
  const build = (): void => {
    list.replaceChildren(...desk.marks.all.map(entry));
    if (desk.marks.all.length === 0)
      list.append(el('li', { class: 'quiet' }, 'Nothing yet: press Keep under a cloth.'));
    showLiking();
  };
  const showLiking = (): void => {
    const found = desk.liking();
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
              desk.show({ order: 'liked' });
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
      opener.textContent = `Kept ${desk.marks.all.length}`;
      if (shown.dialog.open) showLiking();
    },
  };
}
