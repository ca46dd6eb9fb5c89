/**
 * Knows which lines of a list are not understood: what they would bring is missing from every sum of their part.
 * Refuses to say what to write instead: that is the finding's.
 */
import { keptOn } from '../../notation/kept.ts';
import type { Outline, PartSource } from '../../notation/outline.ts';
import type { Line, StatementKind } from '../../notation/tree.ts';
import { withoutComment } from '../../notation/without-comment.ts';
import { verbNamed } from '../../prose/verb-named.ts';
import type { Ingredient, PartHead, Recipe, World } from '../model.ts';
import { isGearLine } from './bare-line.ts';
import { unitMisspelled } from './unit-spelling.ts';

/** Why a line with an ingredient on it is not understood, in the order in which that is found; each is a finding of its own. */
const REFUSALS: readonly ((ingredient: Ingredient, world: World) => boolean)[] = [
  (ingredient, world) => unitMisspelled(ingredient, world) !== undefined,
  leavesFigure,
];

const REFUSED = keptOn<Ingredient, boolean>();

/** An ingredient is of one world. */
function isRefused(ingredient: Ingredient, world: World): boolean {
  let refused = REFUSED.get(ingredient);
  if (refused === undefined) {
    refused = REFUSALS.some((refuses) => refuses(ingredient, world));
    REFUSED.set(ingredient, refused);
  }
  return refused;
}

/** A digit in a name that the book and the house do not have is an amount that nobody read: `boxes 3 1/2 sugar`. */
export function leavesFigure({ nameNode }: Ingredient, { book }: World): boolean {
  const { text } = nameNode;
  if (!mayHaveFigure(text)) return false;
  return /[\p{Nd}\p{No}]/u.test(text.replace(CUT, '')) && !STRENGTH.test(text) && !book.knows(text);
}

/** A digit, or a letter that is no plain one. */
function mayHaveFigure(text: string): boolean {
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code > LAST_PLAIN || (code >= ZERO && code <= NINE)) return true;
  }
  return false;
}
const [ZERO, NINE, LAST_PLAIN] = [48, 57, 127];

/** `cut in 1/4-inch slices`: how large, and not how much. */
const CUT =
  /(?:[\p{Nd}\p{No}./⁄-]*[\p{Nd}\p{No}]-? ?(?:to|or|[-–]) ?)?[\p{Nd}\p{No}./⁄-]*[\p{Nd}\p{No}][\s-]*(?:inch(?:es)?|in|cm|mm|centimet(?:re|er)s?)(?!\p{L})/giu;

/** `70 % chocolate`, `vinegar 5%`, `7-grain cereal`, `type 405 flour`, `T55 flour`, `shrimp 16/20`: a figure that says what the food is. */
const STRENGTH =
  /^\D*\d+(?:[.,]\d+)?(?:\s*%|-[a-z]+\b)[^\d]*$|\btype \d+\b|^(?:\D*\s)?[A-Z]\d{2,4}(?:\s\D*)?$|^\D+ \d{1,2}\/\d{2}$/i;

/** The lines of a part's list that are not understood, from 0, in their order; the same empty list where all are. */
export function notUnderstoodIn(
  { lines }: PartSource,
  ingredients: readonly Ingredient[],
  world: World,
): readonly number[] {
  let found: Set<number> | undefined;
  let inSteps = false;
  const isBare = (line: number) => ingredients.some((i) => i.bare === true && i.line === line);
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at] as Line;
    if (line.statement.kind === 'step') inSteps = true;
    if (
      (line.faults.length > 0 && isOfList(line, inSteps, world) && !isBare(at) && !isGearLine(line, world)) ||
      isNameless(line)
    ) {
      found ??= new Set();
      found.add(at);
    }
  }
  for (const ingredient of ingredients) {
    if (!isRefused(ingredient, world)) continue;
    found ??= new Set();
    found.add(ingredient.line);
  }
  return found === undefined ? NONE : [...found].sort((a, b) => a - b);
}

const NONE: readonly never[] = [];

