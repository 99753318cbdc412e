import { button, el } from '../paint/dom.js';
import type { OwnDraft } from './own-draft.js';

/** Name of a draft that was typed. */
const TYPED = 'draft.yaml';
const EXAMPLE = 'threading: 1-4, 3-2\ntie-up: [1 2, 2 3, 3 4, 1 4]\ntreadling: 1-4, 3-2';

/** A draft of a person's own: typed, or a file that is chosen or dropped. */
export function draftField(changed: () => void): {
  readonly field: HTMLElement;
  value(): OwnDraft | undefined;
  show(own: OwnDraft): void;
  /** Says that the draft of the question, of which only the name is known, is wanted. */
  miss(name: string): void;
} {
  let dropped: OwnDraft | undefined;
  const said = el('p', { role: 'status', class: 'quiet' });
  const typed = el('textarea', {
    rows: 4,
    placeholder: EXAMPLE,
    spellcheck: 'false',
    'aria-label': 'Threading, tie-up and treadling',
    input: () => {
      dropped = undefined;
      said.textContent = '';
      changed();
    },
  });
  const take = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    dropped = { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
    typed.value = '';
    said.textContent = `${file.name} is the draft.`;
    changed();
  };
  const file = el('input', {
    type: 'file',
    accept: '.wif,.yaml,.yml',
    class: 'unseen',
    tabindex: -1,
    'aria-label': 'Draft file',
    change: () => void take(file.files?.[0]),
  });
  const field = el(
    'fieldset',
    {
      class: 'own-draft',
      dragover: (event) => event.preventDefault(),
      drop: (event) => {
        event.preventDefault();
        void take((event as DragEvent).dataTransfer?.files[0]);
      },
    },
    el('legend', {}, 'Or a draft of your own'),
    typed,
    el(
      'div',
      { class: 'controls' },
      button('Open a WIF or YAML file', () => file.click()),
      file,
      el('span', { class: 'quiet' }, 'or drop it here'),
      button('No draft', () => {
        dropped = undefined;
        typed.value = '';
        said.textContent = '';
        changed();
      }),
    ),
    said,
  );
  return {
    field,
    value: () =>
      dropped ??
      (typed.value.trim() === '' ? undefined : { name: TYPED, bytes: new TextEncoder().encode(typed.value) }),
    show(own) {
      dropped = own.name === TYPED ? undefined : own;
      typed.value = own.name === TYPED ? new TextDecoder().decode(own.bytes) : '';
      said.textContent = own.name === TYPED ? '' : `${own.name} is the draft.`;
    },
    miss(name) {
      said.textContent = `The question was asked of ${name}, which is not in this page: open it here to ask again.`;
    },
  };
}
