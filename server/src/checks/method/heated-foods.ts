/**
 * Knows what a recipe heats on the stove by what lies there, whatever the kind of its part: what is read of a dish that is named, chocolate by
 * itself, and how long potatoes, rice, pasta and eggs boil.
 * Refuses to judge.
 */
import { type HeatWay, spansOf } from '../../heat/spans.ts';
import type { Craft, Event } from '../../prose/event.ts';
import { type BoundEvent, boundEvents } from '../../recipe/journey/bind.ts';
import { type Body, WAS } from '../../recipe/journey/bodies.ts';
import { type HeatFigure, heatsOf } from '../../recipe/journey/figures.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';
import { type Passage, passagesOf } from '../../recipe/journey/passages.ts';
import { type Family, isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, IngredientRef, Part, Recipe } from '../../recipe/model.ts';
import { onceFor, onceWith } from '../once.ts';
import { anyPart } from '../over-parts.ts';
import { cooksThrough, heatsFood, isFigure, isStoveHeat, spentIn } from './heated-on-stove.ts';
import { fleshIn, namedAt, type Taken } from './taken-for.ts';
import type { Heated, NamedBy, WrittenHeat, WrittenTime } from './written-heat.ts';

/** A figure of food that is heated, and what lies there. */
interface Reading {
  readonly part: Part;
  readonly line: number;
  readonly figure: HeatFigure;
  readonly by: BoundEvent;
  readonly lying: readonly Ingredient[];
}

const readingsIn = onceFor(({ folded: { part, steps }, parts }: Passage): readonly Reading[] =>
  steps.flatMap((folded) => {
    const step = part.steps.find(({ line }) => line === folded.line);
    if (step === undefined) return [];
    return heatsOf(step).flatMap((figure) => {
      const by = folded.events.find(({ event }) => event === figure.event);
      return by === undefined || !isOfPot(figure) || !isFigure(figure)
        ? []
        : [{ part, line: folded.line, figure, by, lying: heatedBy(parts, folded, by) }];
    });
  }),
);

/** `Boil the sugar and water to 104 C` is of the water as well. */
const isOfPot = ({ of, event }: HeatFigure): boolean =>
  of === 'food' ||
  of === 'nothing' ||
  (of === 'medium' && (event?.medium?.is === 'water' || event?.medium?.is === 'syrup'));

/** What is in the pot then, and not what goes in behind it: what the words name, where it gets hardly warm. */
function heatedBy(parts: readonly Part[], { after, ended, events }: FoldedStep, by: BoundEvent): readonly Ingredient[] {
  const before = new Set(events.slice(0, events.indexOf(by) + 1));
  for (const { members } of [...after.bodies, ...ended])
    if (members.some(({ state }) => state.heatedBy === by))
      return members.flatMap(({ of, state }) =>
        state.heatedBy !== undefined && (before.has(state.heatedBy) || !events.includes(state.heatedBy))
          ? (parts[of.part]?.head.ingredients[of.ingredient] ?? [])
          : [],
      );
  const [only, another] = after.bodies;
  // `Cook until it reads 150 C`, of what boils since a step before.
  if (by.names.length === 0 && another === undefined)
    return (only?.members ?? []).flatMap(({ of, state }) =>
      state.heatedBy === undefined ? [] : (ingredientAt(parts, of) ?? []),
    );
  return by.names.flatMap(({ role, mention }) =>
    role === 'what'
      ? mention.ingredients.flatMap(({ part, ingredient }) => parts[part]?.head.ingredients[ingredient] ?? [])
      : [],
  );
}

/** Heated to less, nothing is on its way: rooms are as warm (judgement). */
const LEAST_WARMED_C = 20;
const OPEN = Number.POSITIVE_INFINITY;

/** What is not called by a name has spans of its own, in this order. */
const OTHERS = ['any chocolate', 'any', 'any egg', 'any leftovers'] as const;
type Others = (typeof OTHERS)[number];

/** A heat that is read, and what of: a dish by its name, whatever else, or flesh by its middle. */
type ReadOf =
  | { readonly of: (Taken & { readonly by: NamedBy }) | Others; readonly heat: WrittenHeat; readonly isInside?: never }
  | { readonly of: string; readonly heat: WrittenHeat; readonly isInside: true };

