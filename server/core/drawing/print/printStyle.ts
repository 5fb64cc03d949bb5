export type Paper = 'a4' | 'letter';

const SIZES: Readonly<Record<Paper, { readonly name: string; readonly room: number }>> = {
  // The height of the paper less its margins, less a little that no rounding can push over, mm.
  a4: { name: 'A4', room: 269 },
  letter: { name: 'letter', room: 251 },
};

/** How the sheet lies on paper: black on white, nothing broken in two. `foot` stands at the foot of each page. */
export const printStyle = (paper: Paper, foot: string): string => `
@page {
  size: ${SIZES[paper].name} portrait;
  margin: 12mm 12mm 15mm;
  @bottom-left { content: ${cssText(foot)}; font: 8pt sans-serif; color: #4a5460; }
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: 8pt sans-serif; color: #4a5460; }
}
@media screen { body { padding: 8mm 2mm; } .page { margin-bottom: 10mm; } }
@media print {
  .page { height: ${SIZES[paper].room}mm; break-after: page; overflow: hidden; }
  .page:last-child { break-after: auto; }
  .page .sides { flex: 1 1 0; min-height: 60mm; }
  .page .sides.abreast { flex: 1000 1 0; max-height: 92mm; }
  .page .sides figure { flex: 1 1 0; min-height: 0; position: relative; }
  .page .sides svg { position: absolute; inset: 0.4mm; width: calc(100% - 0.8mm); height: calc(100% - 0.8mm); }
  .page.second { height: auto; min-height: ${SIZES[paper].room}mm; overflow: visible; }
  .page.long { height: auto; min-height: 0; overflow: visible; }
  .page.long .sides { height: 75mm; }
}
${LOOK}`;

