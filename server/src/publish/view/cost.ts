/**
 * Knows how a cost is shown: the sum in a sentence, then what it is the sum of, dearest first.
 * Refuses to know the money, and to count what has no price as nothing.
 */
import { escapeHtml } from '../escape-html.ts';
import type { Report } from '../report-shape.ts';
import type { ViewFacts } from './facts.ts';
import { bar, lineLink, namesIn } from './figures.ts';

export function costSection({ report: { cost, nutrition }, ownLine }: ViewFacts): string {
  if (cost === null)
    return '<h2>Cost</h2>\n<p class="empty"><b>No prices are known.</b> A food of the house with a <b>price</b> line has one.</p>';
  const head = '<h2>Cost <small>by the house’s prices</small></h2>';
  const missing = cost.without_price;
  // Only water from the tap costs nothing.
  if (cost.total === 0)
    return missing.length === 0
      ? `${head}\n<p class="empty">Nothing is listed that could cost anything.</p>`
      : `${head}\n<p><b>Not known.</b> None of it has a price: ${namesIn(missing)}.</p>`;
  const each = cost.per_serving === null ? '' : `, ${money(cost.per_serving)} for ${escapeHtml(served(nutrition))}`;
  const share = cost.without_price_percent === null ? '' : `: ${shareText(cost.without_price_percent)} of the weight`;
  const sum = `<b>${cost.complete ? '' : 'At least '}${money(cost.total)}${each}.</b>`;
  return `${head}
<p>${sum}${missing.length === 0 ? '' : ` Not known for ${namesIn(missing)}${share}.`}</p>
${costTable(cost, ownLine)}`;
}

type Cost = NonNullable<Report['cost']>;

function costTable(cost: Cost, ownLine: ViewFacts['ownLine']): string {
  const { lines, per_serving: all, total, complete, without_price: missing } = cost;
  const sorted = lines.toSorted((a, b) => b.cost - a.cost);
  const dearest = sorted[0]?.cost ?? 0;
  const isServed = all !== null;
  const withParts = lines.some(({ part }) => part !== '');
  const partCell = (part: string, more = ' class="soft wide"'): string =>
    withParts ? `<td${more}>${escapeHtml(part)}</td>` : '';
  const rows = sorted.map(
    ({ line, part, name, cost, per_serving: each }) =>
      `<tr data-key="cost-${line}-${escapeHtml(name)}"><th scope="row">${lineLink(ownLine(line), name)}</th>${partCell(part)}<td class="n">${money(cost)}</td>${each === null ? '' : `<td class="n">${money(each)}</td>`}<td class="bars">${dearest > 0 ? bar([{ class: 'bar', width: (cost / dearest) * 100 }]) : ''}</td></tr>`,
  );
  const unpriced =
    missing.length === 0
      ? ''
      : `\n<tr><th scope="row" class="unknown">${missing.length} without a price</th>${partCell('', ' class="wide"')}<td class="n unknown">not known</td>${isServed ? '<td></td>' : ''}<td class="bars">${bar([{ class: 'notknown', width: 100 }])}</td></tr>`;
  return `<table class="stack from"><caption class="unseen">Cost by ingredient</caption>
<thead><tr><th scope="col">Ingredient</th>${withParts ? '<th scope="col" class="wide">part</th>' : ''}<th scope="col" class="n">cost</th>${isServed ? '<th scope="col" class="n">a serving</th>' : ''}<th scope="col" class="bars"><span class="unseen">drawn</span></th></tr></thead>
<tbody>
${rows.join('\n')}${unpriced}
</tbody>
<tfoot><tr><th scope="row">${complete ? 'In all' : 'At least'}</th>${partCell('', ' class="wide"')}<td class="n">${money(total)}</td>${isServed ? `<td class="n">${money(all)}</td>` : ''}<td></td></tr></tfoot></table>`;
}

const served = ({ us_per_serving: us }: Report['nutrition']): string => us?.of ?? 'one of the yield';

const money = (value: number): string => (value > 0 && value < 0.005 ? '&lt;0.01' : value.toFixed(2));

const shareText = (percent: number): string => (percent < 1 ? 'under 1 %' : `${Math.round(percent)} %`);
