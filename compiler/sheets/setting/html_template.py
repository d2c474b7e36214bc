"""The booklet's HTML page and its style, for jinja2. Everything a page needs is in the one file.

On a phone a table of many columns is set as lists, each row with its columns' names; roles say that it stays
a table to those who hear it.

Contrast: text 0x1d1d1b on white is 16.9 to 1, links 0x0b4a86 are 8.9 to 1 (WCAG 2.2, 1.4.3 asks for 4.5).
"""

from __future__ import annotations

from typing import Final

STYLE: Final = """
:root { color-scheme: light; --ink: #1d1d1b; --soft: #4d4d4d; --rule: #8c8c8c; --link: #0b4a86; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 60rem; padding: 1rem; color: var(--ink); background: #ffffff;
  font-family: "Source Sans Pro", "Source Sans 3", system-ui, sans-serif; line-height: 1.5;
  overflow-wrap: anywhere; }
h1 { font-size: 2rem; line-height: 1.15; margin: 0.5rem 0 0.25rem; }
h2 { font-size: 1.5rem; line-height: 1.2; margin: 2.5rem 0 0.75rem; border-top: 0.125rem solid var(--ink);
  padding-top: 0.75rem; }
h3 { font-size: 1.125rem; margin: 1.5rem 0 0.5rem; }
h3 small { font-weight: normal; color: var(--soft); font-size: 1rem; }
p, ul, ol { margin: 0 0 0.75rem; }
li { margin-bottom: 0.375rem; }
.strong { font-weight: bold; font-size: 1.0625rem; }
.under { color: var(--soft); margin-bottom: 1rem; }
a { color: var(--link); }
a:focus-visible, [tabindex]:focus-visible, input:focus-visible { outline: 0.1875rem solid #a13d00;
  outline-offset: 0.125rem; }
.skip { position: absolute; left: -999rem; background: #ffffff; padding: 0.75rem; }
.skip:focus { left: 0.5rem; top: 0.5rem; z-index: 1; }
nav ol { list-style: none; padding: 0; columns: 16rem; }
nav a { display: block; padding: 0.625rem 0; min-height: 2.75rem; }
figure { margin: 0 0 1rem; }
figure svg { display: block; max-width: 100%; height: auto; }
figcaption { color: var(--soft); font-size: 0.9375rem; }
.wide { overflow-x: auto; margin: 0 0 1rem; }
table { border-collapse: collapse; width: 100%; }
table.many { min-width: 44rem; }
caption { text-align: left; font-weight: bold; padding: 0.25rem 0; }
th, td { text-align: left; vertical-align: top; padding: 0.375rem 0.75rem 0.375rem 0;
  border-bottom: 0.0625rem solid var(--rule); overflow-wrap: break-word; }
thead th { color: var(--soft); font-weight: normal; font-size: 0.9375rem; border-bottom-color: var(--ink); }
thead th { overflow-wrap: normal; }
.number { text-align: right; }
tr.total > * { font-weight: bold; border-top: 0.125rem solid var(--ink); }
table.many tbody th { position: sticky; left: 0; background: #ffffff; }
td.notes { padding-left: 1.5rem; }
td.notes div { position: sticky; left: 1.5rem; width: min(100%, calc(100vw - 4.5rem)); }
input[type="checkbox"] { width: 1.5rem; height: 1.5rem; }
input[type="text"] { min-height: 2rem; flex: 0 1 16rem; min-width: 6rem; font: inherit; color: inherit;
  border: 0; border-bottom: 0.0625rem solid var(--soft); }
hr { border: 0; border-top: 0.125rem dashed var(--soft); margin: 1.5rem 0; }
ul.ticks { list-style: none; padding: 0; }
ul.ticks label { display: flex; gap: 0.75rem; align-items: center; min-height: 2.75rem; }
ol.cards { list-style: none; padding: 0; display: grid; gap: 1.5rem 2rem;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, 21rem), 1fr)); }
ol.cards.small { gap: 1rem; grid-template-columns: repeat(auto-fill, minmax(min(45%, 8.5rem), 1fr)); }
ol.cards h3 { margin: 0 0 0.5rem; }
ol.cards li { display: flow-root; }
ol.cards svg { width: 100%; }
ol.cards .beside { float: right; width: 7rem; margin-left: 1rem; }
ul.sheets { list-style: none; padding: 0; display: grid; gap: 1rem;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, 15rem), 1fr)); }
ul.sheets.large { grid-template-columns: repeat(auto-fill, minmax(min(100%, 26rem), 1fr)); }
ul.sheets svg { width: 100%; border: 0.0625rem solid var(--rule); }
@media (max-width: 40rem) {
  table.many, .many caption, .many tbody, .many tr, .many th, .many td { display: block; }
  table.many { min-width: 0; }
  .many thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  .many tbody tr { border-bottom: 0.0625rem solid var(--rule); padding: 0.5rem 0; }
  .many tbody tr.total { border-top: 0.125rem solid var(--ink); }
  .many tbody tr.told { border-bottom: 0; padding-bottom: 0; }
  .many tbody th, .many tbody td { display: grid; grid-template-columns: 6.5rem 1fr; border: 0;
    padding: 0.0625rem 0; text-align: left; }
  .many tbody th::before, .many tbody td::before { content: attr(data-column); font-weight: normal;
    color: var(--soft); }
  .many tbody tr.total > * { border: 0; }
  .many tbody td:empty { display: none; }
  .many tbody td.notes { display: block; padding-left: 6.5rem; }
  td.notes div { position: static; width: auto; }
}
@media print { .skip, nav { display: none; } h2 { break-after: avoid; } figure, tr { break-inside: avoid; } }
"""

