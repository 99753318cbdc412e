import type { Sett } from '../../draft/draft.js';
import { BY_WORDS, FILL_WORDS } from '../../gallery/html/page-asked.js';
import type { By, Fill } from '../../order/laid-order.js';
import type { FloatLimit } from '../../score/model/float-limit.js';
import { PART, PART_WORDS, PARTS, type Part, UNWEIGHED, type Weights } from '../../score/parts/parts.js';
import { PRESET_NAMES, PRESETS } from '../../score/rank/presets.js';
import { asksNovelty, sameWeights } from '../../score/rank/rank.js';
import { grouped } from '../../words/counts.js';
import { button, choice, el, tick } from '../paint/dom.js';
import type { Filters } from '../store/filters.js';
import type { Store } from '../store/store.js';
import { floatOf, floatText } from '../store/view.js';

/** Limits that are numbers: their key, their name, the most that makes sense. */
const LIMITS = [
  ['knots', 'changes in the warp, at most', 2000],
  ['shuttles', 'shuttles, at most', 26],
  ['repeat', 'threads in a repeat, at most', 2000],
  ['darkFrom', 'dark, from (%)', 100],
  ['darkTo', 'dark, to (%)', 100],
] as const;

/** The drawer of rankings and filters, with the button that opens it; every change ranks the list again. */
export function panel(
  store: Store,
  openTrueSize: () => void,
): { readonly drawer: HTMLElement; readonly opener: HTMLButtonElement; show(): void } {
  const updates: (() => void)[] = [];
  const kinds = kindChoices(store);
  const unseen = store.cloths - store.found.length;
  const drawer = el(
    'section',
    { class: 'panel screen', id: 'panel', 'aria-label': 'Rank and filter', tabindex: -1, hidden: true },
    el(
      'div',
      { class: 'panel-head' },
      el('h3', {}, 'Ready-made rankings'),
      button('Close', () => open(false), { class: 'close' }),
    ),
    ways(store, updates),
    unseen > 0 &&
      el(
        'p',
        { class: 'quiet' },
        `Ranks the ${grouped(store.found.length)} cloths of this gallery again. The search found ${grouped(unseen)} more: press Ask, and search with another ranking, to see the best of all.`,
      ),
    el(
      'details',
      { class: 'counts' },
      el('summary', {}, 'What counts, and how much'),
      el(
        'fieldset',
        {},
        el('legend', { class: 'unseen' }, 'What counts, and how much'),
        PARTS.map((part) => weight(store, part, updates)),
      ),
    ),
    limitFields(store, updates),
    kinds.length > 0 &&
      el(
        'fieldset',
        {},
        el('legend', {}, 'Show only'),
        kinds.map(({ label }) => label),
      ),
    el(
      'div',
      { class: 'controls' },
      button('Clear filters', () => store.show({ filters: {}, find: '', kept: false })),
      button('Set the screen to true size', openTrueSize),
    ),
  );
  const opener = button('Rank and filter', () => open(drawer.hidden !== false), {
    'aria-expanded': 'false',
    'aria-controls': 'panel',
  });
  const open = (on: boolean): void => {
    drawer.hidden = !on;
    opener.setAttribute('aria-expanded', String(on));
    if (on) drawer.focus({ preventScroll: true });
    else opener.focus();
  };
  drawer.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') open(false);
  });
  return {
    drawer,
    opener,
    show() {
      for (const update of updates) update();
      for (const { update } of kinds) update();
    },
  };
}

/** The ready-made rankings, and the question's own. */
function ways(store: Store, updates: (() => void)[]): HTMLElement {
  const way = (words: string, weights: Weights): HTMLButtonElement => {
    const made = button(words, () => store.show({ weights, order: 'best' }), { 'aria-pressed': 'false' });
    updates.push(() => made.setAttribute('aria-pressed', String(sameWeights(store.view.weights, weights))));
    return made;
  };
  return el(
    'div',
    { class: 'ways', role: 'group', 'aria-label': 'Ready-made rankings' },
    PRESET_NAMES.filter((name) => isMeasured(store, PRESETS[name])).map((name) => way(name, PRESETS[name])),
    way('as in my question', store.usual.weights),
  );
}

