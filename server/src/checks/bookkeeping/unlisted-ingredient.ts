import { insertLineAfter } from '../../edits/text-edit.ts';
import type { FoodBook } from '../../food/book.ts';
import type { Food, FoodClass } from '../../food/food.ts';
import type { MeasuredNode, SentenceItem, WordNode } from '../../notation/tree.ts';
import type { Mention } from '../../recipe/mentions.ts';
import { listedWords } from '../../recipe/part.ts';
import type { Part, Step } from '../../recipe/recipe.ts';
import { asWritten, isOn, says } from '../../recipe/step-words.ts';
import { verbClass } from '../../recipe/verbs.ts';
import { FUNCTION_WORDS, wordsOf } from '../../recipe/words.ts';
import { defineCheck, type Found } from '../check.ts';
import type { House } from '../house.ts';
import { onceFor } from '../once.ts';

interface Values {
  readonly name: string;
  /** The amount the step names, as written. */
  readonly amount?: string;
  /** The line of the part after which it is to be listed. */
  readonly after: number;
  readonly part: number;
}

export default defineCheck<Values>({
  code: 'unlisted-ingredient',
  title: 'A step uses something that is not in the list',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `A step calls for a food that neither this part's list nor an earlier part's has, so nobody buys it and its water, fat and salt are not counted. With an amount (\`add 100 ml milk\`) it is a warning; named alone (\`fold in the walnuts\`) it is information, since a step may speak of something it has just made; so it is where it is told off beside listed ones (\`the flour, salt and sugar\`).

List it with the amount the step names. Silent for water, ice, salt, oil and fat for the pan, for what a part or the recipe is called, and for a word after \`\\\`.`,
  find(part, house) {
    const found: Found<Values>[] = [];
    for (const step of part.steps) {
      withAmount(part, step, house, found);
      if (says(step, ADDING) && says(step, THE)) named(part, step, house, found);
      if (step.mentions.some(isOfIngredient)) besideListed(part, step, house, found);
    }
    return found;
  },
  say: ({ name, amount }) => ({
    message:
      amount === undefined
        ? `Not in the list: ${name}. List it with its amount.`
        : `Not in the list: ${amount} ${name}. List it, so that it is bought and counted.`,
  }),
  fix: ({ name, amount, after, part }, { document, recipe }) => {
    if (amount === undefined) return [];
    const line = (recipe.partsAt[part] ?? 0) + after;
    return [
      {
        title: `List ${amount} ${name}`,
        effect: 'amounts',
        edits: [insertLineAfter(document, line, `  ${amount.padEnd(8)}  ${name}`)],
      },
    ];
  },
  examples: {
    good: [
      'recipe Batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Whisk the milk into the flour and stand for 30 min.\n  do Fry in a little oil.\n',
      'recipe Batter\npart batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Whisk the milk into the flour.\npart cakes\n  do Thin the batter with 20 ml water and fry in spoonfuls until brown.\n',
    ],
    bad: [
      {
        text: 'recipe Batter\n  200 g     plain flour\n  do Whisk 300 ml whole milk into the flour.\n# "300 ml whole milk" unlisted-ingredient *: 300 ml whole milk\n',
        after: {
          'List 300 ml whole milk':
            'recipe Batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Whisk 300 ml whole milk into the flour.\n',
        },
      },
      'recipe Slab\n  200 g     rolled oats\n  80 g      honey\n  do Warm the honey with the oats.\n  do Fold in the walnuts.\n# "walnuts" unlisted-ingredient info: walnuts\n',
    ],
  },
});

/** Foods that steps may name without a line in the list. */
const NEVER: ReadonlySet<FoodClass> = new Set(['water', 'salt']);
/** Foods that, named alone, are likely the thing itself and not what a step has made. */
const DISTINCT: ReadonlySet<FoodClass> = new Set([
  'egg',
  'dairy',
  'cheese',
  'yeast',
  'leavening',
  'leafy herb',
  'dried herb',
  'vegetable',
  'mushroom',
  'fruit',
  'dried fruit',
  'legume',
  'nut',
  'seed',
  'chocolate',
  'gelling',
]);
const ADDING = asWritten(
  'add',
  'fold',
  'stir',
  'sprinkle',
  'scatter',
  'whisk',
  'beat',
  'mix',
  'toss',
  'top',
  'tip',
  'combine',
);
const THE = asWritten('the');

function withAmount(part: Part, step: Step, house: House, found: Found<Values>[]): void {
  const { items } = step.sentence;
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (
      item?.kind !== 'measured' ||
      !isOfFood(item) ||
      step.mentions.some((m) => m.whole.start <= item.start && m.end > item.start)
    )
      continue;
    const from = wordAt(items, i + 1) === 'of' ? (wordAt(items, i + 2) === 'the' ? i + 3 : i + 2) : i + 1;
    const run = longestFood(items, from, step, house.world.book);
    if (run === undefined || NEVER.has(run.food.class) || run.words.every((w) => isListed(part, w))) continue;
    const line = part.head.source.lines[step.line]?.text ?? '';
    const values = {
      name: line.slice(run.start, run.end),
      amount: line.slice(item.start, item.end),
      after: lastListLine(part),
      part: part.index,
    };
    found.push({ at: { line: step.line, start: item.start, end: run.end }, values });
  }
}

