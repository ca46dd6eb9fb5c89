import fruit from '../../../data/low-acid-fruit.json' with { type: 'json' };
import { gramsText, trimmed } from '../../measure/number-text.ts';
import type { Body } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isOf } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { gramsOf } from '../../recipe/measures/brought.ts';
import { addedAcidG } from '../../recipe/measures/mixture.ts';
import { type Boiled, keptInJars, LEFT_DAYS, PICKLE, SOURING_SALT, SWEET_JAM, TOMATO } from '../by-state/in-jars.ts';
import { portionsIn } from '../by-state/in-the-jar.ts';
import { type Kept, wordsOf } from '../by-state/kept.ts';
import { overTold } from '../by-state/over-journeys.ts';
import { TESTED_SOURCE, type TestedRecipe } from '../by-state/tested-preserves.ts';
import { defineCheck, type Found } from '../check.ts';
import { sums, sumTable } from '../sum-table.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly name: string;
  readonly vessel: Body['vessel'];
  readonly how: Kept['how'];
  /** Where and for how long, in the words of the step; empty where nobody says. */
  readonly words: string;
  /** Acetic or citric acid in all but the sugar, as a share. */
  readonly acid: number;
  readonly least: number;
  readonly tested?: TestedRecipe;
  readonly isTested: boolean;
  readonly isFruit: boolean;
  readonly isEgg: boolean;
  readonly unprocessed: boolean;
  readonly boiled: Boiled | undefined;
  readonly unweighed: boolean;
  readonly asked: boolean;
  readonly body: Body;
}

const foundOn = (journey: Journey, isTold: boolean): readonly Found<Values>[] =>
  keptInJars(journey).map((jar) => {
    const { body, what, part, kept, acid, least, tested, isTested, isFruit, isEgg, unprocessed } = jar;
    const { isNear, boiled, unweighed, asked, inferred } = jar;
    const { start, end } = what.node.name ?? { start: 0, end: 0 };
    return {
      at: { part, line: what.line, start, end },
      ...(asked || (isNear && isTested)
        ? { severity: 'info' as const }
        : (inferred || isTested || unprocessed || isTold) && { severity: 'warning' as const }),
      values: {
        name: what.name,
        vessel: body.vessel,
        how: kept.how,
        words: isTold ? 'by the note' : wordsOf(journey, kept),
        acid,
        least,
        ...(tested && { tested }),
        isTested,
        isFruit,
        isEgg,
        unprocessed,
        boiled,
        unweighed,
        asked,
        body,
      },
    };
  });

const found = overTold(foundOn);

/** `1.1 %`, `0.78 %`. */
const hundredths = (share: number): string => `${trimmed(share * 100, 2)} %`;

/** What it is in, how that is kept, and that it holds, as the start of a sentence. */
function jarsText({ name, vessel, words, asked }: Values): string {
  const where = words === '' ? '' : ` (${words}${asked ? ', and nothing tells that it is cold there' : ''})`;
  switch (vessel) {
    case 'jar':
      return `Sealed jars with ${name}${where} hold`;
    case 'airtight':
      return `Sealed packs with ${name}${where} hold`;
    default:
      return `What is put by with ${name}${where} holds`;
  }
}

