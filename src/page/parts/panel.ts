import { BY_WORDS, FILL_WORDS } from '../../gallery/html/page-asked.js';
import type { By, Fill } from '../../order/laid-order.js';
import { PRESET_NAMES, PRESETS, UNWEIGHED } from '../../score/rank/presets.js';
import { asksNovelty, PARTS, type Part, sameWeights, type Weights } from '../../score/rank/rank.js';
import { PART_WORDS } from '../../score/rank/why.js';
import { button, choice, el, tick } from '../paint/dom.js';
import type { Screen } from '../paint/screen.js';
import type { Filters } from '../store/filters.js';
import type { Store } from '../store/store.js';
import { floatOf, floatText } from '../store/view.js';
import { ruler } from './toolbar.js';

/** Limits that are numbers: their key, their name, the most that makes sense. */
const LIMITS = [
  ['knots', 'changes in the warp, at most', 2000],
  ['shuttles', 'shuttles, at most', 26],
  ['repeat', 'threads in a repeat, at most', 2000],
  ['darkFrom', 'dark, from (%)', 100],
  ['darkTo', 'dark, to (%)', 100],
] as const;

/** The panel of weights and filters; every change ranks the list again. */
export function panel(store: Store, screen: Screen): { readonly fold: HTMLDetailsElement; show(): void } {
  const updates: (() => void)[] = [];
  const weigh = (part: Part): HTMLElement => {
    const measured = isMeasured(store, { ...UNWEIGHED, [part]: 1 });
    const input = numberInput(100, 0.5, (weight) =>
      store.show({ weights: { ...store.view.weights, [part]: weight ?? 0 } }),
    );
    input.disabled = !measured;
    updates.push(() => set(input, store.view.weights[part]));
    const words = measured ? PART_WORDS[part] : `${part} (not measured)`;
    return el('label', {}, el('span', {}, words), input);
  };
  const sift = (change: Partial<{ [K in keyof Filters]: Filters[K] | undefined }>): void => {
    const sieve = Object.entries({ ...store.view.filters, ...change }).filter(([, value]) => value !== undefined);
    store.show({ filters: Object.fromEntries(sieve) });
  };
  const float = el('input', {
    type: 'text',
    maxlength: 10,
    placeholder: floatText(store.floatLimit),
    input: () => {
      const limit = floatOf(float.value);
      float.setAttribute('aria-invalid', String(limit === undefined && float.value.trim() !== ''));
      if (limit !== undefined || float.value.trim() === '') sift({ float: limit });
    },
  });
  updates.push(() => {
    if (document.activeElement === float) return;
    float.value = store.view.filters.float ? floatText(store.view.filters.float) : '';
  });
  const limits = LIMITS.map(([key, name, most]) => {
    const input = numberInput(most, 1, (limit) => sift({ [key]: limit }));
    updates.push(() => set(input, store.view.filters[key]));
    return el('label', {}, el('span', {}, name), input);
  });
  const onlyKept = tick('only what is kept', (on) => store.show({ kept: on }));
  updates.push(() => onlyKept.show(store.view.kept));
  const kinds = kindChoices(store);
  const ways = PRESET_NAMES.filter((name) => isMeasured(store, PRESETS[name]));
  const way = (words: string, weights: Weights): HTMLButtonElement => {
    const made = button(words, () => store.show({ weights, order: 'best' }), { 'aria-pressed': 'false' });
    updates.push(() => made.setAttribute('aria-pressed', String(sameWeights(store.view.weights, weights))));
    return made;
  };
  const fold = el(
    'details',
    { class: 'panel screen' },
    el('summary', {}, 'Rank and limits'),
    el('p', { class: 'quiet', id: 'ways' }, 'Ready-made rankings'),
    el(
      'div',
      { class: 'ways', role: 'group', 'aria-labelledby': 'ways' },
      ways.map((name) => way(name, PRESETS[name])),
      way('as in my question', store.usual.weights),
    ),
    el('fieldset', {}, el('legend', {}, 'What counts, and how much'), PARTS.map(weigh)),
    el(
      'fieldset',
      {},
      el('legend', {}, 'Limits'),
      el('label', {}, el('span', {}, 'longest float, in threads or as 9.5 mm'), float),
      limits,
      onlyKept.label,
    ),
    kinds.length > 0 &&
      el(
        'fieldset',
        {},
        el('legend', {}, 'Show only'),
        kinds.map(({ label }) => label),
      ),
    button('Clear filters', () => store.show({ filters: {}, find: '', kept: false })),
    ruler(screen, store),
  );
  return {
    fold,
    show() {
      for (const update of updates) update();
      for (const { update } of kinds) update();
    },
  };
}

/** Whether all that these weights ask for was measured here: novelty is only where it was asked for. */
function isMeasured(store: Store, weights: Weights): boolean {
  return !asksNovelty(weights) || store.found.every(({ scores }) => scores.novelty !== undefined);
}

/** A choice for each way in which the cloths here differ in kind. */
function kindChoices(store: Store): KindChoice[] {
  return [
    kindChoice('Structure', store, 'structure', ({ structure }) => structure, String),
    kindChoice<By>(
      'Order runs over',
      store,
      'by',
      ({ order }) => order.by,
      (by) => BY_WORDS[by],
    ),
    kindChoice<Fill>(
      'Each element',
      store,
      'fill',
      ({ order }) => order.fill,
      (fill) => FILL_WORDS[fill],
    ),
    kindChoice(
      'Size',
      store,
      'times',
      ({ order }) => order.times,
      (times) => `×${times}`,
    ),
  ].filter((made) => made !== undefined);
}

interface KindChoice {
  readonly label: HTMLElement;
  update(): void;
}

/** A choice among the kinds of cloth that are here; none where all are of one kind. */
function kindChoice<V extends string | number>(
  name: string,
  store: Store,
  key: 'structure' | 'by' | 'fill' | 'times',
  of: (found: Store['found'][number]) => V,
  words: (value: V) => string,
): KindChoice | undefined {
  const values = [...new Set(store.found.map(of))].sort();
  if (values.length < 2) return undefined;
  const options: (readonly [V | '', string])[] = [
    ['', 'any'],
    ...values.map((value) => [value, words(value)] as const),
  ];
  const made = choice<V | ''>(name, options, (value) => {
    const { [key]: _, ...others } = store.view.filters;
    store.show({ filters: value === '' ? others : { ...others, [key]: value } });
  });
  return { label: made.label, update: () => made.show((store.view.filters[key] as V | undefined) ?? '') };
}

/** A field for a number. It reports `undefined` if empty, and nothing while its text is no number. */
function numberInput(most: number, step: number, changed: (value: number | undefined) => void): HTMLInputElement {
  const input = el('input', {
    type: 'number',
    min: 0,
    max: most,
    step,
    inputmode: 'decimal',
    input: () => {
      if (input.value === '' && !input.validity.badInput) changed(undefined);
      else if (Number.isFinite(input.valueAsNumber)) changed(Math.min(most, Math.max(0, input.valueAsNumber)));
    },
  });
  return input;
}

function set(input: HTMLInputElement, value: number | undefined): void {
  if (document.activeElement !== input) input.value = value === undefined ? '' : String(value);
}
