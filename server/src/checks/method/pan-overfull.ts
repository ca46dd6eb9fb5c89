import fill from '../../../data/pan-fill.json' with { type: 'json' };
import { litresText } from '../../recipe/measures/pan-size.ts';
import { defineCheck, type Found } from '../check.ts';
import { FILL_SOURCE, fillSum, type PanFill, panFills, takenSo } from './pan-fill.ts';

interface Values extends PanFill {
  readonly risen: boolean;
}

const LIKELY: Readonly<Record<string, number>> = fill.likely;

/** By the middle of how light it is worked, of how far its kind grows and of how deep the pan may be, of the one kind that fills it. */
function isLikelyOver({ layers: [layer, ...others], rawMl, risenMl, panRange }: PanFill): boolean {
  const most = LIKELY[layer?.kind ?? ''];
  return (
    most !== undefined &&
    others.length === 0 &&
    rawMl[0] > 0 &&
    likelyMl(risenMl) > Math.sqrt(panRange.low * panRange.high) * most
  );
}
const likelyMl = ([low, high]: readonly [number, number]): number => Math.sqrt(low * high);

export default defineCheck<Values>({
  code: 'pan-overfull',
  title: 'More goes into the pan than it holds',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'publication', title: FILL_SOURCE },
  explain: `**What it computes.** How much room there is for what is baked or set in the pan. First as it goes in: from its grams, as if no air were beaten into it, against the pan filled to the brim. Then as it rises: a creamed cake to at least 1.4 times of that, bread to 1.6 times, a custard not at all.

**Why it matters.** Batter that runs over burns on the oven floor, and what stays has not the depth its time was tested for.

**What to do.** A larger pan, a second one, or a smaller batch; \`quern scale\` fits a batch to a pan.

It is a warning when the mixture does not fit as it is, or a cake or a loaf as it usually grows is far over the brim; information when it will not once it has grown by the least it usually does. **Silent** where a weight, a composition or the pan's size is not known, for roasts, soups and braises, and where the steps speak of batches or several pans.`,
  find({ recipe }) {
    return panFills(recipe).flatMap((filled): Found<Values>[] => {
      if (filled.batches) return [];
      const { at, panRange } = filled;
      const most = filled.covered ? fill.overfullHeaped : fill.overfullRaw;
      if (filled.rawMl[0] > panRange.high * most) return [{ at, values: { ...filled, risen: false } }];
      if (!filled.pieces && isLikelyOver(filled)) return [{ at, values: { ...filled, risen: true } }];
      return filled.risenMl[0] > panRange.high * fill.overfullRisen && !filled.pieces
        ? [{ at, values: { ...filled, risen: true }, severity: 'info' }]
        : [];
    });
  },
  say: ({ panRange, assumed, rawMl, risenMl, risen }) => {
    const grown = risen ? likelyMl(risenMl) : rawMl[0];
    const least = litresText({ low: grown, high: grown });
    return {
      message: risen
        ? `This rises to some ${least}, and the pan holds ${litresText(panRange)} to the brim${takenSo(assumed)}: it will run over. Take a larger pan, or a second one.`
        : `There is at least ${least} of this, and the pan holds ${litresText(panRange)} to the brim${takenSo(assumed)}: it does not go in. Take a larger pan, or a second one.`,
      value: Math.round(grown),
      unit: 'ml',
      band: [null, Math.round(panRange.high)],
    };
  },
  work: (values) => fillSum(values),
  examples: {
    good: [
      'recipe Leek pie\n  yield   6 portions\n  pan     1.4 l\n  900 g     leeks, sliced\n  400 g     double cream\n  320 g     ready-rolled puff pastry\n  do Simmer the leeks in the cream for 10 min and pour into the dish.\n  do Cover with the pastry and bake at 200 C for 30 min until golden.\n',
      'recipe Custard\n  yield   6 portions\n  pan     rectangle 30 x 20 x 4 cm\npart custard as baked custard\n  6 large   eggs\n  1 l       whole milk\n  100 g     caster sugar\n  do Whisk the eggs with the milk and sugar and pour into the pan.\n  do Bake at 150 C for 45 min until the centre reads 80 C.\n',
      'recipe Tin loaf\n  yield   1 loaf\n  pan     loaf 23 x 13 x 7 cm\npart dough as lean bread\n  500 g     bread flour\n  330 g     water\n  9 g       fine salt\n  4 g       instant yeast\n  do Mix the flour, water, salt and yeast, knead for 8 min and prove at 24 C for 90 min.\n  do Shape, set in the pan and prove at 24 C for 1 h.\n  do Bake at 220 C for 35 min until the centre reads 95 C.\n',
    ],
    bad: [
      'recipe Butter cake\n  yield   8 slices\n  pan     1 lb loaf tin\n#         ^^^^^^^^^^^^^ pan-overfull warning: run over\npart cake as creamed cake\n  200 g     butter\n  200 g     caster sugar\n  4 large   eggs\n  200 g     self-raising flour\n  do Cream the butter with the sugar, beat in the eggs and fold in the flour.\n  do Bake at 170 C for 50 min until a skewer comes out clean.\n',
      'recipe Custard\n  yield   6 portions\n  pan     round 20 x 3 cm\n#         ^^^^^^^^^^^^^^^ pan-overfull: to the brim\npart custard as baked custard\n  6 large   eggs\n  1 l       whole milk\n  100 g     caster sugar\n  do Whisk the eggs with the milk and sugar and pour into the pan.\n  do Bake at 150 C for 45 min until the centre reads 80 C.\n',
      'recipe Tin loaf\n  yield   1 loaf\n  pan     loaf 18 x 9 x 6 cm\n#         ^^^^^^^^^^^^^^^^^^ pan-overfull: run over\npart dough as lean bread\n  600 g     bread flour\n  390 g     water\n  11 g      fine salt\n  4 g       instant yeast\n  do Mix the flour, water, salt and yeast, knead for 8 min and prove at 24 C for 90 min.\n  do Set in the pan and prove at 24 C for 1 h.\n  do Bake at 220 C for 35 min until the centre reads 95 C.\n',
    ],
  },
});
