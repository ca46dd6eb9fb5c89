/**
 * Knows by how much which lines of a part move so that its measures come to their targets and what is to hold holds, or what stands in the way.
 * Refuses to know how amounts are written, and to round.
 */
import { exactly, middle, type Range } from '../../measure/quantity.ts';
import { bringing, gramsOf, timesTheIngredient } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { MEASURES } from '../../recipe/measures/definitions.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import { workOut } from '../../recipe/measures/measures.ts';
import { ratioOf } from '../../recipe/measures/ratio.ts';
import { flourShare } from '../../recipe/measures/shares.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { aboveOf, carriersOf, isCounted, movableLines, type Step } from './carriers.ts';
import { type Equation, type Free, nearestFactors } from './least-squares.ts';

/** A measure and what its middle is brought to: a ratio, or degrees Celsius. */
export interface Target {
  readonly measure: MeasureName;
  readonly to: number;
}

export type Hold = 'mass' | 'flour';

export interface Wish {
  readonly targets: readonly Target[];
  /** What stays as it is while the measures move. */
  readonly hold: ReadonlySet<Hold>;
  /** Lines that do not move. */
  readonly keep: ReadonlySet<Ingredient>;
  /** What is counted stays a whole number of pieces. */
  readonly whole: boolean;
}

/** By how many times each line grows; a line that is not named stays. */
export type Factors = ReadonlyMap<Ingredient, number>;

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

/** A line may become so many times as much, or that part of it: beyond, it is another recipe, or the figure is a slip (judgement). */
const MOST = 50;

/** Lines that move as one, and how dear that is. */
interface Mover {
  readonly lines: readonly Ingredient[];
  readonly weight: number;
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

interface Problem {
  readonly part: Part;
  readonly contents: readonly Ingredient[];
  readonly wish: Wish;
  readonly lines: readonly Ingredient[];
  /** Already settled: the pieces. */
  readonly fixed?: Factors;
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

/** How often the equations are set up anew: a measure is the middle of a range, which is not quite the quotient of the middles. */
const ROUNDS = 40;
const LANDED = 1e-7;

/** The factors at which every measure is on its target; undefined where no such are between the bounds. */
function brought(problem: Problem, movers: readonly Mover[]): Factors | undefined {
  const { wish, contents, fixed } = problem;
  const free: Free[] = movers.map(({ weight }) => ({ weight, least: 1 / MOST, most: MOST }));
  let aims = wish.targets.map(({ to }) => to);
  let factors: Factors = new Map(fixed);
  for (let round = 0; round < ROUNDS; round++) {
    const here = factors;
    const equations = [
      ...wish.targets.map((target, i) => equationOf(problem, target, aims[i] ?? target.to, movers, here)),
      ...[...wish.hold].map((hold) => holding(hold, problem, movers)),
    ];
    const [asked, stands] = [equations.filter(moves), equations.filter((e) => !moves(e))];
    // What nothing moves is as it must be, or it cannot be had.
    const solved = stands.every(({ is }) => Math.abs(is) < 1e-9) ? nearestFactors(asked, free) : undefined;
    if (solved === undefined) return undefined;
    factors = new Map([
      ...(fixed ?? []),
      ...movers.flatMap((m, j) => m.lines.map((l) => [l, solved[j] ?? 1] as const)),
    ]);
    const at = wish.targets.map(({ measure }) => valueAt(measure, contents, factors));
    const off = wish.targets.map(({ to }, i) => to - (at[i] ?? Number.NaN));
    if (off.some(Number.isNaN)) return undefined;
    if (off.every((o, i) => Math.abs(o) <= LANDED * Math.max(1e-3, Math.abs(wish.targets[i]?.to ?? 0)))) return factors;
    aims = aims.map((aim, i) => aim + (off[i] ?? 0));
  }
  return undefined;
}

const moves = ({ of }: Equation): boolean => of.some((o) => o !== 0);

/** The list with some lines so many times as large. */
export const listAt = (contents: readonly Ingredient[], factors: Factors): readonly Ingredient[] =>
  contents.map((line) => timesTheIngredient(line, factors.get(line) ?? 1));

/** The middle of a measure; undefined where it is not known. */
function valueAt(measure: MeasureName, contents: readonly Ingredient[], factors: Factors): number | undefined {
  const worked = workOut(measure, listAt(contents, factors));
  return worked.known ? middle(worked.value) : undefined;
}

/** Above − aim · below = 0, which is linear in grams; of a measure that is no quotient, its slope where it stands. */
function equationOf(problem: Problem, target: Target, aim: number, movers: readonly Mover[], at: Factors): Equation {
  const definition = MEASURES[target.measure];
  return 'bottom' in definition
    ? quotient(problem, target, aim, movers, (line) => bringing(line, definition.bottom))
    : slope(problem, target, movers, at);
}

function quotient(
  { contents, fixed }: Problem,
  { measure }: Target,
  aim: number,
  movers: readonly Mover[],
  below: (line: Ingredient) => number,
): Equation {
  const above = aboveOf(measure);
  const moving = new Set(movers.flatMap(({ lines }) => lines));
  const counts = (line: Ingredient): number =>
    gramsOf(line) * (line.optional ? 0.5 : 1) * (above(line) - aim * below(line));
  const stays = contents.filter((line) => !moving.has(line) && !line.free);
  return {
    of: movers.map(({ lines }) => sumOf(lines, counts)),
    is: -sumOf(stays, (line) => counts(line) * (fixed?.get(line) ?? 1)),
  };
}

/** A step for a slope, as a share of the line. */
const NUDGE = 1e-4;

function slope({ contents }: Problem, { measure, to }: Target, movers: readonly Mover[], at: Factors): Equation {
  const here = valueAt(measure, contents, at) ?? Number.NaN;
  const of = movers.map(({ lines }) => {
    const nudged = new Map(at);
    for (const line of lines) nudged.set(line, (at.get(line) ?? 1) + NUDGE);
    return ((valueAt(measure, contents, nudged) ?? Number.NaN) - here) / NUDGE;
  });
  const now = movers.map(({ lines }) => at.get(lines[0] as Ingredient) ?? 1);
  return { of, is: to - here + of.reduce((sum, slope, j) => sum + slope * (now[j] ?? 1), 0) };
}

/** What is to hold weighs what it did. */
function holding(hold: Hold, { part, fixed }: Problem, movers: readonly Mover[]): Equation {
  const counts = (line: Ingredient): number => gramsOf(line) * (hold === 'mass' ? 1 : bringing(line, flourShare));
  const settled = part.head.ingredients.filter((line) => fixed?.has(line));
  const moved = sumOf(settled, (line) => counts(line) * ((fixed?.get(line) ?? 1) - 1));
  const of = movers.map(({ lines }) => sumOf(lines, counts));
  return { of, is: of.reduce((sum, grams) => sum + grams, 0) - moved };
}

const sumOf = (lines: readonly Ingredient[], counts: (line: Ingredient) => number): number =>
  lines.reduce((sum, line) => sum + counts(line), 0);

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
    ({ measure, to }) => Math.abs((valueAt(measure, contents, factors) ?? Number.NaN) - to) <= LANDED * Math.abs(to),
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
