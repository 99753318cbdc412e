import type { Structure } from '../../structure/catalogue/catalogue.js';
import { html } from '../html/html.js';

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
a { color: inherit; } p, dl { max-width: 52rem; } h2 { margin: 2.5rem 0 .3rem; }
nav ul { columns: 14rem; padding-left: 1.2rem; }
dl { display: grid; grid-template-columns: max-content 1fr; gap: .15rem 1rem; margin: .4rem 0 .8rem; }
dt { color: var(--quiet); } dd { margin: 0; }
img { display: block; width: 100%; height: auto; border: 1px solid var(--rule); }
img.draft { width: auto; max-width: 100%; max-height: 26rem; background: #fff; }
:focus-visible { outline: 3px solid currentcolor; outline-offset: 2px; }`;

/** The page that shows every structure with the same order laid on it. */
export function structuresPage(sheets: readonly Sheet[], motif: string): string {
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
together, by unit, by thread, nested. Each structure has its draft, its floats and a sheet that begins with the weave as
its weavers know it.</p>
<nav aria-label="Structures"><ul>${sheets.map(({ structure, file }) => html`<li><a href="#${idOf(file)}">${structure.name}</a></li>`)}</ul></nav>
<main>
${sheets.map(
  ({ structure, file, draft }) => html`<section aria-labelledby="${idOf(file)}">
<h2 id="${idOf(file)}">${structure.name}</h2>
<p>${structure.about}</p>
<dl>
<dt>Shafts</dt><dd>${structure.shafts}${structure.withBlocks && ', more for more blocks'}</dd>
<dt>Floats</dt><dd>${structure.floatLaw}</dd>
<dt>Colour</dt><dd>${structure.colour}</dd>
<dt>Enlarging</dt><dd>${structure.scale}</dd>
</dl>
<p><img class="draft" src="${draft}" loading="lazy" alt="Draft of ${structure.name}: threading, tie-up, treadling and drawdown"></p>
<a href="${file}"><img src="${file}" loading="lazy" alt="Cloths of ${structure.name}, the weave first, then ${motif} laid on it"></a>
</section>
`,
)}</main>
</body>
</html>
`;
  return page.markup;
}

const idOf = (file: string): string => file.replace('.png', '');
