import { easeOf, type Figure, figuresOf } from '../../gallery/html/page-figures.js';
import { draftSvg } from '../../render/draft-svg.js';
import { inWords, lengthInWords } from '../../score/words/figure-words.js';
import type { Found } from '../../search/strategy/outcome.js';
import { capital, plural } from '../../words/counts.js';
import { SMALL_FIGURE, smallFigure } from '../paint/cloth-figure.js';
import { button, drawing, el, tick } from '../paint/dom.js';
import type { Screen } from '../paint/screen.js';
import { repeatOf, sizesOf } from '../store/sizes.js';
import type { Store } from '../store/store.js';
import { drawCommand } from './command.js';
import { command, copying } from './copying.js';
import { dialogBox } from './dialog.js';
import { LargePicture } from './large-picture.js';
import { keeping } from './star-field.js';
import { ordersInWords } from './weaving-words.js';

/** One cloth, looked at closer. */
export function details(store: Store, screen: Screen): { readonly dialog: HTMLDialogElement; show(): void } {
  const shown = dialogBox('closer', () => {
    if (store.view.cloth !== undefined) store.show({ cloth: undefined as never }, true);
  });
  const picture = new LargePicture(store, screen, shown.body);
  let of: Found | undefined;
  let update = (): void => undefined;

  const build = (found: Found): void => {
    const compare = tick('Compare', (on) => {
      const others = store.view.compare.filter((code) => code !== found.code);
      store.show({ compare: on ? [...others, found.code].slice(-6) : others });
    });
    const marks = keeping(store, found.code);
    const [before, next] = [neighbour(store, 'Before', -1, found), neighbour(store, 'Next', 1, found)];
    const left = el(
      'div',
      { class: 'looking' },
      picture.controls,
      picture.frame,
      el('div', { class: 'controls' }, marks.field, compare.label, el('div', { class: 'neighbours' }, before, next)),
      command(drawCommand(found)),
    );
    shown.body.replaceChildren(left, telling(store, screen, found));
    update = () => {
      marks.show();
      compare.show(store.view.compare.includes(found.code));
    };
    picture.show(found);
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

/** A button to the cloth before or after this one in the list. */
function neighbour(store: Store, words: string, by: number, found: Found): HTMLButtonElement | false {
  const listed = store.listed();
  const next = listed[listed.findIndex((each) => each.found === found) + by];
  if (next === undefined || (by < 0 && listed[0]?.found === found)) return false;
  return button(words, () => store.show({ cloth: next.found.code }));
}

/** What there is to say of a cloth: its orders, sizes, near twins, draft and figures. */
function telling(store: Store, screen: Screen, found: Found): HTMLElement {
  return el(
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
    sizes(found, screen),
    twins(found, store, screen),
    el('h3', {}, 'Draft'),
    el(
      'div',
      { class: 'draft', tabindex: 0, role: 'group', 'aria-label': 'Draft; a wide one scrolls sideways' },
      drawing(draftSvg(found.draft, { title: `Draft of ${found.code}` })),
    ),
    el('h3', {}, 'Figures'),
    figures([...figuresOf(store.rescored(found)), ...easeOf(found)]),
  );
}

/** The cloth at every size at which it can be laid, all at one scale. */
function sizes(found: Found, screen: Screen): HTMLElement {
  const all = sizesOf(found);
  const largest = Math.max(...all.map(({ draft }) => Math.max(repeatOf(draft).width, repeatOf(draft).height)));
  const scale = Math.min(screen.points, (SMALL_FIGURE * 2) / largest);
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
        smallFigure(draft, scale, size),
        el('p', {}, `${size}${own}`),
        own === '' && copying(drawCommand(found, times), 'Copy its command'),
      );
    }),
  );
}

function twins(found: Found, store: Store, screen: Screen): HTMLElement | false {
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
          smallFigure(twin.draft, screen.points, twin.recipe),
          button(twin.code, () => store.show({ cloth: twin.code })),
          el('p', {}, twin.recipe),
        ),
      ),
    ),
  );
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
