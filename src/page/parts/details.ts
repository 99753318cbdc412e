import { spacing } from '../../draft/draft.js';
import { easeOf, type Figure, figuresOf } from '../../gallery/html/page-figures.js';
import { draftSvg } from '../../render/draft-svg.js';
import { inWords, lengthInWords } from '../../score/words/figure-words.js';
import type { Found } from '../../search/strategy/outcome.js';
import { capital, plural } from '../../words/counts.js';
import { clothFigure, type Side } from '../paint/cloth-figure.js';
import { button, choice, drawing, el, tick } from '../paint/dom.js';
import type { Screen } from '../paint/screen.js';
import { repeatOf, sizesOf } from '../store/sizes.js';
import type { Store } from '../store/store.js';
import { scaleOf } from './cards.js';
import { drawCommand } from './command.js';
import { dialogBox } from './dialog.js';
import { keeping } from './star-field.js';
import { ordersInWords } from './weaving-words.js';

const SIDES: readonly (readonly [Side, string])[] = [
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
/** Side of the large picture in CSS pixels, if there is room. */
const LARGE = 520;
/** Side of the pictures of sizes and near twins, in CSS pixels. */
const SMALL = 120;

/** The dialog with the details of one cloth. */
export function details(store: Store, screen: Screen): { readonly dialog: HTMLDialogElement; show(): void } {
  const shown = dialogBox('closer', () => {
    if (store.view.cloth !== undefined) store.show({ cloth: undefined as never }, true);
  });
  let side: Side = 'face';
  let extent: Extent = 'repeats';
  let outline = true;
  let over = 0;
  let of: Found | undefined;
  let update = (): void => undefined;

  const build = (found: Found): void => {
    const frame = el('div', { class: 'large' });
    const draw = (): void => {
      const { grey, metres } = store.view;
      const room = Math.max(240, Math.min(LARGE, shown.body.clientWidth - 32 || LARGE));
      const { width, height } = repeatOf(found.draft);
      const fit = room / (Math.max(width, height) * (extent === 'repeats' ? 3 : 1));
      const scale = extent === 'actual' || extent === 'close' ? scaleOf(extent, found, screen.points) : fit;
      const repeats = extent === 'repeats' ? 3 : extent === 'repeat' ? 1 : 0;
      const words = `${found.code}: ${SIDES.find(([each]) => each === side)![1]}, ${EXTENTS.find(([each]) => each === extent)![1]}`;
      frame.replaceChildren(
        clothFigure(found.draft, {
          side,
          repeats,
          scale,
          width: room,
          height: room,
          grey,
          metres,
          words,
          ...(outline && { outline: over }),
        }),
      );
    };
    const sides = choice('Side', SIDES, (to) => {
      side = to;
      draw();
    });
    sides.show(side);
    const extents = choice('Show', EXTENTS, (to) => {
      extent = to;
      draw();
    });
    extents.show(extent);
    over = threadsOf(store, found);
    const most = el('input', {
      type: 'number',
      min: 1,
      max: 2000,
      value: over,
      'aria-label': 'threads',
      input: () => {
        if (!Number.isInteger(most.valueAsNumber) || most.valueAsNumber < 1) return;
        over = most.valueAsNumber;
        draw();
      },
    });
    const outlined = tick('Outline floats over', (on) => {
      outline = on;
      draw();
    });
    outlined.show(outline);
    const compare = tick('Compare', (on) => {
      const others = store.view.compare.filter((code) => code !== found.code);
      store.show({ compare: on ? [...others, found.code].slice(-6) : others });
    });
    const marks = keeping(store, found.code);
    const place = el('div', { class: 'neighbours' }, neighbour('Before', -1, found), neighbour('Next', 1, found));
    const left = el(
      'div',
      { class: 'looking' },
      el(
        'div',
        { class: 'controls' },
        sides.label,
        extents.label,
        el('span', { class: 'outlining' }, outlined.label, most, ' threads'),
      ),
      frame,
      el('div', { class: 'controls' }, marks.field, compare.label, place),
      command(drawCommand(found)),
    );
    const right = el(
      'div',
      { class: 'telling' },
      el('p', { class: 'recipe' }, found.recipe),
      el('p', {}, `${capital(inWords(found.scores, { ...found.draft, floatLimit: store.limit }))}.`),
      found.equals > 0 &&
        el('p', { class: 'quiet' }, `Also woven by ${found.equals} other ${plural(found.equals, 'order')}.`),
      el('h3', {}, 'The orders'),
      el(
        'dl',
        { class: 'orders' },
        ordersInWords(found).map(([name, text]) => el('div', {}, el('dt', {}, name), el('dd', {}, text))),
      ),
      el('h3', {}, 'Sizes'),
      sizes(found),
      twins(found),
      el('h3', {}, 'Draft'),
      el(
        'div',
        { class: 'draft', tabindex: 0, role: 'group', 'aria-label': 'Draft; a wide one scrolls sideways' },
        drawing(draftSvg(found.draft, { title: `Draft of ${found.code}` })),
      ),
      el('h3', {}, 'Figures'),
      figures([...figuresOf(store.rescored(found)), ...easeOf(found)]),
    );
    shown.body.replaceChildren(left, right);
    update = () => {
      marks.show();
      compare.show(store.view.compare.includes(found.code));
    };
    draw();
  };

  const neighbour = (words: string, by: number, found: Found): HTMLButtonElement | false => {
    const listed = store.listed();
    const next = listed[listed.findIndex((each) => each.found === found) + by];
    if (next === undefined || (by < 0 && listed[0]?.found === found)) return false;
    return button(words, () => store.show({ cloth: next.found.code }));
  };

  const sizes = (found: Found): HTMLElement => {
    const all = sizesOf(found);
    const largest = Math.max(...all.map(({ draft }) => Math.max(repeatOf(draft).width, repeatOf(draft).height)));
    const scale = Math.min(screen.points, (SMALL * 2) / largest);
    return el(
      'ul',
      { class: 'small-cloths' },
      all.map(({ times, draft }) => {
        const { width, height } = repeatOf(draft);
        const { sett } = draft;
        const size = `×${times}: ${draft.warp.length} ends by ${draft.weft.length} picks, ${lengthInWords(width, sett)} by ${lengthInWords(height, sett)}`;
        const own = times === found.order.times ? ', this one' : '';
        return el(
          'li',
          {},
          clothFigure(draft, {
            side: 'face',
            repeats: 0,
            scale,
            width: SMALL,
            height: SMALL,
            grey: false,
            metres: 0,
            words: size,
          }),
          el('p', {}, `${size}${own}`),
          own === '' && copying(drawCommand(found, times), 'Copy its command'),
        );
      }),
    );
  };

  const twins = (found: Found): HTMLElement | false => {
    const near = store.found.filter(({ code, nearTwin }) => nearTwin === found.code || code === found.nearTwin);
    if (near.length === 0) return false;
    return el(
      'section',
      {},
      el('h3', {}, 'Near twins'),
      el(
        'ul',
        { class: 'small-cloths' },
        near.map((twin) =>
          el(
            'li',
            {},
            clothFigure(twin.draft, {
              side: 'face',
              repeats: 0,
              scale: screen.points,
              width: SMALL,
              height: SMALL,
              grey: false,
              metres: 0,
              words: twin.recipe,
            }),
            button(twin.code, () => store.show({ cloth: twin.code })),
            el('p', {}, twin.recipe),
          ),
        ),
      ),
    );
  };

  return {
    dialog: shown.dialog,
    show() {
      const found = store.view.cloth === undefined ? undefined : store.byCode.get(store.view.cloth);
      if (found === undefined) {
        of = undefined;
        shown.close();
        return;
      }
      const rank = store.ranked().findIndex((each) => each.found === found) + 1;
      shown.open(`${rank > 0 ? `Cloth ${rank}, ` : ''}${found.code}`);
      if (of !== found) {
        of = found;
        build(found);
        shown.body.scrollTop = 0;
      }
      update();
    },
  };
}

/** The float limit in threads; a limit in length is converted by the finer threads. */
function threadsOf(store: Store, { draft }: Found): number {
  const { limit } = store;
  const { across, along } = spacing(draft.sett);
  return 'mm' in limit ? Math.floor(limit.mm / Math.min(across, along) + 1e-9) : Math.floor(limit.threads);
}

function figures(all: readonly Figure[]): HTMLElement {
  return el(
    'dl',
    { class: 'figures' },
    all.map(({ name, value, meaning }) =>
      el('div', {}, el('dt', {}, name), el('dd', {}, value), el('dd', { class: 'quiet' }, meaning)),
    ),
  );
}

/** An element with a command to read and copy. */
function command(text: string): HTMLElement {
  return el('div', { class: 'command' }, el('code', {}, text), copying(text, 'Copy the command that draws it again'));
}

/** A button that copies a text, and then says whether it succeeded. */
function copying(text: string, words: string): HTMLElement {
  const said = el('span', { role: 'status', class: 'quiet' });
  const copy = button(words, async () => {
    said.textContent = (await copied(text)) ? 'Copied.' : text;
  });
  return el('span', { class: 'copying' }, copy, said);
}

async function copied(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    // This browser has no clipboard for pages on disk: the text is shown, to be selected by hand.
    return false;
  }
}
