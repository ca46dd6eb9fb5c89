import { replaceSpan } from '../../edits/text-edit.ts';
import type { DurationNode, Span } from '../../notation/tree.ts';
import type { Event } from '../../prose/event.ts';
import { eventsOf } from '../../recipe/journey/deeds.ts';
import { durationOf } from '../../recipe/journey/figures.ts';
import type { Kind } from '../../recipe/measures/kind.ts';
import type { Part, Step } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';

interface Values {
  readonly restMin: number;
  readonly before: 'rolling' | 'baking';
  /** The time to lengthen. */
  readonly node: DurationNode | undefined;
}

const LEAST_MIN = 30;
/** A lined case is often frozen instead, for half the time. */
const LEAST_FROZEN_MIN = 15;
/** In so few minutes nothing gets cold (judgement). */
const NONE_MIN = 12;

export default defineCheck<Values>({
  code: 'short-rest',
  title: 'The pastry rests for too short a time',
  family: 'method',
  severity: 'info',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** For shortcrust, sweet paste and puff pastry: the minutes of chilling and resting before the dough is first rolled out, and between lining the pan and the oven. Both want ${LEAST_MIN} min, ${LEAST_FROZEN_MIN} in the freezer; a rest that is written and shorter than ${NONE_MIN} min is a warning.

**Why it matters.** Kneading stretches the gluten and rolling does it again; unrested it springs back, the case shrinks from the rim and slides down the sides. Warm fat smears besides, and the crust bakes hard.

**What to do.** Chill it: \`Chill at 4 C for 45 min\`, and again once it lines the pan.

**Silent** for pastry that is pressed in, for parts that do not roll, and where no step lines a pan.`,
  *find(part) {
    const { kind } = part.head;
    if (kind === undefined || !PASTRY.has(kind.name)) return;
    const events = happeningsOf(part);
    const roll = events.findIndex((e) => e.is === 'roll');
    if (roll < 0) return;
    const place = (at: number) => events[at];
    const beforeRolling = restBefore(events.slice(0, roll));
    const rolled = place(roll);
    // Folded and turned, it may rest between and not before: the butter is to stay cold from the first roll on.
    const turned =
      kind.name === 'puff pastry' && beforeRolling.min === 0 && restBefore(events.slice(roll)).min >= LEAST_MIN;
    if (rolled !== undefined && beforeRolling.min < LEAST_MIN && !turned)
      yield found(rolled, { restMin: beforeRolling.min, before: 'rolling', node: beforeRolling.node });
    const line = events.findIndex((e, i) => e.is === 'line' && i > roll);
    const bake = events.findIndex((e, i) => e.is === 'bake' && i > line);
    const baked = place(bake);
    if (line < 0 || baked === undefined) return;
    const beforeBaking = restBefore(events.slice(line, bake));
    if (beforeBaking.min < LEAST_MIN)
      yield found(baked, { restMin: beforeBaking.min, before: 'baking', node: beforeBaking.node });
  },
  say: ({ restMin, before }) => {
    const rest = restMin === 0 ? 'does not rest' : `rests for ${Math.round(restMin)} min`;
    const when = before === 'rolling' ? 'before it is rolled' : 'between lining the pan and the oven';
    return {
      message: `The pastry ${rest} ${when}: give it ${LEAST_MIN} min in the cold, or it springs back and shrinks.`,
      value: restMin,
      unit: 'min',
      band: [LEAST_MIN, null],
    };
  },
  fix: ({ node }, _scene, at) =>
    node === undefined
      ? []
      : [
          {
            title: `Write ${LEAST_MIN} min`,
            effect: 'amounts',
            edits: [replaceSpan(at.line, node, `${LEAST_MIN} min`)],
          },
        ],
  examples: {
    good: [
      'recipe Case\npart case as shortcrust\n  200 g     plain flour\n  110 g     butter\n  50 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n  do Chill at 4 C for 45 min.\n  do Roll out, line the pan and chill for 30 min.\n  do Bake at 190 C for 20 min until gold.\n',
      'recipe Case\npart case as shortcrust\n  200 g     plain flour\n  110 g     butter\n  50 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n  do Press into the pan and bake at 190 C for 20 min until gold.\n',
    ],
    bad: [
      {
        text: 'recipe Case\npart case as shortcrust\n  200 g     plain flour\n  110 g     butter\n  50 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n  do Chill at 4 C for 10 min and roll out.\n# "10 min" short-rest warning *: rests for 10 min\n',
        after: {
          'Write 30 min':
            'recipe Case\npart case as shortcrust\n  200 g     plain flour\n  110 g     butter\n  50 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n  do Chill at 4 C for 30 min and roll out.\n',
        },
      },
      'recipe Case\npart case as sweet paste\n  220 g     plain flour\n  75 g      icing sugar\n  120 g     butter\n  30 g      egg yolk\n  do Mix the flour with the icing sugar, rub in the butter and bind with the egg yolk.\n  do Chill at 4 C for 1 h.\n  do Roll out 3 mm thick and line the pan.\n  do Bake at 180 C for 18 min until pale gold.\n#    ^^^^ short-rest: does not rest\n',
    ],
  },
});

const PASTRY: ReadonlySet<Kind['name']> = new Set(['shortcrust', 'sweet paste', 'puff pastry']);

interface Happening {
  readonly is: 'roll' | 'line' | 'bake' | 'rest';
  readonly step: Step;
  readonly span: Span;
  readonly min: number;
  /** The time of a rest, where it stands in figures. */
  readonly node?: DurationNode | undefined;
}

/** What happens to the dough, in the order of the sentences. */
const happeningsOf = (part: Part): readonly Happening[] =>
  part.steps.flatMap((step) => eventsOf(step).flatMap((event) => happeningIn(step, event)));

function happeningIn(step: Step, event: Event): readonly Happening[] {
  const { craft, vessel, verb, times } = event;
  const span = verb ?? event;
  if (craft === 'roll') return [{ is: 'roll', step, span, min: 0 }];
  // `Line with paper and weights` is another lining.
  if (craft === 'line')
    return vessel?.is === 'wrap' || vessel?.is === 'tool' ? [] : [{ is: 'line', step, span, min: 0 }];
  if (craft === 'bake') return [{ is: 'bake', step, span, min: 0 }];
  if (!RESTS.has(event.act)) return [];
  const by = event.act === 'freeze' || event.where.some(({ is }) => is === 'frozen') ? LEAST_MIN / LEAST_FROZEN_MIN : 1;
  return times
    .filter(({ kind }) => kind === 'spent')
    .map((time) => ({
      is: 'rest',
      step,
      span: time,
      min: time.minutes.high * by,
      node: durationOf(step, time),
    }));
}

const RESTS: ReadonlySet<Event['act']> = new Set(['cool', 'freeze', 'stay']);

interface Rest {
  readonly min: number;
  readonly node: DurationNode | undefined;
}

function restBefore(happenings: readonly Happening[]): Rest {
  const rests = happenings.filter((e) => e.is === 'rest');
  return { min: rests.reduce((sum, e) => sum + e.min, 0), node: rests.at(-1)?.node };
}

/** At the time that is too short; where there is none, at what comes too soon. */
function found({ step, span }: Happening, values: Values): Found<Values> {
  const { node } = values;
  const inSameStep = node !== undefined && step.sentence.items.includes(node);
  const { start, end } = inSameStep ? node : span;
  return {
    at: { line: step.line, start, end },
    values: inSameStep ? values : { ...values, node: undefined },
    // A rest is written, and is none.
    ...(values.restMin > 0 && values.restMin < NONE_MIN && { severity: 'warning' as const }),
  };
}
