/** After an amount: units first, then foods of the book, the house's before the others. */

import type { FoodBook } from '../../food/book.ts';
import type { Food } from '../../food/food.ts';
import { isForeign } from '../../food/language.ts';
import { likelyGrams } from '../../food/weigh.ts';
import { countWord } from '../../measure/count-words.ts';
import { gramsText } from '../../measure/number-text.ts';
import { onceByObject } from '../../measure/once.ts';
import { unitSpelled } from '../../measure/unit.ts';
import type { UnitSymbol } from '../../measure/unit-symbol.ts';
import type { World } from '../../recipe/model.ts';
import { all, type Completion, type Completions, NOTHING, type Typing } from './item.ts';
import { units, unitsFor } from './unit.ts';

const NUMBER = String.raw`(?:\d+(?:\.\d+)?(?:\s+\d+\s*[/⁄]\s*\d+|\s*[/⁄]\s*\d+)?(?:\s*[½⅓⅔¼¾⅛⅜⅝⅞])?|[½⅓⅔¼¾⅛⅜⅝⅞])`;
/** What may stand before an amount. */
const AHEAD = String.raw`(?:optional\s+|add\s+|swap\s.*?\sfor\s+)?`;
const AMOUNT = new RegExp(`^\\s*${AHEAD}(?:about\\s+)?${NUMBER}(?:\\s*(?:-|–|to)\\s*${NUMBER})?`, 'u');
const FREE = new RegExp(`^\\s*${AHEAD}(?:to taste|as needed)\\s+`, 'iu');
const SIZES = new Set(['small', 'medium', 'large', 'jumbo', 'extra']);
/** What nearly every recipe is made of comes first. */
const STAPLES: ReadonlySet<Food['class']> = new Set([
  'flour',
  'sugar',
  'fat',
  'oil',
  'milk',
  'cream',
  'egg',
  'salt',
  'water',
  'yeast',
  'leavening',
]);
const MOST = 50;

export function completeIngredient(typing: Typing): Completions {
  const { before, character, line, snapshot } = typing;
  const free = FREE.exec(before);
  if (free !== null) return foods(typing, before.slice(free[0].length));
  const amount = AMOUNT.exec(before);
  if (amount === null) return NOTHING;
  const rest = before.slice(amount[0].length);
  if (/[,(=]|\sfrom\s/.test(rest)) return NOTHING;
  const word = /^(\s*)(\S*)$/u.exec(rest);
  if (word !== null) {
    const [, gap = '', typed = ''] = word;
    const listed = line.statement.kind === 'ingredient' ? line.statement.name : undefined;
    const after = listed !== undefined && listed.start >= character ? listed.text : undefined;
    const match = after === undefined ? undefined : snapshot.house.world.book.find(after);
    const fit = units(
      unitsFor(match?.kind === 'food' ? match.food : undefined),
      character - typed.length,
      character,
      gap === '',
    );
    const found = after === undefined && gap !== '' ? foods(typing, typed) : NOTHING;
    const starting = fit.items.filter((u) => u.label.startsWith(typed.toLowerCase()));
    return { items: [...starting, ...found.items], incomplete: true };
  }
  return foods(typing, withoutUnit(rest.trimStart()));
}

/** What is typed of the food's name, after unit, size and count word. */
function withoutUnit(rest: string): string {
  const match = /^(\S+)\s+(.*)$/su.exec(rest);
  const [, first = '', after = ''] = match ?? [];
  const skips =
    unitSpelled(first) !== undefined ||
    SIZES.has(first.toLowerCase()) ||
    countWord(first) !== undefined ||
    /^fl\.?$|^%$|^of$/i.test(first);
  return match !== null && skips ? withoutUnit(after) : rest;
}

export function completeLike(typing: Typing): Completions {
  const match = /^\s*like\s+(.*)$/su.exec(typing.before);
  return match === null ? NOTHING : foods(typing, match[1] ?? '');
}

interface Row {
  readonly food: Food;
  readonly name: string;
  readonly lower: string;
  readonly house: boolean;
}

/** Every name of every food, in the order of the alphabet; a food of the house hides what the book calls the same. */
const rowsOf = onceByObject((book: FoodBook): readonly Row[] => {
  const rows = book
    .all()
    .flatMap((food) =>
      [...new Set([food.name, ...food.names])].map(
        (name): Row => ({ food, name, lower: name.toLowerCase().replaceAll('-', ' '), house: food.house === true }),
      ),
    );
  const ofHouse = new Set(rows.flatMap(({ house, lower }) => (house ? [lower] : [])));
  return rows.filter(({ house, lower }) => house || !ofHouse.has(lower)).sort((a, b) => (a.lower < b.lower ? -1 : 1));
});

/** What the largest measure that the book has of a food weighs in the house: `1 cup = 125 g`. */
function measureOf(food: Food, { book, measures }: World): string[] {
  const unit = MEASURES.find((symbol) => food.measures.some((m) => m.unit === symbol));
  if (unit === undefined) return [];
  const weighed = book.weigh(food, { low: 1, high: 1, about: false, unit }, measures);
  return weighed.known ? [`1 ${unit} = ${gramsText(likelyGrams(weighed))} g`] : [];
}

const MEASURES = ['cup', 'tbsp', 'tsp'] as const satisfies readonly UnitSymbol[];

/** Foods of which a name, or a word of it, starts as typed; one entry a food and match. */
function foods({ snapshot, character }: Typing, typed: string): Completions {
  const lower = typed.toLowerCase().replaceAll('-', ' ');
  if (!/\p{L}/u.test(lower)) return NOTHING;
  const ranked: { row: Row; rank: number }[] = [];
  const { book, language } = snapshot.house.world;
  for (const row of rowsOf(book)) {
    const rank = row.lower.startsWith(lower) ? 0 : row.lower.includes(` ${lower}`) ? 1 : -1;
    if (rank < 0) continue;
    const ahead =
      (row.house ? 2 : 0) +
      (STAPLES.has(row.food.class) ? 0.25 : 0) -
      (row.name === row.food.name ? 0 : 0.5) -
      (language !== undefined && isForeign(row.food, row.name, language) ? 1 : 0);
    ranked.push({ row, rank: rank - ahead });
  }
  ranked.sort((a, b) => a.rank - b.rank || a.row.name.length - b.row.name.length);
  const start = character - typed.length;
  const items = ranked.slice(0, MOST).map(
    ({ row: { food, name } }): Completion => ({
      label: name,
      kind: 'food',
      detail: [name === food.name ? food.class : food.name, ...measureOf(food, snapshot.house.world)].join(', '),
      start,
      end: character,
      text: name,
      // Typed `all-p` finds `all purpose flour`.
      filter: typed.includes('-') && !name.includes('-') ? `${typed} ${name}` : name,
      food: food.id,
    }),
  );
  return { ...all(items), incomplete: true };
}
