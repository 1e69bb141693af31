/**
 * How the owner's page looks, on the screen and on A4 and US Letter: it stands inside the page itself, so that one file is enough. Lengths are
 * in millimetres and points; the narrower of both papers (A4) sets the width and the shorter (Letter) the height.
 */
export const OWNERS_PAGE_CSS = `
.sheet { color: #1c2429; background: #ffffff; font-family: system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", "DejaVu Sans", sans-serif;
  font-size: 9.5pt; line-height: 1.34; font-variant-numeric: tabular-nums lining-nums; overflow-wrap: break-word; }
.sheet, .sheet * { box-sizing: border-box; }
.sheet h1, .sheet h2, .sheet p, .sheet ul, .sheet dl, .sheet dd, .sheet figure, .sheet blockquote { margin: 0; padding: 0; }
.sheet h1, .sheet h2, .sheet .headline { font-family: "Iowan Old Style", "Palatino Linotype", Palatino, "Book Antiqua", Georgia, "DejaVu Serif", serif;
  font-weight: 600; line-height: 1.2; }
.sheet h1 { font-size: 20pt; }
.sheet h2 { font-size: 11.5pt; padding-bottom: 0.8mm; border-bottom: 0.6pt solid #858c86; margin-bottom: 1.2mm; }
.sheet header { display: flow-root; margin-bottom: 2.4mm; }
.sheet header .as-of { float: right; margin-left: 8mm; padding-top: 2.4mm; font-size: 9pt; color: #4c565c; }
.sheet .subtitle { color: #4c565c; }
.sheet dl { margin-top: 1.2mm; }
.sheet dl div { display: flex; gap: 2mm; font-size: 9pt; }
.sheet dt { flex: none; color: #4c565c; }
.sheet dt::after { content: ":"; }
.sheet .invented { border: 1pt solid #1c2429; padding: 1mm 2.4mm; margin-bottom: 2.4mm; font-weight: 600; font-size: 8.5pt; }
.sheet section { margin-top: 2.2mm; }
.sheet section > p + p, .sheet section > p + table, .sheet table + p { margin-top: 1.2mm; }
.sheet .verdict { border: 1pt solid #1c2429; border-left-width: 5pt; padding: 1.6mm 4mm 2mm; break-inside: avoid; }
.sheet .verdict h2 { border: 0; margin: 0; padding: 0; font-family: inherit; font-size: 9pt; font-weight: 400; color: #4c565c; }
.sheet .verdict .headline { font-size: 16pt; margin-bottom: 1mm; }
.sheet .verdict[data-state="holding"] { border-left-style: solid; border-color: #145069; }
.sheet .verdict[data-state="watch"] { border-left-style: double; border-color: #7a4a00; }
.sheet .verdict[data-state="giving way"] { border-left-style: dashed; border-color: #98281f; }
.sheet .verdict[data-state="not enough evidence"] { border-left-style: dotted; border-color: #4c565c; }
.sheet .verdict p + p { margin-top: 0.8mm; }
.sheet figure { break-inside: avoid; }
.sheet .course { display: block; width: 100%; height: auto; }
.sheet .narrow { display: none; }
.sheet figcaption { font-size: 8.5pt; color: #4c565c; }
.sheet .explained { font-size: 8.5pt; }
.sheet .pair { display: grid; grid-template-columns: 1fr 1fr; column-gap: 8mm; }
.sheet .date { white-space: nowrap; }
.sheet .noted { color: #4c565c; }
.sheet ul { list-style: none; }
.sheet li { padding-left: 4mm; text-indent: -4mm; }
.sheet li::before { content: "–"; display: inline-block; width: 4mm; text-indent: 0; }
.sheet li + li { margin-top: 0.8mm; }
.sheet table { border-collapse: collapse; width: 100%; font-size: 9pt; }
.sheet caption { text-align: left; color: #4c565c; }
.sheet th, .sheet td { text-align: left; vertical-align: top; padding: 0.7mm 3mm 0.7mm 0; border-bottom: 0.5pt solid #cfd2c9; font-weight: 400; }
.sheet thead th { color: #4c565c; border-bottom-color: #858c86; }
.sheet th:last-child, .sheet td:last-child { padding-right: 0; }
.sheet .number { text-align: right; white-space: nowrap; }
.sheet tr { break-inside: avoid; }
.sheet table + p { break-before: avoid; }
.sheet thead { display: table-header-group; }
.sheet h2 { break-after: avoid; }
.sheet p, .sheet li { orphans: 3; widows: 3; }
.sheet .pictures { display: grid; grid-template-columns: 1fr 1fr; gap: 4mm; }
.sheet .pictures figure:only-child { grid-column: 1 / -1; }
.sheet .pictures img { display: block; max-width: 100%; max-height: 95mm; width: auto; height: auto; object-fit: contain; border: 0.5pt solid #cfd2c9; }
.sheet .remark { break-inside: avoid; border-left: 2pt solid #858c86; padding-left: 3mm; }
.sheet .remark blockquote { white-space: pre-line; font-style: italic; }
.sheet .remark p { font-size: 8.5pt; color: #4c565c; }
.sheet .small { font-size: 7.5pt; line-height: 1.34; color: #333b40; }
.sheet .small h2, .sheet .small p { display: inline; }
.sheet .small h2 { font-size: 8pt; border: 0; margin-right: 1mm; }
.sheet .small h2::after { content: "."; }
.sheet .small { border-top: 0.5pt solid #cfd2c9; padding-top: 1mm; break-inside: avoid; }
@media screen and (max-width: 40rem) {
  .sheet .pair, .sheet .pictures { grid-template-columns: 1fr; }
  .sheet header .as-of { float: none; margin-left: 0; }
  .sheet .wide { display: none; }
  .sheet .narrow { display: block; }
}
@media print {
  .sheet { color: #000000; }
  .sheet .small, .sheet .subtitle, .sheet figcaption { color: #222222; }
}
`;

/** For a file of its own: margins that suit both papers and most printers, and which page of how many it is. */
export const OWNERS_FILE_CSS = `
html { background: #e8e9e2; }
body { margin: 0; }
.sheet { max-width: 210mm; margin: 8mm auto; padding: 14mm 16mm; }
@media screen and (max-width: 40rem) { .sheet { margin: 0; padding: 5mm; } }
@page { margin: 9mm 15mm 10mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8pt sans-serif; color: #4c565c; } }
@media print { html { background: #ffffff; } .sheet { max-width: none; margin: 0; padding: 0; } }
`;
