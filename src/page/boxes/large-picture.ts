import { spacing } from '../../draft/draft.js';
import type { Found } from '../../search/strategy/outcome.js';
import { type Aspect, clothFigure } from '../paint/cloth-figure.js';
import { choice, el, tick } from '../paint/dom.js';
import type { Screen } from '../paint/screen.js';
import { scaleOf } from '../parts/frame.js';
import { repeatMillimetres } from '../store/sizes.js';
import type { Store } from '../store/store.js';

const SIDES: readonly (readonly [Aspect, string])[] = [
  ['face', 'face'],
  ['back', 'back'],
  ['structure', 'structure alone'],
  ['colour', 'colour alone'],
];
type Extent = 'repeat' | 'repeats' | 'actual' | 'close';
const EXTENTS: readonly (readonly [Extent, string])[] = [
  ['repeats', 'three repeats each way'],
  ['repeat', 'one whole repeat'],
  ['actual', 'actual size'],
  ['close', 'close, to count threads'],
];
/** Side of the large picture in points of the page, where there is room. */
const LARGE = 520;

/** The large picture of one cloth after another, and what it shows of them. */
export class LargePicture {
  private readonly store: Store;
  private readonly screen: Screen;
  private readonly body: HTMLElement;
  readonly controls: HTMLElement;
  readonly frame = el('div', { class: 'large' });
  private side: Aspect = 'face';
  private extent: Extent = 'repeats';
  private outline = false;
  /** Floats over more threads than this are outlined. */
  private over = 0;
  private readonly most: HTMLInputElement;
  private readonly outlined: ReturnType<typeof tick>;
  private found: Found | undefined;

  /** @param body where the picture stands: how wide it can be */
  constructor(store: Store, screen: Screen, body: HTMLElement) {
    this.store = store;
    this.screen = screen;
    this.body = body;
    const sides = choice('Side', SIDES, (to) => {
      this.side = to;
      this.draw();
    });
    sides.show(this.side);
    const extents = choice('Show', EXTENTS, (to) => {
      this.extent = to;
      this.draw();
    });
    extents.show(this.extent);
    this.most = el('input', {
      type: 'number',
      min: 1,
      max: 2000,
      'aria-label': 'threads',
      input: () => {
        if (!Number.isInteger(this.most.valueAsNumber) || this.most.valueAsNumber < 1) return;
        this.outlineOver(this.most.valueAsNumber);
        this.draw();
      },
      change: () => {
        this.most.value = String(this.over);
      },
    });
    this.outlined = tick('Outline floats over', (on) => {
      this.outline = on;
      this.draw();
    });
    this.controls = el(
      'div',
      { class: 'controls' },
      sides.label,
      extents.label,
      el('span', { class: 'outlining' }, this.outlined.label, this.most, ' threads'),
    );
  }

  /** Shows another cloth, with its floats over the limit outlined, if it has any. */
  show(found: Found): void {
    this.found = found;
    this.outlineOver(threadsOf(this.store, found));
    this.most.value = String(this.over);
    this.draw();
  }

  private draw(): void {
    const { found } = this;
    if (found !== undefined) this.frame.replaceChildren(this.figureOf(found));
  }

  private outlineOver(threads: number): void {
    this.over = threads;
    this.outline = (this.found?.scores.floats.longest ?? Number.POSITIVE_INFINITY) > threads;
    this.outlined.show(this.outline);
  }

  private figureOf(found: Found): HTMLElement {
    const { side, extent } = this;
    const { grey, metres } = this.store.view;
    const room = this.room();
    const { width, height } = repeatMillimetres(found.draft);
    const fit = room / (Math.max(width, height) * (extent === 'repeats' ? 3 : 1));
    const scale =
      extent === 'actual' || extent === 'close' ? scaleOf(extent, found.draft, this.screen, width, room) : fit;
    const repeats = extent === 'repeats' ? 3 : extent === 'repeat' ? 1 : 0;
    const words = `${found.code}: ${SIDES.find(([each]) => each === side)![1]}, ${EXTENTS.find(([each]) => each === extent)![1]}`;
    return clothFigure(found.draft, {
      side,
      repeats,
      scale,
      width: room,
      height: room,
      grey,
      metres,
      words,
      ...(this.outline && { outline: this.over }),
    });
  }

  /** Side of the picture: as large as the window lets it stand beside the text, or on a phone above it. */
  private room(): number {
    const share = matchMedia('(min-width: 60rem)').matches ? 0.62 : 0.36;
    return Math.max(200, Math.min(LARGE, this.body.clientWidth - 32 || LARGE, innerHeight * share));
  }
}

/** The limit for floats in threads: a limit in length over the finer threads. */
function threadsOf(store: Store, { draft }: Found): number {
  const { limit } = store;
  const { across, along } = spacing(draft.sett);
  return 'mm' in limit ? Math.floor(limit.mm / Math.min(across, along) + 1e-9) : Math.floor(limit.threads);
}
