import { button, choice, el, tick } from '../paint/dom.js';
import type { Screen } from '../paint/screen.js';
import type { Store } from '../store/store.js';
import { type Ordering, SIZES, STEPS } from '../store/view.js';
import { SIZE_WORDS } from './cards.js';

const ORDERING: readonly (readonly [Ordering, string])[] = [
  ['best', 'best first'],
  ['calm', 'calm to lively'],
  ['lively', 'lively to calm'],
  ['small', 'small repeats first'],
  ['liked', 'like my starred cloths'],
];

/** The toolbar above the cloths: size, distance, order, search, comparison, kept list. */
export function toolbar(store: Store): { readonly bar: HTMLElement; show(count: number): void } {
  const size = choice(
    'Size',
    SIZES.map((each) => [each, SIZE_WORDS[each]] as const),
    (to) => store.show({ size: to }),
  );
  const step = el('input', {
    type: 'range',
    min: 0,
    max: STEPS.length - 1,
    step: 1,
    class: 'step-back',
    input: () => store.show({ metres: STEPS[Number(step.value)]! }),
  });
  const stepped = el('output');
  const stepBack = el('label', {}, el('span', {}, 'View from'), step, stepped);
  const grey = tick('Greys only', (on) => store.show({ grey: on }));
  const order = choice('Sort', ORDERING, (to) => store.show({ order: to }));
  const find = el('input', {
    type: 'search',
    class: 'find',
    maxlength: 100,
    input: () => store.show({ find: find.value.trim() }),
  });
  const count = el('p', { class: 'count', role: 'status' });
  const compare = button('', () => store.show({ comparing: true }, true));
  const bar = el(
    'section',
    { class: 'bench screen', 'aria-label': 'How the cloths are looked at' },
    size.label,
    stepBack,
    grey.label,
    order.label,
    el('label', {}, el('span', {}, 'Find'), find),
    count,
    compare,
  );
  return {
    bar,
    show(listed) {
      const { view } = store;
      size.show(view.size);
      step.value = String(STEPS.indexOf(view.metres as (typeof STEPS)[number]));
      stepped.textContent = view.metres === 0 ? 'close up' : `${view.metres} m`;
      step.setAttribute('aria-valuetext', stepped.textContent);
      grey.show(view.grey);
      order.show(view.order);
      if (document.activeElement !== find) find.value = view.find;
      compare.textContent = `Compare ${view.compare.length}`;
      compare.disabled = view.compare.length < 2;
      compare.title = compare.disabled ? 'Tick two or more cloths to compare them' : '';
      const words = `${listed} of ${store.found.length} cloths`;
      const unliked = view.order === 'liked' && store.liking() === undefined;
      const said = unliked ? `${words}; give stars to three cloths or more to order by them` : words;
      if (count.textContent !== said) count.textContent = said;
    },
  };
}

/** The ruler with which a person sets the screen to true size. */
export function ruler(screen: Screen, store: Store): HTMLElement {
  // A phone is not 100 mm wide.
  const length = innerWidth < 480 ? 50 : 100;
  const slide = el('input', {
    type: 'range',
    min: 60,
    max: 160,
    step: 0.5,
    value: screen.factor * 100,
    input: () => {
      screen.set(Number(slide.value) / 100);
      said.textContent = `${slide.value} %`;
      store.tell();
    },
  });
  const rule = el(
    'div',
    { class: 'ruler', 'aria-hidden': 'true' },
    el('span', {}, '0'),
    el('span', {}, `${length} mm`),
  );
  rule.style.width = `calc(${length} * var(--mm))`;
  const said = el('output', {}, `${(screen.factor * 100).toFixed(1).replace('.0', '')} %`);
  return el(
    'details',
    { class: 'set-screen' },
    el('summary', {}, 'Set the screen to true size'),
    el('p', {}, `Hold a ruler to the screen and slide until this rule is ${length} mm long. The browser remembers it.`),
    rule,
    el('label', {}, el('span', {}, 'Length of the rule'), slide, said),
  );
}
