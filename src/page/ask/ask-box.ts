import { countsOf } from '../../gallery/html/page-counts.js';
import { manifestOf } from '../../gallery/manifest/manifest.js';
import type { Stage } from '../../search/strategy/strategies.js';
import { capital, grouped, plural } from '../../words/counts.js';
import { dialogBox } from '../boxes/dialog.js';
import { download } from '../boxes/download.js';
import { button, el } from '../paint/dom.js';
import { type AskForm, askForm } from './ask-form.js';
import type { AskedOf } from './asked.js';
import { askedOfFile, askedText, readAsked } from './read-asked.js';
import { type Answered, savedPage } from './save-page.js';
import { Searcher } from './searcher.js';

/** Milliseconds from the last key to the count of candidates. */
const COUNT_AFTER = 250;

/** The box in which questions are asked. */
export interface AskBox {
  readonly dialog: HTMLDialogElement;
  readonly opener: HTMLButtonElement;
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
  let running: { readonly enough: AbortController; readonly stop: AbortController } | undefined;
  let last: Answered | undefined;
  let waiting: ReturnType<typeof setTimeout> | undefined;

  const later = (): void => {
    clearTimeout(waiting);
    waiting = setTimeout(() => void count(), COUNT_AFTER);
  };
  const count = async (): Promise<void> => {
    if (running !== undefined) return;
    try {
      said.textContent = countInWords(await searcher.count(readAsked(form.asked())));
      search.disabled = false;
    } catch (error) {
      search.disabled = true;
      said.textContent = wordsOf(error);
    }
  };
  const start = async (): Promise<void> => {
    clearTimeout(waiting);
    running = { enough: new AbortController(), stop: new AbortController() };
    controls(true);
    const tell = ({ name, done, of }: Stage): void => {
      said.textContent = `${name}: ${grouped(done)} of ${grouped(of)}`;
      bar.max = Math.max(1, of);
      bar.value = done;
    };
    try {
      const notes: string[] = [];
      const question = readAsked(form.asked(), (note) => notes.push(note));
      const { enough, stop } = running;
      const outcome = await searcher.search(question, tell, enough.signal, stop.signal);
      if (outcome.found.length === 0) {
        said.textContent = `Nothing fits the question. ${countsOf(question, outcome.counts, 0).join(' ')}`;
        return;
      }
      last = { question, outcome, manifest: manifestOf(question, outcome) };
      said.textContent = [`${outcome.found.length} ${plural(outcome.found.length, 'cloth')} shown.`, ...notes].join(
        ' ',
      );
      savePage.disabled = false;
      shown.close();
      answered(last, form.asked());
    } catch (error) {
      said.textContent = running?.stop.signal.aborted ? 'Cancelled.' : wordsOf(error);
    } finally {
      running = undefined;
      controls(false);
    }
  };

  const { head, search, savePage, controls } = headOf({
    said,
    bar,
    start: () => void start(),
    enough: () => running?.enough.abort(),
    cancel: () => running?.stop.abort(),
    savePage: async () => {
      if (last) download(await savedPage(last, script), 'gallery.html', 'text/html');
    },
    ...questionFile(form, said, () => later()),
  });
  controls(false);
  shown.body.append(head, form.fields);
  const open = (): void => {
    shown.open('Ask a question');
    form.paint();
    later();
  };
  return { dialog: shown.dialog, opener: button('Ask', open), open, show: form.show, start };
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
    saveText: (): void => attempt(() => download(askedText(form.asked()), 'question.yaml', 'application/yaml')),
    async openText(file: File): Promise<void> {
      const text = await file.text();
      attempt(() => {
        form.show({ asked: askedOfFile(text, file.name) });
        opened();
      });
    },
  };
}

/** The head of the box: what is said, the progress, and the buttons, of which a search shows others. */
function headOf({
  said,
  bar,
  ...on
}: {
  readonly said: HTMLElement;
  readonly bar: HTMLProgressElement;
  readonly start: () => void;
  readonly enough: () => void;
  readonly cancel: () => void;
  readonly savePage: () => Promise<void>;
  readonly saveText: () => void;
  readonly openText: (file: File) => Promise<void>;
}) {
  const search = button('Search', on.start, { class: 'search', disabled: true });
  const enough = button('Stop, and show what was found', on.enough);
  const cancel = button('Cancel', on.cancel);
  const savePage = button('Save the page', () => void on.savePage(), { disabled: true });
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
  const buttons = el('div', { class: 'controls' }, search, enough, cancel, savePage, saveText, openText, file);
  return {
    head: el('div', { class: 'ask-head' }, said, bar, buttons),
    search,
    savePage,
    controls(searching: boolean): void {
      bar.hidden = !searching;
      search.hidden = searching;
      enough.hidden = !searching;
      cancel.hidden = !searching;
    },
  };
}

/** `1,111 candidates: every one will be tried.` */
function countInWords({ candidates, all }: { readonly candidates: number; readonly all: boolean }): string {
  const many = `${grouped(candidates)} ${plural(candidates, 'candidate')}`;
  return all
    ? `${many}: every one will be tried.`
    : `${many} at most will be tried, the best found varied further: there are too many to try them all.`;
}

function wordsOf(error: unknown): string {
  if (!(error instanceof Error)) throw error;
  // The place in the text that the form makes of itself tells a person nothing.
  return `${capital(error.message.replace(/^the question:\d+:\d+: /, ''))}.`;
}
