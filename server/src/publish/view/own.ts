/**
 * Knows in what a text is written: how many pieces it makes, in weights or in cups, in which degrees.
 * Refuses to turn one into another.
 */
import { heatsOf } from '../../recipe/journey/figures.ts';
import type { Recipe } from '../../recipe/model.ts';
import type { MeasuresOrder } from '../two-measures.ts';

/** What stands first in the text: measures where more of its lines are cups than weights. */
export function ownMeasures({ parts }: Recipe): MeasuresOrder {
  let cups = 0;
  for (const { node } of parts.flatMap((part) => part.head.ingredients)) {
    if (node.amount?.kind !== 'measured') continue;
    const unit = node.amount.unit?.symbol;
    if (unit === 'cup' || unit === 'pint' || unit === 'quart') cups++;
    else if (unit === 'g' || unit === 'kg') cups--;
  }
  return cups > 0 ? 'measure-first' : 'weight-first';
}

/** The number of what a recipe makes, pieces or of a unit; undefined for a range or no yield. */
export function madeOf({ yield: made }: Recipe): number | undefined {
  const amount = made?.node.amount;
  if (amount === undefined) return undefined;
  const { low, high } = amount.quantity;
  return low === high && low > 0 ? low : undefined;
}

/** The degrees that more of its temperatures are written in. */
export function ownDegrees({ parts, oven }: Recipe): 'C' | 'F' {
  let warmer = oven?.node.unit === 'F' ? 1 : 0;
  for (const step of parts.flatMap((part) => part.steps))
    for (const { written } of heatsOf(step)) warmer += written[0]?.unit === 'F' ? 1 : -1;
  return warmer > 0 ? 'F' : 'C';
}
