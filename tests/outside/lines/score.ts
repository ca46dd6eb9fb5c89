/**
 * Knows how a printed line of an ingredient list is scored: typed as it stands into a recipe, read by the engine, and held against a
 * careful reader's reading of it. Refuses to know how many must be right.
 */
import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Finding, fixesOf } from '../../../server/src/checks/finding.ts';
import type { Food, FoodMatch } from '../../../server/src/food/food.ts';
import type { Range } from '../../../server/src/measure/quantity.ts';
import { MEASURES_CHOICES, type Measures } from '../../../server/src/measure/systems.ts';
import type { Ingredient } from '../../../server/src/recipe/model.ts';
import { DEFAULTS } from '../../../server/src/workspace/settings.ts';
import type { Snapshot } from '../../../server/src/workspace/snapshot.ts';
import { open } from '../../support/harness.ts';

/** What a careful reader makes of a line beside its foods and grams. `cut`: it goes on with the next printed line, which is asked for. */
export type Note = '' | 'free' | 'refuse' | 'ask' | 'cut';

export interface PrintedLine {
  readonly line: string;
  /** All that are on the line; each with what may stand in its place, the first worked with. */
  readonly foods: readonly (readonly string[])[];
  /** Of all of them together; absent where nobody could say. */
  readonly grams?: Range;
  readonly note: Note;
  readonly measures: Measures;
  /** The reading was mended after it was drafted. */
  readonly mended: boolean;
  readonly source: string;
  /** Which of the printed forms it stands for. */
  readonly form: string;
  /** A word that a refusal says: what to write. */
  readonly says: string;
}

/** right: foods and grams agree. refused: a finding says that it is not read. asked: it is read but for what a finding asks. silent: taken for something else. */
export type Verdict = 'right' | 'refused' | 'asked' | 'silent';

export interface Score {
  readonly printed: PrintedLine;
  readonly verdict: Verdict;
  /** Why it is not right, in a few words that many lines share. */
  readonly cause: string;
  /** What was made of it, or what the finding says. */
  readonly made: string;
  /** Refused or asked: with something to write instead. */
  readonly writes: boolean;
  /** Right: the likeliest weight lies in the reading's range, not only some weight it could be. */
  readonly close: boolean;
  /** Of a line with alternatives: each of them is known as one. */
  readonly others?: boolean;
}

const HERE = dirname(fileURLToPath(import.meta.url));

export const readTable = (path: string): string => readFileSync(path, 'utf8');
export const tableHere = (name: string): string => resolve(HERE, name);

