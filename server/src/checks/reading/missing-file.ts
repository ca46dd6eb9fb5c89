import { replaceSpan } from '../../edits/text-edit.ts';
import { type BrokenLink, defineCheck } from '../check.ts';

export default defineCheck<BrokenLink>({
  code: 'missing-file',
  title: 'A file that the recipe builds on is not there, or cannot be read',
  family: 'reading',
  severity: 'error',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `\`from base.quern\` lays a recipe over another one, and \`part base from pastry.quern : sweet paste\` takes a part of one. The file is looked for beside the recipe that names it, and only within the house: the folder that holds \`quern.json\`, or the one that is open. A link that leads out of it, a pipe or device, and a file of more than 4 MB are not read. While it is not there, cannot be read or has nothing in it, or while a file builds on itself, or two on each other in a circle, nothing of it can be weighed or checked, and the recipe is not whole.

Write the name as it stands on the disk, from this file's folder on: \`../pastry/base.quern\`. Silent where the file is there and has an ingredient or a step.`,
  find: ({ broken }) =>
    (broken ?? []).flatMap((link) =>
      SAID[link.kind] === undefined ? [] : [{ at: { line: link.line, ...link.span }, values: link }],
    ),
  say: (link) => ({ message: SAID[link.kind]?.(link) ?? '' }),
  fix: ({ kind, near }, _scene, at) =>
    kind !== 'missing-file'
      ? []
      : near.map((name) => ({
          title: `Write \`${name}\``,
          effect: 'words' as const,
          edits: [replaceSpan(at.line, at, name)],
        })),
  examples: {
    good: [
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n',
      'recipe Slab\n  note    It grew from base.quern.\n  200 g     rolled oats\n  do Toast the oats.\n',
    ],
    bad: [
      'recipe Slab\n  from    no-such-base.quern\n# "no-such-base.quern" missing-file: no file\n  swap butter for 80 g margarine\n',
      'recipe Slab\npart oats from no-such-base.quern : oats\n# "no-such-base.quern" missing-file: no file\n',
    ],
  },
});

/** What is said of each kind of link to a file; of others nothing is. */
const SAID: Readonly<Partial<Record<BrokenLink['kind'], (link: BrokenLink) => string>>> = {
  'missing-file': ({ name, near }) =>
    `There is no file \`${name}\` beside this one: write its name from this folder on${near.length === 0 ? '' : `, perhaps ${near.map((n) => `\`${n}\``).join(' or ')}`}.`,
  outside: ({ name }) =>
    `\`${name}\` lies outside the house, and nothing is read there: copy it into the house, and write its name from this folder on.`,
  unreadable: ({ name, why }) =>
    `\`${name}\` ${why ?? 'cannot be read'}. Name a file that can be read, or mend that one.`,
  'too-many': ({ name }) =>
    `This recipe builds on more files than are read for one, so \`${name}\` is left out: write some of them out in full.`,
  'missing-below': ({ name }) =>
    `\`${name}\` builds on a file that is not there, so this recipe is not whole either: mend it there.`,
  'nothing-in-it': ({ name }) =>
    `\`${name}\` has no ingredient and no step to build on: name the file that has the recipe.`,
  itself: ({ name }) =>
    `\`${name}\` is this file, and a recipe cannot build on itself: name the recipe that it changes, or take it out.`,
  circle: ({ name }) => `\`${name}\` builds on this file, so neither can be worked out: let one of them stand alone.`,
  'circle-below': ({ name }) =>
    `\`${name}\` comes back to itself in what it builds on, so this recipe cannot be worked out either: mend it there.`,
};
