import type { Yarn } from '../../colour/yarn.js';
import type { Question } from '../../search/question/question.js';
import { floatRemedyInWords } from '../../search/report/remedy-words.js';
import type { Outcome } from '../../search/strategy/outcome.js';
import { type Hole, html, type Safe } from './html.js';
import { askedOf, nearestPair, rankingInWords, titleOf } from './page-asked.js';
import { countsOf } from './page-counts.js';

/** The head of a gallery: title, yarns, ranking, the question, and what became of every candidate. */
export function headerOf(question: Question, outcome: Outcome, sheets: readonly string[]): Safe {
  const value = nearestPair(question.yarns);
  const remedy = floatRemedyInWords(question, outcome);
  return html`<h1><bdi>${titleOf(question)}</bdi></h1>
${yarnList(question.yarns)}
<div class="under">
<p class="ranking">${rankingInWords(question)}.</p>
<p class="screen links">${sheets.length > 0 && html`${sheetLinks(sheets)} · `}<a href="#before">Before you weave</a></p>
<details class="screen asked-fold"><summary>Your question, and how many were tried</summary>
<p>${[...countsOf(question, outcome.counts, outcome.found.length), ...(remedy ? [remedy] : [])].join(' ')}</p>
<dl class="asked">
${askedOf(question).map(([thing, asked]) => html`<dt>${thing}</dt><dd>${asked}</dd>\n`)}${
  value && html`<dt>Lightness</dt><dd>${value.words}</dd>\n`
}</dl>
</details>
</div>
<p class="rule">100 mm: measure me</p>
`;
}

/** A link to every contact sheet. */
function sheetLinks(sheets: readonly string[]): Safe {
  const [first, ...others] = sheets;
  return others.length === 0
    ? html`<a href="${first!}">Contact sheet</a>`
    : html`Contact sheets${sheets.map((sheet, at) => html` <a href="${sheet}">${at + 1}</a>`)}`;
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

/** What to mind before weaving. */
export function cautions(yarns: readonly Yarn[]): Safe {
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
