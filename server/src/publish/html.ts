/**
 * Knows a page for readers as one HTML file: the recipe as the live page shows it, with its state, allergens and nutrition; no script, for
 * the screen and for A4 and Letter paper.
 * Refuses to show what was found, but for its cautions.
 */

import type { RecipeState } from '../recipe/trials/state.ts';
import { escapeHtml } from './escape-html.ts';
import { jsonLd } from './json-ld.ts';
import type { ReportPicture } from './pictures.ts';
import type { TextPieces } from './plain-pages.ts';
import { headFacts, nutritionLines, type ReaderPage } from './reader-page.ts';
import { standingAlone } from './view/alone.ts';
import { differencesOf } from './view/differences.ts';
import type { Reading } from './view/facts.ts';
import { Notes } from './view/found.ts';
import { allergensSection } from './view/label.ts';
import { listSection } from './view/list.ts';
import { DEFS, mark } from './view/marks.ts';
import { methodSection } from './view/method.ts';
import { picturesOf } from './view/pictures.ts';
import type { StateMark } from './view/state.ts';
import { STYLE } from './view/style.ts';

/** The pieces of the page, for a template of the house. */
export interface HtmlPieces extends TextPieces {
  /** Of the dish. */
  readonly pictures: string;
  readonly style: string;
  readonly data: string;
}

export const htmlPage = (page: ReaderPage): string =>
  standingAlone({ title: page.title, head: htmlPieces(page).data, body: pageBody(page) });

/** What stands in its body; `pictures` are those that lie beside the page. */
export function pageBody(page: ReaderPage, pictures: readonly ReportPicture[] = []): string {
  const p = htmlPieces(page, pictures);
  const body = [p.pictures, p.cautions, aheadOf(page), p.ingredients, p.method, p.notes, p.allergens, p.nutrition];
  return `${DEFS}
<header>
<h1>${p.title}</h1>
${[p.state, factsOf(page)].filter((x) => x !== '').join('\n')}
</header>
<main class="plain">
${body.filter((x) => x !== '').join('\n')}
</main>
<footer>${LABELS}</footer>`;
}

const LABELS = 'Read every label: foods of one name differ by maker.';

export function htmlPieces(page: ReaderPage, pictures: readonly ReportPicture[] = []): HtmlPieces {
  const reading: Reading = {
    mode: 'read',
    look: {},
    page,
    differs: differencesOf(page, page),
    findings: [],
    missing: [],
    report: { pictures },
  };
  // A page for readers tells of nothing that was found but its cautions.
  const none = new Notes(reading);
  const notes = [
    ...page.notes.map((note) => `<p class="measure">${escapeHtml(note)}</p>`),
    ...(page.source === undefined ? [] : [`<p>From: ${escapeHtml(page.source)}</p>`]),
  ];
  return {
    title: escapeHtml(page.title),
    head: [factsOf(page), aheadOf(page)].filter((x) => x !== '').join('\n'),
    ingredients: listSection(reading, none),
    method: methodSection(reading, none),
    notes:
      notes.length === 0
        ? ''
        : `<section aria-labelledby="notes">\n<h2 id="notes">Notes</h2>\n${notes.join('\n')}\n</section>`,
    cautions:
      page.cautions.length === 0
        ? ''
        : `<section class="care" role="note" aria-labelledby="caution">\n<h2 id="caution">Take care</h2>\n${list(page.cautions)}\n</section>`,
    allergens: `<section>\n${allergensSection({ allergens: page.allergens, parts: page.sections }, true)}\n</section>`,
    nutrition: nutritionOf(page),
    state: `<p class="state">${mark(MARKS[page.proof.state])} ${escapeHtml(page.state)}</p>`,
    pictures: picturesOf(reading, 'dish'),
    style: STYLE,
    data: `<script type="application/ld+json">\n${jsonLd(page).trim()}\n</script>`,
  };
}

const MARKS = {
  'never cooked': 'never',
  'cooked, changed since': 'changed',
  'cooked as written': 'proved',
} as const satisfies Record<RecipeState, StateMark>;

/** One row a nutrient, by the label that is asked for. */
function nutritionOf(page: ReaderPage): string {
  const nutrition = nutritionLines(page);
  if (nutrition === undefined) return '';
  const rows = nutrition.rows.map(([name, value]) => {
    const within = name.startsWith('of which') ? ' class="within"' : '';
    return `<tr><th scope="row"${within}>${escapeHtml(name)}</th><td class="n">${escapeHtml(value)}</td></tr>`;
  });
  const note = nutrition.note === undefined ? '' : `\n<p class="small soft measure">${escapeHtml(nutrition.note)}</p>`;
  return `<section aria-labelledby="nutrition">\n<h2 id="nutrition">Nutrition</h2>\n<table class="figures">\n<caption>${escapeHtml(nutrition.title)}</caption>\n<tbody>\n${rows.join('\n')}\n</tbody>\n</table>${note}\n</section>`;
}

/** Who answers for it, how much it makes and how long it takes. */
function factsOf(page: ReaderPage): string {
  const rows = headFacts(page).map(({ name, value, more }) => {
    const small = more === undefined ? '' : `<small>${escapeHtml(more)}</small>`;
    return `<div><dt>${escapeHtml(name)}</dt><dd>${escapeHtml(value)}${small}</dd></div>`;
  });
  return [
    ...(page.by === undefined ? [] : [`<p class="by soft">By ${escapeHtml(page.by)}</p>`]),
    ...(rows.length === 0 ? [] : [`<dl class="facts">\n${rows.join('\n')}\n</dl>`]),
  ].join('\n');
}

const aheadOf = ({ ahead }: ReaderPage): string =>
  ahead.length === 0
    ? ''
    : `<section aria-labelledby="ahead">\n<h2 id="ahead">Ahead of time</h2>\n${list(ahead)}\n</section>`;

const list = (items: readonly string[]): string =>
  `<ul class="lines">\n${items.map((item) => `<li>${escapeHtml(item)}</li>`).join('\n')}\n</ul>`;