/** `called`: what the whole recipe is. */
const readIn = onceWith((passage: Passage, called: string): readonly ReadOf[] => {
  const read: ReadOf[] = [];
  for (const { part, line, figure, by, lying } of readingsIn(passage)) {
    const { event } = by;
    const heat = { part: part.index, line, figure };
    if (event.cooks === 'again' && figure.of === 'food' && figure.bound !== 'at most')
      read.push({ of: 'any leftovers', heat: { ...heat, isOnTheWay: !isKeptBefore(part, line) } });
    if (lying.length === 0) continue;
    const flesh = figure.inside && heatsFood(event) ? fleshIn(lying) : undefined;
    if (flesh !== undefined) read.push({ of: flesh, heat, isInside: true });
    if (event.act === 'heat' && lying.every(isChocolate)) read.push({ of: 'any chocolate', heat });
    if (part.head.kind !== undefined || event.craft === 'fry' || !heatsFood(event)) continue;
    const portioned = lying.map((ingredient) => ({ ingredient, share: 1 }));
    const taken = namedAt({ name: called }, { part, line, event }, 'stove', portioned);
    if (taken !== undefined) {
      const isOnTheWay =
        (!cooksThrough(event) && figure.celsius.high >= LEAST_WARMED_C) || figure.celsius.high < hottestIn(part);
      read.push({ of: taken, heat: { ...heat, isOnTheWay } });
    } else if (figure.of === 'food' && figure.bound !== 'at most')
      if (event.act === 'heat') read.push({ of: 'any', heat });
      else if (lying.some((each) => isIn(each, 'egg'))) read.push({ of: 'any egg', heat });
  }
  return read;
});

/** What is read of food on the stove, by its name; of chocolate, and of whatever else. */
export function readOf(recipe: Recipe): readonly Heated[] {
  const named = new Map<string, Heated & { readonly heats: WrittenHeat[] }>();
  const others = new Map<Others, WrittenHeat[]>(OTHERS.map((of) => [of, []]));
  const insides = new Map<string, WrittenHeat[]>();
  for (const passages of passagesOf(recipe))
    for (const passage of passages)
      for (const { of, heat, isInside } of readIn(passage, recipe.name)) {
        if (isInside === true) addTo(insides, of, heat);
        else if (typeof of === 'string') addTo(others, of, heat);
        else {
          const there = named.get(of.of) ?? { way: 'stove', ...of, heats: [], times: [], totalMin: OPEN };
          named.set(of.of, there);
          there.heats.push(heat);
        }
      }
  return [
    ...[...named.values()].map((each) => ({ ...each, heats: hottestAlone(each.heats) })),
    ...[...others].flatMap(([of, heats]) => heatsAlone(of, heats)),
    ...[...insides].flatMap(([of, heats]) => heatsAlone(of, heats, 'inside')),
  ];
}

function addTo<K>(heats: Map<K, WrittenHeat[]>, of: K, heat: WrittenHeat): void {
  const there = heats.get(of);
  if (there === undefined) heats.set(of, [heat]);
  else there.push(heat);
}

const heatsAlone = (of: string, heats: readonly WrittenHeat[], way: HeatWay = 'stove'): readonly Heated[] =>
  heats.length === 0 ? [] : [{ way, of, spans: spansOf(of, way), heats, times: [], totalMin: OPEN }];

/** It lay in the cold, by a step before or the same. */
const isKeptBefore = ({ steps }: Part, line: number): boolean =>
  steps.some(
    (step) =>
      step.line <= line &&
      boundEvents(step).some(
        ({ event: { act, where } }) =>
          act === 'freeze' || where.some(({ is, not }) => (is === 'cold' || is === 'frozen') && !not),
      ),
  );

/** Of what is in its pots, whoever is told of: `until the syrup reads 150 C`. */
const hottestIn = onceFor(({ steps }: Part): number =>
  Math.max(...steps.flatMap((step) => heatsOf(step).flatMap((each) => (isOfPot(each) ? [each.celsius.high] : [])))),
);

