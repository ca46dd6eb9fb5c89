/** The files that are measured, and where they are edited: the same in every run. */
import { Random } from './random.ts';
import { writeRecipe } from './recipes.ts';

export const SIZES = [60, 1000, 10_000] as const;
export type Size = (typeof SIZES)[number];

/** Characters put into a line in the place of others: one, unless words are exchanged. */
export interface Edit {
  readonly line: number;
  readonly character: number;
  readonly length: number;
  readonly text: string;
}

export interface Place {
  readonly line: number;
  readonly character: number;
}

/** A text with places to try it at. */
export interface Case {
  readonly text: string;
  /** Endless: an edit in a step and one in an amount by turns, each time at another place; every second pair undoes the one before. */
  readonly edits: () => Generator<Edit, never>;
  /** Endless: an edit in the name of something that the rest of the file may speak of. */
  readonly renames: () => Generator<Edit, never>;
  /** Endless: other words in a step, its verb, a word more, its figure or its food by turns; every second takes back the one before. */
  readonly sentences: () => Generator<Edit, never>;
  /** Inside words that a hover answers. */
  readonly hovers: readonly Place[];
  /** At the beginning of a word, or in a key. */
  readonly completions: readonly Place[];
}

/** A recipe of so many lines. */
export function recipeCase(lines: Size): Case {
  const text = writeRecipe(lines, lines);
  const rows = text.split('\n');
  const random = new Random(lines + 1);
  const steps = linesWhere(rows, (row) => row.startsWith('  do '));
  const amounts = linesWhere(rows, (row) => /^ {2}\d[^#]*$/.test(row));
  const parts = linesWhere(rows, (row) => row.startsWith('part '));
  const inStep = (line: number): Place => ({ line, character: (rows[line] ?? '').lastIndexOf(' ') + 2 });
  const inAmount = (line: number): Place => ({ line, character: 3 });
  const inName = (line: number): Place => ({ line, character: (rows[line] ?? '').lastIndexOf('  ') + 4 });
  const endOf = (line: number): Place => ({ line, character: (rows[line] ?? '').length });
  const mentions = steps
    .filter((line) => rows[line]?.includes('the '))
    .map((line) => ({ line, character: (rows[line] ?? '').indexOf('the ') + 4 }));
  return {
    text,
    edits: () => edits(random, steps.map(inStep), 'e', amounts.map(inAmount), '5'),
    renames: () => edits(random, amounts.map(inName), 'e', parts.map(endOf), 's'),
    sentences: () => sentences(random, rows, steps),
    hovers: amounts.map(inName),
    completions: mentions,
  };
}

/** JSON of so many lines that says the same sort of thing, laid out as its formatter does. */
export function jsonCase(lines: number): Case {
  const text = writeJson(lines);
  const rows = text.split('\n');
  const random = new Random(lines + 1);
  const foods = linesWhere(rows, (row) => row.includes('"food": "'));
  const grams = linesWhere(rows, (row) => row.includes('"grams": '));
  const end = (line: number): Place => ({ line, character: (rows[line] ?? '').lastIndexOf('"') });
  const key = (line: number): Place => ({ line, character: (rows[line] ?? '').indexOf('":') });
  const figure = (line: number): Place => ({ line, character: (rows[line] ?? '').indexOf(': ') + 3 });
  return {
    text,
    edits: () => edits(random, foods.map(end), 'e', grams.map(figure), '5'),
    renames: () => edits(random, foods.map(key), 'e', grams.map(key), 's'),
    sentences: () => edits(random, foods.map(end), 'e', grams.map(figure), '5'),
    hovers: grams.map((line) => ({ line, character: (rows[line] ?? '').indexOf('"') + 2 })),
    completions: foods.map((line) => ({ line, character: (rows[line] ?? '').indexOf('"food"') + 1 })),
  };
}

export const JSON_SCHEMA = {
  type: 'object',
  required: ['recipe', 'parts'],
  properties: {
    recipe: { type: 'string', description: 'The name of the recipe.' },
    parts: { type: 'array', items: { $ref: '#/definitions/part' } },
    notes: { type: 'array', items: { type: 'string', minLength: 2 } },
  },
  definitions: {
    part: {
      type: 'object',
      required: ['name', 'ingredients', 'steps'],
      additionalProperties: false,
      properties: {
        name: { type: 'string', description: 'What the other parts call it.' },
        kind: { enum: ['pastry', 'dough', 'custard', 'sauce', 'soup', 'cake'] },
        ingredients: { type: 'array', items: { $ref: '#/definitions/ingredient' } },
        steps: { type: 'array', items: { type: 'string', minLength: 8, pattern: '\\.$' } },
      },
    },
    ingredient: {
      type: 'object',
      required: ['grams', 'food'],
      additionalProperties: false,
      properties: {
        grams: { type: 'number', minimum: 1, maximum: 350, description: 'The weight of it, in grams.' },
        food: { type: 'string', description: 'The food as it is listed.' },
        prepared: { type: 'string' },
      },
    },
  },
} as const;

interface JsonPart {
  name: string;
  kind: string;
  ingredients: { grams: number; food: string; prepared?: string }[];
  steps: string[];
}

/** The ingredients and steps of a generated recipe, as JSON; notes fill it up to the number of lines. */
function writeJson(lines: number): string {
  const document = { recipe: 'Set menu', parts: [] as JsonPart[], notes: ['Weigh everything.'] };
  const random = new Random(lines);
  let part: JsonPart | undefined;
  const length = () => document.parts.reduce((sum, p) => sum + linesOf(p), 0) + 8;
  for (const row of writeRecipe(lines, lines).split('\n')) {
    const [, name] = /^part (\S.*?)(?: as .*)?$/.exec(row) ?? [];
    const [, figure, food, prepared] = /^ {2}\D*(\d+)[^#]* {2}(\S[^,#]*?)(?:, ([^#]*?))?$/.exec(row) ?? [];
    if (name !== undefined) {
      if (part !== undefined && length() + linesOf(part) <= lines) document.parts.push(part);
      part = {
        name,
        kind: random.pick(['pastry', 'dough', 'custard', 'sauce', 'soup', 'stew']),
        ingredients: [],
        steps: [],
      };
    } else if (food !== undefined) {
      part?.ingredients.push({ grams: Number(figure), food, ...(prepared !== undefined && { prepared }) });
    } else if (row.startsWith('  do ')) part?.steps.push(row.slice(5));
  }
  while (length() + document.notes.length - 1 < lines)
    document.notes.push(`Portions of ${random.whole(80, 320)} g, held at ${random.whole(63, 75)} C.`);
  return JSON.stringify(document, null, 2);
}

/** The lines of a part as `JSON.stringify` lays them out; an empty list takes one. */
const linesOf = ({ ingredients, steps }: JsonPart): number =>
  4 +
  (ingredients.length === 0 ? 1 : 2 + ingredients.reduce((n, i) => n + (i.prepared === undefined ? 4 : 5), 0)) +
  (steps.length === 0 ? 1 : 2 + steps.length);

function linesWhere(rows: readonly string[], holds: (row: string) => boolean): number[] {
  return rows.flatMap((row, line) => (holds(row) ? [line] : []));
}

function* edits(
  random: Random,
  words: readonly Place[],
  letter: string,
  figures: readonly Place[],
  digit: string,
): Generator<Edit, never> {
  for (;;) {
    const made: Edit[] = [
      { ...random.pick(words), length: 0, text: letter },
      { ...random.pick(figures), length: 0, text: digit },
    ];
    yield* made;
    for (const { line, character } of made) yield { line, character, length: 1, text: '' };
  }
}

/** Where each way of saying a step otherwise is said, and what with. */
const EXCHANGED: readonly { readonly at: RegExp; readonly by: readonly string[] }[] = [
  {
    at: /(?<=^ {2}do )\w+/d,
    by: ['Stir', 'Whisk', 'Bake', 'Simmer', 'Warm', 'Pour', 'Chop', 'Chill', 'Drain', 'Toast'],
  },
  { at: /(?<=^ {2}do \w+ )/d, by: ['gently ', 'well ', 'slowly ', 'at once ', 'in a bowl ', 'in the oven ', 'again '] },
  { at: /\d+(?! C fan)/d, by: ['3', '7', '12', '45', '64', '90', '135', '180'] },
  { at: /(?<=\bthe )\w+/d, by: ['milk', 'butter', 'flour', 'rest', 'chicken', 'onions', 'sauce', 'pan', 'eggs'] },
];

function* sentences(random: Random, rows: readonly string[], steps: readonly number[]): Generator<Edit, never> {
  for (;;) {
    for (const { at, by } of EXCHANGED) {
      const line = random.pick(steps);
      const [character, end] = at.exec(rows[line] ?? '')?.indices?.[0] ?? [];
      if (character === undefined || end === undefined) continue;
      const text = random.pick(by);
      yield { line, character, length: end - character, text };
      yield { line, character, length: text.length, text: (rows[line] ?? '').slice(character, end) };
    }
  }
}
