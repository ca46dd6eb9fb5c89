/**
 * Knows how one ingredient is given the weight that brings a measure back to the edge of its usual band, counting what it adds to the whole,
 * and leaves the kind's other measures in theirs.
 * Refuses to choose the ingredient, and gives nothing where no weight does it.
 */
import { factorTo, type Target } from '../../edits/adjust/landing.ts';
import { inColumn, setCount, setGrams } from '../../edits/set-amount.ts';
import { replaceSpan } from '../../edits/text-edit.ts';
import { trimmed } from '../../measure/number-text.ts';
import { gramsOf, timesTheIngredient } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import type { KindMeasure } from '../../recipe/measures/kind.ts';
import { type Verdict, verdictOf, verdictOn } from '../../recipe/measures/kinds.ts';
import { workOut } from '../../recipe/measures/measures.ts';
import { likelyOf } from '../../recipe/measures/worked-ratio.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import type { Fix, Scene } from '../check.ts';
import { type BandValues, isHigh } from './band.ts';

/** How far an ingredient may be moved by a fix, from a part of it to a multiple. */
const MOST = 12;

/** What is judged, what it is made of now, the ingredient that gives way, and what that may not do to the kind's other measures. */
interface Formula {
  readonly values: BandValues;
  readonly part: Part;
  readonly contents: readonly Ingredient[];
  readonly ingredient: Ingredient;
  readonly others: readonly Other[];
}

/** Another measure of the kind, and where it may lie once the one is mended. */
interface Other {
  readonly held: KindMeasure;
  readonly mayBe: readonly Verdict[];
}

/** Writes the weight, or the number, at which the measure is back in its band, of the ingredient that the check chooses. */
export function mendAmount(values: BandValues, scene: Scene, choose: (part: Part) => Ingredient | undefined): Fix[] {
  const { recipe } = scene;
  // A weight reckoned with a food that nobody knows is a guess.
  if (values.open !== undefined) return [];
  const part = recipe.parts[values.part];
  const ingredient = part === undefined ? undefined : choose(part);
  if (part === undefined || ingredient === undefined) return [];
  if (!part.head.ingredients.includes(ingredient) || !ingredient.weighed.known) return [];
  const now = gramsOf(ingredient);
  if (!(now > 0)) return [];
  const contents = contentsOf(part);
  const alone: Formula = { values, part, contents, ingredient, others: [] };
  const noWorse = othersOf(alone);
  // One that the same ingredient can bring into its band is mended with it; else there would be the next thing to mend.
  const mended = noWorse.map((other) => {
    const inBand: Other = { ...other, mayBe: ['ok'] };
    return other.mayBe.length > 1 && factor({ ...alone, others: [inBand] }) !== undefined ? inBand : other;
  });
  for (const others of [mended, noWorse]) {
    const fixes = mendTo({ ...alone, others }, scene, now);
    if (fixes.length > 0) return fixes;
  }
  return [];
}

/** The kind's other measures that are known: in their bands they stay there, outside they come no further out. */
function othersOf({ values: { kind, measure: own }, contents }: Formula): Other[] {
  return kind.measures.flatMap((held) => {
    const now = held === own ? undefined : verdictAmong(held, contents);
    return now === undefined ? [] : [{ held, mayBe: NO_WORSE[now] }];
  });
}

const NO_WORSE: { readonly [now in Verdict]: readonly Verdict[] } = {
  ok: ['ok'],
  low: ['ok', 'low'],
  high: ['ok', 'high'],
  'too low': ['ok', 'low', 'too low'],
  'too high': ['ok', 'high', 'too high'],
};

/** Where a measure surely lies; undefined where it is not known. */
function verdictAmong(held: KindMeasure, contents: readonly Ingredient[]): Verdict | undefined {
  const worked = workOut(held.measure, contents);
  return worked.known ? verdictOn(worked, held) : undefined;
}

