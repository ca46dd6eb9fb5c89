/**
 * Knows how the page looks: the one style sheet of the panel in the editor, of a page in the browser and of print.
 * Refuses to name a colour: each is the editor's, and where there is no editor the browser's own.
 */

/** What all else is mixed of. Figures beside the page are of contrast: soft 6, edges and marks 3, all else is only area. */
const TOKENS = `
:root {
  color-scheme: light dark;
  --paper: var(--vscode-editor-background, Canvas);
  --ink: var(--vscode-editor-foreground, CanvasText);
  --soft: color-mix(in srgb, var(--ink) 80%, var(--paper));
  --link: var(--vscode-textLink-foreground, LinkText);
  --rule: var(--vscode-contrastBorder, color-mix(in srgb, var(--ink) 32%, transparent));
  --hair: color-mix(in srgb, var(--ink) 15%, transparent);
  --band: color-mix(in srgb, var(--ink) 10%, var(--paper));
  --edge: var(--vscode-contrastBorder, color-mix(in srgb, var(--ink) 57%, var(--paper)));
  --bar: color-mix(in srgb, var(--ink) 58%, var(--paper));
  --heat: var(--vscode-charts-orange, var(--vscode-charts-yellow, var(--ink)));
  --error: var(--vscode-editorError-foreground, var(--ink));
  --warning: var(--vscode-editorWarning-foreground, var(--ink));
  --note: var(--vscode-editorInfo-foreground, var(--ink));
  --here: var(--vscode-list-inactiveSelectionBackground, color-mix(in srgb, var(--ink) 7%, transparent));
  --focus: var(--vscode-focusBorder, Highlight);
}
body.vscode-light, body.vscode-high-contrast-light { color-scheme: light; }
body.vscode-dark, body.vscode-high-contrast { color-scheme: dark; }
body.vscode-high-contrast, body.vscode-high-contrast-light, body.weak { --soft: var(--ink); }
@media (prefers-contrast: more) { :root { --soft: var(--ink); } }
`;

/** Five sizes, two weights, a rhythm of four pixels. */
const TYPE = `
* { box-sizing: border-box; }
html { scroll-padding-top: 44px; font: 400 var(--vscode-font-size, 1rem)/1.5 var(--vscode-font-family, system-ui, sans-serif); }
body { margin: 0; padding: 0 16px 48px; background: var(--paper); color: var(--ink); font-size: 1rem; font-variant-numeric: tabular-nums lining-nums; overflow-wrap: break-word; }
header, nav, main, footer, #trouble { max-width: 62rem; margin-inline: auto; }
main { display: flow-root; }
h1, h2, h3, p, ul, ol, dl, dd, figure, table { margin: 0; padding: 0; }
h1 { font-size: 2rem; line-height: 1.2; font-weight: 600; letter-spacing: -.012em; padding-top: 20px; text-wrap: balance; }
h2 { font-size: 1.25rem; line-height: 1.3; font-weight: 600; margin-top: 36px; }
h3 { font-size: 1.08rem; line-height: 1.4; font-weight: 600; margin-top: 24px; }
h3::first-letter { text-transform: uppercase; }
h2 small, h3 small { font-size: 1rem; font-weight: 400; color: var(--soft); margin-inline-start: .5em; }
p { text-wrap: pretty; }
h2 + p, h2 + figure, .row + p, p + p, table + p, .scroll + p { margin-top: 6px; }
b, strong { font-weight: 600; }
small, .small { font-size: .923rem; }
.soft, small { color: var(--soft); }
.measure { max-width: 38rem; }
.unknown { color: var(--soft); font-style: italic; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
a { color: var(--link); text-underline-offset: 2px; }
nav a, a.at { text-decoration: none; }
a:hover, a:focus-visible { text-decoration: underline; }
body :focus-visible { outline: 2px solid var(--focus); outline-offset: 2px; }
.defs { position: absolute; }
.mark { width: .85em; height: .85em; vertical-align: -.06em; fill: currentColor; stroke: currentColor; }
.error { color: var(--error); } .warning { color: var(--warning); } .note { color: var(--note); }
`;

