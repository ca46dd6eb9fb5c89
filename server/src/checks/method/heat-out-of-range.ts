import type { HeatWay } from '../../heat/spans.ts';
import type { Range } from '../../measure/quantity.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import { degreesIn, ownDegrees, scaleIn } from '../../recipe/journey/degrees.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { inScale } from '../other-scale.ts';
import { calledAs } from './heat-words.ts';
import { heatedIn } from './heated.ts';
import { strayHeats } from './out-of-span.ts';
import type { NamedBy } from './written-heat.ts';

interface Values {
  readonly node: TemperatureNode;
  readonly celsius: number;
  readonly way: HeatWay;
  readonly of: string;
  readonly by: NamedBy | undefined;
  readonly isHigh: boolean;
  /** °C */
  readonly least: number;
  readonly most: number;
  readonly meant: 'C' | 'F' | undefined;
}

/** °C beyond all that is ever done, from which on nobody means it; of fat so much is near where it catches fire. */
const FAR_C: Readonly<Record<HeatWay, number>> = {
  oven: 90,
  stove: 60,
  fat: 18,
  rise: 12,
  live: 20,
  inside: 100,
  shelf: 0,
  cold: 0,
  none: 0,
};

const find = foundAgain<Values>((recipe) => {
  const seen = new Set<string>();
  return heatedIn(recipe).flatMap((heated) =>
    strayHeats(heated).flatMap(({ heat: { figure, ...place }, node, isHigh, usual, by, meant }): Found<Values>[] => {
      const { start, end } = figure;
      // Two bakes at one heat.
      const key = `${place.part}.${place.line}.${start}`;
      if (seen.has(key)) return [];
      seen.add(key);
      const { way, of, by: named } = heated;
      const celsius = isHigh ? figure.celsius.low : figure.celsius.high;
      return [
        {
          at: { ...place, start, end },
          values: { node, celsius, way, of, by: named, isHigh, least: usual.low, most: usual.high, meant },
          ...(by > FAR_C[way] && isHigh && { severity: 'error' as const }),
        },
      ];
    }),
  );
});