const LOOK = `
* { box-sizing: border-box; }
body {
  margin: 0 auto;
  max-width: 192mm;
  color: #1b2430;
  background: #ffffff;
  font: 9.5pt/1.3 "Helvetica Neue", Helvetica, Arial, "Liberation Sans", sans-serif;
  -webkit-print-color-adjust: exact;
  print-color-adjust: exact;
}
/* A border on the very edge of the paper's room is not printed. */
.page, .appendix { padding: 0 0.5mm; }
.page { display: flex; flex-direction: column; gap: 2mm; }
.page.long { display: block; }
.page > * { flex: none; min-width: 0; }
h1 { font-size: 16pt; line-height: 1.1; margin: 0 0 0.5mm; overflow-wrap: anywhere; }
h2 { font-size: 11.5pt; margin: 0 0 1mm; border-bottom: 0.4mm solid #1b2430; break-after: avoid; }
h3 { font-size: 10pt; margin: 3mm 0 1mm; break-after: avoid; }
p { margin: 0 0 1mm; }
header p { color: #4a5460; margin: 0; overflow-wrap: anywhere; }
.glance { font-size: 12pt; margin: 0; padding: 1mm 3mm; border: 0.5mm solid #1b2430; }
.glance.out::before { content: "\\2717\\00a0"; font-weight: 700; }
.glance.in::before { content: "\\2713\\00a0"; font-weight: 700; }
.glance.open::before { content: "\\25cb\\00a0"; font-weight: 700; }
.gauges { display: grid; grid-template-columns: repeat(4, 1fr); gap: 1.2mm; font-size: 7.5pt; line-height: 1.2; }
.legend { color: #4a5460; font-size: 7.5pt; }
.gauge { border: 0.2mm solid #9aa3ad; padding: 0.8mm 1.2mm; break-inside: avoid; min-width: 0; }
.gauge.out { border: 0.5mm solid #1b2430; padding: 0.5mm 0.9mm; }
.gauge p { margin: 0; }
.gauge .verdict.out { border: 0; padding: 0; }
.gauge-head, .gauge-foot { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 0 1mm; }
.gauge-foot { color: #4a5460; font-size: 6.8pt; }
.gauge-proposed { color: #5d2f7a; }
.gauge-bar { max-height: 5mm; }
figure { margin: 0; break-inside: avoid; border: 0.2mm solid #9aa3ad; }
figure svg { display: block; width: 100%; height: auto; }
.sides { display: flex; flex-direction: column; gap: 2mm; }
.sides.abreast { flex-direction: row; }
.sides.abreast figure { flex: 1 1 0; min-width: 0; }
.ruled p { height: 8mm; margin: 0; border-bottom: 0.2mm solid #9aa3ad; color: #4a5460; font-size: 8pt; }
.page > .ruled { flex: 1 1 0; min-height: 0; overflow: hidden; }
@media screen { .ruled { display: none; } }
.pairs { display: grid; grid-template-columns: 1fr 1fr; gap: 2mm 4mm; align-items: start; }
.plots { columns: 2; column-gap: 4mm; }
.plots figure, .wide figure { margin-bottom: 3mm; }
table { border-collapse: collapse; width: 100%; margin-bottom: 1mm; font-size: 8.5pt; font-variant-numeric: tabular-nums; }
th { text-align: left; font-weight: 600; border: 0.15mm solid #9aa3ad; padding: 0.6mm 1.2mm; }
td { border: 0.15mm solid #9aa3ad; padding: 0.6mm 1.2mm; vertical-align: top; overflow-wrap: anywhere; }
tbody th { vertical-align: top; }
tr { break-inside: avoid; }
thead { display: table-header-group; }
.total td { font-weight: 700; border-top: 0.4mm solid #1b2430; }
.list { font-size: 8pt; }
.list td:nth-child(n + 2):nth-child(-n + 5) { white-space: nowrap; }
.verdict { font-weight: 700; white-space: nowrap; }
.verdict.out { border: 0.3mm solid #1b2430; padding: 0 0.8mm; }
.findings li { margin-bottom: 1mm; }
.findings { margin: 1mm 0 3mm; padding-left: 5mm; }
.cuts { display: grid; grid-template-columns: repeat(auto-fit, minmax(58mm, 1fr)); gap: 1.5mm; }
.cut { break-inside: avoid; border: 0.3mm solid #1b2430; padding: 1.2mm 2mm 1mm 8mm; position: relative; font-size: 8.4pt; line-height: 1.25; }
.cut p { margin: 0; }
.cut p:first-of-type { font-weight: 700; }
.cut .tick-box { position: absolute; left: 2.4mm; top: 1.8mm; }
.tick-box { display: inline-block; width: 3.4mm; height: 3.4mm; border: 0.35mm solid #1b2430; }
.caution { break-inside: avoid; border: 0.5mm solid #1b2430; padding: 1mm 2.5mm; margin: 0; font-size: 8.8pt; }
.small { font-size: 8pt; }
.appendix { break-before: page; }
.appendix > section { margin-bottom: 4mm; }
.appendix h2 { margin-top: 3mm; }
.trial-forms { break-before: page; }
.blank td { height: 7mm; }
.blank th { vertical-align: bottom; font-size: 8pt; }
.blank { table-layout: fixed; }
.form th:first-child { width: 18mm; }
.form th:nth-child(2) { width: 46mm; }
.form tbody th, .form td { vertical-align: middle; }
.notes { flex: 1 1 0; border: 0.2mm solid #9aa3ad; padding: 1mm 2mm; color: #4a5460; font-size: 8pt; }
.page > .notes { flex: 1 1 0; }
.fill-in { display: flex; gap: 6mm; margin: 2mm 0; }
.fill-in span { flex: 1; border-bottom: 0.3mm solid #1b2430; padding-top: 5mm; font-size: 8.5pt; }
`;

/** Words as a CSS string that nothing in them can end: all but plain characters are written by their numbers. */
const cssText = (words: string): string =>
  `"${[...words].map(character => (/[\w .,-]/.test(character) ? character : `\\${character.codePointAt(0)!.toString(16)} `)).join('')}"`;
