import { percentRange, percentText, significant } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { anyDoes, does } from '../../recipe/journey/deeds.ts';
import { isIn } from '../../recipe/list/families.ts';
import { gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { MEASURES } from '../../recipe/measures/definitions.ts';
import { workOut } from '../../recipe/measures/measures.ts';
import { mixtureOf } from '../../recipe/measures/mixture.ts';
import { isIncomplete } from '../../recipe/measures/part-measure.ts';
import { gramsAmong, isAmong, type Proportion, proportionsOf } from '../../recipe/measures/proportions.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { takenFor } from '../../recipe/taken-for.ts';
import { wordsOf } from '../../recipe/words.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { onceWith } from '../once.ts';
import { overParts } from '../over-parts.ts';
import { sumTable } from '../sum-table.ts';
import { ingredientPlace, mostOf } from './band.ts';
import { FRIES, farFrom } from './far-from-name.ts';
import { firstUse, GUARDS, IN_WATER, type Seen } from './guards.ts';

interface Values {
  readonly name: string;
  /** What it is held against; absent for the whole. */
  readonly against?: string;
  readonly isOfWhole: boolean;
  readonly low: number;
  readonly high: number;
  readonly least?: number;
  readonly most?: number;
  readonly contents: readonly Ingredient[];
}

export default defineCheck<Values>({
  code: 'out-of-proportion',
  title: 'There is far more of one food than any recipe has, or far less',
  family: 'formula',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** Of a part, mostly of no kind: the share of strong foods in the whole (vanilla, spices, gelatine, garlic, salt in a sweet bake, sugar, fat and vinegar on meat), and of foods against what governs them: yeast, fat, sugar, egg and liquid to flour that is raised, liquid to rice and couscous, starch to liquid, water to flour in a dough that is kneaded, egg to the milk that it sets. Of any part, meat, grain, stock, cream, cheese, nuts and roots that are so little that nobody would taste them.

**What to do.** Look at the amount. If it is meant so, write what the part is (\`as rub\`, \`as marinade\`).

**Silent** for parts that go into others, for most of this where a part has a kind, for what is no dish, up to twice as much where the title names the food, and where a food or a weight is not known.`,
  find: ({ recipe, house }) => outOf(recipe, house),
  say: ({ name, against, isOfWhole, low, high, least, most }) => {
    const isMany = against !== undefined && (most ?? 0) >= 3;
    const of =
      against === undefined
        ? isOfWhole
          ? ' of all that goes in'
          : ''
        : isMany
          ? ` the ${against}`
          : ` of the ${against}`;
    const value = isMany ? `${significant(low === high ? low : (low + high) / 2, 2)} times` : percentRange(low, high);
    const edge = (at: number): string => (isMany ? `${significant(at, 2)} times` : percentText(at));
    const past = most !== undefined && low > most;
    return {
      message: `The ${name}: ${value}${of}, and hardly any recipe has ${past ? `more than ${edge(most)}` : `less than ${edge(least ?? 0)}`}. Look at the amount; a figure or a spoon may be wrong.`,
      value: (low + high) / 2,
      unit: '1',
      band: [least ?? null, most ?? null],
    };
  },
  work: ({ contents }) =>
    sumTable(
      ['ingredient', 'weighs, g'],
      contents.map((i) => ({ name: i.name, numbers: [gramsOf(i)] })),
    ),
  examples: {
    good: [
      'recipe Plain couscous\n  250 g     couscous\n  300 g     water\n  do Boil the water, pour it over the couscous, cover and leave for 5 min.\n',
      'recipe Spiced beef\n  800 g     minced beef\n  3 tbsp    chilli powder\n  400 g     canned tomatoes\n  do Fry the beef, add the chilli powder and tomatoes and simmer for 60 min until thick.\n',
    ],
    bad: [
      'recipe Beef stew as braise\n  20 g      stewing beef\n# "stewing beef" out-of-proportion: less than 3 %\n  500 g     potatoes\n  500 g     beef stock\n  do Simmer the beef and potatoes in the stock for 2 h until soft.\n',
      'recipe Plain couscous\n  250 g     couscous\n  3 kg      water\n# "water" out-of-proportion: 12 times\n  do Boil the water, pour it over the couscous, cover and leave for 5 min.\n',
      'recipe Spiced beef\n  800 g     minced beef\n  3 tbsp    ground cloves\n# "ground cloves" out-of-proportion: 1.\n  400 g     canned tomatoes\n  do Fry the beef, add the cloves and tomatoes and simmer for 60 min until thick.\n',
    ],
  },
});

const outOf = foundAgain<Values>((recipe) => {
  if (recipe.inherits) return NOTHING;
  // What is said of it by its name is said.
  const said = new Set(takenFor(recipe).flatMap((taken) => (farFrom(taken).length > 0 ? [taken.part] : [])));
  const goOn = new Set(takingIn(recipe).flatMap(({ value }) => value));
  return recipe.parts.flatMap((part) => (said.has(part) ? NOTHING : outInPart(part, recipe.name, goOn.has(part.head))));
});

const takingIn = overParts(({ mixes }) => (mixes.length === 0 ? undefined : mixes));

/** `called`: what the whole recipe is; `goesOn`: another part takes it in. */
const outInPart = onceWith((part: Part, called: string, goesOn: boolean): readonly Found<Values>[] => {
  const { head } = part;
  if (head.ingredients.length < 2 || isIncomplete(part)) return NOTHING;
  const contents = contentsOf(part);
  // What nobody knows may be what there is too little of; of what it weighs, any food may be a share.
  const isKnown = contents.every((i) => i.free || i.food !== undefined);
  const unweighed = contents.filter((i) => !i.free && !i.weighed.known);
  const mix = mixtureOf(contents.map((ingredient) => ({ ingredient, share: 1 })));
  const title = new Set([...wordsOf(called), ...wordsOf(head.name)]);
  const seen: Seen = { part, contents, mix, title };
  for (const row of proportionsOf(contents)) {
    const isOfWhole = row.bottom === undefined && typeof row.top !== 'string';
    // What goes into another is thinned there; what has a kind has measures of its own.
    const isForAll = row.isOfKinds || isOfOneFood(row);
    if ((isOfWhole && goesOn) || (head.kind !== undefined && !isForAll)) continue;
    if (unweighed.some((i) => counts(row, i)) || !(isKnown || (isOfWhole && row.least === undefined))) continue;
    // One line that nobody can weigh is hardly more than all others.
    if (isOfWhole && (unweighed.length > 1 || (unweighed.length > 0 && row.least !== undefined))) continue;
    const found = past(isOfWhole && unweighed.length > 0 ? halved(row) : row, seen);
    if (found !== undefined) return [found];
  }
  return NOTHING;
});

const NOTHING: readonly never[] = [];

/** Twice as much may lie there as is known. */
const halved = (row: Proportion): Proportion => (row.most === undefined ? row : { ...row, most: row.most * 2 });

/** Of foods by name alone, and no sum of classes. */
const isOfOneFood = ({ top, bottom }: Proportion): boolean =>
  typeof top !== 'string' && [top, bottom].every((foods) => foods === undefined || foods.classes.size === 0);

const counts = ({ top, bottom }: Proportion, i: Ingredient): boolean =>
  typeof top === 'string' || isAmong(top, i) || (bottom !== undefined && isAmong(bottom, i));

/** Less than this is not what it is made with: all of it is on no list. */
const NONE = 0.05;
/** How many times as much a dish may have of what it is called by. */
const NAMED = 2;

function past(row: Proportion, seen: Seen): Found<Values> | undefined {
  const { part, contents, title } = seen;
  const { top, bottom, least } = row;
  const is = typeof top === 'string' ? () => false : (i: Ingredient) => isAmong(top, i);
  if (typeof top !== 'string' && !contents.some(is)) return undefined;
  if (row.title.size > 0 && !has(title, row.title)) return undefined;
  if (has(title, row.not) || !GUARDS[row.where](seen, row)) return undefined;
  const main = mostOf(part.head.ingredients, (i) =>
    typeof top === 'string' ? gramsOf(i) * wet(i) : is(i) ? gramsOf(i) : 0,
  );
  if (main === undefined) return undefined;
  if (row.where === 'dish' && !contents.some((i) => !is(i) && isNoOil(i) && gramsOf(i) > gramsOf(main)))
    return undefined;
  const of = bottom && mostOf(contents, (i) => (isAmong(bottom, i) ? gramsOf(i) : 0));
  const value = typeof top === 'string' ? measured(top, contents) : shareOf(contents, is, bottom);
  if (value === undefined || (bottom !== undefined && of === undefined)) return undefined;
  const isNamed = bottom === undefined && wordsOf(main.name).some((word) => title.has(word));
  const most = row.most === undefined ? undefined : row.most * (isNamed ? NAMED : 1);
  const some = row.where === 'bound' ? 0 : NONE;
  const isLow =
    least !== undefined &&
    value.high < least &&
    // `Oil for frying` is nowhere weighed.
    !contents.some((i) => i.free && is(i)) &&
    value.low > (least > some ? some : 0) &&
    (row.where === 'liquid' || !isWetOtherwise(row, seen));
  if (!isLow && !(most !== undefined && value.low > most)) return undefined;
  const at = ingredientPlace(main);
  if (at === undefined || (isIn(main, 'fat') && anyDoes(part.steps, FRIES))) return undefined;
  const values: Values = {
    name: typeof top === 'string' ? MEASURES[top].words : namesOf(contents.filter(is)),
    isOfWhole: bottom === undefined && typeof top !== 'string',
    ...(of !== undefined && { against: of.name }),
    ...value,
    ...(least !== undefined && { least }),
    ...(most !== undefined && { most }),
    contents,
  };
  return { at: { ...at, part: part.index }, values };
}

/** What is added up, by what is a good part of the sum. */
function namesOf(lines: readonly Ingredient[]): string {
  const sum = lines.reduce((all, i) => all + gramsOf(i), 0);
  return lines
    .filter((i) => gramsOf(i) >= sum * NAMED_FROM)
    .map(({ name }) => name)
    .join(' and ');
}
const NAMED_FROM = 0.15;

/** Of what there is most of, beside oil, the dish is made: garlic in its oil. */
const isNoOil = (i: Ingredient): boolean => !isIn(i, 'fat');

const has = (title: ReadonlySet<string>, words: ReadonlySet<string>): boolean =>
  [...words].some((word) => title.has(word));

function measured(name: Parameters<typeof workOut>[0], contents: readonly Ingredient[]): Range | undefined {
  const worked = workOut(name, contents);
  return worked.known ? worked.value : undefined;
}

/** What is among some to what is among others, or to the whole. */
function shareOf(
  contents: readonly Ingredient[],
  is: (i: Ingredient) => boolean,
  bottom: Proportion['bottom'],
): Range | undefined {
  const own = gramsAmong(contents, is);
  if (bottom === undefined) {
    const rest = gramsAmong(contents, (i) => !is(i));
    return { low: own.low / (own.low + rest.high), high: own.high / (own.high + rest.low) };
  }
  const other = gramsAmong(contents, (i) => isAmong(bottom, i));
  return other.low > 0 ? { low: own.low / other.high, high: own.high / other.low } : undefined;
}

const wet = ({ food }: Ingredient): number => (food?.per100.water ?? 0) / 100;

/** Whether what is juicy, or water that is on no list, may be what little there is. */
function isWetOtherwise({ top, bottom }: Proportion, { contents, part }: Seen): boolean {
  if (typeof top === 'string' || bottom === undefined) return false;
  const grain = gramsAmong(contents, (i) => isAmong(bottom, i)).high;
  // What goes in after it has boiled comes too late.
  const first = firstUse(part, bottom);
  const boiled = part.steps.findIndex((step, at) => at >= first && does(step, IN_WATER));
  const isLate = (i: Ingredient): boolean =>
    boiled >= 0 &&
    part.ledger.some(
      ({ ingredient, uses }) => ingredient === i && uses.length > 0 && uses.every((use) => use.step > boiled),
    );
  const others = contents.filter((i) => !isAmong(top, i) && !keepsItsWater(i) && !isLate(i));
  if (others.reduce((sum, i) => sum + gramsOf(i) * wet(i), 0) > grain) return true;
  // In what is listed, from where that goes in.
  const since = firstUse(part, top);
  return part.steps.some((step, at) => at < since && does(step, IN_WATER));
}

/** What lies in it whole gives the rest no water. */
const keepsItsWater = (i: Ingredient): boolean => isIn(i, 'flesh') || isIn(i, 'egg') || i.food?.class === 'cured meat';
