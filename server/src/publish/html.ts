/**
 * Knows a page for readers as one HTML file: no script, our own plain look, for the screen and for A4 and Letter paper.
 */

import { jsonLd } from './json-ld.ts';
import type { TextPieces } from './plain-pages.ts';
import {
  allergenLines,
  headFacts,
  ingredientWords,
  nutritionLines,
  type PageSection,
  type ReaderPage,
} from './reader-page.ts';

export const STYLE = `
:root { color-scheme: light; --ink: #1d1b16; --soft: #5a554a; --line: #c9c2b2; --paper: #fffdf8; }
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1.0625rem/1.55 Georgia, 'Times New Roman', serif; }
main { max-width: 44rem; margin: 0 auto; padding: 2rem 1.25rem 4rem; }
h1 { font-size: 2rem; line-height: 1.2; margin: 0 0 .25rem; }
h2 { font-size: 1.25rem; margin: 2rem 0 .5rem; border-bottom: 1px solid var(--line); padding-bottom: .2rem; }
h3 { font-size: 1.0625rem; margin: 1.25rem 0 .25rem; }
h3::first-letter { text-transform: uppercase; }
.by, .state, footer { color: var(--soft); }
.state { border-left: .25rem solid var(--line); padding-left: .75rem; }
.facts { display: grid; grid-template-columns: max-content 1fr; gap: .15rem 1rem; margin: 1rem 0; }
.facts dt { color: var(--soft); }
.facts dd { margin: 0; }
ol { padding-left: 1.5rem; margin: 0; }
ol li { margin: .4rem 0; }
ul.list { list-style: none; margin: 0; padding: 0; }
ul.list li { display: grid; grid-template-columns: 15rem 1fr; gap: 1rem; padding: .2rem 0; border-bottom: 1px dotted var(--line); }
.caution { border: 2px solid var(--ink); padding: .5rem 1rem; }
.caution h2 { border: 0; margin: 0; }
table { border-collapse: collapse; }
table.figures { width: 100%; max-width: 26rem; }
th.of { padding-left: 1rem; }
td, th { text-align: left; font-weight: normal; padding: .15rem 1.5rem .15rem 0; border-bottom: 1px dotted var(--line); }
caption { text-align: left; color: var(--soft); }
@media (max-width: 30rem) { ul.list li { grid-template-columns: 1fr; gap: 0; } }
@media print {
  @page { margin: 16mm; }
  body { background: none; font-size: 10.5pt; }
  main { max-width: none; padding: 0; }
  h2, h3 { break-after: avoid; }
  li, ul.list, table, .caution { break-inside: avoid; }
  h1 { margin-top: 0; }
  h2 { margin: 1.2rem 0 .3rem; }
  h3 { margin: .7rem 0 .1rem; }
  p, .facts { margin: .4rem 0; }
  ol li { margin: .15rem 0; }
  ul.list li, td, th { padding-top: .1rem; padding-bottom: .1rem; }
}
`.trim();

/** The pieces of the page, for a template of the house. */
export interface HtmlPieces extends TextPieces {
  readonly style: string;
  readonly data: string;
}