/** `100 g` and nothing else. */
const isNameless = ({ statement }: Line): boolean => statement.kind === 'ingredient' && statement.name === undefined;

const LISTING: ReadonlySet<StatementKind> = new Set<StatementKind>(['ingredient', 'add']);

/** Whether a line with a fault was meant for the list. */
function isOfList(line: Line, inSteps: boolean, world: World): boolean {
  const { statement } = line;
  if (statement.kind !== 'unread') return LISTING.has(statement.kind);
  const [fault] = line.faults;
  switch (fault?.code) {
    // Both sides of an unfinished merge are read, and one of them is too much.
    case 'conflict-mark':
    // What is below it is in no sum.
    case 'too-many-lines':
      return true;
    case 'capital-keyword':
      return fault.write === 'optional' || fault.write === 'add';
    case 'not-a-statement':
      return isFood(statement.words.text, inSteps, fault.write, world);
    default:
      return !inSteps;
  }
}

/** `Butter, 4 oz` and `pinch of salt`, and neither `Toast the oats.` nor `Serves 4`. */
function isFood(words: string, inSteps: boolean, write: string | undefined, world: World): boolean {
  if (/[.!?:]$/.test(words) || write?.startsWith('yield ')) return false;
  const [name = ''] = words.split(',');
  if (name.length <= LONGEST_NAME && world.book.findInText(name).kind !== 'unknown') return true;
  const verb = verbNamed(words);
  if (verb !== undefined && !verb.noun) return false;
  return !inSteps || (write !== undefined && !write.startsWith('do '));
}

const LONGEST_NAME = 60;

/** Whether every line of every list is understood. */
export const isUnderstood = ({ parts }: Recipe): boolean => parts.every(({ head }) => head.notUnderstood.length === 0);

/** The lines of a list, as written, on which not even a name is understood. */
export function namelessLines({ notUnderstood, ingredients, source }: PartHead): readonly string[] {
  if (notUnderstood.length === 0) return NONE;
  const named = new Set(ingredients.map(({ line }) => line));
  return notUnderstood.flatMap((line) => (named.has(line) ? [] : [withoutComment(source.lines[line])]));
}

/** A line that a page of the recipe would be without, or show without knowing what it says. */
export interface UnreadLine {
  /** The line's number in the document, from 0. */
  readonly at: number;
  /** As written. */
  readonly text: string;
  /** The part in whose list it stands, and whose sums lack it. */
  readonly part?: number;
}

/** The lines of a recipe, its head and its parts, that are not understood; those of trials, foods and what is accepted are none of it. */
export function linesNotUnderstood({ outline, parts, partsAt }: Recipe): readonly UnreadLine[] {
  const listed = new Map(
    parts.flatMap(({ head, index }) => head.notUnderstood.map((line) => [(partsAt[index] ?? 0) + line, index])),
  );
  const misplaced = new Set(outline.misplaced.map(({ at }) => at));
  const understood = new Set([...linesBeside(outline), ...bareLines({ parts, partsAt })]);
  return outline.lines.flatMap((line, at): readonly UnreadLine[] => {
    const { faults } = line;
    const part = listed.get(at);
    if (part !== undefined) return [{ at, text: withoutComment(line), part }];
    return (faults.length > 0 || misplaced.has(at)) && !understood.has(at)
      ? [{ at, text: withoutComment(line) }]
      : NONE;
  });
}

/** Lines of the document that open with a name and are ingredients all the same. */
export const bareLines = ({ parts, partsAt }: Pick<Recipe, 'parts' | 'partsAt'>): readonly number[] =>
  parts.flatMap(({ head, index }) =>
    head.ingredients.flatMap((i) => (i.bare === true ? [(partsAt[index] ?? 0) + i.line] : [])),
  );

function linesBeside({ trials, foods, allows }: Outline): ReadonlySet<number> {
  const ofBlocks = [...trials, ...foods].flatMap(({ at, lines }) => lines.map((_, i) => at + i));
  return new Set([...ofBlocks, ...allows.map(({ at }) => at)]);
}
