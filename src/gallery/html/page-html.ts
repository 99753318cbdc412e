import { createHash } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import type { Yarn } from '../../colour/yarn.js';
import { lengthInWords } from '../../score/words/figure-words.js';
import type { Question } from '../../search/question/question.js';
import { floatRemedyInWords } from '../../search/report/remedy-words.js';
import type { Outcome } from '../../search/strategy/outcome.js';
import { TABLE } from '../manifest/cloths-table.js';
import { groupsOf } from '../manifest/groups.js';
import { type Manifest, manifestOf } from '../manifest/manifest.js';
import { type Hole, html, type Safe, safe } from './html.js';
import { askedOf, nearestPair, rankingOf, titleOf } from './page-asked.js';
import { card } from './page-card.js';
import { countsOf } from './page-counts.js';
import { STYLE } from './page-style.js';
import { SWATCH_MILLIMETRES } from './scale.js';

/**
 * Makes the page of a gallery: one file that needs no network, with its pictures beside it. Without its script it can
 * be read and printed; `script`, bundled from src/page, makes it interactive. Text from a draft or a question is always
 * escaped.
 *
 * @param sheets file names of the contact sheets beside the page
 * @param manifest what the page's script works on, where it is made already
 */
export function galleryPage(
  question: Question,
  outcome: Outcome,
  script: string,
  sheets: readonly string[] = ['contact-sheet.png'],
  manifest: Manifest = manifestOf(question, outcome),
): string {
  const title = titleOf(question);
  const value = nearestPair(question.yarns);
  const groups = groupsOf(outcome.found);
  const remedy = floatRemedyInWords(question, outcome);
  const page = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy(script)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title} · shedlight gallery</title>
<style>${safe(STYLE)}</style>
</head>
<body>
<a class="skip" href="#cloths">To the cloths</a>
<header>
<h1><bdi>${title}</bdi></h1>
${yarnList(question.yarns)}
<div class="under">
<p class="ranking">${rankingOf(question)}.</p>
<p class="screen">${groups.length > 0 && html`${sheetLinks(sheets)} · `}<a href="#before">Before you weave</a></p>
<details class="screen asked-fold"><summary>Your question, and how many were tried</summary>
<p>${[...countsOf(question, outcome.counts, outcome.found.length), ...(remedy ? [remedy] : [])].join(' ')}</p>
<dl class="asked">
${askedOf(question).map(([thing, asked]) => html`<dt>${thing}</dt><dd>${asked}</dd>\n`)}${
  value && html`<dt>Lightness</dt><dd>${value.words}</dd>\n`
}</dl>
</details>
</div>
<p class="rule">100 mm: measure me</p>
</header>
<main>
<h2 class="unseen">The cloths</h2>
<p class="screen quiet">The large pictures are at actual size on a screen of 96 points to the inch, ${lengthInWords(
    SWATCH_MILLIMETRES,
    question.sett,
  )} of cloth as woven; the small ones at a quarter of it, as from four times as far. End 1 is at the left, the first pick
at the top. Drafts and comparisons need the script of this page, which is not running; ${TABLE} has every figure.</p>
<div id="cloths" tabindex="-1">
${
  groups.length > 0
    ? html`<ul class="cards">\n${groups.map(card)}\n</ul>`
    : html`<p>No cloth fits the question. Ask for longer floats, more orders or other structures.</p>`
}
</div>
</main>
<footer id="before">
<h2>Before you weave</h2>
${cautions(question.yarns)}
</footer>
<script type="text/plain" id="gallery">${packed(JSON.stringify(manifest))}</script>
<script>${safe(script)}</script>
</body>
</html>
`;
  return page.markup;
}

/** A link to every contact sheet. */
function sheetLinks(sheets: readonly string[]): Safe {
  const [first, ...others] = sheets;
  return others.length === 0
    ? html`<a href="${first!}">Contact sheet</a>`
    : html`Contact sheets${sheets.map((sheet, at) => html` <a href="${sheet}">${at + 1}</a>`)}`;
}

/** What the page's script works on, in a sixth of its length: zlib data (RFC 1950) in base 64. */
function packed(text: string): string {
  return deflateSync(text, { level: 9 }).toString('base64');
}

/** The content security policy: only pictures beside the page load (`file:` for browsers without `self` on disk). */
function policy(script: string): string {
  const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  return `default-src 'none'; img-src 'self' file: data:; style-src ${hash(STYLE)}; script-src ${hash(script)}; base-uri 'none'; form-action 'none'`;
}

function yarnList(yarns: readonly Yarn[]): Safe {
  const value = nearestPair(yarns);
  const chip = ({ letter, name, hex }: Yarn): Hole => html`<li>
<svg viewBox="0 0 2 1" preserveAspectRatio="none" aria-hidden="true"><rect width="2" height="1" fill="${hex}"/></svg>
<strong>${letter}</strong> <bdi>${name === letter ? hex : name}</bdi></li>
`;
  return html`<ul class="yarns" aria-label="Yarns">
${yarns.map(chip)}${value?.tooNear && html`<li class="caution">${value.words}</li>`}
</ul>`;
}

function cautions(yarns: readonly Yarn[]): Safe {
  return html`<p>Long floats snag and wear. Judge them by their length at your sett, not by the number of threads: up to
⅜ in (10 mm) for towels and whatever is rubbed, ½ in (13 mm) for most things. Keep long floats and loose ends out of
things for babies, where they can wind round a finger or toe.</p>
${
  yarns.length > 1 &&
  html`<p>Wash a piece of the dark and the light yarn together before you begin: colour that bleeds spoils a pattern of
light and dark.</p>`
}
<p>Weave a sample. Blooming and shrinking in the wash, the beat, and how two wefts turn at the edge are not in these
pictures.</p>
<p>If the cloth is for sale, for children or for a public place, look up the rules that hold where you are, for
burning, safety and labels: they go before anything said here.</p>`;
}
