import { distance } from 'fastest-levenshtein';
import { replaceSpan } from '../../edits/text-edit.ts';
import type { Block, PlacedLine } from '../../notation/outline.ts';
import type { Line, TextNode } from '../../notation/tree.ts';
import { wordsOf } from '../../recipe/words.ts';
import { type BrokenLink, defineCheck, type Found } from '../check.ts';
import { onceFor, onceWith } from '../once.ts';
import { byPart, overParts } from '../over-parts.ts';

interface Values {
  readonly name: string;
  /** The parts there are, nearest first. */
  readonly parts: readonly string[];
  /** Where it was looked for: this file, the file named, the base that a swap or drop changes; or the step that names what was dropped. */
  readonly where: 'here' | 'file' | 'base' | 'step' | 'nowhere';
}

const WHERE: ReadonlyMap<BrokenLink['kind'], Values['where']> = new Map([
  ['unknown-part', 'file'],
  ['nothing-to-change', 'base'],
  ['still-named', 'step'],
]);

const LOOKED_FOR = {
  here: 'There is no part',
  file: 'That file has no part',
  base: 'What this builds on lists no',
} as const;

export default defineCheck<Values>({
  code: 'unknown-part',
  title: 'A part is named that is not there',
  family: 'reading',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `A trial says \`used 90 g caster sugar in custrd\`, or a part is taken \`from pastry.quern : sweet paste\`, and there is no part of that name; or a variant swaps or drops an ingredient that its base does not list; or it drops one that the steps it keeps go on naming; or there is a swap or a drop, and no base for it to change.

**Why it matters.** What a trial used cannot be held against the list, and a part that is not found brings no ingredients.

**What to do.** Write the name as it stands after \`part\`. **Silent** where the name fits a part in singular or plural or by its last word, in a recipe without named parts, and where the recipe builds on another file that may have it.`,
  find({ recipe, outline, broken }) {
    const links = broken === undefined || broken.length === 0 ? NONE : linksIn(broken);
    if (recipe.inherits) return links;
    const inHead = changesInHead(outline.head);
    const inParts = changes(recipe);
    const used = usedIn(outline.trials);
    const unknown = used.length === 0 ? NONE : unknownIn(used, namesOf(recipe));
    return [...links, ...inHead, ...inParts.flatMap(({ value }) => value), ...unknown];
  },
  say: ({ name, parts, where }) => {
    const choices = parts
      .slice(0, 3)
      .map((p) => `\`${p}\``)
      .join(', ');
    if (where === 'nowhere')
      return {
        message: `This builds on no other recipe, so there is no \`${name}\` to change: name the base with \`from FILE\`, or write the ingredient itself.`,
      };
    if (where === 'step')
      return {
        message: `It is dropped here, and a step of the base still says \`${name}\`: write the steps of that part anew.`,
      };
    if (where === 'base' && choices === '')
      return { message: `What this builds on lists nothing in this part, so there is no \`${name}\` to change.` };
    if (where === 'file' && choices === '')
      return { message: `That file has no named parts: leave out \`: ${name}\` to take its whole recipe.` };
    return { message: `${LOOKED_FOR[where]} \`${name}\`${choices === '' ? '' : `: there is ${choices}`}.` };
  },
  fix: ({ name, parts }, _scene, at) =>
    parts
      .filter((part) => isNear(name, part))
      .slice(0, 3)
      .map((part) => ({
        title: `Write \`${part}\``,
        effect: 'words' as const,
        edits: [replaceSpan(at.line, at, part)],
      })),
  examples: {
    good: [
      'recipe Slab\npart base\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\ntrial 2026-10-03 by Bao\n  used    80 g butter in the base\n  verdict keep\n',
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\ntrial 2026-10-03 by Bao\n  used    80 g butter\n  verdict keep\n',
    ],
    bad: [
      {
        text: 'recipe Slab\npart base\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\ntrial 2026-10-03 by Bao\n  used    80 g butter in bse\n# "bse" unknown-part *: base\n  verdict keep\n',
        after: {
          'Write `base`':
            'recipe Slab\npart base\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\ntrial 2026-10-03 by Bao\n  used    80 g butter in base\n  verdict keep\n',
        },
      },
      'recipe Slab\n  drop nutmeg\n#      ^^^^^^ unknown-part: builds on no other recipe\n  200 g     rolled oats\n  80 g      butter\n  swap butter for 70 g margarine\n#      ^^^^^^ unknown-part: builds on no other recipe\n  do Rub the butter into the oats.\n',
      'recipe Slab\npart oat base\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\ntrial 2026-10-03 by Bao\n  used    80 g butter in glaze\n# "glaze" unknown-part: oat base\n  verdict keep\n',
    ],
  },
});

