import { seenInWords } from '../../draft/point-of-view.js';
import { kindsOf } from '../../gallery/manifest/groups.js';
import { recipesApart } from '../../search/report/recipes-apart.js';
import type { Found } from '../../search/strategy/outcome.js';
import { button, el } from '../paint/dom.js';
import { Painter, seenFrom } from '../paint/paint.js';
import type { Screen } from '../paint/screen.js';
import type { Store } from '../store/store.js';
import type { View } from '../store/view.js';
import { Card } from './card.js';
import { type CardFrame, frameOf, lookInWords } from './frame.js';

/** Most cards on one page of the list. */
const ON_A_PAGE = 100;

/** Side of a printed picture in millimetres, as in the style. */
const PAPER = 56;

/** A cloth that is listed, the number of near twins that stand behind it, and whether they are shown. */
interface Place {
  readonly found: Found;
  readonly rank: number;
  readonly twins: number;
  readonly unfolded: boolean;
}

/** The list of cards, page by page: their order, and the size and distance at which they are painted. */
export class Cards {
  readonly room: HTMLElement;
  private readonly list = el('ul', { class: 'cards', tabindex: -1 });
  /** What the pictures show, for a printed list. */
  private readonly paper = el('p', { class: 'on-paper' });
  private readonly empty: HTMLElement;
  private readonly pages: HTMLElement;
  private readonly cards = new Map<string, Card>();
  private readonly kinds: ReadonlyMap<string, string>;
  private readonly recipes: ReadonlyMap<Found, string>;
  /** Codes of the groups whose near twins are shown. */
  private readonly unfolded = new Set<string>();
  private readonly inView = new Set<Card>();
  private readonly painter = new Painter();
  private readonly store: Store;
  private readonly screen: Screen;
  private readonly watcher: IntersectionObserver;
  private shown: readonly Card[] = [];
  private frame: CardFrame = { side: 240, scale: 1 };
  private look = '';
  private last: View | undefined;

  /** @param signal aborted once the list is taken away */
  constructor(store: Store, screen: Screen, signal: AbortSignal) {
    this.store = store;
    this.screen = screen;
    this.kinds = kindsOf(store.found);
    this.recipes = recipesApart(store.found).apart;
    this.empty = el(
      'div',
      { class: 'empty', hidden: true },
      el('p', {}, 'No cloth of this gallery passes the filters and the words to find.'),
      button('Clear filters', () => store.show({ filters: {}, find: '', kept: false })),
    );
    this.pages = el('nav', { class: 'pages screen', 'aria-label': 'Pages of the list', hidden: true });
    this.room = el('div', { class: 'room' }, this.paper, this.empty, this.list, this.pages);
    this.watcher = new IntersectionObserver((entries) => this.seen(entries), { rootMargin: '400px' });
    new ResizeObserver(() => this.fit()).observe(this.room);
    // On paper all pictures are wanted, in view or not.
    const paintAll = (): void => {
      for (const card of this.shown) card.paint(this.look, this.frame);
    };
    addEventListener('beforeprint', paintAll, { signal });
  }

  /** The first card's link, or what stands in its place: where the keyboard goes on from the top of the page. */
  focus(): void {
    this.list.scrollIntoView();
    const first: HTMLElement | null = this.room.querySelector('.card .code, .empty:not([hidden]) button');
    first?.focus({ preventScroll: true });
  }

  /** Shows the listed cloths in order; returns their number. */
  arrange(): number {
    const listed = this.store.listed();
    const places = this.placesOf(listed);
    const pages = Math.max(1, Math.ceil(places.length / ON_A_PAGE));
    const page = Math.min(this.store.view.page, pages);
    const here = places.slice((page - 1) * ON_A_PAGE, page * ON_A_PAGE);
    this.put(here.map((place) => this.cardOf(place.found)));
    here.forEach(({ found, rank, twins, unfolded }) => {
      this.cardOf(found).update(rank, twins, unfolded);
    });
    this.empty.hidden = listed.length > 0;
    this.turnPages(page, pages, places.length);
    this.fit();
    this.toTheBest();
    return listed.length;
  }

