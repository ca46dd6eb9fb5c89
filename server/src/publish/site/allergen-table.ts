/**
 * Knows the recipes of a folder against the allergens that labels must name: what each is known to have, may have, and what is not known.
 * Refuses a blank, and to say that a recipe has none of something while anything in it is not known.
 */
import { listedAllergens } from '../../food/allergens.ts';
import { escapeHtml } from '../escape-html.ts';
import type { Report } from '../report-shape.ts';

export interface AllergenRow {
  readonly title: string;
  /** From the page of the table on. */
  readonly href: string;
  readonly allergens: Report['allergens'];
}

type Side = 'eu' | 'us';
export type AllergenCell = 'yes' | 'may' | 'label' | 'not known' | 'no';

const NAMES: Readonly<Record<Side, string>> = { eu: 'European Union', us: 'United States' };

/** Of one allergen by the name of a side's list. */
export function allergenCell(allergens: Report['allergens'], side: Side, name: string): AllergenCell {
  if (allergens[side].includes(name)) return 'yes';
  if (allergens.may_contain[side].includes(name)) return 'may';
  if (allergens.check_label.some((label) => label[side].includes(name))) return 'label';
  return allergens.not_known.length > 0 ? 'not known' : 'no';
}

const CELLS: Readonly<Record<AllergenCell, string>> = {
  yes: '<td class="yes"><b>yes</b></td>',
  may: '<td class="may">may</td>',
  label: '<td class="may">label</td>',
  'not known': '<td class="unknown">not known</td>',
  no: '<td class="no">no</td>',
};

/** What stands in `<main>`. */
export function allergenTables(rows: readonly AllergenRow[]): string {
  const unknown = rows.filter(({ allergens }) => allergens.not_known.length > 0);
  return `<p class="measure"><b>yes</b>: an ingredient has it. <b>may</b>: it has it by what the cook chooses. <b>label</b>: some makes of an ingredient have it. <b>not known</b>: something in the recipe is not known, so nothing can be said. <b>no</b>: nothing that is listed has it. Read every label: foods of one name differ by maker.</p>
${(['eu', 'us'] as const).map((side) => table(rows, side)).join('\n')}
${unknown.length === 0 ? '' : `<h2>Not known</h2>\n<ul class="plain">\n${unknown.map(({ title, href, allergens }) => `<li><a href="${escapeHtml(href)}">${escapeHtml(title)}</a>: ${escapeHtml(allergens.not_known.join(', '))}</li>`).join('\n')}\n</ul>`}`;
}

function table(rows: readonly AllergenRow[], side: Side): string {
  const names = listedAllergens(side);
  const head = names.map((name) => `<th scope="col">${escapeHtml(name)}</th>`).join('');
  const body = rows.map(
    ({ title, href, allergens }) =>
      `<tr><th scope="row"><a href="${escapeHtml(href)}">${escapeHtml(title)}</a></th>${names.map((name) => CELLS[allergenCell(allergens, side, name)]).join('')}</tr>`,
  );
  return `<h2 id="${side}">${NAMES[side]}</h2>
<div class="scroll" tabindex="0" role="region" aria-labelledby="${side}"><table class="matrix">
<thead><tr><th scope="col">Recipe</th>${head}</tr></thead>
<tbody>
${body.join('\n')}
</tbody>
</table></div>`;
}

export const ALLERGEN_STYLE = `
main:has(.matrix) { max-width: 84rem; } body:has(.matrix) :is(header, .ways) { max-width: 84rem; }
.matrix th[scope=row] { white-space: nowrap; padding-inline-end: 12px; } .matrix thead th { min-width: 4.6rem; }
.matrix td { white-space: nowrap; } .matrix .no { color: var(--soft); }
.matrix tbody tr:nth-child(even) > * { background: var(--band); }
.plain { list-style: none; margin-top: 8px; }
@media print { .scroll { overflow: visible; } .matrix { font-size: 8pt; } .matrix thead th { min-width: 0; } }
`.trim();
