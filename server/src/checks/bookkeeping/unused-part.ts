import { indentOf } from '../../edits/set-amount.ts';
import { insertLineAfter } from '../../edits/text-edit.ts';
import type { Act } from '../../prose/event.ts';
import { calledAhead, usedAhead } from '../../recipe/journey/ahead.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import { anyDoes, deed, does, speaksOf } from '../../recipe/journey/deeds.ts';
import { speaksOfStrangers } from '../../recipe/journey/unsaid.ts';
import type { Mention, Part, PartHead, Recipe } from '../../recipe/model.ts';
import { nameSpan } from '../../recipe/part.ts';
import { wordsOf } from '../../recipe/words.ts';

import { defineCheck, type Found } from '../check.ts';
import { onceFor, onceWith } from '../once.ts';
import { type Given, overParts, type Worked, workedAgain } from '../over-parts.ts';

interface Values {
  readonly name: string;
  readonly part: number;
  /** A step above takes it. */
  readonly ahead?: true;
}

export default defineCheck<Values>({
  code: 'unused-part',
  title: 'A part is made and never used',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `A part is a component: a crust, a filling, a sauce. Something has to use it. No later step mentions this part's name, its last word, or one of its ingredients, so the cook is left with it on the bench; or only a step above names it, before it is made.

Mention it where it goes in (\`pour over the custard\`). Silent for the last part, for one that the recipe is called after, for parts without a list, in a file with no \`recipe\` line, and where a later step takes everything together. It is information where what is made may be meant all the same: by another name, by an order that names nothing, or as it lies in its tin.`,
  find({ recipe, outline }) {
    if (outline.recipe === undefined) return [];
    // What the recipe is called after is served.
    const title = wordsOf(recipe.name);
    const isServed = ({ name }: Values) => wordsOf(name).every((word) => title.includes(word));
    const early = [...usedAhead(recipe)].flatMap((index) => madeBelow(recipe.parts[index]) ?? []);
    return [...early.filter(({ values }) => !isServed(values)), ...leftOver(recipe, isServed)];
  },
  say: ({ name, ahead }) => ({
    message: ahead
      ? `The ${name} is used further up, and made only here: put this part before the one that takes it.`
      : `No later step uses the ${name}: mention it where it goes in.`,
  }),
  fix: ({ name, ahead }, { document, recipe }) => {
    if (ahead) return [];
    const last = recipe.parts.findLast((p) => p.steps.length > 0);
    const step = last?.steps.at(-1);
    if (last === undefined || step === undefined) return [];
    const line = (recipe.partsAt[last.index] ?? 0) + step.line;
    return [
      {
        title: `Write a step that uses the ${name}`,
        effect: 'words',
        edits: [insertLineAfter(document, line, `${indentOf(document, line)}do Add the ${name}.`)],
      },
    ];
  },
  examples: {
    good: [
      'recipe Bowl\npart glaze\n  80 g      honey\n  do Warm the honey.\npart oats\n  200 g     rolled oats\n  do Toast the oats and stir in the glaze.\n',
      'recipe Bowl\npart glaze\n  80 g      honey\n  do Warm the honey.\npart oats\n  200 g     rolled oats\n  do Toast the oats.\n  do Stir everything together.\n',
      'recipe Ham\npart ham\n  1.5 kg    cooked ham\n  do Skin the ham.\npart crust\n  80 g      demerara sugar\n  2 tbsp    dry mustard\n  do Mix the sugar and mustard and cover the ham with it.\npart serving\n  1 bunch   parsley\n  do Slice the ham and strew with the parsley.\n',
    ],
    bad: [
      'recipe Oats\npart oats\n  200 g     rolled oats\n  do Toast the oats and pour over the glaze.\npart glaze\n# "glaze" unused-part: made only here\n  80 g      honey\n  do Warm the honey.\npart to serve\n  100 g     plums, sliced\n  do Strew the plums over the oats.\n',
      {
        text: 'recipe Bowl\npart glaze\n# "glaze" unused-part *\n  80 g      honey\n  do Warm the honey.\npart oats\n  200 g     rolled oats\n  do Toast the oats.\n',
        after: {
          'Write a step that uses the glaze':
            'recipe Bowl\npart glaze\n  80 g      honey\n  do Warm the honey.\npart oats\n  200 g     rolled oats\n  do Toast the oats.\n  do Add the glaze.\n',
        },
      },
      'recipe Ham\npart ham\n  1.5 kg    cooked ham\n  do Skin the ham.\npart crust\n# "crust" unused-part info *\n  80 g      demerara sugar\n  2 tbsp    dry mustard\n  do Mix the sugar and mustard.\npart serving\n  1 bunch   parsley\n  do Slice the ham and strew with the parsley.\n',
      'recipe Bowl\npart plum compote\n# "plum compote" unused-part *\n  300 g     plums\n  do Simmer the plums for 20 min.\npart oats\n  200 g     rolled oats\n  do Toast the oats.\n',
    ],
  },
});

/** Parts that nothing takes. */
function leftOver(recipe: Recipe, isServed: (values: Values) => boolean): readonly Found<Values>[] {
  const free = unmentioned(recipe);
  if (free.length === 0) return [];
  // Before a part that takes everything together all is used.
  const from = gathering(recipe).at(-1)?.part.index ?? 0;
  // A part is looked for in later steps: there must be some.
  const to = recipe.parts.findLast(({ steps }) => steps.length > 0)?.index ?? 0;
  const within = between(free, from, to);
  if (within.length === 0) return [];
  // `200 g poolish` on a later list takes the poolish as its steps do.
  const left = untaken(within, including(recipe));
  const ahead = left.length === 0 ? NONE_AHEAD : calledAhead(recipe);
  return left.flatMap((found) => {
    const { values } = found;
    const part = recipe.parts[values.part];
    if (ahead.has(values.part) || isServed(values) || (part !== undefined && goesOnWith(part, recipe.parts))) return [];
    return isLeftOver(part, recipe) ? found : { ...found, severity: 'info' as const };
  });
}

