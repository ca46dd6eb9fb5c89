/**
 * Knows a recipe as it is cooked: its steps one after another by the clock of its day, each with what it takes, its heat, and what is not safe.
 * Refuses to leave a step out, and to know how any of it is laid out.
 */
import type { Finding } from '../../checks/finding.ts';
import { roundMinutes } from '../../recipe/baking/said.ts';
import type { Part, Recipe, Step } from '../../recipe/model.ts';
import { bakeOf } from '../../recipe/plan/reckoned.ts';
import { clockOf, minuteOf } from '../clock.ts';
import { recipeDay } from '../plan-day.ts';
import type { PlanFacts, PlanStep } from '../plan-facts.ts';
import { heatText, lengthOf } from '../plan-words.ts';
import { type Piece, stepPieces } from '../step-text.ts';
import { type Take, takesOf } from './takes.ts';

export interface KitchenStep {
  /** Empty where the recipe has one part without a name. */
  readonly part: string;
  readonly pieces: readonly Piece[];
  readonly takes: readonly Take[];
  /** What is read off from a step away: `oven`, `180 °C`. */
  readonly figures: readonly (readonly [label: string, value: string])[];
  /** What is not safe of it, each in words. */
  readonly errors: readonly string[];
}

export interface KitchenFacts {
  readonly title: string;
  /** On the table. */
  readonly serve: string;
  readonly steps: readonly KitchenStep[];
  /** What is not safe, and stands at no step. */
  readonly errors: readonly string[];
}

/** `findings` are those of the recipe as it is written out. */
export function kitchenFacts(recipe: Recipe, findings: readonly Finding[], serve: string | undefined): KitchenFacts {
  const day = recipeDay(recipe, { serve });
  const errors = findings.filter(({ severity, check }) => severity === 'error' && check.family === 'safety');
  const placed = inOrder(recipe, day);
  const atSteps = new Set(placed.map(({ part, step }) => lineOf(recipe, part, step.line)));
  const saidOf = (of: readonly Finding[]) => [...new Set(of.map(({ said }) => said.message))];
  return {
    title: recipe.name === '' ? 'A recipe without a name' : recipe.name,
    serve: day.serve,
    steps: placed.map(({ part, step, planned }) => ({
      part: part.head.name,
      pieces: stepPieces(step, part.head.source.lines[step.line]?.text ?? '', 'written'),
      takes: takesOf(recipe, part, step.line),
      figures: figuresOf(recipe, part, step, planned, day),
      errors: saidOf(errors.filter(({ at }) => at.line === lineOf(recipe, part, step.line))),
    })),
    errors: saidOf(errors.filter(({ at }) => !atSteps.has(at.line))),
  };
}

const lineOf = ({ partsAt }: Recipe, { index }: Part, line: number): number => (partsAt[index] ?? 0) + line;

interface Placed {
  readonly part: Part;
  readonly step: Step;
  /** What the day has of it. */
  readonly planned: readonly PlanStep[];
}

/** By the clock of the day, and within a part as it is written: a step that takes no time goes with the one before it. */
function inOrder(recipe: Recipe, day: PlanFacts): readonly Placed[] {
  const all = recipe.parts.flatMap((part) => {
    const own = part.steps.map((step) => {
      const line = lineOf(recipe, part, step.line) + 1;
      return { part, step, planned: day.steps.filter((planned) => planned.line === line) };
    });
    let at = Math.min(0, ...own.flatMap(({ planned }) => planned.map(({ from }) => from.min)));
    return own.map((placed) => {
      const [first] = placed.planned;
      at = Math.max(at, first?.from.min ?? at);
      return { placed, at };
    });
  });
  return all
    .map((each, i) => ({ ...each, i }))
    .sort((a, b) => a.at - b.at || a.i - b.i)
    .map(({ placed }) => placed);
}

function figuresOf(
  recipe: Recipe,
  part: Part,
  step: Step,
  planned: readonly PlanStep[],
  day: PlanFacts,
): KitchenStep['figures'] {
  const bake = bakeOf(recipe, { part: part.index, line: step.line });
  const goesOn = planned.filter(({ spent }) => spent !== 'work');
  const task =
    planned.find(({ oven_turns: turns }) => turns.length > 0) ??
    goesOn.find(({ said_min }) => said_min !== null) ??
    goesOn[0];
  if (task === undefined) return [];
  const { oven_turns: turns, said_min: said, from } = task;
  const target = bake?.bake.target;
  const likely = bake?.is === 'estimated' ? [bake.estimate.low, bake.estimate.high].map(roundMinutes) : [];
  const clock = (minutes: number) => clockOf(minuteOf(day.serve) + from.min + minutes);
  return [
    ...(turns.length > 0 ? [['oven', turns.map(heatText).join(', then ')] as const] : []),
    ...(target === undefined ? [] : [['in the centre', `${Math.round(target)} °C`] as const]),
    ...(said === null ? [] : [['written', spanText(said[0], said[1])] as const]),
    ...(likely.length === 0 ? [] : [[`likely, if in at ${from.at}`, likely.map(clock).join('–')] as const]),
    ...(likely.length > 0 || said === null || turns.length > 0
      ? []
      : [[`done, if begun at ${from.at}`, clock(said[0])] as const]),
  ];
}

/** `40–50 min`, `1 h 30 min`, `2 h and more` */
function spanText(low: number, high: number | null): string {
  if (high === null) return `${lengthOf(Math.round(low))} and more`;
  if (high <= low) return lengthOf(Math.round(low));
  return high <= 120
    ? `${Math.round(low)}–${Math.round(high)} min`
    : `${lengthOf(Math.round(low))} to ${lengthOf(Math.round(high))}`;
}
