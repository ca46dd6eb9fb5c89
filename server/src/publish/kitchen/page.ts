/**
 * Knows how a recipe looks at the stove: one step at a time, in letters that are read at 1.5 m, with three targets for wet hands.
 * Refuses a timer, a sound and a swipe, and to know who serves it.
 */
import { capital } from '../../recipe/words.ts';
import { escapeHtml } from '../escape-html.ts';
import type { Piece } from '../step-text.ts';
import { DEFS, mark } from '../view/marks.ts';
import type { KitchenFacts, KitchenStep } from './steps.ts';

/** Where each step is found, from 1, all of them, and the recipe itself. */
export interface KitchenLinks {
  readonly step: (number: number) => string;
  readonly all: string;
  readonly recipe: string;
}

/** What stands in `<body class="kitchen">` for one step, from 1. */
export function kitchenStep(facts: KitchenFacts, number: number, links: KitchenLinks): string {
  const step = facts.steps[number - 1];
  const next = facts.steps[number];
  if (step === undefined) return allSteps(facts, links);
  const errors = [...(number === 1 ? facts.errors : []), ...step.errors];
  return `${DEFS}
${head(facts, `Step ${number} of ${facts.steps.length}`)}
<main class="k" data-key="step-${number}">
<div class="now">
<p class="part soft">${escapeHtml(capital(step.part))}</p>
<h2>${piecesHtml(step.pieces)}</h2>
${errors.map((words) => `<p class="warn">${mark('error', true)} ${escapeHtml(words)}</p>`).join('\n')}
</div>
${beside(step)}
</main>
<nav class="k" aria-label="Steps">
<a rel="prev" href="${escapeHtml(number === 1 ? links.recipe : links.step(number - 1))}"><span aria-hidden="true">←</span> ${number === 1 ? 'The recipe' : 'Back'}</a>
<a href="${escapeHtml(links.all)}" data-all>All steps</a>
<a rel="next" href="${escapeHtml(next === undefined ? links.all : links.step(number + 1))}"><span class="then">${next === undefined ? '' : `Then ${then(next)}`}</span> <span class="go">${next === undefined ? 'Done' : 'Next'} <span aria-hidden="true">→</span></span></a>
</nav>`;
}

/** The same with all steps in a list, each as large as a wet finger. */
export function allSteps(facts: KitchenFacts, links: KitchenLinks): string {
  const rows = facts.steps.map(
    ({ part, pieces }, i) =>
      `<li><a href="${escapeHtml(links.step(i + 1))}"><span class="soft">${i + 1}</span> <span>${part === '' ? '' : `<span class="soft">${escapeHtml(capital(part))}:</span> `}${piecesHtml(pieces)}</span></a></li>`,
  );
  return `${DEFS}
${head(facts, `${facts.steps.length} steps`)}
<main class="k all">
${facts.errors.map((words) => `<p class="warn">${mark('error', true)} ${escapeHtml(words)}</p>`).join('\n')}
<ol>
${rows.join('\n')}
</ol>
</main>
<nav class="k" aria-label="Steps">
<a rel="prev" href="${escapeHtml(links.recipe)}"><span aria-hidden="true">←</span> The recipe</a>
<a rel="next" href="${escapeHtml(links.step(1))}"><span class="then"></span> <span class="go">First step <span aria-hidden="true">→</span></span></a>
</nav>`;
}

const head = ({ title, serve }: KitchenFacts, where: string): string =>
  `<header class="k">
<h1>${escapeHtml(title)}</h1>
<p><span id="awake" class="soft" role="status"></span> ${where}<span aria-hidden="true"> · </span>on the table ${serve}</p>
</header>`;

/** What it takes, or what its heat is. */
function beside({ takes, figures, errors }: KitchenStep): string {
  const bare = takes.every(({ amount }) => amount === '');
  const taken = takes.map(
    ({ amount, name, soft }) =>
      `<li>${bare ? '' : `<b>${escapeHtml(amount)}</b> `}<span>${escapeHtml(name)}${soft === '' ? '' : `<small>${escapeHtml(soft)}</small>`}</span></li>`,
  );
  // What is read from afar is not read with its words: it carries the mark.
  const warns = errors.length === 0 ? '' : `${mark('error', true)} `;
  const read = figures.map(
    ([label, value]) => `<div><dt>${escapeHtml(label)}</dt><dd>${warns}${escapeHtml(value)}</dd></div>`,
  );
  return `<div class="beside">
${taken.length === 0 ? '' : `<section class="takes"><h2>For this step</h2>\n<ul${bare ? ' class="bare"' : ''}>\n${taken.join('\n')}\n</ul></section>`}
${read.length === 0 ? '' : `<dl class="big">\n${read.join('\n')}\n</dl>`}
</div>`;
}