/** A part that steps above it take, and none behind. */
const madeBelow = (part: Part | undefined): Found<Values> | undefined =>
  part === undefined || part.usesByLater.length > 0 || part.steps.length === 0 || part.head.ingredients.length === 0
    ? undefined
    : {
        at: { part: part.index, line: 0, ...nameSpan(part.head) },
        values: { name: part.head.name, part: part.index, ahead: true },
      };

/** Whether it can be nothing that later steps take: it is made, stands in no tin, takes no other part on, and all they take has its name. */
const isLeftOver = (part: Part | undefined, recipe: Recipe): boolean =>
  part !== undefined &&
  part.steps.length > 0 &&
  part.includes.length === 0 &&
  !anyDoes(part.steps, STANDS) &&
  (mayTake(recipe).at(-1)?.part.index ?? 0) <= part.index;

const mayTake = overParts((part) => speaksOfStrangers(part) || takesUnnamed(part) || undefined);

/** `Coat the chops with the rub`, of the part before, and a later part takes the chops. */
function goesOnWith(part: Part, parts: readonly Part[]): boolean {
  const on = coatedBy(part);
  const { index } = part;
  return (
    on.size > 0 &&
    parts.some(
      (later) =>
        later.index > index &&
        later.steps.some(({ mentions }) => mentions.some((each) => foreignTo(index, each).some((key) => on.has(key)))),
    )
  );
}

const coatedBy = onceFor(
  ({ index, steps }: Part): ReadonlySet<string> =>
    new Set(
      steps
        .flatMap(boundEvents)
        .filter(({ event: { act, said } }) => said === 'yes' && COATS.has(act))
        .flatMap(({ names }) =>
          names.flatMap(({ role, mention }) => (role === 'with' ? [] : foreignTo(index, mention))),
        ),
    ),
);

/** What a mention names of the lists above a part. */
const foreignTo = (index: number, { ingredients, part }: Mention): readonly string[] => [
  ...ingredients.flatMap((ref) => (ref.part < index ? [`${ref.part}.${ref.ingredient}`] : [])),
  ...(part !== undefined && part < index ? [`${part}`] : []),
];

const COATS: ReadonlySet<Act> = new Set(['combine', 'cover', 'put', 'stuff', 'steep']);

const STANDS = deed(({ act, craft }) => act === 'shape' || act === 'stuff' || act === 'divide' || craft === 'line');

/** Whether something goes somewhere of which no name is said, or the first that is heated has none. */
const takesUnnamed = ({ steps }: Part): boolean =>
  steps.flatMap(boundEvents).some(({ event, names }, i) => {
    const isMoved = MOVES.has(event.act) || (i === 0 && event.act === 'heat' && event.vessel === undefined);
    return isMoved && !names.some(({ role }) => role === 'what');
  });

const MOVES: ReadonlySet<Act> = new Set(['combine', 'put', 'stuff', 'pack', 'shape', 'divide', 'rise', 'cover']);

const NONE_AHEAD: ReadonlySet<number> = new Set();

/** Parts that no later step mentions. */
const unmentioned = overParts(({ head, index, isLast, usesByLater }): Found<Values> | undefined =>
  isLast || head.name === '' || head.ingredients.length === 0 || usesByLater.length > 0
    ? undefined
    : { at: { part: index, line: 0, ...nameSpan(head) }, values: { name: head.name, part: index } },
);

/** A step takes everything that lies on the bench. */
const gathering = overParts(
  ({ steps }) => steps.some((step) => does(step, GATHERS) || speaksOf(step, 'everything')) || undefined,
);

/** `Layer the ragu and the sheets` tells off what it takes. */
const GATHERS = deed(({ craft, objects }) =>
  craft === 'assemble' || craft === 'layer'
    ? objects.every(({ by }) => by !== 'name')
    : objects.some(({ by }) => by === 'all'),
);

const including = overParts(({ includes }) => (includes.length === 0 ? undefined : includes));

type Free = readonly Given<Found<Values>>[];

const between = onceWith(
  (free: Free, from: number, to: number): Free => free.filter(({ part }) => part.index >= from && part.index < to),
);

type Lists = Given<readonly PartHead[]>;

interface Taken {
  readonly heads: ReadonlySet<PartHead>;
  /** Those of the heads that each part takes on. */
  now?: Worked<Lists, readonly PartHead[] | undefined>;
}

const lastTaken = onceFor((free: Free): Taken => ({ heads: new Set(free.map(({ part }) => part.head)) }));

/** Those that no list takes on, the last first. */
function untaken(free: Free, lists: readonly Lists[]): readonly Found<Values>[] {
  const last = lastTaken(free);
  const takenOn = ({ value }: Lists) =>
    value.some((head) => last.heads.has(head)) ? value.filter((head) => last.heads.has(head)) : undefined;
  last.now = workedAgain(lists, takenOn, last.now);
  const left = new Map(free.map(({ part, value }) => [part.head, value]));
  for (const heads of last.now.values) for (const head of heads ?? []) left.delete(head);
  return [...left.values()].reverse();
}
