/**
 * Knows at which factors of a few lines the measures of a list land on their targets: an equation for each, and for what holds.
 * Refuses to choose the lines, and to round.
 */
import { bringing, gramsOf, timesTheIngredient } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { MEASURES } from '../../recipe/measures/definitions.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import { workOut } from '../../recipe/measures/measures.ts';
import { flourShare } from '../../recipe/measures/shares.ts';
import { likelyOf } from '../../recipe/measures/worked-ratio.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { aboveOf } from './carriers.ts';
import { type Equation, type Free, nearestFactors } from './least-squares.ts';

/** A measure and what it is likely to be is brought to: a ratio, or degrees Celsius. */
export interface Target {
  readonly measure: MeasureName;
  readonly to: number;
  /** Which end of its interval is brought there; its middle where left out. */
  readonly end?: 'low' | 'high';
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

/** A line may become so many times as much, or that part of it: beyond, it is another recipe, or the figure is a slip (judgement). */
export const MOST = 50;

/** Lines that move as one, and how dear that is. */
export interface Mover {
  readonly lines: readonly Ingredient[];
  readonly weight: number;
}

export interface Problem {
  readonly part: Part;
  readonly contents: readonly Ingredient[];
  readonly wish: Wish;
  readonly lines: readonly Ingredient[];
  /** Already settled: the pieces. */
  readonly fixed?: Factors;
}

/** How often the equations are set up anew: a measure is the middle of a range, which is not quite the quotient of the middles. */
const ROUNDS = 40;
const LANDED = 1e-10;

/** The factors at which every measure is on its target; undefined where no such are between the bounds. */
export function brought(problem: Problem, movers: readonly Mover[], most = MOST): Factors | undefined {
  const { wish, contents, fixed } = problem;
  const free: Free[] = movers.map(({ weight }) => ({ weight, least: 1 / most, most }));
  let aims = wish.targets.map(({ to }) => to);
  let factors: Factors = new Map(fixed);
  for (let round = 0; round < ROUNDS; round++) {
    const here = factors;
    const solved = stepFrom(problem, aims, movers, here, free);
    if (solved === undefined) return undefined;
    factors = new Map([
      ...(fixed ?? []),
      ...movers.flatMap((m, j) => m.lines.map((l) => [l, solved[j] ?? 1] as const)),
    ]);
    const at = wish.targets.map((target) => placeAt(target, contents, factors));
    const off = wish.targets.map(({ to }, i) => to - (at[i] ?? Number.NaN));
    if (off.some(Number.isNaN)) return undefined;
    if (off.every((o, i) => Math.abs(o) <= LANDED * Math.max(1e-3, Math.abs(wish.targets[i]?.to ?? 0)))) return factors;
    aims = aims.map((aim, i) => aim + (off[i] ?? 0));
  }
  return undefined;
}

/** A slope leads too far where the measure bends: so near to the target is gone then, at the least. */
const LEAST_SHARE = 1 / 64;

/** The factors that meet all equations as they stand here; of a slope a part of the way, where the whole lies beyond the bounds. */
function stepFrom(
  problem: Problem,
  aims: readonly number[],
  movers: readonly Mover[],
  here: Factors,
  free: readonly Free[],
): readonly number[] | undefined {
  const { targets, hold } = problem.wish;
  const bends = targets.some(({ measure }) => !('bottom' in MEASURES[measure]));
  for (let share = 1; share >= (bends ? LEAST_SHARE : 1); share /= 2) {
    const equations = [
      ...targets.map((target, i) => equationOf(problem, { target, aim: aims[i] ?? target.to, share }, movers, here)),
      ...[...hold].map((held) => holding(held, problem, movers)),
    ];
    const [asked, stands] = [equations.filter(moves), equations.filter((e) => !moves(e))];
    // What nothing moves is as it must be, or it cannot be had.
    const solved = stands.every(({ is }) => Math.abs(is) < 1e-9) ? nearestFactors(asked, free) : undefined;
    if (solved !== undefined) return solved;
  }
  return undefined;
}

const moves = ({ of }: Equation): boolean => of.some((o) => o !== 0);

/** By how many times one line alone grows so that the measure lands; undefined where it cannot within so many times, or that part of it. */
export function factorTo(part: Part, line: Ingredient, target: Target, most: number): number | undefined {
  const wish: Wish = { targets: [target], hold: new Set(), keep: new Set(), whole: false };
  const problem: Problem = { part, contents: contentsOf(part), wish, lines: [line] };
  return brought(problem, [{ lines: [line], weight: 1 }], most)?.get(line);
}

/** The list with some lines so many times as large. */
export const listAt = (contents: readonly Ingredient[], factors: Factors): readonly Ingredient[] =>
  contents.map((line) => timesTheIngredient(line, factors.get(line) ?? 1));

/** The middle of a measure; undefined where it is not known. */
export const valueAt = (measure: MeasureName, contents: readonly Ingredient[], factors: Factors): number | undefined =>
  placeAt({ measure }, contents, factors);

/** The same, or an end of its interval. */
function placeAt(
  { measure, end }: Omit<Target, 'to'>,
  contents: readonly Ingredient[],
  factors: Factors,
): number | undefined {
  const worked = workOut(measure, listAt(contents, factors));
  if (!worked.known) return undefined;
  return end === undefined ? likelyOf(worked) : worked.value[end];
}

/** Where a target is gone to in this round: its aim, and of a slope so much of the way. */
interface Way {
  readonly target: Target;
  readonly aim: number;
  readonly share: number;
}

/** Above − aim · below = 0, which is linear in grams; of a measure that is no quotient, its slope where it stands. */
function equationOf(problem: Problem, way: Way, movers: readonly Mover[], at: Factors): Equation {
  const { target, aim } = way;
  const definition = MEASURES[target.measure];
  return 'bottom' in definition
    ? quotient(problem, target, aim, movers, (line) => bringing(line, definition.bottom))
    : slope(problem, way, movers, at);
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

function slope({ contents }: Problem, { target, share }: Way, movers: readonly Mover[], at: Factors): Equation {
  const here = placeAt(target, contents, at) ?? Number.NaN;
  const of = movers.map(({ lines }) => {
    const nudged = new Map(at);
    for (const line of lines) nudged.set(line, (at.get(line) ?? 1) + NUDGE);
    return ((placeAt(target, contents, nudged) ?? Number.NaN) - here) / NUDGE;
  });
  const now = movers.map(({ lines: [line] }) => (line === undefined ? 1 : (at.get(line) ?? 1)));
  return { of, is: share * (target.to - here) + of.reduce((sum, slope, j) => sum + slope * (now[j] ?? 1), 0) };
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
