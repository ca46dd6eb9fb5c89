import type { Range } from '../../measure/quantity.ts';
import type { PlacedLine } from '../../notation/outline.ts';
import type { TimeRole } from '../../notation/tree.ts';
import { totalTimesIn } from '../../prose/printed-times.ts';
import { speaksOf, speaksOfSeveral } from '../../recipe/journey/deeds.ts';
import { lastingIn, statedTimes, stepTimes } from '../../recipe/journey/durations.ts';
import type { Part, Recipe } from '../../recipe/model.ts';
import { defineCheck, type Found, type Place } from '../check.ts';
import { overParts } from '../over-parts.ts';
import { notesOf, placeIn } from '../printed/notes.ts';
import { tooOftenIn } from './too-often.ts';

interface Values {
  readonly role: TimeRole;
  readonly stated: Range;
  readonly steps: Range;
  /** `interval`: the steps go on for less than is between two times that something is done. */
  readonly against: 'steps' | 'sum' | 'interval';
  /** A note says it: `ready in 20 minutes`. */
  readonly inNote?: true;
}

/** What is off by less than this share, and by fewer minutes, is rounding. */
const NEAR = 0.1;
const NEAR_MIN = 5;
/** From here on a cook is misled. */
const FAR = 1.5;
const FAR_MIN = 15;
/** `Ready in 10 minutes` is taken at its word. */
const FAR_NOTE_MIN = 8;

const NOTHING: readonly never[] = [];

export default defineCheck<Values>({
  code: 'time-disagrees',
  title: 'The time that is stated and the steps do not agree',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `The times in the head (\`time 20 min at work, 50 min in the oven\`), and what a note says that all of it takes (\`ready in 40 minutes\`), against those of the steps.

**What it computes.** The times of the steps by what is done: work, cooking (oven and stove), waiting, and all of it. At the least the part that takes longest counts, since parts can be made beside each other; hands-on times add up. Cooking may not be stated longer than the steps give it either. A stated total may not be shorter than the work and the cooking that are stated beside it.

Also what goes on for less than is between two times that something is done to it (\`for 7 h, turning each day\`).

**Why it matters.** A cook plans by the head and finds out by the steps, with guests at the table.

**What to do.** Mend the one that is wrong. It is a warning where the steps take half as long again and a quarter of an hour more than is said, information below that.

**Silent** within ${NEAR * 100} % or ${NEAR_MIN} minutes, where the steps give no time, for the cooling at the end where only waiting is stated, for cooking stated longer where what the steps say is done in batches, and for work that is stated longer: most work has no time written beside it.`,
  find({ recipe }) {
    if (recipe.inherits) return NOTHING;
    return [...inHeads(recipe), ...atIntervals(recipe).flatMap(({ value }) => value)];
  },
  say: ({ role, stated, steps, against, inNote }) => {
    const what = WHAT[role];
    const message =
      against === 'interval'
        ? `This goes on for ${minutesText(steps)}, and something is to be done to it only every ${minutesText(stated)}: mend one of them.`
        : against === 'sum'
          ? `The total is stated as ${minutesText(stated)}, and work and cooking beside it come to ${minutesText(steps)}: mend one of them.`
          : `The ${inNote ? 'note' : 'head'} says ${minutesText(stated)} ${what}, and the steps give ${minutesText(steps)}: mend the one that is wrong.`;
    return { message, value: (stated.low + stated.high) / 2, unit: 'min', band: [steps.low, steps.high] };
  },
  examples: {
    good: [
      'recipe Bacon\n  yield   1 kg\n  1 kg      pork belly\n  30 g      fine salt\n  do Rub the pork with the salt and cure at 4 C for 7 d, turning it every day.\n  do Roast at 170 C for 2 h, turning it every hour, until the centre reads 66 C.\n',
      'recipe Oats\n  yield   4 bowls\n  time    10 min at work, 25 min in the oven\n  200 g     rolled oats\n  40 g      honey\n  do Stir the oats with the honey.\n  do Bake at 160 C for 25 min until golden.\n',
      'recipe Oats\n  yield   4 bowls\n  Prep: 10 min\n  Cook: 25 min\n  200 g     rolled oats\n  do Bake the oats at 160 C for 25 min until golden.\n',
      'recipe Oatcakes\n  yield   12\n  time    40 min to cook\n  200 g     rolled oats\n  300 ml    water\n  do Stir the oats into the water.\n  do Fry four for 3 min a side. Repeat until the batter is used.\n',
    ],
    bad: [
      'recipe Bacon\n  yield   1 kg\n  1 kg      pork belly\n  30 g      fine salt\n  do Rub the pork with the salt and cure at 4 C for 9 h, turning it every day.\n# "for 9 h" time-disagrees: only every\n  do Roast at 100 C for 2 h, until the centre reads 66 C.\n',
      'recipe Kraut\n  yield   1 kg\n  1 kg      white cabbage\n  20 g      fine salt\n  do Mix and pack into a jar. Ferment at 19 C for 5 hours. Press it down each day during the first week.\n# "for 5 hours" time-disagrees: only every\n',
      'recipe Oats\n  yield   4 bowls\n  note    Ready in 15 minutes.\n#         "in 15 minutes" time-disagrees: The note says 15 min\n  200 g     rolled oats\n  do Bake the oats at 160 C for 40 min until golden.\n',
      'recipe Oats\n  yield   4 bowls\n  time    10 min at work, 15 min in the oven\n#                         ^^^^^^ time-disagrees: the steps give 40 min\n  200 g     rolled oats\n  do Bake the oats at 160 C for 40 min until golden.\n',
      'recipe Oats\n  yield   4 bowls\n  time    1 h\n#         ^^^ time-disagrees info: 1 h 15 min\n  200 g     rolled oats\n  do Soak the oats for 45 min.\n  do Bake the oats at 160 C for 30 min until golden.\n',
      'recipe Oats\n  yield   4 bowls\n  time    prep 20 min, cook 50 min, total 1 h\n#                                         ^^^ time-disagrees info: come to 1 h 10 min\n  200 g     rolled oats\n  do Bake the oats at 160 C for 50 min until golden.\n',
    ],
  },
});

