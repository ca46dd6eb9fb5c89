/**
 * Knows the rewrites that bring a measure to the middle of its band: on a line those that it is turned by, at the head of a part and on a
 * finding those that lie outside.
 * Refuses what puts another measure out of its band, and to write what brings another finding: that is looked at when one is chosen.
 */

import type { Finding } from '../../checks/finding.ts';
import { bandValuesIn } from '../../checks/formula/arithmetic.ts';
import { type AdjustWish, adjustPart } from '../../edits/adjust/adjust.ts';
import { carriersOf, movableLines } from '../../edits/adjust/carriers.ts';
import { changeText } from '../../edits/adjust/said.ts';
import { middle } from '../../measure/quantity.ts';
import type { PositionRange } from '../../notation/document.ts';
import { keptOn } from '../../notation/kept.ts';
import { MEASURES } from '../../recipe/measures/definitions.ts';
import type { KindMeasure, MeasureName } from '../../recipe/measures/kind.ts';
import { partMeasure, placeIn } from '../../recipe/measures/part-measure.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { broughtBy } from '../../workspace/offered.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { partAt } from '../place.ts';
import { listedAt, type Rewrite } from './rewrite.ts';

export function adjustRewrites(snapshot: Snapshot, range: PositionRange): Rewrite[] {
  const listed = listedAt(snapshot, range);
  const part = listed?.part ?? partAt(snapshot, range.start.line);
  const held = part?.head.kind?.measures;
  if (part === undefined || held === undefined) return [];
  const isHead = snapshot.recipe.partsAt[part.index] === range.start.line && part.head.source.named;
  if (listed === undefined && !isHead) return [];
  const told = toldOn(snapshot, part, range.start.line);
  const lines = movableLines(part);
  const turned =
    listed === undefined
      ? held.filter((each) => isOutside(part, each))
      : held.filter(({ measure }) => isTurnedBy(part, measure, lines, listed.ingredient));
  return turned
    .filter(({ measure }) => !told.has(measure))
    .flatMap((each) => toMiddle(snapshot, part, each, 'refactor.rewrite'));
}

/** The same for a finding of a measure, beside its own fix, which brings it to the edge of its band. */
export function adjustFinding(snapshot: Snapshot, { found }: Finding): Rewrite[] {
  const band = bandValuesIn(found.values);
  const part = band === undefined ? undefined : snapshot.recipe.parts[band.part];
  return band === undefined || part === undefined || part.head.name !== band.partName
    ? []
    : toMiddle(snapshot, part, band.measure, 'quickfix');
}

/** Measures of which a finding on the line tells. */
const toldOn = ({ findings }: Snapshot, { index }: Part, line: number): ReadonlySet<string> =>
  new Set(
    findings.open
      .filter(({ at }) => at.line === line)
      .flatMap(({ found }) => {
        const band = bandValuesIn(found.values);
        return band?.part === index ? [band.measure.measure] : [];
      }),
  );

function isTurnedBy(part: Part, name: MeasureName, lines: readonly Ingredient[], ingredient: Ingredient): boolean {
  const worked = partMeasure(part, name);
  const [first] = worked.known ? carriersOf(name, lines, middle(worked.value)) : [];
  return first?.lines.includes(ingredient) === true;
}

function isOutside(part: Part, held: KindMeasure): boolean {
  const place = placeIn(partMeasure(part, held.measure), held);
  return place !== undefined && place !== 'ok';
}

/** Nearer to the middle than this share of the band there is nothing to bring. */
const NEAR = 0.03;
/** The title says so many lines that move. */
const MOST_SAID = 2;

const MOVES = keptOn<Part, Map<MeasureName, string | undefined>>();

/** What would be written, and what moves by it; undefined where nothing can. Worked out once for a part that stays as it is. */
function movesOf(
  { document, recipe }: Snapshot,
  part: Part,
  measure: MeasureName,
  wish: AdjustWish,
): string | undefined {
  const known = MOVES.get(part) ?? new Map<MeasureName, string | undefined>();
  MOVES.set(part, known);
  if (known.has(measure)) return known.get(measure);
  const solved = adjustPart(document, recipe, part, wish);
  const all = solved.ok && solved.leaving.length === 0 ? solved.moved : [];
  const said = all.slice(0, MOST_SAID).map((m) => `${m.after} ${m.ingredient.name}, ${changeText(m)}`);
  const more = all.length > MOST_SAID ? `, and ${all.length - MOST_SAID} more` : '';
  const moves = all.length === 0 ? undefined : `${said.join(', and ')}${more}`;
  known.set(measure, moves);
  return moves;
}

function toMiddle(snapshot: Snapshot, part: Part, held: KindMeasure, kind: Rewrite['kind']): Rewrite[] {
  const [low, high] = held.usual;
  const worked = partMeasure(part, held.measure);
  if (high === null || !worked.known) return [];
  const to = middle({ low: low ?? 0, high });
  if (Math.abs(middle(worked.value) - to) <= NEAR * (high - (low ?? 0))) return [];
  const wish: AdjustWish = { targets: [{ measure: held.measure, to }], whole: true };
  const moves = movesOf(snapshot, part, held.measure, wish);
  if (moves === undefined) return [];
  return [
    {
      title: `Bring ${MEASURES[held.measure].words} to the middle of its band: ${moves}`,
      kind,
      edits: () => {
        const solved = adjustPart(snapshot.document, snapshot.recipe, part, wish);
        // What else it would bring takes too long to look at before it is chosen.
        return solved.ok && broughtBy(snapshot, snapshot.after(solved.edits)).length === 0 ? solved.edits : [];
      },
    },
  ];
}
