/** The words that open a line, those of the block first; before a word that opens a block, the whole block to fill in. */
import { calledName } from '../../recipe/names/title.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { all, type Completion, type Completions, stops, type Typing } from './item.ts';

interface Row {
  readonly word: string;
  readonly detail: string;
  /** What follows the word, with places for the caret: see `stops`. */
  readonly rest: string;
}

const NOTE: Row = { word: 'note', detail: 'a remark', rest: '<text>' };
const PICTURE: Row = { word: 'picture', detail: 'a file that shows it', rest: '<slice.jpg>, <what is to be seen>' };
const FIELDS: readonly Row[] = [
  { word: 'by', detail: 'who wrote it', rest: '<name>' },
  { word: 'yield', detail: 'how many of what', rest: '<12> <slices>' },
  { word: 'pan', detail: 'the pan and its size', rest: '<round|square|rectangle|loaf|ring> <24 x 3> cm' },
  { word: 'oven', detail: 'the oven for all of it', rest: '<180 C>' },
  {
    word: 'time',
    detail: 'how long it takes, by what it is spent with',
    rest: '<20 min> at work, <50 min> in the oven',
  },
  { word: 'serve', detail: 'how it is served', rest: '<warm>' },
  { word: 'tags', detail: 'words to find it by', rest: '<autumn, supper club>' },
  NOTE,
  { word: 'source', detail: 'where it comes from', rest: '<text>' },
  PICTURE,
  { word: 'from', detail: 'the recipe it builds on', rest: '<base.quern>' },
];
const PART: Row = { word: 'part', detail: 'a component: crust, filling, dough, sauce', rest: '<filling>' };
const TRIAL: Row = {
  word: 'trial',
  detail: 'what one test in the kitchen measured',
  rest: '<$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE> by <name>',
};
const FOOD: Row = { word: 'food', detail: 'a food of the house', rest: '<name>' };
const STEPS: readonly Row[] = [
  { word: 'do', detail: 'a step of the method', rest: '' },
  { word: 'optional', detail: 'an ingredient that is not needed', rest: '<20 g> <walnuts>' },
  { word: 'allow', detail: 'accepts a finding on the next line', rest: '<code> because <reason>' },
];
const OF_STEP: readonly Row[] = [...STEPS, { ...PICTURE, detail: 'a file that shows the step above' }];
const CHANGES: readonly Row[] = [
  { word: 'swap', detail: 'another ingredient in its place', rest: '<butter> for <120 g> <margarine>' },
  { word: 'drop', detail: 'leaves an ingredient out', rest: '<nutmeg>' },
  { word: 'add', detail: 'one more ingredient', rest: '<20 g> <walnuts>' },
];
const MEASURED: readonly Row[] = [
  { word: 'took', detail: 'how long', rest: '<52 min> to <bake>' },
  { word: 'started', detail: 'how warm it went in', rest: 'at <8 C>' },
  { word: 'reached', detail: 'how hot, and where', rest: '<80 C> in <the centre>' },
  { word: 'weighed', detail: 'what it weighed', rest: '<1200 g> out of <the oven>' },
  { word: 'used', detail: 'another amount than listed', rest: '<90 g> <caster sugar>' },
  { word: 'saw', detail: 'what was seen', rest: '<text>' },
  { ...PICTURE, detail: 'a file that shows what came of it' },
  { word: 'verdict', detail: 'keep, change or reject', rest: '<keep|change|reject>' },
];
const COMPONENTS = ['water', 'fat', 'protein', 'carbohydrate', 'sugar', 'starch', 'fibre', 'salt', 'ash', 'alcohol'];
const OF_FOOD: readonly Row[] = [
  { word: 'like', detail: 'the food it is like', rest: '<plain flour>' },
  { word: 'also', detail: 'other names', rest: '<name>' },
  ...COMPONENTS.map((word) => ({ word, detail: 'share of the weight', rest: '<12> %' })),
  { word: 'trim', detail: 'share trimmed away', rest: '<10> %' },
  { word: 'price', detail: 'what it costs', rest: '<1.40> per <1 kg>' },
  { word: 'contains', detail: 'its allergens', rest: '<wheat>' },
];
const RECIPE: Row = { word: 'recipe', detail: 'opens the recipe', rest: '<name>' };

/** Words that open a block stand at the margin, without a column after them. */
const OPENING: ReadonlySet<string> = new Set([
  'recipe',
  'part',
  'trial',
  'food',
  'do',
  'optional',
  'allow',
  'swap',
  'drop',
  'add',
]);