/** The same above every view, so that a switch moves nothing. */
const FRAME = `
.state { margin-top: 6px; }
.state:has(.counts) { display: flex; flex-wrap: wrap; column-gap: 18px; } .state .counts > * { white-space: nowrap; margin-inline-end: 12px; line-height: 24px; } .state .counts a { padding-block: 5px; }
.facts { display: grid; grid-template-columns: 1fr 1fr; gap: 10px 20px; margin-top: 14px; }
.facts dt, .facts small { color: var(--soft); font-size: .923rem; }
.facts small { display: block; }
nav.views { position: sticky; top: 0; z-index: 1; margin-top: 16px; background: var(--paper); border-bottom: 1px solid var(--rule); display: flex; flex-wrap: wrap; column-gap: clamp(8px, 2.4vw, 16px); }
nav.views a { color: var(--soft); padding: 7px 0 8px; margin-bottom: -1px; }
nav.views a[aria-current] { color: var(--ink); font-weight: 600; border-bottom: 2px solid; padding-bottom: 6px; }
main[aria-busy=true] { color: var(--soft); }
footer { margin-top: 36px; padding-top: 8px; border-top: 1px solid var(--rule); color: var(--soft); font-size: .923rem; }
.empty { max-width: 34rem; padding: 8px 0; color: var(--soft); } .empty b, .empty h1, .empty h2 { color: var(--ink); } .empty h1 { font-size: 1.25rem; line-height: 1.3; letter-spacing: normal; }
`;

const CONTROLS = `
button, input, select { font: inherit; color: inherit; }
button { background: var(--vscode-button-secondaryBackground, transparent); color: var(--vscode-button-secondaryForeground, inherit); border: 1px solid var(--vscode-contrastBorder, var(--vscode-button-border, var(--hair))); border-radius: 3px; padding: 1px 8px; min-height: 24px; text-align: start; cursor: pointer; }
button:hover { background: var(--vscode-button-secondaryHoverBackground, var(--band)); }
button.first { background: var(--vscode-button-background, transparent); color: var(--vscode-button-foreground, inherit); }
button.first:hover { background: var(--vscode-button-hoverBackground, var(--band)); }
input { background: var(--vscode-input-background, transparent); border: 1px solid var(--vscode-input-border, var(--rule)); border-radius: 3px; padding: 1px 4px; min-height: 24px; width: 4.2em; text-align: end; }
input[type=time] { width: auto; }
select { field-sizing: content; background: none; border: 0; border-bottom: 1px solid var(--rule); border-radius: 0; padding: 0 2px; font-weight: 600; color: var(--link); } select option { background: var(--paper); }
.choice { display: inline-flex; border: 0; margin: 0; padding: 0; gap: 14px; }
.choice label { cursor: pointer; color: var(--soft); padding-bottom: 1px; position: relative; }
.choice label:has(:checked) { color: var(--ink); border-bottom: 1px solid; padding-bottom: 0; }
.choice input { position: absolute; opacity: 0; width: 1px; min-height: 0; }
.choice label:has(:focus-visible) { outline: 2px solid var(--focus); outline-offset: 2px; }
.row { display: flex; flex-wrap: wrap; align-items: baseline; gap: 4px 20px; }
.row > :first-child { margin-inline-end: auto; }
.looking { border-inline-start: 3px solid var(--link); padding: 4px 0 4px 12px; margin-top: 16px; display: flex; flex-wrap: wrap; gap: 6px 10px; align-items: center; }
.looking > span, .looking details[open] { flex: 1 1 100%; } .looking details { color: var(--soft); font-size: .923rem; } .looking summary { cursor: pointer; padding: 3px 0; } .looking details p { margin: 2px 0 0; max-width: 38rem; }
.looked { color: var(--link); }
.stepper { display: inline-flex; gap: 4px; }
`;

