import { gramsText, significant } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { anyDoes, deed, speaksOf } from '../../recipe/journey/deeds.ts';
import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import type { Kind } from '../../recipe/measures/kind.ts';
import {
  ANY_BAKE,
  bakingPowder,
  bakingSoda,
  instantYeast,
  isSoda,
  lift,
  neutralises,
} from '../../recipe/measures/leavening.ts';
import { measure } from '../../recipe/measures/measures.ts';
import { mixtureOf } from '../../recipe/measures/mixture.ts';
import { eggShare, isStarter } from '../../recipe/measures/shares.ts';
import type { MeasureValue } from '../../recipe/measures/worked-ratio.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { takenFor } from '../../recipe/taken-for.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import type { Severity } from '../severity.ts';
import { plainTable } from '../sum-table.ts';
import { type BandValues, ingredientPlace, mostBringing, mostOf, outsideBand, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';

type Values =
  | { readonly what: 'amount'; readonly band: BandValues }
  | {
      readonly what: 'no acid';
      readonly sodaG: Range;
      readonly neutralG: Range;
      readonly name: string;
      readonly contents: readonly Ingredient[];
    };

export default defineCheck<Values>({
  code: 'leavening-out-of-range',
  title: 'Baking powder or soda is too much, too little, or has no acid to work with',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** Baking powder, alone or in self-raising flour, and baking soda per flour by weight; in a brittle soda per sugar. For soda also the acid that is there to work with: 1 g wants about 2.2 g of cream of tartar, 13 g of lemon juice, 14 g of vinegar, 125 g of buttermilk or yoghurt, 100 to 150 g of molasses.

**Why it matters.** Too much gas tears the crumb before it sets: the cake rises, falls and is coarse. Soda that finds no acid gives half its gas and stays behind: soapy, brown, bitter.

**What to do.** Bring the powder into the band. For soda without acid, use three times its weight of baking powder instead, or change milk for buttermilk.

Without a kind only what is past all that is baked of flour is said: powder from 9 % of the flour, soda from 2.5 %, and soda without acid in a plain dough or batter.

**Silent** for cookies and cakes of oil, where soda browns and spreads; where honey, cocoa, brown sugar, fruit or the like may be sour enough; for too little where yeast or beaten egg white lifts it too; and where a weight is not known.`,
  *find(part) {
    const leaven = () => ingredientPlace(mainLeavening(part));
    if (part.head.kindNode === undefined) return;
    const contents = contentsOf(part);
    const soapy = [...sodaWithoutAcid(part, contents)];
    let told: Severity | undefined;
    for (const [name, side] of WATCHED) {
      // Less of it tastes of soap too: what is missing is the acid.
      if (name === 'baking soda' && soapy.some((f) => f.severity === 'warning')) {
        told = 'warning';
        yield* soapy;
        continue;
      }
      if (side === 'low' && isLiftedOtherwise(part, contents)) continue;
      for (const finding of outsideBand(part, name, side, leaven)) {
        // What the powder or the soda alone shows as gravely is told.
        if (name === 'leavening' && (told === 'warning' || told === finding.severity)) continue;
        if (told !== 'warning') told = finding.severity;
        yield { ...finding, values: { what: 'amount', band: finding.values } };
      }
    }
    if (told === undefined) yield* soapy;
  },
  findInFile: ({ recipe, house }) => ofNoKind(recipe, house),
  say: (values) => {
    if (values.what === 'amount') return sayBand(values.band);
    const { sodaG, neutralG, name } = values;
    const soda = gramsText((sodaG.low + sodaG.high) / 2);
    return {
      message: `The acid here works with ${neutralG.high < 0.05 ? 'none' : `at most ${gramsText(neutralG.high)} g`} of the ${soda} g ${name}; the rest tastes of soap. Use about three times its weight of baking powder instead, or buttermilk in place of milk.`,
      value: neutralG.high / Math.max(sodaG.low, 1e-9),
      unit: '1',
      band: [0.5, null],
    };
  },
  fix: (values, scene) => (values.what === 'no acid' ? [] : mendAmount(values.band, scene, mainLeavening)),
  work: (values) => (values.what === 'no acid' ? acidSum(values) : []),
  examples: {
    good: [
      'recipe Soda scones\npart dough as scone\n  450 g     plain flour\n  4 g       baking soda\n  80 g      butter\n  340 g     buttermilk\n  3 g       fine salt\n  do Sift the flour, baking soda and salt and rub in the butter.\n  do Stir in the buttermilk and shape.\n',
      'recipe Muffins\npart batter as muffin\n  300 g     plain flour\n  12 g      baking powder\n  90 g      caster sugar\n  80 g      butter, melted\n  2 large   eggs\n  180 g     whole milk\n  do Mix the flour, baking powder and sugar.\n  do Stir in the butter, eggs and milk.\n',
    ],
    bad: [
      {
        text: 'recipe Muffins\npart batter as muffin\n  300 g     plain flour\n  60 g      baking powder\n# "baking powder" leavening-out-of-range *: bitter and coarse\n  90 g      caster sugar\n  80 g      butter, melted\n  2 large   eggs\n  180 g     whole milk\n  do Mix the flour, baking powder and sugar.\n  do Stir in the butter, eggs and milk.\n',
        after: {
          'Write 25 g baking powder, 35 g less':
            'recipe Muffins\npart batter as muffin\n  300 g     plain flour\n  25 g      baking powder\n  90 g      caster sugar\n  80 g      butter, melted\n  2 large   eggs\n  180 g     whole milk\n  do Mix the flour, baking powder and sugar.\n  do Stir in the butter, eggs and milk.\n',
        },
      },
      'recipe Scones\npart dough as scone\n  450 g     plain flour\n  6 g       baking soda\n# "baking soda" leavening-out-of-range: tastes of soap\n  80 g      butter\n  300 g     whole milk\n  3 g       fine salt\n  do Sift the flour, baking soda and salt and rub in the butter.\n  do Stir in the milk and shape.\n',
      'recipe Soapy muffins\npart batter as muffin\n  250 g     plain flour\n  10 g      baking soda\n# "baking soda" leavening-out-of-range: works with none of the 10 g\n  90 g      caster sugar\n  80 g      butter, melted\n  2 large   eggs\n  180 g     whole milk\n  do Mix the flour, baking soda and sugar.\n  do Stir in the butter, eggs and milk.\n',
      'recipe Flat muffins\npart batter as muffin\n  300 g     plain flour\n  1 g       baking powder\n# "baking powder" leavening-out-of-range *: too little lifts it\n  90 g      caster sugar\n  80 g      butter, melted\n  2 large   eggs\n  180 g     whole milk\n  do Mix the flour, baking powder and sugar.\n  do Stir in the butter, eggs and milk.\n',
    ],
  },
});

const WATCHED = [
  ['baking powder', 'high'],
  ['baking soda', 'high'],
  ['soda per sugar', 'high'],
  ['leavening', 'high'],
  ['leavening', 'low'],
] as const;

const mainLeavening = (part: Part): Ingredient | undefined =>
  mostOf(part.head.ingredients, (i) => (i.food?.class === 'leavening' ? gramsOf(i) * bringing(i, lift) : 0)) ??
  mostBringing(part, lift);

/** Yeast, a starter, or egg white that is beaten. */
function isLiftedOtherwise(part: Part, contents: readonly Ingredient[]): boolean {
  if (contents.some((i) => bringing(i, instantYeast) > 0 || (i.food !== undefined && isStarter(i.food)))) return true;
  return part.steps.some((step) => speaksOf(step, 'foam')) && contents.some((i) => bringing(i, eggShare) > 0);
}

/** Flour of the whole from which a part of no kind is baked of it; of flour, sugar and fat from which it is a cookie, and water of a dough (judgement). */
const OF_FLOUR = 0.2;
const OF_COOKIES = 0.4;
const OF_DOUGH = 0.45;

/** In which it is boiled: pretzels, peas. */
const BOILS = deed(({ act, medium }) => act === 'heat' && medium?.is === 'water');

/** Of what says no kind, what is past all that is baked of flour, and soda that finds no acid in a plain dough or batter. */
const ofNoKind = foundAgain<Values>((recipe) => {
  if (recipe.inherits) return [];
  // What the name says has bands of its own.
  const taken = new Set(takenFor(recipe).flatMap(({ part, dish }) => (dish.kinds.every(isRaised) ? [part] : [])));
  return recipe.parts.flatMap((part) =>
    part.head.kindNode !== undefined
      ? []
      : leavenedIn(part, taken.has(part)).map((found) => ({ ...found, at: { ...found.at, part: part.index } })),
  );
});

const isRaised = ({ measures }: Kind): boolean => measures.some((each) => each.measure === 'baking powder');

function leavenedIn(part: Part, isJudged: boolean): readonly Found<Values>[] {
  if (!part.head.ingredients.some(({ food }) => food?.class === 'leavening') || anyDoes(part.steps, BOILS)) return [];
  const contents = contentsOf(part);
  const { of, massG } = mixtureOf(contents.map((ingredient) => ({ ingredient, share: 1 })));
  if (of.flour < massG * OF_FLOUR) return [];
  const past = isJudged
    ? []
    : (['baking powder', 'baking soda'] as const)
        .flatMap((name) => outsideBand(part, name, 'high', () => ingredientPlace(mainLeavening(part)), ANY_BAKE))
        .filter(({ severity, values }) => severity === 'warning' && !mayBrown(contents, values));
  if (past.length > 0) return past.map((finding) => ({ ...finding, values: { what: 'amount', band: finding.values } }));
  return of.yeast === 0 && isPlain(contents) ? [...soapyIn(part, contents)] : [];
}

/** Gingersnaps take soda for their molasses, and to brown and crack: 2 tsp to 280 g of flour (common practice, no source). */
const mayBrown = (
  contents: readonly Ingredient[],
  { measure: { measure: name }, value: { low } }: BandValues,
): boolean => name === 'baking soda' && low < BROWNING && contents.some(({ food }) => food?.class === 'syrup');
const BROWNING = 0.045;

function isPlain(contents: readonly Ingredient[]): boolean {
  const [sugar, fat, water] = (['sugar', 'fat', 'hydration'] as const).map((name) => measure(name, contents));
  const under = (worked: MeasureValue | undefined, most: number) => worked?.known === true && worked.value.high < most;
  return under(sugar, OF_COOKIES) && under(fat, OF_COOKIES) && water?.known === true && water.value.low > OF_DOUGH;
}

/** In these soda is there to brown, too. */
const BROWNED: ReadonlySet<Kind['name']> = new Set(['cookie', 'oil cake']);

/** Soda left over, per flour, from which it is tasted (judgement). */
const TASTED = 0.005;

function* sodaWithoutAcid(part: Part, contents: readonly Ingredient[]): Generator<Found<Values>> {
  const { kind } = part.head;
  if (kind === undefined || BROWNED.has(kind.name) || !kind.measures.some((m) => m.measure === 'baking soda')) return;
  yield* soapyIn(part, contents);
}

/** Soda of which the acid takes up less than half. */
function* soapyIn(part: Part, contents: readonly Ingredient[]): Generator<Found<Values>> {
  const soda = part.head.ingredients.find((i) => i.food !== undefined && isSoda(i.food));
  const at = ingredientPlace(soda);
  if (soda === undefined || at === undefined || !soda.weighed.known) return;
  // What is not known may be sour.
  if (contents.some((i) => i.food === undefined || (!i.weighed.known && neutralises(i.food).high > 0))) return;
  const perFlour = measure('baking soda', contents);
  if (!perFlour.known) return;
  const sodaG = sumOf(contents, (i) => ({ low: bringing(i, bakingSoda), high: bringing(i, bakingSoda) }));
  const neutralG = sumOf(contents, (i) => (i.food === undefined ? NONE : neutralises(i.food)));
  const left = 1 - neutralG.high / sodaG.low;
  if (left < 0.5 || perFlour.value.low * left < TASTED) return;
  const powder = contents.some((i) => i.food?.class === 'leavening' && bringing(i, bakingPowder) > 0);
  yield {
    at,
    values: { what: 'no acid', sodaG, neutralG, name: soda.name, contents },
    severity: left > 0.8 && !powder ? 'warning' : 'info',
  };
}

/** What each sour ingredient takes up, against the soda. */
function acidSum({ contents, sodaG, neutralG, name }: Extract<Values, { readonly what: 'no acid' }>): string[] {
  const rows = contents.flatMap((i) => {
    const per = i.food === undefined ? NONE : neutralises(i.food);
    const g = gramsOf(i);
    return per.high === 0 ? [] : [[i.name, gramsText(g), significant(per.high, 2), gramsText(g * per.high)]];
  });
  const soda = (sodaG.low + sodaG.high) / 2;
  return [
    ...(rows.length === 0
      ? ['Nothing on the list is sour enough to count.']
      : plainTable(['what is sour', 'weighs, g', 'soda that 1 g takes up at most, g', 'soda, g'], rows)),
    '',
    `${gramsText(soda)} g ${name} − ${gramsText(neutralG.high)} g that the acid takes up = ${gramsText(Math.max(0, soda - neutralG.high))} g left over. In its place: 3 × ${gramsText(soda)} g = ${gramsText(soda * 3)} g of baking powder.`,
  ];
}

const NONE: Range = { low: 0, high: 0 };

function sumOf(contents: readonly Ingredient[], share: (i: Ingredient) => Range): Range {
  let [low, high] = [0, 0];
  for (const i of contents) {
    if (!i.weighed.known) continue;
    const of = share(i);
    low += i.weighed.grams.low * of.low;
    high += i.weighed.grams.high * of.high;
  }
  return { low, high };
}
