import type { TextEdit } from '../../edits/text-edit.ts';
import { replaceSpan } from '../../edits/text-edit.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import { journeysOf } from '../../recipe/journey/fold.ts';
import { isNotedForRaw } from '../../recipe/journey/noted.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { type OnFood, undercooked } from '../by-state/undercooked.ts';
import { severityAt, worse } from '../by-state/verdict.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import type { FoodSafetyRules } from '../house.ts';
import { besideText, CAUTION, type Group, holdingLimits, type Limit } from './limits.ts';

type Values =
  | {
      readonly kind: 'no figure';
      readonly name: string;
      readonly limit: Limit;
      /** The other rule set's figure. */
      readonly beside: string;
      readonly tells: 'nothing' | 'a sign' | 'how thick it is';
      /** What heats it last. */
      readonly last: BoundEvent | undefined;
    }
  | {
      readonly kind: 'raw';
      readonly asked: boolean;
      readonly name: string;
      readonly source: string;
      readonly group: Group;
      /** Oysters and their like, whose danger is not the parasites that freezing kills. */
      readonly molluscs: boolean;
      readonly rows: readonly (readonly number[])[];
    };

/** By part, the gravest and strictest: it speaks for the part. */
const found = foundAgain<Values>(
  overJourneys((house, journey) => {
    const told = new Map<number, OnFood>();
    for (const each of undercooked(house, journey)) {
      const other = told.get(each.part);
      if (each.code === 'no-safe-temperature' && (other === undefined || isGraver(each, other)))
        told.set(each.part, each);
    }
    return [...told.values()].flatMap((each) => findingOf(each, house.foodSafety) ?? []);
  }),
);

const isGraver = (a: OnFood, b: OnFood): boolean => {
  const by = worse(a.level, b.level);
  return by > 0 || (by === 0 && strictness(a) > strictness(b));
};

const strictness = ({ how }: OnFood): number =>
  how.kind === 'no figure' || how.kind === 'figure' ? how.limit.celsius : 0;

function findingOf({ how, held, level, ...at }: OnFood, rules: FoodSafetyRules): Found<Values> | undefined {
  const place = { at: { part: at.part, line: at.line, start: at.start, end: at.end }, ...severityAt(level) };
  const { name } = held.ingredient;
  if (how.kind === 'raw') {
    const { title, freezing, raw, molluscs } = holdingLimits(rules);
    const isMollusc = foodOf(held.ingredient)?.allergens.eu.includes('molluscs') === true;
    const { section } = isMollusc ? molluscs : how.group === 'fish' ? freezing : raw;
    const { group } = how;
    const source = `${title}, ${section}`;
    const asked = level === 'ask';
    return { ...place, values: { kind: 'raw', asked, name, source, group, molluscs: isMollusc, rows: freezing.rows } };
  }
  if (how.kind !== 'no figure' && how.kind !== 'figure') return undefined;
  const { limit, group } = how;
  const isByThickness = how.kind === 'figure' ? level === 'ask' : how.long;
  const tells = how.kind === 'no figure' && how.sign ? 'a sign' : isByThickness ? 'how thick it is' : 'nothing';
  const last = held.member.state.heatedBy;
  return { ...place, values: { kind: 'no figure', name, limit, beside: besideText(group, rules), tells, last } };
}

