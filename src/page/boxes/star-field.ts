import { LONGEST } from '../../formats/shortlist.js';
import { button, choice, el } from '../paint/dom.js';
import type { Store } from '../store/store.js';

const STARS = [0, 1, 2, 3, 4, 5].map((n) => [n, n === 0 ? 'no stars' : '★'.repeat(n)] as const);

/** The fields for stars and note of a kept cloth, which are stored while a person types. */
export function markFields(store: Store, code: string): { readonly field: HTMLElement; show(): void } {
  const stars = choice('Stars', STARS, (n) => {
    store.marks.mark(code, { stars: n });
    store.tell();
  });
  const note = el('textarea', {
    rows: 2,
    maxlength: LONGEST.note,
    input: () => {
      store.marks.mark(code, { note: note.value.trim() });
      store.tell();
    },
  });
  const field = el(
    'div',
    { class: 'mark-fields' },
    stars.label,
    el('label', { class: 'note' }, el('span', {}, 'Note'), note),
  );
  const show = (): void => {
    const kept = store.marks.of(code);
    stars.show(kept?.stars ?? 0);
    if (document.activeElement !== note) note.value = kept?.note ?? '';
  };
  show();
  return { field, show };
}

/** A button that keeps a cloth, and the fields for stars and note once it is kept. */
export function keeping(
  store: Store,
  code: string,
): { readonly keep: HTMLElement; readonly field: HTMLElement; show(): void } {
  const keep = button(
    'Keep',
    () => {
      const found = store.byCode.get(code);
      if (found === undefined) return;
      store.marks.toggle(found);
      store.tell();
    },
    { class: 'keep' },
  );
  const marks = markFields(store, code);
  const show = (): void => {
    const kept = store.marks.has(code);
    keep.textContent = kept ? 'Kept' : 'Keep';
    keep.setAttribute('aria-pressed', String(kept));
    marks.field.hidden = !kept;
    marks.show();
  };
  show();
  return { keep, field: marks.field, show };
}
