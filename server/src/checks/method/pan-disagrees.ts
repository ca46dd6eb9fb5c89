import { trimmed } from '../../measure/number-text.ts';
import type { PanNode } from '../../notation/tree.ts';
import { type PanSaid, pansSaidIn, timesOf } from '../../recipe/measures/pans-said.ts';
import type { Recipe } from '../../recipe/model.ts';
import { defineCheck, type Found, type Place } from '../check.ts';
import { onceFor } from '../once.ts';
import { overParts } from '../over-parts.ts';

interface Values {
  readonly said: string;
  readonly times: number;
  readonly named: Place;
}

export default defineCheck<Values>({
  code: 'pan-disagrees',
  title: 'A step takes a pan of another size than the recipe names',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** The size of a pan in a step (\`line a 20 cm square tin\`) against the \`pan\` line of the recipe or of its part, and against the same pan in other steps.

**Why it matters.** A tin of half the size again holds more than twice as much: it runs over, or bakes to a biscuit.

**What to do.** Mend the one that is wrong.

**Silent** for a pan of another shape or use, within a tenth of a length and a fifth of a volume, and where any pan that is named has that size.`,
  find: ({ recipe }) => (recipe.inherits ? [] : found(recipe)),
  say: ({ said, times, named }) => ({
    message: `\`${said}\` is ${trimmed(times, 2)} times the size that the recipe names for its pan: mend the one that is wrong.`,
    related: [{ at: named, message: 'The pan is named here.' }],
  }),
  examples: {
    good: [
      'recipe Oat slab\n  yield   16 squares\n  pan     square 20 x 5 cm\n  300 g     rolled oats\n  150 g     butter\n  150 g     honey\n  do Melt the butter with the honey and stir in the oats.\n  do Press into a lined 8-inch square tin and bake at 170 C for 25 min until golden.\n',
      'recipe Oat slab\n  yield   16 squares\n  pan     square 20 x 5 cm\n  300 g     rolled oats\n  150 g     butter\n  150 g     honey\n  do Melt the butter with the honey and stir in the oats.\n  do Press into the tin and bake at 170 C for 25 min until golden.\n',
    ],
    bad: [
      'recipe Oat slab\n  yield   16 squares\n  pan     square 20 x 5 cm\n  300 g     rolled oats\n  150 g     butter\n  150 g     honey\n  do Melt the butter with the honey and stir in the oats.\n  do Press into a lined 30 cm square tin and bake at 170 C for 25 min until golden.\n# "30 cm square tin" pan-disagrees: 1.5 times\n',
      'recipe Oat slab\n  yield   16 squares\n  pan     1.5 l\n  300 g     rolled oats\n  150 g     butter\n  150 g     honey\n  do Melt the butter with the honey and stir in the oats.\n  do Spread in a 3 litre dish and bake at 170 C for 25 min until golden.\n# "3 litre dish" pan-disagrees: 2 times\n',
    ],
  },
});

const said = overParts((part): readonly PanSaid[] | undefined => {
  const pans = pansSaidIn(part);
  return pans.length === 0 ? undefined : pans;
});

const found = onceFor((recipe: Recipe): readonly Found<Values>[] => {
  const pans = pansOf(recipe);
  const [named] = pans;
  if (named === undefined) return [];
  return said(recipe).flatMap(({ part, value }) =>
    value.flatMap(({ words, ...at }): readonly Found<Values>[] => {
      const times = pans.map(({ node }) => timesOf(node, words));
      return times.includes(1)
        ? []
        : [{ at: { part: part.index, ...at }, values: { said: words, times: times[0] ?? 1, named: named.at } }];
    }),
  );
});

const pansOf = ({ pan, parts }: Recipe): readonly { readonly node: PanNode; readonly at: Place }[] => [
  ...(pan === undefined ? [] : [{ node: pan.node, at: placeOf(pan.node, pan.at) }]),
  ...parts.flatMap(({ index, head: { pan: own } }) =>
    own === undefined ? [] : [{ node: own.node, at: { part: index, ...placeOf(own.node, own.line) } }],
  ),
];

const placeOf = ({ start, end }: PanNode, line: number): Place => ({ line, start, end });