/** Temperatures and times in bold. */
const piecesHtml = (pieces: readonly Piece[]): string =>
  pieces
    .map(({ text, kind }) => (kind === 'heat' || kind === 'time' ? `<b>${escapeHtml(text)}</b>` : escapeHtml(text)))
    .join('');

/** The next step within a sentence. */
function then({ pieces }: KitchenStep): string {
  const text = pieces
    .map((piece) => piece.text)
    .join('')
    .replace(/[.\s]+$/, '');
  return escapeHtml(`${text.slice(0, 1).toLowerCase()}${text.slice(1)}`);
}

/** Over the sheet of the page. What must be read at 1.5 m is 50 px and more, on a tablet of 132 px to the inch; each target is 88 px high. */
export const KITCHEN_STYLE = `
html:has(.kitchen) { font-size: clamp(20px, 2.2vmax, 26px); }
.kitchen { padding: 0; min-height: 100vh; min-height: 100dvh; display: grid; grid-template-rows: auto 1fr auto; line-height: 1.25; font-variant-numeric: normal; }
.kitchen .k { max-width: none; width: 100%; margin: 0; padding-inline: 1.6rem; }
header.k { display: flex; flex-wrap: wrap; justify-content: space-between; align-items: baseline; gap: .2rem 1rem; padding-block: .8rem .6rem; border-bottom: 1px solid var(--rule); }
header.k h1 { font-size: 1rem; padding: 0; letter-spacing: 0; }
main.k { display: grid; grid-template-columns: 1fr; align-content: start; gap: 1.4rem 2.4rem; padding-block: 1.2rem; }
.now h2 { font-size: 2.15rem; line-height: 1.2; font-weight: 400; margin: .1rem 0 0; text-wrap: pretty; }
.now h2 b { white-space: nowrap; }
.now .part { margin: 0; }
.beside { display: grid; gap: 1.2rem; align-content: start; }
.big { display: grid; gap: .7rem 2.2rem; grid-template-columns: repeat(auto-fill, minmax(min(15rem, 100%), 1fr)); align-content: start; }
.big dt { color: var(--soft); } .big .mark { color: var(--error); width: .6em; height: .6em; vertical-align: .06em; } .big dd { font-size: 2.6rem; line-height: 1.1; font-weight: 600; letter-spacing: -.02em; }
.warn { font-size: 1.4rem; margin-top: 1.2rem; } .warn .mark { color: var(--error); }
.takes h2 { font-size: 1rem; font-weight: 400; margin: 0 0 .2rem; color: var(--soft); }
.takes ul { list-style: none; font-size: 1.95rem; line-height: 1.15; display: grid; grid-template-columns: auto 1fr; column-gap: .8rem; }
.takes li { display: grid; grid-template-columns: subgrid; grid-column: 1 / -1; padding: .22rem 0; align-items: baseline; }
.takes ul.bare, .takes ul.bare li { display: block; }
.takes li b { text-align: end; } .takes small { display: block; font-size: 1.2rem; }
.all ol { list-style: none; }
.all li a { display: flex; gap: .8rem; align-items: center; min-height: 88px; padding-block: .5rem; font-size: 1.3rem; color: var(--ink); text-decoration: none; border-bottom: 1px solid var(--hair); }
.all li a > .soft { min-width: 1.6em; text-align: end; flex: none; }
nav.k { position: sticky; bottom: 0; background: var(--paper); display: grid; grid-template-columns: auto auto 1fr; border-top: 1px solid var(--rule); padding: 0 !important; }
.all + nav.k { grid-template-columns: auto 1fr; }
nav.k a { display: flex; align-items: center; gap: .8rem; min-height: 88px; padding: .5rem 1.6rem; font-size: 1.3rem; color: var(--ink); }
nav.k a + a { border-inline-start: 1px solid var(--rule); } nav.k a:last-child { justify-content: space-between; }
.then { color: var(--soft); font-size: 1rem; display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 2; line-clamp: 2; overflow: hidden; }
.go { white-space: nowrap; }
@media (min-aspect-ratio: 1/1) { main.k:not(.all) { grid-template-columns: 1.36fr 1fr; } }
@media (max-width: 640px) { nav.k a { padding-inline: .8rem; } .then { display: none; } }
`.trim();
