"""The catalogue's page, its style and its script, for jinja2. Everything the page needs is in the one file.

The script shows the blocks that every condition holds for, as `finding` does: each word begins a word of one
of a block's names. What is looked for stands after the `#` of the address, so that it can be kept and sent.
Without the script the page shows every block.
"""

from __future__ import annotations

from typing import Final

CATALOGUE_STYLE: Final = """
body { max-width: 84rem; }
form { display: flex; flex-wrap: wrap; gap: 0.75rem 1.5rem; align-items: end; margin: 1rem 0;
  position: sticky; top: 0; background: #ffffff; padding: 0.5rem 0;
  border-bottom: 0.0625rem solid var(--rule); }
form label { display: grid; gap: 0.125rem; font-size: 0.9375rem; color: var(--soft); }
form input, form select { font: inherit; color: var(--ink); min-height: 2.75rem; min-width: 0;
  max-width: 100%; padding: 0.25rem 0.5rem; border: 0.0625rem solid var(--rule); border-radius: 0.25rem;
  background: #ffffff; }
#words { width: min(100%, 18rem); }
#most { width: 7rem; }
select:focus-visible { outline: 0.1875rem solid #a13d00; outline-offset: 0.125rem; }
ul.blocks { list-style: none; padding: 0; display: grid; gap: 1.5rem;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, 13rem), 1fr)); }
ul.blocks h2 { font-size: 1.0625rem; margin: 0.5rem 0 0.125rem; border: 0; padding: 0; }
ul.blocks p { margin: 0 0 0.25rem; font-size: 0.9375rem; }
ul.blocks svg { display: block; width: 100%; height: auto; max-width: 15rem; }
ul.blocks summary { min-height: 1.5rem; font-size: 0.9375rem; color: var(--link); cursor: pointer; }
summary:focus-visible { outline: 0.1875rem solid #a13d00; outline-offset: 0.125rem; }
li[hidden], form[hidden] { display: none; }
@media (max-width: 48rem) { form { position: static; } }
@media print { form, details { display: none; } ul.blocks li { break-inside: avoid; } }
"""

SCRIPT: Final = """
"use strict";
const form = document.querySelector("form");
const blocks = Array.from(document.querySelectorAll("ul.blocks > li"));
const count = document.getElementById("count");
const fields = ["words", "family", "method", "symmetry", "most"];
const wordsOf = text => text.toLowerCase().replace(/['\\u2019]/g, "").match(/[\\p{L}\\p{N}_]+/gu) || [];
function isMeant(block, wanted) {
  const facts = block.dataset;
  const sought = wordsOf(wanted.words);
  const named = facts.names.split("|").some(name =>
    sought.every(word => name.split(" ").some(each => each.startsWith(word))));
  const has = (list, word) => !word || list.split(" ").includes(word);
  return named && has(facts.family, wanted.family) && has(facts.methods, wanted.method)
    && has(facts.symmetries, wanted.symmetry)
    && (!wanted.most || Number(facts.pieces) <= Number(wanted.most));
}
function show() {
  const wanted = Object.fromEntries(fields.map(id => [id, document.getElementById(id).value.trim()]));
  let found = 0;
  for (const block of blocks) {
    block.hidden = !isMeant(block, wanted);
    found += !block.hidden;
  }
  count.textContent = `FOUND_OF_BLOCKS`;
  const told = new URLSearchParams(Object.entries(wanted).filter(([, value]) => value)).toString();
  if (told !== location.hash.slice(1)) history.replaceState(null, "", told ? "#" + told : location.pathname);
}
function read() {
  const told = new URLSearchParams(location.hash.slice(1));
  for (const id of fields) document.getElementById(id).value = told.get(id) || "";
  show();
}
form.hidden = false;
form.addEventListener("input", show);
form.addEventListener("submit", event => event.preventDefault());
form.addEventListener("reset", () => setTimeout(show));
addEventListener("hashchange", read);
read();
"""

PAGE: Final = """\
<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; \
script-src 'unsafe-inline'">
<title>{{ title }}</title>
<style>{{ style }}</style>
</head>
<body>
<a class="skip" href="#main">{{ words.SKIP }}</a>
<header>
<h1>{{ title }}</h1>
<p class="under" id="count" role="status">{{ count }}</p>
</header>
<main>
<form hidden role="search" aria-label="{{ words.BLOCKS }}">
<label>{{ words.NAME }} <input type="search" id="words" autocomplete="off" spellcheck="false"></label>
<label>{{ words.FAMILY }} <select id="family"><option value="">{{ words.ANY_FAMILY }}</option>
{%- for family in families %}<option>{{ family }}</option>{% endfor %}</select></label>
<label>{{ words.MADE_BY }} <select id="method"><option value="">{{ words.ANY_WAY }}</option>
{%- for method in methods %}<option>{{ method }}</option>{% endfor %}</select></label>
<label>{{ words.SAME_BY }} <select id="symmetry"><option value="">{{ words.ANYTHING }}</option>
{%- for symmetry in symmetries %}<option>{{ symmetry }}</option>{% endfor %}</select></label>
<label>{{ words.MOST_PIECES }} <input type="number" id="most" min="1" inputmode="numeric"></label>
<label>&nbsp;<input type="reset" value="{{ words.SHOW_ALL }}"></label>
</form>
<ul class="blocks" id="main" tabindex="-1">
{%- for entry in entries %}
<li id="{{ entry.id }}" data-names="{{ entry.names }}" data-family="{{ entry.family }}" \
data-methods="{{ entry.methods }}" data-symmetries="{{ entry.symmetries }}" data-pieces="{{ entry.pieces }}">
{{ entry.svg }}
<h2>{{ entry.title }}</h2>
{%- if entry.also %}
<p>{{ words.also_words(entry.also) }}</p>
{%- endif %}
{%- for line in entry.lines %}
<p>{{ line }}</p>
{%- endfor %}
{%- for name, others in entry.shared %}
<p>{{ words.shared_name(name, others) }}</p>
{%- endfor %}
<details><summary>{{ words.MORE }}<span class="skip">{{ words.more_of(entry.title) }}</span></summary>
<p>{{ words.family_and_shelf(entry.families, entry.shelf) }}</p>
{%- for note in entry.notes %}
<p>{{ note }}</p>
{%- endfor %}
</details>
</li>
{%- endfor %}
</ul>
</main>
<script>{{ script }}</script>
</body>
</html>
"""
