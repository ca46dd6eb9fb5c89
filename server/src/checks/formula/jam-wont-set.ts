import data from '../../../data/sugar-boiling.json' with { type: 'json' };
import { percentRange, trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { heatsOf } from '../../recipe/journey/figures.ts';
import { sugarSolids } from '../../recipe/measures/shares.ts';
import { solidsAtBoiling } from '../../recipe/measures/sugar-boiling.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { plainTable } from '../sum-table.ts';
import { type BandValues, ingredientPlace, maySet, mostBringing, outsideBand, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';

type Values =
  | { readonly what: 'sugar'; readonly band: BandValues }
  | { readonly what: 'heat'; readonly celsius: Range; readonly solids: Range };

const [USUAL_LOW = 0, USUAL_HIGH = 1] = data.jamSolids.usual.map((percent) => percent / 100);
/** Below this the table of boiling points says nothing sure. */
const THIN = 0.25;
const LEAST = (data.jamSolids.implausible[0] ?? 0) / 100;

export default defineCheck<Values>({
  code: 'jam-wont-set',
  title: 'A jam will not reach the sugar at which it sets and keeps',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  measures: ['sugar per fruit'],
  source: {
    kind: 'publication',
    title: 'by the band of the kind; jellies set 8 °F over boiling water (US home canning guides)',
  },
  explain: `**What it computes.** The sugar that is added per prepared fruit, by weight; and, where a step says at how many degrees the jam is done, the share of solids that a syrup boiling at that heat has (at sea level; a syrup boils 0.5 °C lower for each 150 m of height).

**Why it matters.** Pectin sets when sugar has taken up enough of the water, at 60 to 69 % of solids, with acid. Below 50 % the jam runs, and it moulds: sugar is what keeps it.

**What to do.** Use more sugar, or boil to 104 to 105 °C. A jam with less sugar is made with its own pectin and kept cold or frozen: follow a tested recipe.

**Silent** for the heat where no step gives one, and where the sugar or the fruit is of no known weight. Whether the fruit brings pectin and acid enough is not judged.`,
  *find(part) {
    if (!isJam(part)) return;
    const ownPectin = part.head.ingredients.some((i) => i.food?.class === 'gelling' || maySet(i));
    if (!ownPectin)
      for (const found of outsideBand(part, 'sugar per fruit', 'low', () => ingredientPlace(mainSugar(part))))
        yield { ...found, values: { what: 'sugar', band: found.values } };
    const done = hottest(part);
    if (done === undefined) return;
    const { celsius, line, start, end } = done;
    const solids = { low: solidsAtBoiling(celsius.low), high: solidsAtBoiling(celsius.high) };
    if (solids.high < USUAL_LOW)
      yield {
        at: { line, start, end },
        values: { what: 'heat', celsius, solids },
        severity: solids.high < LEAST ? 'warning' : 'info',
      };
  },
  say: (values) =>
    values.what === 'sugar'
      ? sayBand(values.band)
      : {
          message: `At ${trimmed(values.celsius.high, 1)} °C a jam ${values.solids.high < THIN ? 'is hardly boiled down' : `holds about ${percentRange(values.solids.low, values.solids.high)} of solids`}; ${percentRange(USUAL_LOW, USUAL_HIGH)} of solids is usual. Boil on to 104 to 105 °C at sea level, 0.5 °C lower for each 150 m of height.`,
          value: values.solids.high,
          unit: '1',
          band: [USUAL_LOW, USUAL_HIGH],
          source: data.source,
        },
  work: (values) =>
    values.what === 'sugar'
      ? []
      : [
          ...plainTable(
            ['boils at, °C', 'solids, %'],
            data.solidsAtBoilingC.rows.filter(([celsius = 0]) => celsius <= 106).map((row) => row.map(String)),
          ),
          '',
          `Between the rows it goes in a straight line: ${trimmed(values.celsius.high, 1)} °C are ${percentRange(values.solids.low, values.solids.high)}.`,
        ],
  fix: (values, scene) => (values.what === 'heat' ? [] : mendAmount(values.band, scene, mainSugar)),
  examples: {
    good: [
      'recipe Plum jam\npart jam as jam\n  1 kg      plums, halved and stoned\n  800 g     granulated sugar\n  30 g      lemon juice\n  do Simmer the plums with the lemon juice for 20 min.\n  do Stir in the sugar and boil until the jam reads 105 C.\n',
      'recipe Apricot jam\npart jam as jam\n  1 kg      apricots, stoned\n  600 g     granulated sugar\n  do Simmer the apricots for 15 min, then boil with the sugar until a drop wrinkles on a cold plate.\n',
    ],
    bad: [
      {
        text: 'recipe Plum jam\npart jam as jam\n  1 kg      plums, halved and stoned\n  200 g     granulated sugar\n# "granulated sugar" jam-wont-set *: runny\n  do Simmer the plums for 20 min.\n  do Stir in the sugar and boil until the jam reads 105 C.\n',
        after: {
          'Write 351 g granulated sugar, 151 g more':
            'recipe Plum jam\npart jam as jam\n  1 kg      plums, halved and stoned\n  351 g     granulated sugar\n  do Simmer the plums for 20 min.\n  do Stir in the sugar and boil until the jam reads 105 C.\n',
        },
      },
      'recipe Plum jam\npart jam as jam\n  1 kg      plums, halved and stoned\n  800 g     granulated sugar\n  do Simmer the plums for 20 min.\n  do Stir in the sugar and boil until the jam reads 101 C.\n# "101 C" jam-wont-set: Boil on to 104 to 105 °C\n',
      'recipe Plum jam\npart jam as jam\n  1 kg      plums, halved and stoned\n  800 g     granulated sugar\n  do Simmer the plums for 20 min.\n  do Stir in the sugar and boil until the jam reads 100 C.\n# "100 C" jam-wont-set: hardly boiled down\n',
    ],
  },
});

/** Fruit that sugar sets; what starch thickens is a filling. */
const isJam = ({ head: { kind } }: Part): boolean => {
  const held = new Set(kind?.measures.map((m) => m.measure));
  return held.has('sugar per fruit') && !held.has('thickener per fruit');
};

const mainSugar = (part: Part): Ingredient | undefined => mostBringing(part, sugarSolids);

interface Done {
  readonly celsius: Range;
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

/** The highest heat of the jam itself that a step names. */
function hottest(part: Part): Done | undefined {
  let best: Done | undefined;
  for (const step of part.steps)
    for (const { of, celsius, written } of heatsOf(step)) {
      const [node] = written;
      if ((of !== 'food' && of !== 'medium') || celsius.high < BOILING_C || node === undefined) continue;
      if (best === undefined || celsius.high > best.celsius.high)
        best = { celsius, line: step.line, start: node.start, end: node.end };
    }
  return best;
}

/** Below this the reading is of something else, or is taken high in the mountains. */
const BOILING_C = 99;
