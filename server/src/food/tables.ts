/**
 * Knows how the food tables under `server/data/foods/` are written and reads them into foods.
 * Refuses to know how a food is found or weighed.
 */
import ambiguousText from '../../data/foods/ambiguous.tsv';
import bakingText from '../../data/foods/baking.tsv';
import dairyText from '../../data/foods/dairy.tsv';
import drinksText from '../../data/foods/drinks-and-condiments.tsv';
import fruitText from '../../data/foods/fruit.tsv';
import grainsText from '../../data/foods/grains.tsv';
import herbsText from '../../data/foods/herbs.tsv';
import measuresText from '../../data/foods/measures.tsv';
import meatText from '../../data/foods/meat-and-fish.tsv';
import nutsText from '../../data/foods/nuts-and-pulses.tsv';
import piecesText from '../../data/foods/pieces.tsv';
import trimText from '../../data/foods/trim.tsv';
import vegetablesText from '../../data/foods/vegetables.tsv';
import { type CountWord, countWord, exactly, type Range, type Size } from '../measure/quantity.ts';
import { unitSpelled } from '../measure/unit.ts';
import { allergensOf } from './allergens.ts';
import type { Composition, Food, FoodClass, HouseholdMeasure, PieceWeight, Role } from './food.ts';

/** The foods of a class with the foods of another stand in one file; the order is that of the book. */
const FOOD_TABLES = [
  bakingText,
  dairyText,
  vegetablesText,
  herbsText,
  fruitText,
  meatText,
  nutsText,
  grainsText,
  drinksText,
];

const COMPONENTS = [
  'water',
  'protein',
  'fat',
  'saturates',
  'carbohydrate',
  'sugars',
  'sucrose',
  'lactose',
  'glucose',
  'fructose',
  'starch',
  'fibre',
  'ash',
  'alcohol',
  'acid',
  'sodium',
] as const satisfies readonly (keyof Composition)[];
const FIRST_COMPONENT = 8;

/** All foods, in the order of the tables. */
export function readFoods(): readonly Food[] {
  const measures = rowsById(measuresText);
  const pieces = rowsById(piecesText);
  const trims = rowsById(trimText);
  return FOOD_TABLES.flatMap((text) => tableRows(text).map((cells) => foodOf(cells, measures, pieces, trims)));
}

/** Words that could be two foods, with the ids of the foods, likeliest first. */
export function readAmbiguous(): readonly { readonly word: string; readonly ids: readonly string[] }[] {
  return tableRows(ambiguousText).map((cells) => ({ word: cells[0] ?? '', ids: listOf(cells[1]) }));
}

type Cells = readonly string[];
type Rows = ReadonlyMap<string, readonly Cells[]>;

function foodOf(cells: Cells, measures: Rows, pieces: Rows, trims: Rows): Food {
  const [id = '', name = '', also, foodClass = 'other', roles, allergens, source = ''] = cells;
  const sourceText = sourceOf(source);
  const { us, eu } = allergensOf(listOf(allergens, ','));
  const trim = trimOf(trims.get(id)?.[0], sourceText);
  return {
    id,
    name,
    names: listOf(also),
    class: foodClass as FoodClass,
    roles: listOf(roles, ',') as Role[],
    per100: compositionOf(cells),
    measures: (measures.get(id) ?? []).flatMap((row) => measureOf(row, sourceText)),
    pieces: (pieces.get(id) ?? []).map((row) => pieceOf(row, sourceText)),
    allergens: { us, eu },
    source: sourceText,
    ...(trim === undefined ? {} : { trim }),
  };
}

function compositionOf(cells: Cells): Composition {
  const per100: { -readonly [key in keyof Composition]: number } = {};
  COMPONENTS.forEach((component, index) => {
    const value = numberOf(cells[FIRST_COMPONENT + index]);
    if (value !== undefined) per100[component] = value;
  });
  return per100;
}

function measureOf(cells: Cells, foodSource: string): HouseholdMeasure[] {
  const [, unitWord = '', form = ''] = cells;
  const unit = unitSpelled(unitWord);
  const weight = weightOf(cells.slice(3), foodSource);
  if (unit === undefined || weight === undefined) return [];
  return [{ unit: unit.symbol, ...(form === '' ? {} : { form }), ...weight }];
}

function pieceOf(cells: Cells, foodSource: string): PieceWeight {
  const [, word = '', size = ''] = cells;
  const weight = weightOf(cells.slice(3), foodSource) ?? { grams: exactly(Number.NaN), source: foodSource };
  const counted: CountWord | undefined = countWord(word);
  return {
    ...(counted === undefined ? {} : { word: counted }),
    ...(size === '' ? {} : { size: size as Size }),
    ...weight,
  };
}

/** The cells grams, low, high, source. */
function weightOf(cells: Cells, foodSource: string): { grams: Range; typical?: number; source: string } | undefined {
  const grams = numberOf(cells[0]);
  if (grams === undefined) return undefined;
  const low = numberOf(cells[1]) ?? grams;
  const high = numberOf(cells[2]) ?? grams;
  const source = cells[3] === undefined || cells[3] === '' ? foodSource : cells[3];
  return { grams: { low, high }, ...(low === high ? {} : { typical: grams }), source };
}

function trimOf(cells: Cells | undefined, foodSource: string): Food['trim'] {
  const percent = numberOf(cells?.[1]);
  if (cells === undefined || percent === undefined) return undefined;
  return { share: percent / 100, what: cells[2] ?? '', source: cells[3] || foodSource };
}

function sourceOf(source: string): string {
  return source.startsWith('NDB ') ? `USDA SR26, ${source}` : source;
}

function numberOf(cell: string | undefined): number | undefined {
  return cell === undefined || cell === '' ? undefined : Number(cell);
}

function listOf(cell: string | undefined, by = ';'): string[] {
  return cell === undefined || cell === '' ? [] : cell.split(by);
}

/** The rows below the remarks and the heading. */
function tableRows(text: string): string[][] {
  const rows: string[][] = [];
  let headed = false;
  for (const line of text.split(/\r?\n/)) {
    if (line === '' || line.startsWith('#')) continue;
    if (headed) rows.push(line.split('\t'));
    headed = true;
  }
  return rows;
}

function rowsById(text: string): Rows {
  const rows = new Map<string, string[][]>();
  for (const row of tableRows(text)) {
    const id = row[0] ?? '';
    const before = rows.get(id);
    if (before === undefined) rows.set(id, [row]);
    else before.push(row);
  }
  return rows;
}
