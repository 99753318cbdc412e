import { el } from '../paint/dom.js';

/** Hands a text to the browser as a file to save. */
export function download(text: string, name: string, type = 'application/json'): void {
  const link = el('a', { href: URL.createObjectURL(new Blob([text], { type })), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
