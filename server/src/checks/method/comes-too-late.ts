import type { Event } from '../../prose/event.ts';
import { type BoundEvent, boundEvents } from '../../recipe/journey/bind.ts';
import { isBaked } from '../../recipe/journey/deeds.ts';
import { earlyIn } from '../../recipe/journey/turns.ts';
import { isIn, listedAs } from '../../recipe/list/families.ts';
import type { Part, Recipe } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { overParts } from '../over-parts.ts';

interface Values {
  /** What goes in raw: undefined where it rises, or is shaped. */
  readonly name?: string;
  readonly shaped?: true;
}

export default defineCheck<Values>({
  code: 'comes-too-late',
  title: 'A step comes after the heat that it needs',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** What comes after the last bake of a part, with no heat behind it in this part or a later one: a dough that is to rise, or is rolled, kneaded or shaped for the first time, and flour, yeast, powder or raw egg that is mixed in.

**Why it matters.** Yeast is dead in what is baked, and what goes in then stays raw: two steps stand the wrong way round, or a bake is missing.

**What to do.** Put the step before the bake.

**Silent** for what ferments, for flour to dust with, on a condition, and for what is baked only to be mixed in.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ name, shaped }) => ({
    message: shaped
      ? 'This shapes a dough after the last bake, and nothing did before it: put the step before the bake.'
      : name === undefined
        ? 'This rises after the last bake, where the yeast is dead: put the step before it.'
        : `The ${name} goes in after the last bake, and nothing heats it: put the step before it.`,
  }),
  examples: {
    good: [
      'recipe Rolls\n  300 g     bread flour\n  190 g     water\n  6 g       fine salt\n  3 g       instant yeast\n  do Knead the flour, water, salt and yeast for 10 min.\n  do Prove at 24 C for 1 h.\n  do Bake at 220 C for 18 min until golden. Dust with flour.\n',
      'recipe Oats\n  200 g     rolled oats\n  40 g      plain flour\n  80 g      butter\n  do Bake the oats at 160 C for 25 min until golden, and rub the butter into the flour.\n  do Mix the oats with the flour and bake at 180 C for 20 min until brown.\n',
    ],
    bad: [
      'recipe Cake\n  200 g     butter\n  200 g     caster sugar\n  200 g     eggs\n  200 g     self-raising flour\n  do Cream the butter and the sugar and beat in the eggs.\n  do Bake at 170 C for 40 min until a skewer comes out clean.\n  do Fold in the flour.\n#    ^^^^^^^ comes-too-late: The self-raising flour\n',
      'recipe Shortbread\n  150 g     plain flour\n  50 g      caster sugar\n  100 g     butter\n  do Rub the butter into the flour and sugar.\n  do Bake at 160 C for 20 min until pale gold.\n  do Roll out 6 mm thick.\n#    ^^^^^^^^ comes-too-late: shapes a dough\n',
      'recipe Rolls\n  300 g     bread flour\n  190 g     water\n  6 g       fine salt\n  3 g       instant yeast\n  do Knead the flour, water, salt and yeast for 10 min and divide in 6.\n  do Bake at 220 C for 18 min until golden.\n  do Prove at 24 C for 1 h.\n#    ^^^^^ comes-too-late: the yeast is dead\n',
    ],
  },
});

/** While a later part heats something, nothing is late. */
const found = foundAgain<Values>((recipe: Recipe) => {
  const heated = heating(recipe).at(-1)?.part.index ?? 0;
  return late(recipe).flatMap(({ part, value }) => (heated > part.index ? [] : [value]));
});

const heating = overParts(
  ({ steps }) => steps.some((step) => boundEvents(step).some(({ event }) => mayHeat(event))) || undefined,
);

const late = overParts((part): Found<Values> | undefined => {
  const events = part.steps.flatMap((step) => boundEvents(step).map((bound) => ({ ...bound, line: step.line })));
  const last = events.findLastIndex(({ event }) => mayHeat(event));
  const bake = events[last]?.event;
  if (
    bake === undefined ||
    !isBaked(bake) ||
    bake.as !== 'ordered' ||
    bake.said !== 'yes' ||
    bake.objects.some(isNamed) ||
    // That says it of the bake itself.
    earlyIn(part) !== undefined
  )
    return undefined;
  const before = events.slice(0, last).map(({ event }) => event);
  for (const { line, ...bound } of events.slice(last + 1)) {
    const { event } = bound;
    if (event.as !== 'ordered' || event.said !== 'yes' || event.verb === undefined) continue;
    const name = rawIn(bound, part);
    const at = { part: part.index, line, ...event.verb };
    if (name !== undefined) return { at, values: { name } };
    if (event.act === 'rise' && event.craft !== 'ferment') return { at, values: {} };
    // Of what comes in behind the bake, anything may be shaped.
    if (bound.names.length > 0) return undefined;
    if (isShaped(event)) return isDough(part) && !before.some(isShaped) ? { at, values: { shaped: true } } : undefined;
  }
  return undefined;
});

const isShaped = ({ act, craft }: Event): boolean => act === 'shape' || craft === 'knead';

/** Flour, and no egg: what is baked of it is no sheet that is rolled up afterwards, and no crumb. */
const isDough = ({ head: { ingredients } }: Part): boolean =>
  ingredients.some((i) => isIn(i, 'raw flour')) && !ingredients.some((i) => isIn(i, 'egg'));

/** `Bake the potatoes`, of which a dough is made then. */
const isNamed = ({ by, role }: Event['objects'][number]): boolean => by === 'name' && role === 'what';

const mayHeat = ({ act, said }: Event): boolean => said !== 'not' && (act === 'heat' || act === 'unknown');

/** Flour, yeast, powder or raw egg that is mixed in. */
function rawIn({ event: { act, craft, onto }, names }: BoundEvent, part: Part): string | undefined {
  if (act !== 'combine' || craft === 'dust' || craft === 'brush') return undefined;
  const goesIn = onto === true || craft === 'add' || craft === 'fold';
  for (const { mention } of names)
    for (const { part: of, ingredient } of mention.ingredients) {
      const listed = part.heads[of]?.ingredients[ingredient];
      if (listed === undefined) continue;
      if (goesIn && isIn(listed, 'egg') && !listedAs(listed).has('cooked')) return listed.name;
      if (isIn(listed, 'raw flour') || isIn(listed, 'leavening') || isIn(listed, 'yeast')) return listed.name;
    }
  return undefined;
}