/** View 1, and the page for readers. */
const READING = `
.read { font-size: 1.154rem; }
.list, .steps { list-style: none; margin-top: 8px; }
.list li { display: grid; grid-template-columns: 5.4rem 1fr auto; column-gap: 12px; padding: 2px 0; align-items: baseline; }
.list .amount { text-align: end; white-space: nowrap; } .list .unknown { font-size: 1rem; }
.list .also { color: var(--soft); font-size: 1rem; text-align: end; white-space: nowrap; }
.prep { color: var(--soft); }
.steps { counter-reset: step; }
.lines { list-style: none; margin-top: 6px; } .lines li + li { margin-top: 4px; }
.steps li { counter-increment: step; padding: 4px 0 4px 1.75em; position: relative; }
.steps li::before { content: counter(step); position: absolute; inset-inline-start: 0; width: 1.1em; text-align: end; color: var(--soft); }
.steps b, .now b { white-space: nowrap; }
.at { color: inherit; }
.at.error, .at.warning, .at.note { color: inherit; text-decoration: underline 2px; text-underline-offset: 3px; }
.at.error { text-decoration-color: var(--error); } .at.warning { text-decoration-color: var(--warning); } .at.note { text-decoration-color: var(--note); }
.finding { color: var(--ink); font-size: 1rem; line-height: 1.42; grid-column: 2 / -1; margin: 4px 0 10px; padding-inline-start: 20px; position: relative; }
.finding { scroll-margin-top: 48px; } .finding.accepted, .finding.accepted .mark { color: var(--soft); }
.list.long li { grid-template-columns: 10.6rem 1fr auto; }
.finding > .mark { position: absolute; inset-inline-start: 0; top: .3em; }
.fixes { display: flex; flex-wrap: wrap; gap: 5px 6px; align-items: center; margin-top: 4px; }
.fixes button { font-size: .923rem; min-height: 24px; padding-block: 0; }
button.plain { background: none; border: 0; padding: 0; color: var(--link); text-decoration: underline; text-underline-offset: 2px; }
.finding details { color: var(--soft); font-size: .923rem; min-height: 24px; } .finding summary { cursor: pointer; padding: 3px 0; }
.finding details[open] { flex-basis: 100%; }
.here { background: var(--here); box-shadow: -12px 0 0 var(--here), -14px 0 0 var(--link); }
.picture { margin-top: 16px; } .picture img { display: block; max-width: 100%; height: auto; } .picture figcaption { color: var(--soft); font-size: .923rem; margin-top: 4px; }
.care { border: 2px solid var(--ink); padding: 8px 16px 12px; margin-top: 20px; } .care h2 { margin: 0; }
`;

/** Rules above and below, none between; figures line up on the point. */
const TABLES = `
table { border-collapse: collapse; width: 100%; margin-top: 8px; }
caption { text-align: start; color: var(--soft); padding-bottom: 4px; }
th { font-weight: 400; text-align: start; }
thead th, thead td { color: var(--soft); font-size: .923rem; line-height: 1.3; vertical-align: bottom; border-bottom: 1px solid var(--rule); padding: 2px 0 4px 12px; }
td, tbody th, tfoot th { padding: 3px 0 3px 12px; vertical-align: baseline; }
tr > :first-child { padding-inline-start: 0; }
.figures { max-width: 26rem; }
tfoot > tr:first-child > * { border-top: 1px solid var(--rule); }
tfoot th, tfoot td { font-weight: 600; }
tbody.part th[scope=rowgroup] { font-weight: 600; padding-top: 14px; }
.n { text-align: end; white-space: nowrap; }
.d0::after { content: ".0"; visibility: hidden; }
.wide { display: none; }
td.soft.wide { white-space: nowrap; }
.bars { width: 22%; }
.scroll { overflow-x: auto; }
.measures td, .measures tbody th { height: 28px; vertical-align: top; padding-block: 4px; } .measures tbody.part th[scope=rowgroup] { padding-top: 14px; } .measures td.strip { padding: 0; }
.measures .strip { width: 32%; min-width: 128px; }
.measures .fix td { height: auto; padding-block: 0 8px; }
.measures .mend { min-width: 10rem; }
.measures .plain { min-height: 0; line-height: inherit; }
.thirds { display: grid; grid-template-columns: 1fr 1fr 1fr; text-align: center; margin-inline-start: 4px; }
.made { table-layout: fixed; } .made.many { min-width: 44rem; } .made tr > :first-child { width: 4.8rem; } .made th[scope=col] { color: var(--ink); hyphens: auto; } .made td, .made tbody th { padding-block: 5px; }
.made .zero, .made .unknown { color: var(--soft); }
.figs { display: flex; flex-wrap: wrap; justify-content: space-between; column-gap: 6px; line-height: 1.3; } .figs small { white-space: nowrap; }
.from { max-width: 44rem; } .from .bars { width: 36%; } .from .wide { white-space: nowrap; }
.nutrition tr > th.within, .figures tr > th.within { padding-inline-start: 12px; }
.trials th[scope=row] { white-space: nowrap; } .divide { padding-block: 8px; }
.day td.clock, .takes-min { white-space: nowrap; } .day thead .strip { padding-inline-start: 16px; } .day .part { color: var(--soft); } .day .strip { width: 36%; }
.day td, .day th { padding-block: 5px; } .day tbody th { font-weight: 600; padding-top: 14px; } .day .why { display: inline-block; max-width: 12rem; white-space: normal; }
`;

