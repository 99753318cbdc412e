import { countsOf } from '../../gallery/html/page-counts.js';
import type { Stage } from '../../search/strategy/strategies.js';
import { capital, grouped, plural } from '../../words/counts.js';
import { copying } from '../boxes/copying.js';
import { dialogBox } from '../boxes/dialog.js';
import { download } from '../boxes/download.js';
import { button, el } from '../paint/dom.js';
import { countInWords, isTooLarge } from '../workers/counted.js';
import { Searcher } from '../workers/searcher.js';
import { type AskForm, askForm } from './ask-form.js';
import type { AskedOf } from './asked.js';
import { askedOfFile, askedText, readAsked } from './read-asked.js';
import { type Answered, savedPage } from './save-page.js';

/** Milliseconds from the last key to the count of candidates. */
const COUNT_AFTER = 250;
/** The file of a saved question, and the command that answers it. */
const QUESTION_FILE = 'question.yaml';
const COMMAND = `shedlight explore ${QUESTION_FILE}`;

/** The box in which questions are asked. */
export interface AskBox {
  readonly dialog: HTMLDialogElement;
  readonly opener: HTMLButtonElement;
  /** Saves the page with the last answer in it. */
  readonly saver: HTMLButtonElement;
  open(): void;
  /** Fills the form with a question. */
  show(asked: AskedOf): void;
  /** Starts the search for the question in the form. */
  start(): Promise<void>;
}

/**
 * Makes the box: the fields of a question, the count of what would be tried, the search with its progress, and what can
 * be saved of it.
 *
 * @param script the text of the page's own script, which its workers run
 * @param answered is given the gallery that was found
 */
export function askBox(script: string, answered: (answer: Answered, asked: AskedOf) => void): AskBox {
  const searcher = new Searcher(script);
  const shown = dialogBox('ask', () => undefined);
  const form = askForm(() => later());
  const said = el('p', { role: 'status', class: 'ask-said' });
  const bar = el('progress', { hidden: true, 'aria-label': 'Search' });
  const large = tooLargeNote();
  let running: { readonly enough: AbortController; readonly stop: AbortController } | undefined;
  let last: Answered | undefined;
  let waiting: ReturnType<typeof setTimeout> | undefined;

  const later = (): void => {
    clearTimeout(waiting);
    waiting = setTimeout(() => void count(), COUNT_AFTER);
  };
  let counts = 0;
  const count = async (): Promise<void> => {
    if (running !== undefined) return;
    // An answer that comes after the form has changed is none.
    const mine = ++counts;
    try {
      const found = await searcher.count(readAsked(form.asked()));
      if (running !== undefined || mine !== counts) return;
      said.textContent = countInWords(found);
      large.hidden = !isTooLarge(found);
      search.disabled = false;
    } catch (error) {
      search.disabled = true;
      large.hidden = true;
      said.textContent = wordsOf(error);
    }
  };
  const start = async (): Promise<void> => {
    clearTimeout(waiting);
    running = { enough: new AbortController(), stop: new AbortController() };
    controls(true);
    said.textContent = 'Searching';
    bar.removeAttribute('value');
    const tell = ({ name, done, of }: Stage): void => {
      said.textContent = `${capital(name)}: ${grouped(done)} of ${grouped(of)}`;
      bar.max = Math.max(1, of);
      bar.value = done;
    };
    try {
      const asked = form.asked();
      const notes: string[] = [];
      const question = readAsked(asked, (note) => notes.push(note));
      const { enough, stop } = running;
      const { outcome, manifest } = await searcher.search(question, tell, enough.signal, stop.signal);
      const { found, counts } = outcome;
      if (found.length === 0) {
        said.textContent = `Nothing fits the question. ${countsOf(question, counts, 0).join(' ')}`;
        return;
      }
      last = { question, outcome, manifest };
      said.textContent = [`${found.length} ${plural(found.length, 'cloth')} shown.`, ...notes].join(' ');
      shown.close();
      answered(last, asked);
    } catch (error) {
      said.textContent = running?.stop.signal.aborted ? 'Cancelled.' : wordsOf(error);
    } finally {
      running = undefined;
      controls(false);
    }
  };

  const { head, files, search, controls } = partsOf({
    said,
    bar,
    fields: form.fields,
    start: () => void start(),
    enough: () => running?.enough.abort(),
    cancel: () => running?.stop.abort(),
    focus: shown.focus,
    ...questionFile(form, said, () => later()),
  });
  controls(false);
  shown.body.append(head, large, files, form.fields);
  const open = (): void => {
    shown.open('Ask a question');
    form.paint();
    later();
  };
  const savePage = async (): Promise<void> => {
    if (last) download(await savedPage(last, script), 'gallery.html', 'text/html');
  };
  return {
    dialog: shown.dialog,
    opener: button('Ask', open),
    saver: button('Save this page', () => void savePage(), { class: 'saver' }),
    open,
    show: form.show,
    start,
  };
}

