import type { WeightReason } from '../../food/food.ts';
import { gramsText, trimmed } from '../../measure/number-text.ts';
import { addRanges, middle, type Quantity, type Range, scaleRange } from '../../measure/quantity.ts';
import { MEASURES_CHOICES, type Measures } from '../../measure/systems.ts';
import { baseOf, dimensionOf, unitInFull } from '../../measure/unit.ts';
import type { UnitSymbol } from '../../measure/unit-symbol.ts';
import { saidAgain } from '../../notation/item-amounts.ts';
import type { BesideNode, MeasuredNode } from '../../notation/tree.ts';
import { weighQuantity } from '../../recipe/list/line-weight.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';
import type { House } from '../house.ts';

interface Values {
  readonly name: string;
  /** Both as written. */
  readonly first: string;
  readonly second: string;
  /** What each comes to; of a count, what is known of it. */
  readonly one: Range;
  readonly other: Range;
  readonly unit: 'g' | 'ml';
  /** Whose measure would agree: `imperial cup`. */
  readonly whose?: string;
  /** The first counts pieces. */
  readonly pieces?: true;
}

/** What rounding to whole ounces and to 25 g explains (common practice, no source). */
const TOLERANCE = 1.12;
/** Pieces are larger and smaller; beyond half and twice the known one it is another thing. Common practice, no source. */
const PIECES = 2;
/** An ounce is printed as so many grams, and 28.35 g is meant. Common practice, no source. */
const ROUND_OUNCE_G = 25;

export default defineCheck<Values>({
  code: 'weights-disagree',
  title: 'Two amounts that stand for the same do not agree',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'list',
  doubtsFigure: true,
  source: {
    kind: 'publication',
    title: 'NIST SP 811 (2008), appendix B, and NIST HB 44, appendix C: what each unit holds',
  },
  explain: `**What it computes.** A line may say its amount twice: \`8 oz = 500 g butter\`, \`1 cup (300 ml) milk\`, \`4 = 900 g onions\`. Two weights, or two volumes, are turned into grams or millilitres and held against each other; a count is held against what the food book knows of a piece.

**Why it matters.** One of the two is a slip, and which one nobody but the writer can say. Quern works with the first, the cook perhaps with the other: 8 oz of butter is 227 g, and 500 g is more than twice that.

**What to do.** Weigh it, and mend the one that is wrong. Where cups differ it says whose cup would agree: write the volume in ml, or tell the house whose cups it has.

Pieces are information. **Silent** within ${Math.round((TOLERANCE - 1) * 100)} %, where an ounce is taken for ${ROUND_OUNCE_G} g, for pieces between half and twice the known weight, and for what a measure weighs, which \`measure-mismatch\` holds.`,
  *find(part, house) {
    for (const ingredient of part.head.ingredients) {
      const { amount, beside } = ingredient.node;
      if (amount?.kind !== 'measured' || beside === undefined || ingredient.shares === true) continue;
      const found = disagreement(
        ingredient,
        amount,
        beside,
        house,
        part.head.source.lines[ingredient.line]?.text ?? '',
      );
      if (found !== undefined) yield found;
    }
  },
  say: ({ name, first, second, one, other, unit, whose, pieces }) => {
    const [known, said] = [rangeText(one, unit), rangeText(other, unit)];
    if (pieces === true)
      return {
        message: `${first} of ${name} usually comes to ${known}, and ${second} stands beside it: is one of the two a slip?`,
        value: middle(other),
        unit,
        band: [one.low, one.high],
      };
    const advice =
      whose === undefined ? 'mend the one that is wrong' : `by the ${whose} they would agree: write it in ml`;
    return {
      message: `${first} is ${known}, and ${second} beside it is ${said}: ${advice}.`,
      value: middle(other),
      unit,
    };
  },
  examples: {
    good: [
      'recipe Paste\n  8 oz = 227 g  plain flour\n  4 oz = 100 g  butter\n  do Rub the butter into the flour.\n',
      'recipe Batter\n  1 cup = 250 ml  whole milk\n  2 = 110 g  eggs\n  150 g     plain flour\n  do Whisk the milk and the eggs into the flour and stand for 30 min.\n',
    ],
    bad: [
      'recipe Paste\n  8 oz = 500 g  butter\n# "8 oz = 500 g" weights-disagree: 8 oz is 227 g\n  300 g     plain flour\n  do Rub the butter into the flour.\n',
      'recipe Batter\n  1 cup = 284 ml  whole milk\n# "1 cup = 284 ml" weights-disagree: by the imperial cup they would agree\n  150 g     plain flour\n  do Whisk the milk into the flour and stand for 30 min.\n',
      'recipe Stew\n  2 = 900 g  onions\n# "2 = 900 g" weights-disagree info: 900 g stands beside it\n  1 l       chicken stock\n  do Simmer the onions in the stock for 1 h.\n',
    ],
  },
});

