// SPDX-License-Identifier: MIT
#include "writing/html_style.hpp"

namespace routeweigh::writing {

// Text keeps a reading measure; tables and pictures may use the whole sheet. Type is what every system has.
const std::string_view html_style = R"css(
:root {
  --ink: #1c2630; --quiet: #525e6b; --rule: #c8d0d8; --faint: #f4f6f8; --blue: #2c5f8f; --accent: #9c4309;
  --serif: Charter, "Bitstream Charter", Cambria, Georgia, "Liberation Serif", serif;
  --sans: Helvetica, Arial, "Liberation Sans", sans-serif;
  --measure: 41rem; --gap: .7rem;
  color-scheme: light;
}
* { box-sizing: border-box; }
html { font-size: 100%; -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body { margin: 0; background: #fff; color: var(--ink); font: 1.0625rem/1.58 var(--serif); }
.sheet { max-width: 60rem; margin: 0 auto; padding: 3.5rem 2.5rem 4rem; }
.skip { position: absolute; left: -99rem; background: #fff; color: var(--blue); padding: .5rem 1rem; font-family: var(--sans); }
.skip:focus { left: 1rem; top: 1rem; outline: 2px solid var(--blue); z-index: 2; }
a { color: var(--blue); text-underline-offset: .15em; text-decoration-thickness: 1px; }
a:focus-visible, summary:focus-visible, .scroll:focus-visible { outline: 2px solid var(--blue); outline-offset: 2px; }
h1, h2, h3, h4, p, ul, ol, dl { max-width: var(--measure); }
h1 { font-size: 2rem; line-height: 1.2; font-weight: 600; margin: 0 0 .6rem; text-wrap: balance; }
.subtitle { margin: 0; color: var(--quiet); font-style: italic; }
header.title { border-bottom: 2px solid var(--ink); padding-bottom: 1.5rem; margin-bottom: 1.5rem; }
h2 { font-size: 1.4rem; line-height: 1.25; font-weight: 600; margin: 3.2rem 0 .9rem; padding-top: .8rem; border-top: 1px solid var(--rule); max-width: none; }
h3 { font-size: 1.12rem; font-weight: 600; margin: 2rem 0 .6rem; }
h4 { font-size: 1rem; font-weight: 600; font-style: italic; margin: 1.5rem 0 .5rem; }
p { margin: 0 0 .9rem; }
.small { font-size: .9rem; color: var(--quiet); }
ul, ol { margin: 0 0 1rem; padding-left: 1.4rem; }
li { margin: .25rem 0; padding-left: .2rem; }
li::marker { color: var(--quiet); }
ul.boxes { list-style: none; padding-left: 0; max-width: none; }
ul.boxes li { padding-left: 1.7rem; position: relative; }
ul.boxes li::before { content: ""; position: absolute; left: .15rem; top: .36em; width: .8em; height: .8em; border: 1.2px solid var(--ink); }
svg.drawing { display: block; max-width: 13rem; max-height: 8rem; margin: .25rem 0 .1rem; }
code { font: .92em/1.4 "DejaVu Sans Mono", "Liberation Mono", Menlo, Consolas, monospace; overflow-wrap: anywhere; }
.figure { white-space: nowrap; font-variant-numeric: lining-nums; }
p, li, dd, dt, td, th, caption, summary { overflow-wrap: break-word; }
nav.contents { font: .9rem/1.5 var(--sans); margin-bottom: 1rem; }
nav.contents h2 { font: 600 .9rem/1.5 var(--sans); margin: 0 0 .3rem; padding: 0; border: 0; color: var(--quiet); }
nav.contents ol { columns: 2; column-gap: 2.5rem; max-width: none; padding-left: 1.5rem; margin: 0; }
nav.contents li { break-inside: avoid; margin: 0; padding: .15rem 0; }
dl.pairs { display: grid; grid-template-columns: max-content minmax(0, 1fr); gap: .3rem 1.5rem; margin: 0 0 1.2rem; }
dl.pairs dt { font: .9rem/1.7 var(--sans); color: var(--quiet); max-width: 14rem; }
dl.pairs dd { margin: 0; }
.blank { display: inline-block; min-width: 20.3mm; padding-top: .5rem; line-height: 1; letter-spacing: .35em; }

.table-block { margin: 1.6rem 0 1.9rem; }
.scroll { overflow-x: auto; max-width: 100%; position: relative; }
table { border-collapse: collapse; font: .875rem/1.4 var(--sans); font-variant-numeric: tabular-nums lining-nums; border-bottom: 1.5px solid var(--ink); min-width: 18rem; }
table.wide { --gap: .45rem; }
caption { text-align: left; padding: 0 0 .55rem; font: .94rem/1.45 var(--serif); }
caption span { display: inline-block; position: sticky; left: 0; max-width: min(var(--measure), calc(100vw - 2.5rem)); }
caption b, figcaption b { font-weight: 600; }
th, td { text-align: left; vertical-align: top; padding: .3rem var(--gap); }
th:first-child, td:first-child { padding-left: .15rem; }
th { font-weight: 400; }
thead th { font-weight: 600; vertical-align: bottom; border-top: 1.5px solid var(--ink); border-bottom: 1px solid var(--ink); }
tbody tr + tr > * { border-top: 1px solid #e6eaee; }
th[scope=row] { min-width: 8rem; max-width: 22rem; position: sticky; left: 0; background: #fff; z-index: 1; }
thead th:first-child { position: sticky; left: 0; background: #fff; z-index: 1; }
.num { text-align: right; white-space: nowrap; }
thead .num, .num.long { white-space: normal; }
th.words { min-width: 6.5rem; }
th.sentences { min-width: 13rem; }
.unit { display: block; font-weight: 400; color: var(--quiet); font-size: .92em; }
.tag { display: block; color: var(--accent); font: 600 .8em/1.3 var(--sans); }
th.base, tr.base > th { color: var(--accent); }
thead th.base { box-shadow: inset 0 3px 0 var(--accent); }
tr.base > th { box-shadow: inset 3px 0 0 var(--accent); padding-left: var(--gap); background: var(--faint); }
td.base { background: var(--faint); }
tr.base > td { background: var(--faint); }
tr.group > th { font-weight: 600; padding-top: .9rem; background: #fff; }
tr.group > th span { position: sticky; left: .15rem; }
tbody tr.detail > * { border-top: 0; padding-top: 0; color: var(--quiet); font-size: .94em; }
tr.detail > th:first-child { padding-left: 1.1rem; }
tr.total > * { border-top: 1px solid var(--ink) !important; font-weight: 600; }
sup.note { position: absolute; font-size: .78em; line-height: 1; margin: -.05em 0 0 .1em; color: var(--quiet); }
.notes { font: .82rem/1.5 var(--sans); color: var(--quiet); margin-top: .5rem; }
.notes p { margin: 0 0 .15rem; }
.p1 { padding-right: calc(var(--gap) + .5ch); } .p2 { padding-right: calc(var(--gap) + 1ch); }
.p3 { padding-right: calc(var(--gap) + 1.5ch); } .p4 { padding-right: calc(var(--gap) + 2ch); }
.p5 { padding-right: calc(var(--gap) + 2.5ch); } .p6 { padding-right: calc(var(--gap) + 3ch); }
.p7 { padding-right: calc(var(--gap) + 3.5ch); } .p8 { padding-right: calc(var(--gap) + 4ch); }
.p9 { padding-right: calc(var(--gap) + 4.5ch); } .p10 { padding-right: calc(var(--gap) + 5ch); }
.p11 { padding-right: calc(var(--gap) + 5.5ch); } .p12 { padding-right: calc(var(--gap) + 6ch); }
.p13 { padding-right: calc(var(--gap) + 6.5ch); } .p14 { padding-right: calc(var(--gap) + 7ch); }
.on-paper { display: none; }

figure { margin: 2rem 0 2.2rem; }
figure svg { display: block; max-width: 100%; height: auto; font-family: var(--sans); }
.for-phone { display: none; }
figcaption { font: .94rem/1.45 var(--serif); max-width: var(--measure); margin-top: .7rem; }
figure details { margin-top: .4rem; }
details > summary { cursor: pointer; font: .9rem/1.5 var(--sans); color: var(--blue); max-width: var(--measure); }
details.fold { border-top: 1px solid var(--rule); padding: .55rem 0; }
details.fold:last-of-type { border-bottom: 1px solid var(--rule); }
details.fold + :not(details) { margin-top: 1.4rem; }
.inside { padding: .6rem 0 .6rem 1.1rem; }
.inside > :first-child { margin-top: 0; }
.pictograms { display: flex; flex-wrap: wrap; gap: .5rem 1rem; margin: .6rem 0 1rem; break-inside: avoid; }
.pictograms span { display: grid; justify-items: center; gap: .2rem; font: .75rem/1.3 var(--sans); color: var(--quiet); }
.caution { border: 1.5px solid var(--ink); padding: .9rem 1.2rem .5rem; margin: 1.8rem 0; max-width: var(--measure); }
.caution > p { font: 600 .95rem/1.4 var(--sans); margin: 0 0 .4rem; }
.caution > p::before { content: "!"; display: inline-block; width: 1.35em; height: 1.35em; line-height: 1.3em; text-align: center; border: 1.5px solid; border-radius: 50%; margin-right: .6em; }
.caution ul { font-size: .97rem; }
footer { margin-top: 3.5rem; border-top: 1px solid var(--rule); padding-top: .8rem; color: var(--quiet); font: .82rem/1.5 var(--sans); }
footer p { max-width: none; }

/* A table of many columns may use the margin at its right. */
@media screen and (min-width: 60rem) {
  .scroll:has(> table.wide) { max-width: none; margin-right: calc(-1.5rem - (100vw - 60rem) / 2); }
}

@media screen and (max-width: 44rem) {
  body { font-size: 1rem; }
  .sheet { padding: 1.6rem 1.1rem 3rem; }
  h1 { font-size: 1.6rem; }
  nav.contents ol { columns: 1; }
  nav.contents li { padding: .4rem 0; }
  dl.pairs { grid-template-columns: 1fr; gap: 0; }
  dl.pairs dd { margin-bottom: .6rem; }
  th[scope=row] { min-width: 6.5rem; max-width: 9.5rem; box-shadow: 2px 0 0 var(--rule); }
  tr.base > th { box-shadow: inset 3px 0 0 var(--accent), 2px 0 0 var(--rule); }
  thead th:first-child { box-shadow: 2px 0 0 var(--rule); }
  :root { --gap: .55rem; }
  th, td { padding-top: .35rem; padding-bottom: .35rem; }
  .for-page { display: none; }
  .for-phone { display: block; }
  .oversize svg { max-width: none; }
  .oversize::before { content: "Wider than this screen: it scrolls sideways."; display: block; position: sticky; left: 0; font: .82rem/1.5 var(--sans); color: var(--quiet); }
  .inside { padding-left: .4rem; }
  summary { padding: .3rem 0; }
}

.label-sheet { position: relative; background: #fff; margin: 1.5rem 0; outline: 1px solid var(--rule); overflow: hidden; }
.label { position: absolute; overflow: hidden; padding: 1.5mm; outline: .2mm solid var(--rule); outline-offset: -.2mm; display: flex; flex-direction: column; font-family: var(--sans); line-height: 1.15; color: #000; }
.label p { margin: 0; max-width: none; }
.label.beside { flex-direction: row; gap: 1mm; }
.label .words { flex: 1 1 0; min-width: 0; }
.label .kind, .label .signal { font-weight: 700; }
.label .what { font-weight: 700; font-size: 1.2em; }
.label .marks { display: flex; flex-wrap: wrap; gap: .5mm; align-content: flex-start; }
.label .marks svg { display: block; flex: none; }
.label .overfull { font-weight: 700; border: .3mm solid #000; padding: 1mm; }

@page { margin: 16mm 15mm 18mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8pt Helvetica, Arial, sans-serif; color: #525e6b; } }
@media print {
  html { font-size: 10pt; }
  body { font-size: 10pt; line-height: 1.45; }
  .sheet { max-width: none; padding: 0; }
  .skip { display: none; }
  h1 { font-size: 19pt; }
  h1, h2, h3, h4, p, ul, ol, dl, figcaption, .caution, details > summary, caption span { max-width: none; }
  h2 { margin-top: 16pt; }
  h3 { margin: 11pt 0 4pt; }
  h4 { margin: 9pt 0 3pt; }
  .caution { margin: 7pt 0; padding: 5pt 9pt 2pt; }
  .table-block { margin: 9pt 0 11pt; }
  li { margin: 1pt 0; }
  h1, h2, h3, h4, caption { break-after: avoid; break-inside: avoid; }
  footer { break-before: avoid; }
  :is(h2, h3, h4) + p:has(+ .table-block) { break-after: avoid; break-inside: avoid; }
  p, li { orphans: 3; widows: 3; }
  figure, .caution, tr, dt, dd, table.short { break-inside: avoid; }
  thead + tbody > tr:is(:first-child, :nth-child(2)), tbody:last-child > tr:last-child { break-before: avoid; }
  tr.group, thead { break-after: avoid; }
  tr.total { break-before: avoid; }
  thead { display: table-header-group; }
  table { font-size: 8.5pt; max-width: 100%; }
  table.wide { --gap: .85mm; font-size: 7.4pt; width: 100%; }
  th[scope=row], thead th:first-child, caption span, tr.group > th span { position: static; }
  th, th[scope=row], th.words, th.sentences { min-width: 0; }
  .scroll { overflow: visible; }
  .on-screen { display: none; }
  body.labels header, body.labels footer, body.labels nav, body.labels main > :not(.label-sheet) { display: none; }
  .label-sheet { margin: 0; outline: 0; break-after: page; break-inside: avoid; }
  .label-sheet:last-child { break-after: auto; }
  .on-paper { display: block; }
  .on-paper table + table { margin-top: 10pt; }
  svg.drawing { max-width: 55mm; max-height: 31mm; margin: 0; }
  figure svg { width: 100%; max-height: 200mm; }
  figure.graph svg { max-height: 120mm; }
  figure .tall svg { max-height: none; }
  figure details:not([open]), figure.graph summary { display: none; }
  details.fold:not([open]), details.fold:not([open]) > summary { display: inline; border: 0; padding: 0; font-size: 8.5pt; color: var(--quiet); }
  details.fold:not([open]) > summary::before { content: "\00B7 "; }
  a { color: inherit; text-decoration: none; }
  summary { color: var(--ink); }
  * { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
}
)css";

// No letter is smaller than 8 points, units and notes included.
const std::string_view html_single_page_style = R"css(
@page { margin: 8mm 12mm 9mm; }
@media print {
  body { font-size: 8.5pt; line-height: 1.2; }
  h1 { font-size: 14pt; margin-bottom: 2pt; }
  header.title { padding-bottom: 3pt; margin-bottom: 4pt; }
  p { margin-bottom: 3pt; }
  ul, ol { margin-bottom: 3pt; padding-left: 9pt; }
  li { margin: 0; padding-left: 0; }
  .table-block { margin: 3pt 0 4pt; }
  table { width: 100%; font-size: 8.1pt; line-height: 1.16; }
  caption { font-size: 8.5pt; line-height: 1.2; padding-bottom: 1pt; }
  th, td { padding-top: 1pt; padding-bottom: 1pt; }
  .unit { font-size: 1em; }
  tr.group > th { padding-top: 2pt; }
  .notes { font-size: 8pt; margin-top: 1pt; line-height: 1.15; }
  .notes p { margin: 0; }
  .small { font-size: 8pt; line-height: 1.15; }
  footer { font-size: 8pt; line-height: 1.15; margin-top: 2pt; padding-top: 1pt; }
  footer p { margin: 0; }
}
)css";

} // namespace routeweigh::writing
