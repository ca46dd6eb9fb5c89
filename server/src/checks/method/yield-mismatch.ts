import { replaceSpan } from '../../edits/text-edit.ts';
import { gramsText } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { baseOf, dimensionOf } from '../../measure/unit.ts';
import { sentenceIn } from '../../notation/sentence.ts';
import type { MeasuredNode, SentenceItem, Span, TextNode } from '../../notation/tree.ts';
import { amountOfOne } from '../../prose/counts.ts';
import type { Craft } from '../../prose/event.ts';
import { anyDoes, deed, does, isBaked, speaksOf } from '../../recipe/journey/deeds.ts';
import { reducedTo } from '../../recipe/journey/reduced.ts';
import { gramsOf as middleG } from '../../recipe/measures/brought.ts';
import type { Part, PartHead, Recipe } from '../../recipe/model.ts';
import { listedPart } from '../../recipe/part.ts';
import { defineCheck, type Found } from '../check.ts';
import { listedG } from '../listed-grams.ts';
import { onceFor, onceWith } from '../once.ts';
import { anyPart, overParts } from '../over-parts.ts';
import { sumTable } from '../sum-table.ts';
import { mostLeftMl } from './most-left.ts';
import { drunkG, usualYield } from './usual-yield.ts';
import { isListWeighed, isWeighed } from './weighed.ts';

interface Values {
  /** Grams that the yield line promises, or that a step divides into pieces; ml where it promises those. */
  readonly saidG: number;
  readonly unit: 'g' | 'ml';
  readonly divided: boolean;
  readonly listedG: readonly [number, number];
  /** The share that is left of what goes in, at the least. */
  readonly kept: number;
  /** What a food of that kind usually comes to, as it is cooked here, and who says so. */
  readonly usualG?: readonly [number, number];
  readonly usualBy?: string;
  /** The part that is divided. */
  readonly part?: number;
  readonly pieces?: { readonly count: number; readonly eachG: number; readonly words: string; readonly numeral: Span };
}

/** Bread loses an eighth in the oven, a cake a tenth; trimming and what sticks to the bowl come on top. */
const LEAST_KEPT = 0.65;
/** What boils, drains or roasts for long may lose more than half. */
const LEAST_REDUCED = 0.3;
/** What simmers for hours until it is thick: caramelised milk, a glaze of stock (common practice, no source). */
const LEAST_BOILED_DOWN = 0.1;
const LONG_MIN = 90;
/** Cheese of the milk (common practice, no source: a tenth to a fifth). */
const LEAST_CURD = 0.08;
const ROUNDING = 1.06;

