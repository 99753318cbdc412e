import { darkInWords, readsInWords, symmetryInWords } from '../../score/words/figure-words.js';
import type { Found } from '../../search/strategy/outcome.js';
import { capital, plural } from '../../words/counts.js';
import type { Group } from '../manifest/groups.js';
import { type Hole, html, type Safe } from './html.js';
import { floatCaution, floatOf, pictureWords, woundOf } from './page-figures.js';
import { QUARTER_SIDE, SWATCH_MILLIMETRES } from './scale.js';

/** Where the pictures of a cloth are: beside the page, or as data in it. */
export interface CardPictures {
  readonly cloth: string;
  readonly quarter?: string;
}

/** The card of one cloth, for reading and printing without the page's script: picture at true scale, orders, floats. */
export function card({ found, twins }: Group, pictures: (found: Found) => CardPictures): Safe {
  const { cloth, quarter } = pictures(found);
  const { code, rank, scores, equals, draft } = found;
  const caution = floatCaution(scores.floats);
  return html`<li class="card" id="${code}">
<h3><span class="rank">${rank}</span> <a class="code" href="#${code}">${code}</a><span class="remark"></span><span class="tick"></span></h3>
<div class="cloth">${picture(cloth, 'cloth', pictureWords(found, rank))}</div>
<div class="beside">${quarter && picture(quarter, 'quarter', `Cloth ${code} at a quarter of its size`)}
<p class="recipe">${found.recipe}</p></div>
<p class="words">${capital([darkInWords(scores), ...symmetryInWords(scores, draft)].join('; '))}.</p>
<p class="words why">${capital(found.why)}.</p>
<dl class="short">
${woundOf(draft).map(([name, order]) => pair(name, order))}
${pair('from a distance', readsInWords(scores))}
${pair('longest float', floatOf(scores.floats, draft))}
</dl>
${caution && html`<p class="caution">${caution}</p>`}
${equals > 0 && html`<p class="quiet also">Also woven by ${equals} other ${plural(equals, 'order')}.</p>`}
${twins.length > 0 && twinList(twins, pictures)}
</li>`;
}

function twinList(twins: readonly Found[], pictures: (found: Found) => CardPictures): Safe {
  return html`<details class="twins"><summary>${twins.length} near ${plural(twins.length, 'twin')}</summary>
<p class="quiet">Each looks nearly the same as the cloth above, and keeps its own rank.</p>
<ul class="cards">
${twins.map((found) => card({ found, twins: [] }, pictures))}
</ul></details>`;
}

/** A picture that is loaded when it comes into view; the style gives its size. */
function picture(path: string, size: 'cloth' | 'quarter', words: string): Safe {
  const side = Math.round(((size === 'cloth' ? SWATCH_MILLIMETRES : QUARTER_SIDE) / 25.4) * 96);
  return html`<img src="${path}" alt="${words}" width="${side}" height="${side}" loading="lazy" decoding="async">`;
}

function pair(name: string, value: Hole): Safe {
  return html`<div><dt>${name}</dt><dd>${value}</dd></div>`;
}