function named(part: Part, step: Step, house: House, found: Found<Values>[]): void {
  const { items } = step.sentence;
  for (let i = 0; i < items.length; i++) {
    if (wordAt(items, i) !== 'the' || !isOn(ADDING, verbNear(items, i))) continue;
    let from = i + 1;
    // `The well beaten egg`: how it is prepared stands before its name.
    while (from < i + 3 && PREPARED.test(wordAt(items, from))) from++;
    const run = longestFood(items, i + 1, step, house.world.book) ?? longestFood(items, from, step, house.world.book);
    if (
      run === undefined ||
      !DISTINCT.has(run.food.class) ||
      !endsThere(items, run.to) ||
      run.words.some((w) => isListed(part, w))
    )
      continue;
    const line = part.head.source.lines[step.line]?.text ?? '';
    const values = { name: line.slice(run.start, run.end), after: lastListLine(part), part: part.index };
    found.push({ at: { line: step.line, start: run.start, end: run.end }, values, severity: 'info' });
  }
}

/** `The flour, baking powder and sugar`: what is told off beside listed ingredients is one too. */
function besideListed(part: Part, step: Step, house: House, found: Found<Values>[]): void {
  const { items } = step.sentence;
  const ends = new Set(step.mentions.filter(isOfIngredient).map((m) => m.end));
  for (let i = 1; i < items.length; i++) {
    const before = items[i - 1];
    const joined = before?.kind === 'mark' ? before.mark === ',' : wordAt(items, i - 1) === 'and';
    if (!joined || !ends.has(items[i - 2]?.end ?? -1)) continue;
    const run = longestFood(items, i, step, house.world.book);
    if (run === undefined || BESIDE_NEVER.has(run.food.class) || run.words.some((w) => isListed(part, w))) continue;
    const next = items[run.to + 1];
    const ended =
      next === undefined ||
      next.kind === 'mark' ||
      ['and', 'with', 'to', 'in', 'on', 'for'].includes(wordAt(items, run.to + 1));
    if (!ended) continue;
    ends.add(run.end);
    const line = part.head.source.lines[step.line]?.text ?? '';
    const values = { name: line.slice(run.start, run.end), after: lastListLine(part), part: part.index };
    found.push({ at: { line: step.line, start: run.start, end: run.end }, values, severity: 'info' });
  }
}

/** Named without being listed: water, and the pepper of `salt and pepper`. `Roll` and `wrap` are seldom bread there. */
const BESIDE_NEVER: ReadonlySet<FoodClass> = new Set<FoodClass>(['water', 'salt', 'spice', 'bread', 'other']);

const isOfIngredient = ({ ingredients }: Mention): boolean => ingredients.length > 0;

const isOfFood = (item: MeasuredNode): boolean =>
  item.unit === undefined ? item.quantity.count !== undefined : !['%', 'mm', 'cm', 'in'].includes(item.unit.symbol);

interface FoodRun {
  readonly food: Food;
  readonly words: readonly string[];
  readonly start: number;
  readonly end: number;
  readonly to: number;
}

/** The longest run of words from an item on, four at most, that names a food and is no mention. */
function longestFood(items: readonly SentenceItem[], from: number, step: Step, book: FoodBook): FoodRun | undefined {
  const words: WordNode[] = [];
  for (let i = from; i < items.length && words.length < 4; i++) {
    const item = items[i];
    if (
      item?.kind !== 'word' ||
      FUNCTION_WORDS.has(item.word) ||
      step.mentions.some((m) => m.start <= item.start && m.end >= item.end)
    )
      break;
    words.push(item);
  }
  for (let n = words.length; n > 0; n--) {
    if (!vocabulary(book).has(lastCompared(words, n))) continue;
    const run = words.slice(0, n);
    const compared = run.flatMap((w) => wordsOf(w.word));
    const match = book.find(run.map((w) => w.word).join(' '));
    const [first] = run;
    const last = run.at(-1);
    if (match.kind === 'food' && first !== undefined && last !== undefined) {
      return { food: match.food, words: compared, start: first.start, end: last.end, to: from + n - 1 };
    }
  }
  return undefined;
}

/** The last of the first so many words, as it is compared. */
function lastCompared(words: readonly WordNode[], n: number): string {
  for (let i = n - 1; i >= 0; i--) {
    const last = wordsOf(words[i]?.word ?? '').at(-1);
    if (last !== undefined) return last;
  }
  return '';
}

/** The last words of all foods' names, so that the book is asked only where it may know. */
const vocabulary = onceFor(
  (book: FoodBook): ReadonlySet<string> => new Set(book.endings().map((ending) => wordsOf(ending).at(-1) ?? '')),
);

/** Whether a list line, part name or kind that the part can see has the word: then it is no stranger. */
function isListed(part: Part, word: string): boolean {
  for (let i = part.index; i >= 0; i--) {
    const head = i === part.index ? part.head : part.heads[i];
    if (head !== undefined && listedWords(head).has(word)) return true;
  }
  return false;
}

/** A verb governs what it lists: `add the rest of the milk and the beaten eggs`. */
const GOVERNED = 8;
const PREPARED = /^(?:well|slightly|freshly|finely|beaten|whisked|sifted|melted|chopped|grated|sliced|diced)$/;

function verbNear(items: readonly SentenceItem[], at: number): string {
  for (let i = at - 1; i >= 0 && i >= at - GOVERNED; i--) {
    const word = wordAt(items, i);
    // `The rest of` is no verb.
    if (verbClass(word) !== undefined && wordAt(items, i + 1) !== 'of') return word;
  }
  return '';
}

/** Whether the noun ends with the run: no further noun such as in `egg wash` follows. */
function endsThere(items: readonly SentenceItem[], to: number): boolean {
  const next = items[to + 1];
  return (
    next === undefined || next.kind !== 'word' || FUNCTION_WORDS.has(next.word) || verbClass(next.word) !== undefined
  );
}

/** The last ingredient's line, or the part's own line where nothing is listed. */
function lastListLine(part: Part): number {
  return part.head.ingredients.at(-1)?.line ?? 0;
}

function wordAt(items: readonly SentenceItem[], i: number): string {
  const item = items[i];
  return item?.kind === 'word' ? item.word : '';
}
