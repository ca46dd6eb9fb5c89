/**
 * Knows what stands around every view: the recipe's name and state, its facts, the six links, and the caution at the foot.
 * Refuses to know what a view shows.
 */
import { escapeHtml } from '../html.ts';
import type { ViewFacts } from './facts.ts';
import type { ViewName } from './look.ts';
import { VIEWS } from './look.ts';
import { DEFS } from './marks.ts';

const TITLES: Readonly<Record<ViewName, string>> = {
  recipe: 'Recipe',
  formula: 'Formula',
  'made-of': 'Made of',
  day: 'Day',
  label: 'Cost and label',
  trials: 'Trials',
};

/** The page around one view: what stands in `<body>`. */
export function framed(facts: ViewFacts, view: ViewName, section: string): string {
  return `${DEFS}
<header>
<h1>${escapeHtml(facts.page.title)}</h1>
<p class="state">${escapeHtml(facts.page.state)}</p>
</header>
${facts.mode === 'print' ? '' : viewLinks(view)}
<main>
${section}
</main>
<footer>Estimates come with a range; a thermometer decides. Read every label: foods of one name differ by maker.</footer>`;
}

function viewLinks(view: ViewName): string {
  const links = VIEWS.map(
    (name) =>
      `<a href="#${name}" data-view="${name}"${name === view ? ' aria-current="page"' : ''}>${TITLES[name]}</a>`,
  );
  return `<nav class="views" aria-label="Views of the recipe">\n${links.join('\n')}\n</nav>`;
}
