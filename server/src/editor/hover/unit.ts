/** A unit: how much of it there is in this house. */
import { trimmed } from '../../measure/number-text.ts';
import { baseOf, dimensionOf, sourceOf, unitInFull } from '../../measure/unit.ts';
import { measuresOf, termsOf } from '../../notation/item-amounts.ts';
import type { MeasuredNode, SentenceItem } from '../../notation/tree.ts';
import { weighQuantity } from '../../recipe/list/line-weight.ts';
import { figure, weightFact } from '../facts.ts';
import { type Cursor, holds, ingredientAt, placeOf } from '../place.ts';
import { sayWeight, textOf } from '../words.ts';
import type { Fact, HoverSource } from './fact.ts';

export const hoverUnit: HoverSource = (snapshot, cursor) => {
  const measured = measuredAt(cursor).find((m) => holds(m.unit, cursor.character));
  const unit = measured?.unit;
  if (measured === undefined || unit === undefined || unit.symbol === '%' || dimensionOf(unit.symbol) === 'length')
    return undefined;
  const { measures } = snapshot.house.world;
  const base = baseOf(unit.symbol, measures);
  if (base === undefined) return undefined;
  const baseUnit = { mass: 'g', volume: 'ml', length: 'mm', time: 's', temperature: '', share: '' }[
    dimensionOf(unit.symbol)
  ];
  // A gram is a gram: the line it stands on says more.
  if (unit.symbol === baseUnit) return undefined;
  const facts: Fact[] = [
    figure(
      `1 ${unitInFull(unit.symbol, measures)}`,
      `${trimmed(base, base < 1 ? 3 : 1)} ${baseUnit}`,
      sourceOf(unit.symbol, measures),
    ),
  ];
  const ingredient = ingredientAt(cursor)?.ingredient;
  if (ingredient !== undefined) {
    facts.push(weightFact(ingredient));
    const one = weighQuantity(
      { low: 1, high: 1, about: false, unit: unit.symbol },
      ingredient.match,
      snapshot.house.world,
    );
    if (one.known && dimensionOf(unit.symbol) === 'volume')
      facts.push(
        figure(`1 ${unitInFull(unit.symbol, measures)} of ${ingredient.name}`, sayWeight(one), one.reason.source),
      );
  }
  return {
    at: placeOf(cursor.at, unit),
    title: textOf(cursor.line, unit),
    subtitle: `a unit of ${dimensionOf(unit.symbol)}`,
    facts,
  };
};

/** Every amount of the cursor's line. */
export function measuredAt({ line }: Cursor): MeasuredNode[] {
  const { statement } = line;
  const ingredient = statement.kind === 'add' || statement.kind === 'swap' ? statement.ingredient : statement;
  if (ingredient.kind === 'ingredient')
    return [ingredient, ...(ingredient.more ?? [])]
      .flatMap(measuresOf)
      .flatMap(termsOf)
      .flatMap((a) => (a.each === undefined ? [a] : [a, a.each]));
  switch (statement.kind) {
    case 'step':
      return statement.sentence.items.flatMap(measuredIn);
    case 'yield':
    case 'weighed':
    case 'component':
    case 'trim':
      return statement.amount === undefined ? [] : [statement.amount];
    case 'used':
      return statement.amount?.kind === 'measured' ? [statement.amount] : [];
    case 'price':
      return statement.per === undefined ? [] : [statement.per];
    default:
      return [];
  }
}

function measuredIn(item: SentenceItem): MeasuredNode[] {
  if (item.kind === 'measured') return [item];
  return item.kind === 'length' ? [item.measured] : [];
}
