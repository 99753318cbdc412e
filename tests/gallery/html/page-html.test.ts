import { createHash } from 'node:crypto';
import { inflateSync } from 'node:zlib';
import { wcagContrast } from 'culori';
import { describe, expect, test } from 'vitest';
import { galleryPage } from '../../../src/gallery/html/page-html.js';
import { STYLE } from '../../../src/gallery/html/page-style.js';
import { manifestOf } from '../../../src/gallery/manifest/manifest.js';
import type { Question } from '../../../src/search/question/question.js';
import type { Found, Outcome } from '../../../src/search/strategy/outcome.js';
import { FIVES, foundOf, HOUNDS_TOOTH, LOG_CABIN, trialOutcome, trialQuestion, WIDE, YARNS } from '../trial.js';

const SLY = '<img src=x onerror="alert(1)">';
const outcome = trialOutcome();
const SCRIPT = 'void 0;';
const shownPage = (question: Question, shown: Outcome): string => galleryPage(question, shown, SCRIPT);
const page = shownPage(trialQuestion(), outcome);

function outcomeOf(found: readonly Found[]): Outcome {
  return { ...outcome, found };
}

describe('the page of a gallery', () => {
  test('is the same for the same gallery', () => {
    expect(shownPage(trialQuestion(), trialOutcome())).toBe(page);
  });

  test('asks for nothing but the pictures beside it, and runs its own script alone', () => {
    const asked = [...page.matchAll(/\b(?:src|href|srcset|action|data)="([^"]*)"/g)].map(([, to]) => to!);
    for (const to of asked)
      expect(to).toMatch(/^(#[a-z0-9]+|swatches\/[a-z0-9]+(-quarter)?\.png|contact-sheet(-\d+)?\.png)$/);
    expect(page.match(/<script\b[^>]*>/g)).toEqual(['<script type="text/plain" id="gallery">', '<script>']);
    const hash = createHash('sha256').update(SCRIPT).digest('base64');
    expect(page).toContain(`script-src 'sha256-${hash}'`.replace(/'/g, '&#39;'));
    expect(page).not.toMatch(/<link|@import|url\(|\bon[a-z]+=|javascript:/i);
    expect(page).toContain(`default-src 'none'; img-src 'self' file: data:; style-src 'sha256-`.replace(/'/g, '&#39;'));
  });

  test('says what was asked, what became of every candidate, and how they are ranked', () => {
    expect(page).toContain('<h1><bdi>2/2 twill: colour orders of 2 to 6 elements</bdi></h1>');
    expect(page).toContain('1,024 orders can be written');
    expect(page).toContain('48 candidates were tried. Every one was tried: nothing is missing.');
    expect(page).toContain('24 different cloths; 6 more weave one of these again');
    expect(page).toContain('5 for a float above the limit');
    expect(page).toContain('12 because their texture is too fine');
    expect(page).toContain('Ranked by contrast ×3, symmetry ×2 and short floats ×1.');
    expect(page).toContain('D and L are 74 of 100 apart in lightness: strong');
  });

  test('says where a space was only sampled', () => {
    const sampled = { ...outcome, counts: { ...outcome.counts, exhaustive: false } };
    expect(shownPage(trialQuestion(), sampled)).not.toContain('nothing is missing');
    expect(shownPage(trialQuestion(), sampled)).toContain('the best found were varied');
  });

  test('says what was cut off unmeasured, and then counts only the others', () => {
    const cut = { ...outcome, counts: { ...outcome.counts, cutOff: 9 } };
    expect(shownPage(trialQuestion(), cut)).toContain('9 are proved not to reach those shown');
    expect(shownPage(trialQuestion(), cut)).toContain('The others weave 24 different cloths');
    expect(page).not.toContain('could not come among');
  });

  test('shows each cloth with its code, picture and orders in letters', () => {
    for (const { code, rank } of outcome.found) {
      expect(page).toContain(`id="${code}"`);
      expect(page).toContain(`src="swatches/${code}.png" alt="Cloth ${rank} as woven: `);
    }
    expect(page).toContain('<dt>warp and weft</dt><dd>D4 L4</dd>');
    expect(page).toContain('<dt>longest float</dt><dd>2 threads (0.10 in)</dd>');
    expect(page).toContain('Also woven by 3 other orders.');
  });

  test('holds all that its script works on, packed', () => {
    const [, data] = /<script type="text\/plain" id="gallery">([^<]+)</.exec(page)!;
    const unpacked = inflateSync(Buffer.from(data!, 'base64')).toString('utf8');
    expect(JSON.parse(unpacked)).toEqual(manifestOf(trialQuestion(), outcome));
  });

  test('puts near twins behind the best of their kind, each with its own rank', () => {
    const [best, other, twin] = [foundOf(LOG_CABIN, 1), foundOf(HOUNDS_TOOTH, 2), foundOf(FIVES, 3)];
    const last = foundOf(WIDE, 4);
    // The last names a twin that is itself behind the best.
    const found = [best, other, { ...twin, nearTwin: best.code }, { ...last, nearTwin: twin.code }];
    const shown = shownPage(trialQuestion(), outcomeOf(found));
    expect(shown.split('<details class="twins">').length).toBe(2);
    expect(shown).toContain('2 near twins');
    const order = [...shown.matchAll(/<span class="rank">(\d+)<\/span>/g)].map(([, rank]) => Number(rank));
    expect(order).toEqual([1, 3, 4, 2]);
  });

  test('tells pattern picks and tabby apart in the weft order', () => {
    const woven = { ...HOUNDS_TOOTH, weft: [0, 1, 0, 1, 1, 1, 1, 1] };
    const kinds = woven.weft.map((_, j) => (j % 2 === 0 ? ('pattern' as const) : ('tabby' as const)));
    const shown = shownPage(trialQuestion(), outcomeOf([foundOf({ ...woven, pickKinds: kinds }, 1)]));
    expect(shown).toContain('<dt>weft</dt><dd>DDLL, tabby L</dd>');
  });

  test('cautions where a float is long, and in any case against long floats near babies and colour that bleeds', () => {
    const { scores } = outcome.found[0]!;
    const long = (longestMm: number) => ({
      ...outcome.found[0]!,
      scores: { ...scores, floats: { ...scores.floats, longestMm } },
    });
    expect(page).not.toContain('The longest float is over');
    expect(shownPage(trialQuestion(), outcomeOf([long(11)]))).toContain('over ⅜ in (10 mm)');
    expect(shownPage(trialQuestion(), outcomeOf([long(20)]))).toContain('over ½ in (13 mm)');
    expect(page).toMatch(/things for babies/);
    expect(page).toMatch(/Wash a piece of the dark and the light yarn together/);
    expect(page).toMatch(/rules that hold where you are/);
  });

  test('warns of yarns that the eye cannot tell apart (PRACTICE 1.8: red and green of equal value)', () => {
    const yarns = [
      { letter: 'D', name: 'red', hex: '#c0392b' },
      { letter: 'L', name: 'green', hex: '#2e8b57' },
    ];
    expect(shownPage(trialQuestion({ yarns }), outcome)).toContain(
      'class="caution">D and L are 7 of 100 apart in lightness: will not show',
    );
  });

  test('shows what a person wrote as text, never as markup', () => {
    const yarns = YARNS.map((yarn) => ({ ...yarn, name: SLY }));
    const draft = { ...HOUNDS_TOOTH, name: SLY, yarns };
    const question = trialQuestion({ structures: [], draft: { file: `${SLY}.yaml`, draft }, yarns, treadlings: [SLY] });
    const found = [foundOf(draft, 1, { recipe: SLY, structure: SLY })];
    const shown = shownPage(question, outcomeOf(found));
    expect(shown).toContain('<h1><bdi>&lt;img src=x onerror=&quot;alert(1)&quot;&gt;: colour orders');
    expect(shown.match(/<img\b/g)).toHaveLength(2);
    expect(shown.replace(/&lt;img src=x onerror=/g, '')).not.toMatch(/onerror/);
  });

  test('links every contact sheet', () => {
    const sheets = ['contact-sheet.png', 'contact-sheet-2.png'];
    const links = galleryPage(trialQuestion(), trialOutcome(), SCRIPT, sheets).match(/href="contact-sheet[^"]*"/g);
    expect(links).toEqual(['href="contact-sheet.png"', 'href="contact-sheet-2.png"']);
  });

  test('says so where no cloth fits', () => {
    const none = shownPage(trialQuestion(), outcomeOf([]));
    expect(none).toContain('No cloth fits the question');
    expect(none).not.toContain('contact-sheet.png');
  });
});

// WCAG 2.2, success criteria 1.4.3 (text 4.5 : 1) and 1.4.11 (focus and edges of controls 3 : 1).
describe('colours of the page', () => {
  const variables = [...STYLE.matchAll(/:root \{([^}]*)\}/g)].map(([, inside]) =>
    Object.fromEntries([...inside!.matchAll(/--([a-z]+): (#[0-9a-f]+)/g)].map(([, name, hex]) => [name!, hex!])),
  );
  test.each(['light', 'dark', 'print'])('keep their contrast: %s', (scheme) => {
    const colours = variables[['light', 'dark', 'print'].indexOf(scheme)]!;
    for (const ground of [colours.ground!, colours.raised!]) {
      for (const text of ['ink', 'quiet', 'caution']) {
        expect(wcagContrast(colours[text]!, ground)).toBeGreaterThanOrEqual(4.5);
      }
      for (const line of [colours.focus, colours.rule]) {
        if (line) expect(wcagContrast(line, ground)).toBeGreaterThanOrEqual(3);
      }
    }
  });

  test('the ground has no tint', () => {
    for (const { ground, raised } of variables) {
      for (const hex of [ground!, raised!]) expect(hex).toMatch(/^#(([0-9a-f])\2\2|([0-9a-f]{2})\3\3)$/);
    }
  });
});