/** Rows of a table by the names of its columns; lines that start with `#` are remarks. */
export function rowsOf(table: string): readonly ReadonlyMap<string, string>[] {
  const [head = '', ...rows] = table.split('\n').filter((row) => row.trim() !== '');
  const names = head.replace(/^# ?/, '').split('\t');
  return rows
    .filter((row) => !row.startsWith('# '))
    .map((row) => {
      const cells = row.split('\t');
      return new Map(names.map((name, at) => [name, (cells[at] ?? '').trim()]));
    });
}

/** Printed lines of a table with the columns `line`, `food`, `grams low`, `grams high`, `note`, and `measures`, `reading`, `source` if it has them. */
export function readPrintedLines(table: string, measures: Measures = 'us'): readonly PrintedLine[] {
  return rowsOf(table).map((row) => {
    const cell = (name: string): string => row.get(name) ?? '';
    const low = cell('grams low');
    const high = cell('grams high');
    return {
      line: cell('line'),
      foods: cell('food')
        .split(' + ')
        .filter((food) => food !== '')
        .map((food) => food.split(/ \| | or /)),
      ...(low !== '' && { grams: { low: Number(low), high: Number(high === '' ? low : high) } }),
      note: NOTES.find((note) => note === cell('note')) ?? '',
      measures: MEASURES_CHOICES.find((house) => house === cell('measures')) ?? measures,
      mended: cell('reading').startsWith('mended'),
      source: cell('source'),
      form: cell('form'),
      says: cell('says'),
    };
  });
}

const NOTES: readonly Note[] = ['', 'free', 'refuse', 'ask', 'cut'];

/** Foods that the readings call otherwise than the book: the words of a reading, and names of the book any of which is meant. */
const CALLED: ReadonlyMap<string, readonly string[]> = new Map(
  rowsOf(readTable(tableHere('called.tsv'))).map((row) => [
    (row.get('reading') ?? '').toLowerCase(),
    (row.get('book') ?? '').split('; '),
  ]),
);

/** The line as the only ingredient of a recipe. */
export const recipeOf = (line: string): string => `recipe Trial\npart p\n  ${line}\n`;
/** Its line in that text, and the column at which it begins. */
export const LINE = 2;
export const INDENT = 2;

const BOOK = open('').recipe.world.book;

/** Ids of the foods that the words of a reading may mean; none where the book has no such food. */
export function meantBy(words: string): readonly string[] {
  const called = CALLED.get(words.toLowerCase());
  return (called ?? [words]).flatMap((name) => foodsIn(BOOK.find(name)).map((food) => food.id));
}

/** What says how a line was read; the other families judge what it holds. */
const isOfReading = ({ check, code }: Finding): boolean => check.family === 'reading' || code === 'missing-amount';

function foodsIn(match: FoodMatch): readonly Food[] {
  if (match.kind === 'food') return [match.food];
  return match.kind === 'ambiguous' ? match.foods : [];
}

/** The line as the engine reads it, under the house whose measures it is printed in. */
export const openLine = ({ line, measures }: PrintedLine): Snapshot => openText(recipeOf(line), measures);

export const openText = (text: string, measures: Measures): Snapshot => open(text, { ...DEFAULTS, measures });

export function scoreLine(printed: PrintedLine): Score {
  const snapshot = openLine(printed);
  const findings = snapshot.findings.open.filter((f) => f.at.line === LINE && isOfReading(f));
  const ingredients = snapshot.recipe.parts.flatMap((part) => part.head.ingredients);
  const refusal = findings.find((f) => f.severity === 'error' || f.code === 'missing-amount');
  const writes = (finding: Finding): boolean =>
    fixesOf(finding, snapshot).length > 0 || finding.said.message.includes('`');
  const choices = printed.foods.flatMap(([, ...others]) => others).filter((words) => meantBy(words).length > 0);
  const named = ingredients.flatMap(({ others = [], mayHold = [] }) => [...others, ...mayHold]);
  const ids = new Set(named.flatMap(({ match }) => foodsIn(match).map(({ id }) => id)));
  const kept = new Set(choices.filter((words) => meantBy(words).some((id) => ids.has(id))));
  const score = (verdict: Verdict, cause: string, made: string, by?: Finding, close = false): Score => ({
    printed,
    verdict,
    cause,
    made,
    writes: by !== undefined && writes(by),
    close,
    ...(choices.length > 0 && { others: choices.every((words) => kept.has(words)) }),
  });
  if (refusal !== undefined) {
    const words = refusal.said.message;
    const cause = `${refusal.code}: ${words.replace(/`[^`]*`/g, '`…`').slice(0, 70)}`;
    const rightly = printed.note === 'refuse' && words.includes(printed.says);
    return score(rightly ? 'right' : 'refused', cause, words, refusal);
  }
  const question = findings.find((f) => f.code === 'unknown-food');
  const made = `${ingredients.map(madeOf).join(' + ')}${question === undefined ? '' : ` (${question.said.message})`}`;
  if (ingredients.length === 0) return score('silent', 'nothing is read, and nothing said', '');
  if (printed.note === 'refuse') {
    const asks = question !== undefined && ingredients.every(({ weighed }) => !weighed.known);
    return score(asks ? 'asked' : 'silent', 'read, where nobody could', made, question);
  }
  const food = foodFault(printed, ingredients);
  const grams = gramsFault(printed, ingredients);
  const swallowed = ingredients.some(({ name, match }) => match.kind !== 'food' && SWALLOWED.test(name));
  const off = grams === 'too little' || grams === 'too much';
  if (printed.note === 'ask' && question !== undefined && !off && !swallowed)
    return score('right', 'a food that no book has is asked about', made, question, true);
  // A word that is several foods to the reader too may be asked about.
  const alike = question !== undefined && ingredients.every(({ match }) => match.kind !== 'unknown');
  if (food === undefined && grams === undefined && (question === undefined || alike))
    return score(
      'right',
      alike ? 'which food of that name is asked' : '',
      made,
      question,
      isClose(printed, ingredients),
    );
  if (question !== undefined) {
    if (off) return score('silent', `${grams}, and only the food is asked about`, made);
    if (swallowed) return score('asked', 'the amount is not understood', made, question);
    const known = printed.foods.every(([first = '']) => meantBy(first).length > 0);
    return score('asked', known ? 'the food is not understood' : 'the book has no such food', made, question);
  }
  if (food === undefined && printed.note !== 'free' && ingredients.some(({ weighed }) => !weighed.known))
    return score('asked', `no weight: ${whyOf(ingredients)}`, made);
  return score('silent', food ?? grams ?? 'other', made);
}

/** Of an amount or of what joins it to the food, left in a name. */
const SWALLOWED = /\d(?! ?%)|[½¼¾⅓⅔⅛]|ful(?:s|l)?\b|\.|^(?:of|or|plus|and|each|doz(?:en)?)\b/i;

const whyOf = (ingredients: readonly Ingredient[]): string =>
  ingredients.flatMap(({ weighed }) => (weighed.known ? [] : [weighed.why]))[0] ?? '';

function madeOf({ match, name, weighed, free }: Ingredient): string {
  const what = match.kind === 'food' ? match.food.name : `${match.kind} "${name}"`;
  if (free) return `${what} as needed`;
  return weighed.known ? `${what} ${weighed.grams.low.toPrecision(3)}-${weighed.grams.high.toPrecision(3)} g` : what;
}

/** What is wrong with the foods of the line: one not found, or one that is not on it. */
function foodFault({ foods }: PrintedLine, ingredients: readonly Ingredient[]): string | undefined {
  const read = ingredients
    .flatMap(({ match, takes }) => takes ?? [match])
    .map((match) => foodsIn(match).map((food) => food.id));
  const left = new Set(read.keys());
  for (const [first = ''] of foods) {
    const meant = meantBy(first);
    const at = read.findIndex(
      (ids, i) => (left.has(i) || foods.length > read.length) && ids.some((id) => meant.includes(id)),
    );
    if (at < 0) {
      if (meant.length === 0) return 'taken for a food, where the book has no such food';
      return foods.length > 1 ? 'one of several foods is lost' : 'taken for another food';
    }
    left.delete(at);
  }
  const others = new Set(foods.flat().flatMap(meantBy));
  const more = [...left].some((at) => !read[at]?.some((id) => others.has(id)));
  return more ? 'a food too many' : undefined;
}

/** What is wrong with the weight of all foods of the line together. */
function gramsFault({ grams, note }: PrintedLine, ingredients: readonly Ingredient[]): string | undefined {
  if (note === 'free') return ingredients.every(({ free }) => free) ? undefined : 'an amount, where none is printed';
  if (grams === undefined) return undefined;
  const sum = sumOf(ingredients);
  if (sum === undefined) return 'no weight';
  if (sum.high < grams.low / SLACK) return 'too little';
  return sum.low > grams.high * SLACK ? 'too much' : undefined;
}

/** Printed figures are rounded. */
const SLACK = 1.03;

/** What all ingredients weigh that are not free, in grams, and what they likeliest weigh. */
export function sumOf(ingredients: readonly Ingredient[]): (Range & { readonly likely: number }) | undefined {
  let low = 0;
  let high = 0;
  let likely = 0;
  for (const { weighed, free } of ingredients) {
    if (free) continue;
    if (!weighed.known) return undefined;
    low += weighed.grams.low;
    high += weighed.grams.high;
    likely += weighed.typical ?? (weighed.grams.low + weighed.grams.high) / 2;
  }
  return { low, high, likely };
}

function isClose({ grams }: PrintedLine, ingredients: readonly Ingredient[]): boolean {
  const sum = sumOf(ingredients);
  return (
    grams === undefined || (sum !== undefined && sum.likely >= grams.low / SLACK && sum.likely <= grams.high * SLACK)
  );
}

/** How many of each verdict, in words: `320 right (35.4 %), 390 refused, 120 asked, 75 silent of 905`. */
export function countsOf(scores: readonly Score[]): string {
  const of = (verdict: Verdict): number => scores.filter((s) => s.verdict === verdict).length;
  const share = scores.length === 0 ? 0 : (100 * of('right')) / scores.length;
  return `${of('right')} right (${share.toFixed(1)} %), ${of('refused')} refused, ${of('asked')} asked, ${of('silent')} silent of ${scores.length}`;
}

/** Groups of scores, the largest first. */
export function groupsOf(
  scores: readonly Score[],
  by: (score: Score) => string,
): readonly (readonly [string, readonly Score[]])[] {
  const groups = new Map<string, Score[]>();
  for (const score of scores) {
    const group = groups.get(by(score));
    if (group === undefined) groups.set(by(score), [score]);
    else group.push(score);
  }
  return [...groups].sort(([, a], [, b]) => b.length - a.length);
}

/** The book that a line comes from, without the page. */
export const bookOf = ({ printed }: Score): string => /^.*?(?:vol\. \d|\)(?=,|$)|$)/.exec(printed.source)?.[0] ?? '';
