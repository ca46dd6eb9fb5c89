/** Knows the plan of a day as one HTML file: no script, the day as the page of a recipe draws it, for screens and for paper. */
import { escapeHtml } from './escape-html.ts';
import type { PlanFacts } from './plan-facts.ts';
import { standingAlone } from './view/alone.ts';
import { dayDrawn } from './view/day.ts';
import { DEFS } from './view/marks.ts';

export function planHtml(facts: PlanFacts): string {
  const title = `For ${facts.serve}: ${facts.recipes.join(', ')}`;
  return standingAlone({
    title,
    body: `${DEFS}
<header>
<h1>${escapeHtml(facts.recipes.join(', '))}</h1>
</header>
<main>
<section id="day">
${dayDrawn(facts, { mode: 'read', order: 'clock', writes: false })}
</section>
</main>
<footer>${escapeHtml(facts.note)}</footer>`,
  });
}
