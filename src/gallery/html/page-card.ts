import type { Draft } from '../../draft/draft.js';
import { formatOrder, formatRuns, smallestPeriod } from '../../order/order.js';
import { draftSvg } from '../../render/draft-svg.js';
import type { Floats } from '../../score/model/figures.js';
import { darkInWords, readsInWords, symmetryInWords } from '../../score/words/figure-words.js';
import type { Found } from '../../search/strategy/outcome.js';
import { capital, plural } from '../../words/counts.js';
import type { Group } from '../manifest/groups.js';
import { swatchPath } from '../manifest/manifest.js';
import { type Hole, html, type Safe, safe } from './html.js';
import { easeOf, type Figure, figuresOf, floatOf, pictureWords } from './page-figures.js';
import { QUARTER_SIDE, quarterPath } from './page-quarter.js';
import { SWATCH_MILLIMETRES } from './scale.js';

/** Lengths in millimetres above which floats are marked (3/8 in and 1/2 in: common practice, no source). */
const MINDS = 9.525;
const SNAGS = 12.7;

/** The card of one cloth: picture at true scale, what a weaver asks first, and the rest in a fold. */
export function card({ found, twins }: Group): Safe {
  const { code, rank, scores, equals, draft } = found;
  const warp = letters(draft.warp, draft);
  const weft = weftLetters(draft);
  return html`<li class="card" id="${code}">
<h3><span class="rank">${rank}</span> <a class="code" href="#${code}">${code}</a> <span class="remark"></span><span class="tick"></span></h3>
<div class="cloth">${picture(swatchPath(code), 'cloth', pictureWords(found, rank))}</div>
<div class="beside">${picture(quarterPath(code), 'quarter', `Cloth ${code} at a quarter of its size`)}
<p class="recipe">${found.recipe}</p></div>
<p class="words">${capital([darkInWords(scores), ...symmetryInWords(scores, draft)].join('; '))}.</p>
<p class="words why">${capital(found.why)}.</p>
<dl class="short">
${warp === weft ? pair('warp and weft', warp) : [pair('warp', warp), pair('weft', weft)]}
${pair('from a distance', readsInWords(scores))}
${pair('longest float', floatOf(scores.floats, draft))}
</dl>
${floatCaution(scores.floats)}
${equals > 0 && html`<p class="quiet also">Also woven by ${equals} other ${plural(equals, 'order')}.</p>`}
<details class="more"><summary>Draft and all figures<span class="unseen"> of cloth ${rank}</span></summary>
<div class="draft" tabindex="0" role="group" aria-label="Draft of cloth ${rank}; a wide one scrolls sideways">${safe(
    draftSvg(draft, { title: `Draft of cloth ${rank}, code ${code}` }),
  )}</div>
<p class="quiet">Face up, rising shed: the shafts of the tie-up go up. End 1 is at the left, the first pick at the top.</p>
<h4>Figures</h4>
${figureList(figuresOf(found))}
<h4>To weave it</h4>
${figureList(easeOf(found))}
</details>
${twins.length > 0 && twinList(twins)}
</li>`;
}

function twinList(twins: readonly Found[]): Safe {
  return html`<details class="twins"><summary>${twins.length} near ${plural(twins.length, 'twin')}</summary>
<p class="quiet">Each looks nearly the same as the cloth above, and keeps its own rank.</p>
<ul class="cards">
${twins.map((found) => card({ found, twins: [] }))}
</ul></details>`;
}

function figureList(figures: readonly Figure[]): Safe {
  return html`<dl class="figures">
${figures.map(
  ({ name, value, meaning }) => html`<div><dt>${name}</dt><dd>${value}</dd><dd class="quiet">${meaning}</dd></div>
`,
)}</dl>`;
}

/** A picture that is loaded when it comes into view; the style gives its size. */
function picture(path: string, size: 'cloth' | 'quarter', words: string): Safe {
  const side = Math.round(((size === 'cloth' ? SWATCH_MILLIMETRES : QUARTER_SIDE) / 25.4) * 96);
  return html`<img src="${path}" alt="${words}" width="${side}" height="${side}" loading="lazy" decoding="async">`;
}

function pair(name: string, value: Hole): Safe {
  return html`<div><dt>${name}</dt><dd>${value}</dd></div>`;
}

function floatCaution({ longestMm }: Floats): Hole {
  if (longestMm !== null && longestMm <= MINDS) return false;
  const words =
    longestMm !== null && longestMm <= SNAGS
      ? 'The longest float is over ⅜ in (10 mm): it may snag on towels and whatever is rubbed.'
      : 'The longest float is over ½ in (13 mm): it will snag in use. Keep it for hangings, and out of things for babies.';
  return html`<p class="caution">${words}</p>`;
}

/** The weft order in letters; with tabby, the order of the other picks and the yarn of the tabby. */
function weftLetters(draft: Draft): string {
  const { weft, pickKinds, yarns } = draft;
  const tabby = weft.find((_, j) => pickKinds[j] === 'tabby');
  if (tabby === undefined || pickKinds.every((kind) => kind === 'tabby')) return letters(weft, draft);
  const pattern = weft.filter((_, j) => pickKinds[j] !== 'tabby');
  return `${letters(pattern, draft)}, tabby ${yarns[tabby]!.letter}`;
}

/** One repeat of the colours of threads, in letters or in runs, whichever is shorter. */
function letters(strands: readonly number[], { yarns }: Draft): string {
  const repeat = strands.slice(0, smallestPeriod(strands));
  const plain = formatOrder(repeat, yarns);
  const runs = formatRuns(repeat, yarns);
  return runs.length < plain.length ? runs : plain;
}
