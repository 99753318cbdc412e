import { button, choice, el, tick } from '../paint/dom.js';
import type { Store } from '../store/store.js';
import { type Ordering, SIZES, STEPS } from '../store/view.js';
import { SIZE_WORDS } from './frame.js';

const ORDERING: readonly (readonly [Ordering, string])[] = [
  ['best', 'best first'],
  ['calm', 'calm to lively'],
  ['lively', 'lively to calm'],
  ['small', 'small repeats first'],
  ['liked', 'like my starred cloths'],
];

/** The toolbar above the cloths: size, distance, sorting, search, comparison, and the buttons of drawer and kept list. */
export function toolbar(
  store: Store,
  drawer: HTMLElement,
  buttons: readonly HTMLElement[],
): { readonly bar: HTMLElement; show(count: number): void } {
  const size = choice(
    'Size',
    SIZES.map((each) => [each, SIZE_WORDS[each]] as const),
    (to) => store.show({ size: to }),
  );
  const order = choice('Sort', ORDERING, (to) => store.show({ order: to }));
  const { fields, update } = lookFields(store);
  const find = el('input', {
    type: 'search',
    class: 'find',
    maxlength: 100,
    placeholder: 'Find',
    input: () => store.show({ find: find.value.trim() }),
  });
  const count = el('p', { class: 'count', role: 'status' });
  const compare = button('', () => store.show({ comparing: true }, true));
  const bar = el(
    'section',
    { class: 'bench screen', 'aria-label': 'How the cloths are looked at' },
    drawer,
    el(
      'div',
      { class: 'strip' },
      size.label,
      fields,
      order.label,
      el('label', {}, el('span', { class: 'unseen' }, 'Find'), find),
    ),
    el('div', { class: 'last' }, count, compare, buttons),
  );
  return {
    bar,
    show(listed) {
      const { view } = store;
      size.show(view.size);
      update();
      order.show(view.order);
      if (document.activeElement !== find) find.value = view.find;
      compare.textContent = `Compare ${view.compare.length}`;
      compare.disabled = view.compare.length < 2;
      compare.title = compare.disabled ? 'Press Compare under two or more cloths' : '';
      const all = store.found.length;
      const words = listed === all ? `${all} cloths` : `${listed} of ${all} cloths`;
      const unliked = view.order === 'liked' && store.liking() === undefined;
      const said = unliked ? `${words}; give stars to three or more to sort by them` : words;
      if (count.textContent !== said) count.textContent = said;
    },
  };
}

/** The fields for distance and greys; page and comparison have them each. */
export function lookFields(store: Store): { readonly fields: readonly HTMLElement[]; update(): void } {
  const step = el('input', {
    type: 'range',
    min: 0,
    max: STEPS.length - 1,
    step: 1,
    class: 'step-back',
    input: () => store.show({ metres: STEPS[Number(step.value)]! }),
  });
  const stepped = el('output');
  const grey = tick('Greys only', (on) => store.show({ grey: on }));
  return {
    fields: [el('label', {}, el('span', {}, 'View from'), step, stepped), grey.label],
    update() {
      const { metres } = store.view;
      step.value = String(STEPS.indexOf(metres as (typeof STEPS)[number]));
      stepped.textContent = metres === 0 ? 'close up' : `${metres} m`;
      step.setAttribute('aria-valuetext', stepped.textContent);
      grey.show(store.view.grey);
    },
  };
}
