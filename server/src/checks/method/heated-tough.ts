/**
 * Knows how long the cuts that are tough until they have stewed for long (shin, oxtail, chuck) are heated by the time that they are to be tender,
 * and any other meat by the time that it is to be so hot that it comes apart.
 * Refuses to judge.
 */
import { spansOf } from '../../heat/spans.ts';
import type { Event } from '../../prose/event.ts';
import { cutOf } from '../../recipe/baking/cuts.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import { WAS } from '../../recipe/journey/bodies.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';
import { type Passage, passagesOf } from '../../recipe/journey/passages.ts';
import { isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, Part, Recipe } from '../../recipe/model.ts';
import { onceFor } from '../once.ts';
import { anyPart } from '../over-parts.ts';
import { spentIn } from './heated-on-stove.ts';
import type { Heated, WrittenTime } from './written-heat.ts';

const STEWED = 'any tough meat';
const SHREDDED = 'any meat to shred';
const SHREDDED_WHOLE = 'any large meat to shred';
/** So much in one piece, it takes hours to come so hot in the middle. Grams. */
const LARGE_G = 2000;
/** Heat that makes tender sooner, or of which a time says nothing. */
const OTHERWISE = WAS.pressed | WAS.microwaved | WAS.canned | WAS.reheated | WAS.rare;

interface Stewed {
  readonly times: WrittenTime[];
  totalMin: number;
}

export function stewedOf(recipe: Recipe): readonly Heated[] {
  if (!hasTough(recipe)) return [];
  const stewed = new Map<Ingredient, Stewed>();
  const tender: Heated[] = [];
  for (const passages of passagesOf(recipe))
    for (const { ingredient, isLarge, folded } of passages.flatMap(stewedIn)) {
      const so = stewed.get(ingredient) ?? { times: [], totalMin: 0 };
      stewed.set(ingredient, so);
      so.totalMin += minutesOf(folded);
      for (const { event, names } of folded.events) {
        if (!isHeat(event)) continue;
        for (const time of spentIn(event)) so.times.push({ ...time, part: folded.part, line: folded.line, at: [] });
        const isTender = event.until.some(({ is }) => is === 'tender');
        const comesApart = isShredded(event, isTender);
        const of = comesApart ? (isLarge ? SHREDDED_WHOLE : SHREDDED) : STEWED;
        if (comesApart || (isTough(ingredient) && isTender && isOfIt(recipe, names, ingredient)))
          tender.push({ way: 'stove', of, spans: spansOf(of, 'stove'), heats: [], ...so, times: [...so.times] });
      }
    }
  return tender;
}

/** Each tough meat with each step by whose end it was heated. */
const stewedIn = onceFor(({ folded: { steps }, parts }: Passage) =>
  steps.flatMap((folded) => [...stewedBy(parts, folded)].map((stewed) => ({ ...stewed, folded }))),
);

const isTough = (ingredient: Ingredient): boolean => isIn(ingredient, 'tough meat');
/** What such as a shoulder is, where it is to come apart. */
const mayStew = (ingredient: Ingredient): boolean => isTough(ingredient) || foodOf(ingredient)?.class === 'meat';
const isLarge = (ingredient: Ingredient): boolean => {
  const { weighed } = ingredient;
  return weighed.known && weighed.grams.low >= LARGE_G && cutOf(ingredient)?.is !== 'small';
};
const hasTough = anyPart(({ head }) => head.ingredients.some(mayStew));

/** Nothing else is named that may be what is to be tender. */
const isOfIt = ({ parts }: Recipe, names: BoundEvent['names'], ingredient: Ingredient): boolean =>
  names.every(({ mention }) =>
    mention.ingredients.every((of) => parts[of.part]?.head.ingredients[of.ingredient] === ingredient),
  );

/** The middle of meat that is pulled apart reads 88 to 96 °C (common practice, no source); nothing is served so hot that is sliced. */
const SHREDDED_C = 85;
const isShredded = ({ temperatures }: Event, isTender: boolean): boolean =>
  temperatures.some(
    ({ of, inside, bound, meant, cannot, celsius }) =>
      of === 'food' &&
      (inside || isTender) &&
      bound !== 'change' &&
      !meant &&
      cannot !== true &&
      celsius.low >= SHREDDED_C,
  );

/** The tough meat that was heated by the end of a step, in pieces or whole. */
function* stewedBy(parts: readonly Part[], { after, ended, events }: FoldedStep) {
  const bodies = [...after.bodies, ...ended];
  const heatsOthers = bodies.some(({ members }) =>
    members.some(({ state: { heatedBy } }) => heatedBy !== undefined && events.includes(heatedBy)),
  );
  for (const { members } of bodies)
    for (const { of, state } of members) {
      const ingredient = parts[of.part]?.head.ingredients[of.ingredient];
      const by = state.heatedBy;
      if (ingredient === undefined || by === undefined || !mayStew(ingredient)) continue;
      // What was lifted out waits, whatever boils meanwhile.
      if (heatsOthers && !events.includes(by)) continue;
      if (state.cut !== 'minced' && (state.was & OTHERWISE) === 0)
        yield { ingredient, isLarge: state.cut === 'whole' && isLarge(ingredient) };
    }
}

/** Of all heats of a step, browning and coming to the boil aside. */
const minutesOf = ({ events }: FoldedStep): number =>
  events.reduce((sum, { event }) => {
    if (!isHeat(event)) return sum;
    const spent = spentIn(event).reduce((all, { high }) => all + high, 0);
    return spent === 0 && (event.lasts !== 'no' || event.until.length > 0) ? Number.POSITIVE_INFINITY : sum + spent;
  }, 0);

const isHeat = (event: Event): boolean =>
  event.said === 'yes' && event.act === 'heat' && event.cooks !== 'outside' && event.cooks !== 'barely';
