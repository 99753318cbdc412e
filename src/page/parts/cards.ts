import { spacing } from '../../draft/draft.js';
import { pictureWords } from '../../gallery/html/page-figures.js';
import { SWATCH_MILLIMETRES } from '../../gallery/html/scale.js';
import { kindsOf } from '../../gallery/manifest/groups.js';
import type { Found } from '../../search/strategy/outcome.js';
import { capital, plural } from '../../words/counts.js';
import { button, el, one, tick } from '../paint/dom.js';
import { Painter, paintCloth } from '../paint/paint.js';
import type { Screen } from '../paint/screen.js';
import type { Store } from '../store/store.js';
import { MOST_COMPARED, type Size } from '../store/view.js';

/** CSS pixels per thread at which threads can be counted. */
const COUNTED = 10;

/** A card of the list, with the elements that the script changes. */
interface Card {
  readonly found: Found;
  readonly item: HTMLElement;
  readonly rank: HTMLElement;
  readonly why: HTMLElement;
  readonly image: HTMLImageElement;
  readonly canvas: HTMLCanvasElement;
  readonly keep: HTMLButtonElement;
  readonly marks: HTMLElement;
  readonly compare: ReturnType<typeof tick>;
  readonly twins: HTMLButtonElement;
  /** The look that is painted or queued, as text. */
  look: string;
}

/** The cards of the page: their order, and the size and distance at which they are painted. */
export class Cards {
  private readonly cards: readonly Card[];
  private readonly byCode: ReadonlyMap<string, Card>;
  private readonly kinds: ReadonlyMap<string, string>;
  /** Codes of the groups whose near twins are unfolded. */
  private readonly unfolded = new Set<string>();
  private readonly inView = new Set<Card>();
  private readonly painter = new Painter();

  private readonly list: HTMLElement;
  private readonly store: Store;
  private readonly screen: Screen;

  constructor(list: HTMLElement, store: Store, screen: Screen) {
    this.list = list;
    this.store = store;
    this.screen = screen;
    this.kinds = kindsOf(store.found);
    this.cards = store.found.map((found) => this.cardOf(found));
    this.byCode = new Map(this.cards.map((card) => [card.found.code, card]));
    for (const twins of list.querySelectorAll('.twins')) twins.remove();
    const watcher = new IntersectionObserver((entries) => this.seen(entries), { rootMargin: '400px' });
    for (const card of this.cards) watcher.observe(card.item);
  }

  /** Shows the listed cloths in order; returns their number. */
  arrange(): number {
    const listed = this.store.listed();
    const kinds = new Map<string, { found: Found; rank: number }[]>();
    for (const each of listed) {
      const kind = this.kinds.get(each.found.code)!;
      const known = kinds.get(kind);
      if (known) known.push(each);
      else kinds.set(kind, [each]);
    }
    const order: HTMLElement[] = [];
    const shown = new Set<Card>();
    for (const [kind, members] of kinds) {
      members.forEach(({ found, rank }, at) => {
        const card = this.byCode.get(found.code)!;
        shown.add(card);
        hide(card.item, at > 0 && !this.unfolded.has(kind));
        if (card.rank.textContent !== String(rank)) this.number(card, rank);
        say(card.why, `${capital(this.store.why(found))}.`);
        const more = at === 0 ? members.length - 1 : 0;
        hide(card.twins, more === 0);
        if (more > 0) {
          say(card.twins, `${more} near ${plural(more, 'twin')}`);
          card.twins.ariaExpanded = String(this.unfolded.has(kind));
        }
        order.push(card.item);
      });
    }
    for (const card of this.cards) if (!shown.has(card)) hide(card.item, true);
    this.bringInto(order);
    for (const card of this.cards) this.mark(card);
    this.look();
    return listed.length;
  }

  /** Writes a card's rank, and the words for its picture, which include the rank. */
  private number(card: Card, rank: number): void {
    card.rank.textContent = String(rank);
    card.image.alt = pictureWords(card.found, rank);
    this.name(card);
  }

  /** Gives a card's painted picture its words: what is shown, and how. */
  private name({ canvas, image }: Card): void {
    const { metres, grey, size } = this.store.view;
    canvas.setAttribute('aria-label', `${image.alt}; ${lookInWords(size, metres, grey)}`);
  }

  /** Puts the shown cards in order by moving only those out of place. */
  private bringInto(order: readonly HTMLElement[]): void {
    const wanted = new Set<Element>(order);
    const next = (from: Element | null): Element | null => {
      let at = from;
      while (at !== null && !wanted.has(at)) at = at.nextElementSibling;
      return at;
    };
    let at = next(this.list.firstElementChild);
    for (const item of order) {
      if (at === item) at = next(item.nextElementSibling);
      else this.list.insertBefore(item, at);
    }
  }