function weight(store: Store, part: Part, updates: (() => void)[]): HTMLElement {
  const measured = isMeasured(store, { ...UNWEIGHED, [part]: 1 });
  const input = numberInput(100, 0.5, (to) => store.show({ weights: { ...store.view.weights, [part]: to ?? 0 } }));
  input.field.disabled = !measured;
  updates.push(() => input.set(store.view.weights[part]));
  const words = measured ? PART_WORDS[part] : `${PART_WORDS[part]} (not measured)`;
  return el('label', { title: PART[part].means }, el('span', {}, words), input.field);
}

/** The limits, and whether only what is kept is listed. */
function limitFields(store: Store, updates: (() => void)[]): HTMLElement {
  const sift = (change: Partial<{ [K in keyof Filters]: Filters[K] | undefined }>): void => {
    const sieve = Object.entries({ ...store.view.filters, ...change }).filter(([, value]) => value !== undefined);
    store.show({ filters: Object.fromEntries(sieve) });
  };
  const written = (limit: FloatLimit): string => floatInUnits(limit, store.found[0]?.draft.sett);
  const float = el('input', {
    type: 'text',
    maxlength: 12,
    placeholder: written(store.floatLimit),
    input: () => {
      const limit = floatOf(float.value);
      float.setAttribute('aria-invalid', String(limit === undefined && float.value.trim() !== ''));
      if (limit !== undefined || float.value.trim() === '') sift({ float: limit });
    },
    change: () => used(),
  });
  const used = (): void => {
    float.value = store.view.filters.float ? written(store.view.filters.float) : '';
    float.setAttribute('aria-invalid', 'false');
  };
  updates.push(() => document.activeElement !== float && used());
  const onlyKept = tick('only what is kept', (on) => store.show({ kept: on }));
  updates.push(() => onlyKept.show(store.view.kept));
  return el(
    'fieldset',
    {},
    el('legend', {}, 'Limits'),
    el('label', {}, el('span', {}, 'longest float: threads, or a length such as 3/8 in or 9.5 mm'), float),
    LIMITS.map(([key, name, most]) => {
      const input = numberInput(most, 1, (limit) => sift({ [key]: limit }));
      updates.push(() => input.set(store.view.filters[key]));
      return el('label', {}, el('span', {}, name), input.field);
    }),
    onlyKept.label,
  );
}

/** A limit as it can be typed, in the units of the sett. */
function floatInUnits(limit: FloatLimit, sett: Sett | undefined): string {
  return 'mm' in limit && sett?.per === 'inch' ? `${Number((limit.mm / 25.4).toFixed(4))} in` : floatText(limit);
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
      'Each colour covers',
      store,
      'by',
      ({ order }) => order.by,
      (by) => BY_WORDS[by],
    ),
    kindChoice<Fill>(
      'Each element is',
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

/** A field for a number from 0 to `most`, which shows the number that is used once it is left. */
function numberInput(
  most: number,
  step: number,
  changed: (value: number | undefined) => void,
): { readonly field: HTMLInputElement; set(value: number | undefined): void } {
  let used: number | undefined;
  const field = el('input', {
    type: 'number',
    min: 0,
    max: most,
    step,
    inputmode: 'decimal',
    input: () => {
      const value = field.valueAsNumber;
      field.setAttribute('aria-invalid', String(field.validity.badInput || value < 0 || value > most));
      if (field.value === '' && !field.validity.badInput) changed(undefined);
      else if (Number.isFinite(value)) changed(Math.min(most, Math.max(0, value)));
    },
    change: () => write(),
  });
  const write = (): void => {
    field.value = used === undefined ? '' : String(used);
    field.setAttribute('aria-invalid', 'false');
  };
  return {
    field,
    set(value) {
      used = value;
      if (document.activeElement !== field) write();
    },
  };
}
