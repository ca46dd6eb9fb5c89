/**
 * Knows by how much which lines of a part move so that its measures come to their targets and what is to hold holds, or what stands in the way.
 * Refuses to know how amounts are written, and to round.
 */
import { exactly, type Range } from '../../measure/quantity.ts';
import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { MEASURES } from '../../recipe/measures/definitions.ts';
import { ratioOf } from '../../recipe/measures/ratio.ts';
import { flourShare } from '../../recipe/measures/shares.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { aboveOf, carriersOf, isCounted, movableLines, type Step } from './carriers.ts';
import { brought, type Factors, MOST, type Mover, type Problem, type Target, valueAt, type Wish } from './landing.ts';

export interface Solution {
  readonly factors: Factors;
  /** The lines that a cook turns for each target, by steps, as far as they were needed. */
  readonly turned: readonly { readonly target: Target; readonly steps: readonly Step[] }[];
  /** What follows so that the whole weighs what it did. */
  readonly rest: readonly Ingredient[];
}

export type Solved =
  | ({ readonly ok: true } & Solution)
  | {
      readonly ok: false;
      /** What each target could come to by all that may move, where each was the only one; undefined where nothing may. */
      readonly reach: readonly Reach[];
      /** With so many whole pieces and the rest as it is, the first target would come to these. */
      readonly pieces: readonly {
        readonly counts: readonly (readonly [Ingredient, number])[];
        readonly value: number;
      }[];
    };

export interface Reach {
  readonly target: Target;
  readonly range: Range | undefined;
  /** What brings most of it, or is most of what it is held against, and does not move. */
  readonly stays: readonly Ingredient[];
}

/** A step is only touched where those before it cannot do it, and moves so much less than they then. */
const DEARER = 4;

export function solve(part: Part, wish: Wish): Solved {
  const lines = movableLines(part).filter((line) => !wish.keep.has(line));
  const problem: Problem = { part, contents: contentsOf(part), wish, lines };
  const loose = wish.whole ? lines.filter((line) => !isCounted(line)) : lines;
  const solved = bySteps({ ...problem, lines: loose });
  if (solved !== undefined) return { ok: true, ...solved };
  const whole = wish.whole ? wholeNumbers(problem, loose) : undefined;
  if (whole !== undefined) return { ok: true, ...whole };
  return {
    ok: false,
    reach: wish.targets.map((target) => reachOf(problem, target)),
    pieces: wish.whole ? piecesNear(problem) : [],
  };
}

/** With the first steps of every target alone, then with one step more, until it can be had. */
function bySteps(problem: Problem): Solution | undefined {
  const { wish, lines } = problem;
  const all = wish.targets.map((target) => ({ target, steps: stepsFor(target, problem) }));
  const most = Math.max(0, ...all.map(({ steps }) => steps.length));
  for (let count = 1; count <= most; count++) {
    const turned = all.map(({ target, steps }) => ({ target, steps: steps.slice(0, count) }));
    const weights = new Map<Ingredient, number>();
    for (const { steps } of turned)
      for (const [i, step] of steps.entries())
        for (const line of step.lines)
          weights.set(line, Math.min(weights.get(line) ?? Number.POSITIVE_INFINITY, DEARER ** i));
    const rest = wish.hold.has('mass') ? lines.filter((line) => !weights.has(line) && !isHeld(line, wish)) : [];
    const movers: Mover[] = [...weights].map(([line, weight]) => ({ lines: [line], weight }));
    if (rest.length > 0) movers.push({ lines: rest, weight: rest.length });
    const factors = brought(problem, movers);
    if (factors !== undefined) return { factors, turned, rest };
  }
  return undefined;
}

const isHeld = (line: Ingredient, { hold }: Wish): boolean => hold.has('flour') && bringing(line, flourShare) > 0;

const stepsFor = ({ measure }: Target, { lines, wish, contents }: Problem): readonly Step[] =>
  carriersOf(
    measure,
    lines.filter((line) => !isHeld(line, wish)),
    valueAt(measure, contents, new Map()) ?? 0,
  );

/** Such a figure is as good as the target. */
const HIT = 1e-6;

