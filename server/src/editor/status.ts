/**
 * Knows what a recipe comes to at a glance, a variant written out in full: findings by severity, the whole weight, the yield as written.
 */
import type { Severity } from '../checks/severity.ts';
import { addRanges, type Range } from '../measure/quantity.ts';
import { type RecipeState, recipeRecord } from '../recipe/trials/state.ts';
import { readTrials } from '../recipe/trials/trials.ts';
import type { Snapshot } from '../workspace/snapshot.ts';

export interface Status {
  readonly findings: Readonly<Record<Severity, number>>;
  /** Undefined where no amount is known; where some are not, it is the least. */
  readonly massG: (Range & { readonly isLeast?: true }) | undefined;
  readonly yield: string | undefined;
  /** Undefined for a file that is no recipe. */
  readonly record: { readonly state: RecipeState; readonly trials: number; readonly latest?: string } | undefined;
}

export function status(snapshot: Snapshot): Status {
  const { findings } = snapshot;
  const { recipe, document } = snapshot.whole;
  const counts = { error: 0, warning: 0, info: 0, hint: 0 };
  for (const { severity } of findings.open) counts[severity]++;
  const weighed = recipe.parts.filter((p) => p.head.massG.high > 0 && !p.head.nominal);
  const massG = weighed.reduce<Range | undefined>(
    (sum, p) => addRanges(sum ?? { low: 0, high: 0 }, p.head.massG),
    undefined,
  );
  const isLeast = recipe.parts.some(({ head }) => !head.massG.complete) || undefined;
  const made = recipe.yield;
  const line = made === undefined ? undefined : document.lines[made.at];
  const end = made?.node.of?.end ?? made?.node.amount?.end;
  const written = made?.node.amount === undefined ? undefined : line?.text.slice(made.node.amount.start, end);
  return {
    findings: counts,
    massG: massG && { low: massG.low, high: massG.high, ...(isLeast && { isLeast }) },
    yield: written,
    record: snapshot.outline.recipe === undefined ? undefined : recordOf(snapshot),
  };
}

function recordOf(snapshot: Snapshot): Status['record'] {
  const { state, trials } = recipeRecord(snapshot.whole.recipe, readTrials(snapshot.outline));
  const latest = trials.at(-1)?.date;
  return { state, trials: trials.length, ...(latest !== undefined && { latest }) };
}
