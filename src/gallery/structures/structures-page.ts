import { AT_THE_LOOM, draftSeenInWords } from '../../draft/point-of-view.js';
import { families, type Structure } from '../../structure/catalogue/catalogue.js';
import { capital } from '../../words/counts.js';
import { html, type Safe } from '../html/html.js';

/** A structure and the files of its sheet and its draft, beside the page. */
interface Sheet {
  readonly structure: Structure;
  readonly file: string;
  readonly draft: string;
}

const STYLE = `:root { color-scheme: light dark; --ground: #dedede; --ink: #161616; --quiet: #464646; --rule: #8a8a8a; }
@media (prefers-color-scheme: dark) { :root { --ground: #303030; --ink: #f0f0f0; --quiet: #c4c4c4; } }
body { margin: 0 auto; padding: 1rem clamp(1rem, 3vw, 3rem) 4rem; max-width: 76rem; background: var(--ground);
  color: var(--ink); font-family: system-ui, sans-serif; line-height: 1.45; }
a { color: inherit; } p, dl { max-width: 46rem; } h2 { margin: 3.5rem 0 .3rem; padding-top: .6rem; border-top: 2px solid var(--rule); }
h3 { margin: 2.2rem 0 .3rem; font-size: 1.25rem; } nav dl { max-width: none; } nav dt { color: var(--ink); font-weight: 600; } nav a { white-space: nowrap; }
.weave { display: flex; flex-wrap: wrap; gap: 1rem 2.5rem; align-items: flex-start; margin: .4rem 0 .8rem; }
.weave dl { flex: 1 1 24rem; margin: 0; } .weave .draft { flex: 0 1 auto; }
.sheet { display: block; overflow-x: auto; } .sheet img { min-width: 38rem; }
dl { display: grid; grid-template-columns: max-content 1fr; gap: .15rem 1rem; margin: .4rem 0 .8rem; }
dt { color: var(--quiet); } dd { margin: 0; }
img { display: block; width: 100%; height: auto; border: 1px solid var(--rule); }
img.draft { width: auto; max-width: 100%; max-height: 30rem; background: #fff; }
:focus-visible { outline: 3px solid currentcolor; outline-offset: 2px; }
@media (max-width: 40rem) { dl { grid-template-columns: 1fr; gap: 0; } dd { margin: 0 0 .4rem; } }`;

/** The page that shows every structure, family by family, with the same order laid on it. */
export function structuresPage(sheets: readonly Sheet[], motif: string): string {
  const own = families.map((family) => ({
    ...family,
    sheets: sheets.filter(({ structure }) => family.structures.includes(structure)),
  }));
  const page = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>One order, ${sheets.length} weaves</title>
<style>${STYLE}</style>
</head>
<body>
<h1>One order, ${sheets.length} weaves</h1>
<p>The same five-end order, ${motif}, dark and light, laid on every structure: as block order, with blocks and colours
together, by unit, by thread, nested. Each structure has its draft, its treadlings, its floats, and a sheet that begins
with the weave as its weavers know it, and ends with the cloths that have names on it.</p>
<p>${capital(draftSeenInWords(AT_THE_LOOM))}: as a weaver sees it at the loom. A filled square of the tie-up is a shaft
that rises. Units are marked by heavier lines; fine picks in the colour bar are plain weave between pattern picks.</p>
<nav aria-label="Structures"><dl>
${own.map(({ title, sheets: of }) => html`<dt>${title}</dt><dd>${of.map(({ structure, file }, at) => html`${at > 0 && '\u00a0· '}<a href="#${idOf(file)}">${structure.name}</a>`)}</dd>\n`)}</dl></nav>
<main>
${own.map(({ title, about, sheets: of }) => html`<h2>${title}</h2>\n<p>${about}</p>\n${of.map((sheet) => section(sheet, motif))}`)}</main>
</body>
</html>
`;
  return page.markup;
}

/** One structure: what there is to know before it is threaded, its draft, its sheet. */
function section({ structure, file, draft }: Sheet, motif: string): Safe {
  const { name, about, shafts, blocks, withBlocks, tabby, tieUp, manners, floatLaw, colour, scale, source } = structure;
  const plain = tabby?.map((treadle) => tieUp[treadle]!.join(' ')).join(' against ') ?? 'not right across';
  return html`<section aria-labelledby="${idOf(file)}">
<h3 id="${idOf(file)}">${name}</h3>
<p>${about}</p>
<div class="weave">
<dl>
<dt>Shafts</dt><dd>${shafts}${withBlocks && ', more for more blocks'}</dd>
${blocks.length > 1 && html`<dt>Blocks</dt><dd>${blocks.join(' ')}</dd>\n`}<dt>Plain weave</dt><dd>${plain}</dd>
<dt>Treadled</dt><dd>${manners.map((manner, at) => html`${at > 0 && '; '}${manner.name}${manner.about && ` (${lower(manner.about)})`}`)}</dd>
<dt>Floats</dt><dd>${floatLaw}</dd>
<dt>Colour</dt><dd>${colour}</dd>
<dt>Enlarging</dt><dd>${scale}</dd>
<dt>After</dt><dd>${source}</dd>
</dl>
<img class="draft" src="${draft}" loading="lazy" alt="Draft of ${name}: threading, tie-up, treadling and drawdown">
</div>
<a class="sheet" href="${file}"><img src="${file}" loading="lazy" alt="Cloths of ${name}, the weave first, then ${motif} laid on it"></a>
</section>
`;
}

/** A sentence within brackets. */
const lower = (sentence: string): string => `${sentence[0]!.toLowerCase()}${sentence.slice(1).replace(/\.$/, '')}`;

const idOf = (file: string): string => file.replace('.png', '');