export default defineCheck<Values>({
  code: 'yield-mismatch',
  title: 'The yield and the weights do not agree',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** What the \`yield\` line promises in weight (\`900 g\`, or pieces times the weight of each: \`24 rolls of 60 g\` are 1440 g), against what the parts weigh together. A yield may not be heavier than what goes in, and not lighter than ${LEAST_KEPT * 100} % of it; where something boils, drains or roasts, ${LEAST_REDUCED * 100} %; of milk that is curdled and drained ${LEAST_CURD * 100} %, and of what simmers for ${LONG_MIN} min and more ${LEAST_BOILED_DOWN * 100} %. Where a step says how far it boils down (\`reduce by half\`, \`until 300 ml remain\`), a yield may not be more than that leaves, in grams or millilitres; and no volume may be more than all that goes in, bones that are strained off aside. A recipe of one part that is mostly one food is held against what that usually comes to: dried pulses, pasta and rice boil to two or three times their weight, and what is strained, deep-fried, dried or roasted shrinks.

The same for a step that divides a dough or a mixture by weight: \`Divide in 24 of 60 g\`.

**Why it matters.** One of the two is wrong, and whoever scales by the yield carries the fault into every batch.

**What to do.** Weigh a batch and write what it made.

**Silent** for a yield in portions or slices, for a volume of what is beaten, packed or mostly not poured, where a weight is not known, where water or flour is added as needed, for parts written in percentages, and for what builds on another file.`,
  find({ recipe }) {
    if (recipe.inherits) return [];
    const divided = divisions(recipe).flatMap(({ value }) => value);
    const said = recipe.yield;
    if (said === undefined || recipe.parts.length === 0) return divided;
    const ml = millilitresOf(said.node);
    if (unweighed(recipe) && (ml === undefined || mostLeftMl(recipe) === undefined)) return divided;
    if (ml === undefined && promisedBy(said.node) === undefined) return divided;
    const { low, high } = listedG(recipe);
    const whole =
      ml === undefined
        ? misfit(said.node, said.at, low, high + drunkG(recipe), leastKept(recipe), usualOf(recipe, low, high))
        : tooMuchLeft(said.node, said.at, ml, low, high, reducedTo(recipe)?.ml, mostLeftMl(recipe));
    return whole === undefined ? divided : [...divided, whole];
  },
  say: ({ saidG, unit, listedG, usualG, pieces, divided }) => {
    const [low, high] = listedG;
    const said =
      pieces === undefined
        ? `${gramsText(saidG)} ${unit}`
        : `${pieces.count} of ${gramsText(pieces.eachG)} g, ${gramsText(saidG)} g in all,`;
    const listed = `the ingredients weigh ${gramsText((low + high) / 2)} g`;
    const piecesG =
      pieces === undefined ? '' : `${pieces.count} of ${gramsText(pieces.eachG)} g are ${gramsText(saidG)} g`;
    const message = divided
      ? `${piecesG}, and there ${saidG > high ? `are only ${gramsText(high)} g` : `are ${gramsText(low)} g`} to divide: mend the number or the weight.`
      : undefined;
    if (usualG !== undefined)
      return {
        message: `The yield of ${said} is ${saidG > usualG[1] ? 'more' : 'less'} than comes of this: ${usualG[0] === 0 ? 'up' : gramsText(usualG[0])} to ${gramsText(usualG[1])} ${unit} as it is cooked here, from ${gramsText((low + high) / 2)} g on the list.`,
        value: saidG,
        unit,
        band: [usualG[0], usualG[1]],
      };
    return {
      message:
        message ??
        (saidG > high
          ? `The yield of ${said} is more than goes in: ${listed}.`
          : `The yield of ${said} is far less than goes in: ${listed}.`),
      value: saidG,
      unit: 'g',
      band: [null, high],
    };
  },
  work: ({ saidG, unit, listedG: [low, high], usualG, usualBy, pieces, kept, part }, { recipe }) => {
    const own = part === undefined ? undefined : recipe.parts[part];
    const heads = own === undefined ? recipe.parts.map(({ head }) => head) : dividedHeads(own);
    const rows = heads.flatMap(({ ingredients }) => ingredients.map((i) => ({ name: i.name, numbers: [middleG(i)] })));
    const said =
      pieces === undefined
        ? `${gramsText(saidG)} ${unit}`
        : `${pieces.count} × ${gramsText(pieces.eachG)} g = ${gramsText(saidG)} g`;
    return [
      ...sumTable(['ingredient', 'weighs, g'], rows),
      '',
      usualG !== undefined
        ? `The recipe says ${said}. Expected: ${gramsText(usualG[0])} to ${gramsText(usualG[1])} ${unit} (${usualBy}), and ${ROUNDING} times that for rounding.`
        : `The recipe says ${said}. Expected: from ${gramsText(low)} g × ${kept} = ${gramsText(low * kept)} g, for what is lost, to ${gramsText(high)} g × ${ROUNDING} = ${gramsText(high * ROUNDING)} g, for rounding.`,
    ];
  },
  fix: ({ pieces, listedG, usualG }, _scene, at) => {
    if (pieces === undefined || usualG !== undefined) return [];
    const count = Math.floor((listedG[0] + listedG[1]) / 2 / pieces.eachG);
    return count < 1
      ? []
      : [
          {
            title: `Write ${count} ${pieces.words}`,
            effect: 'amounts',
            edits: [replaceSpan(at.line, pieces.numeral, String(count))],
          },
        ];
  },
  examples: {
    good: [
      'recipe Beef stock\n  yield   4 l\n  3 kg      beef bones\n  500 g     carrots\n  5 l       water\n  do Simmer the bones and carrots in the water for 4 h and strain.\n',
      'recipe Cream\n  yield   1 l\n  500 ml    whipping cream\n  30 g      sugar\n  do Whip the cream with the sugar to soft peaks.\n',
      'recipe Rolls\n  yield   16 rolls of 50 g\n  500 g     bread flour\n  330 g     water\n  9 g       fine salt\n  4 g       instant yeast\n  do Mix the flour, water, salt and yeast and prove at 24 C for 90 min.\n  do Divide in 16 and bake at 220 C for 15 min until gold.\n',
      'recipe Boiled rice\n  yield   1.1 kg\n  400 g     long grain rice\n  do Boil the rice in plenty of salted water for 12 min and drain.\n',
      'recipe Gravy\n  yield   500 ml\n  1 l       chicken stock\n  100 ml    dry white wine\n  do Boil the stock with the wine until reduced by half.\n',
      'recipe Oat slab\n  yield   280 g\n  200 g     rolled oats\n  100 g     butter\n  do Melt the butter and stir in the oats.\n  do Bake at 180 C for 25 min until gold.\n',
    ],
    bad: [
      'recipe Beef stock\n  yield   8 l\n# "8 l" yield-mismatch: up to 5738 ml\n  3 kg      beef bones\n  500 g     carrots\n  4 l       water\n  do Simmer the bones and carrots in the water for 6 h and strain.\n',
      'recipe Carrot soup\n  yield   4 l\n# "4 l" yield-mismatch: more than comes of this\n  800 g     carrots\n  1 l       vegetable stock\n  200 ml    cream\n  do Simmer the carrots in the stock for 25 min, blend and stir in the cream.\n',
      'recipe Gravy\n  yield   500 ml\n# "500 ml" yield-mismatch: more than comes of this\n  1 l       chicken stock\n  100 ml    dry white wine\n  do Boil the stock with the wine until 300 ml remain.\n',
      'recipe Boiled chickpeas\n  yield   1 kg\n# "1 kg" yield-mismatch: less than comes of this\n  1 kg      dried chickpeas\n  do Soak the chickpeas for 12 h, drain, cover with fresh water and boil for 1 h until soft. Drain.\n',
      {
        text: 'recipe Rolls\n  yield   24 rolls of 60 g\n# "24 rolls of 60 g" yield-mismatch *: more than goes in\n  500 g     bread flour\n  330 g     water\n  9 g       fine salt\n  4 g       instant yeast\n  do Mix the flour, water, salt and yeast and prove at 24 C for 90 min.\n  do Divide and bake at 220 C for 15 min until gold.\n',
        after: {
          'Write 14 rolls of 60 g':
            'recipe Rolls\n  yield   14 rolls of 60 g\n  500 g     bread flour\n  330 g     water\n  9 g       fine salt\n  4 g       instant yeast\n  do Mix the flour, water, salt and yeast and prove at 24 C for 90 min.\n  do Divide and bake at 220 C for 15 min until gold.\n',
        },
      },
      'recipe Rolls\n  500 g     bread flour\n  330 g     water\n  9 g       fine salt\n  4 g       instant yeast\n  do Mix the flour, water, salt and yeast and prove at 24 C for 90 min.\n  do Divide in 16 of 80 g and shape.\n#              ^^^^^^^^^^ yield-mismatch *: 843 g to divide\n',
      'recipe Oat slab\n  yield   150 g\n# "150 g" yield-mismatch: far less\n  200 g     rolled oats\n  100 g     butter\n  do Melt the butter and stir in the oats.\n  do Bake at 180 C for 25 min until gold.\n',
    ],
  },
});

