import data from '../../../data/fermentation.json' with { type: 'json' };
import { significant, trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Event } from '../../prose/event.ts';
import { anyDoes, deed, does, eventsOf } from '../../recipe/journey/deeds.ts';
import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { cultureShare } from '../../recipe/measures/kitchen-shares.ts';
import { instantYeast } from '../../recipe/measures/leavening.ts';
import { measure } from '../../recipe/measures/measures.ts';
import { flourShare, isStarter } from '../../recipe/measures/shares.ts';
import type { Ingredient, Part, Step } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';
import { onceFor } from '../once.ts';
import { plainTable, sumTable } from '../sum-table.ts';
import { type BandValues, ingredientPlace, kindPlace, mostBringing, outsideBand, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';

type Values =
  | { readonly what: 'amount'; readonly band: BandValues }
  | {
      readonly what: 'time';
      readonly dose: Range;
      readonly hours: Range;
      readonly slow: boolean;
      readonly percent: Range;
      readonly rises: readonly Rise[];
      readonly contents: readonly Ingredient[];
    };

const [USUAL_LOW = 0, USUAL_HIGH = 0] = data.usual;
const [WORST_LOW = 0, WORST_HIGH = 0] = data.implausible;

export default defineCheck<Values>({
  code: 'yeast-out-of-range',
  title: 'There is more, or less, yeast or culture than the dough, its time or the milk calls for',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  measures: ['yeast', 'culture per liquid'],
  source: {
    kind: 'publication',
    title: 'yeast conversion tables: fresh 1 = active dry 0.4 = instant 0.33; the doses by the band of each kind',
  },
  explain: `**What it computes.** Yeast per flour, as instant dry: fresh yeast counts 0.33 to 0.4 of its weight, active dry 0.75 to 0.83. For yoghurt and sour tea: the yoghurt or ripe tea that starts them, per milk or tea; of a dried culture nothing is said. Where the steps say how long the dough rises and how warm, also the two together: per cent of instant yeast × hours × 2 to the power of (°C − 25) / 9, added over the rises.

**Why it matters.** Ten times the yeast, a spoon for a pinch, is the commonest slip in bread. The dough runs over in an hour, tastes of yeast and falls in the oven; with a tenth of it nothing has moved by the evening.

**What to do.** Bring the yeast into the band, or the time and the warmth of the rise: half the yeast wants about twice the hours.

**Silent** for sourdough, where the yeast is of no known weight, and, for a rise that is too short, where the part is not baked in its own steps: it may go on rising in a later part.`,
  *find(part) {
    let found = false;
    for (const side of ['high', 'low'] as const)
      for (const finding of outsideBand(part, 'yeast', side, () => ingredientPlace(mainYeast(part)))) {
        if (side === 'low' && hasStarter(contentsOf(part))) continue;
        found = true;
        yield { ...finding, values: { what: 'amount', band: finding.values } };
      }
    for (const side of ['high', 'low'] as const)
      for (const finding of outsideBand(part, 'culture per liquid', side, () => ingredientPlace(mainCulture(part))))
        yield { ...finding, values: { what: 'amount', band: finding.values } };
    if (!found) yield* outOfTime(part);
  },
  say: (values) => {
    if (values.what === 'amount') return sayBand(values.band);
    const { dose, hours, slow } = values;
    const per = `${significant(dose.low, 2)}${dose.high > dose.low * 1.05 ? ` to ${significant(dose.high, 2)}` : ''}`;
    return {
      message: `The dough rises for ${hoursText(hours)}: with its warmth and its yeast that is ${per} per cent-hours of instant yeast at 25 °C, and ${trimmed(USUAL_LOW, 1)} to ${trimmed(USUAL_HIGH, 1)} is usual. ${slow ? 'It will hardly have risen: use more yeast, or give it longer or warmer.' : 'It will have risen and fallen: use less yeast, or give it less time or a colder place.'}`,
      value: (dose.low + dose.high) / 2,
      unit: '1',
      band: [USUAL_LOW, USUAL_HIGH],
      source: data.source,
    };
  },
  work: (values) => (values.what === 'time' ? riseSum(values) : []),
  fix: (values, scene) =>
    values.what === 'time'
      ? []
      : mendAmount(values.band, scene, values.band.measure.measure === 'yeast' ? mainYeast : mainCulture),
  examples: {
    good: [
      'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  330 g     water\n  10 g      fine salt\n  12 g      fresh yeast\n  do Knead the flour, water, salt and yeast for 10 min.\n  do Prove at 25 C for 1 h 30 min.\n',
      'recipe Slow loaf\npart dough as lean bread\n  500 g     bread flour\n  350 g     water\n  10 g      fine salt\n  1 g       instant yeast\n  do Mix the flour, water, salt and yeast.\n  do Ferment at 20 C for 14 h.\n  do Bake at 230 C for 40 min, until the centre reads 96 C.\n',
    ],
    bad: [
      {
        text: 'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  330 g     water\n  10 g      fine salt\n  40 g      instant yeast\n# "instant yeast" yeast-out-of-range *: tastes of yeast\n  do Knead the flour, water, salt and yeast for 10 min.\n',
        after: {
          'Write 7.5 g instant yeast, 33 g less':
            'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  330 g     water\n  10 g      fine salt\n  7.5 g     instant yeast\n  do Knead the flour, water, salt and yeast for 10 min.\n',
        },
      },
      'recipe Loaf\npart dough as lean bread\n  500 g     bread flour\n  330 g     water\n  10 g      fine salt\n  7 g       instant yeast\n# "instant yeast" yeast-out-of-range: risen and fallen\n  do Knead the flour, water, salt and yeast for 10 min.\n  do Prove at 27 C for 20 h.\n',
    ],
  },
});

const hasStarter = onceFor((contents: readonly Ingredient[]) =>
  contents.some(({ food }) => food !== undefined && isStarter(food)),
);

const mainYeast = (part: Part): Ingredient | undefined => mostBringing(part, instantYeast);
const mainCulture = (part: Part): Ingredient | undefined => mostBringing(part, cultureShare);

/** The yeast against the time and the warmth that the steps give it. */
function* outOfTime(part: Part): Generator<Found<Values>> {
  if (part.head.kind?.measures.some((m) => m.measure === 'yeast') !== true) return;
  const contents = contentsOf(part);
  if (hasStarter(contents)) return;
  const yeast = measure('yeast', contents);
  if (!yeast.known || yeast.value.high === 0) return;
  const rises = part.steps.flatMap(risesOf);
  if (rises.length === 0) return;
  const percent = { low: yeast.value.low * 100, high: yeast.value.high * 100 };
  const dose = {
    low: percent.low * rises.reduce((sum, r) => sum + r.hours.low * r.pace.low, 0),
    high: percent.high * rises.reduce((sum, r) => sum + r.hours.high * r.pace.high, 0),
  };
  const hours = {
    low: rises.reduce((sum, r) => sum + r.hours.low, 0),
    high: rises.reduce((sum, r) => sum + r.hours.high, 0),
  };
  const at = ingredientPlace(mainYeast(part)) ?? kindPlace(part);
  if (dose.low > USUAL_HIGH)
    yield {
      at,
      values: { what: 'time', dose, hours, slow: false, percent, rises, contents },
      severity: dose.low > WORST_HIGH ? 'warning' : 'info',
    };
  else if (dose.high < USUAL_LOW && isBaked(part))
    yield {
      at,
      values: { what: 'time', dose, hours, slow: true, percent, rises, contents },
      severity: dose.high < WORST_LOW ? 'warning' : 'info',
    };
}

interface Rise {
  readonly hours: Range;
  readonly celsius: Range;
  /** How fast the yeast works, 1 at 25 °C. */
  readonly pace: Range;
}

/** `Cover and leave for 14 h`: a dough left so long rises. */
const LEAST_LEFT_MIN = 180;
const isCold = ({ is, not }: Event['where'][number]): boolean => is === 'cold' && !not;
/** Left to cool, or to be cut, it is baked. */
const COOLED = deed(({ act, where }) => act === 'eat' || act === 'cut' || (act === 'cool' && !where.some(isCold)));
/** A kitchen, where no step says how warm; a fridge. */
const ROOM_C: Range = { low: 17, high: 29 };
const FRIDGE_C: Range = { low: 2, high: 7 };

const risesOf = onceFor((step: Step): readonly Rise[] => {
  const events = eventsOf(step);
  const cools = does(step, COOLED);
  const around = events.flatMap(({ temperatures }) => temperatures.filter(({ of }) => of === 'around'));
  return events.flatMap(({ act, times, where }) => {
    if (act !== 'rise' && act !== 'stay') return [];
    const place = where.find(({ way, not }) => (way === 'at' || way === 'to') && !not);
    const celsius = place !== undefined && isCold(place) ? FRIDGE_C : (place?.celsius ?? ROOM_C);
    const low = around.length > 0 ? Math.min(...around.map((c) => c.celsius.low)) : celsius.low;
    const high = around.length > 0 ? Math.max(...around.map((c) => c.celsius.high)) : celsius.high;
    // Above 38 °C yeast works no faster, and soon not at all.
    const pace = { low: paceAt(Math.min(low, 38)), high: paceAt(Math.min(high, 38)) };
    const isLong = (minutes: Range) => minutes.low >= LEAST_LEFT_MIN && !cools;
    return times
      .filter(({ kind, minutes }) => kind === 'spent' && (act === 'rise' || isLong(minutes)))
      .map(({ minutes }) => ({
        hours: { low: minutes.low / 60, high: minutes.high / 60 },
        celsius: { low, high },
        pace,
      }));
  });
});

/** The yeast per flour, then each rise by its hours and its pace. */
function riseSum({ percent, rises, contents, dose }: Extract<Values, { readonly what: 'time' }>): string[] {
  const rows = contents.map((i) => ({
    name: i.name,
    numbers: [gramsOf(i), gramsOf(i) * bringing(i, instantYeast), gramsOf(i) * bringing(i, flourShare)],
  }));
  const span = ({ low, high }: Range) =>
    significant(low, 2) === significant(high, 2)
      ? significant(low, 2)
      : `${significant(low, 2)} to ${significant(high, 2)}`;
  return [
    ...sumTable(['ingredient', 'weighs, g', 'yeast as instant, g', 'flour, g'], rows),
    '',
    `The yeast is ${span(percent)} % of the flour.`,
    '',
    ...plainTable(
      ['rise', 'hours', '°C', 'pace, 1 at 25 °C', 'hours × pace × % yeast'],
      rises.map(({ hours, celsius, pace }, i) => [
        String(i + 1),
        span(hours),
        span(celsius),
        pace.low === pace.high ? significant(pace.low) : `${significant(pace.low)} to ${significant(pace.high)}`,
        span({ low: hours.low * pace.low * percent.low, high: hours.high * pace.high * percent.high }),
      ]),
    ),
    '',
    `The pace is 2 to the power of (°C − ${data.referenceC}) ÷ ${data.doublesPerC}. In all ${span(dose)}; ${trimmed(USUAL_LOW, 1)} to ${trimmed(USUAL_HIGH, 1)} is usual, and a warning is below ${trimmed(WORST_LOW, 2)} or above ${trimmed(WORST_HIGH, 1)}.`,
  ];
}

const paceAt = (celsius: number): number => 2 ** ((celsius - data.referenceC) / data.doublesPerC);

const OVEN = deed(({ temperatures }) => temperatures.some(({ of }) => of === 'oven'));
const isBaked = (part: Part): boolean => anyDoes(part.steps, OVEN);

function hoursText({ low, high }: Range): string {
  const say = (hours: number) => trimmed(hours, hours < 10 ? 1 : 0);
  return say(low) === say(high) ? `${say(low)} h` : `${say(low)} to ${say(high)} h`;
}
