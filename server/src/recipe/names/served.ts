/**
 * Knows what the title, the yield and the line on serving say of how a recipe is eaten, from `data/served.tsv`.
 * Refuses to know the steps.
 */

import servedText from '../../../data/served.tsv';
import { once } from '../../measure/once.ts';
import { rowsIn } from '../../measure/table-rows.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Recipe } from '../model.ts';

/** `as it is`: no oven comes after. `portioned`: the yield counts what goes to the table. */
export type Served = 'as it is' | 'portioned' | 'unsaid';

interface Row {
  readonly says: Served;
  readonly words: readonly string[];
}

const ROWS = once((): Readonly<Record<'title' | 'yield', readonly Row[]>> => {
  const cells = rowsIn(servedText);
  const those = (name: string): readonly Row[] =>
    cells.flatMap(([where, says, word = '', also = '']) =>
      where === name
        ? [{ says: says === 'portioned' ? 'portioned' : 'as it is', words: [word, ...also.split(';')] }]
        : [],
    );
  return { title: those('title'), yield: those('yield') };
});

const KEPT = keptOn<Recipe, Served>();

export function servedAs(recipe: Recipe): Served {
  let kept = KEPT.get(recipe);
  if (kept === undefined) {
    const isServed = recipe.outline.head.some(
      ({ line: { statement } }) => statement.kind === 'text' && statement.field === 'serve',
    );
    kept = isServed
      ? 'as it is'
      : (saidIn(recipe.name, ROWS().title) ?? saidIn(recipe.yield?.node.of?.text ?? '', ROWS().yield) ?? 'unsaid');
    KEPT.set(recipe, kept);
  }
  return kept;
}

/** Who eats of what says nothing of that (judgement). */
const FEW = 4;

/** How many eat of it at the least, by what the yield counts: portions, or what several share. */
export function eatersOf({ yield: made }: Recipe): number {
  const { amount, of, serves } = made?.node ?? {};
  if (amount === undefined) return FEW;
  const noun = of?.text ?? amount.unit?.symbol ?? '';
  const isPortioned = serves === true || saidIn(noun, ROWS().yield) === 'portioned';
  if (amount.unit !== undefined && !isPortioned) return FEW;
  const count = amount.quantity.low;
  return isPortioned ? Math.max(1, count) : Math.max(FEW, count);
}

function saidIn(text: string, of: readonly Row[]): Served | undefined {
  const padded = ` ${text.toLowerCase()} `;
  return of.find(({ words }) => words.some((word) => padded.includes(` ${word} `)))?.says;
}
