import { floatCaution, floatOf, pictureWords, woundOf } from '../../gallery/html/page-figures.js';
import type { Found } from '../../search/strategy/outcome.js';
import { counted } from '../../words/counts.js';
import { button, el } from '../paint/dom.js';
import { paintCanvas } from '../paint/paint.js';
import type { Store } from '../store/store.js';
import { MOST_COMPARED } from '../store/view.js';
import { type CardFrame, lookInWords } from './frame.js';

/** The card of one cloth in the list: its picture, the button that keeps it, and its recipe in a line. */
export class Card {
  readonly item: HTMLElement;
  readonly found: Found;
  private readonly store: Store;
  private readonly rank = el('span', { class: 'rank' });
  private readonly canvas = el('canvas', { role: 'img' });
  private readonly keep: HTMLButtonElement;
  private readonly compare: HTMLButtonElement;
  private readonly marks = el('p', { class: 'marks' });
  private readonly twins: HTMLButtonElement;
  /** The look that is painted, as text. */
  private painted = '';

  /** @param recipe what sets this cloth apart from the others, in a line */
  constructor(found: Found, recipe: string, store: Store, unfold: () => void) {
    const { code } = found;
    const open = (event: Event): void => {
      event.preventDefault();
      store.show({ cloth: code }, true);
    };
    const named = (): HTMLElement => el('span', { class: 'unseen' }, ` ${code}`);
    this.found = found;
    this.store = store;
    this.keep = button('Keep', () => this.toggle(), { class: 'keep' });
    this.compare = button('Compare', () => this.setBeside(), { class: 'beside-others' });
    for (const each of [this.keep, this.compare]) each.append(named());
    this.twins = button('', unfold, { class: 'twins-of' });
    const caution = floatCaution(found.scores.floats);
    this.item = el(
      'li',
      { class: 'card', id: code },
      el('div', { class: 'cloth', click: open }, this.canvas),
      el(
        'div',
        { class: 'line' },
        el(
          'h3',
          {},
          this.rank,
          ' ',
          el('a', { class: 'code', href: `#cloth=${code}`, click: open }, code),
          el('span', { class: 'remark' }),
          el('span', { class: 'tick' }),
        ),
        el('span', { class: 'tools screen' }, this.keep, this.compare),
      ),
      el('p', { class: 'recipe', title: found.recipe }, recipe),
      caution !== undefined &&
        el('p', { class: 'caution screen', title: caution }, `Float ${floatOf(found.scores.floats, found.draft)}`),
      this.marks,
      el('p', { class: 'screen' }, this.twins),
      el('dl', { class: 'short on-paper' }, paperWords(found)),
    );
  }

  /** Shows place, marks and near twins as they are now. */
  update(rank: number, twins: number, unfolded: boolean): void {
    const { marks, view } = this.store;
    const { code } = this.found;
    say(this.rank, String(rank));
    const kept = marks.of(code);
    press(this.keep, kept !== undefined);
    say(this.keep.firstChild!, kept ? 'Kept' : 'Keep');
    press(this.compare, view.compare.includes(code));
    const words = [kept?.stars ? '★'.repeat(kept.stars) : '', kept?.note ?? ''].filter(Boolean).join(' ');
    say(this.marks, words);
    this.marks.hidden = words === '';
    this.twins.hidden = twins === 0;
    say(this.twins, `${counted(twins, 'near twin')} ${unfolded ? 'shown: hide' : 'hidden: show'}`);
    this.twins.ariaExpanded = String(unfolded);
    this.canvas.setAttribute('aria-label', `${pictureWords(this.found, rank)}; ${lookInWords(view)}`);
  }

  /** Gives the picture its room on the page, painted or not, so that nothing moves once it is painted. */
  fit({ side }: CardFrame): void {
    this.canvas.style.width = `${side}px`;
    this.canvas.style.height = `${side}px`;
  }

  /** Whether the picture is painted as the frame and the view ask. */
  isPainted(look: string): boolean {
    return this.painted === look;
  }

  paint(look: string, { side, scale }: CardFrame): void {
    if (this.painted === look) return;
    const { metres, grey } = this.store.view;
    const size = { width: side / scale, height: side / scale };
    paintCanvas(this.canvas, this.found.draft, { side: 'face', metres, grey, scale, ...size });
    this.painted = look;
    this.canvas.dataset.look = look;
  }

  private toggle(): void {
    this.store.marks.toggle(this.found);
    this.store.tell();
  }

  private setBeside(): void {
    const { code } = this.found;
    const { compare } = this.store.view;
    const others = compare.filter((each) => each !== code);
    // A seventh cloth replaces the first one chosen.
    this.store.show({ compare: others.length < compare.length ? others : [...others, code].slice(-MOST_COMPARED) });
  }
}

/** What a printed card says besides: the colours as wound and thrown, and the longest float. */
function paperWords({ draft, scores, recipe }: Found): HTMLElement[] {
  const said = [['recipe', recipe], ...woundOf(draft), ['longest float', floatOf(scores.floats, draft)]];
  return said.map(([name, value]) => el('div', {}, el('dt', {}, name), el('dd', {}, value)));
}

/** Writes a text only where it changes, to keep a long list quick. */
function say(node: Node, words: string): void {
  if (node.textContent !== words) node.textContent = words;
}

function press(pressed: HTMLButtonElement, on: boolean): void {
  if (pressed.getAttribute('aria-pressed') !== String(on)) pressed.setAttribute('aria-pressed', String(on));
}
