/**
 * Knows how the food tables under `server/data/foods/` are written and reads them into foods.
 * Refuses to know how a food is found or weighed.
 */
import ambiguousText from '../../data/foods/ambiguous.tsv';
import bakingText from '../../data/foods/baking.tsv';
import labelText from '../../data/foods/check-label.tsv';
import dairyText from '../../data/foods/dairy.tsv';
import drinksText from '../../data/foods/drinks-and-condiments.tsv';
import endingsText from '../../data/foods/endings.tsv';
import fruitText from '../../data/foods/fruit.tsv';
import grainsText from '../../data/foods/grains.tsv';
import herbsText from '../../data/foods/herbs.tsv';
import keysText from '../../data/foods/keys.tsv';
import measuresText from '../../data/foods/measures.tsv';
import meatText from '../../data/foods/meat-and-fish.tsv';
import nutsText from '../../data/foods/nuts-and-pulses.tsv';
import piecesText from '../../data/foods/pieces.tsv';
import trimText from '../../data/foods/trim.tsv';
import vegetablesText from '../../data/foods/vegetables.tsv';
import { type CountWord, countWord } from '../measure/count-words.ts';
import { once } from '../measure/once.ts';
import type { Range, Size } from '../measure/quantity.ts';
import { unitSpelled } from '../measure/unit.ts';
import { allergensOf, sortsAmong } from './allergens.ts';
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
  'starch',
  'fibre',
  'ash',
  'sodium',
  'alcohol',
  'acid',
] as const satisfies readonly (keyof Composition)[];
/** What the last column says the sugars are: `sucrose 94.6; glucose 1.4`. */
const SUGARS = ['sucrose', 'lactose', 'glucose', 'fructose'] as const satisfies readonly (keyof Composition)[];
const FIRST_COMPONENT = 8;

/** A food of the book whose figures are read when they are first asked for. */
export interface FoodRow {
  readonly id: string;
  readonly name: string;
  readonly names: readonly string[];
  readonly class: FoodClass;
  read(): Food;
}

/** A line of a food table, cut when something of it is asked for. */
class TableRow implements FoodRow {
  private readonly line: string;
  private food: Food | undefined;

  constructor(line: string) {
    this.line = line;
  }

  get id(): string {
    return this.line.slice(0, this.line.indexOf('\t'));
  }

  get name(): string {
    return this.line.split('\t', 2)[1] ?? '';
  }

  get names(): readonly string[] {
    return listOf(this.line.split('\t', 3)[2]);
  }

  /** All its names, the first first. */
  get called(): readonly string[] {
    return this.calledInOne.split(';');
  }

  /** The same, parted as they are on the line. */
  get calledInOne(): string {
    const [, name = '', also = ''] = this.line.split('\t', 3);
    return also === '' ? name : `${name};${also}`;
  }

  /** In USDA SR26, where the composition is that row's. */
  get number(): string | undefined {
    return /^(?:As [^,]+, )?NDB (\d{5})(?: \(from memory\))?$/.exec(this.line.split('\t', 7)[6] ?? '')?.[1];
  }

  get class(): FoodClass {
    return (this.line.split('\t', 4)[3] ?? 'other') as FoodClass;
  }

  read(): Food {
    this.food ??= foodOf(this.line.split('\t'));
    return this.food;
  }
}

/** All foods, in the order of the tables. A start pays for their lines alone. */
export function readFoods(): readonly TableRow[] {
  return FOOD_TABLES.flatMap(tableLines).map((line) => new TableRow(line));
}

/** The numbers that foods have in USDA SR26, each once, in the order of the tables. */
export const readNumbers = (): readonly number[] => [
  ...new Set(readFoods().flatMap((row) => (row.number === undefined ? [] : Number(row.number)))),
];

export interface AmbiguousRow {
  readonly word: string;
  /** Likeliest first. */
  readonly ids: readonly string[];
  /** The one that is meant there: its id, and `by the spoon` where only that is. */
  readonly british: string;
  readonly american: string;
}

/** Words that could be two foods. */
export function readAmbiguous(): readonly AmbiguousRow[] {
  return tableLines(ambiguousText).map((line) => {
    const [word = '', ids, british = '', american = ''] = line.split('\t');
    return { word, ids: listOf(ids), british, american };
  });
}

/** Each row of what labels may name, for the audit. */
export function readLabelled(): readonly {
  readonly id: string;
  readonly words: readonly string[];
  readonly source: string;
}[] {
  return tableLines(labelText).map((line) => {
    const [id = '', words, source = ''] = line.split('\t');
    return { id, words: listOf(words, ','), source };
  });
}

/** The line of each food that says which keys its names have (`name-index.ts`), so that a start need not make them; and the words in the longest. */
export function readKeys(): { readonly longest: number; readonly lines: readonly string[] } {
  const [longest, ...lines] = generated(keysText);
  return { longest: Number(longest), lines };
}

/** The keys of what the names end with (`name-index.ts`). */
export function readEndings(): readonly string[] {
  return generated(endingsText);
}

/** The text of a generated table; a test holds it fresh. */
export function generatedTable(what: string, lines: readonly string[]): string {
  return `# Generated: ${what}. Do not edit.\n${lines.join('\n')}\n`;
}

const generated = (text: string): string[] => text.slice(text.indexOf('\n') + 1, -1).split('\n');