/** Pieces rounded to the nearest whole number at which the rest can still do it. */
function wholeNumbers(problem: Problem, loose: readonly Ingredient[]): Solution | undefined {
  const relaxed = bySteps(problem);
  if (relaxed === undefined) return undefined;
  const pieces = [...relaxed.factors].filter(([line]) => isCounted(line));
  for (const settled of roundings(pieces)) {
    const solved = bySteps({ ...problem, lines: loose, fixed: new Map(settled) }) ?? asItIs(problem, settled);
    if (solved !== undefined) return { ...solved, turned: [...relaxed.turned, ...solved.turned] };
  }
  return undefined;
}

/** So many kinds of pieces are rounded either way; more are only rounded to the nearest. */
const MOST_EITHER_WAY = 4;

/** Each number of pieces rounded down or up, the nearest to what was wanted first. */
function roundings(pieces: readonly (readonly [Ingredient, number])[]): (readonly [Ingredient, number])[][] {
  const all = pieces.map(([line, factor], i) => {
    const count = countOf(line);
    const wanted = count * factor;
    const near = [Math.floor(wanted + 1e-9), Math.ceil(wanted - 1e-9)].filter((n) => n >= 1);
    near.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted));
    const tried = i < MOST_EITHER_WAY ? [...new Set(near)] : near.slice(0, 1);
    return tried.map((n) => ({ entry: [line, n / count] as const, off: Math.abs(n - wanted) / wanted }));
  });
  const together = all.reduce<{ entries: (readonly [Ingredient, number])[]; off: number }[]>(
    (made, next) =>
      made.flatMap(({ entries, off }) => next.map((n) => ({ entries: [...entries, n.entry], off: off + n.off }))),
    [{ entries: [], off: 0 }],
  );
  return together.sort((a, b) => a.off - b.off).map(({ entries }) => entries);
}

const countOf = ({ node: { amount } }: Ingredient): number => (amount?.kind === 'measured' ? amount.low.value : 1);

/** Whole numbers that hit the targets by themselves. */
function asItIs(
  { contents, wish }: Problem,
  settled: readonly (readonly [Ingredient, number])[],
): Solution | undefined {
  const factors = new Map(settled);
  const hits = wish.targets.every(
    ({ measure, to }) => Math.abs((valueAt(measure, contents, factors) ?? Number.NaN) - to) <= HIT * Math.abs(to),
  );
  return hits && wish.hold.size === 0 ? { factors, turned: [], rest: [] } : undefined;
}

/** What the first target is with whole numbers on both sides of what was wanted. */
function piecesNear(problem: Problem): Extract<Solved, { ok: false }>['pieces'] {
  const { contents, wish } = problem;
  const [target] = wish.targets;
  const relaxed = target === undefined ? undefined : bySteps(problem);
  if (target === undefined || relaxed === undefined) return [];
  const pieces = [...relaxed.factors].filter(([line]) => isCounted(line));
  return roundings(pieces).flatMap((settled) => {
    const value = valueAt(target.measure, contents, new Map(settled));
    return value === undefined
      ? []
      : [{ counts: settled.map(([line, by]) => [line, by * countOf(line)] as const), value }];
  });
}

/** What the measure can be at the least and the most, by all that a cook would turn for it. */
function reachOf(problem: Problem, target: Target): Reach {
  const { contents } = problem;
  const { measure } = target;
  const turned = new Set(stepsFor(target, problem).flatMap(({ lines }) => lines));
  const above = aboveOf(measure);
  const brought = contents
    .filter((line) => !turned.has(line) && gramsOf(line) * above(line) > 0)
    .sort((a, b) => gramsOf(b) * above(b) - gramsOf(a) * above(a));
  const stays = brought.slice(0, MOST_NAMED);
  if (turned.size === 0) return { target, range: undefined, stays };
  const definition = MEASURES[measure];
  if (!('bottom' in definition)) {
    const [a = Number.NaN, b = Number.NaN] = [1 / MOST, MOST].map((by) =>
      valueAt(measure, contents, new Map([...turned].map((line) => [line, by]))),
    );
    const range = Number.isNaN(a + b) ? undefined : { low: Math.min(a, b), high: Math.max(a, b) };
    return { target, range, stays };
  }
  const range = ratioOf(
    contents
      .filter((line) => !line.free)
      .map((line) => {
        const grams = gramsOf(line) * (line.optional ? 0.5 : 1);
        return {
          grams: turned.has(line) ? { low: grams / MOST, high: grams * MOST } : exactly(grams),
          top: exactly(above(line)),
          bottom: exactly(bringing(line, definition.bottom)),
        };
      }),
  );
  return { target, range, stays };
}

const MOST_NAMED = 2;
