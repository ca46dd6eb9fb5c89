/**
 * Knows what the formula view shows beside the report: what turning a measure comes to, and what a measure is after a fix.
 * Refuses to know how it is drawn.
 */
import type { Fix } from '../../checks/check.ts';
import type { Finding } from '../../checks/finding.ts';
import { bandValuesIn } from '../../checks/formula/arithmetic.ts';
import { middle } from '../../measure/quantity.ts';
import type { Turned } from '../../publish/view/facts.ts';
import type { Look } from '../../publish/view/look.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { measure } from '../../recipe/measures/measures.ts';
import { partMeasure } from '../../recipe/measures/part-measure.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { adjusted, measureCalled, partCalled } from '../adjusted.ts';

/** Undefined where no measure is looked at, or the part or the measure is gone. */
export function turnedOf(snapshot: Snapshot, { turn }: Look): Turned | undefined {
  const [part, name] = [partCalled(snapshot, turn?.part ?? ''), measureCalled(turn?.measure ?? '')];
  if (turn === undefined || part === undefined || name === undefined) return undefined;
  const worked = partMeasure(part, name);
  if (!worked.known) return undefined;
  const to = turn.value ?? middle(worked.value);
  const result = adjusted(snapshot, part, { targets: [{ measure: name, to }] });
  const shared = { part: turn.part, measure: name, to };
  if (!result.ok) return { ...shared, moved: [], said: [], refused: result.why };
  const moved = result.moved.map(({ ingredient, before, after }) => ({ name: ingredient.name, before, after }));
  return { ...shared, moved, said: result.said };
}

/** The middle of a finding's measure once the fix is written; undefined where it is of no measure, or not known then. */
export function measureAfter(snapshot: Snapshot, finding: Finding, fix: Fix): number | undefined {
  const band = bandValuesIn(finding.found.values);
  const part = band && snapshot.after(fix.edits).whole.recipe.parts[band.part];
  if (part === undefined || band === undefined) return undefined;
  const worked = measure(band.measure.measure, contentsOf(part));
  return worked.known ? middle(worked.value) : undefined;
}
