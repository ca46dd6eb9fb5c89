/**
 * Knows the list by part in grams, with their spread, as shares of the flour and of all, each drawn to the heaviest part.
 * Refuses to work anything out but shares of the sums that the report has.
 */
import { capital } from '../../../recipe/words.ts';
import { escapeHtml } from '../../escape-html.ts';
import type { ReportIngredient, ReportPart } from '../../report-shape.ts';
import type { ViewFacts } from '../facts.ts';
import { bar, figure, figureCell, lineLink, namesIn } from '../figures.ts';
import { mark } from '../marks.ts';

interface Columns {
  /** Shares of the flour of each part, and of all flour. */
  readonly inPart: boolean;
  readonly inAll: boolean;
  /** Grams of all that is known, and of the heaviest part. */
  readonly all: number;
  readonly heaviest: number;
  /** Nothing of weight is left out. */
  readonly complete: boolean;
  readonly ownLine: ViewFacts['ownLine'];
}

export function ingredientsTable({ report, ownLine }: ViewFacts): string {
  const parts = report.parts.filter((part) => part.ingredients.length + part.not_understood.length > 0);
  if (parts.length === 0) return '<p class="empty">None are listed yet.</p>';
  const sums = parts.map(gramsOf);
  const lacking = parts.flatMap((part) => [
    ...part.ingredients.filter((i) => i.grams === null && !i.optional && !i.to_taste).map(({ name }) => name),
    ...part.not_understood.map(({ text }) => text),
  ]);
  const columns: Columns = {
    inPart: parts.some(showsFlour),
    inAll: parts.some((part) => part.ingredients.some((i) => i.flour_percent !== null)),
    all: sums.reduce((sum, grams) => sum + grams, 0),
    heaviest: Math.max(...sums),
    complete: lacking.length === 0,
    ownLine,
  };
  const heads = [
    '<th scope="col">Ingredient</th>',
    '<th scope="col" class="wide">as written</th>',
    '<th scope="col" class="n">grams</th>',
    '<th scope="col" class="n wide">spread</th>',
    columns.inPart ? '<th scope="col" class="n">% of flour<br>in the part</th>' : '',
    columns.inAll ? `<th scope="col" class="n">${columns.inPart ? 'of flour' : '% of flour'}<br>in all</th>` : '',
    `<th scope="col" class="n">${columns.complete ? '% of all' : '% of what<br>is known'}</th>`,
    '<th scope="col" class="wide bars"><span class="unseen">drawn</span></th>',
  ];
  return `${notKnown(lacking)}<div class="scroll"><table class="stack">
<caption class="unseen">Ingredients by part: grams${columns.inPart || columns.inAll ? ', share of the flour' : ''}, share of all</caption>
<thead><tr>${heads.join('')}</tr></thead>
${parts.map((part) => partRows(part, columns)).join('\n')}
${footOf(columns)}
</table></div>`;
}

function notKnown(lacking: readonly string[]): string {
  const names = [...new Set(lacking)];
  if (names.length === 0) return '';
  return `<p class="finding measure">${mark('note', true)} What ${names.length === 1 ? 'this weighs' : 'these weigh'} is not known, so shares are of the rest: ${namesIn(names)}.</p>\n`;
}

/** Of all that is weighed and not optional; a part in percentages has no grams of its own. */
const gramsOf = ({ ingredients, relative }: ReportPart): number =>
  relative ? 0 : ingredients.reduce((sum, { grams, optional }) => sum + (optional ? 0 : (grams ?? 0)), 0);

/** Whether the part is reckoned by its flour. */
const showsFlour = ({ ingredients }: ReportPart): boolean => ingredients.some((i) => i.bakers_percent !== null);

function partRows(part: ReportPart, columns: Columns): string {
  const { name, kind, relative } = part;
  const grams = gramsOf(part);
  const title = `${escapeHtml(name === '' ? 'The list' : capital(name))}${kind === null ? '' : ` <small>as ${escapeHtml(kind)}</small>`}`;
  const head = rowOf(columns, {
    head: `<th scope="rowgroup">${title}</th>`,
    grams: relative ? '<td class="n soft">in per cent</td>' : gramsCell(grams),
    share: relative ? '' : percentCell(share(grams, columns.all)),
    drawn: relative ? '' : bar([{ class: 'ink', width: share(grams, columns.heaviest) }]),
  });
  const rows = [
    head,
    ...part.ingredients.map((ingredient) => ingredientRow(part, ingredient, columns)),
    ...part.not_understood.map(({ text }) => unknownRow(columns, { title: escapeHtml(text), below: '' })),
  ];
  return `<tbody class="part">\n${rows.join('\n')}\n</tbody>`;
}

