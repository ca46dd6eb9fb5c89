import type { Span } from '../../notation/tree.ts';
import type { Craft, Event } from '../../prose/event.ts';
import { type Stay, sharesFood } from '../../recipe/journey/bodies.ts';
import { type Journey, journeysOf } from '../../recipe/journey/fold.ts';
import type { FoldedPart } from '../../recipe/journey/folded-part.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';
import type { Piece } from '../../recipe/journey/pieces.ts';
import type { Recipe } from '../../recipe/model.ts';
import { settingRests, timeText } from '../../recipe/waiting/said.ts';
import { liesCold, settingOf } from '../../recipe/waiting/setting.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { onceFor } from '../once.ts';

interface Values {
  readonly high: number;
  readonly least: number;
  readonly likely: number;
  readonly sort: string;
  readonly rests: string;
}

const find = foundAgain<Values>((recipe) => journeysOf(recipe).flatMap((journey) => shortIn(recipe, journey)));

function shortIn(recipe: Recipe, journey: Journey): readonly Found<Values>[] {
  // What is folded into whipped cream is cold by then.
  if (journey.pieces.some(({ folded }) => isAnyFolded(folded))) return NONE;
  return journey.pieces.flatMap(timedIn).flatMap(({ stay, time }): readonly Found<Values>[] => {
    const { high } = stay.minutes;
    if (isOneOfSeveral(stay, journey.stays) || isWorkedOn(journey, stay)) return [];
    // Last, as it takes longer than all others.
    const setting = settingOf(recipe, stay);
    // Of pastry `short-rest` speaks.
    if (setting === undefined || setting.lies === 'disc' || high >= setting.minutes.low / NEARLY_ALL) return [];
    return [
      {
        at: { part: stay.part, line: stay.line, start: time.start, end: time.end },
        values: {
          high,
          least: setting.minutes.low / NEARLY_ALL,
          likely: setting.likely,
          sort: setting.sort,
          rests: settingRests(setting),
        },
        ...(high < setting.minutes.low / FAR && { severity: 'warning' as const }),
      },
    ];
  });
}

const NONE: readonly never[] = [];

interface Timed {
  readonly stay: Stay;
  readonly time: Span;
}

/** Of what is left in the cold for a time that is said. */
const timedIn = onceFor(({ stays }: Piece): readonly Timed[] =>
  stays.flatMap((stay) => {
    const time = stay.by.event.times.find(({ kind }) => kind === 'spent');
    if (
      time === undefined ||
      stay.by.event.craft === 'churn' ||
      !stay.timed ||
      stay.branch ||
      stay.by.event.said !== 'yes'
    )
      return [];
    return liesCold(stay) && Number.isFinite(stay.minutes.high) ? [{ stay, time }] : [];
  }),
);

/** From eight in ten on to nearly all of them, of what scatters so (spread of cooling times, 1.35 for eight in ten). */
const NEARLY_ALL = 1.2;

/** So many times too short, no kitchen is quick enough (judgement). */
const FAR = 2.5;

/** It goes on lying there, or comes back to it. */
const isOneOfSeveral = (stay: Stay, stays: readonly Stay[]): boolean => {
  const { body, lies } = stay;
  for (let at = stays.length - 1; stays[at] !== stay && at >= 0; at--) {
    const each = stays[at];
    if (each !== undefined && (each.lies.place === 'cold' || each.lies.place === lies.place))
      if (sharesFood(each.body, body)) return true;
  }
  return false;
};

/** Until it is half set, to be churned or poured over. */
function isWorkedOn({ pieces }: Journey, { part, line, by }: Stay): boolean {
  const isAfter = (step: FoldedStep, { start }: Event) =>
    step.line > line || (step.line === line && start > by.event.start);
  const own = pieces.find(({ folded }) => folded.part.index === part);
  return (
    own?.folded.steps.some((step) =>
      step.events.some(({ event }) => event.said === 'yes' && isAfter(step, event) && isWork(event)),
    ) === true
  );
}

const isAnyFolded = onceFor(({ steps }: FoldedPart): boolean =>
  steps.some(({ events }) => events.some(({ event }) => event.said === 'yes' && isFolded(event))),
);
const isFolded = ({ craft }: Event): boolean => craft === 'fold' || craft === 'whip';
const isWork = ({ act, craft }: Event): boolean =>
  act === 'combine' || act === 'heat' || (craft !== undefined && WORKED.has(craft));
const WORKED: ReadonlySet<Craft> = new Set<Craft>(['churn', 'beat', 'stir', 'scrape', 'layer']);

export default defineCheck<Values>({
  code: 'chill-too-short',
  title: 'What must set stands in the cold for too short a time',
  family: 'method',
  severity: 'info',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      "conduction with Choi and Okos properties, in a refrigerator or freezer as homes have them; Bloom's test of gelatine, 1925",
  },
  explain: `**What it computes.** When the middle of it is cold enough: 10 °C and an hour more for gelatine, 12 °C for a custard, a curd or a cheesecake, -12 °C for an ice cream that is churned; by its mass, by its tin or into how many it is divided, and counted from lukewarm. It speaks only where the written time is shorter than nearly all kitchens would need, and is a warning ${FAR} times below the quick end.

**Why it matters.** The rim sets first. What is turned out or cut while its middle is soft runs.

**What to do.** Write the longer time, make it shallower, or divide it. A thermometer decides.

**Silent** for pastry, of which \`short-rest\` speaks, where no weight or no depth is known, where it is only half set to be worked on or folded into whipped cream, and where it goes back into the cold later.`,
  find: ({ recipe, house }) => find(recipe, house),
  say: ({ high, least, likely, rests }) => ({
    message: `${timeText(high)} is short for this to set: likely ${timeText(likely)}, at the quickest ${timeText(least)}, from ${rests}; a thermometer decides.`,
    value: high,
    unit: 'min',
    band: [Math.round(least), null],
  }),
  examples: {
    good: [
      'recipe Jelly as jelly\n  yield   6 jellies\n  700 g     water\n  150 g     sugar\n  15 g      gelatine\n  do Heat the water with the sugar and dissolve the gelatine in it.\n  do Pour into 6 moulds and chill for 6 h.\n',
      'recipe Fruit cream as set cream\n  yield   6 creams\n  500 g     orange juice\n  150 g     sugar\n  9 g       gelatine\n  300 g     double cream, whipped\n  do Heat the juice with the sugar and dissolve the gelatine in it.\n  do Chill for 20 min until it thickens, and fold in the cream.\n  do Chill for 5 h.\n',
      'recipe Case\npart case as shortcrust\n  250 g     plain flour\n  125 g     butter\n  50 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n  do Chill at 4 C for 30 min and roll out.\n',
    ],
    bad: [
      'recipe Jelly as jelly\n  yield   6 jellies\n  700 g     water\n  150 g     sugar\n  15 g      gelatine\n  do Heat the water with the sugar and dissolve the gelatine in it.\n  do Pour into 6 moulds and chill for 45 min.\n# "for 45 min" chill-too-short warning: likely 3 h\n',
      'recipe Ice as ice cream\n  yield   1 l\n  500 g     whole milk\n  250 g     double cream\n  150 g     sugar\n  90 g      egg yolk\n  do Heat the milk, cream, sugar and yolks to 82 C, chill at 4 C for 6 h and churn.\n  do Freeze for 1 h.\n# "for 1 h" chill-too-short warning: at the quickest\n',
    ],
  },
});
