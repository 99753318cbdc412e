import { DEFAULT_SETT } from '../../draft/yaml/read-draft.js';
import { type Structure, structures, weaveOf } from '../../structure/catalogue/catalogue.js';
import { clothFigure } from '../paint/cloth-figure.js';
import { el } from '../paint/dom.js';
import { Painter } from '../paint/paint.js';

/** Side of the picture of a structure in CSS pixels, and pixels per millimetre of cloth. */
const SIDE = 72;
const SCALE = 4.5;

/** The structures, each with a picture of a dark warp on a light weft; one or more are chosen. */
export function structureChoice(changed: () => void): {
  readonly field: HTMLElement;
  /** Paints the pictures, once they are to be seen. */
  paint(): void;
  chosen(): readonly string[];
  choose(names: readonly string[]): void;
} {
  const boxes = structures.map(({ name }) => el('input', { type: 'checkbox', value: name, change: changed }));
  const labels = structures.map((structure, at) => {
    const label = el('label', { class: 'structure' }, boxes[at]!, el('span', {}, structure.name));
    label.dataset.words = [structure.name, ...structure.aliases].join(' ').toLowerCase();
    return label;
  });
  const find = el('input', {
    type: 'search',
    placeholder: 'Find a structure',
    'aria-label': 'Find a structure',
    input: () => {
      const word = find.value.trim().toLowerCase();
      for (const label of labels) label.hidden = !label.dataset.words!.includes(word);
    },
  });
  const field = el(
    'fieldset',
    { class: 'structures' },
    el('legend', {}, 'Structure, one or more'),
    find,
    el('div', { class: 'all' }, labels),
  );
  const painter = new Painter();
  let painted = false;
  return {
    field,
    paint() {
      boxes.find(({ checked }) => checked)?.scrollIntoView({ block: 'nearest' });
      if (painted) return;
      painted = true;
      for (const [at, label] of labels.entries()) painter.soon(label, () => label.prepend(pictureOf(structures[at]!)));
    },
    chosen: () => boxes.filter(({ checked }) => checked).map(({ value }) => value),
    choose(names) {
      for (const box of boxes) box.checked = names.includes(box.value);
    },
  };
}

function pictureOf(structure: Structure): HTMLElement {
  const weave = weaveOf(structure, structure.profile);
  const yarns = [
    { letter: 'D', name: 'warp', hex: '#1f2a44' },
    { letter: 'L', name: 'weft', hex: '#efe6d2' },
  ];
  const draft = {
    ...weave,
    yarns,
    sett: DEFAULT_SETT,
    warp: weave.threading.map(() => 0),
    weft: weave.treadling.map(() => 1),
  };
  const size = { width: SIDE, height: SIDE, scale: SCALE, repeats: 0 };
  const figure = clothFigure(draft, { side: 'face', ...size, grey: false, metres: 0, words: '' });
  figure.setAttribute('aria-hidden', 'true');
  return figure;
}
