/**
 * Knows how the ledger of one ingredient is written out: what the list provides, what each step takes, what is left after it.
 */
import { gramsText, percentRange } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { gramsOf } from '../../recipe/measures/brought.ts';
import type { LedgerEntry, Recipe } from '../../recipe/model.ts';
import { plainTable } from '../sum-table.ts';

export function ledgerSum({ ingredient, uses, left }: LedgerEntry, { partsAt }: Recipe): string[] {
  const wholeG = gramsOf(ingredient);
  const amount = ({ low, high }: Range): string => {
    const [least, most] = [gramsText(low * wholeG), gramsText(high * wholeG)];
    return wholeG === 0 ? percentRange(low, high) : least === most ? `${least} g` : `${least} to ${most} g`;
  };
  return plainTable(
    [ingredient.name, 'takes', 'leaves'],
    [
      ['the list', '', amount({ low: 1, high: 1 })],
      ...uses.map((use, i) => [
        `line ${(partsAt[use.part] ?? 0) + use.line + 1}`,
        amount(use.taken),
        amount(uses[i + 1]?.before ?? left),
      ]),
    ],
  );
}
