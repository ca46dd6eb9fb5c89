import { deed, does } from '../../recipe/journey/deeds.ts';
import { listedAs } from '../../recipe/list/families.ts';
import { gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { isAgar, isGelatine } from '../../recipe/measures/gelling.ts';
import { eggProtein, settingStarch, whiteShare } from '../../recipe/measures/shares.ts';
import type { Ingredient, Part, Step } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { atMost, type BandValues, ingredientPlace, maySet, mostOf, outsideBand, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';

type Values = { readonly what: 'band'; readonly band: BandValues } | { readonly what: 'enzyme'; readonly name: string };

export default defineCheck<Values>({
  code: 'gel-wont-set',
  title: 'A jelly or a set cream will stay soft',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  source: {
    kind: 'publication',
    title: 'by the band of each kind; Ward and Courts 1977, p. 509: bloom goes with the square, m₂ = m₁ √(B₁/B₂)',
  },
  explain: `**What it computes.** Gelatine as a share of the whole, as if all of it were 200 bloom: a grade that is written (\`160 bloom\`, \`silver\`) is converted, a sheet of any grade counts 2 to 2.3 g. Fruit that lies in the jelly is taken once in and once out. For agar its own share.

It also looks for fruit whose enzyme cuts gelatine apart: pineapple, kiwi, papaya, fig, guava and ginger, raw.

**Why it matters.** Below 0.6 % a jelly, below 0.3 % a cream, does not hold a shape. With raw pineapple no amount of gelatine sets: the enzyme takes it apart as it forms.

**What to do.** Use more gelatine. Boil or poach the fruit for 5 min first, take it canned, or set with agar.

**Silent** where no gelatine or agar is listed, where starch, egg, pectin or chocolate helps it set and there is near enough, where a step heats the fruit, and where an ingredient of weight is not known.`,
  *find(part) {
    const contents = contentsOf(part);
    if (!contents.some((i) => i.food?.class === 'gelling')) return;
    const setting = contents.filter((i) => i.food !== undefined && (isGelatine(i.food) || isAgar(i.food)));
    if (setting.length === 0) return;
    if (setting.some((i) => i.food !== undefined && isGelatine(i.food))) {
      for (const fruit of part.head.ingredients.filter((i) => isRawEnzyme(i, part))) {
        const at = ingredientPlace(fruit);
        if (at !== undefined) yield { at, values: { what: 'enzyme', name: fruit.name } };
      }
    }
    const helped = isHelped(contents);
    for (const [name, isIt] of [
      ['gelatine', isGelatine],
      ['agar', isAgar],
    ] as const) {
      const own = part.head.ingredients.filter((i) => i.food !== undefined && isIt(i.food));
      if (own.length !== setting.length) continue;
      for (const found of outsideBand(part, name, 'low', () => ingredientPlace(mostOf(own, gramsOf))))
        if (!helped || isFar(found.values)) yield { ...found, values: { what: 'band', band: found.values } };
    }
  },
  say: (values) =>
    values.what === 'band'
      ? sayBand(values.band)
      : {
          message: `Raw ${values.name} takes gelatine apart: it will not set. Boil or poach it for 5 min first, use canned, or set with agar.`,
          source:
            'Encyclopaedic: pineapple, kiwi, figs and papaya hold proteases that cut gelatine, and cooking or canning ends them',
        },
  fix: (values, scene) =>
    values.what === 'enzyme'
      ? []
      : mendAmount(values.band, scene, ({ head }) =>
          mostOf(
            head.ingredients.filter((i) => i.food?.class === 'gelling'),
            gramsOf,
          ),
        ),
  examples: {
    good: [
      'recipe Elder jelly\npart jelly as jelly\n  6 sheets  gelatine\n  500 g     apple juice\n  250 g     water\n  60 g      caster sugar\n  do Soak the gelatine in cold water for 5 min.\n  do Warm the apple juice, the water and the sugar to 50 C and melt the gelatine in it.\n  do Pour into moulds and chill at 4 C for 4 h.\n',
      'recipe Pineapple jelly\npart jelly as jelly\n  16 g      gelatine\n  500 g     pineapple, peeled and cubed\n  500 g     water\n  100 g     caster sugar\n  do Soak the gelatine in a little of the water for 10 min.\n  do Simmer the pineapple with the sugar and the rest of the water for 10 min.\n  do Stir in the gelatine, pour into moulds and chill at 4 C for 4 h.\n',
    ],
    bad: [
      {
        text: 'recipe Vanilla cream\npart cream as set cream\n  1 sheet   gelatine\n# "gelatine" gel-wont-set *: does not set\n  400 g     double cream\n  350 g     whole milk\n  80 g      caster sugar\n  do Soak the gelatine for 5 min.\n  do Warm the cream, milk and sugar to 50 C, melt the gelatine in it, and chill at 4 C for 4 h.\n',
      },
      'recipe Pineapple jelly\npart jelly as jelly\n  14 g      gelatine\n  500 g     fresh pineapple juice\n# "fresh pineapple juice" gel-wont-set: takes gelatine apart\n  60 g      caster sugar\n  100 g     water\n  do Warm the water and the sugar to 50 C and melt the gelatine in it.\n  do Stir in the pineapple juice and chill at 4 C for 4 h.\n',
      'recipe Kiwi jelly\npart jelly as jelly\n  14 g      gelatine\n  200 g     kiwi, peeled and sliced\n# "kiwi" gel-wont-set: takes gelatine apart\n  600 g     apple juice\n  60 g      caster sugar\n  do Warm the apple juice and the sugar to 50 C and melt the gelatine in it.\n  do Lay in the kiwi and chill at 4 C for 4 h.\n',
    ],
  },
});

/** Under the far end by this (judgement), what helps is what it is dusted with. */
const HELPED = 0.6;

const isFar = ({ measure, value }: BandValues): boolean => value.high < (measure.implausible[0] ?? 0) * HELPED;

/** Whether something else sets it, by its share of the whole. */
export function isHelped(contents: readonly Ingredient[]): boolean {
  let [whole, starch, protein, chocolate] = [0, 0, 0, 0];
  for (const i of contents) {
    const grams = gramsOf(i);
    whole += grams;
    starch += grams * atMost(i, settingStarch);
    // Whites are whipped in raw: they hold air, and set nothing.
    protein += grams * (i.food !== undefined && whiteShare(i.food) > 0 ? 0 : atMost(i, eggProtein));
    if (i.food?.class === 'chocolate' || i.food?.class === 'cheese') chocolate += grams;
    if (i.food?.roles.includes('gelling') === true && !isGelatine(i.food) && !isAgar(i.food)) return true;
    if (maySet(i)) return true;
  }
  return starch > 0.015 * whole || protein > 0.014 * whole || chocolate > 0.1 * whole;
}

/** Juice is bought heated; pressed in the kitchen it works as the fruit does. */
const PRESSED = /\bfresh(?:ly)?\b.*\b(?:pineapple|papaya|kiwi)\b.*\bjuice\b/i;

function isRawEnzyme(ingredient: Ingredient, part: Part): boolean {
  const undoes =
    ingredient.food?.roles.includes('undoes gelatine') === true || PRESSED.test(ingredient.node.name?.text ?? '');
  const said = listedAs(ingredient);
  if (!undoes || said.has('cooked') || said.has('dried')) return false;
  const entry = part.ledger.find((e) => e.ingredient === ingredient);
  const steps = (entry?.uses ?? []).map((u) => (u.part === part.index ? part.steps[u.step] : undefined));
  return !steps.some((s) => s === undefined || isHeated(s));
}

/** Below this the enzymes of raw fruit work on: that of pineapple is inactive from 70 °C (Better Bowls), by others from 82. */
const LEAST_HOT_C = 80;

const isHeated = (step: Step): boolean => does(step, HEATED);

const HEATED = deed(
  ({ act, cooks, until, temperatures }) =>
    (act === 'heat' && (cooks !== 'barely' || until.some(({ is }) => is === 'boiling'))) ||
    temperatures.some(({ celsius }) => celsius.high >= LEAST_HOT_C),
);
