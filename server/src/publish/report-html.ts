/**
 * Knows a report as one HTML file: the facts of `report.ts` in tables, in the plain look of the pages for readers.
 */
import { trimmed } from '../measure/number-text.ts';
import { bandText, measureText } from '../recipe/measures/measure-text.ts';
import { escapeHtml, STYLE } from './html.ts';
import type { Report, ReportIngredient, ReportPart } from './report-shape.ts';
import { hangsOn, reportText } from './report-text.ts';

export function reportHtml(report: Report): string {
  const name = escapeHtml(report.recipe ?? 'A recipe without a name');
  // What stands above the first part and below the last is told as in the text.
  const [head = '', ...rest] = reportText(report).split('\n\n');
  const tail = rest.at(-1) ?? '';
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${name}</title>
<style>
${STYLE}
</style>
</head>
<body>
<main>
<h1>${name}</h1>
${paragraphs(head.split('\n').slice(1))}
${report.parts.map(part).join('\n')}
<section aria-labelledby="rest">
<h2 id="rest">In all</h2>
${paragraphs(tail.split('\n'))}
</section>
</main>
</body>
</html>
`;
}

function part(of: ReportPart, i: number): string {
  const title = `${of.name === '' ? 'ingredients' : of.name}${of.kind === null ? '' : `, as ${of.kind}`}`;
  const measures = of.measures.map((m) => {
    const { name, value_low: low, value_high: high, band, verdict } = m;
    const known = low !== null && high !== null;
    return [
      name,
      known ? measureText(name, low, high) : 'not known',
      bandText(name, band),
      verdict ?? (known ? hangsOn(m) : ''),
    ];
  });
  return `<section aria-labelledby="part-${i}">
<h2 id="part-${i}">${escapeHtml(title)}</h2>
${table(['ingredient', 'grams', 'share', 'of the flour', 'from'], of.ingredients.map(row))}${notUnderstood(of)}
${measures.length === 0 ? '' : table(['measure', 'value', 'usual', ''], measures)}
</section>`;
}

const notUnderstood = ({ not_understood: lines }: ReportPart): string =>
  lines.length === 0
    ? ''
    : `\n${paragraphs(lines.map(({ where, text }) => `Not understood, and in no sum: ${where}, “${text}”`))}`;

function row(i: ReportIngredient): string[] {
  const { grams, grams_low: low, grams_high: high } = i;
  const spread = low === null || high === null || low === high ? '' : ` (${trimmed(low, 1)} to ${trimmed(high, 1)})`;
  return [
    i.name,
    grams === null ? 'not known' : `${trimmed(grams, 1)}${spread}`,
    i.share_percent === null ? '' : `${trimmed(i.share_percent, 1)} %`,
    i.bakers_percent === null ? '' : `${trimmed(i.bakers_percent, 1)} %`,
    i.grams_why,
  ];
}

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const cells = (tag: 'th' | 'td', of: readonly string[]) =>
    of
      .map((c, i) =>
        tag === 'th'
          ? `<th scope="col">${escapeHtml(c)}</th>`
          : i === 0
            ? `<th scope="row">${escapeHtml(c)}</th>`
            : `<td>${escapeHtml(c)}</td>`,
      )
      .join('');
  return `<table>\n<tr>${cells('th', heads)}</tr>\n${rows.map((r) => `<tr>${cells('td', r)}</tr>`).join('\n')}\n</table>`;
}

const paragraphs = (lines: readonly string[]): string =>
  lines
    .map((l) => l.trim())
    .filter((l) => l !== '')
    .map((l) => `<p>${escapeHtml(l)}</p>`)
    .join('\n');