/** The ingredient of a base that a line swaps or drops. */
function changedIn({ statement }: Line): TextNode[] {
  const name = statement.kind === 'swap' ? statement.old : statement.kind === 'drop' ? statement.name : undefined;
  return name === undefined ? [] : [name];
}

const NONE: readonly Found<Values>[] = [];

const linksIn = onceFor((broken: readonly BrokenLink[]): readonly Found<Values>[] =>
  broken.flatMap(({ kind, line, span, name, near }) => {
    const where = WHERE.get(kind);
    return where === undefined ? [] : [{ at: { line, ...span }, values: { name, parts: nearest(name, near), where } }];
  }),
);

const changesInHead = onceFor((head: readonly PlacedLine[]): readonly Found<Values>[] =>
  head.flatMap(({ at, line }) =>
    changedIn(line).map((name) => ({ at: { line: at, ...spanOf(name) }, values: nothingToChange(name) })),
  ),
);

const changes = overParts(({ index, head }): readonly Found<Values>[] | undefined => {
  let found: Found<Values>[] | undefined;
  for (const [at, line] of head.source.lines.entries())
    for (const name of changedIn(line)) {
      found ??= [];
      found.push({ at: { part: index, line: at, ...spanOf(name) }, values: nothingToChange(name) });
    }
  return found;
});

interface UsedIn {
  readonly line: number;
  readonly name: string;
  readonly start: number;
  readonly end: number;
}

/** The parts that trials say they used something in. */
const usedIn = onceFor((trials: readonly Block[]): readonly UsedIn[] =>
  trials.flatMap(({ at, lines }) =>
    lines.flatMap(({ statement }, i) => {
      const part = statement.kind === 'used' ? statement.part : undefined;
      if (part === undefined) return [];
      const name = part.text.replace(/^the /i, '');
      return [{ line: at + i, name, start: part.end - name.length, end: part.end }];
    }),
  ),
);

const namesOf = byPart(({ head }) => head.name);

const unknownIn = onceWith((used: readonly UsedIn[], all: readonly string[]): readonly Found<Values>[] => {
  const exact = new Set(all);
  const names = [...exact].filter((n) => n !== '');
  return used.flatMap(({ line, name, start, end }) =>
    exact.has(name) || names.length === 0 || names.some((n) => isCalled(n, name))
      ? []
      : [{ at: { line, start, end }, values: { name, parts: nearest(name, names), where: 'here' as const } }],
  );
});

const spanOf = ({ start, end }: TextNode) => ({ start, end });
const nothingToChange = ({ text }: TextNode): Values => ({ name: text, parts: [], where: 'nowhere' });

/** By its name in any number, or by its last word. */
function isCalled(part: string, name: string): boolean {
  const words = wordsOf(part);
  const called = wordsOf(name).join(' ');
  return called === words.join(' ') || called === words.at(-1);
}

const MOST_APART = 3;

const isNear = (name: string, part: string): boolean =>
  Math.abs(name.length - part.length) <= MOST_APART && distance(name.toLowerCase(), part.toLowerCase()) <= MOST_APART;

const nearest = (name: string, parts: readonly string[]): readonly string[] =>
  name.length > 60 ? parts : [...parts].sort((a, b) => howFar(name, a) - howFar(name, b));

/** To the name, or to the words it ends with: `buter` is near to unsalted butter. */
function howFar(name: string, part: string): number {
  const words = part.toLowerCase().split(' ');
  return Math.min(...words.map((_, i) => distance(name.toLowerCase(), words.slice(i).join(' '))));
}
