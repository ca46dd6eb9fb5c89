import { replaceSpan } from '../../edits/text-edit.ts';
import type { Stay } from '../../recipe/journey/bodies.ts';
import { notedStays } from '../../recipe/journey/noted.ts';
import { isFrozen } from '../../recipe/journey/stays.ts';
import { isIn } from '../../recipe/list/families.ts';
import { type KeptCold, keptCold, keptColdByNote } from '../by-state/kept-cold.ts';
import { GOOD_MIN, isTooLongByNote, keptForYears, shelfLife, YEARS_MIN } from '../by-state/kept-for-years.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { type Lists, membersIn } from '../by-state/spoils.ts';
import { severityAt } from '../by-state/verdict.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain, oncePerPlace } from '../found-again.ts';
import type { House } from '../house.ts';
import { spanText } from '../method/heat-words.ts';
import { CAUTION, holdingLimits } from './limits.ts';

interface Values {
  readonly name: string;
  readonly days: number;
  readonly limitDays: number;
  /** It is advice, and no rule. */
  readonly advised: boolean;
  /** Out of the cold, or frozen, and for years. */
  readonly shelf?: 'room' | 'frozen';
  /** It is to be cooked yet. */
  readonly isRaw?: boolean;
  /** How the time is said, where a time is. */
  readonly said: KeptCold['said'];
  readonly source: string;
}

const DAY_MIN = 1440;

function placed(
  house: House,
  { level, start, end, name, minutes, limit, said, days }: KeptCold,
  at: { readonly part?: number; readonly line: number },
): Found<Values> {
  const { title, kept } = holdingLimits(house.foodSafety);
  return {
    at: { ...at, start, end },
    ...severityAt(level),
    values: {
      name,
      days: Math.ceil(minutes.high / DAY_MIN),
      limitDays: limit.min / DAY_MIN,
      advised: limit !== kept && days === undefined,
      said,
      ...(days?.isRaw && { isRaw: true }),
      source: days?.source ?? `${title}, ${limit.section}`,
    },
  };
}

/** Out of the cold, for years, or for longer than its kind keeps. */
function shelved(
  { by: { event }, minutes, body, lies }: Stay,
  at: { readonly part?: number; readonly line: number },
  lists: Lists,
  goodMin = GOOD_MIN,
): Found<Values> {
  const least = goodMin === GOOD_MIN ? YEARS_MIN : goodMin;
  const { start, end } = event.times.find((time) => time.minutes.high >= least) ?? event;
  return {
    at: { ...at, start, end },
    severity: 'warning',
    values: {
      name: membersIn(lists, body).find(({ ingredient }) => isIn(ingredient, 'plant'))?.ingredient.name ?? '',
      days: Math.ceil(minutes.high / DAY_MIN),
      limitDays: goodMin / DAY_MIN,
      advised: true,
      shelf: isFrozen(lies) ? 'frozen' : 'room',
      said: undefined,
      source:
        goodMin === GOOD_MIN
          ? isFrozen(lies)
            ? 'common practice, no source'
            : 'USDA Complete Guide to Home Canning (2015), Guide 1 (from memory)'
          : 'common practice, no source',
    },
  };
}

const foundInNotes = foundAgain<Values>((recipe, house) => {
  const found = notedStays(recipe).flatMap((noted) => {
    if (isTooLongByNote(noted)) return shelved(noted.stay, { line: noted.line }, noted.journey);
    const life = shelfLife(noted.journey, noted.stay);
    if (life !== undefined) return shelved(noted.stay, { line: noted.line }, noted.journey, life);
    const each = keptColdByNote(house, noted);
    return each === undefined ? [] : placed(house, each, { line: noted.line });
  });
  return oncePerPlace(found);
});

const found = foundAgain<Values>(
  overJourneys((house, journey) => {
    const cold = keptCold(house, journey).map((each) =>
      placed(house, each, { part: each.stay.part, line: each.stay.line }),
    );
    const years = keptForYears(journey).map((stay) => shelved(stay, { part: stay.part, line: stay.line }, journey));
    for (const stay of journey.stays) {
      const life = shelfLife(journey, stay);
      if (life !== undefined) years.push(shelved(stay, { part: stay.part, line: stay.line }, journey, life));
    }
    return years.length === 0 ? cold : oncePerPlace([...cold, ...years]);
  }),
);

