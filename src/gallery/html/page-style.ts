import { LIVE_STYLE } from './page-style-live.js';
import { QUARTER_SIDE, SWATCH_MILLIMETRES } from './scale.js';

/**
 * The style of the page. The background is a neutral grey, so that it shifts no colour of a cloth; nothing moves.
 * Pictures are sized in millimetres: on a screen of 96 pixels per inch, as CSS assumes, cloth is at actual size.
 */
export const STYLE = `
:root { color-scheme: light dark; --ground: #dedede; --ink: #161616; --quiet: #464646; --rule: #6e6e6e; --raised: #eaeaea;
  --focus: #0b3fa8; --caution: #6b1200; --mm: 1mm; --bar: 0px; }
@media (prefers-color-scheme: dark) { :root { --ground: #303030; --ink: #f0f0f0; --quiet: #c4c4c4; --rule: #949494;
  --raised: #3b3b3b; --focus: #a9c8ff; --caution: #ffc9b8; } }
* { box-sizing: border-box; }
html { scroll-padding-top: calc(var(--bar) + .6rem); text-size-adjust: 100%; -webkit-text-size-adjust: 100%; }
body { margin: 0; background: var(--ground); color: var(--ink); font-family: system-ui, sans-serif; line-height: 1.45; }
header, main, footer { max-width: 140rem; margin: 0 auto; padding: 0 clamp(1rem, 3vw, 3rem); }
header { padding-top: .6rem; display: flex; flex-wrap: wrap; align-items: baseline; gap: 0 1.6rem; }
footer { padding-bottom: 4rem; }
h1 { font-size: clamp(1.2rem, 1.05rem + .6vw, 1.6rem); line-height: 1.2; margin: 0; font-weight: 650; overflow-wrap: anywhere; }
.under { flex-basis: 100%; font-size: .88rem; display: flex; flex-wrap: wrap; align-items: baseline; gap: 0 1.2rem; }
.under p { margin: .15rem 0; }
.under details[open] { flex-basis: 100%; order: 1; }
bdi { overflow-wrap: anywhere; min-width: 0; }
h2 { font-size: 1.3rem; margin: 1.8rem 0 .3rem; font-weight: 650; }
h3 { font-size: 1.05rem; margin: 0 0 .35rem; display: flex; align-items: baseline; gap: .6rem; font-weight: 400; }
h4 { font-size: 1rem; margin: 1.3rem 0 .4rem; font-weight: 650; }
p { margin: .4rem 0; max-width: 52rem; }
a { color: inherit; text-underline-offset: .15em; }
dl, dd, dt { margin: 0; }
:focus-visible { outline: 3px solid var(--focus); outline-offset: 2px; }
.quiet { color: var(--quiet); }
.caution { color: var(--caution); font-weight: 600; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.skip { position: absolute; left: -99rem; }
.skip:focus { left: 1rem; top: .5rem; padding: .4rem .8rem; background: var(--raised); }
.yarns { list-style: none; display: flex; flex-wrap: wrap; gap: .1rem 1.2rem; margin: .15rem 0; padding: 0; min-width: 0; }
.yarns li { display: flex; align-items: center; gap: .4rem; min-width: 0; }
.yarns svg { width: 1.6rem; height: 1rem; border: 1px solid var(--rule); flex: none; }
.asked { display: grid; grid-template-columns: minmax(7rem, max-content) minmax(0, 44rem); gap: .25rem 1.2rem; }
.asked dt { color: var(--quiet); }
.asked dd { overflow-wrap: anywhere; }
summary { cursor: pointer; padding: .3rem 0; min-height: 24px; width: fit-content; text-decoration: underline;
  text-underline-offset: .2em; text-decoration-color: var(--rule); }
summary:hover { text-decoration-color: currentColor; }
.cards { list-style: none; margin: .8rem 0 0; padding: 0; display: grid; gap: 2.4rem 2.2rem;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, calc(${SWATCH_MILLIMETRES} * var(--mm))), 1fr)); }
.card { min-width: 0; scroll-margin-top: 1rem; }
.card:has(> details[open]) { grid-column: 1 / -1; }
.card:target > h3 { text-decoration: underline; text-decoration-thickness: 3px; text-underline-offset: .25em; }
.card > p, .card > .short { max-width: 26rem; font-size: .94rem; }
.cloth { margin: 0 0 .5rem; }
.cloth img { display: block; width: calc(${SWATCH_MILLIMETRES} * var(--mm)); height: calc(${SWATCH_MILLIMETRES} * var(--mm)); max-width: none; background: var(--raised); outline: 1px solid var(--rule); }
.beside { display: flex; gap: .8rem; align-items: flex-start; max-width: 26rem; font-size: .94rem; }
.beside img { display: block; flex: none; width: calc(${QUARTER_SIDE} * var(--mm)); height: calc(${QUARTER_SIDE} * var(--mm)); background: var(--raised); }
.beside p { margin: -.25rem 0 0; }
.rank { font-size: 1.35rem; font-weight: 650; font-variant-numeric: tabular-nums; }
.code { font-family: ui-monospace, monospace; text-decoration: none; padding: 0 .1rem; }
.code:hover { text-decoration: underline; }
.remark, .tick { display: none; }
.recipe { font-weight: 600; overflow-wrap: anywhere; }
.short { margin: .4rem 0; }
.short div { display: flex; gap: .5rem; }
.short dt { flex: none; color: var(--quiet); }
.short dd { min-width: 0; overflow-wrap: anywhere; }
.draft { overflow-x: auto; max-width: 100%; width: fit-content; background: #fff; padding: .6rem; margin: .6rem 0; }
.draft svg { display: block; }
.figures { display: grid; gap: .5rem 2.5rem; grid-template-columns: repeat(auto-fill, minmax(min(100%, 24rem), 1fr)); }
.figures div { display: grid; grid-template-columns: minmax(0, 9.5rem) minmax(0, 1fr); gap: 0 .8rem; align-content: start; }
.figures dt { font-weight: 600; }
.figures dd { font-variant-numeric: tabular-nums; overflow-wrap: anywhere; }
.figures dd.quiet { grid-column: 1 / -1; font-size: .9rem; }
.rule { display: none; }
@media (max-width: 30rem) {
  .asked { grid-template-columns: minmax(0, 1fr); gap: 0; }
  .asked dd { margin-bottom: .45rem; }
}
${LIVE_STYLE}
@media (forced-colors: active) { .card img, .yarns svg, .draft { forced-color-adjust: none; } }
@media print {
  @page { margin: 10mm; }
  :root { color-scheme: light; --mm: 1mm !important; --ground: #fff; --ink: #000; --quiet: #333; --rule: #777; --raised: #fff; --caution: #000; }
  html { font-size: 9pt; }
  header, main, footer { max-width: none; padding: 0; }
  h1 { font-size: 15pt; }
  h2 { font-size: 12pt; margin: 4mm 0 2mm; }
  .skip, .screen, summary, .twins, .words, .also, .beside img, .short div:last-child { display: none; }
  .on-paper div:last-child { display: flex; }
  .cards { display: grid; grid-template-columns: repeat(3, 56mm); gap: 4mm; justify-content: space-between; }
  .card { break-inside: avoid; }
  .cloth { width: 56mm; height: 56mm; overflow: hidden; margin-bottom: 1mm; }
  .cloth img, .cloth canvas { print-color-adjust: exact; }
  .card > p, .beside, .card > .short { font-size: 8pt; margin: .4mm 0; line-height: 1.2; }
  .yarns svg { print-color-adjust: exact; }
  h3 { margin-bottom: 1mm; }
  .remark { display: block; flex: 1; border-bottom: .2mm solid var(--rule); }
  .tick { display: block; width: 4.5mm; height: 4.5mm; border: .4mm solid #000; }
  .rule { display: block; width: 100mm; border: solid #000; border-width: 0 .3mm .3mm; padding: 0 1mm; margin-top: 3mm; }
  h2, .figures div, .draft { break-inside: avoid; break-after: avoid; }
}
`;