/** All but the hottest are on the way to it. */
function hottestAlone(heats: readonly WrittenHeat[]): readonly WrittenHeat[] {
  const hottest = Math.max(...heats.map(({ figure }) => figure.celsius.high));
  return heats.map((heat) => (heat.figure.celsius.high < hottest ? { ...heat, isOnTheWay: true } : heat));
}

const isChocolate = (ingredient: Ingredient): boolean => foodOf(ingredient)?.class === 'chocolate';

/** What boils by a time of its own. */
const BOILED = [
  'potato',
  'rice',
  'pasta',
  'egg',
  'pulse',
  'lentil',
  'tender shellfish',
] as const satisfies readonly Family[];
/** Heat of another sort than that of water and ovens: a time says nothing of it. */
const OTHERWISE = WAS.pressed | WAS.microwaved | WAS.canned;

type BoiledAs = Family | 'egg to peel' | `${Family} to drain`;
/** What is drained is to be whole: no mash, no porridge, no soup. */
const DRAINED: ReadonlySet<Family> = new Set<Family>(['potato', 'rice', 'lentil']);

interface Boiled {
  readonly of: BoiledAs;
  readonly times: WrittenTime[];
  /** Of all its heats; Infinity where one does not say. */
  totalMin: number;
}

/** What a step adds to that. */
interface Boils {
  readonly of: BoiledAs;
  readonly ingredient: Ingredient;
  readonly times: readonly WrittenTime[];
  readonly minutes: number;
}

interface BoilingStep {
  readonly boils: readonly Boils[];
  /** What else it heats: `fry them`, or by name. */
  readonly heatsUnnamed: boolean;
  readonly heats: readonly Ingredient[];
}

/** Potatoes, rice, pasta and eggs in their shells that boil by themselves. */
export const boiledIn = (recipe: Recipe): readonly Heated[] =>
  hasBoiled(recipe) ? passagesOf(recipe).flatMap(boiledOn) : [];

const hasBoiled = anyPart(({ head }) => head.ingredients.some((each) => BOILED.some((of) => isIn(each, of))));

const boiledOn = onceFor((passages: readonly Passage[]): readonly Heated[] => {
  const boiled = new Map<Ingredient, Boiled>();
  for (const passage of passages) for (const step of boilingIn(passage)) boilIn(step, boiled);
  return [...boiled.values()].flatMap(({ of, times, totalMin }): readonly Heated[] => {
    const spans = spansOf(`any ${of}`, 'stove');
    return times.length === 0 ? [] : [{ way: 'stove', of: `any ${of}`, spans, heats: [], times, totalMin }];
  });
});

function boilIn({ boils, heatsUnnamed, heats }: BoilingStep, boiled: Map<Ingredient, Boiled>): void {
  const before = heatsUnnamed ? [...boiled.keys()] : heats;
  for (const { of, ingredient, times, minutes } of boils) {
    const so = boiled.get(ingredient) ?? { of, times: [], totalMin: 0 };
    boiled.set(ingredient, so);
    so.totalMin += minutes;
    so.times.push(...times);
  }
  // `Fry them`, `deep-fry the potatoes`, whatever became of them by then.
  for (const each of before) {
    const so = boiled.get(each);
    // What was peeled was done by then.
    const goesOn = so !== undefined && so.of !== 'egg to peel' && !boils.some(({ ingredient }) => ingredient === each);
    if (goesOn) so.totalMin = OPEN;
  }
}

const boilingIn = onceFor(({ folded: { steps }, parts }: Passage): readonly BoilingStep[] =>
  steps.flatMap((folded) => {
    const boils = boiledAt(parts, folded);
    const heats = folded.events.filter(({ event }) => event.act === 'heat' && !isWarming(event));
    if (boils.length + heats.length === 0) return [];
    return [
      {
        boils,
        heatsUnnamed: heats.some(({ unnamed }) => unnamed !== undefined),
        heats: heats.flatMap(({ names }) =>
          names.flatMap(({ mention }) => mention.ingredients.flatMap((of) => ingredientAt(parts, of) ?? [])),
        ),
      },
    ];
  }),
);

