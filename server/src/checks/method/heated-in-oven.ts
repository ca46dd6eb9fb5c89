/**
 * Knows what a recipe bakes and roasts in an oven, each with its heats and times as they are written.
 * Refuses to judge.
 */
import { middle, type Range } from '../../measure/quantity.ts';
import { celsiusOf } from '../../notation/celsius.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import { type Bake, bakesIn } from '../../recipe/baking/bakes.ts';
import { type BySize, bySize } from '../../recipe/baking/by-size.ts';
import { isInOven } from '../../recipe/journey/deeds.ts';
import { type HeatFigure, heatsOf } from '../../recipe/journey/figures.ts';
import { type Journey, journeysOf } from '../../recipe/journey/fold.ts';
import type { Part, Recipe } from '../../recipe/model.ts';
import { onceFor, onceWith } from '../once.ts';
import { overParts } from '../over-parts.ts';
import { isFigure } from './heated-on-stove.ts';
import { type Taken, takenInOven, takenInside } from './taken-for.ts';
import type { Heated, WrittenHeat } from './written-heat.ts';

/** A bake that is no keeping warm. */
const isWhole = ({ event }: Bake): boolean =>
  event.act === 'heat' &&
  // `Toast the rice` is done in a pan as well.
  (event.craft === 'bake' || event.craft === 'roast' || event.where.some(isInOven)) &&
  event.cooks !== 'again' &&
  event.cooks !== 'barely' &&
  event.cooks !== 'outside';

/** All that is baked, and the minutes of what nobody knows. */
const wholesIn = onceFor((recipe: Recipe) => {
  const all = journeysOf(recipe)
    .flatMap(wholeIn)
    .sort(
      ({ bake: a }, { bake: b }) => a.part.index - b.part.index || a.line - b.line || a.event.start - b.event.start,
    );
  return { all, unknownMin: sumOf(all.filter(({ bake }) => bake.body === undefined)) };
});

/** Of what is known, in the oven in all, a crust under it before; where nobody knows, longer than all. */
export function minutesInOven(recipe: Recipe, bake: Bake): number {
  const { all, unknownMin } = wholesIn(recipe);
  const own = all.find((each) => each.bake === bake);
  return own === undefined ? Number.POSITIVE_INFINITY : own.sharedMin + unknownMin;
}

export function bakedIn(recipe: Recipe): readonly Heated[] {
  const { all, unknownMin } = wholesIn(recipe);
  const isOnly = all.length === 1;
  const allMin = sumOf(all);
  return all.flatMap(({ bake, sharedMin, mostlyMin }, i) => {
    const written = bake.stages.map(({ celsius }) => writtenAt(recipe, bake, celsius));
    const totalMin = bake.body === undefined ? allMin : sharedMin + unknownMin;
    const inside = readInside(bake).length === 0 ? undefined : takenInside(recipe, bake, isOnly);
    const above = i === 0 ? litAbove(recipe, bake) : undefined;
    const size = bySize(recipe, bake, undefined);
    return [
      ...heatedOf(bake, takenInOven(recipe, bake, isOnly), inside, totalMin, above, ...written),
      ...(size === undefined ? [] : heatedBySize(bake, size, mostlyMin + unknownMin)),
    ];
  });
}

/** Its heats are judged by its kind. */
const heatedBySize = onceWith(
  ({ part, line, said }: Bake, { called, minutes }: BySize, totalMin: number): readonly Heated[] =>
    said === undefined
      ? []
      : [
          {
            way: 'oven',
            of: called,
            spans: [{ celsius: ANY_HEAT, minutes, needs: '' }],
            heats: [],
            times: [{ ...said, part: part.index, line, at: [] }],
            totalMin,
          },
        ],
);
const ANY_HEAT: Range = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };

const heatedOf = onceWith(
  (
    bake: Bake,
    taken: readonly Taken[],
    inside: readonly Taken[] | undefined,
    totalMin: number,
    above: WrittenHeat | undefined,
    ...written: readonly (WrittenHeat | undefined)[]
  ): readonly Heated[] => {
    const { part, line, said } = bake;
    const at = bake.stages.map(({ celsius }) => celsius);
    const inOven: Omit<Heated, keyof Taken> = {
      way: 'oven',
      heats: [...written.flatMap((heat) => heat ?? []), ...litFor(bake), ...(above === undefined ? [] : [above])],
      times: said === undefined ? [] : [{ ...said, part: part.index, line, at }],
      totalMin,
    };
    const read = readInside(bake);
    return [
      ...taken.map((each) => ({ ...inOven, ...each })),
      ...(inside ?? []).map((each): Heated => ({ ...inOven, ...each, way: 'inside', heats: read, times: [] })),
    ];
  },
);

/** What the oven is lit at for it, where it bakes at another heat: at that too a thing of its kind could be baked. */
const litFor = onceFor((bake: Bake): readonly WrittenHeat[] =>
  litBy(bake).filter(({ figure }) => isAtOther(bake, figure.celsius)),
);

const isAtOther = ({ stages }: Bake, { low }: Range): boolean => stages.every(({ celsius }) => celsius !== low);

