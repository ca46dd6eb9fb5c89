import { replaceSpan } from '../../edits/text-edit.ts';
import type { PlacedLine } from '../../notation/outline.ts';
import type { TextNode } from '../../notation/tree.ts';
import { lacking, lookAt, plainKind, plainKindCalled } from '../../recipe/kind-evidence.ts';
import { kindNamed } from '../../recipe/measures/kinds.ts';
import { nearKinds } from '../../recipe/measures/near-kind.ts';
import type { Part } from '../../recipe/model.ts';
import { titleOf } from '../../recipe/names/title.ts';
import { nameSpan } from '../../recipe/part.ts';
import { defineCheck, type Found, type Place } from '../check.ts';
import { onceFor, onceWith } from '../once.ts';
import { overParts } from '../over-parts.ts';

type Values =
  | { readonly what: 'unknown'; readonly word: string; readonly near: readonly string[] }
  | { readonly what: 'misfit'; readonly kind: string; readonly lacks: readonly string[]; readonly looks?: string }
  | { readonly what: 'plain'; readonly kind: string; readonly name: string };

export default defineCheck<Values>({
  code: 'unknown-kind',
  title: 'What a part is meant to be is not known, or not said',
  family: 'reading',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `\`as KIND\` says which formula a part is meant to be, in the trade's words: \`part crust as shortcrust\`. The bands it is held against hang on it.

**What it computes.** Three things. A word after \`as\` that is no kind, with the kinds nearest to it (a warning). A kind whose own ingredients are missing, choux without egg (information: it asks). A part without \`as\` that is plainly one kind: all its measures lie in that kind's usual bands, its own signs are there, and no other kind fits (a hint).

**Why it matters.** Without a kind, a part is weighed but its formula is not judged.

**What to do.** Write the kind that is meant; one click does it. Leave it out where none fits: a kind is never enforced.

**Silent** where a weight or a food of the part is not known, where two kinds would do, and for parts put together from others.`,
  find({ recipe }) {
    const { recipe: heading } = recipe.outline;
    const found = heading === undefined ? [] : unknownIn(heading).slice();
    for (const { part, value } of ofKind(recipe)) {
      const placed = part.head.source.named ? value : inHeading(value, part, heading);
      if (placed !== undefined) found.push(placed);
    }
    return found;
  },
  say: (values) => {
    if (values.what === 'plain')
      return {
        message: `${values.name === '' ? 'This' : `The ${values.name}`} looks like ${values.kind}: write \`as ${values.kind}\` and its formula is judged.`,
      };
    if (values.what === 'misfit')
      return {
        message: `A part \`as ${values.kind}\` is made with ${values.lacks.join(' or ')}, and this one has none: is it ${values.looks ?? 'another kind'}?`,
      };
    const choices = values.near.map((n) => `\`${n}\``).join(', ');
    return {
      message: `\`${values.word}\` is no kind, so the formula is not judged${choices === '' ? '.' : `: did you mean ${choices}?`}`,
    };
  },
  fix: (values, { document }, at) => {
    if (values.what === 'plain') {
      const { name } = titleOf(document.lines[at.line]?.statement);
      if (name === undefined) return [];
      const edits = [replaceSpan(at.line, { start: name.end, end: name.end }, ` as ${values.kind}`)];
      return [{ title: `Write \`as ${values.kind}\``, effect: 'words', edits }];
    }
    const choices = values.what === 'misfit' ? (values.looks === undefined ? [] : [values.looks]) : values.near;
    return choices.map((kind) => ({
      title: `Write \`${kind}\``,
      effect: 'words' as const,
      edits: [replaceSpan(at.line, at, kind)],
    }));
  },
  examples: {
    good: [
      'recipe Tart\npart crust as shortcrust\n  240 g     plain flour\n  130 g     butter\n  60 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n  do Chill at 4 C for 45 min, then roll out, line a pan and chill for 30 min.\n',
      'recipe Bowl\npart oats\n  200 g     rolled oats\n  40 g      honey\n  do Toast the oats with the honey.\n',
    ],
    bad: [
      {
        text: 'recipe Tart\npart crust as shortcurst\n# "shortcurst" unknown-kind *: did you mean `shortcrust`\n  240 g     plain flour\n  130 g     butter\n  60 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n',
        after: {
          'Write `shortcrust`':
            'recipe Tart\npart crust as shortcrust\n  240 g     plain flour\n  130 g     butter\n  60 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n',
        },
      },
      {
        text: 'recipe Tart\npart crust                         # rests overnight\n# "crust" unknown-kind hint *: looks like shortcrust\n  240 g     plain flour\n  130 g     butter\n  60 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n  do Chill at 4 C for 45 min, then roll out, line a pan and chill for 30 min.\n',
      },
      'recipe Buns\npart paste as choux\n# "choux" unknown-kind info: is made with egg\n  250 g     water\n  110 g     butter\n  140 g     plain flour\n  do Boil the water with the butter and stir in the flour.\n',
    ],
  },
});

/** Of `as` on the recipe line, whether or not it counts for a part. */
const unknownIn = onceFor(({ at, line: { statement } }: PlacedLine): readonly Found<Values>[] => {
  const { as: node } = titleOf(statement);
  return node === undefined || kindNamed(node.text) !== undefined
    ? []
    : [unknown(node, { line: at, start: node.start, end: node.end })];
});

/** What is found of each part, placed on its own line. */
const ofKind = overParts((part): Found<Values> | undefined => {
  const { kindNode, kind, source, name } = part.head;
  const span = kindNode ?? nameSpan(part.head);
  const at = { part: part.index, line: 0, start: span.start, end: span.end };
  if (kindNode === undefined) {
    const plain = source.named && name === '' ? undefined : plainKind(part);
    const is = plain && plainKindCalled(part, plain, name);
    return is && { at, values: { what: 'plain', kind: is.name, name }, severity: 'hint' };
  }
  // Without a part line the word stands on the recipe's, and is said already.
  if (kind === undefined) return source.named ? unknown(kindNode, at) : undefined;
  const lacks = lacking(part);
  if (lacks === undefined) return undefined;
  const looks = lookAt(part)?.name;
  return { at, values: { what: 'misfit', kind: kind.name, lacks, ...(looks && { looks }) }, severity: 'info' };
});

/** For a part without a line of its own: where the recipe's line has its kind, or the name that it would follow. */
const inHeading = onceWith(
  (value: Found<Values>, part: Part, heading: PlacedLine | undefined): Found<Values> | undefined => {
    const { kindNode } = part.head;
    const title = titleOf(heading?.line.statement).name;
    const span = kindNode ?? title;
    if (span === undefined || (kindNode === undefined && heading === undefined)) return undefined;
    const placed = { ...value, at: { line: heading?.at ?? 0, start: span.start, end: span.end } };
    const looks = value.values.what === 'plain' && title !== undefined ? plainKind(part) : undefined;
    if (looks === undefined || title === undefined) return placed;
    const is = plainKindCalled(part, looks, title.text);
    return is && { ...placed, values: { what: 'plain', kind: is.name, name: '' } };
  },
);

const unknown = ({ text }: TextNode, at: Place): Found<Values> => ({
  at,
  values: { what: 'unknown', word: text, near: nearKinds(text) },
});
