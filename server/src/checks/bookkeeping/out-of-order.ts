import { replaceSpan, type TextEdit } from '../../edits/text-edit.ts';
import type { Part } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';

interface Values {
  readonly name: string;
  /** What stands above it and is used later. */
  readonly after: string;
  readonly part: Part;
}

/** Steps that an ingredient may stand out of turn: lists are often grouped within a stage. */
const LEAST_STEPS = 2;
/** Or so many lines, all of which are used later. */
const LEAST_LINES = 3;

export default defineCheck<Values>({
  code: 'out-of-order',
  title: 'The list is not in the order of use',
  family: 'bookkeeping',
  severity: 'hint',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `A recipe lists its ingredients in the order the steps use them, so that a cook can set them out once and work down the list. Here an ingredient stands below one that is used ${LEAST_STEPS} or more steps later, or below ${LEAST_LINES} or more that are used in the next.

**What it computes.** The first step of this part that takes each ingredient. **What to do.** Sort the list; one click does it.

**Silent** within a step, for one or two lines that are used in the next step, for what is optional or to taste, for what no step of this part takes, and where lines share a name.`,
  *find(part) {
    const firsts = firstSteps(part);
    if (firsts === undefined || isInOrder(firsts)) return;
    // The latest first use among the lines above.
    let latest: { step: number; name: string } | undefined;
    // How many lines above are first used in each step.
    const above: number[] = [];
    for (const { index, step } of firsts) {
      const later = above.reduce((n, lines, s) => (s > step ? n + lines : n), 0);
      above[step] = (above[step] ?? 0) + 1;
      const ingredient = part.head.ingredients[index];
      const name = ingredient?.node.name;
      if (ingredient === undefined || name === undefined) continue;
      if (latest !== undefined && (latest.step - step >= LEAST_STEPS || later >= LEAST_LINES)) {
        const values: Values = { name: ingredient.name, after: latest.name, part };
        yield { at: { line: ingredient.line, start: name.start, end: name.end }, values };
        return;
      }
      if (latest === undefined || step > latest.step) latest = { step, name: ingredient.name };
    }
  },
  say: ({ name, after }) => ({
    message: `The steps take the ${name} before the ${after}, which stands above: put the list in the order of use.`,
  }),
  fix: ({ part }, { recipe }) => {
    const edits = sortEdits(part, recipe.partsAt[part.index] ?? 0);
    if (edits === undefined) return [];
    // What no step of the part takes has no place in that order, and a step that cannot be read may take any.
    const isSure =
      part.ledger.every(({ uses }) => uses[0]?.part === part.index) &&
      part.head.source.lines.every(({ faults }) => faults.length === 0);
    return [{ title: 'Put the list in the order of use', effect: 'words', ...(isSure && { unattended: true }), edits }];
  },
  examples: {
    good: [
      'recipe Slab\n  80 g      butter\n  60 g      honey\n  200 g     rolled oats\n  do Melt the butter.\n  do Stir in the honey.\n  do Add the oats.\n',
      'recipe Slab\n  60 g      honey\n  80 g      butter\n  200 g     rolled oats\n  do Melt the butter.\n  do Stir in the honey and the oats.\n',
    ],
    bad: [
      {
        text: 'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n#           ^^^^^^ out-of-order *\n  60 g      honey\n  do Melt the butter.\n  do Stir in the honey.\n  do Add the oats.\n',
        after: {
          'Put the list in the order of use':
            'recipe Slab\n  80 g      butter\n  60 g      honey\n  200 g     rolled oats\n  do Melt the butter.\n  do Stir in the honey.\n  do Add the oats.\n',
        },
      },
      'recipe Broth\n  10 g      parsley\n  200 g     carrots\n#           ^^^^^^^ out-of-order *: before the parsley\n  1 l       chicken stock\n  do Simmer the carrots in the stock for 20 min.\n  do Skim.\n  do Strew with the parsley.\n',
    ],
  },
});

interface First {
  readonly index: number;
  readonly step: number;
}

/** By ingredient in the order of the list; undefined where the list cannot be sorted by its steps. */
function firstSteps(part: Part): readonly First[] | undefined {
  const names = new Set<string>();
  const firsts: First[] = [];
  for (const [index, { ingredient, uses }] of part.ledger.entries()) {
    if (names.has(ingredient.name)) return undefined;
    names.add(ingredient.name);
    const first = uses[0];
    if (first === undefined || first.part !== part.index || ingredient.optional || ingredient.free) continue;
    firsts.push({ index, step: first.step });
  }
  return firsts;
}

const isInOrder = (firsts: readonly First[]): boolean =>
  firsts.every(({ step }, i) => i === 0 || step >= (firsts[i - 1]?.step ?? 0));

/** Each line of the list takes the text of the one that belongs there; nothing where other lines stand between. */
function sortEdits(part: Part, base: number): readonly TextEdit[] | undefined {
  const { ingredients, source } = part.head;
  const lines = ingredients.map((i) => i.line);
  if (lines.some((line, i) => i > 0 && line !== (lines[i - 1] ?? 0) + 1)) return undefined;
  const step = (index: number): number => {
    const first = part.ledger[index]?.uses[0];
    return first === undefined || first.part !== part.index ? Number.POSITIVE_INFINITY : first.step;
  };
  const order = ingredients.map((_, i) => i).sort((a, b) => (step(a) === step(b) ? a - b : step(a) - step(b)));
  const texts = order.map((i) => source.lines[lines[i] ?? 0]?.text ?? '');
  return lines.flatMap((line, i) => {
    const old = source.lines[line]?.text ?? '';
    const text = texts[i] ?? old;
    return text === old ? [] : [replaceSpan(base + line, { start: 0, end: old.length }, text)];
  });
}
