import type { KeptCloth } from '../../formats/shortlist.js';
import { Problem } from '../../problem.js';
import { plural } from '../../words/counts.js';
import { smallFigure } from '../paint/cloth-figure.js';
import { button, el } from '../paint/dom.js';
import type { Screen } from '../paint/screen.js';
import { LEAST_STARRED, TRAITS } from '../store/preference.js';
import type { Store } from '../store/store.js';
import { dialogBox } from './dialog.js';
import { download } from './download.js';
import { markFields } from './star-field.js';

/** The list of what is kept: marks, notes, a file to save and to open again, and what the stars say. */
export function keptList(
  store: Store,
  screen: Screen,
): { readonly dialog: HTMLDialogElement; readonly opener: HTMLButtonElement; show(): void } {
  const shown = dialogBox('kept', () => store.tell());
  const opener = button('', () => {
    build();
    shown.open('Kept cloths');
    store.tell();
  });
  const said = el('p', { role: 'status' });
  const list = el('ol', { class: 'kept-cloths' });
  const liking = el('section', { class: 'liking', 'aria-label': 'What the stars say' });
  const aside = setAside(store);
  shown.body.append(
    el(
      'p',
      {},
      'What is kept stays in this browser. Save it as a file to plan a warp from it, to hand it on, or to open it again anywhere.',
    ),
    savedLists(store, said),
    said,
    aside,
    list,
    liking,
  );

  let entries: readonly { readonly code: string; readonly item: HTMLElement; show(): void }[] = [];
  const build = (): void => {
    const again = (at: number): void => {
      const next = entries[Math.min(at, entries.length - 1)]?.item.querySelector<HTMLElement>('.remove');
      if (next) next.focus();
      else shown.focus();
    };
    entries = store.marks.all.map((cloth, at) => {
      const marks = markFields(store, cloth.code);
      const remove = (): void => {
        store.marks.drop(cloth.code);
        store.tell();
        again(at);
      };
      const open = (): void => {
        shown.close();
        store.show({ cloth: cloth.code }, true);
      };
      return { code: cloth.code, item: entryOf(cloth, marks.field, store, screen, open, remove), show: marks.show };
    });
    list.replaceChildren(...entries.map(({ item }) => item));
    if (entries.length === 0) list.append(el('li', { class: 'quiet' }, 'Nothing yet: press Keep under a cloth.'));
  };
  const update = (): void => {
    const { all } = store.marks;
    if (all.length !== entries.length || all.some(({ code }, at) => entries[at]!.code !== code)) build();
    for (const each of entries) each.show();
    aside.hidden = store.marks.aside.length === 0;
    liking.replaceChildren(
      ...whatStarsSay(store, () => {
        shown.close();
        store.show({ order: 'liked' });
      }),
    );
  };
  return {
    dialog: shown.dialog,
    opener,
    show() {
      opener.textContent = `Kept ${store.marks.all.length}`;
      if (shown.dialog.open) update();
    },
  };
}

/** Saves the list as a file, and reads one that was saved; what came of it is said. */
function savedLists(store: Store, said: HTMLElement): HTMLElement {
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
    store.tell();
  };
  const save = button('Save shortlist.json', () => {
    download(store.marks.text(), 'shortlist.json');
    said.textContent = 'Saved. The commands keep, plan and deal read it.';
  });
  const open = button('Open a saved list', () => file.click());
  return el('div', { class: 'controls' }, save, open, file);
}

/** Tells of stored lists that could not be read, and saves them; hidden while there is none. */
function setAside(store: Store): HTMLElement {
  return el(
    'div',
    { class: 'aside', hidden: true },
    el(
      'p',
      { class: 'caution' },
      'This browser stored a list that cannot be read: it is damaged, or of a newer version. It was set aside, not deleted.',
    ),
    button('Save what was set aside', () => {
      for (const [at, text] of store.marks.aside.entries()) download(text, `set-aside-${at + 1}.json`);
    }),
  );
}

/** One kept cloth: its picture, its recipe, its marks, and what can be done with it. */
function entryOf(
  { code, recipe, draft }: KeptCloth,
  marks: HTMLElement,
  store: Store,
  screen: Screen,
  open: () => void,
  remove: () => void,
): HTMLElement {
  const here = store.byCode.has(code);
  const elsewhere = !here && el('span', { class: 'quiet' }, ' (not among the cloths shown)');
  return el(
    'li',
    {},
    smallFigure(draft, screen.points / 2, `Cloth ${code} at half its size`),
    el(
      'div',
      {},
      el('p', {}, el('strong', { class: 'code' }, code), ' ', el('bdi', {}, recipe), elsewhere),
      marks,
      el('div', { class: 'controls' }, here && button('Details', open), button('Remove', remove, { class: 'remove' })),
    ),
  );
}

/** What the stars given tell of a person's liking, as bars, with a way to sort by it. */
function whatStarsSay(store: Store, sort: () => void): HTMLElement[] {
  const head = el('h3', {}, 'What the stars say');
  const found = store.liking();
  if (found === undefined) {
    const words = `Give stars to ${LEAST_STARRED} cloths of this gallery or more: then it can be told which figures you like.`;
    return [head, el('p', { class: 'quiet' }, words)];
  }
  const words =
    'Worked out from your stars and the figures alone: by how many stars a cloth gains where it stands above the others in a figure. Few stars, small bars.';
  const bars = TRAITS.map((trait, t) =>
    bar(found.weights[t]! >= 0 ? trait.more : trait.less, Math.abs(found.weights[t]!)),
  );
  return [head, el('p', {}, words), el('ul', { class: 'bars' }, bars), button('Sort the cloths by this', sort)];
}

function bar(words: string, weight: number): HTMLElement {
  const length = el('span', { class: 'bar', 'aria-hidden': 'true' });
  length.style.width = `${Math.min(1, weight / 1.5) * 100}%`;
  const room = el('span', { class: 'bar-room' }, length);
  return el('li', {}, el('span', {}, words), room, el('span', {}, `+${weight.toFixed(2)}`));
}
