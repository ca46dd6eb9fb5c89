/**
 * Knows where food that is not sour is kept shut off from air: in closed jars, under oil, in bags.
 * Refuses to know the rest of its way.
 */
import { isIn } from '../../recipe/families.ts';
import { type Body, type Stay, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isWarm } from '../../recipe/journey/stays.ts';
import type { Mixture } from '../../recipe/mixture.ts';
import type { Recipe } from '../../recipe/recipe.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { type InOil, keptInOil } from './in-oil.ts';
import { sharesFood } from './kept.ts';
import { ingredientOf, isDried, keepsByItself, membersIn, mixtureIn } from './spoils.ts';
import type { Level, Verdict } from './verdict.ts';

const DAY = 1440;
/** Days in the fridge that extension services allow what lies in oil. */
const MOST_COLD = 4 * DAY;
/** Acid in the whole: pickles, and tomatoes and low-acid fruit (see `low-acid-preserve`). */
const PICKLE = 0.011;
const TOMATO = 0.001;
/** Egg and milk spoil in a jar that no spore grows in. */
const EGGY = 0.15;
const LOW_SHARE = 0.3;
/** Of the solids, the share of low-acid fruit that sour fruit does not make up for (judgement). */
const FRUIT_SHARE = 0.5;
const SWEET_JAM = 0.25;
const SWEET = 0.5;
const DRY_WATER = 0.2;
const SOURING_SALT = 0.013;
/** Three weeks. */
const PUT_BY_MIN = 21 * DAY;
/** What waits in a jar for so long is kept (judgement). */
const KEPT_MIN = 2 * DAY;

export interface ShutOff {
  readonly verdicts: readonly Verdict[];
  /** What is in closed jars or in oil keeps or does not by their rules, and not by those of what lies about. */
  readonly judged: ReadonlySet<Stay>;
}

export function shutOff(recipe: Recipe, journey: Journey): ShutOff {
  const found: Verdict[] = [];
  const judged = new Set<Stay>();
  const inOil = keptInOil(recipe);
  for (const body of journey.bodies) {
    const mix = mixtureIn(recipe, body);
    if (mix.massG <= 0) continue;
    const stays = journey.stays.filter(({ body: lain, branch }) => !branch && sharesFood(lain, body));
    const oil = inOil.find((each) => each.body === body);
    const verdict = oil === undefined ? inJar(recipe, body, mix, stays) : verdictOf(oil);
    if (verdict !== undefined) found.push(verdict);
    const spoilsInJar = mix.of.egg + mix.of.milk >= mix.massG * EGGY;
    for (const stay of stays) {
      const isKept = !stay.timed || stay.minutes.high >= KEPT_MIN;
      const isShut = stay.body.shut === 'jar' && stay.body.vessel === 'jar' && !spoilsInJar;
      if (isKept && (verdict !== undefined || isShut)) judged.add(stay);
    }
  }
  return { verdicts: found, judged };
}

/** How it is kept in the end: too long in the cold, out of it, or nobody says. */
function keptAs(
  body: Body,
  stays: readonly Stay[],
  leastMin: number,
): { readonly how: 'warm' | 'long' | 'unsaid'; readonly level: Level } | undefined {
  const kept = stays.filter(
    (stay) => (stay.timed ? stay.minutes.high >= leastMin : stay === body.waits) && KEEPS.has(stay.by.event.act),
  );
  const last = kept.at(-1);
  if (last === undefined)
    return body.vessel === 'jar' && !isEaten(body) ? { how: 'unsaid', level: 'warning' } : undefined;
  if (!isWarm(last.lies)) {
    if (last.lies.place === 'frozen' || last.lies.celsius.high < 0) return undefined;
    return last.timed && last.minutes.high > MOST_COLD ? { how: 'long', level: 'error' } : undefined;
  }
  if (last.lies.sure === 'unread') return { how: 'warm', level: 'ask' };
  return { how: 'warm', level: last.lies.sure === 'said' ? 'error' : 'warning' };
}

const isEaten = ({ members }: Body): boolean => members.some(({ state }) => (state.was & WAS.eaten) !== 0);

const KEEPS: ReadonlySet<string> = new Set([
  'stay',
  'pack',
  'close',
  'put',
  'steep',
  'eat',
  'cool',
  'cover',
  'unknown',
]);

const verdictOf = ({ solid, part, kept, asked }: InOil): Verdict => ({
  code: 'garlic-in-oil',
  level: asked ? 'ask' : 'error',
  part,
  line: solid.line,
  start: solid.nameNode.start,
  end: solid.nameNode.end,
  why: `${solid.name} in fat, kept ${kept.how}`,
});

function inJar(recipe: Recipe, body: Body, mix: Mixture, stays: readonly Stay[]): Verdict | undefined {
  // What is to keep for weeks out of the cold is put by, whatever it is in.
  const isPutBy =
    !keepsByItself(mix, body) &&
    stays.some(({ timed, minutes, lies }) => timed && minutes.low >= PUT_BY_MIN && isWarm(lies));
  if (body.vessel !== 'jar' && body.vessel !== 'airtight' && body.shut !== 'jar' && !isPutBy) return undefined;
  if (body.members.some(({ state }) => (state.was & WAS.pressed) !== 0)) return undefined;
  const kept = keptAs(body, stays, KEPT_MIN);
  if (kept === undefined || kept.how === 'long') return undefined;
  const { massG, waterG, of, acidG, saltG } = mix;
  if (isDried(mix, body)) return undefined;
  if (waterG < massG * DRY_WATER || mix.has.has('culture')) return undefined;
  const raw = body.members.every(({ state }) => state.cooked === 'raw');
  // Bread and cake in the jar they are baked in, and what egg and milk are in, are low in acid too.
  const low = of['low acid'] + of.egg + of.milk + (raw ? 0 : of.flour);
  const solids = massG - of.water - of.vinegar;
  const isFruit = of['low acid fruit'] >= solids * FRUIT_SHARE && of.sugar < massG * SWEET_JAM;
  if ((low < solids * LOW_SHARE && !isFruit) || of.sugar >= massG * (of['sour fruit'] > low ? SWEET_JAM : SWEET))
    return undefined;
  // Plants in salt enough turn sour by themselves.
  if (raw && of.flesh === 0 && acidG === 0 && saltG >= massG * SOURING_SALT) return undefined;
  const tomato = body.members.reduce((g, member) => {
    const ingredient = ingredientOf(recipe, member);
    return ingredient !== undefined && /tomato/.test(foodOf(ingredient)?.name ?? '') && ingredient.weighed.known
      ? g + ingredient.weighed.grams.low
      : g;
  }, 0);
  if (acidG >= massG * (isFruit || tomato > low * 0.7 ? TOMATO : PICKLE) * 0.95) return undefined;
  const members = membersIn(recipe, body);
  const what =
    members.find(({ ingredient }) => isIn(ingredient, isFruit ? 'low acid fruit' : 'low acid')) ?? members[0];
  if (what === undefined) return undefined;
  const { start, end } = what.ingredient.nameNode;
  return {
    code: 'low-acid-preserve',
    // What is packed raw may be a lunch.
    level: kept.how === 'unsaid' && (raw || body.shut !== 'jar') ? 'ask' : kept.level,
    part: what.member.of.part,
    line: what.ingredient.line,
    start,
    end,
    why: `${what.ingredient.name} in jars, kept ${kept.how}`,
  };
}
