import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { emptyPage } from '../../../src/gallery/html/page-html.js';
import { pageScript } from '../../../src/gallery/html/page-script.js';
import { manifestOf } from '../../../src/gallery/manifest/manifest.js';
import { addressOfAsked } from '../../../src/page/ask/asked.js';
import { readAsked } from '../../../src/page/ask/read-asked.js';
import { Problem } from '../../../src/problem.js';
import { PRESET_NAMES } from '../../../src/score/rank/presets.js';
import { explore } from '../../../src/search/explore.js';
import type { Question } from '../../../src/search/question/question.js';
import { spaceOf } from '../../../src/search/space/space.js';
import { structures } from '../../../src/structure/catalogue/catalogue.js';
import { runs } from '../../long.js';
import { dataIn, saved } from '../asking.js';
import { Desk, inPage } from '../in-browser.js';

const desk = new Desk();
/** Larger questions take too long here. */
const SMALL = 20_000;

const some = (...words: readonly string[]) => fc.subarray([...words], { minLength: 1 });
const order = fc
  .string({ unit: fc.constantFrom('D', 'L'), minLength: 2, maxLength: 6 })
  .filter((word) => /DL|LD/.test(word));
const range = fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 0, max: 2 }));
const colour = fc.integer({ min: 0, max: 0xff_ff_ff }).map((hex) => `#${hex.toString(16).padStart(6, '0')}`);
const rare = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined, freq: 2 });
const named = (all: typeof structures) => fc.constantFrom(...all.map(({ name }) => name));
const woven = fc.array(named(structures), { minLength: 1, maxLength: 2 }).map((structure) => ({ structure }));
const ofBlocks = fc
  .tuple(
    named(structures.filter(({ profile }) => profile.length > 1)),
    fc.constantFrom<Record<string, string>>(
      { profile: 'A A B' },
      { profile: 'A B', treadled: 'B A' },
      { profile: 'order', by: 'block' },
      { profile: 'search', 'profile lengths': '2-3' },
      { profile: 'search, mirrored', treadled: 'search', 'profile lengths': '3' },
      { treadled: 'search, together', 'profile lengths': '2' },
      { treadled: 'A+B .' },
      { blocks: '3' },
      { blocks: '3', profile: 'A B C', treadled: 'A+C B' },
    ),
  )
  .map(([name, keys]) => ({ structure: [name], ...keys }));
/** What a small question may ask, key by key, as a person writes it. */
const question = fc.record({
  woven: fc.oneof(woven, ofBlocks),
  colours: fc.oneof(
    range.map(([from, more]) => ({ lengths: `${from}-${from + more}` })),
    fc.array(order, { minLength: 1, maxLength: 3 }).map((orders) => ({ orders: orders.join(', ') })),
  ),
  weft: fc.option(fc.oneof(fc.constantFrom('same', 'exchange', 'own', 'own', 'L'), order), { nil: undefined }),
  by: rare(some('thread', 'unit', 'block').map((words) => words.join(', '))),
  fill: rare(some('solid', 'alternate', 'nest').map((words) => words.join(', '))),
  times: rare(some('1', '2', '3', '4').map((words) => words.join(', '))),
  limits: rare(
    some('float 4', 'repeat 60', 'contrast 0.2', 'warp changes 8', 'shuttles 2', 'treadles 8').map((parts) =>
      parts.join(', '),
    ),
  ),
  rank: fc.option(fc.constantFrom(...PRESET_NAMES, 'contrast 2, newness 1', 'symmetry 1'), { nil: undefined }),
  yarns: rare(fc.record({ D: colour, L: colour })),
  seen: rare(
    fc
      .tuple(fc.constantFrom('top', 'bottom'), fc.constantFrom('left', 'right'), fc.constantFrom('above', 'below'))
      .map((places) => places.join(', ')),
  ),
  starts: rare(fc.constantFrom('first', 'weft')),
  same: rare(fc.constantFrom('shift', 'mirror', 'mirror, quarter-turn')),
  sett: rare(fc.constantFrom('24', '20/30', '8/8 per cm')),
  show: fc.constantFrom('3', '12', 'one of each kind'),
});

// The demo's page is made of the same functions as the command's gallery; here a browser runs them.
test('any small question has the same answer in a browser as in Node, to the byte, or the same refusal', {
  timeout: 3_600_000,
}, async () => {
  const file = join(desk.home, 'shedlight.html');
  writeFileSync(file, emptyPage(pageScript()));
  const page = await desk.opened(await desk.fresh(), pathToFileURL(file).href);
  let answered = 0;
  await fc.assert(
    fc.asyncProperty(question, async ({ woven, colours, ...rest }) => {
      const said = Object.entries({ ...rest, ...colours, ...woven }).filter(([, value]) => value !== undefined);
      const asked = Object.fromEntries(said);
      const known = readOrRefused(asked);
      if (typeof known !== 'string') fc.pre(spaceOf(known).count <= SMALL);
      await page.goto('about:blank');
      await page.goto(`${pathToFileURL(file).href}#${addressOfAsked({ asked })}`);
      const words = "document.querySelector('.ask-said').textContent";
      const done = `${words} !== '' && document.querySelector('.ask progress').hidden`;
      await expect.poll(() => inPage(page, done).catch(() => false), { timeout: 120_000 }).toBe(true);
      if (typeof known === 'string') {
        expect(await inPage(page, words)).toBe(known);
        return;
      }
      const outcome = await explore(known, { workers: 0 });
      if (outcome.found.length === 0) {
        expect(await inPage(page, words)).toMatch(/^Nothing fits the question\. /);
        return;
      }
      answered++;
      expect(dataIn(await saved(desk, page, 'Save this page'))).toBe(JSON.stringify(manifestOf(known, outcome)));
    }),
    { numRuns: RUNS },
  );
  expect(answered).toBeGreaterThan(RUNS / 3);
  expect(desk.complaints).toEqual([]);
});

const RUNS = runs(10, 200);

/** The question, or why it is refused as the page says it. */
function readOrRefused(asked: Readonly<Record<string, unknown>>): Question | string {
  try {
    const read = readAsked({ asked });
    spaceOf(read);
    return read;
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const words = error.message.replace(/^the question:\d+:\d+: /, '');
    return `${words[0]!.toUpperCase()}${words.slice(1)}.`;
  }
}