export default defineCheck<Values>({
  code: 'kept-too-long',
  title: 'Perishable food is kept in the cold for too long',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      'FDA Food Code 2022, 3-501.17(A) and (F); USDA FSIS, leftovers, 3 to 4 days, as University of Illinois Extension quotes it',
  },
  explain: `**What it computes.** For what is cooked, or eaten as it is, and must be kept cold (flesh, egg, milk, cooked rice, pulses and vegetables, cut melon, by their share of the mixture): the longest time that a step keeps it in a fridge, against seven days at 5 °C (41 °F). Under the rules for homes, what is cooked and kept for more than four days is named as information. What is raw yet is held to the days of raw food, mince, poultry and fish to fewer, and what is only sour to months. Out of the cold what is good for a year at most, or by its kind for less (live drinks, bread, cakes, sweets), against that.

**Why it matters.** The cold slows bacteria and does not stop them: Listeria grows at 4 °C, and is at dangerous numbers in a soup or a ham before that smells of anything.

**What to do.** Say seven days at most, freeze what is to be kept for longer, or make less of it. Where a licensed process covers a longer time, accept it: \`allow kept-too-long because …\`.

It is a warning where only the longest of a range is too long (\`5 to 10 days\`), and information where the place is not sure or fat covers it. **Silent** for what is frozen for less than years, for cheese, cured, dried and fermented food, for what enough salt, sugar, fat or alcohol keeps, and for doughs.`,
  find: ({ recipe, house }) => {
    const noted = foundInNotes(recipe, house);
    const all = found(recipe, house);
    return noted.length === 0 ? all : [...all, ...noted];
  },
  say: ({ name, days, limitDays, advised, shelf, isRaw, source }) => ({
    message: shelf
      ? `${spanText(days * DAY_MIN)} ${shelf === 'frozen' ? 'frozen' : 'out of the cold'} is too long for what is made${name === '' ? '' : ` with ${name}`} at home: it is good for ${spanText(limitDays * DAY_MIN)} at most. Was a shorter time meant? ${CAUTION}`
      : advised
        ? `Cooked ${name} is best eaten within ${limitDays} d, or frozen: this says ${days} d in the fridge. ${CAUTION}`
        : `${days} d in the fridge is too long for what holds ${isRaw ? 'raw ' : ''}${name}: keep it for ${limitDays} d at most, or freeze it. ${CAUTION}`,
    value: days,
    unit: 'd',
    band: [null, limitDays],
    source,
  }),
  fix: ({ limitDays, said }, _scene, at) =>
    said === undefined
      ? []
      : [
          {
            title: `Write ${limitDays} days`,
            effect: 'amounts',
            edits: [replaceSpan(at.line, at, `${said} ${limitDays} days`)],
          },
        ],
  examples: {
    good: [
      'recipe Beef stew\n  1 kg      stewing beef\n  500 g     carrots\n  1 l       beef stock\n  do Simmer the beef and carrots in the stock for 3 h until tender.\n  do Cool to 4 C within 2 h and keep in the fridge for 3 days, or in the freezer for 3 months.\n',
      'recipe Pickled onions as quick pickle\n  1 kg      onions\n  700 g     malt vinegar\n  50 g      fine salt\n  do Salt the onions overnight, pack in jars and cover with the vinegar.\n  do Keep in the fridge for 2 months.\n',
      'recipe Pizza dough\n  500 g     bread flour\n  325 g     water\n  10 g      fine salt\n  1 g       instant yeast\n  do Knead the flour, water, salt and yeast and keep in the fridge for 10 days.\n  do Bake at 250 C for 8 min until brown.\n',
    ],
    bad: [
      'recipe Kombucha as tea ferment\n  3 l       water\n  15 g      black tea\n  210 g     sugar\n  300 ml    kombucha starter\n  do Steep the tea in the water for 5 min, stir in the sugar and cool to 24 C.\n  do Add the starter, cover and ferment at 24 C for 8 days.\n  do Bottle and keep at room temperature for 6 months.\n# "for 6 months" kept-too-long warning: 45 days at most\n',
      {
        text: 'recipe Chicken and rice\n  500 g     white rice\n  600 g     chicken thigh\n  1 l       water\n  do Boil the rice and chicken in the water for 25 min, until the chicken reads 85 C.\n  do Cool to 4 C within 2 h and keep in the fridge for 3 weeks.\n# "for 3 weeks" kept-too-long *: 21 d\n',
        after: {
          'Write 7 days':
            'recipe Chicken and rice\n  500 g     white rice\n  600 g     chicken thigh\n  1 l       water\n  do Boil the rice and chicken in the water for 25 min, until the chicken reads 85 C.\n  do Cool to 4 C within 2 h and keep in the fridge for 7 days.\n',
        },
      },
      'recipe Burgers\n  500 g     minced beef\n  1         onion, chopped\n  do Mix the beef and onion and keep in the fridge for 9 days.\n# "for 9 days" kept-too-long warning *: raw minced beef\n  do Fry until it reads 72 C.\n',
      'recipe Bean stew\n  500 g     cooked chickpeas\n  400 g     onions\n  do Simmer the chickpeas and onions for 30 min.\n  note Keeps for 3 weeks in the fridge, or 3 months at -18 C.\n# "for 3 weeks" kept-too-long warning *: 21 d\n',
      'recipe Cut melon\n  2 kg      melon\n  do Dice the melon and keep in the fridge for up to 10 days.\n# "for up to 10 days" kept-too-long *\n',
      'recipe Hummus\n  400 g     cooked chickpeas\n  80 g      tahini\n  20 g      lemon juice\n  5 g       fine salt\n  do Blend the chickpeas with the tahini, lemon juice and salt.\n  do Keep in the fridge for 5 to 10 days.\n# "for 5 to 10 days" kept-too-long warning *: 10 d\n',
    ],
  },
});