export default defineCheck<Values>({
  code: 'low-acid-preserve',
  title: 'Low-acid food is jarred without pressure or enough acid',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title: 'USDA Complete Guide to Home Canning (2015); 21 CFR 114.3: pH 4.6 divides acid from low-acid foods',
  },
  explain: `**What it computes.** What is shut up in jars or packs by the steps, or is to keep out of the cold for weeks, with vegetables, herbs, pulses, mushrooms, grains, boiled eggs, bread or cake that is baked in the jar, meat or fish in it, or fruit that is low in acid (figs, bananas, mangoes, melons, papayas, elderberries, white peaches and their like): how it is kept in the end, whether it was under pressure, and else how much acetic or citric acid all but its sugar holds. Pickles want some ${PICKLE * 100} % (vinegar of 5 %, at least half the liquor); tomatoes and such fruit ${TOMATO * 100} % (2 tbsp bottled lemon juice, or ½ tsp citric acid, a quart), and tomatoes with other vegetables in between, each by its weight. Some tested recipes hold less over their own vegetables (bread-and-butter pickles, bell peppers, asparagus, chile salsa and a few more, by guide and page): within a fifth of the usual that is information, down to the tested recipe a warning that names it, below it an error; beans, carrots and all that no such recipe has keep the usual. The strength that is written with the vinegar counts, and water that a step drains off does not. Boiled eggs keep in vinegar in the cold alone. What is left in its jar out of the cold for ${LEFT_DAYS} days or more counts as shut up, but for vegetables that have no vinegar and salt enough to turn sour (${SOURING_SALT * 100} %). Where it lies in a place that nobody knows, or something sour goes in of which no amount is read, it is asked about (information); what was cooked and is only filled into jars, with no word of a lid or of the cold, is a warning.

**Why it matters.** Above pH 4.6 the spores of Clostridium botulinum outlive boiling water, and a sealed jar is the airless place they need. The poison has no smell.

**What to do.** Use a tested recipe: pressure-can it, or pickle it with vinegar of 5 % that is never thinned below that recipe. Or keep it in the fridge or freezer, and say so.

Other fruit in closed jars, in water or a light syrup, is held to ten minutes of boiling in them, and tomatoes to half an hour (a warning).

**Silent** for jams with their full sugar (${SWEET_JAM * 100} % of the list and more), ferments in their brine, what is kept in the fridge or frozen in the end, or eaten, what is dry, dried until brittle or fried dry, and what was under pressure. It measures acid, not pH, and does not certify a recipe.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: (values) => {
    const { acid, least, tested, isTested, isFruit, isEgg, unprocessed, boiled, unweighed } = values;
    if (boiled !== undefined) {
      const { min, of, usual } = boiled;
      return {
        message: `The ${values.name} in closed jars ${min > 0 ? `are boiled for ${trimmed(min, 1)} min` : 'are not boiled once those are closed'}: ${of === 'fruit' ? 'fruit in jars is' : 'tomatoes in jars are'} boiled for ${usual}, as long as a tested recipe says, or kept in the fridge. ${CAUTION}`,
        source: `USDA Complete Guide to Home Canning (2015), guide ${of === 'fruit' ? 2 : 3} (from memory)`,
      };
    }
    if (unprocessed)
      return {
        message: `${jarsText(values)} little vinegar or none, and no step heats them once they are closed: what is no sourer is boiled in its jars, as long as a tested recipe says. Or keep it in the fridge. ${CAUTION}`,
        source:
          'USDA FSIS, Molds on Food (quoted in 2009): what is sour is heated in its jars, in boiling water, for the recommended time',
      };
    // No tested recipe lets them stand out of the cold.
    if (isEgg && acid >= least)
      return {
        message: `${jarsText(values)} boiled eggs: vinegar is slow to reach the yolk, and botulism can grow there. Keep them in the fridge. ${CAUTION}`,
        source: 'NCHFP, Preserving Food at Home, pickled eggs: kept in the fridge',
      };
    if (unweighed)
      return {
        message: `${jarsText(values)} something sour of which no amount is said, where ${(least * 100).toFixed(1)} % of acid is the least and no step uses pressure: write how much. ${CAUTION}`,
      };
    const held = acid < 0.0005 ? 'no acid that was added' : `${hundredths(acid)} of acid in all but the sugar`;
    const named = tested && `${tested.name} (USDA Complete Guide, page ${tested.page}, ${hundredths(tested.acid)})`;
    const figures = { value: acid, unit: '1', band: [least, null] } as const;
    if (isTested)
      return {
        message: `${jarsText(values)} ${held}, less than the usual ${hundredths(least)}. One tested recipe for such vegetables has as little: ${named}. Follow it to the letter, its canner and times too, or keep the jars in the fridge. ${CAUTION}`,
        ...figures,
        source: TESTED_SOURCE,
      };
    const follow = named === undefined ? 'Follow a tested recipe' : `Follow a tested recipe, as ${named}`;
    return {
      message: `${jarsText(values)} ${held}, where ${hundredths(least)} is the least, and no step uses pressure: botulism can grow. ${follow}, or keep it in the fridge. ${CAUTION}`,
      ...figures,
      ...(isFruit ? { source: fruit.source } : tested && { source: TESTED_SOURCE }),
    };
  },
  work: ({ body, acid, least }, { recipe }) => {
    const known = portionsIn(recipe, body).filter(({ ingredient }) => foodOf(ingredient) !== undefined);
    const rows = known.map(({ ingredient, share }) => {
      const grams = gramsOf(ingredient) * share;
      const sugar = isOf(foodOf(ingredient), 'sugar') ? grams : 0;
      return { name: ingredient.name, numbers: [grams, sugar, addedAcidG(ingredient, grams)] };
    });
    const [whole = 0, sugar = 0, acidInAll = 0] = sums(rows);
    const rest = whole - sugar;
    const sweet = sugar === 0 ? rows.map(({ name, numbers: [g = 0, , a = 0] }) => ({ name, numbers: [g, a] })) : rows;
    const heads = ['ingredient', 'weighs, g', ...(sugar === 0 ? [] : ['sugar, g']), 'acid that is added, g'];
    const shareOf = sugar === 0 ? `${gramsText(whole)} g` : `(${gramsText(whole)} g − ${gramsText(sugar)} g)`;
    return [
      ...sumTable(heads, sweet),
      '',
      `${gramsText(acidInAll)} g ÷ ${shareOf} = ${trimmed(acid * 100, 2)} %. The least is ${hundredths(least)}: ${gramsText(rest)} g × ${hundredths(least)} = ${gramsText(rest * least)} g of acid.`,
    ];
  },
  examples: {
    good: [
      'recipe Pickled carrots as quick pickle\n  1 kg      carrots, sliced\n  500 g     white wine vinegar\n  400 g     water\n  30 g      fine salt\n  60 g      caster sugar\n  do Boil the vinegar, water, salt and sugar.\n  do Pack the carrots in sterilised jars, pour on the liquor and seal.\n',
      'recipe Green beans in jars\n  1 kg      green beans\n  500 g     water\n  10 g      fine salt\n  do Pack the beans in jars with the salt and the boiling water and seal.\n  do Process in a pressure canner for 25 min.\n',
    ],
    bad: [
      'recipe Gherkins\n  note Keep a year in the larder.\n  2.7 kg     pickling cucumbers\n# "pickling cucumbers" low-acid-preserve warning: by the note\n  950 g     white vinegar, 5 % acidity\n  950 g     water\n  70 g      fine salt\n  do Boil the vinegar, water and salt.\n  do Pack the cucumbers in jars, pour over the brine and seal.\n',
      'recipe Green beans in jars\n  1 kg      green beans\n# "green beans" low-acid-preserve: no acid\n  500 g     water\n  10 g      fine salt\n  do Pack the beans in jars with the salt and the boiling water and seal.\n  do Process in a boiling-water bath for 30 min.\n',
      'recipe Basil pesto\n  200 g     basil\n# "basil" low-acid-preserve: no acid\n  250 ml    olive oil\n  60 g      pine nuts\n  80 g      Parmesan\n  2 cloves  garlic\n  do Blend everything, fill into sterilised jars, seal and keep in the pantry for 6 months.\n',
      'recipe Canned pumpkin\n  3 kg      pumpkin, cubed\n# "pumpkin" low-acid-preserve: no acid\n  1 l       water\n  do Boil the pumpkin in the water until soft, mash and fill into jars.\n  do Boil the jars for 90 min.\n',
      'recipe Pickled eggs\n  12        eggs, hard-boiled\n# "eggs" low-acid-preserve: is the least\n  350 ml    water\n  150 ml    white wine vinegar\n  do Boil the vinegar and water, pour over the eggs in sterilised jars, seal and store in the cupboard.\n',
      'recipe Fig spread as jam\n  1.5 kg    figs, quartered\n# "figs" low-acid-preserve: no acid\n  200 g     honey\n  200 ml    water\n  do Simmer the figs with the honey and water for 40 min.\n  do Ladle into hot jars, close and boil the jars for 10 min. Refrigerate once opened.\n',
      'recipe Pepper relish\n  1 kg      red bell peppers, diced\n# "red bell peppers" low-acid-preserve: is the least\n  300 g     onions, diced\n  60 g      white wine vinegar\n  40 g      caster sugar\n  do Simmer the peppers, onions, vinegar and sugar for 30 min.\n  do Fill into sterilised jars, seal and store in the larder.\n',
    ],
  },
});
