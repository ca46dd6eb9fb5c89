import { replaceSpan } from '../../edits/text-edit.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import type { Mention, Part, Step } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';

interface Values {
  readonly written: string;
  readonly names: readonly string[];
  readonly mention: Mention;
}

export default defineCheck<Values>({
  code: 'ambiguous-mention',
  title: 'A word in a step could be two ingredients',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `The list has two sugars and a step says \`the sugar\`. The writer knows which; the reader guesses, and so would the ledger. Where a word is the last word of two ingredients of the part, it is asked about rather than guessed.

Write the full name. Silent where the plural means both (\`the sugars\`), where the same name stands twice in the list, where all others that it could be are called by their names in later steps, where it only dusts or greases or tells until when (\`until no dry flour is left\`), and once every ingredient it could be has been used up, since then it only speaks of the mixture.`,
  *find(part) {
    // A word that names one ingredient is plain.
    if (!part.steps.some((s) => s.mentions.some((m) => m.ingredients.length > 1 && !m.every))) return;
    const used = new Set<number>();
    for (const step of part.steps) {
      for (const mention of step.mentions) {
        const own = ownOf(mention, part);
        if (
          own.length > 1 &&
          own.length === mention.ingredients.length &&
          !mention.every &&
          own.some((i) => !used.has(i)) &&
          // `The sugar`, where later steps alone call the icing sugar by its name.
          own.filter((i) => used.has(i) || !isNamedAfter(step, i, part)).length !== 1 &&
          !isInPassing(step, mention)
        ) {
          const values = valuesOf(part, step.line, mention, own);
          if (values !== undefined) yield { at: { line: step.line, start: mention.start, end: mention.end }, values };
        }
        if (own.length === 1 || mention.every) for (const i of own) used.add(i);
      }
    }
  },
  say: ({ written, names }) => ({
    message: `\`${written}\` could be ${choices(names)}: write which.`,
  }),
  fix: ({ names, mention }, _scene, at) =>
    names.slice(0, MOST_NAMED).map((name) => ({
      title: `Write \`${name}\``,
      effect: 'words' as const,
      edits: [replaceSpan(at.line, mention, name)],
    })),
  examples: {
    good: [
      'recipe Slab\n  100 g     caster sugar\n  80 g      dark brown sugar\n  do Toast the caster sugar, then stir in the brown sugar.\n',
      'recipe Slab\n  100 g     caster sugar\n  80 g      dark brown sugar\n  do Melt the sugars together.\n',
    ],
    bad: [
      {
        text: 'recipe Slab\n  100 g     caster sugar\n  80 g      dark brown sugar\n  do Melt half the sugar.\n#                  ^^^^^ ambiguous-mention *: caster sugar or the dark brown sugar\n  do Add the rest of the caster sugar and the dark brown sugar.\n',
        after: {
          'Write `caster sugar`':
            'recipe Slab\n  100 g     caster sugar\n  80 g      dark brown sugar\n  do Melt half the caster sugar.\n  do Add the rest of the caster sugar and the dark brown sugar.\n',
        },
      },
      'recipe Rolls\n  300 g     bread flour\n  200 g     rye flour\n  330 g     water\n  do Mix half the flour with the water.\n# "flour" ambiguous-mention *\n  do Knead in the rest of the bread flour and the rye flour.\n',
    ],
  },
});

const ownOf = ({ ingredients }: Mention, { index }: Part): readonly number[] =>
  ingredients.flatMap((r) => (r.part === index ? r.ingredient : []));

/** Whether a step behind this one calls it by its name, and this one does not. */
const isNamedAfter = ({ line }: Step, ingredient: number, part: Part): boolean => {
  const own = part.steps.filter(({ mentions }) =>
    mentions.some((m) => ownOf(m, part).length === 1 && ownOf(m, part)[0] === ingredient),
  );
  return own.length > 0 && own.every((step) => step.line > line);
};

function valuesOf(part: Part, line: number, mention: Mention, own: readonly number[]): Values | undefined {
  const names = own.map((i) => part.head.ingredients[i]?.name ?? '');
  if (new Set(names).size < names.length) return undefined;
  const written = part.head.source.lines[line]?.text.slice(mention.start, mention.end) ?? '';
  return { written, names, mention };
}

/** `Dust a sheet with flour`, `until no dry flour is left`: any of them will do. */
const isInPassing = (step: Step, mention: Mention): boolean =>
  boundEvents(step).some(
    ({ event: { craft, until }, names }) =>
      until.some((sign) => sign.start <= mention.start && mention.end <= sign.end) ||
      ((craft === 'dust' || craft === 'grease') && names.some((name) => name.mention === mention)),
  );

/** Nobody chooses from more. */
const MOST_NAMED = 10;

function choices(names: readonly string[]): string {
  const named = names.slice(0, MOST_NAMED).map((name) => `the ${name}`);
  const others = names.length - named.length;
  return [...named, ...(others > 0 ? [`one of ${others} others`] : [])].join(' or ');
}