export default defineCheck<Values>({
  code: 'heat-out-of-range',
  title: 'Something is hotter or cooler than its kind is ever heated',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  doubtsFigure: true,
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** Each heat of an oven, of what is stirred or boiled on the stove, of fat to fry in and of what rises or is cultured, against the least and the most that a thing of its kind is ever heated to: a meringue is not baked at 250 °C, a marshmallow not boiled to 180 °C, nothing fried at 80 °C, no yoghurt cultured at 70 °C. The kind is the one that is written; else the step, the part or the title says what it is (\`Bake the scones\`, \`Pavlova\`), if that can be what lies there, or the list plainly does; else what lies in the oven (flesh, a dough with yeast, a batter, a custard). Also what the middle of it reads, or what is warmed again, and into how hot a thing yeast or a culture is stirred.

**Why it matters.** It is a slip of a digit or of the scale, and burns the dish or leaves it raw.

**What to do.** Mend the figure or its unit. It is an error far above the most, and where fat comes near the heat at which it catches fire.

**Silent** for what cannot be at all (\`implausible-temperature\` has that), for grills, and for what is only warmed.`,
  find: ({ recipe, house }) => find(recipe, house),
  say: ({ node, celsius, way, of, by, isHigh, least, most, meant }) => {
    const degrees = Math.round(node.lowDegrees);
    const other = meant && ` ${degrees} °${meant} would fit: is the unit right?`;
    const scale = scaleIn(celsius, node);
    if (way === 'live')
      return {
        message: `${ownDegrees(celsius, node)} kills the ${of.slice('any '.length)} that goes in: let it cool to less than ${degreesIn(most, scale, 'nothing')} °${scale} before, or mend the figure.`,
        value: celsius,
        unit: 'C',
        band: [null, most],
      };
    return {
      message: `${ownDegrees(celsius, node)} is ${isHigh ? 'hotter' : 'cooler'} than ${WHAT[way]} ever is for ${calledAs(of, by)}, ${spanIn({ low: least, high: most }, scale)}:${other ?? ' mend the figure.'}`,
      value: celsius,
      unit: 'C',
      band: [Number.isFinite(least) ? least : null, Number.isFinite(most) ? most : null],
    };
  },
  fix: ({ node, meant }, _scene, at) => inScale(node, meant, at.line),
  examples: {
    good: [
      'recipe Lemon custard as baked custard\n  yield   4 cups\n  4 large   eggs\n  500 ml    whole milk\n  80 g      caster sugar\n  do Whisk the eggs with the milk and sugar and pour into 4 cups.\n  do Bake in a water bath at 150 C for 40 min until the centre reads 80 C.\n',
      'recipe Chips\n  yield   4 portions\n  1 kg      potatoes\n  2 l       sunflower oil\n  do Heat the oil to 130 C and fry the potatoes for 6 min.\n  do Heat the oil to 190 C and fry again for 2 min until golden.\n',
    ],
    bad: [
      'recipe Scones\n  350 g     self-raising flour\n  85 g      butter\n  175 ml    milk\n  do Rub the butter into the flour, stir in the milk and cut out rounds.\n  do Bake the scones at 120 C for 12 min until risen.\n# "120 C" heat-out-of-range: scone (taken from the step), 150 to 265 °C\n',
      'recipe Salmon and soup\n  4         salmon fillets\n  1 l       vegetable stock\n  400 g     leeks\n  do Simmer the leeks in the stock for 20 min and serve. Keep the rest in the fridge; reheat until it reads 35 C.\n# "35 C" heat-out-of-range: 50 to 110 °C\n  do Fry the salmon for 4 min until the centre reads 33 C.\n# "33 C" heat-out-of-range: its middle ever is for fish\n',
      'recipe Buns\n  500 g     bread flour\n  250 ml    milk\n  7 g       dried yeast\n  do Heat the milk to 70 C and stir in the yeast.\n# "70 C" heat-out-of-range: kills the yeast\n  do Add the flour, knead, and leave to rise for 1 h. Bake at 200 C for 20 min until gold.\n',
      {
        text: 'recipe Kisses as meringue\n  yield   20 kisses\n  120 g     egg white\n  240 g     caster sugar\n  do Whisk the egg white, adding the sugar.\n  do Pipe in 20 and bake at 275 C for 1 h until dry.\n# "275 C" heat-out-of-range *: an oven ever is for meringue, 60 to 265 °C\n',
        after: {
          'Write 275 F':
            'recipe Kisses as meringue\n  yield   20 kisses\n  120 g     egg white\n  240 g     caster sugar\n  do Whisk the egg white, adding the sugar.\n  do Pipe in 20 and bake at 275 F for 1 h until dry.\n',
        },
      },
      'recipe Chips\n  yield   4 portions\n  1 kg      potatoes\n  2 l       sunflower oil\n  do Heat the oil to 80 C and deep-fry the potatoes for 6 min until golden.\n# "80 C" heat-out-of-range: cooler than fat ever is for frying, 116 to 212 °C\n',
    ],
  },
});

const WHAT: Readonly<Record<HeatWay, string>> = {
  oven: 'an oven',
  stove: 'it',
  fat: 'fat',
  rise: 'the place',
  live: 'it',
  inside: 'its middle',
  shelf: 'it',
  cold: 'it',
  none: 'it',
};

function spanIn({ low, high }: Range, scale: 'C' | 'F'): string {
  const degrees = (celsius: number) => (scale === 'C' ? `${celsius}` : `${Math.round((celsius * 1.8 + 32) / 5) * 5}`);
  if (!Number.isFinite(high)) return `${degrees(low)} °${scale} and more`;
  return Number.isFinite(low) ? `${degrees(low)} to ${degrees(high)} °${scale}` : `at most ${degrees(high)} °${scale}`;
}