/** Lengths in per cent, heights in pixels, no box to fit, so that lettering never scales. Classes only: the policy refuses style attributes. */
const DRAWINGS = `
svg.draw { display: block; width: 100%; overflow: visible; font-size: .923rem; }
svg text { fill: var(--ink); }
svg .soft { fill: var(--soft); }
.draw .axis { stroke: var(--edge); } .draw .grid { stroke: var(--hair); }
.draw .band { fill: var(--band); } .draw .edge { stroke: var(--edge); }
.draw .bar { fill: var(--bar); } .draw .ink { fill: var(--ink); }
.draw .span { stroke: var(--ink); stroke-width: 3; } .draw .thin { stroke: var(--ink); }
.draw .hollow { fill: var(--paper); stroke: var(--ink); stroke-width: 1.5; }
.draw .way { fill: none; stroke: var(--edge); stroke-width: 1.5; }
.draw .after { fill: var(--paper); stroke: var(--link); stroke-width: 1.5; } .draw .to { stroke: var(--link); }
.draw .error { fill: var(--error); } .draw .warning { fill: var(--warning); } .draw .note { fill: var(--paper); stroke: var(--note); stroke-width: 2; }
.draw .wait { fill: var(--band); stroke: var(--edge); }
.draw .heat { fill: var(--heat); stroke: color-mix(in srgb, var(--heat) 65%, var(--ink)); }
.draw .gap { fill: var(--paper); }
.draw .serve { stroke: var(--ink); stroke-dasharray: 2 2; }
.draw .notknown { fill: url(#hatch); stroke: var(--edge); }
#hatch line { stroke: var(--edge); }
.point { overflow: visible; }
.halo { paint-order: stroke; stroke: var(--paper); stroke-width: 3px; stroke-linejoin: round; }
td.strip { position: relative; padding: 0; }
td.strip > svg { position: absolute; inset: 0 0 0 16px; width: calc(100% - 16px); height: calc(100% + 1px); }
td.strip button { position: absolute; inset: 0 0 0 16px; width: calc(100% - 16px); background: none; border: 0; }
td.strip input { position: absolute; inset: 0 auto auto 9px; width: calc(100% - 2px); height: 28px; min-height: 0; margin: 0; padding: 0; border: 0; background: none; appearance: none; cursor: ew-resize; }
td.strip input::-webkit-slider-thumb { appearance: none; width: 14px; height: 14px; border-radius: 50%; background: var(--paper); border: 3px solid var(--link); }
td.strip input::-moz-range-thumb { box-sizing: border-box; width: 14px; height: 14px; border-radius: 50%; background: var(--paper); border: 3px solid var(--link); }
.small-multiples { align-items: end; display: grid; gap: 20px 32px; grid-template-columns: 1fr; margin-top: 8px; }
figcaption b { display: block; }
.key { display: flex; flex-wrap: wrap; gap: 4px 18px; color: var(--soft); font-size: .923rem; margin-top: 8px; }
.key svg.draw { display: inline-block; width: 22px; height: 10px; vertical-align: -1px; margin-inline-end: 5px; }
.lanes { margin-top: 14px; }
.lane { display: grid; grid-template-columns: 4rem 1fr; align-items: end; }
.lane > span { padding-bottom: 3px; }
`;

