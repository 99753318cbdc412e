import { draftSeenInWords } from '../../draft/point-of-view.js';
import { writeWif } from '../../draft/wif/read-wif.js';
import { easeFigures, type Figure, figuresOf, floatCaution } from '../../gallery/html/page-figures.js';
import { draftSvg } from '../../render/draft-svg.js';
import { inWords, lengthInWords } from '../../score/words/figure-words.js';
import type { Found } from '../../search/strategy/outcome.js';
import { capital, plural } from '../../words/counts.js';
import { SMALL_FIGURE, smallFigure } from '../paint/cloth-figure.js';
import { button, drawing, el, tick, writtenBy } from '../paint/dom.js';
import { seenFrom } from '../paint/paint.js';
import type { Screen } from '../paint/screen.js';
import { repeatMillimetres, sizesOf } from '../store/sizes.js';
import type { Store } from '../store/store.js';
import { MOST_COMPARED } from '../store/view.js';
import { redrawCommand, runIn } from './command.js';
import { command, copying } from './copying.js';
import { dialogBox } from './dialog.js';
import { download } from './download.js';
import { LargePicture } from './large-picture.js';
import { keeping } from './star-field.js';
import { ordersInWords } from './weaving-words.js';

/** How a draft is drawn here. */
const faceUp = (): string =>
  `Face up, rising shed: the shafts of the tie-up go up. ${capital(draftSeenInWords(seenFrom()))}.`;

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
      store.show({ compare: on ? [...others, found.code].slice(-MOST_COMPARED) : others });
    });
    const marks = keeping(store, found.code);
    const goTo = (code: string, goOn?: string): void => {
      store.show({ cloth: code });
      const again: HTMLElement | null = goOn === undefined ? null : shown.body.querySelector(goOn);
      if (again === null) shown.focus();
      else again.focus();
    };
    const [before, next] = [neighbour(store, -1, found, goTo), neighbour(store, 1, found, goTo)];
    const left = el(
      'div',
      { class: 'looking' },
      picture.frame,
      picture.controls,
      el('div', { class: 'controls' }, marks.keep, compare.label, el('div', { class: 'neighbours' }, before, next)),
      marks.field,
    );
    shown.body.replaceChildren(left, telling(store, screen, found, goTo));
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

/** Opens another cloth, and gives the keyboard to what the selector finds there, or to the heading. */
type GoTo = (code: string, goOn?: string) => void;

/** A button to the cloth before or after this one in the list. */
function neighbour(store: Store, by: -1 | 1, found: Found, goTo: GoTo): HTMLButtonElement | false {
  const listed = store.listed();
  const at = listed.findIndex((each) => each.found === found);
  const next = at < 0 ? undefined : listed[at + by];
  if (next === undefined) return false;
  const name = by < 0 ? 'to-before' : 'to-next';
  return button(by < 0 ? 'Before' : 'Next', () => goTo(next.found.code, `.${name}`), { class: name });
}

/** What there is to say of a cloth: recipe, draft, orders, sizes, near twins and figures. */
function telling(store: Store, screen: Screen, found: Found, goTo: GoTo): HTMLElement {
  const caution = floatCaution(found.scores.floats);
  const place = runIn(found);
  return el(
    'div',
    { class: 'telling' },
    el('p', { class: 'recipe' }, found.recipe),
    caution !== undefined && el('p', { class: 'caution' }, caution),
    el('p', {}, `${capital(inWords(found.scores, { ...found.draft, floatLimit: store.limit }))}.`),
    el('p', {}, `${capital(store.why(found))}.`),
    found.equals > 0 &&
      el('p', { class: 'quiet' }, `Also woven by ${found.equals} other ${plural(found.equals, 'order')}.`),
    el('h3', {}, 'Draft'),
    el(
      'div',
      { class: 'draft', tabindex: 0, role: 'group', 'aria-label': 'Draft; a wide one scrolls sideways' },
      fitting(drawing(draftSvg(found.draft, { title: `Draft of ${found.code}`, seen: seenFrom() }))),
    ),
    el('p', { class: 'quiet' }, faceUp()),
    el('h3', {}, 'The orders'),
    el(
      'dl',
      { class: 'orders' },
      ordersInWords(found).map(([name, text]) => el('div', {}, el('dt', {}, name), el('dd', {}, text))),
    ),
    command(redrawCommand(found)),
    place !== undefined && el('p', { class: 'quiet' }, place),
    button('Save as WIF', () =>
      download(
        writeWif(found.draft, {
          version: writtenBy().replace(/^\S+ /, ''),
          origin: `${found.code}, ${store.marks.source.origin}`,
        }),
        `${found.code}.wif`,
        'text/plain',
      ),
    ),
    el('h3', {}, 'Sizes'),
    sizes(found, screen),
    twins(found, store, screen, goTo),
    el('h3', {}, 'Figures'),
    figures([...figuresOf(store.rescored(found)), ...easeFigures(found)]),
  );
}

/** Least share of its size to which a draft is made smaller so that it fits. */
const STILL_READ = 0.6;

/** A draft that fits its place, where it can still be read then; else it scrolls. */
function fitting(draft: Element): Element {
  if (draft instanceof SVGElement) {
    draft.style.minWidth = `${Number(draft.getAttribute('width')) * STILL_READ}px`;
  }
  return draft;
}

/** The cloth at every size at which it can be laid, all at one scale. */
function sizes(found: Found, screen: Screen): HTMLElement {
  const all = sizesOf(found);
  const largest = Math.max(
    ...all.map(({ draft }) => Math.max(repeatMillimetres(draft).width, repeatMillimetres(draft).height)),
  );
  const scale = Math.min(screen.points, (SMALL_FIGURE * 2) / largest);
  return el(
    'ul',
    { class: 'small-cloths' },
    all.map(({ times, draft }) => {
      const { width, height } = repeatMillimetres(draft);
      const { sett } = draft;
      const size = `×${times}: ${draft.warp.length} ends by ${draft.weft.length} picks, ${lengthInWords(width, sett)} by ${lengthInWords(height, sett)}`;
      const own = times === found.order.times ? ', this one' : '';
      return el(
        'li',
        {},
        smallFigure(draft, scale, size),
        el('p', {}, `${size}${own}`),
        own === '' && copying(redrawCommand(found, times), 'Copy its command'),
      );
    }),
  );
}

function twins(found: Found, store: Store, screen: Screen, goTo: GoTo): HTMLElement | false {
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
          button(twin.code, () => goTo(twin.code)),
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
