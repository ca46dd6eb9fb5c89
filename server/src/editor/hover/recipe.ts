/** The recipe's name or yield: the whole weight, and what one of the yield weighs. */
import { addRanges } from '../../measure/quantity.ts';
import type { Recipe } from '../../recipe/model.ts';
import { titleOf } from '../../recipe/names/title.ts';
import { figure, incompleteFacts } from '../facts.ts';
import { holds, placeOf } from '../place.ts';
import { sayGrams, saySum } from '../words.ts';
import type { Fact, HoverSource } from './fact.ts';

export const hoverRecipe: HoverSource = (snapshot, { line, at, character }) => {
  const { recipe } = snapshot;
  const { statement, keyword } = line;
  const name = statement.kind === 'recipe' ? titleOf(statement).name : undefined;
  const made = statement.kind === 'yield' ? (statement.of ?? statement.amount) : undefined;
  const end = name ?? made;
  if (keyword === undefined || end === undefined) return undefined;
  const whole = { start: keyword.start, end: end.end };
  if (!holds(whole, character)) return undefined;
  return {
    at: placeOf(at, whole),
    title: name?.text ?? line.text.slice(whole.start, whole.end),
    facts: [...wholeFacts(recipe), ...incompleteFacts(snapshot, recipe.parts)],
  };
};

export function wholeFacts(recipe: Recipe): Fact[] {
  const mass = recipe.parts.reduce((sum, p) => addRanges(sum, p.head.massG), { low: 0, high: 0 });
  const complete = recipe.parts.every((p) => p.head.massG.complete && !p.head.nominal);
  const facts: Fact[] = [];
  if (mass.high > 0) facts.push(figure('Goes in', saySum({ ...mass, complete })));
  const amount = recipe.yield?.node.amount;
  if (amount !== undefined && amount.unit === undefined && amount.quantity.low > 0 && complete && mass.high > 0) {
    const each = { low: mass.low / amount.quantity.high, high: mass.high / amount.quantity.low };
    facts.push(figure('Each', `${sayGrams(each)} before cooking`));
  }
  for (const { head } of recipe.parts) {
    if (head.name !== '' && head.massG.high > 0) facts.push(figure(head.name, saySum(head.massG)));
  }
  return facts;
}