type YieldNode = NonNullable<Recipe['yield']>['node'];

const promisedBy = onceFor(({ amount, of }: YieldNode) => (amount === undefined ? undefined : promised(amount, of)));

interface Usual {
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/** What comes of it as it is cooked: by what is known of its food, else by what a step says is left. */
const usualOf = onceWith((recipe: Recipe, low: number, high: number): Usual | undefined => {
  const usual = usualYield(recipe);
  const left = usual === undefined ? reducedTo(recipe)?.grams : undefined;
  return left === undefined
    ? usual
    : {
        low: Math.min(left.low, low * leastKept(recipe)),
        high: Math.min(left.high, high),
        source: 'by what its steps say is left',
      };
});

function millilitresOf({ amount }: YieldNode): number | undefined {
  if (amount?.unit === undefined || dimensionOf(amount.unit.symbol) !== 'volume') return undefined;
  return amount.quantity.low * (baseOf(amount.unit.symbol, 'us') ?? 1);
}

/** A volume that is more than is left of it. */
function tooMuchLeft(
  { amount }: YieldNode,
  line: number,
  ml: number,
  low: number,
  high: number,
  reduced: Range | undefined,
  most: number | undefined,
): Found<Values> | undefined {
  const left = reduced ?? (most === undefined ? undefined : { low: 0, high: most });
  if (amount === undefined || left === undefined || ml <= left.high * ROUNDING) return undefined;
  return {
    at: { line, start: amount.start, end: amount.end },
    values: {
      saidG: ml,
      unit: 'ml',
      listedG: [low, high],
      divided: false,
      kept: 0,
      usualG: [left.low, left.high],
      usualBy: reduced === undefined ? 'by all that is poured in' : 'by what its steps say is left',
    },
  };
}

/** A yield that the weights of the list, least and most, do not make. */
const misfit = onceWith(
  (
    node: YieldNode,
    line: number,
    low: number,
    high: number,
    kept: number,
    usual: Usual | undefined,
  ): Found<Values> | undefined => {
    const { amount, of } = node;
    const said = promisedBy(node);
    if (amount === undefined || said === undefined || high <= 0) return undefined;
    const least = usual?.low ?? low * kept;
    const most = usual?.high ?? high;
    if (said.saidG >= least && said.saidG <= most * ROUNDING) return undefined;
    return {
      at: { line, start: amount.start, end: Math.max(amount.end, of?.end ?? 0) },
      values: {
        ...said,
        unit: 'g',
        listedG: [low, high],
        divided: false,
        kept,
        ...(usual && { usualG: [usual.low, usual.high] as const, usualBy: usual.source }),
      },
    };
  },
);

function promised(amount: MeasuredNode, of: TextNode | undefined): Pick<Values, 'saidG' | 'pieces'> | undefined {
  const mass = gramsOf(amount);
  if (mass !== undefined) return { saidG: mass };
  if (amount.unit !== undefined || of === undefined) return undefined;
  // `2 loaves of 900 g`: a count word takes its weight with it.
  const own = amount.each === undefined ? undefined : gramsOf(amount.each);
  const each = own ?? eachIn(of.text);
  if (each === undefined) return undefined;
  const words = own === undefined ? of.text : `${of.text} of ${gramsText(own)} g`;
  const count = amount.quantity.low;
  const numeral = { start: amount.low.start, end: (amount.high ?? amount.low).end };
  return { saidG: count * each, pieces: { count, eachG: each, words, numeral } };
}

const unweighed = anyPart((part) => !isWeighed(part));

function gramsOf({ unit, quantity }: MeasuredNode): number | undefined {
  if (unit === undefined || dimensionOf(unit.symbol) !== 'mass') return undefined;
  return quantity.low * (baseOf(unit.symbol, 'us') ?? 1);
}

/** Grams in `rolls of 60 g`. */
function eachIn(words: string): number | undefined {
  const weight = sentenceIn(words).items.find((item) => item.kind === 'measured' && gramsOf(item) !== undefined);
  return weight?.kind === 'measured' ? gramsOf(weight) : undefined;
}

/** Water, fat or trimmings are left behind. */
const REDUCING = deed(
  (event) =>
    (event.act === 'heat' && event.cooks !== 'barely' && (!isBaked(event) || event.craft === 'roast')) ||
    event.act === 'dry' ||
    event.act === 'discard' ||
    (event.craft !== undefined && LEAVES.has(event.craft)),
);
const LEAVES: ReadonlySet<Craft> = new Set(['drain', 'strain', 'press', 'peel']);

const reduces = anyPart((part) => anyDoes(part.steps, REDUCING));

/** Whey runs off. */
const curdles = anyPart(
  ({ head, steps }) =>
    steps.some((step) => speaksOf(step, 'curd')) && head.ingredients.some(({ food }) => food?.class === 'milk'),
);

const LONG_ON_STOVE = deed(
  (event) =>
    (event.act === 'dry' || (event.act === 'heat' && !isBaked(event))) &&
    event.times.some(({ minutes }) => minutes.high >= LONG_MIN),
);
const isBoiledDown = anyPart(({ steps }) => anyDoes(steps, LONG_ON_STOVE));

const leastKept = (recipe: Recipe): number =>
  curdles(recipe)
    ? LEAST_CURD
    : isBoiledDown(recipe)
      ? LEAST_BOILED_DOWN
      : reduces(recipe)
        ? LEAST_REDUCED
        : LEAST_KEPT;

const DIVIDING = deed(
  ({ act, amounts }) => act === 'divide' || act === 'shape' || act === 'cut' || (act === 'ready' && amounts.length > 1),
);
/** Flour, bowl and offcuts take so much at most. */
const LEAST_DIVIDED = 0.75;

/** Steps that divide what the part has made into pieces by weight, where the sum does not fit. */
export const divisions = overParts((part): readonly Found<Values>[] | undefined => {
  if (!anyDoes(part.steps, DIVIDING)) return undefined;
  const found = part.steps.flatMap((step) => {
    if (!does(step, DIVIDING)) return [];
    const { items } = step.sentence;
    // `half the dough`, and what a batch is made for, are not the whole.
    if (step.mentions.some((m) => m.portion.kind !== 'plain' && m.portion.kind !== 'all')) return [];
    return items.flatMap((item, i) => {
      const each = item.kind === 'measured' ? eachAfter(items, i) : undefined;
      const listedG = each === undefined ? undefined : toDivide(part, step.line);
      if (item.kind !== 'measured' || each === undefined || listedG === undefined) return [];
      const count = item.quantity.low;
      const saidG = count * each.grams;
      if (saidG >= listedG[0] * LEAST_DIVIDED && saidG <= listedG[1] * ROUNDING) return [];
      const numeral = { start: item.low.start, end: (item.high ?? item.low).end };
      const pieces = { count, eachG: each.grams, words: each.words, numeral };
      const at = { part: part.index, line: step.line, start: item.start, end: each.end };
      return [
        {
          at,
          values: { saidG, unit: 'g' as const, listedG, pieces, divided: true, kept: LEAST_DIVIDED, part: part.index },
        },
      ];
    });
  });
  return found.length === 0 ? undefined : found;
});

/** `24 pieces of 60 g`, `24 of 60 g`, `24, 60 g each`: the weight after a bare number. */
function eachAfter(
  items: readonly SentenceItem[],
  i: number,
): { grams: number; end: number; words: string } | undefined {
  const count = items[i];
  if (count?.kind !== 'measured' || count.unit !== undefined || count.quantity.size !== undefined) return undefined;
  const own = count.each === undefined ? undefined : gramsOf(count.each);
  if (own !== undefined) return { grams: own, end: count.end, words: `pieces of ${gramsText(own)} g` };
  const one = amountOfOne(items, i);
  const grams = one === undefined ? undefined : gramsOf(one);
  return one === undefined || grams === undefined
    ? undefined
    : { grams, end: one.end, words: `pieces of ${gramsText(grams)} g` };
}

/** The list that is divided: the part's own, or those it takes in. */
const dividedHeads = ({ head, includes }: Part): readonly PartHead[] =>
  head.ingredients.length > 0 ? [head] : includes;

/** What the part, or the one part it takes in, holds before the step. */
function toDivide(part: Part, line: number): readonly [number, number] | undefined {
  const { ingredients } = part.head;
  const [only] = part.includes;
  const head = ingredients.length > 0 ? part.head : part.includes.length === 1 ? only : undefined;
  if (head === undefined || !head.massG.complete || head.nominal || head.massG.high <= 0) return undefined;
  const isListed = head === part.head && part.includes.every(({ name }) => listedPart(head, name) !== undefined);
  if (ingredients.length > 0 && !(isListed && isListWeighed(head))) return undefined;
  // What goes in later, or is for the pan, is not divided.
  const late = part.ledger.some((e) => e.uses[0] === undefined || e.uses.some((u) => u.line >= line));
  if (ingredients.length > 0 && late) return undefined;
  if (part.steps.some((s) => s.line < line && does(s, REDUCING))) return undefined;
  return [head.massG.low, head.massG.high];
}