  /** The listed cloths, near twins behind the first of their kind, and only where they are unfolded. */
  private placesOf(listed: readonly { readonly found: Found; readonly rank: number }[]): Place[] {
    const kinds = new Map<string, { readonly found: Found; readonly rank: number }[]>();
    for (const each of listed) {
      const kind = this.kinds.get(each.found.code)!;
      const known = kinds.get(kind);
      if (known) known.push(each);
      else kinds.set(kind, [each]);
    }
    return [...kinds].flatMap(([kind, members]) => {
      const unfolded = this.unfolded.has(kind);
      return members
        .map((each, at) => ({ ...each, twins: at === 0 ? members.length - 1 : 0, unfolded }))
        .slice(0, unfolded ? undefined : 1);
    });
  }

  private cardOf(found: Found): Card {
    const known = this.cards.get(found.code);
    if (known !== undefined) return known;
    const card = new Card(found, this.recipes.get(found) || found.recipe, this.store, () => {
      const kind = this.kinds.get(found.code)!;
      if (!this.unfolded.delete(kind)) this.unfolded.add(kind);
      this.arrange();
    });
    this.cards.set(found.code, card);
    return card;
  }

  /** Puts these cards into the list, and moves only those that are out of place: the focused one stays focused. */
  private put(cards: readonly Card[]): void {
    const wanted = new Set(cards);
    for (const card of this.shown) {
      if (wanted.has(card)) continue;
      card.item.remove();
      this.watcher.unobserve(card.item);
      this.inView.delete(card);
      this.painter.forget(card);
    }
    const known = new Set(this.shown);
    let at = this.list.firstElementChild;
    for (const card of cards) {
      if (at === card.item) at = at.nextElementSibling;
      else this.list.insertBefore(card.item, at);
      if (known.has(card)) continue;
      card.fit(this.frame);
      this.watcher.observe(card.item);
    }
    this.shown = cards;
  }

  private turnPages(page: number, pages: number, count: number): void {
    this.pages.hidden = pages === 1;
    const to = (words: string, goal: number): HTMLElement =>
      button(
        words,
        () => {
          this.store.show({ page: goal }, true);
          this.focus();
        },
        { disabled: goal < 1 || goal > pages },
      );
    const last = Math.min(count, page * ON_A_PAGE);
    this.pages.replaceChildren(
      to('Earlier cloths', page - 1),
      el('span', {}, `Page ${page} of ${pages}: places ${(page - 1) * ON_A_PAGE + 1} to ${last} of ${count}`),
      to('Further cloths', page + 1),
    );
  }

  /** After a new ranking or order, scrolls to its best, unless this is in sight. */
  private toTheBest(): void {
    const { view } = this.store;
    const anew = this.last !== undefined && (this.last.weights !== view.weights || this.last.order !== view.order);
    this.last = view;
    if (anew && this.list.getBoundingClientRect().top < 0) this.list.scrollIntoView();
  }

  /** Sizes the pictures to the room there is, and paints those in view. */
  private fit(): void {
    const { size, metres, grey } = this.store.view;
    const [first] = this.store.found;
    if (first === undefined || this.room.clientWidth === 0) return;
    const frame = frameOf(size, this.room.clientWidth, this.store.longest, first.draft, this.screen);
    const look = `${size} ${metres} ${grey} ${frame.side} ${frame.scale}`;
    if (frame.side !== this.frame.side) for (const card of this.cards.values()) card.fit(frame);
    this.frame = frame;
    this.look = look;
    this.list.style.setProperty('--side', `${frame.side}px`);
    this.list.classList.toggle('is-actual', size === 'actual');
    const times = size === 'actual' ? 1 : (PAPER * frame.scale) / frame.side;
    this.paper.textContent = `The pictures: ${lookInWords(this.store.view)}; ${times.toFixed(2)} of the size of the cloth; ${seenInWords(seenFrom())}.`;
    for (const card of this.shown) {
      this.painter.forget(card);
      if (this.inView.has(card)) this.paint(card);
    }
  }

  private seen(entries: readonly IntersectionObserverEntry[]): void {
    for (const { target, isIntersecting } of entries) {
      const card = this.cards.get(target.id);
      if (card === undefined) continue;
      if (isIntersecting) {
        this.inView.add(card);
        this.paint(card);
      } else {
        this.inView.delete(card);
        this.painter.forget(card);
      }
    }
  }

  private paint(card: Card): void {
    if (card.isPainted(this.look)) return;
    this.painter.soon(card, () => card.paint(this.look, this.frame));
  }
}
