/**
 * Knows the table of nutrition: one row a nutrient, a serving beside 100 g, as weighed and as each side's label has it.
 * Refuses to round for a label, and to work anything out.
 */
import { capital } from '../../recipe/words.ts';
import { escapeHtml } from '../escape-html.ts';
import type { LabelFigure } from '../label.ts';
import type { LabelField, Report, ServingField } from '../report-shape.ts';
import { bar, figure, namesIn, percentOf } from './figures.ts';

interface Row {
  readonly name: string;
  readonly unit: string;
  /** Of the nutrient above. */
  readonly within?: true;
  readonly figures: ServingField;
  readonly label: LabelField | 'sodium';
  /** What says for which ingredients it is not known. */
  readonly from: LabelField;
}

const ROWS: readonly Row[] = [
  { name: 'energy', unit: 'kcal', figures: 'energy_kcal', label: 'energy', from: 'energy' },
  { name: 'fat', unit: 'g', figures: 'fat_g', label: 'fat', from: 'fat' },
  { name: 'of it saturates', unit: 'g', within: true, figures: 'saturates_g', label: 'saturates', from: 'saturates' },
  { name: 'carbohydrate', unit: 'g', figures: 'carbohydrate_g', label: 'carbohydrate', from: 'carbohydrate' },
  { name: 'of it sugars', unit: 'g', within: true, figures: 'sugars_g', label: 'sugars', from: 'sugars' },
  { name: 'fibre', unit: 'g', figures: 'fibre_g', label: 'fibre', from: 'fibre' },
  { name: 'protein', unit: 'g', figures: 'protein_g', label: 'protein', from: 'protein' },
  { name: 'salt', unit: 'g', figures: 'salt_g', label: 'salt', from: 'salt' },
  { name: 'sodium', unit: 'mg', figures: 'sodium_mg', label: 'sodium', from: 'salt' },
];

/** Columns of a serving go where nobody says how many there are. */
export function nutritionTable(report: Report): string {
  const { us_per_serving: us } = report.nutrition;
  const serving = us === null ? '' : escapeHtml(us.of).replace(/^one of /, 'one of<br>');
  const mass = us?.mass_g == null ? '' : `,<br>${figure(us.mass_g)} g`;
  const heads = [
    us === null ? '' : `<th scope="col" class="n">${serving}${mass}</th>`,
    '<th scope="col" class="n">100 g</th>',
    '<th scope="col" class="n">EU label,<br>100 g</th>',
    us === null ? '' : '<th scope="col" class="n">US label,<br>a serving</th>',
    us === null ? '' : '<th scope="col" class="n">% of<br>a day</th>',
    us === null ? '' : '<th scope="col" class="wide bars n">a whole day</th>',
  ];
  return `<div class="scroll"><table class="stack nutrition${us === null ? ' from' : ''}"><caption class="unseen">Nutrition</caption>
<thead><tr><td></td>${heads.join('')}</tr></thead>
<tbody>
${ROWS.map((row) => rowOf(row, report)).join('\n')}
</tbody></table></div>`;
}

/** Where every row lacks the same, it is said once. */
export function lackingAll({ nutrition: { not_known_for: missing } }: Report): readonly string[] | undefined {
  const [first, ...others] = ROWS.map(({ from }) => missing[from]);
  const isOne = others.every((names) => names !== undefined && names.join('\n') === first?.join('\n'));
  return isOne ? first : undefined;
}

function rowOf(row: Row, { per_serving: serving, nutrition }: Report): string {
  const { us_per_serving: us, eu_per_100g: eu, per_100g: per100, not_known_for: missing } = nutrition;
  const head = `<tr><th scope="row"${row.within ? ' class="within"' : ''}>${row.within ? row.name : capital(row.name)}, ${row.unit}</th>`;
  const [each, hundred] = [serving?.[row.figures] ?? null, per100?.[row.figures] ?? null];
  const [euFigure, usFigure] = [eu?.[row.label] ?? null, us?.[row.label] ?? null];
  const isServed = us !== null;
  if (each === null && hundred === null && euFigure === null && usFigure === null) {
    const names = missing[row.from] ?? [];
    const said = names.length === 0 ? 'not known' : `not known for ${namesIn(names)}`;
    const drawn = isServed ? `<td class="wide bars">${bar([{ class: 'notknown', width: 100 }])}</td>` : '';
    return `${head}<td class="unknown" colspan="${isServed ? 5 : 2}">${said}</td>${drawn}</tr>`;
  }
  const daily = usFigure?.daily_percent;
  return [
    head,
    isServed ? valueCell(each, row.unit) : '',
    valueCell(hundred, row.unit),
    labelCell(euFigure, row.label !== 'sodium'),
    isServed ? labelCell(usFigure, row.label !== 'salt') : '',
    isServed ? `<td class="n">${daily ?? ''}</td>` : '',
    isServed ? `<td class="wide bars">${daily === undefined ? '' : dayBar(daily)}</td>` : '',
    '</tr>',
  ].join('');
}

/** Grams to the tenth, kilocalories and milligrams whole, on one point. */
function valueCell(value: number | null, unit: string): string {
  if (value === null) return UNKNOWN;
  if (unit !== 'g' || value === 0) return `<td class="n d0">${Math.round(value)}</td>`;
  return `<td class="n">${value > 0 && value < 0.05 ? '&lt;0.1' : value.toFixed(1)}</td>`;
}

const UNKNOWN = '<td class="n unknown">not known</td>';

/** What a label declares, without the unit that the row names; empty where that label has no such row. */
function labelCell(declared: LabelFigure | null, isOnLabel: boolean): string {
  if (!isOnLabel) return '<td class="n"></td>';
  if (declared === null) return UNKNOWN;
  const text = escapeHtml(declared.text.replace(/^(?!.*kJ)(.*) (?:g|mg|kcal)$/, '$1'));
  return `<td class="n">${text.replace(' / ', '<br>')}</td>`;
}

/** Up to a line at the whole day, and beyond it on the same scale. */
function dayBar(percent: number): string {
  const scale = Math.max(100, percent);
  const day = percentOf((100 / scale) * 100);
  return bar(
    [{ class: 'bar', width: (percent / scale) * 100 }],
    `<line class="edge" x1="${day}" x2="${day}" y1="-4" y2="13"/>`,
  );
}