/** `For 7 h, turning each day` */
const atIntervals = overParts((part): readonly Found<Values>[] | undefined => {
  const found = tooOftenIn(part).map(
    ({ line, start, end, every, lasts }): Found<Values> => ({
      at: { part: part.index, line, start, end },
      values: {
        role: 'total',
        stated: { low: every, high: every },
        steps: { low: lasts, high: lasts },
        against: 'interval',
      },
    }),
  );
  return found.length === 0 ? undefined : found;
});

function inHeads(recipe: Recipe): readonly Found<Values>[] {
  const stated = statedTimes(recipe);
  const inNotes = notesOf(recipe).flatMap((note) => totalTimesIn(note.items).map((said) => ({ note, said })));
  if (Object.keys(stated).length === 0 && inNotes.length === 0) return NOTHING;
  const steps = stepTimes(recipe);
  const found: Found<Values>[] = inNotes.flatMap(({ note, said }) =>
    steps.total.low > said.minutes.high * FAR && steps.total.low - said.minutes.high >= FAR_NOTE_MIN
      ? [
          {
            at: placeIn(note, said),
            values: { role: 'total', stated: said.minutes, steps: steps.total, against: 'steps', inNote: true },
          },
        ]
      : [],
  );
  const add = (role: TimeRole, values: Values, off: number, min: number) => {
    const at = placeOf(recipe.outline.head, role);
    if (at !== undefined)
      found.push({ at, values, ...(off < FAR || min < FAR_MIN ? { severity: 'info' as const } : {}) });
  };
  for (const role of ['work', 'cooking', 'waiting', 'total'] as const) {
    const said = stated[role];
    const given = steps[role];
    if (said === undefined || given.high <= 0) continue;
    const values: Values = { role, stated: said, steps: given, against: 'steps' };
    // What is baked is done, and cools by itself.
    const least = given.low - (role === 'waiting' ? cooledAtEnd(recipe.parts) : 0);
    if (isLess(said.high, least)) add(role, values, given.low / said.high, given.low - said.high);
    // What is stirred so long may stand over the heat: `add the stock by the ladle, stirring, for 16 min`.
    else if (role === 'cooking' && isLess(given.high + steps.work.high, said.low) && !recipe.parts.some(isInBatches))
      add(role, values, said.low / given.high, said.low - given.high);
  }
  const { work, cooking, total } = stated;
  if (work !== undefined && cooking !== undefined && total !== undefined) {
    const sum = { low: work.low + cooking.low, high: work.high + cooking.high };
    if (isLess(total.high, sum.low) && !found.some((f) => f.values.role === 'total'))
      add(
        'total',
        { role: 'total', stated: total, steps: sum, against: 'sum' },
        sum.low / total.high,
        sum.low - total.high,
      );
  }
  return found;
}

const WHAT: Readonly<Record<TimeRole, string>> = {
  work: 'at work',
  cooking: 'of cooking',
  waiting: 'of waiting',
  total: 'in all',
};

/** Minutes that it only cools at the end. */
function cooledAtEnd(parts: readonly Part[]): number {
  const last = parts.findLast(({ steps }) => steps.length > 0);
  const lasting = last === undefined ? [] : lastingIn(last);
  const from = lasting.findLastIndex(({ event }) => event?.act !== 'cool') + 1;
  return lasting.slice(from).reduce((sum, { minutes }) => sum + minutes.low, 0);
}

/** `Repeat until the batter is used`: nobody says how often. */
const isInBatches = ({ steps }: Part): boolean =>
  steps.some((step) => speaksOf(step, 'again') || speaksOfSeveral(step, 'batch'));

/** Clearly less, and not by rounding. */
const isLess = (a: number, b: number): boolean => a < b * (1 - NEAR) && b - a >= NEAR_MIN;

/** Where the head states it: the last that does. A sum stands where its first time does. */
function placeOf(head: readonly PlacedLine[], role: TimeRole): Place | undefined {
  const places = head.flatMap(({ at, line: { statement } }) =>
    statement.kind === 'time'
      ? statement.stated.map(({ duration, role: of }) => ({
          of,
          at: { line: at, start: duration.start, end: duration.end },
        }))
      : [],
  );
  return (places.findLast((p) => p.of === role) ?? places[0])?.at;
}

/** `1 h 10 min`, `40 to 50 min`. */
function minutesText({ low, high }: Range): string {
  return low === high ? timeText(low) : `${timeText(low)} to ${timeText(high)}`;
}

function timeText(minutes: number): string {
  const whole = Math.round(minutes);
  const [hours, rest] = [Math.floor(whole / 60), whole % 60];
  return hours === 0 ? `${rest} min` : rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}
