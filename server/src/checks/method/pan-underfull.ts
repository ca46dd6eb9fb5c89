import fill from '../../../data/pan-fill.json' with { type: 'json' };
import { litresText, panSize } from '../../recipe/measures/pan-size.ts';
import { defineCheck, type Found } from '../check.ts';
import { FILL_SOURCE, fillSum, type PanFill, panFills, takenSo } from './pan-fill.ts';

export default defineCheck<PanFill>({
  code: 'pan-underfull',
  title: 'The pan is far too large for what goes into it',
  family: 'method',
  severity: 'info',
  scope: 'recipe',
  source: { kind: 'publication', title: FILL_SOURCE },
  explain: `**What it computes.** The most room that what is baked or set in the pan can take: its volume from its composition, with as much air as its kind is ever worked with, grown as far as its kind ever grows. It is told of when even that stays under ${fill.underfull * 100} % of the pan.

**Why it matters.** A thin layer in a deep pan dries out long before its time is up, and the rim shades it so that it does not colour.

**What to do.** A smaller or shallower pan, or a larger batch; and the time goes down with the depth.

It is a warning for what levels itself, as batter and custard do, in a pan of 3 cm and deeper. **Silent** where a weight, a composition or the pan's size is not known, for pieces laid out with room between, and for roasts, soups and braises.`,
  find({ recipe }) {
    return panFills(recipe).flatMap((filled): Found<PanFill>[] =>
      filled.pieces || filled.risenMl[1] >= filled.panRange.low * fill.underfull
        ? []
        : [{ at: filled.at, values: filled, ...(isPoured(filled) && { severity: 'warning' }) }],
    );
  },
  say: ({ panRange, assumed, risenMl }) => ({
    message: `Even at its highest this fills the pan of ${litresText(panRange)}${takenSo(assumed)} to ${Math.round((risenMl[1] / panRange.low) * 100)} %: so thin a layer dries out. Take a smaller pan, or make more of it.`,
    value: risenMl[1] / panRange.low,
    unit: '1',
    band: [fill.underfull, null],
  }),
  work: (values) => fillSum(values),
  examples: {
    good: [
      'recipe Custard\n  yield   6 portions\n  pan     round 24 x 4 cm\npart custard as baked custard\n  6 large   eggs\n  1 l       whole milk\n  100 g     caster sugar\n  do Whisk the eggs with the milk and sugar and pour into the pan.\n  do Bake at 150 C for 45 min until the centre reads 80 C.\n',
      'recipe Butter cake\n  yield   8 slices\n  pan     round 18 x 7 cm\npart cake as creamed cake\n  120 g     butter\n  150 g     caster sugar\n  3 large   eggs\n  150 g     self-raising flour\n  do Cream the butter with the sugar, beat in the eggs and fold in the flour.\n  do Bake at 170 C for 40 min until a skewer comes out clean.\n',
    ],
    bad: [
      'recipe Custard\n  yield   2 portions\n  pan     rectangle 30 x 20 x 6 cm\n#         ^^^^^^^^^^^^^^^^^^^^^^^^ pan-underfull warning: so thin a layer\npart custard as baked custard\n  2 large   eggs\n  300 ml    whole milk\n  40 g      caster sugar\n  do Whisk the eggs with the milk and sugar and pour into the pan.\n  do Bake at 150 C for 30 min until the centre reads 80 C.\n',
      'recipe Butter cake\n  yield   4 slices\n  pan     rectangle 38 x 28 x 6 cm\n#         ^^^^^^^^^^^^^^^^^^^^^^^^ pan-underfull warning\npart cake as creamed cake\n  75 g      butter\n  75 g      caster sugar\n  2 large   eggs\n  75 g      self-raising flour\n  do Cream the butter with the sugar, beat in the eggs and fold in the flour.\n  do Bake at 170 C for 20 min until a skewer comes out clean.\n',
    ],
  },
});

const POURED: ReadonlySet<string> = new Set(fill.poured);
/** A tray is no tin, cm. */
const DEEP = 3;
const isPoured = ({ layers, pan }: PanFill): boolean =>
  layers.some(({ head }) => POURED.has(head.kind?.name ?? '')) && (panSize(pan)?.depthCm ?? DEEP) >= DEEP;
