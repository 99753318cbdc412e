import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { DRAWN_DOWN, SEEN } from '../draft/point-of-view.js';
import type { KeptCloth } from '../formats/shortlist.js';
import { rankingInWords } from '../gallery/html/page-asked.js';
import type { Manifest } from '../gallery/manifest/manifest.js';
import { askedIn, sourceOf } from '../gallery/manifest/origin.js';
import { comparison } from './boxes/compare.js';
import { details } from './boxes/details.js';
import { keptList } from './boxes/kept.js';
import { trueSize } from './boxes/true-size.js';
import { el, one, writtenBy } from './paint/dom.js';
import { seeFrom } from './paint/paint.js';
import { Screen } from './paint/screen.js';
import { Cards } from './parts/cards.js';
import { notice } from './parts/notice.js';
import { panel } from './parts/panel.js';
import { toolbar } from './parts/toolbar.js';
import { Marks } from './store/marks.js';
import { shelfIn } from './store/shelf.js';
import { type Address, Store } from './store/store.js';

/** A gallery that is shown. */
export interface Room {
  /** The cloths that are kept. */
  kept(): readonly KeptCloth[];
  /** Takes the gallery away. */
  leave(): void;
}

/**
 * Shows a gallery in the page, alive.
 *
 * @param ask the button that asks another question
 * @param kept the cloths kept from the question before, which stay in the list
 */
export function openRoom(
  manifest: Manifest,
  address: Address,
  ask: HTMLElement,
  kept: readonly KeptCloth[] = [],
): Room {
  const main = one(document, 'main');
  const { seen } = manifest.question;
  seeFrom(seen === undefined ? DRAWN_DOWN : SEEN.read(seen));
  const leaving = new AbortController();
  const { signal } = leaving;
  const key = marksKey(manifest);
  const marks = new Marks(
    shelfIn(() => localStorage, key),
    sourceOf(writtenBy(), manifest.question),
  );
  marks.take(kept);
  const store = new Store(manifest, address, marks);
  const screen = new Screen();
  const cards = new Cards(store, screen, signal);
  const size = trueSize(store, screen);
  const side = panel(store, size.open);
  const boxes = [details(store, screen), comparison(store, screen), keptList(store, screen), size] as const;
  const top = toolbar(store, side.opener, [boxes[2].opener, ask]);
  const foot = notice(store);
  const list = el('div', { id: 'cloths', tabindex: -1 }, size.asks, cards.room);
  main.replaceChildren(one(main, 'h2'), top.bar, el('div', { class: 'floor' }, side.drawer, list));
  document.body.append(...boxes.map(({ dialog }) => dialog), foot.line);
  keepClear(top.bar);
  const ranking = one(document, 'header .ranking');
  store.listen(() => {
    ranking.textContent = `${rankingInWords({ rank: store.view.weights })}.`;
    top.show(cards.arrange());
    side.show();
    for (const each of boxes) each.show();
    foot.show();
  });
  // The part of the address after # holds the view, so these links scroll by script.
  const goes = (link: string, to: () => void): void => {
    const go = (event: Event): void => {
      event.preventDefault();
      to();
    };
    one(document, link).addEventListener('click', go, { signal });
  };
  goes('.skip', () => cards.focus());
  goes('a[href="#before"]', () => one(document, '#before').scrollIntoView());
  addEventListener('popstate', () => store.readAddress(), { signal });
  const changedElsewhere = (event: StorageEvent): void => {
    if (event.key !== key) return;
    marks.reload();
    store.tell();
  };
  addEventListener('storage', changedElsewhere, { signal });
  store.readAddress();
  return {
    kept: () => marks.all,
    leave() {
      leaving.abort();
      for (const { dialog } of boxes) dialog.remove();
      foot.line.remove();
    },
  };
}

/** The key of the marks in the browser's storage: the same for all galleries of a question, wherever they lie. */
function marksKey({ question }: Manifest): string {
  return `shedlight-kept ${bytesToHex(sha256(utf8ToBytes(JSON.stringify(askedIn(question))))).slice(0, 16)}`;
}

/** Keeps what is scrolled to clear of the bar, which stays at the top of the window. */
function keepClear(bar: HTMLElement): void {
  new ResizeObserver(() => {
    const covered = getComputedStyle(bar).position === 'sticky' ? bar.offsetHeight : 0;
    document.documentElement.style.setProperty('--bar', `${covered}px`);
  }).observe(bar);
}