type Cells = readonly string[];
function foodOf(cells: Cells): Food {
  const [id = '', name = '', also, foodClass = 'other', roles, allergens, ndb = '', note = ''] = cells;
  const source = sourceOf(ndb);
  const words = listOf(allergens, ',');
  const { us, eu } = allergensOf(words);
  const trim = trimOf(trims(id)[0], source);
  return {
    id,
    name,
    names: listOf(also),
    class: foodClass as FoodClass,
    roles: listOf(roles, ',').map((role) => ROLES[role] ?? (role as Role)),
    per100: compositionOf(cells),
    measures: measures(id).flatMap((row) => measureOf(row, source)),
    pieces: pieces(id).flatMap((row) => pieceOf(row, source)),
    allergens: { us, eu, ...sortsAmong(words), ...labelled(id) },
    source,
    ...(trim === undefined ? {} : { trim }),
    ...(note === '' ? {} : { note: NOTES[note] ?? note }),
  };
}

/** What the label of a food must be read for. */
function labelled(id: string): Pick<Food['allergens'], 'label'> {
  const [, words, source = ''] = labels(id)[0] ?? [];
  if (words === undefined) return {};
  const { us, eu } = allergensOf(listOf(words, ','));
  return { label: { us, eu, source } };
}

function compositionOf(cells: Cells): Composition {
  const per100: { -readonly [key in keyof Composition]: number } = {};
  COMPONENTS.forEach((component, index) => {
    const value = numberOf(cells[FIRST_COMPONENT + index]);
    if (value !== undefined) per100[component] = value;
  });
  for (const part of listOf(cells[FIRST_COMPONENT + COMPONENTS.length], '; ')) {
    const [kind = '', share] = part.split(' ');
    const sugar = SUGARS.find((name) => name === kind);
    const value = numberOf(share);
    if (sugar !== undefined && value !== undefined) per100[sugar] = value;
  }
  if (per100.carbohydrate === 0) for (const sugar of SUGARS) per100[sugar] ??= 0;
  return per100;
}

function measureOf(cells: Cells, foodSource: string): HouseholdMeasure[] {
  const [, unitWord = '', form = ''] = cells;
  const unit = unitSpelled(unitWord);
  const weight = weightOf(cells.slice(3), foodSource);
  if (unit === undefined || weight === undefined) return [];
  return [{ unit: unit.symbol, ...(form === '' ? {} : { form }), ...weight }];
}

function pieceOf(cells: Cells, foodSource: string): PieceWeight[] {
  const [, word = '', size = ''] = cells;
  const weight = weightOf(cells.slice(3), foodSource);
  if (weight === undefined) return [];
  const counted: CountWord | undefined = countWord(word);
  return [
    { ...(counted === undefined ? {} : { word: counted }), ...(size === '' ? {} : { size: size as Size }), ...weight },
  ];
}

/** The cells grams, low, high, source. */
function weightOf(cells: Cells, foodSource: string): { grams: Range; typical?: number; source: string } | undefined {
  const grams = numberOf(cells[0]);
  if (grams === undefined) return undefined;
  const low = numberOf(cells[1]) ?? grams;
  const high = numberOf(cells[2]) ?? grams;
  const source = sourceOf(cells[3] ?? '', foodSource);
  return { grams: { low, high }, ...(low === high ? {} : { typical: grams }), source };
}

function trimOf(cells: Cells | undefined, foodSource: string): Food['trim'] {
  const percent = numberOf(cells?.[1]);
  if (cells === undefined || percent === undefined) return undefined;
  return { share: percent / 100, what: cells[2] ?? '', source: sourceOf(cells[3] ?? '', foodSource) };
}

/** The words that stand for a source in the tables; their headings say so too. */
const SOURCES: Readonly<Record<string, string>> = {
  practice: 'common practice, no source',
  packs: 'pack labels (from memory)',
  varies: 'pack labels vary (from memory)',
  none: 'not published in the tables at hand',
  'M&W': 'McCance and Widdowson, The Composition of Foods (from memory)',
};

/** The words that stand for a remark. */
const NOTES: Readonly<Record<string, string>> = {
  'starch M&W': 'starch: McCance and Widdowson (from memory)',
  'no starch M&W': 'no starch: McCance and Widdowson (from memory)',
  'starch USDA': 'starch: later USDA releases (from memory)',
};

/** The short words of the tables for a role. */
const ROLES: Readonly<Record<string, Role>> = { baking: 'baking flour', raw: 'raw risk', tissue: 'holds its water' };

function sourceOf(cell: string, otherwise = ''): string {
  if (cell === '') return otherwise;
  return cell.startsWith('NDB ') ? `USDA SR26, ${cell}` : (SOURCES[cell] ?? cell);
}

function numberOf(cell: string | undefined): number | undefined {
  return cell === undefined || cell === '' ? undefined : Number(cell);
}

function listOf(cell: string | undefined, by = ';'): string[] {
  return cell === undefined || cell === '' ? [] : cell.split(by);
}

/** The lines below the remarks and the heading. */
function tableLines(text: string): string[] {
  const lines = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  return lines.slice(1);
}

/** The rows of a food in a side table. */
type SideTable = (id: string) => Cells[];

/** The table is parted by food when the first is asked for: looking through all of it for each took longer from some ten foods on. */
function sideTable(text: string): SideTable {
  const byFood = once(() => {
    // The lines of a food as one text: most have one, and a list for each would be as large again.
    const rows = new Map<string, string>();
    text.split('\n').forEach((line) => {
      const id = line.slice(0, line.indexOf('\t'));
      const own = rows.get(id);
      rows.set(id, own === undefined ? line : `${own}\n${line}`);
    });
    return rows;
  });
  return (id) =>
    byFood()
      .get(id)
      ?.split('\n')
      .map((line) => line.split('\t')) ?? [];
}

const trims = sideTable(trimText);
const measures = sideTable(measuresText);
const pieces = sideTable(piecesText);
const labels = sideTable(labelText);