/** What is said of a question that takes too long in a browser. */
function tooLargeNote(): HTMLElement {
  return el(
    'div',
    { class: 'too-large', hidden: true },
    el(
      'p',
      {},
      'That is long for a browser, whose window has to stay open. The command can be interrupted, and goes on where it was: save the question, and in its folder run ',
      el('code', {}, COMMAND),
    ),
    copying(COMMAND, 'Copy the command'),
  );
}

/** Saves the question in the form as a file, and fills the form from one. What is wrong is said. */
function questionFile(form: AskForm, said: HTMLElement, opened: () => void) {
  const attempt = (work: () => void): void => {
    try {
      work();
    } catch (error) {
      said.textContent = wordsOf(error);
    }
  };
  return {
    saveText: (): void => attempt(() => download(askedText(form.asked()), QUESTION_FILE, 'application/yaml')),
    async openText(file: File): Promise<void> {
      const text = await file.text();
      attempt(() => {
        form.show({ asked: askedOfFile(text, file.name) });
        opened();
      });
    },
  };
}

/** The head of the box: what is said, the progress, and the buttons, of which a search shows others; and the files. */
function partsOf({
  said,
  bar,
  fields,
  ...on
}: {
  readonly said: HTMLElement;
  readonly bar: HTMLProgressElement;
  readonly fields: HTMLElement;
  readonly start: () => void;
  readonly enough: () => void;
  readonly cancel: () => void;
  readonly focus: () => void;
  readonly saveText: () => void;
  readonly openText: (file: File) => Promise<void>;
}) {
  const search = button('Search', on.start, { class: 'search', disabled: true });
  const enough = button('Stop, and show what was found', on.enough);
  const cancel = button('Cancel', on.cancel);
  const saveText = button('Save the question', on.saveText);
  const file = el('input', {
    type: 'file',
    accept: '.yaml,.yml',
    class: 'unseen',
    tabindex: -1,
    'aria-label': 'Question file',
    change: () => {
      const [given] = file.files ?? [];
      if (given !== undefined) void on.openText(given);
      file.value = '';
    },
  });
  const openText = button('Open a question', () => file.click());
  const files = el('div', { class: 'controls ask-files' }, openText, saveText, file);
  return {
    head: el('div', { class: 'ask-head' }, said, bar, el('div', { class: 'controls' }, search, enough, cancel)),
    files,
    search,
    /** A search has its own buttons; the question that it answers stays as it is. */
    controls(searching: boolean): void {
      const had = document.activeElement;
      bar.hidden = !searching;
      search.hidden = searching;
      enough.hidden = !searching;
      cancel.hidden = !searching;
      fields.inert = searching;
      files.inert = searching;
      // The keyboard goes on from the head of the box: a second press of Enter must not end the search.
      if (had === search) on.focus();
      else if (had === cancel || had === enough) search.focus();
    },
  };
}

function wordsOf(error: unknown): string {
  if (!(error instanceof Error)) throw error;
  // The place in the text that the form makes of itself tells a person nothing.
  return `${capital(error.message.replace(/^the question:\d+:\d+: /, ''))}.`;
}