export default defineCheck<Values>({
  code: 'no-safe-temperature',
  title: 'A dish that must be cooked through has no temperature in the food',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      'FDA Food Code 2022, 3-401.11 and 3-402.11; USDA FSIS, as the trade quotes it: a thermometer is the only sure sign',
  },
  explain: `**What it computes.** For poultry, minced meat and dishes that egg sets: whether any step gives a temperature in the food, or cooks it in a way that passes the safe one (boils, simmers, steams, braises, poaches). For fish and whole meat: whether any step heats it at all, by the state it is in at the end; cold smoke, acid and salt heat nothing. In a water bath, or an oven of 75 °C and less, whether that is hot enough for as long as it lies there: so long as the food's own time, and longer by what it takes to be as warm. Where only that is in doubt, or where it lies for an hour and a half or longer in an oven of 140 °C or more, it is asked how thick the food is.

**Why it matters.** Colour and clear juices do not tell: minced beef browns before it is safe, and a thigh can stay pink after. A cook with a figure to reach has a dish that is safe and not dried out besides. Fish eaten raw carries parasites that only freezing or heat kills.

**What to do.** Write where and how hot: \`until the thickest part reads 74 C\`. For fish eaten raw, write the freezing (at −20 °C for 7 d, or at −35 °C for 15 h), or accept it with the reason: farmed on pellets, a species of tuna. Oysters, clams and mussels are made no safer by freezing: buy those sold to be eaten raw, say that they are raw, and accept it.

What no step names is a warning. A sign such as *golden* or *the juices run clear* makes it information; nothing at all, or *pink in the middle*, makes it an error. **Silent** in parts without steps, for what is bought cooked, cured, smoked or frozen for eating raw, for whole cuts and fish that any step heats, and for egg in doughs, batters and cakes.`,
  find: ({ recipe, house }) => {
    const all = found(recipe, house);
    const isRawFish = ({ values }: Found<Values>): boolean =>
      values.kind === 'raw' && values.group === 'fish' && !values.molluscs;
    return all.some(isRawFish) && isNotedForRaw(recipe, holdingLimits(house.foodSafety).freezing.rows)
      ? all.filter((each) => !isRawFish(each))
      : all;
  },
  say: (values) => {
    if (values.kind === 'raw') {
      const rows = values.rows.map(([c = 0, min = 0]) =>
        `${c} °C for ${min >= 1440 ? `${min / 1440} d` : `${min / 60} h`}`.replace('-', '−'),
      );
      const advice = values.molluscs
        ? 'take shellfish sold to be eaten raw, from a licensed dealer, and tell the guests that it is raw'
        : values.group === 'fish'
          ? `freeze it first, at ${rows.reverse().join(' or ')}, or say that it is sold to be eaten raw`
          : values.group === 'meat'
            ? 'cook it, or serve it raw only on purpose and with the advisory the rules ask for'
            : 'cook it through; it is never served raw';
      const message = values.asked
        ? `Does a step cook the ${values.name}? What is done to it is not sure to: write how hot it gets inside. ${CAUTION}`
        : `No step cooks the ${values.name}: ${advice}. ${CAUTION}`;
      return { message, source: values.source };
    }
    const { name, limit, beside, tells } = values;
    const figure = `${limit.celsius} °C, ${limit.fahrenheit} °F`;
    return {
      message: `${TELLS[tells]}: ${name} must read ${figure} inside; say where. ${beside} ${CAUTION}`,
      band: [limit.celsius, null],
      unit: 'C',
      source: limit.source,
    };
  },
  fix: (values, { recipe, document }) => {
    if (values.kind !== 'no figure' || values.limit.group === 'egg') return [];
    const { last } = values;
    const folded =
      last && journeysOf(recipe).flatMap(({ steps }) => steps.find(({ events }) => events.includes(last)) ?? [])[0];
    const step = folded && recipe.parts[folded.part]?.steps.find(({ line }) => line === folded.line);
    if (folded === undefined || step === undefined) return [];
    const line = (recipe.partsAt[folded.part] ?? 0) + step.line;
    const edit = addReading(document.lines[line]?.text ?? '', line, step.sentence.end, values.limit.celsius);
    return [{ title: `Write \`until the centre reads ${values.limit.celsius} C\``, effect: 'amounts', edits: [edit] }];
  },
  examples: {
    good: [
      'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  do Roast the chicken for 75 min, until the thickest part of the thigh reads 74 C.\n',
      'recipe Chicken broth\n  1.2 kg    chicken legs\n  2 l       water\n  do Simmer the chicken legs in the water for 90 min.\n',
      'recipe Cured salmon\n  800 g     salmon fillet, skinned (frozen at -20 C for 7 d)\n  40 g      fine salt\n  30 g      caster sugar\n  do Rub the salmon with the salt and sugar and chill at 4 C for 1 d.\n',
    ],
    bad: [
      'recipe Chicken livers\n  400 g     chicken livers\n# "chicken livers" no-safe-temperature warning *\n  30 g      butter\n  50 ml     brandy\n  do Fry the chicken livers in the butter for 6 min, until brown outside and still raw inside.\n  do Pour in the brandy and boil until almost dry.\n',
      {
        text: 'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n# "chicken" no-safe-temperature *: 74 °C, 165 °F\n  do Roast the chicken for 75 min.\n',
        after: {
          'Write `until the centre reads 74 C`':
            'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  do Roast the chicken for 75 min, until the centre reads 74 C.\n',
        },
      },
      'recipe Patties\n  600 g     minced beef\n# "minced beef" no-safe-temperature info *: does not tell\n  6 g       fine salt\n  do Mix the beef with the salt and shape in 4.\n  do Fry for 6 min until brown on both sides.\n',
      'recipe Soft burgers\n  300 g     minced beef\n# "minced beef" no-safe-temperature *: Nothing tells\n  do Shape, bag and cook in a water bath at 54 C for 30 min.\n',
      'recipe Cured salmon\n  800 g     salmon fillet\n# "salmon fillet" no-safe-temperature: −20 °C for 7 d\n  40 g      fine salt\n  30 g      caster sugar\n  do Rub the salmon with the salt and sugar and chill at 4 C for 1 d.\n',
      'recipe Oysters with shallot\n  12        oysters, shucked\n# "oysters" no-safe-temperature: licensed dealer\n  50 ml     red wine vinegar\n  1         shallot, finely chopped\n  do Mix the vinegar with the shallot and spoon over the oysters.\n',
      'recipe Cup custard as baked custard\n  4 large   eggs\n# "eggs" no-safe-temperature warning\n  500 ml    whole milk\n  80 g      caster sugar\n  do Whisk the eggs with the milk and sugar.\n  do Bake at 150 C for 40 min.\n',
    ],
  },
});

const TELLS = {
  nothing: 'Nothing tells when it is safe',
  'a sign': 'The look of it does not tell when it is safe',
  'how thick it is': 'How thick it is decides whether so long is enough',
} as const;

/** `, until the centre reads 74 C`, before the full stop. */
function addReading(text: string, line: number, end: number, celsius: number): TextEdit {
  const trimmedEnd = text.slice(0, end).trimEnd().length;
  const at = text[trimmedEnd - 1] === '.' ? trimmedEnd - 1 : trimmedEnd;
  return replaceSpan(line, { start: at, end: at }, `, until the centre reads ${celsius} C`);
}
