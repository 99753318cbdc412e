import { plural } from '../../words/counts.js';
import { button, el } from '../paint/dom.js';
import type { Store } from '../store/store.js';

/** The line at the foot of the window: what was lost and can be put back, and why nothing is stored. */
export function notice(store: Store): { readonly line: HTMLElement; show(): void } {
  const said = el('p', { role: 'status' });
  const undo = button('Undo', () => {
    store.marks.undo();
    store.tell();
  });
  const close = button('Close', () => {
    store.marks.lost = [];
    closed = store.marks.trouble;
    store.tell();
  });
  const line = el('div', { class: 'notice screen', hidden: true }, said, undo, close);
  let closed: string | undefined;
  return {
    line,
    show() {
      const { lost, trouble } = store.marks;
      const first = lost[0];
      const gone = first !== undefined && !store.marks.has(first.code);
      const what = lost.length === 1 ? first?.code : `${lost.length} ${plural(lost.length, 'cloth')}`;
      const losing = gone ? `${what} is no longer kept.` : `Stars and note of ${what} were written over.`;
      const words = [first && losing, trouble !== closed && trouble].filter(Boolean).join(' ');
      if (said.textContent !== words) said.textContent = words;
      line.hidden = words === '';
      undo.hidden = first === undefined;
      // A box over the page would cover the line, and keep the keyboard from it.
      const home = document.querySelector('dialog[open]') ?? document.body;
      if (line.parentElement !== home) home.append(line);
    },
  };
}
