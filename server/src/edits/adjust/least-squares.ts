/**
 * Knows the factors nearest to 1 that meet equations, each between a least and a most: a small bounded problem of least squares.
 * Refuses to know what the numbers stand for.
 */

/** Σ of·factor = is. */
export interface Equation {
  readonly of: readonly number[];
  readonly is: number;
}

export interface Free {
  /** How dear it is to move, as a weight on the square of its change. */
  readonly weight: number;
  readonly least: number;
  readonly most: number;
}

/**
 * The factors that meet the equations with the least Σ weight·(factor − 1)²; undefined where none do. Solved by its dual, which is concave and
 * has one unknown an equation: each factor is then its own, cut off at its bounds, and Newton's steps are halved until they climb
 * (Nocedal and Wright, Numerical Optimization, 2006, chapters 16 and 17).
 */
export function nearestFactors(equations: readonly Equation[], free: readonly Free[]): readonly number[] | undefined {
  const rows = equations.map(scaledTo1);
  let dual = rows.map(() => 0);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const factors = factorsAt(dual, rows, free);
    const missing = rows.map(({ of, is }) => is - dot(of, factors));
    if (missing.every((m) => Math.abs(m) < MET)) return factors;
    const step = solve(curvature(factors, rows, free), missing);
    const whole = dual.map((d, i) => d + (step[i] ?? 0));
    // Near the end a step gains less height than a sum of floats shows.
    const next = halves(whole, missing, rows, free)
      ? whole
      : (climb(dual, step, rows, free) ?? climb(dual, missing, rows, free));
    if (next === undefined) return undefined;
    dual = next;
  }
  return undefined;
}

const MOST_ROUNDS = 80;
/** Of an equation scaled to 1, this is met. */
const MET = 1e-11;
/** Keeps a step finite where an equation has nothing left that moves. */
const LEAST_CURVATURE = 1e-12;

/** Whether what is missing at most is half of what it was. */
function halves(dual: readonly number[], missing: readonly number[], rows: readonly Equation[], free: readonly Free[]) {
  const factors = factorsAt(dual, rows, free);
  const left = Math.max(...rows.map(({ of, is }) => Math.abs(is - dot(of, factors))));
  return left <= Math.max(...missing.map(Math.abs)) / 2;
}

function scaledTo1({ of, is }: Equation): Equation {
  const size = Math.max(...of.map(Math.abs), Number.MIN_VALUE);
  return { of: of.map((o) => o / size), is: is / size };
}

function factorsAt(dual: readonly number[], rows: readonly Equation[], free: readonly Free[]): number[] {
  return free.map(({ weight, least, most }, j) => {
    const pull = rows.reduce((sum, { of }, i) => sum + (of[j] ?? 0) * (dual[i] ?? 0), 0);
    return Math.min(most, Math.max(least, 1 + pull / weight));
  });
}

/** How much each equation gives for a step of each dual: of the factors that are not at a bound. */
function curvature(factors: readonly number[], rows: readonly Equation[], free: readonly Free[]): number[][] {
  return rows.map((a, i) =>
    rows.map((b, k) =>
      free.reduce(
        (sum, { weight, least, most }, j) => {
          const factor = factors[j] ?? 0;
          return factor <= least || factor >= most ? sum : sum + ((a.of[j] ?? 0) * (b.of[j] ?? 0)) / weight;
        },
        i === k ? LEAST_CURVATURE : 0,
      ),
    ),
  );
}

/** The dual's height: what the best factors cost there. */
function heightOf(dual: readonly number[], rows: readonly Equation[], free: readonly Free[]): number {
  const factors = factorsAt(dual, rows, free);
  const cost = free.reduce((sum, { weight }, j) => sum + (weight * ((factors[j] ?? 1) - 1) ** 2) / 2, 0);
  return rows.reduce((sum, { of, is }, i) => sum + (dual[i] ?? 0) * (is - dot(of, factors)), cost);
}

/** Along the step, halved until the dual rises by it. */
function climb(
  dual: readonly number[],
  step: readonly number[],
  rows: readonly Equation[],
  free: readonly Free[],
): number[] | undefined {
  const from = heightOf(dual, rows, free);
  const slope = dot(
    step,
    rows.map(({ of, is }) => is - dot(of, factorsAt(dual, rows, free))),
  );
  if (!(slope > 0)) return undefined;
  for (let share = 1; share > 1e-14; share /= 2) {
    const next = dual.map((d, i) => d + share * (step[i] ?? 0));
    if (next.every((d) => Math.abs(d) < FARTHEST) && heightOf(next, rows, free) >= from + 1e-4 * share * slope)
      return next;
  }
  return undefined;
}

/** A dual that goes on for ever tells that nothing meets the equations. */
const FARTHEST = 1e12;

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * (b[i] ?? 0), 0);

/** Gauss's elimination with the largest in front; a row that has nothing left counts as no step. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0]);
  const at = (i: number, k: number): number => rows[i]?.[k] ?? 0;
  for (let i = 0; i < rows.length; i++) {
    let best = i;
    for (let k = i + 1; k < rows.length; k++) if (Math.abs(at(k, i)) > Math.abs(at(best, i))) best = k;
    [rows[i], rows[best]] = [rows[best] ?? [], rows[i] ?? []];
    if (at(i, i) === 0) continue;
    for (let k = i + 1; k < rows.length; k++) {
      const by = at(k, i) / at(i, i);
      rows[k] = (rows[k] ?? []).map((x, c) => x - by * at(i, c));
    }
  }
  const solved = rows.map(() => 0);
  for (let i = rows.length - 1; i >= 0; i--) {
    const rest = solved.reduce((sum, x, k) => (k > i ? sum + x * at(i, k) : sum), 0);
    solved[i] = at(i, i) === 0 ? 0 : (at(i, rows.length) - rest) / at(i, i);
  }
  return solved;
}
