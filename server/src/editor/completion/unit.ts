/** Units that suit a food, or a place in a sentence. */
import type { Food } from '../../food/food.ts';
import { COUNT_WORDS } from '../../measure/count-words.ts';
import { UNITS, unitSpelled } from '../../measure/unit.ts';
import type { Dimension, Unit } from '../../measure/unit-row.ts';
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

/** Units of the table that are written today, those that come in thousands first. */
function unitsWhere(dimension: Dimension, holds: (unit: Unit) => boolean): string[] {
  const found = UNITS.filter((u) => u.dimension === dimension && u.old === undefined && holds(u));
  return [...found.filter(isWhole), ...found.filter((u) => !isWhole(u))].map((u) => u.symbol);
}

/** Not a centilitre: such are written, and seldom. */
const isWhole = ({ base }: Unit): boolean => base !== 10 && base !== 100;

const isMetric = ({ base }: Unit): boolean => typeof base === 'object' && base.metric !== undefined;
const isLarge = ({ base }: Unit): boolean => typeof base !== 'number' || base >= 1;

/** From a gram on: no scale of a kitchen weighs milligrams. */
const WEIGHTS = unitsWhere('mass', isLarge);
/** Spoons and cups, for what is dry as well. */
const SPOONS = unitsWhere('volume', isMetric);
const POURED = unitsWhere('volume', (u) => !isMetric(u) && isLarge(u));
const PINCHES = unitsWhere('volume', (u) => !isLarge(u)).reverse();
const SHARES = unitsWhere('share', () => true);

/** What a sentence counts, the likeliest first: minutes before all other times, and a gas mark has its number behind it. */
export const IN_SENTENCES = {
  amounts: [...WEIGHTS, ...POURED, ...SPOONS, ...unitsWhere('length', () => true).reverse(), ...SHARES],
  times: unitsWhere('time', () => true).sort((a, b) => Number(b === 'min') - Number(a === 'min')),
  heats: [...unitsWhere('temperature', ({ symbol }) => symbol !== 'gas'), 'C fan'],
} as const;

/** Foods that are written as a share of the flour. */
const SHARED: ReadonlySet<Food['class']> = new Set(['flour', 'water', 'salt', 'yeast']);

/** Units and count words for a food, the likeliest first; for any food where it is not named yet. */
export function unitsFor(food: Food | undefined): string[] {
  if (food === undefined) return [...WEIGHTS, ...POURED, ...SPOONS, ...PINCHES, ...SHARES, ...SIZES, ...COUNT_WORDS];
  const pieces = [...food.pieces]
    .sort((a, b) => sizeRank(a.size) - sizeRank(b.size))
    .flatMap((p) => p.word ?? p.size ?? []);
  const flows = LIQUID.has(food.class);
  const spooned = food.measures.length > 0 || flows ? [...SPOONS, ...PINCHES] : [];
  const first = food.class === 'egg' ? [...pieces, ...WEIGHTS] : [...(flows ? POURED : []), ...WEIGHTS, ...pieces];
  return [...new Set([...first, ...spooned, ...(SHARED.has(food.class) ? SHARES : [])])];
}
