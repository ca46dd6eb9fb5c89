import { isOnOwnLine } from '../../edits/list-line.ts';
import { indentOf } from '../../edits/set-amount.ts';
import { deleteLine, insertLineAfter } from '../../edits/text-edit.ts';
import { anyDoes, deed } from '../../recipe/journey/deeds.ts';
import { speaksOfStrangers, tellsOff, unsaidIn } from '../../recipe/journey/unsaid.ts';
import type { Ingredient, LedgerEntry, Part, Step, TakenUse } from '../../recipe/model.ts';
import { saysOneOf } from '../../recipe/names/mentions.ts';
import { wordsOf } from '../../recipe/words.ts';
import { defineCheck, type Found } from '../check.ts';
import { takesEverything } from '../everything.ts';
import { overParts } from '../over-parts.ts';
import { repeatsIn } from './repeats.ts';

interface Values {
  readonly name: string;
  readonly part: number;
  readonly ingredient: Ingredient;
}

export default defineCheck<Values>({
  code: 'unused-ingredient',
  title: 'An ingredient is never used in the steps',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `What stands in the list is bought, weighed and set out. If no step says where it goes, the cook finds it on the bench when the dish is in the oven. The steps of this part, and of the parts after it, are read for the ingredient's name, its last word, and its other names.

Mention it where it goes in, or take it off the list; write \`[whole milk]\` where the sentence says it in other words. Silent for what is optional or added to taste, where no step is written yet, or a part has none and later steps name nothing of its list; for what an order takes without naming it: everything (\`Mix together\` at the start, \`add the rest\`), what the part is of (\`Season and roast\`), what the work needs (salt and spice to season, egg to glaze, fat to fry, water to boil); for what stands on one line with something that is used, and in a part that only serves what others made; for a name that is only misspelled (\`unknown-food\` says so) and for a line that \`repeated-ingredient\` speaks of. Information where a step names something that is not on the list (\`turn the birds\`), which may be it.`,
  *find(part) {
    if (!part.ledger.some(isUnused) || part.steps.length === 0 || (!tellsOff(part) && takesEverything(part.steps)))
      return;
    const unsaid = unsaidIn(part);
    const unused = Array.from(unusedIn(part)).filter(
      ([index, found]) =>
        !unsaid.has(index) && !isHeard(found, part.steps) && !isBesideUsed(part, found.values.ingredient),
    );
    // Who names all others one by one names this one too.
    const isSure = unused.length === 1 && part.ledger.filter(({ uses }) => uses.length > 0).length >= MANY;
    const severity = !isSure && speaksOfStrangers(part) ? 'info' : undefined;
    for (const [, found] of unused) yield severity === undefined ? found : { ...found, severity };
  },
  findInFile({ recipe }) {
    const lists = listsAlone(recipe);
    if (lists.length === 0) return NONE;
    const all = gathering(recipe);
    return lists.flatMap(({ part, value }): readonly Found<Values>[] => {
      const later = recipe.parts.slice(part.index + 1);
      return all.some((g) => g.part.index > part.index)
        ? NONE
        : value.filter(
            (found) => !isSharedName(found, part, recipe.parts) && !later.some(({ steps }) => isHeard(found, steps)),
          );
    });
  },
  say: ({ name }) => ({ message: `No step uses the ${name}: say where it goes, or take it off the list.` }),
  fix: ({ name, part, ingredient }, { document, recipe }) => {
    const base = recipe.partsAt[part] ?? 0;
    // Where a list has no steps of its own, they stand below it.
    const own = recipe.parts[part];
    const bound = own?.steps.length === 0 ? recipe.parts.findLast(({ steps }) => steps.length > 0) : own;
    const before = bound && stepBefore(bound, own, ingredient);
    if (bound === undefined || before === undefined) return [];
    const line = (recipe.partsAt[bound.index] ?? 0) + before.line;
    return [
      {
        title: `Write a step that adds the ${name}`,
        effect: 'words',
        edits: [insertLineAfter(document, line, `${indentOf(document, line)}do Add the ${name}.`)],
      },
      ...(own !== undefined && isOnOwnLine(own, ingredient)
        ? [
            {
              title: `Take the ${name} off the list`,
              effect: 'amounts' as const,
              edits: [deleteLine(document, base + ingredient.line)],
            },
          ]
        : []),
    ];
  },
  examples: {
    good: [
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n',
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Mix all the ingredients.\n',
      'recipe Slab\npart ingredients\n  200 g     rolled oats\n  80 g      butter\n  40 g      honey\npart method\n  do Melt the butter.\n  do Mix with the rest of the ingredients.\n',
      'recipe Poolish\n  250 g     bread flour\n  250 g     water\n  0.5 g     instant yeast\n  do Stir together and ferment at 21 C for 12 h.\n',
      'recipe Levain\n  50 g      bread flour\n  50 g      water\n  do Mix all and ferment at 24 C for 6 h.\n',
      'recipe Cake\npart cake\n  200 g     self-raising flour\n  150 g     sugar\n  150 g     butter\n  3         eggs\npart topping\n  6         plums\n  20 g      sugar\npart method\n  do Cream the butter and sugar, beat in the eggs and the flour.\n  do Lay the plums on it and sprinkle with sugar. Bake at 180 C for 45 min until gold.\n',
    ],
    bad: [
      'recipe Poolish\n  250 g     bread flour\n  250 g     water\n  1 g       instant yeast\n# "instant yeast" unused-ingredient *\n  do Stir the flour and the water together.\n  do Mix well.\n',
      {
        text: 'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  60 g      honey\n# "honey" unused-ingredient *\n  do Rub the butter into the oats.\n',
        after: {
          'Write a step that adds the honey':
            'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  60 g      honey\n  do Rub the butter into the oats.\n  do Add the honey.\n',
          'Take the honey off the list':
            'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n',
        },
      },
      'recipe Pie\npart ingredients\n  300 g     apples\n  50 g      caster sugar\n  1 tsp     ground cinnamon\n# "ground cinnamon" unused-ingredient *\npart method\n  do Toss the apples with the sugar and bake at 180 C for 40 min until soft.\n',
      'recipe Cake\npart cake\n  200 g     self-raising flour\n  150 g     sugar\n# "sugar" unused-ingredient *\n  150 g     butter\n  3         eggs\npart topping\n  6         plums\n  20 g      sugar\npart method\n  do Cream the butter, beat in the eggs and the flour.\n  do Lay the plums on it and sprinkle with sugar. Bake at 180 C for 45 min until gold.\n',
      'recipe Bowl\npart oats\n  200 g     rolled oats\n  20 g      butter\n# "butter" unused-ingredient *: No step uses the butter\n  do Toast the oats.\npart to serve\n  80 g      honey\n  do Pour the honey over the oats.\n',
    ],
  },
});

