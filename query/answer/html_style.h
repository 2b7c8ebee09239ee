// SPDX-License-Identifier: GPL-2.0-or-later
// How a printed page looks: black on white, figures large, thin rules; nothing is fetched. It fits A4 and
// Letter, because widths are shares of the paper and only words wrap.
#pragma once

#include <string_view>

namespace sheaf {

inline constexpr std::string_view document_style = R"(
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1rem; max-width: 52rem; color: #000; background: #fff;
  font: 1.0625rem/1.35 system-ui, "DejaVu Sans", "Liberation Sans", sans-serif; }
h1 { margin: 0 0 .2rem; font-size: 1.6em; line-height: 1.2; }
h2 { margin: 1.5em 0 .3em; padding-top: .3em; border-top: 3px solid #000; font-size: 1.2em; }
p { margin: .25em 0; }
ul { margin: .2em 0 .5em; padding: 0; list-style: none; }
ul.compact { columns: 2 18rem; column-gap: 1.5rem; }
li { padding: .1em 0 .1em 2em; text-indent: -2em; break-inside: avoid; }
table { width: 100%; border-collapse: collapse; table-layout: fixed; overflow-wrap: break-word; }
th, td { padding: .3em .6em .3em 0; text-align: left; vertical-align: top; font-weight: normal; }
thead th { font-size: .85em; font-weight: bold; border-bottom: 1px solid #000; }
tbody { border-bottom: 1px solid #777; }
.of-12-1 { width: 8.3%; } .of-12-2 { width: 16.6%; } .of-12-3 { width: 25%; } .of-12-4 { width: 33.3%; }
.of-12-5 { width: 41.6%; } .of-12-6 { width: 50%; } .of-12-7 { width: 58.3%; } .of-12-8 { width: 66.6%; }
.of-12-9 { width: 75%; } .of-12-10 { width: 83.3%; }
tr.under td { padding-top: 0; }
tr.group th { padding-top: .8em; font-weight: bold; }
dl, dd { margin: 0; }
.remark { display: grid; grid-template-columns: 5.5em 1fr; column-gap: .5em; font-size: .92em; }
.remark dd { grid-column: 2; }
.remark dt { white-space: nowrap; }
.warns { font-weight: bold; }
.warns dt::before { content: "! "; }
.figure { font-size: 1.4em; font-weight: bold; line-height: 1.15; font-variant-numeric: tabular-nums; }
.derived { font-variant-numeric: tabular-nums; }
.act, .caution { font-weight: bold; }
.quiet { font-size: .9em; }
.tick { display: inline-block; margin-right: .7em; white-space: nowrap; text-indent: 0; }
.blank { display: inline-flex; align-items: baseline; gap: .35em; margin-right: .9em; white-space: nowrap; }
input[type=checkbox] { appearance: none; position: relative; width: 1.2em; height: 1.2em; margin: 0 .1em 0 0;
  vertical-align: -.25em; border: 1.5px solid #000; border-radius: 2px; background: #fff; }
input[type=checkbox]:checked::after { content: ""; position: absolute; left: .32em; top: .02em; width: .3em;
  height: .7em; border: solid #000; border-width: 0 .19em .19em 0; transform: rotate(40deg); }
input[type=text] { width: 6em; padding: .1em .15em; border: 0; border-bottom: 1.5px solid #000; border-radius: 0;
  background: #fff; color: #000; font: inherit; font-weight: bold; }
input.wide { width: 9em; }
.blank:has(.whole) { display: flex; margin-right: 0; }
input.whole { flex: 1; }
input:focus-visible { outline: 3px solid #000; outline-offset: 2px; }
footer { margin-top: 1.5em; padding-top: .5em; border-top: 1px solid #000; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
@media (max-width: 40rem) {
  thead tr:not(.over), colgroup { display: none; }
  table, thead, tbody, tr, td, th { display: block; }
  th, td { padding: .1rem 0; }
  tbody { padding: .5rem 0; }
}
@media print {
  body { max-width: none; padding: 0; font-size: 12pt; line-height: 1.25; }
  h2, header, tr.group { break-after: avoid; }
  tbody, li, .remark { break-inside: avoid; }
  thead { display: table-header-group; break-inside: avoid; }
  tbody:first-of-type { break-before: avoid; }
}
@page { margin: 12mm 12mm 15mm; @bottom-right { content: counter(page) " of " counter(pages); } }
)";

}  // namespace sheaf
