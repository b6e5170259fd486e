/**
 * The sheet's look: black on white, a serif for words and a plain sans for figures, heavy rules, and no colour at all,
 * since it is printed and carried to the saw. Sizes in rem on screen, points in print.
 */
export const sheetStyle = `
:root { color-scheme: light; }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body { margin: 0; background: #fff; color: #000; font: 1rem/1.45 Charter, 'Bitstream Charter', Cambria, Georgia, 'Liberation Serif', serif; overflow-wrap: anywhere; }
main { max-width: 62rem; margin: 0 auto; padding: 0 1rem 3rem; }
.rod { display: block; width: 100%; height: 10px; }
h1 { font-size: 1.9rem; line-height: 1.15; margin: 1rem 0 .2rem; }
h2 { font-size: 1.25rem; line-height: 1.2; margin: 2.4rem 0 .6rem; padding-top: .35rem; border-top: 4px solid #000; }
h3 { font-size: 1.1rem; margin: 1.6rem 0 .2rem; }
p { margin: .35rem 0; }
ul { margin: .4rem 0; padding-left: 1.3rem; }
.by, .facts, .how { font-family: Arial, 'Liberation Sans', Helvetica, sans-serif; font-size: .85rem; }
.verdict { font-size: 1.15rem; margin: .8rem 0; padding: .5rem .8rem; border-left: 10px solid #000; }
.short { border: 3px solid #000; padding: .3rem .8rem .6rem; margin: 1rem 0; }
.short h2 { border: 0; margin: .2rem 0 .4rem; padding: 0; }
nav ul { padding: 0; margin: .6rem 0; list-style: none; display: flex; flex-wrap: wrap; gap: .2rem 1.2rem; }
a { color: inherit; text-underline-offset: .15em; }
.bar { display: block; width: 100%; height: 34px; margin: .8rem 0 .3rem; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font: .85rem/1.35 Arial, 'Liberation Sans', Helvetica, sans-serif; font-variant-numeric: tabular-nums; }
th, td { text-align: left; vertical-align: baseline; padding: .28rem .5rem .28rem 0; border-bottom: 1px solid #999; overflow-wrap: break-word; word-break: normal; }
td { max-width: 22rem; overflow-wrap: anywhere; }
th { border-bottom: 2px solid #000; vertical-align: bottom; }
.figures { text-align: right; padding-left: .5rem; white-space: nowrap; }
.keep, td.keep { white-space: nowrap; }
.settings { columns: 20rem; column-gap: 2rem; }
.settings h3 { margin-top: .8rem; }
.sum td { border-bottom: 0; border-top: 2px solid #000; font-weight: bold; }
.tick { display: inline-block; width: .85em; height: .85em; border: 1.5px solid #000; vertical-align: -.08em; }
.swatch { width: 46px; height: 18px; vertical-align: -3px; }
.diagram { margin: .5rem 0 .6rem; }
.diagram svg, .drawing svg { display: block; width: 100%; height: auto; }
.setup { break-inside: avoid; margin: .5rem 0; }
.setup p { margin: 0; }
.setting { font: bold 1rem Arial, 'Liberation Sans', Helvetica, sans-serif; }
.cautions li { margin: .3rem 0; }
pre { font: .8rem/1.35 'Liberation Mono', Menlo, Consolas, monospace; overflow-x: auto; }
footer { margin-top: 2.5rem; border-top: 4px solid #000; padding-top: .5rem; }
@media (max-width: 44rem) {
  main { padding: 0 .75rem 2rem; }
  h1 { font-size: 1.5rem; }
  .diagram svg, .drawing svg { min-width: 44rem; }
}
@media screen and (max-width: 44rem) {
  .folds, .folds tbody { display: block; }
  .folds thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  .folds tr { display: flex; flex-wrap: wrap; column-gap: .9rem; padding: .35rem 0; border-bottom: 1px solid #999; }
  .folds td { display: block; max-width: 100%; padding: 0; border: 0; text-align: left; white-space: normal; }
  .folds td:empty { display: none; }
  .folds td[data-head]::before { content: attr(data-head) ' '; font-size: .85em; font-style: italic; }
}
@page { margin: 14mm 13mm; }
@media print {
  body { font-size: 10.5pt; }
  main { max-width: none; padding: 0; margin: 0; }
  .scroll { overflow: visible; }
  .diagram svg { width: 184mm; max-width: 100%; min-width: 0; }
  .drawing svg { min-width: 0; max-height: 230mm; }
  .drawing, .diagram, tr, .verdict, .short, .caution { break-inside: avoid; }
  .board, .how { break-inside: avoid; }
  .board:first-of-type { break-before: page; }
  h2, h3, .facts, .how { break-after: avoid; }
  th, td { padding: .1rem .5rem .1rem 0; }
  h2 { margin-top: 1.4rem; }
  thead { display: table-header-group; }
  nav { display: none; }
  a { text-decoration: none; }
  table { font-size: 8.5pt; }
}
`;

/**
 * The running head and foot of the printed pages, where the browser knows margin boxes.
 * @param name the job's, any text: every character goes in as a CSS escape, so that it can end neither string nor style
 */
export function runningHead(name: string): string {
  const escaped = Array.from(
    name,
    (character) => `\\${(character.codePointAt(0) ?? 0xfffd).toString(16)} `,
  ).join('');
  const face = "font: 8pt Arial, 'Liberation Sans', Helvetica, sans-serif;";
  return `@page { @top-left { content: "${escaped}"; ${face} } @bottom-right { content: "page " counter(page) " of " counter(pages); ${face} } }\n`;
}
