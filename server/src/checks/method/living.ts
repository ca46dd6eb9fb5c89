/**
 * Knows into how hot a thing yeast, and whatever else lives, is stirred: what that was last heated or cooled to, while nothing was said that cools it.
 * Refuses to judge.
 */
import { spansOf } from '../../heat/spans.ts';
import { celsiusOf } from '../../notation/celsius.ts';
import { sentenceIn } from '../../notation/sentence.ts';
import type { Act } from '../../prose/event.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import { type HeatFigure, heatsOf } from '../../recipe/journey/figures.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';
import { type Passage, passagesOf } from '../../recipe/journey/passages.ts';
import { type Family, isIn } from '../../recipe/list/families.ts';
import type { Ingredient, Part, Recipe } from '../../recipe/model.ts';
import { onceFor, onceWith } from '../once.ts';
import { anyPart } from '../over-parts.ts';
import { isFigure, spentIn } from './heated-on-stove.ts';
import type { Heated, WrittenHeat } from './written-heat.ts';

const LIVING = ['yeast', 'rennet', 'culture'] as const satisfies readonly Family[];
type Living = (typeof LIVING)[number];

/** As `spans.tsv` has it: what sours milk dies before koji does. */
type LivesIn = Living | 'culture of milk';

const livesIn = (ingredient: Ingredient): Living | undefined => LIVING.find((each) => isIn(ingredient, each));

/** As long as one of these goes on, what is warm cools. */
const COOLS: ReadonlySet<Act> = new Set<Act>(['cool', 'stay', 'steep', 'freeze', 'rise', 'dry']);
const ADDS: ReadonlySet<Act> = new Set<Act>(['combine', 'put', 'return']);
/** What goes in besides, of what is there: more of it cools that (judgement). */
const LITTLE = 0.1;

/** What is warm, and by which figure. */
type Warm = ReadonlyMap<Ingredient, WrittenHeat>;
const NOTHING_WARM: Warm = new Map();

interface Stirred {
  readonly of: LivesIn;
  readonly heat: WrittenHeat;
}

const hasLiving = anyPart(({ head }) => head.ingredients.some((each) => livesIn(each) !== undefined));

export function livingIn(recipe: Recipe): readonly Heated[] {
  if (!hasLiving(recipe)) return [];
  const found = new Map<LivesIn, WrittenHeat[]>();
  for (const passages of passagesOf(recipe)) {
    let warm = NOTHING_WARM;
    for (const passage of passages) {
      const passed = passedThrough(passage, warm);
      warm = passed.warm;
      for (const { of, heat } of passed.found) {
        const heats = found.get(of);
        if (heats === undefined) found.set(of, [heat]);
        else heats.push(heat);
      }
    }
  }
  return [...found]
    .filter(([of]) => !of.startsWith('culture') || isCultured(recipe))
    .map(([of, heats]) => ({
      way: 'live',
      of: `any ${of}`,
      spans: spansOf(`any ${of}`, 'live'),
      heats,
      times: [],
      totalMin: Number.POSITIVE_INFINITY,
    }));
}

/** What is stirred into what by the steps of a part, and what is warm behind them. */
const passedThrough = onceWith(
  ({ folded: { part, steps }, parts }: Passage, before: Warm): { found: readonly Stirred[]; warm: Warm } => {
    const found: Stirred[] = [];
    const listed = listedWarm(part);
    let warm: Warm = listed.size === 0 ? before : new Map([...before, ...listed]);
    for (const folded of steps) {
      const step = part.steps.find(({ line }) => line === folded.line);
      const figures = step === undefined ? [] : heatsOf(step).filter((each) => isOfFood(each) && isFigure(each));
      for (const by of folded.events) {
        if (by.event.said !== 'yes') continue;
        const named = namedIn(parts, by);
        // `Put it into a pot at 230 C`: nobody says of what that is.
        const last = figures.findLast(
          ({ event, of }) => event === by.event && (of !== 'nothing' || event.act !== 'put'),
        );
        const own = last && { part: folded.part, line: folded.line, figure: last };
        // `Dissolve the yeast in the milk at 65 C` heats nothing else.
        if (ADDS.has(by.event.act) || (isBarely(by) && named.some((each) => livesIn(each) !== undefined))) {
          for (const each of named) {
            const living = livesIn(each);
            const isDish = living === 'culture' && [...warm.keys(), ...named].some(isOfDish);
            const heat = living && !isDish && (own ?? hottest(parts, folded, each, warm));
            if (living === undefined || heat === undefined || heat === false) continue;
            found.push({
              of: living === 'culture' && [...warm.keys()].some(isMilk) ? 'culture of milk' : living,
              heat,
            });
          }
          if (isMuchBeside(named, warm)) warm = NOTHING_WARM;
        } else if (own !== undefined) {
          const those = named.length > 0 ? named : warm.size > 0 ? [...warm.keys()] : lyingIn(parts, folded);
          warm = new Map([...warm, ...those.map((each): [Ingredient, WrittenHeat] => [each, own])]);
        } else if (by.event.act === 'heat' || COOLS.has(by.event.act)) warm = NOTHING_WARM;
      }
    }
    return { found, warm };
  },
);

