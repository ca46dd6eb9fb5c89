import { replaceSpan } from '../../edits/text-edit.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Line } from '../../notation/tree.ts';
import { type Picture, picturesOf } from '../../recipe/pictures.ts';
import { defineCheck, type Found, type PictureFile } from '../check.ts';

export default defineCheck<Values>({
  code: 'picture-missing',
  title: 'A picture is named that is not there',
  family: 'reading',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `\`picture slice.jpg\` shows a file that lies beside the recipe, or is named from its folder on: \`pictures/slice.jpg\`. It is looked for within the house alone: the folder that holds \`quern.json\`, or the one that is open. A page made of the recipe would have a gap where the picture is.

**What to do.** Put the file there, write its name as it stands on the disk, capital letters too, or take the line out. **Silent** where nobody can look: in a text that was never saved.`,
  find: (scene) =>
    picturesOf(scene.outline).flatMap((shown) => {
      const state = scene.picture?.(shown.file.text);
      return state === undefined || state.kind === 'there' ? [] : [foundAt(shown, state)];
    }),
  say: ({ file, state }) => ({
    message: state.kind === 'missing' ? SAID.missing(file, state) : SAID.outside(file, state),
  }),
  fix: ({ state }, _scene, at) =>
    state.kind !== 'missing'
      ? []
      : state.near.map((name) => ({
          title: `Write \`${name}\``,
          effect: 'words' as const,
          edits: [replaceSpan(at.line, at, name)],
        })),
  examples: {
    good: [
      'recipe Slab\n  picture slab.jpg, Cut when cold\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n  picture rubbed.png\n',
      'recipe Slab\n  note    A picture of it is on the wall.\n  200 g     rolled oats\n  do Toast the oats.\n',
    ],
    bad: [
      'recipe Slab\n  picture no-such-slab.jpg\n# "no-such-slab.jpg" picture-missing: no picture\n  200 g     rolled oats\n  do Toast the oats.\n',
      {
        text: 'recipe Slab\n  200 g     rolled oats\n  do Toast the oats.\n  picture slap.jpg, As dark as this\n#         "slap.jpg" picture-missing *: perhaps `slab.jpg`\n',
        after: {
          'Write `slab.jpg`':
            'recipe Slab\n  200 g     rolled oats\n  do Toast the oats.\n  picture slab.jpg, As dark as this\n',
        },
      },
      'recipe Slab\n  200 g     rolled oats\n  do Toast the oats.\n\ntrial 2026-09-14\n  took    11 min to toast\n  picture ../../elsewhere/slab.jpg\n# "../../elsewhere/slab.jpg" picture-missing: outside the house\n',
    ],
  },
});

type Gone = Exclude<PictureFile, { readonly kind: 'there' }>;

interface Values {
  readonly file: string;
  readonly state: Gone;
}

const SAID: { readonly [K in Gone['kind']]: (file: string, state: Extract<Gone, { readonly kind: K }>) => string } = {
  missing: (file, { near }) =>
    `There is no picture \`${file}\` beside this recipe: write its name from this folder on${near.length === 0 ? '' : `, perhaps ${near.map((n) => `\`${n}\``).join(' or ')}`}.`,
  outside: (file) =>
    `\`${file}\` lies outside the house, and nothing is shown from there: copy it into the house, and write its name from this folder on.`,
};

/** While a line and its place stay, what was found there is the same object. */
const LAST = keptOn<Line, { readonly at: number; readonly state: Gone; readonly found: Found<Values> }>();

function foundAt({ at, line, file }: Picture, state: Gone): Found<Values> {
  const last = LAST.get(line);
  if (last?.at === at && last.state === state) return last.found;
  const found = { at: { line: at, start: file.start, end: file.end }, values: { file: file.text, state } };
  LAST.set(line, { at, state, found });
  return found;
}
