import { deleteLine, insertLineAfter, type TextEdit } from '../../edits/text-edit.ts';
import type { PlacedPart } from '../../notation/outline.ts';
import { titleOf } from '../../recipe/names/title.ts';
import { sameName } from '../../recipe/words.ts';
import { type BrokenLink, defineCheck, type Fix, type Scene } from '../check.ts';

type Reach = NonNullable<BrokenLink['reaches']>[number];

interface Values {
  readonly name: string;
  readonly reaches: readonly Reach[];
}

export default defineCheck<Values>({
  code: 'swap-in-two-parts',
  title: 'What is swapped stands in several parts',
  family: 'reading',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `\`swap butter for 150 g margarine\` above the parts changes the butter of every part that lists it. The 150 g are then shared out by how much butter each part had; where that is not known, each part gets all of it. What is dropped is dropped from every part.

**Why it matters.** The butter of the case and that of the filling may not be meant alike, and nobody sees from the line who gets how much.

**What to do.** Write the swap under the part it is for, or one under each with what that part gets. **Silent** where only one part lists it, and for a swap under a part. Of a drop it is information.`,
  find: ({ broken }) =>
    (broken ?? []).flatMap(({ kind, line, span, name, reaches }) => {
      if (kind !== 'in-several-parts' || reaches === undefined) return [];
      const drops = reaches.every(({ gets }) => gets === undefined);
      return [{ at: { line, ...span }, values: { name, reaches }, ...(drops && { severity: 'info' as const }) }];
    }),
  say: ({ name, reaches }) => {
    const parts = reaches.map(({ part }) => `\`${part}\``).join(' and ');
    const gets = reaches.flatMap(({ part, gets }) => (gets === undefined ? [] : [`\`${part}\` ${gets}`]));
    const now = gets.length === 0 ? 'it is dropped from each' : `now ${gets.join(' and ')} is what each gets`;
    return { message: `\`${name}\` stands in ${parts}, and ${now}: write the line under the part it is for.` };
  },
  fix: ({ name, reaches }, scene, at) => {
    const line = scene.document.lines[at.line]?.text.trim() ?? '';
    const each = reaches.flatMap(({ part, gets }) =>
      gets === undefined ? [] : [{ part, line: `swap ${name} for ${gets}` }],
    );
    const alone = reaches.map(({ part }) => ({ title: `Write it under \`${part}\` alone`, lines: [{ part, line }] }));
    const all = each.length === 0 ? [] : [{ title: 'Write under each part what it gets', lines: each }];
    return [...alone, ...all].flatMap(({ title, lines }): Fix[] =>
      line === '' ? [] : [{ title, effect: 'amounts', edits: movedUnder(scene, at.line, lines) }],
    );
  },
  examples: {
    good: [
      'recipe Leek quiche with margarine\n  from    examples/pastry/leek-quiche.quern\npart vegetables\n  swap unsalted butter for 20 g margarine\n',
      'recipe Quiche with whipping cream\n  from    examples/pastry/leek-quiche.quern\n  swap double cream for 250 g whipping cream\n',
    ],
    bad: [
      'recipe Leek quiche with margarine\n  from    examples/pastry/leek-quiche.quern\n  swap unsalted butter for 140 g margarine\n#      ^^^^^^^^^^^^^^^ swap-in-two-parts *\n',
      'recipe Unsalted quiche\n  from    examples/pastry/leek-quiche.quern\n  drop fine salt\n#      ^^^^^^^^^ swap-in-two-parts info *\n',
    ],
  },
});

/** A line of the head taken away, and others written at the end of their parts, which are begun where the file has none of that name. */
function movedUnder(
  { document, outline }: Scene,
  at: number,
  lines: readonly { readonly part: string; readonly line: string }[],
): readonly TextEdit[] {
  const indent = /^\s*/.exec(document.lines[at]?.text ?? '')?.[0] ?? '';
  const end = Math.min(
    ...[...outline.trials, ...outline.foods].map((block) => block.at),
    lastLine(document.lines.map(({ text }) => text)) + 1,
  );
  const edits = new Map<number, string[]>();
  for (const { part, line } of lines) {
    const there = outline.parts.find((p) => sameName(nameOf(p), part));
    const after = there === undefined ? end - 1 : there.at + lastLine(there.source.lines.map(({ text }) => text));
    const added = there === undefined ? ['', `part ${part}`, `${indent}${line}`] : [`${indent}${line}`];
    edits.set(after, [...(edits.get(after) ?? []), ...added]);
  }
  return [
    deleteLine(document, at),
    ...[...edits].map(([after, texts]) => insertLineAfter(document, after, texts.join('\n'))),
  ];
}

const lastLine = (texts: readonly string[]): number =>
  Math.max(
    0,
    texts.findLastIndex((text) => text.trim() !== ''),
  );

function nameOf({ source }: PlacedPart): string {
  const first = source.lines[0]?.statement;
  return source.named && first?.kind === 'part' ? (titleOf(first).name?.text ?? '') : '';
}
