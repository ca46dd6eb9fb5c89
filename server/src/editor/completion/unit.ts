/** Units that suit a food, or a place in a sentence. */
import type { Food } from '../../food/food.ts';
import { unitSpelled } from '../../measure/unit.ts';
import { all, type Completion, type Completions } from './item.ts';

/** The units in the given order; each puts a blank between itself and its number. */
export function units(symbols: readonly string[], start: number, end: number, glued = false): Completions {
  return all(
    symbols.map((label): Completion => {
      const detail = longName(label);
      return {
        label,
        kind: 'unit',
        ...(detail !== undefined && { detail }),
        start,
        end,
        text: glued ? ` ${label}` : label,
        filter: label,
      };
    }),
  );
}

/** `teaspoon` for `tsp`. */
function longName(label: string): string | undefined {
  const names = (unitSpelled(label)?.spellings ?? []).filter((n) => !n.endsWith('s'));
  return names.reduce<string | undefined>((a, b) => (a !== undefined && a.length >= b.length ? a : b), undefined);
}

/** Recipes mean large eggs more often than not. */
const SIZES = ['large', 'medium', 'small'];
const sizeRank = (size: string | undefined): number =>
  size === undefined ? -1 : SIZES.includes(size) ? SIZES.indexOf(size) : SIZES.length;

const LIQUID: ReadonlySet<Food['class']> = new Set([
  'milk',
  'cream',
  'oil',
  'water',
  'juice',
  'stock',
  'vinegar',
  'alcohol',
  'drink',
  'syrup',
  'sauce',
]);

/** Units and count words for a food, the likeliest first; for any food where it is not named yet. */
export function unitsFor(food: Food | undefined): string[] {
  if (food === undefined)
    return [
      'g',
      'ml',
      'kg',
      'l',
      'tsp',
      'tbsp',
      'cup',
      'oz',
      'lb',
      'fl oz',
      'pinch',
      '%',
      'large',
      'small',
      'clove',
      'bunch',
      'sheet',
      'can of',
    ];
  const pieces = [...food.pieces]
    .sort((a, b) => sizeRank(a.size) - sizeRank(b.size))
    .flatMap((p) => (p.word !== undefined ? [p.word] : p.size !== undefined ? [p.size] : []));
  const spooned = food.measures.length > 0 || LIQUID.has(food.class) ? ['tsp', 'tbsp', 'cup'] : [];
  const flowing = LIQUID.has(food.class) ? ['ml', 'l', 'fl oz'] : [];
  const weights = ['g', 'kg', 'oz', 'lb'];
  const first = food.class === 'egg' ? [...pieces, ...weights] : [...flowing, ...weights, ...pieces];
  const percent =
    food.class === 'flour' || food.class === 'water' || food.class === 'salt' || food.class === 'yeast' ? ['%'] : [];
  return [...new Set([...first, ...spooned, ...percent, ...(spooned.length > 0 ? ['pinch'] : [])])];
}