/** The cells of a row; what is left out is empty. */
interface Cells {
  readonly key?: string;
  readonly head: string;
  readonly written?: string;
  readonly grams: string;
  readonly spread?: string;
  readonly inPart?: string;
  readonly inAll?: string;
  readonly share: string;
  readonly drawn: string;
}

const EMPTY = '<td></td>';

function rowOf({ inPart, inAll }: Columns, cells: Cells): string {
  return [
    `<tr${cells.key === undefined ? '' : ` data-key="${cells.key}"`}>`,
    cells.head,
    `<td class="soft wide">${cells.written ?? ''}</td>`,
    cells.grams,
    `<td class="n soft wide">${cells.spread ?? ''}</td>`,
    inPart ? (cells.inPart ?? EMPTY) : '',
    inAll ? (cells.inAll ?? EMPTY) : '',
    cells.share === '' ? EMPTY : cells.share,
    `<td class="wide bars">${cells.drawn}</td></tr>`,
  ].join('');
}

function ingredientRow(part: ReportPart, ingredient: ReportIngredient, columns: Columns): string {
  const { name, line, grams, written, optional } = ingredient;
  const asWritten = isGramsAlone(written) ? '' : written.replace(/\s+/g, ' ');
  const key = escapeHtml(`list-${line}-${name}`);
  const title = `${lineLink(columns.ownLine(line), name)}${optional ? ' <small>optional</small>' : ''}`;
  if (grams === null)
    return unknownRow(columns, { key, title, below: asWritten, words: ingredient.to_taste ? 'to taste' : 'not known' });
  const spread = spreadOf(ingredient);
  return rowOf(columns, {
    key,
    head: headOf(title, [asWritten, spread]),
    written: escapeHtml(asWritten),
    grams: part.relative ? EMPTY : gramsCell(grams),
    spread,
    inPart: percentCell(ingredient.bakers_percent),
    inAll: percentCell(ingredient.flour_percent),
    share: part.relative || optional ? '' : percentCell(share(grams, columns.all)),
    drawn: part.relative ? '' : bar([{ class: 'bar', width: share(grams, columns.heaviest) }]),
  });
}

/** Narrow, what has no column of its own stands under the name. */
function headOf(title: string, below: readonly string[]): string {
  const words = below.filter((each) => each !== '').join(', ');
  const small = words === '' ? '' : `<span class="narrow"><br><small>${escapeHtml(words)}</small></span>`;
  return `<th scope="row">${title}${small}</th>`;
}

/** A stub of hatching: nobody knows how long it would be. */
function unknownRow(
  columns: Columns,
  { key, title, below, words = 'not known' }: { key?: string; title: string; below: string; words?: string },
): string {
  return rowOf(columns, {
    ...(key !== undefined && { key }),
    head: headOf(title, [below]),
    written: escapeHtml(below),
    grams: `<td class="n unknown">${words}</td>`,
    share: '',
    drawn: bar([{ class: 'notknown', width: STUB }]),
  });
}

const STUB = 12;

const footOf = (columns: Columns): string =>
  `<tfoot>${rowOf(columns, {
    head: `<th scope="row">${columns.complete ? 'In all' : 'Known'}</th>`,
    grams: gramsCell(columns.all),
    share: columns.all > 0 ? percentCell(100) : '',
    drawn: '',
  })}</tfoot>`;

/** A weight in grams and nothing else: the column of grams says it. */
const isGramsAlone = (written: string): boolean => /^\s*[\d.]+\s*g\s*$/.test(written);

/** A spread is written where it is more than this share of the weight. */
const WORTH_WRITING = 0.05;

function spreadOf({ grams, grams_low: low, grams_high: high }: ReportIngredient): string {
  if (grams === null || low === null || high === null || high - low <= WORTH_WRITING * grams) return '';
  return `${figure(low)}–${figure(high)}`;
}

const share = (grams: number, of: number): number => (of > 0 ? (grams / of) * 100 : 0);

/** A whole gram as it is written; other weights as any figure. */
const gramsCell = (grams: number): string =>
  Number.isInteger(grams) ? `<td class="n d0">${grams}</td>` : figureCell(grams);

/** Below 100 with one decimal, so that the column stands on its point. */
function percentCell(percent: number | null): string {
  if (percent === null) return EMPTY;
  const whole = percent >= 99.95;
  const text = percent > 0 && percent < 0.05 ? '&lt;0.1' : percent.toFixed(whole ? 0 : 1);
  return `<td class="n${whole ? ' d0' : ''}">${text}</td>`;
}