/** The fix that reaches what the formula asks; `now` is what its ingredient weighs, in grams. */
function mendTo(formula: Formula, scene: Scene, now: number): Fix[] {
  const { values, ingredient } = formula;
  const { recipe } = scene;
  const { amount } = ingredient.node;
  if (amount?.kind !== 'measured') return [];
  const counted = amount.unit === undefined;
  const by = factor(formula);
  if (by === undefined) return [];
  const grows = by > 1;
  if (ingredient.percent !== undefined) return mendPercent(formula, scene, by);
  if (counted) {
    const count = grows ? Math.ceil(amount.low.value * by - 1e-9) : Math.floor(amount.low.value * by + 1e-9);
    if (count < 1 || count === amount.low.value || !mends(formula, count / amount.low.value)) return [];
    const set = setCount(recipe, values.part, ingredient, count);
    const change = Math.abs(count - amount.low.value);
    return written(set, ingredient, `${trimCount(change)} ${grows ? 'more' : 'fewer'}`);
  }
  const exact = now * by;
  const step = exact < 1 ? 0.01 : exact < 10 ? 0.1 : 1;
  const near = (grows ? Math.ceil(exact / step - 1e-6) : Math.floor(exact / step + 1e-6)) * step;
  const grams = [near, near + (grows ? step : -step)].find((g) => g > 0 && mends(formula, g / now));
  if (grams === undefined) return [];
  const change = Math.abs(now - grams);
  const set = setGrams(recipe, values.part, ingredient, grams);
  const said = change < 10 ? String(Math.round(change * 10) / 10) : String(Math.round(change));
  return written(set, ingredient, `${said} g ${grows ? 'more' : 'less'}`);
}

/** A baker's percentage gets another percentage, in steps a baker writes. */
function mendPercent(formula: Formula, { recipe }: Scene, by: number): Fix[] {
  const { values, ingredient } = formula;
  const { node, percent, line, name } = ingredient;
  const { amount } = node;
  if (percent === undefined || amount?.kind !== 'measured' || !(percent.low > 0)) return [];
  const exact = percent.low * by;
  const step = exact < 3 ? 0.01 : exact < 10 ? 0.1 : 0.5;
  const whole = by > 1 ? Math.ceil(exact / step - 1e-6) : Math.floor(exact / step + 1e-6);
  if (!(whole > 0) || !mends(formula, (whole * step) / percent.low)) return [];
  const number = trimmed(whole * step, 2);
  const at = (recipe.partsAt[values.part] ?? 0) + line;
  const span = { start: amount.low.start, end: amount.high?.end ?? amount.low.end };
  const edits = inColumn(recipe, values.part, ingredient, [replaceSpan(at, span, number)]);
  return [{ title: `Write ${number} % ${name}`, effect: 'amounts', edits }];
}

function written(set: ReturnType<typeof setGrams>, ingredient: Ingredient, change: string): Fix[] {
  return set === undefined
    ? []
    : [{ title: `Write ${set.written} ${ingredient.name}, ${change}`, effect: 'amounts', edits: set.edits }];
}

const trimCount = (count: number): string => String(Math.round(count * 100) / 100);

/**
 * The smallest change of the ingredient, as a factor, that brings the measure into its usual band: at the edge that was left, or further on
 * where another measure only then lies where it may.
 */
function factor(formula: Formula): number | undefined {
  const { values, part, ingredient, others } = formula;
  const { measure, usual } = values.measure;
  const to = (target: Target): number | undefined => factorTo(part, ingredient, target, MOST);
  const edge = usual[isHigh(values.verdict) ? 1 : 0];
  const first = edge === null ? undefined : to({ measure, to: edge });
  if (first === undefined) return undefined;
  const past = (by: number): number => by * (first > 1 ? 1 + HAIR : 1 - HAIR);
  if (mends(formula, past(first))) return past(first);
  const edges = others.flatMap(({ held }): (Target | undefined)[] =>
    [held.usual, held.implausible].flatMap(([low, high]) => [
      low === null ? undefined : { measure: held.measure, to: low, end: 'high' },
      high === null ? undefined : { measure: held.measure, to: high, end: 'low' },
    ]),
  );
  const further = edges.flatMap((target) => {
    const by = target && to(target);
    return by !== undefined && (first > 1 ? by > first : by < first) ? [past(by)] : [];
  });
  return further.sort((a, b) => (first > 1 ? a - b : b - a)).find((by) => mends(formula, by));
}

/** Past an edge by so much, as sums of floats may fall on either side of it. */
const HAIR = 1e-9;

/** Whether what the measure likely is lies in the usual band, and the others where they may, with so many times the ingredient. */
function mends({ values: { measure: held }, contents, ingredient, others }: Formula, by: number): boolean {
  const changed = contents.map((i) => (i === ingredient ? timesTheIngredient(i, by) : i));
  const worked = workOut(held.measure, changed);
  if (!worked.known) return false;
  const at = likelyOf(worked);
  return (
    verdictOf(at, at, held) === 'ok' &&
    others.every((other) => {
      const lies = verdictAmong(other.held, changed);
      return lies === undefined || other.mayBe.includes(lies);
    })
  );
}
