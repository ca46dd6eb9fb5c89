/**
 * Knows how the `food` blocks of a file become foods of the house.
 * Refuses to know which files are read.
 */

import type { HouseComponent, HouseFood } from '../food/food.ts';
import { equalOf } from '../notation/item-amounts.ts';
import type { Block, Outline } from '../notation/outline.ts';

/** The foods a file describes, in order; lines that could not be read are left out. */
export function houseFoodsOf(outline: Outline): HouseFood[] {
  return outline.foods.map(readBlock).filter((f): f is HouseFood => f !== undefined);
}

function readBlock(block: Block): HouseFood | undefined {
  const first = block.lines[0]?.statement;
  if (first?.kind !== 'food' || first.name === undefined) return undefined;
  let like: string | undefined;
  let trimShare: number | undefined;
  const also: string[] = [];
  const contains: string[] = [];
  const measures: { of: HouseFood['measures'][number]['of']; grams: HouseFood['measures'][number]['grams'] }[] = [];
  const composition: Partial<Record<HouseComponent, number>> = {};
  for (const { statement } of block.lines) {
    switch (statement.kind) {
      case 'like':
        like = statement.name?.text;
        break;
      case 'also':
        also.push(...statement.names.map((n) => n.text));
        break;
      case 'contains':
        contains.push(...statement.names.map((n) => n.text));
        break;
      case 'trim':
        if (statement.amount?.unit?.symbol === '%') trimShare = statement.amount.quantity.low / 100;
        break;
      case 'component':
        if (statement.amount?.unit?.symbol === '%') composition[statement.component] = statement.amount.quantity.low;
        break;
      case 'ingredient':
        if (statement.amount?.kind === 'measured') {
          const grams = equalOf(statement)?.quantity;
          if (grams !== undefined) measures.push({ of: statement.amount.quantity, grams });
        }
        break;
    }
  }
  return {
    name: first.name.text,
    ...(like !== undefined && { like }),
    also,
    measures,
    composition,
    ...(trimShare !== undefined && { trimShare }),
    contains,
  };
}
