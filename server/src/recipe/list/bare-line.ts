/**
 * Knows which lines without an amount in front are ingredients all the same: `salt and pepper`, `oil for frying`, `Butter, 4 oz`.
 * Refuses whatever it cannot account for: such a line stays unread.
 */
import { type FoodClass, type FoodMatch, foodsOf } from '../../food/food.ts';
import { dimensionOf } from '../../measure/unit.ts';
import type { IngredientNode, Line, MeasuredNode, Statement } from '../../notation/tree.ts';
import { gearNamed } from '../../prose/gear-named.ts';
import { verbNamed } from '../../prose/verb-named.ts';
import type { Ingredient, World } from '../model.ts';
import { bindIngredients } from './ingredient.ts';

/** What is added to taste, said or not. */
export const SEASONING: ReadonlySet<FoodClass> = new Set<FoodClass>(['salt', 'spice', 'dried herb']);

/** Nobody measures what is sprayed on a pan, nor the ice in a glass or a bath. */
const UNMEASURED: ReadonlySet<string> = new Set(['oil-spray', 'ice']);

/** The ingredients of a line that opens with a name; none where it is no such line. */
export function bindBare(bare: IngredientNode, line: number, world: World): Ingredient[] {
  const { name, amount, purpose } = bare;
  if (name === undefined || name.text.length > LONGEST_NAME) return [];
  if (amount === undefined && SENTENCE.test(`${name.text} ${bare.preparation?.text.replace(/\bq\. ?s\.$/i, '') ?? ''}`))
    return [];
  const found = bindIngredients(bare, line, world);
  const measured = amount?.kind === 'measured';
  if (found.length === 0) return [];
  if (found.some(({ match }) => !isWhole(match)) && !(measured && isCertain(amount, name.text))) return [];
  const meant =
    measured ||
    purpose !== undefined ||
    bare.optional !== undefined ||
    found.every(({ match }) => foodsOf(match).some((food) => SEASONING.has(food.class) || UNMEASURED.has(food.id)));
  if (!meant) return [];
  return found.map((i) => ({ ...i, bare: true as const, ...(measured ? {} : { free: true }) }));
}

/** Every word is accounted for. */
const isWhole = (match: FoodMatch): boolean =>
  match.kind !== 'unknown' && (match.kind !== 'food' || match.unread === undefined);

/** `Codfish, picked, 1 cup`: nothing but an ingredient is weighed or measured so, whatever it is called. */
function isCertain({ unit, each }: MeasuredNode, name: string): boolean {
  const dimension = unit === undefined ? undefined : dimensionOf(unit.symbol);
  const verb = verbNamed(name);
  return (dimension === 'mass' || dimension === 'volume' || each !== undefined) && (verb === undefined || verb.noun);
}

const LONGEST_NAME = 60;
/** `Butter the tin.` orders something. */
const SENTENCE = /[.!?]\s*$|^\S+ (?:the|it|them|a|an|in|on|over|up|until|well|together|with)\b/i;

/** Whether the line could not be read by its opening, and is an ingredient all the same. */
export function isBareLine({ statement }: Line, world: World): boolean {
  const bare = bareIn(statement);
  return bare !== undefined && bindBare(bare, 0, world).length > 0;
}

/** Whether the line could not be read by its opening, and lists a thing that is no food: nothing of it is weighed or eaten. */
export function isGearLine({ statement, faults }: Line, { book }: World): boolean {
  if (
    statement.kind !== 'unread' ||
    faults.some(({ code, write }) => code !== 'not-a-statement' || write !== undefined)
  )
    return false;
  const { text } = statement.words;
  return (
    text.length <= LONGEST_NAME &&
    !/\d/.test(text) &&
    !SENTENCE.test(text) &&
    gearNamed(text) &&
    book.findInText(text).kind === 'unknown'
  );
}

/** What is added to a base without an amount is read as on a list. */
function bareIn(statement: Statement): IngredientNode | undefined {
  if (statement.kind === 'unread') return statement.bare;
  return statement.kind === 'add' && statement.ingredient.amount === undefined ? statement.ingredient : undefined;
}