/**
 * The step behind which an ingredient goes in, by what stands beside it on the list: after what is above it, and not after what is below.
 * The last one where neither is taken.
 */
function stepBefore({ steps, index }: Part, own: Part | undefined, ingredient: Ingredient): Step | undefined {
  const first = (isBeside: (line: number) => boolean): readonly number[] =>
    (own?.ledger ?? []).flatMap(({ ingredient: { line }, uses }) => {
      const use = isBeside(line) ? uses.find(({ part }) => part === index) : undefined;
      return use === undefined ? [] : [use.step];
    });
  const above = first((line) => line < ingredient.line);
  const below = first((line) => line > ingredient.line);
  if (above.length === 0 && below.length === 0) return steps.at(-1);
  return steps[above.length > 0 ? Math.min(Math.max(...above), ...below) : Math.max(0, Math.min(...below) - 1)];
}

/** Judgement. */
const MANY = 3;

/** What a part lists and nobody uses, with its place in the list. */
function* unusedIn(part: Part): Iterable<readonly [number, Found<Values>]> {
  for (const [index, entry] of part.ledger.entries()) {
    const { ingredient } = entry;
    if (!isUnused(entry) || ingredient.node.name === undefined) continue;
    if (repeatsIn(part).some((r) => r.second === index)) continue;
    const { start, end } = ingredient.node.name;
    yield [
      index,
      {
        at: { line: ingredient.line, start, end, part: part.index },
        values: { name: ingredient.name, part: part.index, ingredient },
      },
    ];
  }
}

/** A list of which the steps stand in later parts: they name some of it, one by one. */
const listsAlone = overParts((part): readonly Found<Values>[] | undefined => {
  if (part.steps.length > 0 || part.usesByLater.length === 0) return undefined;
  if (!part.ledger.some(isUnused)) return undefined;
  // `Roll out the dough`, after nearly all that it is of was named one by one.
  if (!tellsOff(part) && part.usesByLater.some(({ ingredient }) => ingredient === undefined)) return undefined;
  return Array.from(unusedIn(part), ([, found]) => found);
});

const gathering = overParts(({ steps }) => takesEverything(steps) || undefined);

const NONE: readonly never[] = [];

/** `Sugar` stands in two lists, and steps say it twice or more, of one of them for all that is read: which they mean is not written. */
const isSharedName = ({ values: { name } }: Found<Values>, own: Part, parts: readonly Part[]): boolean =>
  parts.some(
    (other) =>
      other !== own &&
      other.ledger.some(({ uses }) => {
        // `… until the sugar dissolves`, in the step that takes it, is no second time.
        const taking = uses.filter(
          ({ ready, step, part }, at) => !ready || uses.findIndex((u) => u.step === step && u.part === part) === at,
        );
        return (
          taking.length > 1 &&
          taking.some((use) => wordsOf(mentioned(use, parts)).every((w) => wordsOf(name).includes(w)))
        );
      }),
  );

const mentioned = ({ part, line, mention: { start, end } }: TakenUse, parts: readonly Part[]): string =>
  parts[part]?.head.source.lines[line]?.text.slice(start, end) ?? '';

/** Whether steps take it all the same: to fry in, or by the name that its line misspells. */
const isHeard = ({ values: { ingredient } }: Found<Values>, steps: readonly Step[]): boolean =>
  isFryingFat(ingredient, steps) || isMisspelled(ingredient, steps);

/** `3 eggs and 1 yolk, beaten`: who takes the eggs takes what stands on one line with them. */
const isBesideUsed = ({ ledger }: Part, { line }: Ingredient): boolean =>
  ledger.some((entry) => entry.ingredient.line === line && entry.uses.length > 0);

const isUnused = ({ uses, ingredient }: LedgerEntry): boolean =>
  uses.length === 0 && !ingredient.optional && !ingredient.free;

/** What else but the oil on the list would a step deep-fry in? */
const isFryingFat = ({ food }: Ingredient, steps: readonly Step[]): boolean =>
  (food?.class === 'oil' || food?.class === 'fat') && anyDoes(steps, DEEP_FRYING);

const DEEP_FRYING = deed(({ craft }) => craft === 'deep-fry');

/** A step names the food that the line nearly names. */
function isMisspelled({ match }: Ingredient, steps: readonly Step[]): boolean {
  if (match.kind !== 'unknown' || match.near.length === 0) return false;
  const nouns = new Set(match.near.flatMap((food) => wordsOf(food.name).at(-1) ?? []));
  return steps.some(({ sentence }) => saysOneOf(sentence, nouns));
}
