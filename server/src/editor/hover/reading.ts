/** What was understood of a line as cooks print it: its amounts, which of them counts, what was assumed, and what else may be in it. */
import { ownAmount } from '../../edits/own-form.ts';
import { trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Measures } from '../../measure/systems.ts';
import { baseOf, dimensionOf } from '../../measure/unit.ts';
import { isMass, termsOf } from '../../notation/item-amounts.ts';
import type { BesideNode, IngredientNode, Line, MeasuredNode } from '../../notation/tree.ts';
import { isEach, weighQuantity } from '../../recipe/list/line-weight.ts';
import type { Ingredient, Named, World } from '../../recipe/model.ts';
import { figure } from '../facts.ts';
import { listOf, sayWeight, span } from '../words.ts';
import type { Fact } from './fact.ts';

/** Nothing of a line that says one amount of one food. */
export function readingFacts(line: Line, ingredient: Ingredient, world: World): Fact[] {
  const { node, nameNode, others = [], mayHold = [], takes, shares } = ingredient;
  const { amount, purpose, rest, eachOf, more } = node;
  const facts: Fact[] = [];
  if (amount?.kind === 'measured') facts.push(...amountFacts(line, ingredient, amount, world));
  if (takes !== undefined) facts.push(figure('Taken of it', node.taken?.text ?? 'what the line says, together'));
  if (amount?.kind === 'measured' && (eachOf === true || shares === true))
    facts.push(figure('Each', 'the amount is of every food of the list'));
  if (more !== undefined) facts.push(figure('On this line', `${more.length + 1} items, each with its own amount`));
  if (others.length > 0)
    facts.push(figure('Or', `${listOf(others.map(sayNamed))}, which may be in it; the sums are of ${nameNode.text}`));
  if (mayHold.length > 0) facts.push(figure('May be in it', listOf(mayHold.map(sayNamed))));
  if (rest !== undefined)
    facts.push(
      figure(
        'Taken besides',
        `${rest.amount === undefined ? '' : `${ownAmount(line, rest.amount)}, `}bought with it, and in no sum`,
      ),
    );
  if (purpose !== undefined) facts.push(figure('Meant', purpose.text));
  return facts;
}

const sayNamed = ({ name, match }: Named): string =>
  match.kind === 'food' && match.food.name.toLowerCase() !== name.text.toLowerCase()
    ? `${name.text} (${match.food.name})`
    : name.text;

function amountFacts(line: Line, ingredient: Ingredient, amount: MeasuredNode, world: World): Fact[] {
  const { node, match } = ingredient;
  const facts: Fact[] = [];
  const written = line.text.slice(amount.start, amount.end).trim();
  const read = ownAmount(line, amount);
  const sum = sumText(amount, world.measures);
  if (sum !== undefined || read !== written.replace(/\s+/g, ' '))
    facts.push(figure('Read as', sum === undefined ? read : `${read} = ${sum}`));
  if (amount.low.style === 'implied') facts.push(figure('Assumed', 'one of it: the line gives no number'));
  const { bias } = amount.quantity;
  if (bias !== undefined)
    facts.push(
      figure(
        'Filled',
        bias.low === 1 && bias.high === 1
          ? `${bias.words[0] ?? ''}: as it is measured`
          : `${bias.words[0] ?? ''}: ${span(bias, (n) => trimmed(n, 2))} of a level one, likely ${trimmed(bias.likely, 2)}`,
        bias.source,
      ),
    );
  const { beside = [] } = node;
  const counts = truthOf(node);
  for (const again of beside) {
    const each = isEach(amount, again, match, world);
    const of = each ? ' each' : amount.unit === undefined ? ' in all' : '';
    facts.push(figure('Besides', `${ownAmount(line, again.amount)}${of}${again === counts ? ', which counts' : ''}`));
  }
  if (counts !== undefined) {
    const alone = weighQuantity(amount.quantity, match, world);
    if (alone.known) facts.push(figure(`${read} by itself`, sayWeight(alone), alone.reason.source));
  }
  return facts;
}

/** Which measure beside the amount is taken for the truth: the first weight, else a volume beside a count. */
function truthOf({ amount, beside = [] }: IngredientNode): BesideNode | undefined {
  if (amount?.kind !== 'measured' || isWeight(amount)) return undefined;
  const weight = beside.find(({ amount: again }) => isWeight(again));
  return (
    weight ?? (amount.unit === undefined ? beside.find(({ amount: again }) => again.unit !== undefined) : undefined)
  );
}

const isWeight = (amount: MeasuredNode): boolean =>
  isMass(amount) || (amount.unit === undefined && amount.each !== undefined && isMass(amount.each));

/** What the terms of a sum come to, in g or ml. */
function sumText(amount: MeasuredNode, measures: Measures): string | undefined {
  const terms = termsOf(amount);
  const symbol = terms[0]?.unit?.symbol;
  if (terms.length < 2 || symbol === undefined) return undefined;
  const dimension = dimensionOf(symbol);
  if (dimension !== 'mass' && dimension !== 'volume') return undefined;
  let total: Range = { low: 0, high: 0 };
  for (const { unit, quantity } of terms) {
    const base =
      unit === undefined || dimensionOf(unit.symbol) !== dimension ? undefined : baseOf(unit.symbol, measures);
    if (base === undefined) return undefined;
    total = { low: total.low + quantity.low * base, high: total.high + quantity.high * base };
  }
  return `${span(total, (n) => trimmed(n, n < 10 ? 1 : 0))} ${dimension === 'mass' ? 'g' : 'ml'}`;
}
