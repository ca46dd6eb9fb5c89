/**
 * Knows which lines of a list a cook turns to bring a measure up or down: those that bring what stands above the line most purely, by steps.
 * Refuses to know by how much.
 */
import type { Food } from '../../food/food.ts';
import { takesOf } from '../../notation/item-amounts.ts';
import { isFlour } from '../../recipe/list/ingredient.ts';
import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { MEASURES } from '../../recipe/measures/definitions.ts';
import { sucroseEquivalent } from '../../recipe/measures/freezing.ts';
import { gelatineG } from '../../recipe/measures/gelling.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import { bakingPowder } from '../../recipe/measures/leavening.ts';
import type { ShareOf } from '../../recipe/measures/open.ts';
import { acidShare, milkSolids, sugarSolids } from '../../recipe/measures/shares.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';

/** The lines whose amount can be written anew: weighed, in the mix, of a known food, and with an amount of their own. */
export function movableLines(part: Part): readonly Ingredient[] {
  const contents = new Set(contentsOf(part));
  const { ingredients } = part.head;
  // The flour, or what else a percentage is of, would take the percentages with it.
  const byPercent = ingredients.some((i) => i.percent !== undefined);
  return ingredients.filter(
    (i) =>
      contents.has(i) &&
      gramsOf(i) > 0 &&
      i.food !== undefined &&
      i.node.amount?.kind === 'measured' &&
      i.node.amount.low.value > 0 &&
      !i.optional &&
      !i.free &&
      i.shares !== true &&
      i.bare !== true &&
      i.takes === undefined &&
      i.ofPart === undefined &&
      i.node.eachOf !== true &&
      takesOf(i.node) === undefined &&
      ingredients.every((other) => other === i || other.node !== i.node) &&
      (!byPercent || (i.percent !== undefined && !isFlour(i))),
  );
}

/** A line that is counted, and not weighed or measured: `2 eggs`. */
export const isCounted = ({ node: { amount } }: Ingredient): boolean =>
  amount?.kind === 'measured' && amount.unit === undefined;

/** Lines that move together, and only where those of the steps before cannot do it. */
export interface Step {
  readonly lines: readonly Ingredient[];
  /** They bring what stands above the line of the measure, or what it is held against. */
  readonly side: 'above' | 'below';
}

/**
 * By steps: what brings most to the gram, then what brings less. Pieces are turned only where nothing else brings any, and what the measure is held
 * against only where nothing at all does. `now` is what the measure is: a line that more of would lower it does not carry it.
 */
export function carriersOf(name: MeasureName, lines: readonly Ingredient[], now: number): readonly Step[] {
  const brings = aboveOf(name);
  const first = FIRST[name];
  // The dose of nitrite is not for turning, nor what it is a dose of.
  const own = lines.filter((i) => i.food?.class !== 'curing salt');
  const chosen = first === undefined ? [] : own.filter((i) => i.food !== undefined && first(i.food) && !isCounted(i));
  const against = againstIn(name);
  const rows = own
    .map((line) => ({ line, share: brings(line) }))
    .filter(({ line, share }) => share > now * against(line) && share > 0);
  const loose = rows.filter(({ line }) => !isCounted(line));
  const above = [chosen, purest(loose, NEARLY_ALL.has(name) ? 0.9 : 0.75), purest(loose, FAR_LESS)];
  const steps: Step[] = [];
  const taken = new Set<Ingredient>();
  const add = (side: Step['side'], all: readonly Ingredient[]): void => {
    const fresh = all.filter((line) => !taken.has(line));
    for (const line of fresh) taken.add(line);
    if (fresh.length > 0) steps.push({ side, lines: fresh });
  };
  for (const all of above) add('above', all);
  if (steps.length === 0) add('above', purest(rows, FAR_LESS));
  const below = belowOf(name);
  if (steps.length === 0 && below !== undefined && own.length === lines.length)
    add(
      'below',
      purest(
        own.map((line) => ({ line, share: below(line) })),
        0.75,
      ),
    );
  return steps;
}

/** As a share of what the purest brings to the gram. */
const FAR_LESS = 0.4;

/** Milk for water, honey for sugar: those are only touched where there is none. Butter and oil are fat alike. */
const NEARLY_ALL: ReadonlySet<MeasureName> = new Set<MeasureName>([
  'hydration',
  'cake hydration',
  'sugar',
  'sugars share',
  'sugar per white',
  'sugar per fruit',
]);

function purest(rows: readonly { line: Ingredient; share: number }[], least: number): Ingredient[] {
  const most = rows.reduce((best, { share }) => Math.max(best, share), 0);
  return most === 0 ? [] : rows.filter(({ share }) => share >= least * most).map(({ line }) => line);
}

/** What a cook turns though something else brings more of it to the gram. */
const FIRST: Partial<Readonly<Record<MeasureName, (food: Food) => boolean>>> = {
  // Soda lifts three times as much, and wants its acid.
  leavening: (food) => food.class === 'leavening' && bakingPowder(food) !== 0,
  'liquor acid': (food) => food.class === 'vinegar' && acidShare(food) !== 0,
  'freezing point': (food) => (sugarSolids(food) ?? 0) > 0,
  // Milk powder: solids that neither sweeten nor fatten.
  'total solids': (food) => (milkSolids(food) ?? 0) > 0.5,
};

/** What a gram of a line counts for above the line of the measure. */
export function aboveOf(name: MeasureName): (line: Ingredient) => number {
  const definition = MEASURES[name];
  const top: ShareOf = 'top' in definition ? definition.top : sucroseEquivalent;
  if (name === 'gelatine') return gelatinePerGram;
  return (line) => bringing(line, top);
}

function gelatinePerGram(line: Ingredient): number {
  const grams = gelatineG(line);
  return grams === undefined ? 0 : (grams.low + grams.high) / 2 / gramsOf(line);
}

/** The same below it; nothing of a measure that is no quotient. */
function againstIn(name: MeasureName): (line: Ingredient) => number {
  const definition = MEASURES[name];
  return 'bottom' in definition ? (line) => bringing(line, definition.bottom) : () => 0;
}

/** The same, where that is not the whole, which every line moves. */
function belowOf(name: MeasureName): ((line: Ingredient) => number) | undefined {
  const definition = MEASURES[name];
  const isWhole = !('per' in definition) || definition.per === 'mix' || definition.per === 'water';
  return isWhole ? undefined : againstIn(name);
}