const litBy = ({ part, line }: Bake): readonly WrittenHeat[] =>
  part.steps.flatMap((step) =>
    step.line > line
      ? []
      : heatsOf(step).flatMap((figure) =>
          figure.of === 'oven' && figure.event?.act === 'ready' && isFigure(figure)
            ? [{ part: part.index, line: step.line, figure }]
            : [],
        ),
  );

/** What is lit above the parts is for the first. */
function litAbove(recipe: Recipe, bake: Bake): WrittenHeat | undefined {
  const above = litBy(bake).length === 0 ? aboveOf(recipe) : undefined;
  return above !== undefined && isAtOther(bake, above.figure.celsius) ? above : undefined;
}

/** What the thing itself reads as it comes out. */
const readInside = onceFor(({ part, line, event }: Bake): readonly WrittenHeat[] =>
  part.steps.flatMap((step) =>
    step.line === line
      ? heatsOf(step).flatMap((figure) =>
          figure.event === event && figure.of === 'food' && isFigure(figure)
            ? [{ part: part.index, line, figure }]
            : [],
        )
      : [],
  ),
);

interface Whole {
  readonly bake: Bake;
  /** Minutes, with those of all others in which something of it is. */
  readonly sharedMin: number;
  /** Minutes, with those of all others in which most of its foods are. */
  readonly mostlyMin: number;
}

const minutesOf = ({ said }: Bake): number => said?.high ?? Number.POSITIVE_INFINITY;

const sumOf = (those: readonly Whole[]): number => those.reduce((sum, { bake }) => sum + minutesOf(bake), 0);

/** What never meets shares nothing. */
const wholeIn = onceFor((journey: Journey): readonly Whole[] => {
  const bakes = bakesIn(journey).flatMap(({ bake }) => (isWhole(bake) ? [bake] : []));
  const byFood = new Map<string, Bake[]>();
  for (const bake of bakes)
    for (const food of foodsIn(bake)) {
      const others = byFood.get(food);
      if (others === undefined) byFood.set(food, [bake]);
      else others.push(bake);
    }
  return bakes.map((bake) => {
    const shared = new Set([bake, ...foodsIn(bake).flatMap((food) => byFood.get(food) ?? [])]);
    return {
      bake,
      sharedMin: [...shared].reduce((sum, each) => sum + minutesOf(each), 0),
      mostlyMin: [...shared].reduce(
        (sum, each) => (each === bake || holdsMost(each, bake) ? sum + minutesOf(each) : sum),
        0,
      ),
    };
  });
});

const holdsMost = (other: Bake, bake: Bake): boolean => {
  const foods = foodsIn(bake);
  const held = heldIn(other);
  return foods.filter((food) => held.has(food)).length > foods.length / 2;
};

const heldIn = onceFor((bake: Bake): ReadonlySet<string> => new Set(foodsIn(bake)));

const foodsIn = onceFor(({ body }: Bake): readonly string[] => [
  ...new Set(body?.members.map(({ of }) => `${of.part} ${of.ingredient}`)),
]);

interface SetHeat extends WrittenHeat {
  readonly figure: HeatFigure;
}

/** What the oven is set to in a part, the steps from the last. */
const setIn = onceFor(({ index, steps }: Part): readonly SetHeat[] =>
  steps
    .toReversed()
    .flatMap((step) =>
      heatsOf(step).flatMap((figure) => (figure.of === 'oven' ? [{ part: index, line: step.line, figure }] : [])),
    ),
);
const setByPart = overParts((part) => (setIn(part).length === 0 ? undefined : setIn(part)));

/** Where so much heat of an oven is written: in the steps of the part, before them, or above the parts. */
function writtenAt(recipe: Recipe, { part, line }: Bake, celsius: number): WrittenHeat | undefined {
  const isIt = ({ figure }: SetHeat): boolean => middle(figure.celsius) === celsius;
  const found = setIn(part).find((each) => each.line <= line && isIt(each)) ?? setBefore(recipe, part, isIt);
  if (found !== undefined) return found.figure.meant === undefined && found.figure.cannot !== true ? found : undefined;
  const above = aboveOf(recipe);
  return above?.figure.celsius.low === celsius ? above : undefined;
}

function setBefore(recipe: Recipe, { index }: Part, isIt: (heat: SetHeat) => boolean): SetHeat | undefined {
  const set = setByPart(recipe);
  // There is no more than one for each part.
  for (let at = Math.min(set.length, index) - 1; at >= 0; at--) {
    const there = set[at];
    const heat = there !== undefined && there.part.index < index ? there.value.find(isIt) : undefined;
    if (heat !== undefined) return heat;
  }
  return undefined;
}

function aboveOf({ oven }: Recipe): WrittenHeat | undefined {
  return oven && aboveParts(oven.node, oven.at);
}

const aboveParts = onceWith((node: TemperatureNode, line: number): WrittenHeat | undefined => {
  const celsius = celsiusOf(node);
  const isOther = node.unit === 'F' ? celsius.low <= ABOVE_C.low : celsius.low >= ABOVE_C.high;
  return isOther ? undefined : { line, figure: { start: node.start, end: node.end, celsius, written: [node] } };
});

/** What is set above the parts beyond these is in the other scale, as `implausible-temperature` has it, °C. */
const ABOVE_C = { low: 115, high: 300 } as const;
