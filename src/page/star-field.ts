import { LONGEST } from '../plan/shortlist.js';
import type { Desk } from './desk.js';
import { button, choice, el } from './dom.js';

const STARS = [0, 1, 2, 3, 4, 5].map((n) => [n, n === 0 ? 'no stars' : '★'.repeat(n)] as const);

/** Stars and a note for a cloth that is kept. */
export function markFields(desk: Desk, code: string): HTMLElement {
  const kept = desk.marks.of(code);
  const stars = choice('Stars', STARS, (n) => {
    desk.marks.mark(code, { stars: n });
    desk.tell();
  });
  stars.show(kept?.stars ?? 0);
  const note = el('textarea', {
    rows: 2,
    maxlength: LONGEST.note,
    change: () => {
      desk.marks.mark(code, { note: note.value.trim() });
      desk.tell();
    },
  });
  note.value = kept?.note ?? '';
  return el('div', { class: 'mark-fields' }, stars.label, el('label', { class: 'note' }, el('span', {}, 'Note'), note));
}

/** A button that keeps a cloth, with its marks beside it once it is kept. */
export function keeping(desk: Desk, code: string): { readonly field: HTMLElement; show(): void } {
  const keep = button(
    'Keep',
    () => {
      const found = desk.byCode.get(code);
      if (found === undefined) return;
      desk.marks.toggle(found);
      desk.tell();
    },
    { class: 'keep' },
  );
  const field = el('div', { class: 'keeping' }, keep);
  const show = (): void => {
    const kept = desk.marks.has(code);
    keep.textContent = kept ? 'Kept' : 'Keep';
    keep.setAttribute('aria-pressed', String(kept));
    const fields = field.querySelector('.mark-fields');
    if (kept && fields === null) field.append(markFields(desk, code));
    if (!kept) fields?.remove();
  };
  show();
  return { field, show };
}
