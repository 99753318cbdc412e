import { rankingOf } from '../gallery/html/page-asked.js';
import type { Manifest } from '../gallery/manifest/manifest.js';
import { el, one } from './paint/dom.js';
import { Screen } from './paint/screen.js';
import { Cards } from './parts/cards.js';
import { comparison } from './parts/compare.js';
import { details } from './parts/details.js';
import { keptList } from './parts/kept.js';
import { panel } from './parts/panel.js';
import { toolbar } from './parts/toolbar.js';
import { type Address, Store } from './store/store.js';

/** Key of a gallery's marks in the browser's storage; each page has its own. */
const MARKS = `shedlight-kept ${location.pathname}`;

/** Makes the page interactive. Without this script it shows all cloths, readable and printable. */
function begin(list: HTMLElement): void {
  const manifest = JSON.parse(one(document, '#gallery').textContent!) as Manifest;
  const store = new Store(manifest, browserAddress());
  const screen = new Screen();
  screen.apply();
  recall(store);
  const cards = new Cards(list, store, screen);
  const top = toolbar(store);
  const side = panel(store, screen);
  const boxes = [details(store, screen), comparison(store, screen), keptList(store, screen)] as const;
  top.bar.append(boxes[2].opener);
  list.before(top.bar);
  const floor = el('div', { class: 'floor' });
  list.before(floor);
  floor.append(side.fold, list);
  side.fold.open = matchMedia('(min-width: 75rem)').matches;
  document.body.append(...boxes.map(({ dialog }) => dialog));
  document.documentElement.classList.add('is-alive');
  const ranking = one(document, 'header .ranking');
  let kept = store.marks.all;
  store.listen(() => {
    if (kept !== store.marks.all) remember(store);
    kept = store.marks.all;
    ranking.textContent = `${rankingOf({ rank: store.view.weights })}.`;
    top.show(cards.arrange());
    side.show();
    for (const each of boxes) each.show();
  });
  for (const link of document.querySelectorAll<HTMLAnchorElement>('.skip, a[href="#before"]')) {
    // The part of the address after # holds the view, so these links scroll by script.
    link.addEventListener('click', (event) => {
      event.preventDefault();
      const goal = one<HTMLElement>(document, link.hash);
      goal.scrollIntoView();
      goal.focus();
    });
  }
  addEventListener('popstate', () => store.readAddress());
  store.readAddress();
}

/** Milliseconds from the last change of the view to the change of the address. */
const ADDRESS_AFTER = 200;

/** The address bar. It is changed after a delay: browsers refuse a change with every movement of a slider. */
function browserAddress(): Address {
  let writing: ReturnType<typeof setTimeout> | undefined;
  return {
    read: () => location.hash.replace(/^#/, ''),
    write(view, step) {
      clearTimeout(writing);
      if (step) history.pushState(null, '', `#${view}`);
      else writing = setTimeout(() => history.replaceState(null, '', `#${view}`), ADDRESS_AFTER);
    },
  };
}

function recall(store: Store): void {
  try {
    const text = localStorage.getItem(MARKS);
    if (text !== null) store.marks.read(text, 'what this browser kept');
  } catch {
    // Nothing was stored, it is damaged, or this browser stores nothing for pages on disk.
  }
}

function remember(store: Store): void {
  try {
    localStorage.setItem(MARKS, store.marks.text());
  } catch {
    // This browser stores nothing for pages on disk; the list can still be saved as a file.
  }
}

const list = document.querySelector<HTMLElement>('main > .cards');
if (list !== null) begin(list);