export function htmlPage(page: ReaderPage): string {
  const p = htmlPieces(page);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${p.title}</title>
<style>
${p.style}
</style>
${p.data}
</head>
<body>
<main>
<h1>${p.title}</h1>
${[factsOf(page), p.state, aheadOf(page), p.cautions, p.ingredients, p.method, p.notes, p.allergens, p.nutrition].filter((x) => x !== '').join('\n')}
</main>
</body>
</html>
`;
}

export function htmlPieces(page: ReaderPage): HtmlPieces {
  const nutrition = nutritionLines(page);
  const many = page.sections.length > 1;
  const linked = linkedIn(page);
  return {
    title: escapeHtml(page.title),
    head: [factsOf(page), aheadOf(page)].filter((x) => x !== '').join('\n'),
    ingredients: `<section aria-labelledby="ingredients">\n<h2 id="ingredients">Ingredients</h2>\n${page.sections
      .filter((s) => s.ingredients.length > 0)
      .map((s) => `${heading(s, many, linked)}${ingredientList(s, linked)}`)
      .join('\n')}\n</section>`,
    method: `<section aria-labelledby="method">\n<h2 id="method">Method</h2>\n${page.sections
      .filter((s) => s.steps.length > 0)
      .map((s) => `${heading(s, many)}<ol>\n${s.steps.map((step) => `<li>${escapeHtml(step)}</li>`).join('\n')}\n</ol>`)
      .join('\n')}\n</section>`,
    notes:
      page.notes.length === 0 && page.source === undefined
        ? ''
        : `<section aria-labelledby="notes">\n<h2 id="notes">Notes</h2>\n${[
            ...page.notes.map((note) => `<p>${escapeHtml(note)}</p>`),
            ...(page.source === undefined ? [] : [`<p>From: ${escapeHtml(page.source)}</p>`]),
          ].join('\n')}\n</section>`,
    cautions:
      page.cautions.length === 0
        ? ''
        : `<section class="caution" role="note" aria-labelledby="caution">\n<h2 id="caution">Take care</h2>\n${list(page.cautions)}\n</section>`,
    allergens: `<section aria-labelledby="allergens">\n<h2 id="allergens">Allergens</h2>\n${allergenLines(page)
      .map((line) => `<p>${escapeHtml(line)}</p>`)
      .join('\n')}\n</section>`,
    nutrition:
      nutrition === undefined
        ? ''
        : `<section aria-labelledby="nutrition">\n<h2 id="nutrition">Nutrition</h2>\n<table class="figures">\n<caption>${escapeHtml(nutrition.title)}</caption>\n${nutrition.rows
            .map(
              ([name, value]) =>
                `<tr><th scope="row"${name.startsWith('of which') ? ' class="of"' : ''}>${escapeHtml(name)}</th><td>${escapeHtml(value)}</td></tr>`,
            )
            .join(
              '\n',
            )}\n</table>${nutrition.note === undefined ? '' : `\n<p>${escapeHtml(nutrition.note)}</p>`}\n</section>`,
    state: `<p class="state">${escapeHtml(page.state)}</p>`,
    style: STYLE,
    data: `<script type="application/ld+json">\n${jsonLd(page).trim()}\n</script>`,
  };
}

/** Who answers for it, how much it makes and how long it takes. */
function factsOf(page: ReaderPage): string {
  const facts = headFacts(page);
  const rows = facts.map(([name, value]) => `<dt>${escapeHtml(name)}</dt><dd>${escapeHtml(value)}</dd>`);
  return [
    ...(page.by === undefined ? [] : [`<p class="by">By ${escapeHtml(page.by)}</p>`]),
    ...(rows.length === 0 ? [] : [`<dl class="facts">\n${rows.join('\n')}\n</dl>`]),
  ].join('\n');
}

const aheadOf = ({ ahead }: ReaderPage): string =>
  ahead.length === 0
    ? ''
    : `<section aria-labelledby="ahead">\n<h2 id="ahead">Ahead of time</h2>\n${list(ahead)}\n</section>`;

/** The sections that a list of another takes in, with the id of each. */
function linkedIn({ sections }: ReaderPage): ReadonlyMap<string, string> {
  const named = new Set(sections.flatMap(({ ingredients }) => ingredients.flatMap(({ section }) => section ?? [])));
  return new Map(
    sections.flatMap(({ name, ingredients }, i): readonly [string, string][] =>
      named.has(name) && ingredients.length > 0 ? [[name, `part-${i + 1}`]] : [],
    ),
  );
}

function heading({ name }: PageSection, many: boolean, linked: ReadonlyMap<string, string> = NONE_LINKED): string {
  const id = linked.get(name);
  return many && name !== '' ? `<h3${id === undefined ? '' : ` id="${id}"`}>${escapeHtml(name)}</h3>\n` : '';
}
const NONE_LINKED: ReadonlyMap<string, string> = new Map();

function ingredientList({ ingredients }: PageSection, linked: ReadonlyMap<string, string>): string {
  const rows = ingredients.map((i) => {
    const { amount, rest } = ingredientWords(i);
    const id = linked.get(i.section ?? '');
    const said = id === undefined ? escapeHtml(rest) : `<a href="#${id}">${escapeHtml(rest)}</a>`;
    return `<li><span>${escapeHtml(amount)}</span> <span>${said}</span></li>`;
  });
  return `<ul class="list">\n${rows.join('\n')}\n</ul>`;
}

const list = (items: readonly string[]): string =>
  `<ul>\n${items.map((item) => `<li>${escapeHtml(item)}</li>`).join('\n')}\n</ul>`;

/** Text as HTML shows it, in an element and in a quoted attribute. */
export function escapeHtml(text: string): string {
  return (
    text
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
      .replaceAll('"', '&quot;')
      .replaceAll("'", '&#39;')
      // A page may not hold these at all.
      .replace(/[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f]/g, '\ufffd')
      // A line does not end between a figure and its degrees.
      .replace(/(\d) (?=°[CF])/g, '$1&nbsp;')
  );
}
