/** Knows the plan of a day as one HTML file: no script, drawn and in words, for the screen by day and night, and for paper. */
import { escapeHtml, STYLE } from './html.ts';
import { DRAWING_STYLE, planDrawing } from './plan-drawing.ts';
import type { PlanFacts } from './plan-facts.ts';
import { planLists, planNotes, planRows } from './plan-text.ts';
import { dayText, planSummary } from './plan-words.ts';

/** Over the pages for readers, which are for paper: a plan is looked at while somebody cooks. */
const PLAN_STYLE = `
:root { color-scheme: light dark; }
main { max-width: 60rem; }
td.at { white-space: nowrap; }
tr.critical td { font-weight: bold; }
.table { overflow-x: auto; }
@media screen and (prefers-color-scheme: dark) {
  :root { --ink: #ece5d6; --soft: #b0a894; --line: #4c463a; --paper: #1c1a16; }
}
`.trim();

export function planHtml(facts: PlanFacts): string {
  const title = escapeHtml(`For ${facts.serve}: ${facts.recipes.join(', ')}`);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${title}</title>
<style>
${STYLE}
${PLAN_STYLE}
${DRAWING_STYLE}
</style>
</head>
<body>
<main>
<h1>${title}</h1>
<p>${escapeHtml(planSummary(facts))}</p>
${planNotes(facts)
  .map((note) => `<p class="state">${escapeHtml(note)}</p>`)
  .join('\n')}
${planDrawing(facts)}
${table(facts)}
${planLists(facts)
  .map(([head, lines], i) => list(head, lines, i))
  .join('\n')}
<footer><p>${escapeHtml(facts.note)}</p></footer>
</main>
</body>
</html>
`;
}

function table(facts: PlanFacts): string {
  let day = 0;
  const rows = planRows(facts).map(({ from, to, days_before: days, critical, who, what, long, step }) => {
    const head = days === day ? '' : `<tr><th colspan="5" scope="rowgroup">${escapeHtml(dayText(days))}</th></tr>\n`;
    day = days;
    const cells = [step === null ? '' : String(step + 1), to === '' ? from : `${from}–${to}`, who, what, long].map(
      (cell, i) => `<td${i === 1 ? ' class="at"' : ''}>${escapeHtml(cell)}</td>`,
    );
    return `${head}<tr${critical ? ' class="critical"' : ''}>${cells.join('')}</tr>`;
  });
  return `<div class="table"><table>
<caption>In bold: the longest way. What is late there is late at the table.</caption>
<tr><th scope="col">step</th><th scope="col">when</th><th scope="col">by</th><th scope="col">what</th><th scope="col">how long</th></tr>
${rows.join('\n')}
</table></div>`;
}

const list = (head: string, lines: readonly string[], i: number): string =>
  `<section aria-labelledby="list-${i}">
<h2 id="list-${i}">${escapeHtml(head)}</h2>
<ul>
${lines.map((line) => `<li>${escapeHtml(line)}</li>`).join('\n')}
</ul>
</section>`;
