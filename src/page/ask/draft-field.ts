import { button, el, tick } from '../paint/dom.js';
import { isWif, type OwnDraft, ownOf } from './own-draft.js';

/** Name of a draft that was typed. */
const TYPED = 'draft.yaml';
const EXAMPLE = 'threading: 1-4, 3-2\ntie-up: [1 2, 2 3, 3 4, 1 4]\ntreadling: 1-4, 3-2';

/** A draft of a person's own: typed, or a file that is chosen or dropped. */
export function draftField(changed: () => void): {
  readonly field: HTMLElement;
  value(): OwnDraft | undefined;
  /** Whether the warp of the draft is on the loom. */
  isOnTheLoom(): boolean;
  show(own: OwnDraft | undefined, isOnTheLoom: boolean): void;
  /** Says that the draft of the question, of which only the name is known, is wanted. */
  miss(name: string): void;
} {
  let dropped: OwnDraft | undefined;
  let name = TYPED;
  let onTheLoom = false;
  const said = el('p', { role: 'status', class: 'quiet' });
  const typed = el('textarea', {
    rows: 4,
    placeholder: EXAMPLE,
    spellcheck: 'false',
    'aria-label': 'Threading, tie-up and treadling',
    input: () => {
      if (dropped !== undefined) said.textContent = '';
      if (dropped !== undefined || typed.value.trim() === '') name = TYPED;
      dropped = undefined;
      changed();
    },
  });
  const take = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    show({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
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
  const loom = tick('Its warp is on the loom: search only weft and treadling', (on) => {
    onTheLoom = on;
    changed();
  });
  const show = (own: OwnDraft | undefined): void => {
    dropped = own !== undefined && isWif(own) ? own : undefined;
    name = own?.name ?? TYPED;
    typed.value = own === undefined || dropped !== undefined ? '' : new TextDecoder().decode(own.bytes);
    said.textContent = own === undefined || name === TYPED ? '' : `${name} is the draft.`;
  };
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
        show(undefined);
        changed();
      }),
    ),
    said,
    loom.label,
  );
  return {
    field,
    value: () => dropped ?? (typed.value.trim() === '' ? undefined : ownOf(name, typed.value)),
    isOnTheLoom: () => onTheLoom,
    show(own, isOnTheLoom) {
      show(own);
      onTheLoom = isOnTheLoom;
      loom.show(onTheLoom);
    },
    miss(name) {
      said.textContent = `The question was asked of ${name}, which is not in this page: open it here to ask again.`;
    },
  };
}