function boiledAt(parts: readonly Part[], folded: FoldedStep): readonly Boils[] {
  const minutes = minutesOf(folded);
  const found = new Map<Ingredient, Boils>();
  for (const { members } of [...folded.after.bodies, ...folded.ended])
    for (const { of, state } of members) {
      const by = state.heatedBy;
      if (by === undefined || !folded.events.includes(by)) continue;
      const ingredient = ingredientAt(parts, of);
      const family = ingredient && BOILED.find((each) => isIn(ingredient, each));
      if (ingredient === undefined || family === undefined || found.has(ingredient)) continue;
      found.set(ingredient, {
        of: boiledAs(family, folded),
        ingredient,
        times: boilsAlone(by, family, members, parts)
          ? folded.events
              .slice(folded.events.indexOf(by))
              .flatMap((each) => (each === by || goesOnAs(each) ? spentIn(each.event) : []))
              .map((time) => ({ ...time, part: folded.part, line: folded.line, at: [] }))
          : [],
        minutes: (state.was & OTHERWISE) === 0 ? minutes : OPEN,
      });
    }
  return [...found.values()];
}

function boiledAs(family: Family, { events }: FoldedStep): BoiledAs {
  const does = (craft: Craft): boolean => events.some(({ event }) => event.craft === craft && event.said === 'yes');
  if (family === 'egg' && does('peel')) return 'egg to peel';
  return DRAINED.has(family) && does('drain') ? `${family} to drain` : family;
}

/** Of all heats of a step; `bring to the boil` takes no time worth counting, nor does what boils before it simmers for some time. */
const minutesOf = ({ events }: FoldedStep): number =>
  events.reduce((sum, { event }, i) => {
    if (event.act !== 'heat' || event.said === 'not') return sum;
    const spent = spentIn(event);
    if (spent.length > 0) return sum + spent.reduce((all, { high }) => all + high, 0);
    const goesOn = event.cooks === 'through' && events.slice(i + 1).some((later) => goesOnAs(later));
    return event.until.length === 0 && (event.lasts === 'no' || goesOn) ? sum : OPEN;
  }, 0);

/** `Heat through for 2 min` */
const isWarming = (event: Event): boolean => {
  const [spent] = event.cooks === 'barely' ? spentIn(event) : [];
  return spent !== undefined && spent.high <= WARMED_MIN;
};
const WARMED_MIN = 5;

/** `Bring to the boil, cover and cook for 12 min` */
const goesOnAs = ({ event, names }: BoundEvent): boolean =>
  isStoveHeat(event) && cooksThrough(event) && names.length === 0 && spentIn(event).length > 0;

const ingredientAt = (parts: readonly Part[], { part, ingredient }: IngredientRef): Ingredient | undefined =>
  parts[part]?.head.ingredients[ingredient];

/** In water that boils, with nothing beside it by whose time it may go. */
function boilsAlone(by: BoundEvent, family: Family, members: Body['members'], parts: readonly Part[]): boolean {
  const { event } = by;
  return (
    isStoveHeat(event) &&
    cooksThrough(event) &&
    event.craft === undefined &&
    (event.medium === undefined || event.medium.is === 'water' || event.medium.is === 'steam') &&
    event.temperatures.length === 0 &&
    members.every(({ of, state }) => {
      // What it is mixed with then was not in the water.
      if (state.heatedBy !== by) return true;
      const ingredient = ingredientAt(parts, of);
      if (ingredient === undefined) return false;
      return isIn(ingredient, family) ? state.cut !== 'minced' : LONGEST.has(family) || isBeside(ingredient);
    })
  );
}

/** What is dry takes its own time whatever boils with it. */
const LONGEST: ReadonlySet<Family> = new Set<Family>(['pulse', 'lentil', 'rice', 'tender shellfish']);

/** What water is seasoned with. */
const isBeside = (ingredient: Ingredient): boolean =>
  BESIDE.some((each) => isIn(ingredient, each)) || foodOf(ingredient)?.class === 'salt';
const BESIDE = ['water', 'vinegar', 'fat'] as const satisfies readonly Family[];
