/**
 * Knows view 5, whom it could hurt, what stands on a label, and what it costs.
 * Refuses to work anything out: it shows what the facts say.
 */
import { capital } from '../../recipe/words.ts';
import { escapeHtml } from '../escape-html.ts';
import { DAILY_NOTE } from '../label.ts';
import { allergenNames } from '../report-allergens.ts';
import type { Report, ReportAllergen } from '../report-shape.ts';
import { costSection } from './cost.ts';
import { draftSection } from './draft-label.ts';
import type { ViewFacts } from './facts.ts';
import { namesIn } from './figures.ts';
import { mark } from './marks.ts';
import { lackingAll, nutritionTable } from './nutrition.ts';

/** The content of `<section id="label">`. */
export function labelView(facts: ViewFacts): string {
  return [allergensSection(facts.report), nutritionSection(facts.report), draftSection(facts), costSection(facts)].join(
    '\n',
  );
}

/** Shared with the page for readers. */
export function allergensSection(
  {
    allergens,
    parts: lists,
  }: Pick<Report, 'allergens'> & { readonly parts: readonly { readonly ingredients: readonly unknown[] }[] },
  isForReaders = false,
): string {
  const { brought, may_be_brought: may, check_label: labels, not_known: unknown } = allergens;
  if (unknown.length === 0 && lists.every(({ ingredients }) => ingredients.length === 0))
    return '<h2>Allergens</h2>\n<p class="empty"><b>Nothing is listed</b>, so nothing is known of it.</p>';
  const found = brought.length + may.length > 0;
  const parts = [
    '<h2>Allergens</h2>',
    found ? allergenTable(brought, may) : '',
    found
      ? ''
      : `<p>${unknown.length === 0 ? 'None of the listed allergens is found.' : 'None is found in what is known.'}</p>`,
    ...labels.map(
      (label) =>
        `<p class="measure">Check the label of <b>${escapeHtml(label.food)}</b>: some makes have ${escapeHtml(allergenNames(label))}.</p>`,
    ),
    unknown.length === 0
      ? ''
      : `<p class="finding measure">${mark('warning', true)} <b>Not known for</b> ${namesIn(unknown)}<b>.</b> What ${unknown.length === 1 ? 'it brings' : 'these bring'} may be missing above${isForReaders ? '' : `, and every page for readers names ${unknown.length === 1 ? 'it' : 'them'}`}.</p>`,
    '<p class="small soft">US: FALCPA 2004 and the FASTER Act 2021. EU: Regulation 1169/2011, annex II. A label on the packet comes first.</p>',
  ];
  return parts.filter((part) => part !== '').join('\n');
}

function allergenTable(brought: readonly ReportAllergen[], may: readonly ReportAllergen[]): string {
  const rows = (all: readonly ReportAllergen[]): string => all.map(allergenRow).join('\n');
  const sure = brought.length === 0 ? '' : `<tbody>\n${rows(brought)}\n</tbody>`;
  const perhaps =
    may.length === 0
      ? ''
      : `\n<tbody class="part"><tr><th scope="rowgroup" colspan="4">May contain <small>by what is chosen</small></th></tr>\n${rows(may)}\n</tbody>`;
  return `<table class="stack allergens"><caption class="unseen">Allergens and what brings them</caption>
<thead><tr><th scope="col">${brought.length > 0 ? 'Contains' : '<span class="unseen">Allergen</span>'}</th><th scope="col">brought by</th><th scope="col">US list</th><th scope="col">EU list</th></tr></thead>
${sure}${perhaps}
</table>`;
}

/** What a cook calls what the law calls otherwise. */
const CALLED: Readonly<Record<string, string>> = {
  'cereals containing gluten': 'gluten',
  'crustacean shellfish': 'crustaceans',
  'tree nuts': 'nuts',
  soybeans: 'soya',
};

function allergenRow({ us, eu, by }: ReportAllergen): string {
  const name = us ?? eu ?? '';
  const listed = (side: string | null): string =>
    side === null ? '<td class="soft">not on this list</td>' : `<td>${escapeHtml(side)}</td>`;
  return `<tr><th scope="row"><b>${escapeHtml(capital(CALLED[name] ?? name))}</b></th><td>${escapeHtml(by.join(', '))}</td>${listed(us)}${listed(eu)}</tr>`;
}

function nutritionSection(report: Report): string {
  const { us_per_serving: us, cooked_g: cooked, weighed_trials: trials, not_counted: left } = report.nutrition;
  const basis =
    cooked === null
      ? 'before cooking; what cooking drives off is not taken away'
      : trials === 0
        ? `of ${Math.round(cooked)} g, as estimated after cooking`
        : `of ${Math.round(cooked)} g, as weighed after cooking${trials > 1 ? `, the mean of ${trials} trials` : ''}`;
  const notes = [
    us === null ? 'A serving is not known: the yield is no number of pieces.' : `${DAILY_NOTE}.`,
    'The EU label counts carbohydrate without fibre, and fibre at 2 kcal a gram.',
    left.length === 0 ? '' : `Not counted: ${namesIn(left)}.`,
  ];
  const lacking = lackingAll(report);
  if (lacking !== undefined)
    return lacking.length === 0
      ? '<h2>Nutrition</h2>\n<p class="empty"><b>Nothing is weighed</b>, so no figure is known.</p>'
      : `<h2>Nutrition</h2>\n<p class="measure"><b>Not known for</b> ${namesIn(lacking)}<b>:</b> no figure can be given without ${lacking.length === 1 ? 'it' : 'them'}.</p>`;
  return `<h2>Nutrition <small>${basis}</small></h2>
${nutritionTable(report)}
<p class="small soft">${notes.join(' ').trimEnd()}</p>`;
}
