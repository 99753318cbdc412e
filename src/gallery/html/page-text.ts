import { seenInWords } from '../../draft/point-of-view.js';
import { lengthInWords } from '../../score/words/figure-words.js';
import type { Question } from '../../search/question/question.js';
import type { Found, Outcome } from '../../search/strategy/outcome.js';
import { groupsOf } from '../manifest/groups.js';
import { html, type Safe, safe } from './html.js';
import { titleOf } from './page-asked.js';
import { type CardPictures, card } from './page-card.js';
import { cautions, headerOf } from './page-header.js';
import { STYLE } from './page-style.js';
import { SWATCH_MILLIMETRES } from './scale.js';

/** What a page is made of, beside its words. */
export interface PageParts {
  /** The content security policy. */
  readonly policy: string;
  readonly script: string;
  /** The program that writes the page, with its version. */
  readonly program: string;
  /** What the script works on: gallery.json, packed; empty for a page without a gallery. */
  readonly packed: string;
}

/** A gallery in a page. */
export interface Shown {
  readonly question: Question;
  readonly outcome: Outcome;
  /** File names of the contact sheets beside the page. */
  readonly sheets: readonly string[];
  readonly pictures: (found: Found) => CardPictures;
  /** Where every figure of the cloths is, for a reader without the script. */
  readonly figures: string;
}

/**
 * The text of a page: a gallery that can be read and printed, which its script makes interactive, or no gallery and the
 * script alone. Text from a draft or a question is always escaped.
 */
export function pageText({ policy, script, program, packed }: PageParts, shown?: Shown): string {
  const title = shown === undefined ? 'shedlight' : `${titleOf(shown.question)} · shedlight gallery`;
  const page = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="generator" content="${program}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>${safe(STYLE)}</style>
</head>
<body>
<a class="skip" href="#cloths">To the cloths</a>
<header>
${shown === undefined ? html`<h1>shedlight</h1>` : headerOf(shown.question, shown.outcome, shown.sheets)}</header>
<main>
<h2 class="unseen">The cloths</h2>
${shown === undefined ? html`<p class="screen">This page needs its script, which is not running.</p>` : still(shown)}</main>
<footer id="before">
<h2>Before you weave</h2>
${cautions(shown?.question.yarns ?? [])}
</footer>
<script type="text/plain" id="gallery">${packed}</script>
<script>${safe(script)}</script>
</body>
</html>
`;
  return page.markup;
}

/** The cloths as they stand in a page whose script does not run. */
function still({ question, outcome, pictures, figures }: Shown): Safe {
  const groups = groupsOf(outcome.found);
  const width = lengthInWords(SWATCH_MILLIMETRES, question.sett);
  return html`<p class="screen quiet">The large pictures are at actual size on a screen of 96 points to the inch, ${width} of cloth as woven; the
small ones at a quarter of it, as from four times as far; ${seenInWords(question.seen)}. Drafts and comparisons need the script of this page, which is not running; ${figures} has every figure.</p>
<div id="cloths" tabindex="-1">
${
  groups.length > 0
    ? html`<ul class="cards">\n${groups.map((group) => card(group, pictures))}\n</ul>`
    : html`<p>No cloth fits the question. Ask for longer floats, more orders or other structures.</p>`
}
</div>
`;
}