PAGE: Final = """\
{%- macro figure(shown) -%}
<figure>
{{ shown.svg }}
{%- if shown.caption %}
<figcaption>{{ shown.caption }}</figcaption>
{%- endif %}
</figure>
{%- endmacro -%}
<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{{ words.page_title(book.title) }}</title>
<meta name="description" content="{{ book.subject }}">
<meta name="keywords" content="{{ book.keywords }}">
{%- if book.author %}
<meta name="author" content="{{ book.author }}">
{%- endif %}
<style>{{ style }}</style>
</head>
<body>
<a class="skip" href="#main">{{ words.SKIP }}</a>
<header>
<h1>{{ book.title }}</h1>
<p class="under">{{ book.under }}</p>
{{ figure(cover) }}
{%- for line in lines %}
<p>{{ line }}</p>
{%- endfor %}
</header>
<nav aria-labelledby="contents">
<h2 id="contents">{{ words.CONTENTS }}</h2>
<ol>
{%- for chapter in chapters %}
<li><a href="#{{ chapter.id }}">{{ chapter.title }}</a></li>
{%- endfor %}
</ol>
</nav>
<main id="main" tabindex="-1">
{%- for chapter in chapters %}
<section aria-labelledby="{{ chapter.id }}">
<h2 id="{{ chapter.id }}" tabindex="-1">{{ chapter.title }}</h2>
{%- for part in chapter.parts %}
{%- if part.kind == "Paragraph" %}
<p{% if part.strong %} class="strong"{% endif %}>{{ part.text }}</p>
{%- elif part.kind == "Section" %}
<h3>{{ part.title }}{% if part.under %} <small>{{ part.under }}</small>{% endif %}</h3>
{%- elif part.kind == "List" and part.sign == "box" %}
<ul class="ticks">
{%- for text in part.texts %}
<li><label><input type="checkbox"> {{ text }}</label></li>
{%- endfor %}
</ul>
{%- elif part.kind == "List" and part.sign == "blank" %}
<ul class="ticks">
{%- for text in part.texts %}
<li><label>{{ text }} <input type="text"></label></li>
{%- endfor %}
</ul>
{%- elif part.kind == "CutLine" %}
<hr>
{%- elif part.kind == "List" %}
<{{ "ol" if part.sign == "number" else "ul" }}>
{%- for text in part.texts %}
<li>{{ text }}</li>
{%- endfor %}
</{{ "ol" if part.sign == "number" else "ul" }}>
{%- elif part.kind == "Picture" %}
{{ figure(part) }}
{%- elif part.kind == "Table" %}
<div class="wide" role="group" aria-label="{{ part.caption }}" tabindex="0">
<table role="table"{% if part.columns | length + part.ticks > 4 %} class="many"{% endif %}>
<caption>{{ part.caption }}</caption>
<thead role="rowgroup"><tr role="row">
{%- if part.ticks %}<th role="columnheader" scope="col">{{ words.DONE }}</th>{% endif %}
{%- for column in part.columns %}<th role="columnheader" scope="col"\
{% if column.anchor == "end" %} class="number"{% endif %}>{{ column.title or words.WHAT }}</th>{% endfor -%}
</tr></thead>
<tbody role="rowgroup">
{%- for row in part.rows %}
<tr role="row"{% if row.total %} class="total"{% elif row.notes %} class="told"{% endif %}>
{%- if part.ticks %}<td role="cell" data-column="{{ words.DONE }}">{% if not row.total %}\
<input type="checkbox" aria-label="{{ words.row_done(row.cells[0]) }}">{% endif %}</td>{% endif %}
{%- for cell in row.cells %}{% set column = part.columns[loop.index0] %}
{%- if loop.first and cell %}<th role="rowheader" scope="row" data-column="{{ column.title }}">\
{{ cell }}</th>
{%- else %}<td role="cell" data-column="{{ column.title }}"{% if column.anchor == "end" %} class="number"\
{% endif %}>{{ cell }}</td>
{%- endif %}{% endfor -%}
</tr>
{%- for note in row.notes %}
<tr role="row"{% if not loop.last %} class="told"{% endif %}>\
<td role="cell" class="notes" colspan="{{ part.columns | length + part.ticks }}">\
<div>{{ note }}</div></td></tr>
{%- endfor %}
{%- endfor %}
</tbody>
</table>
</div>
{%- elif part.kind == "Cards" %}
<ol class="cards{% if part.small %} small{% endif %}">
{%- for card in part.cards %}
<li>
<h3>{{ card.title }}</h3>
{{ figure(card) }}
{%- if card.beside %}
<div class="beside">
{{ figure(card.beside) }}
</div>
{%- endif %}
{%- for line in card.lines %}
<p>{{ line }}</p>
{%- endfor %}
</li>
{%- endfor %}
</ol>
{%- endif %}
{%- endfor %}
{%- if chapter.note %}
<p class="under">{{ chapter.note }}</p>
{%- endif %}
{%- if chapter.sheets and chapter.print %}
<h3>{{ words.TO_PRINT }} <small>{{ words.pages_words(chapter.sheets | length) }}</small></h3>
<p>{{ words.NOT_TRUE }}</p>
{%- endif %}
{%- if chapter.sheets %}
<ul class="sheets{{ "" if chapter.print else " large" }}">
{%- for sheet in chapter.sheets %}
<li>{{ figure(sheet) }}</li>
{%- endfor %}
</ul>
{%- endif %}
</section>
{%- endfor %}
</main>
</body>
</html>
"""
"""`chapters` hold what `html_book` has made of a book's: strings are escaped, drawings are marked as safe."""
