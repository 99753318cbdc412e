import type { Manifest } from '../gallery/manifest.js';
import { rankingOf } from '../gallery/page-asked.js';
import { bench } from './bench.js';
import { Cards } from './cards.js';
import { closer } from './closer.js';
import { comparison } from './compare.js';
import { type Address, Desk } from './desk.js';
import { el, one } from './dom.js';
import { keptList } from './kept.js';
import { panel } from './panel.js';
import { Screen } from './screen.js';

/** Where the marks of a gallery are kept in the browser: each page has its own. */
const MARKS = `shedlight-kept ${location.pathname}`;

/** Brings the page to life. Without this script it stays what it is: all cloths, readable and printable. */
function begin(list: HTMLElement): void {
  const manifest = JSON.parse(one(document, '#gallery').textContent!) as Manifest;
  const desk = new Desk(manifest, browserAddress());
  const screen = new Screen();
  screen.apply();
  recall(desk);
  const cards = new Cards(list, desk, screen);
  const top = bench(desk);
  const side = panel(desk, screen);
  const boxes = [closer(desk, screen), comparison(desk, screen), keptList(desk, screen)] as const;
  top.bar.append(boxes[2].opener);
  list.before(top.bar);
  const floor = el('div', { class: 'floor' });
  list.before(floor);
  floor.append(side.fold, list);
  side.fold.open = matchMedia('(min-width: 75rem)').matches;
  document.body.append(...boxes.map(({ dialog }) => dialog));
  document.documentElement.classList.add('is-alive');
  const ranking = one(document, 'header .ranking');
  let kept = desk.marks.all;
  desk.listen(() => {
    if (kept !== desk.marks.all) remember(desk);
    kept = desk.marks.all;
    ranking.textContent = `${rankingOf({ rank: desk.view.weights })}.`;
    top.show(cards.arrange());
    side.show();
    for (const each of boxes) each.show();
  });
  for (const link of document.querySelectorAll<HTMLAnchorElement>('.skip, a[href="#before"]')) {
    // The address holds what is shown, so these links go there by hand.
    link.addEventListener('click', (event) => {
      event.preventDefault();
      const goal = one<HTMLElement>(document, link.hash);
      goal.scrollIntoView();
      goal.focus();
    });
  }
  addEventListener('popstate', () => desk.readAddress());
  desk.readAddress();
}

/** Milliseconds after the last change until the address says it. */
const ADDRESS_AFTER = 200;

/** The address bar. Browsers refuse an address that changes with every movement of a slider, so it waits a little. */
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

function recall(desk: Desk): void {
  try {
    const text = localStorage.getItem(MARKS);
    if (text !== null) desk.marks.read(text, 'what this browser kept');
  } catch {
    // Nothing was kept, it was damaged, or this browser keeps nothing for pages on disk.
  }
}

function remember(desk: Desk): void {
  try {
    localStorage.setItem(MARKS, desk.marks.text());
  } catch {
    // This browser keeps nothing for pages on disk: the list can still be saved as a file.
  }
}

const list = document.querySelector<HTMLElement>('main > .cards');
if (list !== null) begin(list);
