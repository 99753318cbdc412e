import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { parseShortlist } from '../../src/formats/shortlist.js';
import { galleryPage } from '../../src/gallery/html/page-html.js';
import { pageScript } from '../../src/gallery/html/page-script.js';
import { Firefox } from './firefox.js';
import { LONG, SOON, search } from './in-browser.js';

const CODES = "[...document.querySelectorAll('.room .card')].map((card) => card.id)";

test('Firefox opens a gallery, ranks it again, keeps, compares, asks, and saves', LONG, async (context) => {
  const firefox = await Firefox.started(context);
  const home = mkdtempSync(join(tmpdir(), 'gallery-'));
  try {
    const [question, outcome] = await search({ lengths: '2-4', show: '12' });
    const file = join(home, 'gallery.html');
    writeFileSync(file, galleryPage(question, outcome, pageScript()));
    await firefox.open(pathToFileURL(file).href);
    const before = await firefox.value<string[]>(CODES);
    expect(before.length).toBeGreaterThan(5);
    await firefox.until("document.querySelector('.card canvas').width > 100");
    // Cloth is painted: not all points are of one colour.
    const colours = `(() => {
      const canvas = document.querySelector('.card canvas');
      const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
      return new Set(Array.from(new Uint32Array(data.buffer))).size;
    })()`;
    await firefox.until(`${colours} > 1`);

    await firefox.press('Rank and filter');
    await firefox.press('easy', '.panel');
    await firefox.until(`JSON.stringify(${CODES}) !== ${JSON.stringify(JSON.stringify(before))}`);
    const [first, second] = await firefox.value<string[]>(CODES);

    // By the keyboard: Enter on the button of a card.
    await firefox.value(`(document.querySelector('#${idOf(first!)} .keep').focus(), true)`);
    await firefox.type('\uE007');
    await firefox.until("document.querySelector('.bench').textContent.includes('Kept 1')");

    for (const code of [first!, second!]) {
      await firefox.value(`(document.querySelector('#${idOf(code)} .beside-others').click(), true)`);
    }
    await firefox.press('Compare 2', '.bench');
    await firefox.until("document.querySelector('dialog.compare').open");
    expect(await firefox.value<number>("document.querySelectorAll('dialog.compare canvas').length")).toBeGreaterThan(1);
    await firefox.type('\uE00C');
    await firefox.until("!document.querySelector('dialog.compare').open");

    await firefox.press('Kept 1', '.bench');
    await firefox.press('Save shortlist.json', 'dialog.kept');
    const list = join(firefox.saved, 'shortlist.json');
    await expect.poll(() => existsSync(list) && readFileSync(list, 'utf8').endsWith('}\n'), SOON).toBe(true);
    expect(parseShortlist(readFileSync(list, 'utf8'), list).map(({ code }) => code)).toEqual([first]);
    await firefox.type('\uE00C');

    await firefox.press('Ask', '.bench');
    const lengths = "[...document.querySelectorAll('.ask label')].find((each) => each.textContent === 'Lengths')";
    await firefox.value(`(${lengths}.querySelector('input').value = '5', true)`);
    await firefox.until("!document.querySelector('.ask .search').disabled");
    await firefox.press('Search', '.ask');
    await firefox.until("document.querySelector('h1').textContent.includes('orders of 5 elements')");
    expect(await firefox.value<string[]>(CODES)).not.toContain(first);
    expect(firefox.complaints).toEqual([]);
  } finally {
    await firefox.close();
    rmSync(home, { recursive: true, force: true });
  }
});

/** A code as a selector: it may begin with a digit. */
function idOf(code: string): string {
  return code.replace(/^\d/, (digit) => `\\\\3${digit} `);
}
