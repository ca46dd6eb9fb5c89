/**
 * Knows how one food of a list is swapped for its equivalent, as edits of the list and of the steps.
 * Refuses a swap that the steps could not tell from another line.
 */
import type { Equivalent } from '../food/equivalents.ts';
import { kitchenGrams } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import type { Document } from '../notation/document.ts';
import { statedSpan, takesOf } from '../notation/item-amounts.ts';
import type { Ingredient, Part, Recipe } from '../recipe/model.ts';
import { wordsOf } from '../recipe/words.ts';
import { grownBy, keepColumn } from './amount-text.ts';
import { isOnOwnLine, lineOf, newLine } from './list-line.ts';
import { dropped, saidBehind } from './said-behind.ts';
import { setCount, setGrams } from './set-amount.ts';
import { mentionEdits, unsaid } from './swap-in-steps.ts';
import { type Move, movesOf } from './swap-moves.ts';
import { type Amount, type Change, gramsOf, isUsedUp, planOf } from './swap-plan.ts';
import { deleteLine, insertLineAfter, replaceSpan, type TextEdit } from './text-edit.ts';

export interface Substitution {
  readonly equivalent: Equivalent;
  /** `Swap the butter for 120 g unsalted butter, with 2 g more salt`. */
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** What the part holds before and after; empty where the composition of a line is not known. */
  readonly moves: readonly Move[];
  readonly said: readonly string[];
}

/** The swap as edits of the list and of the steps; undefined where it cannot be made. */
export function substitute(
  document: Document,
  recipe: Recipe,
  part: Part,
  ingredient: Ingredient,
  equivalent: Equivalent,
): Substitution | undefined {
  const { node, weighed, food } = ingredient;
  if (food === undefined || !weighed.known || ingredient.percent !== undefined) return undefined;
  if (node.amount?.kind !== 'measured' || node.bought !== undefined || node.name === undefined) return undefined;
  if (node.name.start < node.amount.end || !isOnOwnLine(part, ingredient)) return undefined;
  if (takesOf(node) !== undefined || node.rest !== undefined || ingredient.others !== undefined) return undefined;
  if (equivalent.form !== undefined && equivalent.form !== formOf(ingredient)) return undefined;
  const plan = planOf(recipe, part, ingredient, equivalent);
  if (plan === undefined) return undefined;
  const { amounts, changes } = plan;
  if (amounts.some((a) => clashes(part, ingredient, a.name))) return undefined;
  const edits = listEdits(document, recipe, part, ingredient, amounts);
  const added: Amount[] = amounts.slice(1);
  for (const change of changes) {
    if (change.line === undefined) {
      const grams = kitchenGrams(change.deltaG);
      const amount = { food: change.food, name: change.name, grams, text: `${trimmed(grams, 2)} g` };
      edits.push(
        insertLineAfter(
          document,
          lineOf(recipe, part, ingredient),
          newLine(document, recipe, part, ingredient, amount.text, amount.name),
        ),
      );
      added.push(amount);
    } else if (isUsedUp(change) && !isOnOwnLine(part, change.line)) return undefined;
    else if (isUsedUp(change))
      edits.push(
        deleteLine(document, lineOf(recipe, part, change.line)),
        ...unsaid(document, recipe, part, change.line),
      );
    else edits.push(...changed(recipe, part, change, change.line, equivalent));
  }
  const [main] = amounts;
  if (main === undefined) return undefined;
  const entry = part.ledger.find((e) => e.ingredient === ingredient);
  for (const use of entry?.uses ?? []) edits.push(...mentionEdits(document, recipe, use, main, added));
  return {
    equivalent,
    title: `${titleOf(ingredient, amounts, changes)}${equivalent.aside === undefined ? '' : ` (${equivalent.aside})`}`,
    edits,
    moves: movesOf(part, ingredient, amounts, changes),
    said: equivalent.said === undefined ? [] : [equivalent.said],
  };
}

/** Another line whose name ends in the new one, or in which the new one ends: the steps could not tell them apart. */
function clashes(part: Part, but: Ingredient, name: string): boolean {
  const words = wordsOf(name).join(' ');
  return part.head.ingredients.some((i) => {
    const other = wordsOf(i.name).join(' ');
    return i !== but && (` ${other}`.endsWith(` ${words}`) || ` ${words}`.endsWith(` ${other}`));
  });
}

const formOf = ({ name, node }: Ingredient): 'sheets' | 'powder' => {
  const count = node.amount?.kind === 'measured' ? node.amount.quantity.count : undefined;
  return count === 'sheet' || count === 'leaf' || wordsOf(name).some((w) => w === 'sheet' || w === 'leaf')
    ? 'sheets'
    : 'powder';
};

function listEdits(
  document: Document,
  recipe: Recipe,
  part: Part,
  ingredient: Ingredient,
  amounts: readonly Amount[],
): TextEdit[] {
  const line = lineOf(recipe, part, ingredient);
  const { text } = document.lines[line] ?? { text: '' };
  const { amount, name } = ingredient.node;
  const stated = statedSpan(ingredient.node);
  const [main, ...more] = amounts;
  if (amount === undefined || stated === undefined || name === undefined || main === undefined) return [];
  const { end } = stated;
  const put = replaceSpan(line, { start: amount.start, end }, main.text);
  const edits = [
    put,
    ...keepColumn(line, text, end, grownBy([put])),
    ...dropped(line, saidBehind(text, ingredient.node)),
  ];
  if (name.text !== main.name) edits.push(replaceSpan(line, name, main.name));
  for (const { text: of, name: named } of more)
    edits.push(insertLineAfter(document, line, newLine(document, recipe, part, ingredient, of, named)));
  return edits;
}

/** The other line with more or less on it. */
function changed(
  recipe: Recipe,
  part: Part,
  { deltaG }: Change,
  line: Ingredient,
  { byPiece }: Equivalent,
): readonly TextEdit[] {
  const left = gramsOf(line) + deltaG;
  const amount = line.node.amount;
  if (byPiece === true && amount?.kind === 'measured' && amount.unit === undefined)
    return setCount(recipe, part.index, line, Math.round((amount.low.value * left) / gramsOf(line)))?.edits ?? [];
  return setGrams(recipe, part.index, line, kitchenGrams(left))?.edits ?? [];
}

function titleOf({ name }: Ingredient, amounts: readonly Amount[], changes: readonly Change[]): string {
  const what = amounts.map((a) => `${a.text} ${a.name}`);
  const news = changes
    .filter((c) => c.line === undefined)
    .map((c) => `${trimmed(kitchenGrams(c.deltaG), 2)} g ${c.name}`);
  const all = [...what, ...news];
  const list = all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
  const gone = changes.filter(isUsedUp).map((c) => ` and ${c.name}`);
  const others = changes
    .filter((c) => c.line !== undefined && !isUsedUp(c))
    .map((c) => `${trimmed(kitchenGrams(Math.abs(c.deltaG)), 2)} g ${c.deltaG < 0 ? 'less' : 'more'} ${c.name}`);
  return `Swap the ${name}${gone.join('')} for ${list}${others.length === 0 ? '' : `, with ${others.join(' and ')}`}`;
}
