/**
 * Knows what a line that was read must come through: report, another size, weights, the formatter, and a hover.
 * Refuses to know whether it was read right.
 */
import { hover } from '../../../server/src/editor/hover.ts';
import { convertRecipe } from '../../../server/src/edits/convert.ts';
import { scaleRecipe } from '../../../server/src/edits/scale.ts';
import { applyEdits, type TextEdit } from '../../../server/src/edits/text-edit.ts';
import { hoverText } from '../../../server/src/lsp/convert.ts';
import { printDocument } from '../../../server/src/notation/document.ts';
import { layout } from '../../../server/src/notation/layout.ts';
import { report } from '../../../server/src/publish/report.ts';
import type { Ingredient } from '../../../server/src/recipe/model.ts';
import type { Snapshot } from '../../../server/src/workspace/snapshot.ts';
import { INDENT, LINE, openLine, openText, type PrintedLine, sumOf } from './score.ts';

/** What goes wrong when the line is used, in words; none where all is well. */
export function usesGoneWrong(printed: PrintedLine): string[] {
  const snapshot = openLine(printed);
  const again = (text: string): Snapshot => openText(text, printed.measures);
  return [
    ...reported(snapshot),
    ...scaled(snapshot, again),
    ...converted(snapshot, again),
    ...formatted(snapshot, again),
    ...hovered(snapshot, printed),
  ];
}

const ingredientsOf = (snapshot: Snapshot): readonly Ingredient[] =>
  snapshot.recipe.parts.flatMap((part) => part.head.ingredients);

const likely = (snapshot: Snapshot): number | undefined => sumOf(ingredientsOf(snapshot))?.likely;

const foods = (snapshot: Snapshot): string =>
  ingredientsOf(snapshot)
    .map(({ food, match }) => food?.id ?? match.kind)
    .join(' + ');

const written = ({ document }: Snapshot, edits: readonly TextEdit[]): string =>
  printDocument(applyEdits(document, edits));

const lineOf = (text: string): string => text.split('\n').slice(LINE, -1).join(' / ').trim();

function reported(snapshot: Snapshot): string[] {
  const { ingredients } = report(snapshot.recipe, snapshot.findings).parts[0] ?? { ingredients: [] };
  const bound = ingredientsOf(snapshot);
  const wrong = bound.filter(({ weighed }, at) => (ingredients[at]?.grams !== null) !== weighed.known);
  if (ingredients.length !== bound.length) return [`report: ${ingredients.length} ingredients of ${bound.length}`];
  return wrong.map(({ name }) => `report: the weight of ${name}`);
}

/** Rounded to kitchen measures, twice as much is twice as much within 2 %. */
function scaled(snapshot: Snapshot, again: (text: string) => Snapshot): string[] {
  const result = scaleRecipe(snapshot.document, snapshot.recipe, { kind: 'by', by: 2 });
  if (!result.ok) return [`scale: ${result.why}`];
  return compared('scale', snapshot, again(written(snapshot, result.scaling.edits)), 2, 0.02);
}

function converted(snapshot: Snapshot, again: (text: string) => Snapshot): string[] {
  const { edits } = convertRecipe(snapshot.document, snapshot.recipe, { to: 'weight' });
  return compared('convert', snapshot, again(written(snapshot, edits)), 1, 0.03);
}

function compared(what: string, before: Snapshot, after: Snapshot, by: number, within: number): string[] {
  const text = lineOf(printDocument(after.document));
  if (foods(after) !== foods(before)) return [`${what}: ${foods(before)} became ${foods(after)}, written \`${text}\``];
  const [was, is] = [likely(before), likely(after)];
  if (was === undefined || was === 0) return [];
  // Small weights are written to a tenth of a gram.
  const off = is === undefined ? Number.POSITIVE_INFINITY : Math.abs(is - was * by);
  return off <= Math.max(was * by * within, 0.06)
    ? []
    : [`${what}: ${(was * by).toFixed(1)} g became ${is?.toFixed(1) ?? 'no'} g, written \`${text}\``];
}

function formatted(snapshot: Snapshot, again: (text: string) => Snapshot): string[] {
  const text = `${layout(snapshot.document, snapshot.outline).join('\n')}`;
  const after = again(text);
  const facts = (of: Snapshot): string =>
    JSON.stringify([
      ingredientsOf(of).map((i) => [i.food?.id, i.weighed, i.free, i.optional, i.name.replace(/\s+/g, ' ')]),
      of.findings.open.map((f) => f.code),
    ]);
  return facts(after) === facts(snapshot) ? [] : [`format: other facts, written \`${lineOf(text)}\``];
}

function hovered(snapshot: Snapshot, { line }: PrintedLine): string[] {
  const name = ingredientsOf(snapshot)[0]?.node.name;
  const character = name?.start ?? INDENT + Math.floor(line.length / 2);
  const found = hover(snapshot, { line: LINE, character });
  return found !== undefined && hoverText(found).trim() !== '' ? [] : ['hover: nothing'];
}
