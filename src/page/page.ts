import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { rankingOf } from '../gallery/html/page-asked.js';
import type { Manifest } from '../gallery/manifest/manifest.js';
import { comparison } from './boxes/compare.js';
import { details } from './boxes/details.js';
import { keptList } from './boxes/kept.js';
import { trueSize } from './boxes/true-size.js';
import { el, one } from './paint/dom.js';
import { Screen } from './paint/screen.js';
import { Cards } from './parts/cards.js';
import { notice } from './parts/notice.js';
import { panel } from './parts/panel.js';
import { toolbar } from './parts/toolbar.js';
import { Marks } from './store/marks.js';
import { shelfIn } from './store/shelf.js';
import { type Address, Store } from './store/store.js';

/** Makes the page interactive. Without this script it shows all cloths, readable and printable. */
async function begin(main: HTMLElement): Promise<void> {
  const manifest = await unpacked(one(document, '#gallery').textContent!);
  const key = marksKey(manifest);
  const marks = new Marks(shelfIn(() => localStorage, key));
  const store = new Store(manifest, browserAddress(), marks);
  const screen = new Screen();
  const cards = new Cards(store, screen);
  const size = trueSize(store, screen);
  const side = panel(store, size.open);
  const boxes = [details(store, screen), comparison(store, screen), keptList(store, screen), size] as const;
  const top = toolbar(store, side.opener, boxes[2].opener);
  const foot = notice(store);
  main.replaceChildren(
    one(main, 'h2'),
    top.bar,
    el('div', { class: 'floor' }, side.drawer, el('div', { id: 'cloths', tabindex: -1 }, size.asks, cards.room)),
  );
  document.body.append(...boxes.map(({ dialog }) => dialog), foot.line);
  document.documentElement.classList.add('is-alive');
  keepClear(top.bar);
  const ranking = one(document, 'header .ranking');
  store.listen(() => {
    ranking.textContent = `${rankingOf({ rank: store.view.weights })}.`;
    top.show(cards.arrange());
    side.show();
    for (const each of boxes) each.show();
    foot.show();
  });
  // The part of the address after # holds the view, so these links scroll by script.
  one(document, '.skip').addEventListener('click', (event) => {
    event.preventDefault();
    cards.focus();
  });
  one(document, 'a[href="#before"]').addEventListener('click', (event) => {
    event.preventDefault();
    one(document, '#before').scrollIntoView();
  });
  addEventListener('popstate', () => store.readAddress());
  addEventListener('storage', (event) => {
    if (event.key !== key) return;
    marks.reload();
    store.tell();
  });
  store.readAddress();
}

/** Reads the gallery out of the page: JSON, as zlib data in base 64. */
async function unpacked(text: string): Promise<Manifest> {
  const bytes = Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
  const json = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate'));
  return (await new Response(json).json()) as Manifest;
}

/** The key of the marks in the browser's storage: the same for all galleries of a question, wherever they lie. */
function marksKey({ question }: Manifest): string {
  const { rank: _, show: __, seed: ___, tries: ____, ...asked } = question;
  return `shedlight-kept ${bytesToHex(sha256(utf8ToBytes(JSON.stringify(asked)))).slice(0, 16)}`;
}

/** Keeps what is scrolled to clear of the bar, which stays at the top of the window. */
function keepClear(bar: HTMLElement): void {
  new ResizeObserver(() => {
    const covered = getComputedStyle(bar).position === 'sticky' ? bar.offsetHeight : 0;
    document.documentElement.style.setProperty('--bar', `${covered}px`);
  }).observe(bar);
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

const main = document.querySelector<HTMLElement>('main');
if (main !== null) void begin(main);
