/** Grams where the amount of a line of the list is no weight: behind the name, so that the columns stay. A double click writes `2 cups = 250 g`. */

import { wrongPlaces } from '../../checks/finding.ts';
import { convertRecipe } from '../../edits/convert.ts';
import { likelyGrams } from '../../food/weigh.ts';
import { gramsText } from '../../measure/number-text.ts';
import { equalOf, isMass, measuresOf } from '../../notation/item-amounts.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { weightFact } from '../facts.ts';
import type { Hint } from './hint.ts';

export function gramHints({ head }: Part): Hint[] {
  if (head.nominal) return [];
  return head.ingredients.flatMap((ingredient) => {
    const { node, nameNode, line, shares } = ingredient;
    const label = gramsLabel(ingredient);
    if (label === undefined || node.name === undefined || shares === true) return [];
    const alone = head.ingredients.filter((i) => i.line === line).length === 1;
    const facts = () => [weightFact(ingredient)];
    return [{ line, of: nameNode, label, facts, ...(alone && { edits: besideTheMeasure }) }];
  });
}

/** `= 120 g`, `≈ 125 g` of what a cup holds more or less, `120 to 180 g` of what nobody can say closer. */
function gramsLabel({ node, weighed, free }: Ingredient): string | undefined {
  if (!weighed.known || free || node.amount?.kind !== 'measured' || equalOf(node) !== undefined) return undefined;
  if (measuresOf(node).some(isMass)) return undefined;
  const { low, high } = weighed.grams;
  const likely = likelyGrams(weighed);
  if (gramsText(low) === gramsText(high)) return `= ${gramsText(low)} g`;
  if (high - low > WIDE * likely) return `${gramsText(low)} to ${gramsText(high)} g`;
  return `≈ ${gramsText(likely)} g`;
}

/** A range wider than this, as a share of the likeliest, is shown as one. */
const WIDE = 0.3;

const besideTheMeasure: NonNullable<Hint['edits']> = ({ document, recipe, findings }, at) =>
  convertRecipe(document, recipe, {
    to: 'weight',
    both: true,
    lines: { first: at, last: at },
    marked: wrongPlaces(findings),
  }).edits;