/** Whole blocks to fill in, before the bare words that open them. */
export const SKELETONS: Readonly<
  Record<string, { readonly label: string; readonly detail: string; readonly lines: readonly string[] }>
> = {
  recipe: {
    label: 'recipe, with a part and a step',
    detail: 'to fill in',
    lines: [
      'recipe <Name>',
      '  yield   <8> <slices>',
      '',
      'part <base>',
      '  <200 g>     <plain flour>',
      '',
      '  do <Sift the flour.>',
    ],
  },
  part: {
    label: 'part, with a list and a step',
    detail: 'to fill in',
    lines: ['part <filling>', '  <200 g>     <whole milk>', '', '  do <Warm the milk.>'],
  },
  trial: {
    label: 'trial, with all it measured',
    detail: 'to fill in',
    lines: [
      'trial <$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE> by <name>',
      '  took    <40 min> to <bake>',
      '  reached <80 C> in <the centre>',
      '  weighed <1200 g> out of <the oven>',
      '  saw     <what was seen>',
      '  verdict <keep|change|reject>',
    ],
  },
  food: {
    label: 'food, with its weight and makeup',
    detail: 'to fill in',
    lines: ['food <name>', '  like     <plain flour>', '  1 cup = <120> g', '  water    <12> %', '  contains <wheat>'],
  },
};

/** The skeleton of the block that a word opens, where it opens one. */
function skeletonOf(word: string, character: number): Completion[] {
  const skeleton = SKELETONS[word];
  if (skeleton === undefined) return [];
  const { label, detail, lines } = skeleton;
  const snippet = stops(lines.join('\n'));
  const text = `${word} `;
  return [{ label, kind: 'keyword', detail, start: 0, end: character, text, snippet, skeleton: true, filter: word }];
}

export function completeKeyword({ snapshot, at, before, character, line }: Typing): Completions {
  const start = before.length - before.trimStart().length;
  const parts = partsAbove(snapshot, at).map(
    (label): Completion => ({
      label,
      kind: 'part',
      detail: 'all of that part',
      start,
      end: character,
      text: label,
      filter: label,
    }),
  );
  return all([
    ...rowsAt(snapshot, at).flatMap(({ word, detail, rest }): Completion[] => {
      const opening = `${OPENING.has(word) ? word : word.padEnd(7)} `;
      const bare: Completion = {
        label: word,
        kind: 'keyword',
        detail,
        start,
        end: character,
        text: opening,
        snippet: stops(opening + rest),
        filter: word,
      };
      return line.text.slice(character).trim() === '' ? [...skeletonOf(word, character), bare] : [bare];
    }),
    ...parts,
  ]);
}

/** The parts above the one that a line stands in, which its list may take in by their names; not those that it has. */
function partsAbove({ recipe }: Snapshot, at: number): readonly string[] {
  const index = recipe.partsAt.findLastIndex((from) => from < at);
  const part = recipe.parts[index];
  if (part === undefined) return [];
  return recipe.heads
    .slice(0, index)
    .filter((head) => head.name !== '' && !part.includes.includes(head))
    .map(({ name }) => calledName(name));
}

function rowsAt(snapshot: Snapshot, at: number): readonly Row[] {
  const { outline } = snapshot;
  const isVariant = outline.head.some((h) => h.line.statement.kind === 'from');
  const opens = [
    ...(outline.recipe === undefined
      ? []
      : [
          {
            at: outline.recipe.at,
            rows: [...(isVariant ? CHANGES : []), ...FIELDS, PART, ...STEPS, ...(isVariant ? [TRIAL] : [])],
          },
        ]),
    ...outline.parts.map((p) => ({ at: p.at, rows: [...OF_STEP, PART, NOTE, TRIAL, ...CHANGES, FOOD] })),
    ...outline.trials.map((t) => ({ at: t.at, rows: [...MEASURED, TRIAL, FOOD] })),
    ...outline.foods.map((f) => ({ at: f.at, rows: [...OF_FOOD, FOOD] })),
  ].filter((o) => o.at < at);
  const now = opens.reduce<{ at: number; rows: readonly Row[] } | undefined>(
    (last, o) => (last === undefined || o.at >= last.at ? o : last),
    undefined,
  );
  return now?.rows ?? [RECIPE, FOOD, ...STEPS, PART, ...FIELDS];
}
