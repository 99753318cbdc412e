import { drawdown } from '../../cloth/drawdown.js';
import { spacing } from '../../draft/draft.js';
import { draftSvg } from '../../render/draft-svg.js';
import type { Found } from '../../search/strategy/outcome.js';
import { type Aspect, clothFigure } from '../paint/cloth-figure.js';
import { button, choice, drawing, el } from '../paint/dom.js';
import { longestStandOut } from '../paint/float-runs.js';
import { seenFrom } from '../paint/paint.js';
import type { Screen } from '../paint/screen.js';
import { SIZE_WORDS, scaleOf } from '../parts/frame.js';
import { lookFields } from '../parts/toolbar.js';
import { repeatMillimetres } from '../store/sizes.js';
import type { Store } from '../store/store.js';
import { SIZES, type Size } from '../store/view.js';
import { dialogBox } from './dialog.js';
import { differencesOf } from './differences.js';

/** Widest and narrowest picture in CSS pixels, and the room beside it and for the names of the rows. */
const WIDEST = 240;
const NARROWEST = 130;
const BESIDE = 20;
const NAMES = 126;
/** Fewest CSS pixels per thread at which floats are outlined: on finer cloth the lines would cover it. */
const OUTLINED = 4;

/** The dialog that shows two to six cloths side by side at one scale. */
export function comparison(store: Store, screen: Screen): { readonly dialog: HTMLDialogElement; show(): void } {
  const shown = dialogBox('compare', () => {
    if (store.view.comparing) store.show({ comparing: false }, true);
  });
  let size: Size = 'motif';
  const sizes = choice(
    'Size',
    SIZES.map((each) => [each, SIZE_WORDS[each]] as const),
    (to) => {
      size = to;
      build();
    },
  );
  sizes.show(size);
  const look = lookFields(store);
  const table = el('div', {
    class: 'beside-one-another',
    tabindex: 0,
    role: 'group',
    'aria-label': 'Cloths side by side; many scroll sideways',
  });
  const alike = el('p', { class: 'same' });
  shown.body.append(el('div', { class: 'controls' }, sizes.label, look.fields), table, alike);
  let built = '';

  const build = (): void => {
    const cloths = store.view.compare.map((code) => store.byCode.get(code)!);
    const { apart, same } = differencesOf(cloths);
    const room = (shown.body.clientWidth - NAMES) / cloths.length - BESIDE;
    const side = Math.round(Math.max(NARROWEST, Math.min(WIDEST, room)));
    const picture = painterOf(cloths, { size, side, screen, store });
    const row = (head: string, cell: (found: Found) => Node): HTMLElement =>
      el(
        'tr',
        {},
        el('th', { scope: 'row' }, head),
        cloths.map((found) => el('td', {}, cell(found))),
      );
    const removed = (at: number): void => {
      const left: NodeListOf<HTMLElement> = table.querySelectorAll('thead button');
      if (left.length === 0) shown.focus();
      else left[Math.min(at, left.length - 1)]!.focus();
    };
    const rows = el(
      'tbody',
      {},
      row('Face', (found) => picture(found, 'face')),
      row('Back', (found) => picture(found, 'back')),
      row('Structure; close up, the longest floats are outlined', (found) => picture(found, 'structure')),
      apart.map(({ name, values }) => row(name, (found) => document.createTextNode(values[cloths.indexOf(found)]!))),
      row('Recipe', ({ recipe }) => document.createTextNode(recipe)),
      row('Draft', (found) => draftOf(found, side)),
    );
    table.replaceChildren(el('table', {}, headOf(cloths, store, removed), rows));
    alike.textContent =
      same.length === 0 ? 'Nothing is the same in all of them.' : `The same in all: ${same.join('; ')}.`;
  };

  return {
    dialog: shown.dialog,
    show() {
      const { comparing, compare, grey, metres } = store.view;
      if (!comparing || compare.length < 2) {
        built = '';
        shown.close();
        return;
      }
      shown.open(`${compare.length} cloths side by side`);
      look.update();
      const wanted = `${compare.join()} ${grey} ${metres}`;
      if (wanted === built) return;
      built = wanted;
      build();
    },
  };
}

/** The heads of the columns; `removed` is told the column of a cloth that was taken out, once it is gone. */
function headOf(cloths: readonly Found[], store: Store, removed: (at: number) => void): HTMLElement {
  const ranks = new Map(store.ranked().map(({ found }, at) => [found.code, at + 1]));
  const remove = (code: string, at: number): void => {
    store.show({ compare: store.view.compare.filter((each) => each !== code) });
    removed(at);
  };
  const head = ({ code }: Found, at: number): HTMLElement =>
    el(
      'th',
      { scope: 'col' },
      `${ranks.get(code) ?? ''} `,
      el('span', { class: 'code' }, code),
      ' ',
      button('Remove', () => remove(code, at)),
    );
  return el('thead', {}, el('tr', {}, el('td', {}), cloths.map(head)));
}

interface Besides {
  readonly size: Size;
  readonly side: number;
  readonly screen: Screen;
  readonly store: Store;
}

/** Paints a side of each of these cloths, all at one scale. */
function painterOf(cloths: readonly Found[], { size, side, screen, store }: Besides) {
  const { grey, metres } = store.view;
  const longest = Math.max(...cloths.flatMap(({ draft }) => Object.values(repeatMillimetres(draft))));
  return (found: Found, shown: Aspect): Node => {
    const { draft, code, scores } = found;
    const { longest: float } = scores.floats;
    const scale = scaleOf(size, draft, screen, longest, side);
    const { across, along } = spacing(draft.sett);
    const large = scale * Math.min(across, along) >= OUTLINED;
    const outlined = shown === 'structure' && large && float !== null && longestStandOut(drawdown(draft));
    return clothFigure(draft, {
      side: shown,
      repeats: 0,
      scale,
      width: side,
      height: side,
      grey,
      metres,
      words: `${code}, ${shown}`,
      ...(outlined ? { outline: float - 1 } : {}),
    });
  };
}

function draftOf({ code, draft }: Found, side: number): HTMLElement {
  const label = `Draft of ${code}; a wide one scrolls sideways`;
  const box = el(
    'div',
    { class: 'draft', tabindex: 0, role: 'group', 'aria-label': label },
    drawing(draftSvg(draft, { title: `Draft of ${code}`, cell: 6, seen: seenFrom() })),
  );
  box.style.maxWidth = `${side}px`;
  return box;
}