  private mark(card: Card): void {
    const { marks, view } = this.store;
    const { code } = card.found;
    const kept = marks.of(code);
    const pressed = String(kept !== undefined);
    if (card.keep.getAttribute('aria-pressed') !== pressed) {
      card.keep.setAttribute('aria-pressed', pressed);
      card.keep.firstChild!.textContent = kept ? 'Kept' : 'Keep';
      card.item.classList.toggle('is-kept', kept !== undefined);
    }
    card.compare.show(view.compare.includes(code));
    const words = kept ? [kept.stars > 0 ? '★'.repeat(kept.stars) : '', kept.note].filter(Boolean).join(' ') : '';
    say(card.marks, words);
    hide(card.marks, words === '');
  }

  /** Paints all cards in view at the size and distance of the view. */
  private look(): void {
    const { size, metres, grey } = this.store.view;
    const asPrinted = size === 'actual' && metres === 0 && !grey;
    const look = asPrinted ? '' : `${size} ${metres} ${grey} ${this.screen.points}`;
    this.list.classList.toggle('is-looked-at', !asPrinted);
    for (const card of this.cards) {
      hide(card.image, !asPrinted);
      hide(card.canvas, asPrinted);
      if (card.look === look) continue;
      card.look = look;
      this.painter.forget(card);
      if (this.inView.has(card)) this.paint(card);
    }
  }

  private seen(entries: readonly IntersectionObserverEntry[]): void {
    for (const { target, isIntersecting } of entries) {
      const card = this.byCode.get(target.id);
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
    const { look, canvas, found } = card;
    if (look === '' || canvas.dataset.look === look) return;
    this.painter.soon(card, () => {
      const { metres, grey, size } = this.store.view;
      const side = SWATCH_MILLIMETRES * this.screen.points;
      const scale = scaleOf(size, found, this.screen.points);
      paintCloth(canvas, found.draft, { side: 'face', metres, grey, scale, width: side / scale, height: side / scale });
      this.name(card);
      canvas.dataset.look = look;
    });
  }

  private cardOf(found: Found): Card {
    const { code } = found;
    const item = one<HTMLElement>(document, `#${CSS.escape(code)}`);
    // The details show all of this; on the card it would only make a long list slow.
    item.querySelector('.more')?.remove();
    const image = one<HTMLImageElement>(item, '.cloth img');
    const canvas = el('canvas', { role: 'img', 'aria-label': image.alt });
    canvas.hidden = true;
    one(item, '.cloth').append(canvas);
    one(item, '.cloth').addEventListener('click', () => this.store.show({ cloth: code }, true));
    one(item, '.code').addEventListener('click', (event) => {
      event.preventDefault();
      this.store.show({ cloth: code }, true);
    });
    const keep = button(
      'Keep',
      () => {
        this.store.marks.toggle(found);
        this.store.tell();
      },
      { 'aria-pressed': 'false', class: 'keep' },
    );
    keep.append(el('span', { class: 'unseen' }, ` ${code}`));
    const compare = tick('Compare', (on) => this.compare(code, on));
    compare.label.append(el('span', { class: 'unseen' }, ` ${code}`));
    const closer = button('Details', () => this.store.show({ cloth: code }, true));
    closer.append(el('span', { class: 'unseen' }, ` to ${code}`));
    const twins = button(
      '',
      () => {
        const kind = this.kinds.get(code)!;
        if (!this.unfolded.delete(kind)) this.unfolded.add(kind);
        this.arrange();
      },
      { class: 'twins-of' },
    );
    const marks = el('p', { class: 'marks' });
    one(item, '.beside').before(el('div', { class: 'tools screen' }, keep, closer, compare.label, twins), marks);
    return {
      found,
      item,
      rank: one(item, '.rank'),
      why: one(item, '.why'),
      image,
      canvas,
      keep,
      marks,
      compare,
      twins,
      look: '',
    };
  }

  private compare(code: string, on: boolean): void {
    const others = this.store.view.compare.filter((each) => each !== code);
    // A seventh cloth replaces the first one chosen.
    this.store.show({ compare: on ? [...others, code].slice(-MOST_COMPARED) : others });
  }
}

/** CSS pixels per millimetre of cloth. */
export function scaleOf(size: Size, { draft }: Pick<Found, 'draft'>, points: number): number {
  switch (size) {
    case 'quarter':
      return points / 4;
    case 'half':
      return points / 2;
    case 'actual':
      return points;
    case 'close': {
      const { across, along } = spacing(draft.sett);
      return COUNTED / Math.min(across, along);
    }
  }
}

export const SIZE_WORDS: Readonly<Record<Size, string>> = {
  quarter: 'a quarter of its size',
  half: 'half its size',
  actual: 'actual size',
  close: 'close, to count threads',
};

/** `actual size, as seen from 2 m, value only`. */
function lookInWords(size: Size, metres: number, grey: boolean): string {
  return [SIZE_WORDS[size], metres > 0 && `as seen from ${metres} m`, grey && 'value only'].filter(Boolean).join(', ');
}

/** Shows or hides an element, and touches it only if that changes it, to keep a long list quick. */
function hide(element: HTMLElement, hidden: boolean): void {
  if (element.hidden !== hidden) element.hidden = hidden;
}

function say(element: HTMLElement, words: string): void {
  if (element.textContent !== words) element.textContent = words;
}
