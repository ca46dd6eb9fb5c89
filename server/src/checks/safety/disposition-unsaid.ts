import { insertLineAfter, replaceSpan } from '../../edits/text-edit.ts';
import { middle } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isIn } from '../../recipe/list/families.ts';
import type { Ingredient } from '../../recipe/model.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { membersIn } from '../by-state/spoils.ts';
import { isQuestion, type TooWarm, tooWarm } from '../by-state/too-warm.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { CAUTION, type HoldingLimits, holdingLimits, timeText } from './limits.ts';

interface Values {
  readonly name: string | undefined;
  /** How long at the most, where that is said. */
  readonly high?: number;
  readonly limitMin: number;
  readonly limits: HoldingLimits;
  /** Words for a place, that no row has. */
  readonly place: Span | undefined;
  /** Where it lies is known, and not for how long, or how warm that is. */
  readonly placed: boolean;
  readonly timed: boolean;
}

const asked = overJourneys((house, journey) => {
  const limits = holdingLimits(house.foodSafety);
  const all = tooWarm(house, journey);
  // What is wrong for certain is said of the part, and nothing is asked beside it.
  const wrong = new Set(all.filter((each) => !isQuestion(each)).map(({ stay }) => stay.part));
  return all
    .filter((each) => isQuestion(each) && !wrong.has(each.stay.part))
    .map((each) => questionOf(each, journey, limits));
});

/** One a recipe: that which could hide most, and of its like the first. */
const found = foundAgain<Values>((recipe, house) => {
  const [first, ...rest] = asked(recipe, house);
  return first === undefined ? [] : [rest.reduce((a, b) => (hides(b) > hides(a) ? b : a), first)];
});

const hides = ({ values }: Found<Values>): number => values.high ?? 0;

function questionOf(
  { stay, start, end, minutes, limitMin }: TooWarm,
  journey: Journey,
  limits: HoldingLimits,
): Found<Values> {
  const { event } = stay.by;
  const place = event.where.findLast(({ not }) => !not);
  return {
    at: { part: stay.part, line: stay.line, start, end },
    values: {
      name: nameOf(stay.body, journey),
      ...(minutes && { high: minutes.high }),
      limitMin,
      limits,
      place: place && { start: place.start, end: place.end },
      placed: stay.lies.sure !== 'unread',
      timed: stay.timed,
    },
  };
}

/** What of it must be kept: the animal food of most weight, or what there is most of. */
function nameOf(body: TooWarm['stay']['body'], journey: Journey): string | undefined {
  const held = membersIn(journey, body).map(({ ingredient }) => ingredient);
  const animal = held.filter((each) => isIn(each, 'animal'));
  const among = animal.length > 0 ? animal : held;
  return among.toSorted((a, b) => gramsOf(b) - gramsOf(a))[0]?.name;
}

const gramsOf = ({ weighed }: Ingredient): number => (weighed.known ? middle(weighed.grams) : 0);

export default defineCheck<Values>({
  code: 'disposition-unsaid',
  title: 'Nobody can say where perishable food is kept, or for how long',
  family: 'safety',
  severity: 'info',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title: 'FDA Food Code 2022, 3-501.16 and 3-501.19; USDA FSIS, danger zone (for consumers)',
  },
  explain: `**What it computes.** What \`cooling-too-slow\` does: where perishable food lies, how warm it is there and for how long. Where nobody can tell the place from the words, where the time that is said may be short enough and may be too long, or where food is set down somewhere warm with no word of for how long, this asks instead of asserting. One question a recipe, about the longest such stay; nothing is asked of a part in which something is wrong for certain.

**Why it matters.** The cellar of one cook is at 4 °C and that of the next at 18 °C; the stranger who cooks this has only the words.

**What to do.** Write where it is kept: \`in the fridge at 4 C\`, \`over a low heat at 65 C\`; or for how long.

**Silent** for what keeps by itself, and where the place and the time are said.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ name = 'this', high, limitMin, limits: { cold, hot, leftOut, title }, placed }) => {
    const spent = high !== undefined && Number.isFinite(high) && high > 0 ? `, for up to ${timeText(high)}` : '';
    const asks = placed
      ? `Is the ${name} left warm for longer than ${timeText(limitMin)}${spent}?`
      : `How cold is the place where the ${name} is kept${spent}?`;
    return {
      message: `${asks} Neither at ${cold.celsius} °C, ${cold.fahrenheit} °F, or below, nor at ${hot.celsius} °C, ${hot.fahrenheit} °F, or above, it has ${timeText(limitMin)}. Write where it is kept, or for how long. ${CAUTION}`,
      ...(high !== undefined && { value: high, unit: 'min' }),
      band: [null, limitMin],
      source: `${title}, ${leftOut.section}`,
    };
  },
  fix: ({ place, timed }, { document }, { line }) => {
    if (timed && place !== undefined) return [];
    if (place !== undefined) {
      const title = 'Write `for no more than 2 h`';
      return [
        {
          title,
          effect: 'amounts',
          edits: [replaceSpan(line, { start: place.end, end: place.end }, ' for no more than 2 h')],
        },
      ];
    }
    // It has waited before this step, and of that no step says a word.
    return ['keep it in the fridge at 4 C', 'freeze it'].map((words) => ({
      title: `Write \`Cool it within 2 h and ${words}.\``,
      effect: 'amounts',
      edits: [insertLineAfter(document, line - 1, `  do Cool it within 2 h and ${words}.`)],
    }));
  },
  examples: {
    good: [
      'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Leave it in the fridge overnight.\n',
      'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Leave it in the boathouse for 2 h.\n',
    ],
    bad: [
      {
        text: 'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Next day, reheat until steaming.\n# "Next day" disposition-unsaid *: How cold is the place\n',
        after: {
          'Write `Cool it within 2 h and keep it in the fridge at 4 C.`':
            'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Cool it within 2 h and keep it in the fridge at 4 C.\n  do Next day, reheat until steaming.\n',
        },
      },
      'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Put the pot on the window sill.\n# "window sill" disposition-unsaid *: longer than 4 h\n  do Ladle into bowls.\n',
      'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Leave it in the scullery sink for 1 to 6 h.\n# "for 1 to 6 h" disposition-unsaid: longer than 4 h\n',
    ],
  },
});
