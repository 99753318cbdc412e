import { drawdown } from '../../cloth/drawdown.js';
import { draftSvg } from '../../render/draft-svg.js';
import { clothFigure, type Side } from '../paint/cloth-figure.js';
import { button, choice, drawing, el } from '../paint/dom.js';
import { longestStandOut } from '../paint/float-runs.js';
import type { Screen } from '../paint/screen.js';
import { repeatOf } from '../store/sizes.js';
import type { Store } from '../store/store.js';
import { SIZES, type Size } from '../store/view.js';
import { SIZE_WORDS, scaleOf } from './cards.js';
import { dialogBox } from './dialog.js';
import { differencesOf } from './differences.js';

/** Width of each picture in CSS pixels. */
const WIDTH = 240;

/** The dialog that shows two to six cloths side by side at one scale. */
export function comparison(store: Store, screen: Screen): { readonly dialog: HTMLDialogElement; show(): void } {
  const shown = dialogBox('compare', () => {
    if (store.view.comparing) store.show({ comparing: false }, true);
  });
  let size: Size | undefined;
  let built = '';

  const build = (): void => {
    const cloths = store.view.compare.map((code) => store.byCode.get(code)!);
    const { grey, metres } = store.view;
    const largest = Math.max(...cloths.flatMap(({ draft }) => Object.values(repeatOf(draft))));
    // Actual size if that shows every repeat whole, else half size.
    const seen = size ?? (largest * screen.points <= WIDTH ? 'actual' : 'half');
    const row = (head: string, cell: (at: number) => Node): HTMLElement =>
      el(
        'tr',
        {},
        el('th', { scope: 'row' }, head),
        cloths.map((_, at) => el('td', {}, cell(at))),
      );
    const picture = (at: number, side: Side): Node => {
      const { draft, code, scores } = cloths[at]!;
      const scale = scaleOf(seen, cloths[at]!, screen.points);
      const longest = scores.floats.longest;
      const outlined = side === 'structure' && longest !== null && longestStandOut(drawdown(draft));
      const outline = outlined ? { outline: longest - 1 } : {};
      return clothFigure(draft, {
        side,
        repeats: 0,
        scale,
        width: WIDTH,
        height: WIDTH,
        grey,
        metres,
        words: `${code}, ${side}`,
        ...outline,
      });
    };
    const { apart, same } = differencesOf(cloths);
    const ranks = new Map(store.ranked().map(({ found }, at) => [found.code, at + 1]));
    const sizes = choice(
      'Size',
      SIZES.map((each) => [each, SIZE_WORDS[each]] as const),
      (to) => {
        size = to;
        build();
      },
    );
    sizes.show(seen);
    shown.body.replaceChildren(
      el('div', { class: 'controls' }, sizes.label),
      el(
        'div',
        {
          class: 'beside-one-another',
          tabindex: 0,
          role: 'group',
          'aria-label': 'Cloths side by side; many scroll sideways',
        },
        el(
          'table',
          {},
          el(
            'thead',
            {},
            el(
              'tr',
              {},
              el('td', {}),
              cloths.map(({ code }) =>
                el(
                  'th',
                  { scope: 'col' },
                  `${ranks.get(code) ?? ''} `,
                  el('span', { class: 'code' }, code),
                  ' ',
                  button('Remove', () => store.show({ compare: store.view.compare.filter((each) => each !== code) })),
                ),
              ),
            ),
          ),
          el(
            'tbody',
            {},
            row('Face', (at) => picture(at, 'face')),
            row('Back', (at) => picture(at, 'back')),
            row('Structure, longest floats outlined where they are few', (at) => picture(at, 'structure')),
            apart.map(({ name, values }) => row(name, (at) => document.createTextNode(values[at]!))),
            row('Recipe', (at) => document.createTextNode(cloths[at]!.recipe)),
            row('Draft', (at) =>
              el(
                'div',
                {
                  class: 'draft',
                  tabindex: 0,
                  role: 'group',
                  'aria-label': `Draft of ${cloths[at]!.code}; a wide one scrolls sideways`,
                },
                drawing(draftSvg(cloths[at]!.draft, { title: `Draft of ${cloths[at]!.code}`, cell: 6 })),
              ),
            ),
          ),
        ),
      ),
      el(
        'p',
        { class: 'same' },
        same.length === 0 ? 'Nothing is the same in all of them.' : `The same in all: ${same.join('; ')}.`,
      ),
    );
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
      const wanted = `${compare.join()} ${grey} ${metres}`;
      if (wanted === built) return;
      built = wanted;
      build();
    },
  };
}
