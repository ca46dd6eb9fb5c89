import type { PlacedLine } from '../../notation/outline.ts';
import { nameSpeaksOf } from '../../recipe/journey/deeds.ts';
import { titleOf } from '../../recipe/names/title.ts';
import { defineCheck, type Found } from '../check.ts';
import { onceFor } from '../once.ts';

interface Values {
  readonly name: string;
}

export default defineCheck<Values>({
  code: 'yield-missing',
  title: 'The recipe does not say how much it makes',
  family: 'method',
  severity: 'info',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `A recipe with a head (\`by\`, \`serve\`, \`source\`, \`tags\` or \`pan\`) and no \`yield\` line.

**Why it matters.** The cook cannot tell how many it feeds, nobody can cost a portion, and it can be scaled by a factor only.

**What to do.** Write what it makes: \`yield 12 squares\`, \`yield 900 g\`, \`yield 24 rolls of 60 g\`.

**Silent** for a draft that has only a name, for files of parts without a \`recipe\` line, for bases (the name or a tag says *base*), and for what builds on another file.`,
  find({ recipe, outline }) {
    const first = outline.recipe;
    if (first === undefined || recipe.yield !== undefined || recipe.inherits || isBase(outline, recipe.name)) return [];
    if (outline.head.some(({ line }) => line.statement.kind === 'yield')) return [];
    const hasHead = outline.head.some(
      ({ line: { statement } }) =>
        statement.kind === 'tags' ||
        statement.kind === 'pan' ||
        (statement.kind === 'text' && statement.field !== 'note'),
    );
    if (!hasHead || !recipe.parts.some((p) => p.steps.length > 0)) return [];
    return foundAt(first);
  },
  say: () => ({
    message:
      'How much does it make? Write a `yield` line above the parts: `yield 12 squares`, `yield 900 g` or `yield 24 rolls of 60 g`.',
  }),
  examples: {
    good: [
      'recipe Oats\n  by      Harbour Lane test kitchen\n  yield   4 bowls\n  200 g     rolled oats\n  do Bake the oats at 180 C for 10 min until golden.\n',
      'recipe Oat base\n  by      Harbour Lane test kitchen\n  200 g     rolled oats\n  do Bake the oats at 180 C for 10 min until golden.\n',
    ],
    bad: [
      'recipe Oats\n#      ^^^^ yield-missing\n  by      Harbour Lane test kitchen\n  200 g     rolled oats\n  do Bake the oats at 180 C for 10 min until golden.\n',
      'recipe Oat slab\n#      ^^^^^^^^ yield-missing: How much\n  tags    breakfast\n  pan     square 20 x 5 cm\n  200 g     rolled oats\n  100 g     butter\n  do Melt the butter and stir in the oats.\n  do Bake at 180 C for 25 min until gold.\n',
    ],
  },
});

const foundAt = onceFor(({ at, line: { statement, keyword } }: PlacedLine): readonly Found<Values>[] => {
  const name = titleOf(statement).name;
  const span = name ?? keyword;
  return span === undefined
    ? []
    : [{ at: { line: at, start: span.start, end: span.end }, values: { name: name?.text ?? '' } }];
});

function isBase(
  outline: {
    readonly head: readonly {
      readonly line: {
        readonly statement: { readonly kind: string; readonly tags?: readonly { readonly text: string }[] };
      };
    }[];
  },
  name: string,
): boolean {
  return (
    nameSpeaksOf(name, 'component') ||
    outline.head.some(({ line }) => line.statement.tags?.some((t) => nameSpeaksOf(t.text, 'component')) ?? false)
  );
}
