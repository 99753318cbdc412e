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
  const said = el('span', { class: 'chosen' });
  // In the order in which they were chosen or are written: of cloths that are equally good, the first structure's stands first.
  let chosen: readonly string[] = [];
  const choose = (names: readonly string[]): void => {
    chosen = names;
    said.textContent = names.length > 0 ? `: ${names.join(', ')}` : '';
    for (const box of boxes) box.checked = names.includes(box.value);
  };
  const boxes: readonly HTMLInputElement[] = structures.map(({ name }) =>
    el('input', {
      type: 'checkbox',
      value: name,
      change: () => {
        choose(chosen.includes(name) ? chosen.filter((each) => each !== name) : [...chosen, name]);
        changed();
      },
    }),
  );
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
  const all = el('div', { class: 'all' }, labels);
  const field = el('fieldset', { class: 'structures' }, el('legend', {}, 'Structure, one or more', said), find, all);
  const painter = new Painter();
  let painted = false;
  return {
    field,
    paint() {
      if (!painted) {
        painted = true;
        for (const [at, label] of labels.entries())
          painter.soon(label, () => label.prepend(pictureOf(structures[at]!)));
      }
      const first = labels.find((_, at) => boxes[at]!.checked);
      if (first) all.scrollTop = first.offsetTop - all.offsetTop;
    },
    chosen: () => chosen,
    choose,
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
