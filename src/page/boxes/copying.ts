import { button, el } from '../paint/dom.js';

/** The command that draws a cloth again, to be read and copied. */
export function command(text: string): HTMLElement {
  return el('div', { class: 'command' }, el('code', {}, text), copying(text, 'Copy the command that draws it again'));
}

/** A button that copies a text, and says whether it could. */
export function copying(text: string, words: string): HTMLElement {
  const said = el('span', { role: 'status', class: 'quiet' });
  const copy = button(words, async () => {
    said.textContent = (await copied(text)) ? 'Copied.' : text;
  });
  return el('span', { class: 'copying' }, copy, said);
}

async function copied(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    // No clipboard for pages on disk in this browser: the text itself is shown, to be marked by hand.
    return false;
  }
}
