/**
 * Knows which lines of a list are of a plant or other food that holds a poison of its own, and what makes that safe, from
 * `data/natural-toxins.tsv`.
 * Refuses to know what the steps do with it.
 */
import toxinsText from '../../../data/natural-toxins.tsv';
import { once } from '../../measure/once.ts';
import { rowsIn, wordsIn } from '../../measure/table-rows.ts';
import { keptOn } from '../../notation/kept.ts';
import { isNamedAs, isOneOf, lineWords, mayBeOf } from '../listed-name.ts';
import type { Ingredient } from '../model.ts';
import { wordsOf } from '../words.ts';
import { listedAs } from './families.ts';

/** What takes the poison out, or whether anything does. */
const REMEDIES = ['boil', 'cook', 'peel', 'leach', 'dose', 'never'] as const;
export type Remedy = (typeof REMEDIES)[number];
const GRAVITIES = ['error', 'warning', 'ask'] as const;
export type Gravity = (typeof GRAVITIES)[number];

export interface Toxin {
  readonly toxin: string;
  readonly safe: Remedy;
  /** Minutes; 0 where any heat that goes through it is enough. */
  readonly leastMin: number;
  /** So long it is heated in all, where it is not only boiled; 0 where that does not matter. */
  readonly wholeMin: number;
  /** Of what is safe in some grams, as many for each who eats. */
  readonly grams: number;
  /** How grave it is that it is eaten as it is, and that what is done is not enough. */
  readonly raw: Gravity;
  readonly short: Gravity;
  /** `a lectin that …` */
  readonly holds: string;
  /** `boil them for 30 min` */
  readonly remedy: string;
  readonly source: string;
}

interface Row extends Toxin {
  readonly foods: ReadonlySet<string>;
  readonly names: readonly (readonly string[])[];
  readonly marks: ReadonlySet<string>;
  readonly not: ReadonlySet<string>;
}

/** The rows of words for parts of a plant, and for what was made safe before it was bought. */
const PARTS = 'parts';
const BOUGHT = 'bought';

interface Table {
  readonly rows: readonly Row[];
  readonly mayHold: (ingredient: Ingredient) => boolean;
  readonly parts: ReadonlySet<string>;
  readonly bought: ReadonlySet<string>;
}

const TABLE = once(read);

function read(): Table {
  const parts = new Set<string>();
  const bought = new Set<string>();
  const rows: Row[] = [];
  for (const cells of rowsIn(toxinsText)) {
    const [toxin = '', foods, words, marks, not, safe, least, grams, raw, short, holds = '', remedy = '', source = ''] =
      cells;
    if (toxin === PARTS || toxin === BOUGHT)
      for (const word of wordsIn(words)) (toxin === PARTS ? parts : bought).add(word);
    else
      rows.push({
        toxin,
        foods: new Set(wordsIn(foods)),
        names: wordsIn(words).map(wordsOf),
        marks: new Set(wordsIn(marks)),
        not: new Set(wordsIn(not)),
        safe: oneOf(REMEDIES, safe, 'never'),
        leastMin: Number(least?.split(';')[0]),
        wholeMin: Number(least?.split(';')[1] ?? 0),
        grams: Number(grams),
        raw: oneOf(GRAVITIES, raw, 'error'),
        short: oneOf(GRAVITIES, short, 'error'),
        holds,
        remedy,
        source,
      });
  }
  return { rows, mayHold: mayBeOf(rows), parts, bought };
}

const oneOf = <T extends string>(all: readonly T[], word: string | undefined, other: T): T =>
  all.find((each) => each === word) ?? other;

const KEPT = keptOn<Ingredient, Toxin | 'none'>();

/** The poison of its own that an ingredient holds, as it is listed. */
export function toxinOf(ingredient: Ingredient): Toxin | undefined {
  let kept = KEPT.get(ingredient);
  if (kept === undefined) {
    kept = find(ingredient) ?? 'none';
    KEPT.set(ingredient, kept);
  }
  return kept === 'none' ? undefined : kept;
}

function find(ingredient: Ingredient): Toxin | undefined {
  const { rows, mayHold, parts, bought } = TABLE();
  if (!mayHold(ingredient)) return undefined;
  let line: readonly string[] | undefined;
  return rows.find(({ foods, names, marks, not, safe }) => {
    if (!isOneOf(ingredient, foods) && !isNamedAs(ingredient, names, parts)) return false;
    line ??= lineWords(ingredient);
    const isBought = listedAs(ingredient).has('cooked') || line.some((word) => bought.has(word));
    if (safe !== 'never' && isBought) return false;
    return !line.some((word) => not.has(word)) && (marks.size === 0 || line.some((word) => marks.has(word)));
  });
}
