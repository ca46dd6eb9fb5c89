/**
 * Knows how view 5 shows the draft of a label: the facts of a serving, the ingredients, what it takes for granted, and what is to be asked.
 * Refuses to work anything out.
 */

import type { Label } from '../declared.ts';
import { escapeHtml } from '../escape-html.ts';
import { referenceSaid, rowSaid } from '../label/draft-text.ts';
import { euRows, type FactsRow, usRows } from '../label/facts-rows.ts';
import { ingredientsSaid } from '../label/said.ts';
import { choice } from './controls.ts';
import type { ViewFacts } from './facts.ts';
import { namesIn } from './figures.ts';

export function draftSection({ label, look, mode }: ViewFacts): string {
  const draft = label();
  const { us, eu, assumes, ask, brings_not_known: unknown } = draft;
  const asked = mode === 'live' ? choice('look-cooked', 'Figures', look.cooked ? 'cooked' : 'raw', WAYS) : '';
  const reference = us.reference === null ? '' : `Reference amount ${referenceSaid(us.reference)}.`;
  return [
    `<h2>Draft of a label ${asked}</h2>`,
    `<p class="small soft">${assumes.map(escapeHtml).join(' ')}</p>`,
    us.facts === null
      ? ''
      : factsTable(
          `Nutrition Facts, United States: ${us.serving ?? us.facts.of}`,
          usRows(us.facts),
          draft.not_known_for,
        ),
    `<p class="small soft">${escapeHtml(reference)} ${contains(us.contains, unknown)}</p>`,
    eu.nutrition === null ? '' : euTable(eu.nutrition, draft.not_known_for),
    eu.ingredients.length === 0
      ? ''
      : `<p class="measure"><b>Ingredients:</b> ${escapeHtml(ingredientsSaid(eu.ingredients))}</p>`,
    ask.length === 0
      ? ''
      : `<h3>To ask</h3>\n<ul class="lines">${ask.map((sentence) => `<li>${escapeHtml(sentence)}</li>`).join('')}</ul>`,
  ]
    .filter((part) => part !== '')
    .join('\n');
}

const WAYS = [
  ['raw', 'as it goes in'],
  ['cooked', 'as cooked'],
] as const;

const contains = (names: readonly string[], unknown: readonly string[]): string =>
  `<b>Contains:</b> ${escapeHtml(names.length === 0 ? 'none of the list is found' : names.join(', '))}${unknown.length === 0 ? '' : `; not known for ${namesIn(unknown)}`}.`;

const euTable = (label: Label, missing: Missing): string =>
  factsTable('Nutrition declaration, European Union: 100 g', euRows(label), missing);

type Missing = Readonly<Record<string, readonly string[] | undefined>>;

function factsTable(caption: string, rows: readonly FactsRow[], missing: Missing): string {
  const cells = rows.map(({ name, within, figure, from }) => {
    const daily = figure?.daily_percent;
    const unknown = missing[from] ?? [];
    const said =
      figure === null
        ? `<td class="unknown" colspan="2">not known${unknown.length === 0 ? '' : ` for ${namesIn(unknown)}`}</td>`
        : `<td class="n">${escapeHtml(rowSaid('', figure.text).trim())}</td><td class="n">${daily === undefined ? '' : `${daily} %`}</td>`;
    return `<tr><th scope="row"${within > 0 ? ' class="within"' : ''}>${escapeHtml(name)}</th>${said}</tr>`;
  });
  return `<table class="figures"><caption>${escapeHtml(caption)}</caption>\n<tbody>\n${cells.join('\n')}\n</tbody></table>`;
}
