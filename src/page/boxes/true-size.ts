import { button, el } from '../paint/dom.js';
import type { Screen } from '../paint/screen.js';
import type { Store } from '../store/store.js';
import { dialogBox } from './dialog.js';

/** A bank card in millimetres (ISO/IEC 7810, ID-1). */
const CARD = { long: 85.6, short: 53.98 } as const;

/** The box in which a person sets the screen to true size with a bank card, and the line that asks for it. */
export function trueSize(
  store: Store,
  screen: Screen,
): { readonly dialog: HTMLDialogElement; readonly asks: HTMLElement; open(): void; show(): void } {
  const shown = dialogBox('true-size', () => {
    screen.keep();
    store.tell();
  });
  const said = el('output');
  const slide = el('input', {
    type: 'range',
    min: 60,
    max: 180,
    step: 0.5,
    'aria-label': 'Size of the card',
    input: () => {
      screen.set(Number(slide.value) / 100);
      said.textContent = `${slide.value} %`;
    },
  });
  // Upright, since most telephones are narrower than a card is long.
  const card = el('div', { class: 'bank-card', 'aria-hidden': 'true' });
  card.style.width = `calc(${CARD.short} * var(--mm))`;
  card.style.height = `calc(${CARD.long} * var(--mm))`;
  shown.body.append(
    el(
      'p',
      {},
      'Hold a bank card upright against the screen, and move the slider until the frame is as large as the card. ',
      'The browser remembers it for all galleries.',
    ),
    el('label', { class: 'card-size' }, slide, said),
    card,
  );
  const open = (): void => {
    slide.value = String(screen.factor * 100);
    said.textContent = `${slide.value} %`;
    shown.open('Set the screen to true size');
  };
  const asks = el(
    'p',
    { class: 'asks screen' },
    'This screen is not set to true size yet. ',
    button('Set it with a bank card', open),
  );
  return {
    dialog: shown.dialog,
    asks,
    open,
    show() {
      asks.hidden = store.view.size !== 'actual' || screen.isSet;
    },
  };
}
