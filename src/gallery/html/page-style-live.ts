/** The style of everything that the script adds: toolbar, panel, dialogs, painted cards. */
export const LIVE_STYLE = `
[hidden] { display: none !important; }
button, select, input, textarea { font: inherit; color: inherit; }
button, select, input[type=number], input[type=text], input[type=search], textarea { background: var(--raised);
  border: 1px solid var(--rule); border-radius: 3px; min-height: 2rem; padding: .15rem .6rem; }
::placeholder { color: var(--quiet); opacity: 1; font-style: italic; }
button { cursor: pointer; }
button:hover:not(:disabled) { border-color: currentColor; }
button:disabled { color: var(--quiet); cursor: default; border-style: dashed; }
button[aria-pressed=true] { background: var(--ink); color: var(--ground); border-color: var(--ink); }
input[type=checkbox] { flex: none; width: 1.15rem; height: 1.15rem; margin: 0; accent-color: var(--ink); }
input[type=range] { accent-color: var(--ink); height: 2rem; margin: 0; }
[aria-invalid=true] { outline: 2px solid var(--caution); }
.is-alive header, .is-alive main { padding: 0 clamp(.9rem, 2.4vw, 2.4rem); }
.is-alive header { padding-top: .6rem; }
.bench { position: sticky; top: 0; z-index: 2; display: flex; align-items: center; gap: .3rem 1rem; background: var(--ground);
  border-bottom: 1px solid var(--rule); padding: .3rem 0; font-size: .9rem; }
.bench label, .controls label { display: flex; align-items: center; gap: .4rem; }
.bench button, .bench select, .bench input { min-height: 1.9rem; }
.bench button, .bench p { flex: none; white-space: nowrap; }
.strip { position: relative; display: flex; align-items: center; gap: .3rem 1rem; min-width: 0; overflow-x: auto; padding: 3px; }
.strip label { flex: none; }
.strip .ticked { min-height: 1.9rem; }
.bench .last { display: flex; align-items: center; gap: .5rem; margin-left: auto; flex: none; }
.step-back { width: 6rem; }
label:has(> .step-back) output { min-width: 4rem; font-variant-numeric: tabular-nums; }
.bench select { width: 9.2rem; }
.bench .find { width: 8rem; min-width: 4rem; }
.strip > label:has(> .find) { flex: 0 1 auto; min-width: 0; }
.bench .count { margin: 0; font-weight: 600; }
.ticked { display: flex; align-items: center; gap: .4rem; min-height: 1.5rem; }
.floor { display: grid; gap: 0 1.6rem; grid-template-columns: minmax(0, 1fr); align-items: start; }
.floor > #cloths { grid-column: -2; min-width: 0; }
.floor #cloths:focus, .cards:focus, .panel:focus { outline: none; }
.panel { font-size: .92rem; position: fixed; z-index: 3; inset: 0 auto 0 0; width: min(22rem, 100%); overflow: auto; padding: .8rem 1rem 3rem;
  background: var(--ground); border-right: 1px solid var(--rule); }
.panel-head { display: flex; justify-content: space-between; align-items: start; }
.panel h3 { font-weight: 650; }
.panel fieldset { border: 0; margin: .6rem 0 .9rem; padding: 0; min-width: 0; }
.panel legend { font-weight: 650; padding: 0 0 .2rem; }
.panel fieldset label { display: grid; grid-template-columns: minmax(0, 1fr) 5.5rem; align-items: center; gap: .6rem; padding: .1rem 0; }
.panel fieldset .ticked { display: flex; }
.panel fieldset .ticked input { width: 1.15rem; }
.panel fieldset label:has(select) { grid-template-columns: 6.5rem minmax(0, 1fr); }
.panel select { max-width: 100%; min-width: 0; }
.panel input { width: 100%; min-width: 0; }
.ways { display: flex; flex-wrap: wrap; gap: .35rem; margin: .3rem 0 .6rem; }
.is-alive .cards { overflow-anchor: none; scroll-margin-top: 0; gap: .9rem 20px; justify-content: start;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, var(--side)), var(--side))); }
.is-alive .card { display: flex; flex-direction: column; scroll-margin-top: calc(var(--bar) + .6rem); }
.is-alive .card p { margin: .1rem 0; }
.is-alive .cloth { cursor: zoom-in; margin: 0 0 .3rem; }
.cloth canvas { display: block; background: var(--raised); outline: 1px solid var(--rule); max-width: none; }
.line { display: flex; align-items: center; justify-content: space-between; gap: .2rem .3rem; flex-wrap: wrap; }
.line h3 { margin: 0; gap: .35rem; font-size: .84rem; flex: none; }
.line .rank { font-size: 1rem; }
.line .code { font-size: .8rem; }
.tools { display: flex; align-items: center; gap: .2rem; font-size: .8rem; }
.tools button { min-height: 1.6rem; padding: 0 .28rem; background: none; }
.tools button[aria-pressed=true] { background: var(--ink); }
.card .recipe { font-weight: 400; font-size: .88rem; line-height: 1.3; overflow: hidden; display: -webkit-box; -webkit-box-orient: vertical;
  -webkit-line-clamp: 2; }
.card .caution, .card .marks, .twins-of { font-size: .84rem; }
.card > .marks { font-weight: 600; overflow-wrap: anywhere; }
.twins-of { background: none; border: 0; padding: 0; min-height: 24px; color: var(--quiet); text-decoration: underline; text-align: left; }
.on-paper { display: none; }
.empty { padding: 2rem 0; }
.pages { display: flex; flex-wrap: wrap; gap: .5rem 1.2rem; align-items: center; margin: 1.4rem 0; }
.asks { display: flex; flex-wrap: wrap; gap: .3rem 1rem; align-items: center; margin: .5rem 0 0; }
.bank-card { border: 2px solid currentColor; border-radius: calc(3.18 * var(--mm)); margin: .8rem 0; }
.card-size { display: flex; gap: .8rem; align-items: center; }
.card-size input { width: min(24rem, 100%); }
.card-size output { white-space: nowrap; }
.notice { position: fixed; z-index: 4; inset: auto .8rem .8rem; margin: 0 auto; width: fit-content; display: flex; gap: .4rem .8rem; align-items: center;
  background: var(--ink); color: var(--ground); padding: .4rem .9rem; border-radius: 4px; }
.notice p { margin: 0; overflow-wrap: anywhere; }
.notice button { background: none; border-color: currentColor; flex: none; }
.box { width: min(100% - 1rem, 92rem); max-width: none; height: calc(100% - 1rem); max-height: none; margin: auto; padding: 0;
  border: 1px solid var(--rule); background: var(--ground); color: var(--ink); }
.box::backdrop { background: rgb(0 0 0 / .55); }
.box[open] { display: flex; flex-direction: column; }
.box-head { display: flex; align-items: center; justify-content: space-between; gap: 1rem; padding: .6rem 1.2rem; border-bottom: 1px solid var(--rule); }
.box-head h2 { margin: 0; font-size: 1.2rem; }
.box-head h2:focus { outline: none; }
.box-body { overflow: auto; padding: 1rem 1.2rem 3rem; flex: 1; }
.box h3 { display: block; font-weight: 650; margin: 1.4rem 0 .4rem; }
.closer .box-body { display: grid; gap: .6rem 2.4rem; grid-template-columns: minmax(0, 1fr); align-content: start; }
.controls { display: flex; flex-wrap: wrap; align-items: center; gap: .5rem 1.2rem; margin: .3rem 0 .8rem; }
.neighbours { display: flex; gap: .5rem; }
.outlining { display: flex; align-items: center; gap: .5rem; }
.outlining input[type=number] { width: 4.5rem; }
.telling .draft svg { max-width: 100%; height: auto; }
.looking { position: sticky; top: 0; align-self: start; }
.large { overflow: clip; max-width: 100%; }
.large canvas, .compare canvas, .small-cloths canvas, .kept-cloths canvas { outline: 1px solid var(--rule); outline-offset: -1px; }
.figure { position: relative; width: fit-content; max-width: 100%; overflow: hidden; line-height: 0; }
.figure canvas { display: block; max-width: none; }
.figure .by-cells { image-rendering: pixelated; }
.figure svg { position: absolute; left: 0; top: 0; fill: none; }
.figure .halo { stroke: #fff; stroke-width: 3.5px; vector-effect: non-scaling-stroke; }
.figure .line { stroke: #c2185b; stroke-width: 1.5px; vector-effect: non-scaling-stroke; }
.mark-fields { display: flex; flex-wrap: wrap; gap: .4rem 1rem; align-items: start; }
.mark-fields label { display: flex; gap: .5rem; align-items: center; }
.mark-fields .note { flex: 1; min-width: min(100%, 12rem); max-width: 24rem; }
.mark-fields textarea { flex: 1; width: 100%; min-width: 0; }
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
.kept-cloths li > div:last-child { flex: 1; min-width: 11rem; display: grid; gap: .5rem; grid-template-columns: minmax(0, 1fr); }
.kept-cloths p { margin: 0; overflow-wrap: anywhere; }
.bars li { display: grid; grid-template-columns: minmax(0, 14rem) minmax(0, 14rem) 4rem; gap: .8rem; align-items: center; padding: .1rem 0; }
.bar-room { background: var(--raised); height: .9rem; }
.bar { display: block; height: 100%; background: var(--ink); }
button.saver { border: 0; padding: 0; min-height: 0; background: none; text-decoration: underline; text-underline-offset: .15em; }
.ask-head { position: sticky; top: -1rem; z-index: 1; background: var(--ground); padding: .4rem 0; border-bottom: 1px solid var(--rule); }
.ask-head p, .asked-key p { margin: 0; overflow-wrap: anywhere; max-width: none; }
.ask-said { font-weight: 600; min-height: 1.5em; }
.ask-head progress { width: 100%; }
.ask-fields { display: grid; gap: 1rem 2.4rem; grid-template-columns: minmax(0, 1fr); }
.ask-fields > .caution { grid-column: 1 / -1; }
.ask-fields[inert] { opacity: .55; }
.seldom > div { display: grid; gap: 0 2.4rem; grid-template-columns: minmax(0, 1fr); align-items: start; }
.ask-files { margin: .6rem 0 0; gap: .5rem; }
.too-large { border-left: 4px solid var(--caution); padding-left: .8rem; margin: .6rem 0; }
.welcome { padding: 1rem 0; }
.welcome button { font-size: 1.1rem; padding: .4rem 1.2rem; }
.ask fieldset { border: 0; margin: .8rem 0; padding: 0; min-width: 0; }
.ask legend { font-weight: 650; padding: 0 0 .2rem; }
.structures .all { display: grid; grid-template-columns: repeat(auto-fill, minmax(7rem, 1fr)); gap: .6rem; max-height: 22rem; overflow: auto; margin-top: .5rem; padding: 3px; }
.structure { display: grid; grid-template-columns: auto minmax(0, 1fr); gap: .2rem .4rem; font-size: .84rem; align-content: start; }
.structure .figure { grid-column: 1 / -1; }
.structure:not(:has(.figure))::before { content: ''; grid-column: 1 / -1; height: 72px; }
.structure input { grid-row: 2; }
.structure span { grid-row: 2; }
.structures .chosen { font-weight: 400; }
.own-draft textarea { width: 100%; font-family: ui-monospace, monospace; font-size: .88rem; }
.yarn-rows { list-style: none; margin: 0 0 .5rem; padding: 0; }
.yarn-rows li { display: flex; gap: .5rem; align-items: center; padding: .15rem 0; }
.yarn-rows input[type=text] { min-width: 0; width: 12rem; }
.yarn-rows input[type=color] { width: 2.6rem; height: 2rem; padding: 0; flex: none; border: 1px solid var(--rule); }
.asked-key { padding: .25rem 0; font-size: .92rem; }
.asked-key label { display: grid; grid-template-columns: 9rem minmax(0, 1fr); gap: .6rem; align-items: center; }
.asked-key p { font-size: .84rem; }
.asked-key select { width: 100%; min-width: 0; text-overflow: ellipsis; }
.asked-key > input { width: 100%; margin-top: .3rem; }
.asked-key .ticked { display: flex; }
.asked-key.each { display: flex; flex-wrap: wrap; gap: .3rem 1.2rem; }
.asked-key.each legend { flex-basis: 100%; }
.asked-key.each label { display: flex; }
.asked-key.each select { width: auto; }
fieldset.asked-key { margin: 0; }
.threads { display: inline-flex; flex: none; border: 1px solid var(--rule); }
.threads span { width: 4px; height: .9rem; }
.threads .dark { background: #1f2a44; }
.threads .light { background: #efe6d2; }
.beside-one-another { overflow-x: auto; }
.compare table { border-collapse: collapse; }
.compare th, .compare td { text-align: left; vertical-align: top; padding: .3rem 1.2rem .3rem 0; font-weight: 400; max-width: 17rem; overflow-wrap: anywhere; }
.box.compare { width: min(100% - 1rem, 124rem); }
.compare thead th { font-weight: 650; }
.compare thead button { font-weight: 400; font-size: .84rem; min-height: 1.6rem; }
.compare tbody th { color: var(--quiet); min-width: 6.5rem; max-width: 9rem; }
.compare .draft { max-width: 15.5rem; margin: 0; }
@media (min-width: 60rem) { .ask-fields, .seldom > div { grid-template-columns: repeat(2, minmax(0, 1fr)); } .seldom { grid-column: 1 / -1; }
  .closer .box-body { grid-template-columns: minmax(0, 34rem) minmax(0, 1fr); }
  .closer .looking { max-height: calc(100vh - 6rem); overflow: auto; } }
@media (min-width: 75rem) {
  .floor:has(> .panel:not([hidden])) { grid-template-columns: 18rem minmax(0, 1fr); }
  .panel .close { display: none; }
  .panel { position: sticky; inset: var(--bar) auto auto 0; z-index: 1; width: auto; max-height: calc(100vh - var(--bar)); padding: .8rem .8rem 2rem 0; }
}
@media (max-width: 88rem) { .strip > label:has(> select) > span { position: absolute; width: 1px; height: 1px; overflow: hidden;
  clip-path: inset(50%); } .bench select { width: 8rem; } }
@media (max-width: 60rem) {
  .bench { position: static; flex-wrap: wrap; gap: .3rem .6rem; }
  .strip { flex-basis: 100%; order: 1; flex-wrap: wrap; gap: .3rem .7rem; }
  .bench select { width: 7.2rem; }
  .strip > label:has(> .find) { flex: 1 1 5rem; }
  .bench .find { width: 100%; }
  .closer .looking { position: static; display: contents; }
  .closer .large { position: sticky; top: -1rem; background: var(--ground); padding: .3rem 0; z-index: 1; }
}
@media (max-width: 30rem) {
  .line .beside-others, .bench .last button:disabled { display: none; }
  .bench { gap: .3rem; }
  .strip { gap: .3rem .5rem; }
  .bench select { width: 7.4rem; padding: .15rem .3rem; }
  .step-back { width: 4.2rem; }
  label:has(> .step-back) output { min-width: 3.6rem; }
  .bench button { padding: .15rem .4rem; }
  .bench .last { gap: .35rem; }
  .compare tbody th { min-width: 4.1rem; max-width: 4.1rem; font-size: .74rem; }
  .compare th, .compare td { padding-right: .5rem; }
  .bars li { grid-template-columns: minmax(0, 1fr) 4rem; }
  .bars .bar-room { grid-column: 1 / -1; grid-row: 2; }
}
@media print {
  .is-alive .cards { grid-template-columns: repeat(3, 56mm); gap: 4mm; justify-content: space-between; }
  .floor, .is-alive .card { display: block; }
  .line h3 { flex: 1; }
  .on-paper p { margin: 2mm 0 0; }
  .cloth canvas { width: 56mm !important; height: 56mm !important; }
  .is-actual .cloth canvas { width: 63.5mm !important; height: 63.5mm !important; }
  .card > .recipe { display: none; }
  .on-paper { display: block; }
  .box[open] { display: none; }
}
`;