/** The first of the amounts that are said again which does not agree with one before it. */
function disagreement(
  ingredient: Ingredient,
  amount: MeasuredNode,
  beside: readonly BesideNode[],
  house: House,
  text: string,
): Found<Values> | undefined {
  const said: readonly Stated[] = [{ amount: saidAgain(amount, beside), means: 'same' }, ...beside];
  for (const [i, other] of said.entries())
    for (const one of said.slice(0, i)) {
      const values = compared(one, other, ingredient, house);
      if (values === undefined) continue;
      const [first, second] = [one.amount, other.amount].map(({ start, end }) => text.slice(start, end)) as [
        string,
        string,
      ];
      return {
        at: { line: ingredient.line, start: one.amount.start, end: other.amount.end },
        values: { name: ingredient.name, first, second, ...values },
        ...(values.pieces === true && { severity: 'info' as const }),
      };
    }
  return undefined;
}

type Stated = Pick<BesideNode, 'amount' | 'means'>;
type Compared = Omit<Values, 'name' | 'first' | 'second'>;

function compared(one: Stated, other: Stated, ingredient: Ingredient, { world }: House): Compared | undefined {
  const [a, b] = [one.amount.quantity, other.amount.quantity];
  for (const [dimension, unit] of [
    ['mass', 'g'],
    ['volume', 'ml'],
  ] as const) {
    const [first, second] = [inBase(a, dimension, world.measures), inBase(b, dimension, world.measures)];
    if (first === undefined || second === undefined) continue;
    if (one.means === 'each' || other.means === 'each' || agree(first, second, TOLERANCE)) return undefined;
    if (
      dimension === 'mass' &&
      (agree(roundOunces(a, first), second, TOLERANCE) || agree(first, roundOunces(b, second), TOLERANCE))
    )
      return undefined;
    const whose = dimension === 'volume' ? whoseAgrees(a, b) : undefined;
    return { one: first, other: second, unit, ...(whose !== undefined && { whose }) };
  }
  const grams = inBase(b, 'mass', world.measures);
  if (grams === undefined || a.unit !== undefined || a.each !== undefined) return undefined;
  const known = weighQuantity(a, ingredient.match, world);
  if (!known.known || !isPiece(known.reason)) return undefined;
  const all = { low: grams.low * a.low, high: grams.high * a.high };
  const readings = other.means === 'each' ? [all] : other.means === 'either' ? [grams, all] : [grams];
  const isStick = a.count === 'stick';
  if (readings.some((reading) => agree(known.grams, reading, isStick ? TOLERANCE : PIECES))) return undefined;
  return { one: known.grams, other: readings[0] ?? grams, unit: 'g', ...(!isStick && { pieces: true as const }) };
}

/** Pieces as they grow; what a tin holds is for its maker to say. */
const isPiece = ({ kind }: WeightReason): boolean => kind === 'piece' || kind === 'size';

/** Whether one range reaches the other within a factor. */
const agree = (a: Range, b: Range, factor: number): boolean => a.low <= b.high * factor && b.low <= a.high * factor;

/** In g or ml, all terms of a sum; undefined where one of them is anything else. */
function inBase(
  { unit, low, high, plus = [], upTo }: Quantity,
  dimension: 'mass' | 'volume',
  measures: Measures,
): Range | undefined {
  if (unit === undefined || dimensionOf(unit) !== dimension || upTo !== undefined) return undefined;
  let sum = scaleRange({ low, high }, baseOf(unit, measures) ?? 0);
  for (const term of plus) {
    const more = inBase(term, dimension, measures);
    if (more === undefined) return undefined;
    sum = addRanges(sum, more);
  }
  return sum;
}

const OUNCES: Partial<Record<UnitSymbol, number>> = { oz: 1, lb: 16 };

/** Ounces and pounds as if an ounce were a round number of grams; anything else as it is. */
function roundOunces({ unit, plus = [] }: Quantity, grams: Range): Range {
  const isImperial = [unit, ...plus.map((term) => term.unit)].every((u) => u !== undefined && OUNCES[u] !== undefined);
  return isImperial ? scaleRange(grams, ROUND_OUNCE_G / (baseOf('oz', 'us') ?? 1)) : grams;
}

/** What rounding leaves between a cup and its millilitres. */
const ROUNDING = 1.03;

/** Whose cups make two volumes the same. */
function whoseAgrees(a: Quantity, b: Quantity): string | undefined {
  for (const measures of MEASURES_CHOICES) {
    const [first, second] = [inBase(a, 'volume', measures), inBase(b, 'volume', measures)];
    if (first === undefined || second === undefined || !agree(first, second, ROUNDING)) continue;
    const unit = [a, b].map((q) => q.unit).find((u) => u !== undefined && unitInFull(u, measures) !== u);
    if (unit !== undefined) return unitInFull(unit, measures);
  }
  return undefined;
}

const rangeText = ({ low, high }: Range, unit: 'g' | 'ml'): string => {
  const text = (value: number): string => (unit === 'g' ? gramsText(value) : trimmed(value, value < 10 ? 1 : 0));
  return text(low) === text(high) ? `${text(low)} ${unit}` : `${text(low)} to ${text(high)} ${unit}`;
};
