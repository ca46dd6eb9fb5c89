/**
 * Knows a recipe as plain facts, one a line in a stable order, so that two of them laid side by side differ only where a cook would.
 */

import { likelyGrams } from '../food/weigh.ts';
import { gramsText } from '../measure/number-text.ts';
import { measureText } from '../recipe/measures/measure-text.ts';
import type { Part, Recipe } from '../recipe/model.ts';
import { collapse } from '../recipe/words.ts';
import { measuresOf } from './report-part.ts';
import { saidOf } from './said-of.ts';

export function factsText(recipe: Recipe): string {
  const lines = [`recipe ${recipe.name}`];
  for (const { line } of recipe.outline.head) {
    const text = line.text.slice(0, line.comment?.start ?? line.text.length);
    lines.push(`  ${collapse(text)}`);
  }
  for (const part of recipe.parts) lines.push('', ...partLines(part));
  for (const trial of recipe.outline.trials)
    lines.push('', ...trial.lines.filter((l) => l.statement.kind !== 'blank').map((l) => collapse(l.text)));
  for (const food of recipe.outline.foods)
    lines.push('', ...food.lines.filter((l) => l.statement.kind !== 'blank').map((l) => collapse(l.text)));
  return `${lines.join('\n')}\n`;
}

function partLines(part: Part): string[] {
  const { head, steps } = part;
  return [
    collapse(`part ${head.name}${head.kindNode === undefined ? '' : ` as ${head.kindNode.text}`}`),
    ...head.ingredients.map((ingredient) => {
      const { name, weighed, optional } = ingredient;
      const grams = weighed.known ? `${gramsText(likelyGrams(weighed))} g` : 'no weight';
      const said = saidOf(ingredient, head);
      return `  ${optional ? 'optional ' : ''}${name}${said === '' ? '' : `, ${said}`}: ${grams}`;
    }),
    ...measuresOf(part).map(({ name, value_low: low, value_high: high }) =>
      low === null || high === null ? `  ${name}: not known` : `  ${name}: ${measureText(name, low, high)}`,
    ),
    ...steps.map(({ line, sentence }) => {
      const text = head.source.lines[line]?.text ?? '';
      return `  do ${collapse(text.slice(sentence.start, sentence.end))}`;
    }),
  ];
}
