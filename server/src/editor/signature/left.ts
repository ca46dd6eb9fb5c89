/** While a step is typed: what is left of each ingredient of its part once it is done, and which parts nobody has taken yet. */
import { trimmed } from '../../measure/number-text.ts';
import { middle, type Range } from '../../measure/quantity.ts';
import type { LedgerEntry, Part, Recipe } from '../../recipe/model.ts';
import { sayPortion } from '../facts.ts';
import { listOf } from '../words.ts';

/** A list longer than a line or two is not read while typing. */
const MOST = 10;

/** `left: plain flour 200 g, butter 50 g, salt`; undefined in a recipe without a list. `line` is the step's in its part. */
export function leftWords({ heads, parts }: Recipe, part: Part, line: number): string | undefined {
  const own = part.ledger.flatMap((entry) => leftOf(entry, part.index, line) ?? []);
  const before = heads.slice(0, part.index).flatMap(({ name }, index) => {
    const taken = parts[index]?.usesByLater.some(
      ({ use, ingredient }) => ingredient === undefined && isDone(use, part.index, line),
    );
    return name === '' || taken === true ? [] : [name];
  });
  if (part.ledger.length === 0 && before.length === 0) return undefined;
  const all = [...own, ...before];
  if (all.length === 0) return 'left: nothing';
  const more = all.length - MOST;
  return `left: ${more > 0 ? `${all.slice(0, MOST).join(', ')} and ${more} more` : listOf(all)}`;
}

const isDone = (use: { readonly part: number; readonly line: number }, part: number, line: number): boolean =>
  use.part < part || (use.part === part && use.line <= line);

function leftOf({ ingredient, uses, left, unsure }: LedgerEntry, part: number, line: number): string | undefined {
  const next = uses.findIndex((use) => !isDone(use, part, line));
  const rest: Range = next < 0 ? left : (uses[next]?.before ?? left);
  if (rest.high <= NOTHING) return undefined;
  const { name, weighed } = ingredient;
  if (unsure && next < 0) return `some ${name}`;
  if (weighed.known) return `${name} ${sayPortion(ingredient, rest)}`;
  return middle(rest) > 1 - NOTHING ? name : `${name} ${trimmed(middle(rest) * 100, 0)} %`;
}

/** Less than this share is what rounding leaves. */
const NOTHING = 0.02;
