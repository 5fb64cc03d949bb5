export type Paper = 'a4' | 'letter';

const SIZES: Readonly<Record<Paper, string>> = { a4: 'A4', letter: 'letter' };

/** How the sheet lies on paper: black on white, nothing broken in two. */
export const printStyle = (paper: Paper): string => `
@page { size: ${SIZES[paper]} portrait; margin: 13mm 12mm; }
* { box-sizing: border-box; }
body {
  margin: 0 auto;
  max-width: 186mm;
  color: #1b2430;
  background: #ffffff;
  font: 10pt/1.35 "Helvetica Neue", Helvetica, Arial, "Liberation Sans", sans-serif;
  -webkit-print-color-adjust: exact;
  print-color-adjust: exact;
}
@media screen { body { padding: 8mm 0; } }
h1 { font-size: 17pt; line-height: 1.15; margin: 0 0 1mm; }
h2 { font-size: 12pt; margin: 5mm 0 1.5mm; border-bottom: 0.4mm solid #1b2430; break-after: avoid; }
h3 { font-size: 10pt; margin: 3mm 0 1mm; break-after: avoid; }
p { margin: 0 0 1.5mm; }
header p { color: #4a5460; }
figure { margin: 0 0 3mm; break-inside: avoid; }
figure svg { display: block; width: 100%; height: auto; border: 0.2mm solid #9aa3ad; }
.pairs { display: grid; grid-template-columns: 1fr 1fr; gap: 0 4mm; align-items: start; }
.plots { columns: 2; column-gap: 4mm; }
table { border-collapse: collapse; width: 100%; margin-bottom: 1.5mm; font-size: 9pt; font-variant-numeric: tabular-nums; }
th { text-align: left; font-weight: 600; border-bottom: 0.3mm solid #1b2430; padding: 0.8mm 2mm 0.8mm 0; }
td { border-bottom: 0.15mm solid #c3c9cf; padding: 0.8mm 2mm 0.8mm 0; vertical-align: top; overflow-wrap: anywhere; }
tbody th { border-bottom: 0.15mm solid #c3c9cf; vertical-align: top; }
tr { break-inside: avoid; }
thead { display: table-header-group; }
.verdict { font-weight: 700; white-space: nowrap; }
.verdict.out { border: 0.4mm solid #1b2430; padding: 0 1mm; }
.findings li { margin-bottom: 1mm; }
.findings { margin: 1mm 0 3mm; padding-left: 5mm; }
.cut { break-inside: avoid; border: 0.3mm solid #1b2430; padding: 2mm 3mm 1.5mm 9mm; margin: 0 0 2mm; position: relative; }
.cut p { margin: 0 0 0.5mm; }
.cut p:first-of-type { font-weight: 700; }
.cut .tick-box { position: absolute; left: 3mm; top: 2.6mm; }
.tick-box { display: inline-block; width: 3.4mm; height: 3.4mm; border: 0.35mm solid #1b2430; }
.caution { break-inside: avoid; border: 0.6mm solid #1b2430; padding: 1.5mm 3mm; margin: 2mm 0; }
.caution p:first-child { font-weight: 700; }
.trial, .correction, .plots { break-before: page; }
.before { break-inside: avoid; }
.blank td { height: 8.5mm; border: 0.2mm solid #6a7480; padding: 1mm; }
.blank th { border: 0.2mm solid #6a7480; padding: 1mm; vertical-align: bottom; font-size: 8pt; }
.blank { table-layout: fixed; margin-bottom: 3mm; }
.fill-in { display: flex; gap: 6mm; margin: 2mm 0; }
.fill-in span { flex: 1; border-bottom: 0.3mm solid #1b2430; padding-top: 5mm; font-size: 8.5pt; }
`;
