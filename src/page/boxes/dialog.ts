import { button, el } from '../paint/dom.js';

/** A box over the page with a heading, which takes the keyboard until it is closed. */
interface Box {
  readonly dialog: HTMLDialogElement;
  readonly body: HTMLElement;
  /** Opens the dialog, unless it is open, and sets its heading. */
  open(title: string): void;
  /** Gives the keyboard to the heading, where what had it is gone. */
  focus(): void;
  close(): void;
}

/** Makes a dialog; calls `closed` when a person closes it. */
export function dialogBox(name: string, closed: () => void): Box {
  const title = el('h2', { id: `${name}-title`, tabindex: -1 });
  const body = el('div', { class: 'box-body' });
  const dialog: HTMLDialogElement = el(
    'dialog',
    {
      class: `box screen ${name}`,
      'aria-labelledby': `${name}-title`,
      // The event comes a little after the closing; the dialog may be open again by then.
      focus: () => title.focus(),
      close: () => dialog.open || closed(),
    },
    el(
      'div',
      { class: 'box-head' },
      title,
      button('Close', () => dialog.close(), { class: 'close' }),
    ),
    body,
  );
  return {
    dialog,
    body,
    open(words) {
      title.textContent = words;
      if (dialog.open) return;
      dialog.showModal();
      title.focus();
    },
    focus: () => title.focus(),
    close: () => dialog.open && dialog.close(),
  };
}
