/**
 * Knows what a recipe bakes and roasts in an oven, each with its heats and times as they are written.
 * Refuses to judge.
 */
import { middle, type Range } from '../../measure/quantity.ts';
import { celsiusOf } from '../../notation/celsius.ts';
import type { Bake } from '../../recipe/baking/bakes.ts';
import { ovenTimes } from '../../recipe/baking/oven-time.ts';
import { isInOven } from '../../recipe/journey/deeds.ts';
import { heatsOf } from '../../recipe/journey/figures.ts';
import type { Recipe } from '../../recipe/model.ts';
import { isFigure } from './heated-on-stove.ts';
import { type Taken, takenInOven } from './taken-for.ts';
import type { Heated, WrittenHeat } from './written-heat.ts';

/** A bake that is no keeping warm. */
const isWhole = ({ event }: Bake): boolean =>
  event.act === 'heat' &&
  // `Toast the rice` is done in a pan as well.
  (event.craft === 'bake' || event.craft === 'roast' || event.where.some(isInOven)) &&
  event.cooks !== 'again' &&
  event.cooks !== 'barely' &&
  event.cooks !== 'outside';

export function bakedIn(recipe: Recipe): readonly Heated[] {
  const bakes = ovenTimes(recipe).flatMap(({ bake }) => (isWhole(bake) ? [bake] : []));
  const totals = totalsOf(bakes);
  return bakes.flatMap((own, i): readonly Heated[] => {
    const bake = { ...own, isOnly: bakes.length === 1 };
    const { part, line, said } = bake;
    const at = bake.stages.map(({ celsius }) => celsius);
    const inOven: Omit<Heated, keyof Taken> = {
      way: 'oven',
      heats: [
        ...at.flatMap((celsius) => writtenAt(recipe, bake, celsius) ?? []),
        ...madeReady(recipe, bake, bakes[0] === own),
      ],
      times: said === undefined ? [] : [{ ...said, part: part.index, line, at }],
      totalMin: totals[i] ?? Number.POSITIVE_INFINITY,
    };
    const read = readInside(bake);
    return [
      ...takenInOven(recipe, bake, 'oven').map((taken) => ({ ...inOven, ...taken })),
      ...(read.length === 0 ? [] : takenInOven(recipe, bake, 'inside')).map(
        (taken): Heated => ({ ...inOven, ...taken, way: 'inside', heats: read, times: [] }),
      ),
    ];
  });
}

/** What the oven is lit at for it, where it bakes at another heat: at that too a thing of its kind could be baked. */
function madeReady(recipe: Recipe, { part, line, stages }: Bake, isFirst: boolean): readonly WrittenHeat[] {
  const isOther = ({ low }: Range): boolean => stages.every(({ celsius }) => celsius !== low);
  const lit = part.steps.flatMap((step) =>
    step.line > line
      ? []
      : heatsOf(step).flatMap((figure) =>
          figure.of === 'oven' && figure.event?.act === 'ready' && isFigure(figure)
            ? [{ part: part.index, line: step.line, figure }]
            : [],
        ),
  );
  const above = isFirst && recipe.oven !== undefined && lit.length === 0 ? aboveOf(recipe.oven) : undefined;
  return [...lit, ...(above === undefined ? [] : [above])].filter(({ figure: { celsius } }) => isOther(celsius));
}

/** What the thing itself reads as it comes out. */
const readInside = ({ part, line, event }: Bake): readonly WrittenHeat[] =>
  part.steps.flatMap((step) =>
    step.line === line
      ? heatsOf(step).flatMap((figure) =>
          figure.event === event && figure.of === 'food' && isFigure(figure)
            ? [{ part: part.index, line, figure }]
            : [],
        )
      : [],
  );

/** Minutes of each with all the others in which something of it is, or nobody knows. */
function totalsOf(bakes: readonly Bake[]): readonly number[] {
  const minutes = ({ said }: Bake): number => said?.high ?? Number.POSITIVE_INFINITY;
  const sum = (those: Iterable<Bake>): number => [...those].reduce((all, bake) => all + minutes(bake), 0);
  const unknown = bakes.filter(({ body }) => body === undefined);
  const byFood = new Map<string, Bake[]>();
  for (const bake of bakes)
    for (const food of foodsIn(bake)) {
      const others = byFood.get(food);
      if (others === undefined) byFood.set(food, [bake]);
      else others.push(bake);
    }
  return bakes.map((bake) =>
    sum(
      bake.body === undefined
        ? bakes
        : new Set([bake, ...unknown, ...foodsIn(bake).flatMap((food) => byFood.get(food) ?? [])]),
    ),
  );
}

const foodsIn = ({ body }: Bake): readonly string[] => [
  ...new Set(body?.members.map(({ of }) => `${of.part} ${of.ingredient}`)),
];

/** Where so much heat of an oven is written: in the steps of the part, before them, or above the parts. */
function writtenAt(recipe: Recipe, { part, line }: Bake, celsius: number): WrittenHeat | undefined {
  for (let index = part.index; index >= 0; index--) {
    const there = recipe.parts[index];
    for (const step of there?.steps.toReversed() ?? [])
      if (index < part.index || step.line <= line)
        for (const figure of heatsOf(step))
          if (figure.of === 'oven' && middle(figure.celsius) === celsius)
            return figure.meant === undefined && figure.cannot !== true
              ? { part: index, line: step.line, figure }
              : undefined;
  }
  if (recipe.oven === undefined) return undefined;
  const above = aboveOf(recipe.oven);
  return above?.figure.celsius.low === celsius ? above : undefined;
}

function aboveOf({ node, at }: NonNullable<Recipe['oven']>): WrittenHeat | undefined {
  const celsius = celsiusOf(node);
  const isOther = node.unit === 'F' ? celsius.low <= ABOVE_C.low : celsius.low >= ABOVE_C.high;
  return isOther ? undefined : { line: at, figure: { start: node.start, end: node.end, celsius, written: [node] } };
}

/** What is set above the parts beyond these is in the other scale, as `implausible-temperature` has it, °C. */
const ABOVE_C = { low: 115, high: 300 } as const;