/** Narrow beside a text, A4 and a browser from 640, what was found in a margin from 800. */
const WIDTHS = `
@media (max-width: 23rem) {
  .list .also { grid-column: 2; text-align: start; } .list .also:empty { display: none; }
  .allergens { font-size: .85rem; } .allergens td { hyphens: auto; }
}
@media (max-width: 639px) {
  .made .figs small { display: none; } .made td, .made th { padding-inline-start: 8px; } .made tr > :first-child { padding-inline-start: 0; }
  .draw .w { display: none; }
  .day thead { display: none; }
  .day tr { display: grid; grid-template-columns: 2.9rem 1fr auto; column-gap: 10px; }
  .day td { padding: 4px 0 0 0; } .day tbody th { grid-column: 1 / -1; }
  .day td.strip { grid-column: 2 / -1; height: 18px; width: auto; margin-bottom: 4px; } .day td.strip > svg { inset-inline-start: 0; width: 100%; }
  .measures thead .unit, .measures .wide { display: none; }
  .stack thead th, .stack td, .stack tbody th { padding-inline-start: 8px; } .stack tr > :first-child { padding-inline-start: 0; }
}
@media (min-width: 640px) {
  body { padding-inline: 28px; }
  .wide { display: table-cell; } .narrow { display: none; }
  .facts { grid-template-columns: repeat(4, auto); justify-content: start; gap: 10px 36px; }
  .small-multiples { grid-template-columns: repeat(3, 1fr); }
  .beneath > section, .plain > section { max-width: 46rem; }
  th[scope=rowgroup], .measures th[scope=row] { white-space: nowrap; }
}
@media (max-width: 379px) { .measures .strip { min-width: 88px; } }
@media (min-width: 720px) { .measures .mend { min-width: 13.5rem; } .measures .looked { white-space: nowrap; } }
@media (min-width: 800px) {
  .noted { padding-inline-end: 23rem; }
  .noted .list li { display: block; }
  .noted .list .amount, .noted .list .name, .noted .list .also { display: inline-block; vertical-align: top; } .noted .list .also { padding-top: .15rem; }
  .noted .list .amount { width: 5.4rem; margin-inline-end: 14px; } .noted .list.long .amount { width: 10.6rem; }
  .noted .list .name { width: calc(100% - 18.2rem); }
  .noted .list .also { width: 10.4rem; } .noted .list.long .also { width: 5.2rem; }
  .noted .finding { float: inline-end; clear: inline-end; width: 20.5rem; margin: 1px -23rem 14px 0; }
}
`;

const FORCED = `
@media (forced-colors: active) {
  :root { --paper: Canvas; --ink: CanvasText; --soft: CanvasText; --link: LinkText; --rule: CanvasText; --hair: GrayText; --edge: CanvasText; --band: Canvas; --bar: GrayText; --heat: Highlight; --error: CanvasText; --warning: CanvasText; --note: CanvasText; }
  .draw .band { stroke: CanvasText; }
  .here { outline: 1px solid Highlight; }
}
`;

/** Black on white, bars and bands grey. */
export const ON_PAPER =
  ':root { color-scheme: light; --paper: #fff; --ink: #000; --soft: #444; --link: #000; --rule: #777; --hair: #ccc; --band: #e8e8e8; --edge: #777; --bar: #777; --heat: #999; --error: #000; --warning: #000; --note: #000; --here: transparent; }';

/** What can be pressed goes, fields become their figures. */
const PRINT = `
@media print {
  @page { margin: 16mm; }
  ${ON_PAPER}
  html { font-size: 10pt; }
  body { padding: 0; }
  h1 { padding-top: 0; }
  nav.views, button, .choice, input[type=range], .finding summary { display: none; }
  input, select { border: 0; padding: 0; width: auto; min-height: 0; field-sizing: content; appearance: none; color: inherit; }
  .here { box-shadow: none; }
  h2, h3, thead, caption { break-after: avoid; }
  tfoot { display: table-row-group; }
  tbody > tr:nth-last-child(2), tbody > tr:last-child:not(:first-child), tfoot > tr, table + p, .scroll + p, figure + p, .small-multiples + p { break-before: avoid; }
  .made, .nutrition { break-inside: avoid; }
  /* Where pages break, cells do not stand on one baseline. */
  td.bars { vertical-align: middle; }
  tbody.part > tr:first-child > * { padding-top: 14px; vertical-align: bottom; } tbody.part > tr:first-child > td.bars { padding-bottom: 8px; }
  li, tr, figure, .finding, .care { break-inside: avoid; }
}
`;

/** The whole sheet, for a `<style>`. */
export const STYLE = [TOKENS, TYPE, FRAME, CONTROLS, READING, TABLES, DRAWINGS, WIDTHS, FORCED, PRINT]
  .map((css) => css.trim())
  .join('\n');
