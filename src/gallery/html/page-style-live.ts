/** The style of everything that the script adds: toolbar, panel, dialogs, painted cards. */
export const LIVE_STYLE = `
[hidden] { display: none !important; }
.is-alive main > p.screen { display: none; }
button, select, input, textarea { font: inherit; color: inherit; }
button, select, input[type=number], input[type=text], input[type=search], textarea { background: var(--raised);
  border: 1px solid var(--rule); border-radius: 3px; min-height: 2rem; padding: .15rem .6rem; }
button { cursor: pointer; }
button:hover:not(:disabled) { border-color: currentColor; }
button:disabled { color: var(--quiet); cursor: default; border-style: dashed; }
button[aria-pressed=true] { background: var(--ink); color: var(--ground); border-color: var(--ink); }
input[type=checkbox] { width: 1.15rem; height: 1.15rem; margin: 0; accent-color: var(--ink); }
input[type=range] { accent-color: var(--ink); height: 2rem; margin: 0; }
[aria-invalid=true] { outline: 2px solid var(--caution); }
.bench { position: sticky; top: 0; z-index: 2; display: flex; flex-wrap: wrap; align-items: center; gap: .35rem 1.3rem;
  background: var(--ground); border-bottom: 1px solid var(--rule); padding: .5rem 0; font-size: .94rem; }
.bench label, .controls label { display: flex; align-items: center; gap: .5rem; }
.bench output { min-width: 5rem; font-variant-numeric: tabular-nums; }
.bench .step-back { width: 8rem; }
.bench select { width: 10rem; }
.bench .find { width: 9rem; }
.bench .count { margin: 0 0 0 auto; font-weight: 600; }
.ticked { display: flex; align-items: center; gap: .45rem; min-height: 1.5rem; }
.set-screen[open] { flex-basis: 100%; }
.set-screen summary { font-size: .9rem; }
.ruler { display: flex; justify-content: space-between; border: solid currentColor;
  border-width: 0 1px 1px; padding: 0 .3rem; margin: .3rem 0; }
.floor { display: grid; gap: 0 2.4rem; grid-template-columns: minmax(0, 1fr); align-items: start; }
.panel { font-size: .94rem; padding-top: .6rem; }
.panel fieldset { border: 0; margin: 0 0 .9rem; padding: 0; min-width: 0; }
.panel legend { font-weight: 650; padding: 0 0 .2rem; }
.panel fieldset label { display: grid; grid-template-columns: minmax(0, 1fr) 5.5rem; align-items: center; gap: .6rem; padding: .1rem 0; }
.panel fieldset .ticked { display: flex; }
.panel fieldset .ticked input { width: 1.15rem; }
.panel fieldset label:has(select) { grid-template-columns: 5.5rem minmax(0, 1fr); }
.panel select { max-width: 100%; min-width: 0; }
.panel input { width: 100%; min-width: 0; }
.ways { display: flex; flex-wrap: wrap; gap: .35rem; margin-bottom: .9rem; }
.panel > p { margin: .3rem 0; }
.is-alive .card { content-visibility: auto; contain-intrinsic-size: auto 40rem; }
.is-alive .cloth { cursor: zoom-in; }
.cloth canvas { display: block; background: var(--raised); }
.is-looked-at .beside img { display: none; }
.tools { display: flex; flex-wrap: wrap; align-items: center; gap: .3rem .6rem; margin: 0 0 .6rem; font-size: .88rem; }
.tools button { min-height: 1.65rem; padding: 0 .55rem; background: none; }
.tools button[aria-pressed=true] { background: var(--ink); }
.card > .marks { font-weight: 600; overflow-wrap: anywhere; }
.is-kept > h3 .rank::after { content: ' ✓'; }
.box { width: min(100% - 1rem, 92rem); max-width: none; height: calc(100% - 1rem); max-height: none; margin: auto; padding: 0;
  border: 1px solid var(--rule); background: var(--ground); color: var(--ink); }
.box::backdrop { background: rgb(0 0 0 / .55); }
.box[open] { display: flex; flex-direction: column; }
.box-head { display: flex; align-items: center; justify-content: space-between; gap: 1rem; padding: .6rem 1.2rem; border-bottom: 1px solid var(--rule); }
.box-head h2 { margin: 0; font-size: 1.2rem; }
.box-head h2:focus { outline: none; }
.box-body { overflow: auto; padding: 1rem 1.2rem 3rem; flex: 1; }
.box h3 { display: block; font-weight: 650; margin: 1.4rem 0 .4rem; }
.closer .box-body { display: grid; gap: 1.5rem 3rem; grid-template-columns: minmax(0, 1fr); align-content: start; }
.controls { display: flex; flex-wrap: wrap; align-items: center; gap: .5rem 1.2rem; margin: .3rem 0 .8rem; }
.neighbours { display: flex; gap: .5rem; }
.outlining { display: flex; align-items: center; gap: .5rem; }
.outlining input[type=number] { width: 4.5rem; }
.large { overflow: hidden; max-width: 100%; }
.figure { position: relative; width: fit-content; max-width: 100%; overflow: hidden; line-height: 0; }
.figure canvas { display: block; max-width: none; }
.figure .by-cells { image-rendering: pixelated; }
.figure svg { position: absolute; left: 0; top: 0; fill: none; }
.figure .halo { stroke: #fff; stroke-width: 3.5px; vector-effect: non-scaling-stroke; }
.figure .line { stroke: #c2185b; stroke-width: 1.5px; vector-effect: non-scaling-stroke; }
.keeping { display: flex; flex-wrap: wrap; gap: .5rem 1rem; align-items: start; }
.mark-fields { display: flex; flex-wrap: wrap; gap: .4rem 1rem; align-items: start; }
.mark-fields label { display: flex; gap: .5rem; align-items: center; }
.mark-fields textarea { width: min(20rem, 70vw); }
.command { max-width: 40rem; }
.command code { display: block; background: var(--raised); border: 1px solid var(--rule); padding: .5rem .7rem; overflow-wrap: anywhere;
  font-size: .86rem; margin-bottom: .4rem; }
.copying { display: inline-flex; flex-wrap: wrap; gap: .6rem; align-items: center; }
.orders div { display: grid; grid-template-columns: minmax(0, 6.5rem) minmax(0, 1fr); gap: .8rem; padding: .15rem 0; }
.orders dt { font-weight: 600; }
.orders dd { white-space: pre-line; overflow-wrap: anywhere; columns: 15rem; font-variant-numeric: tabular-nums; }
.small-cloths, .kept-cloths, .bars { list-style: none; margin: 0; padding: 0; }
.small-cloths { display: flex; flex-wrap: wrap; gap: 1rem 1.4rem; }
.small-cloths li { width: 11rem; font-size: .88rem; }
.kept-cloths li { display: flex; flex-wrap: wrap; gap: .4rem 1.2rem; padding: .8rem 0; border-bottom: 1px solid var(--rule); }
.kept-cloths li > div:last-child { flex: 1; min-width: 14rem; display: grid; gap: .5rem; justify-items: start; }
.kept-cloths p { margin: 0; overflow-wrap: anywhere; }
.bars li { display: grid; grid-template-columns: minmax(0, 14rem) minmax(0, 14rem) 4rem; gap: .8rem; align-items: center; padding: .1rem 0; }
.bar-room { background: var(--raised); height: .9rem; }
.bar { display: block; height: 100%; background: var(--ink); }
.beside-one-another { overflow-x: auto; }
.compare table { border-collapse: collapse; }
.compare th, .compare td { text-align: left; vertical-align: top; padding: .3rem 1.2rem .3rem 0; font-weight: 400; max-width: 17rem; overflow-wrap: anywhere; }
.box.compare { width: min(100% - 1rem, 124rem); }
.compare thead th { font-weight: 650; }
.compare tbody th { color: var(--quiet); min-width: 6.5rem; }
.compare .draft { max-width: 15.5rem; margin: 0; }
@media (min-width: 60rem) { .closer .box-body { grid-template-columns: minmax(0, 34rem) minmax(0, 1fr); } }
@media (min-width: 75rem) {
  .floor { grid-template-columns: 17.5rem minmax(0, 1fr); }
  .floor:has(> .panel:not([open])) { grid-template-columns: 9rem minmax(0, 1fr); }
  .panel { position: sticky; top: 3.6rem; max-height: calc(100vh - 4rem); overflow: auto; padding-bottom: 2rem; }
}
@media (max-width: 48rem) {
  .bench { position: static; }
  .bench .count { margin-left: 0; flex-basis: 100%; }
  .bars li { grid-template-columns: minmax(0, 1fr) 4rem; }
  .bars .bar-room { grid-column: 1 / -1; grid-row: 2; }
}
@media print { .is-alive .card { content-visibility: visible; } .floor { display: block; } .box[open] { display: none; } }
`;