/** `320 g water at 30 C`: as hot as its line says last. */
const listedWarm = onceFor(({ index, head: { ingredients } }: Part): Warm => {
  const warm = new Map<Ingredient, WrittenHeat>();
  for (const ingredient of ingredients) {
    const said = ingredient.node.preparation;
    if (said === undefined || !isIn(ingredient, 'liquid')) continue;
    const node = sentenceIn(said.text).items.findLast((item) => item.kind === 'temperature');
    if (node?.kind !== 'temperature') continue;
    const figure = {
      start: said.start + node.start,
      end: said.start + node.end,
      celsius: celsiusOf(node),
      written: [node],
    };
    warm.set(ingredient, { part: index, line: ingredient.line, figure });
  }
  return warm.size === 0 ? NOTHING_WARM : warm;
});

const isMilk = (ingredient: Ingredient): boolean => isIn(ingredient, 'milk');

const isBarely = ({ event: { act, cooks } }: BoundEvent): boolean => act === 'heat' && cooks === 'barely';

/** Of a curry nothing is cultured. */
const isOfDish = (ingredient: Ingredient): boolean => isIn(ingredient, 'flesh') || isIn(ingredient, 'juicy');

/** Yogurt in a hot soup need not live: something is left to grow. */
const isCultured = (recipe: Recipe): boolean => passagesOf(recipe).some((passages) => passages.some(isGrowing));

const isGrowing = onceFor(({ folded: { steps } }: Passage): boolean =>
  steps.some(({ events }) =>
    events.some(
      ({ event }) =>
        event.act === 'rise' ||
        (event.act === 'stay' &&
          !event.where.some(({ is, not }) => is === 'cold' && !not) &&
          spentIn(event).some(({ low }) => low >= LEAST_CULTURED_MIN)),
    ),
  ),
);
const LEAST_CULTURED_MIN = 180;

/** What has come together last: `let it cool until it reads 25 C`. */
const lyingIn = (parts: readonly Part[], { after, ended }: FoldedStep): readonly Ingredient[] =>
  ([...ended, ...after.bodies].at(-1)?.members ?? []).flatMap(
    ({ of }) => parts[of.part]?.head.ingredients[of.ingredient] ?? [],
  );

const isOfFood = ({ of }: HeatFigure): boolean => of === 'food' || of === 'nothing' || of === 'medium';

const namedIn = (parts: readonly Part[], { names }: BoundEvent): readonly Ingredient[] =>
  names.flatMap(({ mention }) =>
    mention.ingredients.flatMap(({ part, ingredient }) => parts[part]?.head.ingredients[ingredient] ?? []),
  );

/** Of what it then lies with, the figure of what is warm. */
function hottest(
  parts: readonly Part[],
  { after, ended, part, line }: FoldedStep,
  living: Ingredient,
  warm: Warm,
): WrittenHeat | undefined {
  for (const { members } of [...after.bodies, ...ended]) {
    const all = members.flatMap(({ of }) => parts[of.part]?.head.ingredients[of.ingredient] ?? []);
    if (!all.includes(living)) continue;
    for (const each of all) {
      const heat = warm.get(each);
      if (heat !== undefined) return heat;
    }
  }
  // `Heat the water and stir in the yeast` says of nothing else that it goes in.
  return [...warm.values()].find((heat) => heat.part === part && heat.line === line);
}

function isMuchBeside(named: readonly Ingredient[], warm: Warm): boolean {
  const grams = (those: Iterable<Ingredient>): number => {
    let sum = 0;
    for (const { weighed } of those) sum += weighed.known ? weighed.grams.high : Number.POSITIVE_INFINITY;
    return sum;
  };
  const beside = named.filter((each) => !warm.has(each));
  return beside.length > 0 && !(grams(beside) < LITTLE * grams(warm.keys()));
}
