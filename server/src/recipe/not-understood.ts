/**
 * Knows which lines of a list are not understood: what they would bring is missing from every sum of their part.
 * Refuses to say what to write instead: that is the finding's.
 */
import type { PartSource } from '../notation/outline.ts';
import type { Line, StatementKind } from '../notation/tree.ts';
import { isBareLine } from './bare-line.ts';
import type { Ingredient } from './ingredient.ts';
import { unitMisspelled } from './unit-spelling.ts';
import { verbClass } from './verbs.ts';
import type { World } from './world.ts';

/** Why a line with an ingredient on it is not understood, in the order in which that is found; each is a finding of its own. */
const REFUSALS: readonly ((ingredient: Ingredient, world: World) => boolean)[] = [
  (ingredient, world) => unitMisspelled(ingredient, world) !== undefined,
  leavesFigure,
];

/** A digit in a name that the book and the house do not have is an amount that nobody read: `boxes 3 1/2 sugar`. */
export function leavesFigure({ nameNode, match }: Ingredient, { book }: World): boolean {
  const { text } = nameNode;
  return /[\d½⅓⅔¼¾⅛]/.test(text) && !STRENGTH.test(text) && match.kind === 'unknown' && !book.knows(text);
}

/** `70 % chocolate`, `vinegar 5%`, `7-grain cereal`, `type 405 flour`: a figure that says what the food is. */
const STRENGTH = /^\D*\d+(?:[.,]\d+)?(?:\s*%|-[a-z]+\b)[^\d]*$|\btype \d+\b/i;

/** The lines of a part's list that are not understood, from 0, in their order; the same empty list where all are. */
export function notUnderstoodIn(
  { lines }: PartSource,
  ingredients: readonly Ingredient[],
  world: World,
): readonly number[] {
  let found: Set<number> | undefined;
  let inSteps = false;
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at] as Line;
    if (line.statement.kind === 'step') inSteps = true;
    const faulty = line.faults.length > 0 && isOfList(line, inSteps, world) && !isBareLine(line, world);
    if (faulty || isNameless(line)) {
      found ??= new Set();
      found.add(at);
    }
  }
  for (const ingredient of ingredients) {
    if (!REFUSALS.some((refuses) => refuses(ingredient, world))) continue;
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
  if (name.length <= LONGEST_NAME && world.book.find(name).kind !== 'unknown') return true;
  const [first = ''] = words.split(' ');
  if (verbClass(first.toLowerCase()) !== undefined) return false;
  return !inSteps || (write !== undefined && !write.startsWith('do '));
}

const LONGEST_NAME = 60;
