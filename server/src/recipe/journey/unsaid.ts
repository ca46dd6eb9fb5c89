/**
 * Knows which lines of a part's list its steps take without naming them: `Mix together`, `Add the rest`, `Brine for 4 hours`, `Shape six
 * patties`. Refuses to know how much of each, and whether that is well written.
 */
import text from '../../../data/unsaid.tsv';
import { rowsIn, wordsIn } from '../../measure/table-rows.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Act, Craft, Slot } from '../../prose/event.ts';
import { isIn } from '../list/families.ts';
import { foodOf } from '../list/stand-in.ts';
import type { Ingredient, Mention, Part, Step } from '../model.ts';
import { type BoundEvent, boundEvents } from './bind.ts';
import { speaksOf } from './deeds.ts';

/** What is taken in so: every line, the one that the part is of, or none. */
type Taken = 'all' | 'main' | 'none';

/** What an order says of food when nothing has been named yet. Left out: it is about something else, or moves nothing in. */
const AT_THE_START: Partial<Readonly<Record<Act, Taken>>> = {
  combine: 'all',
  steep: 'all',
  heat: 'all',
  smoke: 'all',
  rise: 'all',
  unknown: 'main',
  thaw: 'main',
  freeze: 'main',
  cool: 'main',
  cover: 'main',
  stay: 'main',
  dry: 'main',
  pack: 'main',
  put: 'main',
  cut: 'all',
  mince: 'all',
  shape: 'main',
  divide: 'main',
  remove: 'main',
};

/** Classes of food that a craft takes without saying so. */
const BY_CRAFT: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  rowsIn(text).map(([craft = '', classes]) => [craft, new Set(wordsIn(classes))]),
);

const UNSAID = keptOn<Part, ReadonlySet<number>>();

/** Places in the part's list of what its steps take without a name. */
export function unsaidIn(part: Part): ReadonlySet<number> {
  let unsaid = UNSAID.get(part);
  if (unsaid === undefined) {
    unsaid = find(part);
    UNSAID.set(part, unsaid);
  }
  return unsaid;
}

function find(part: Part): ReadonlySet<number> {
  const { ledger, steps, includes } = part;
  const { ingredients } = part.head;
  const found = new Set<number>();
  const isToldOff = tellsOff(part);
  const main = mainOf(ingredients);
  const events = eventsOf(steps);
  // What is laid beside that others made: the cucumber under `Serve`, the tortillas under `Tacos`.
  if (includes.length > 0 && !events.some(({ event: { act } }) => WORKS.has(act)))
    for (const [i, ingredient] of ingredients.entries()) if (isEatenAsItIs(ingredient)) found.add(i);
  let started = false;
  let begun = false;
  // After `half the glaze`, the rest is of that, unless much is not named at all.
  const isPortioned =
    ledger.filter(({ uses }) => uses.length === 0).length < MUCH &&
    steps.some((step) => speaksOf(step, 'fraction') || step.mentions.some(isPortion));
  for (const bound of events) {
    // Bones that were soaked and blanched, and nothing put to them: what boils then is all that is listed.
    if (!begun && isLongBoiled(bound)) for (let i = 0; i < ingredients.length; i++) found.add(i);
    begun ||=
      (WORKS.has(bound.event.act) && bound.event.act !== 'steep' && bound.names.length > 0) || bound.names.length > 2;
    const onto = isDoneWith(bound, ingredients);
    const said: Taken = onto && !started ? 'main' : takenBy(bound, started, isPortioned);
    const taken: Taken = said === 'all' && started && isToldOff && !isAllElse(bound) ? 'none' : said;
    if (taken === 'all') for (let i = 0; i < ingredients.length; i++) found.add(i);
    if (taken === 'main') for (const i of main) found.add(i);
    if (bound.event.act === 'heat' && !namesWater(bound, ingredients)) addWater(ingredients, found);
    addMaterials(bound, part, found);
    started ||=
      taken === 'all' ||
      (!isHandedOver(bound) && bound.names.some(({ role, mention }) => role === 'what' || mention.part !== undefined));
  }
  return found;
}

/** Lines (judgement). */
const MUCH = 3;

/** Whether steps name nearly all that is listed, one by one: `return it all to the pan` is of what lies there. */
export function tellsOff({ ledger, steps }: Part): boolean {
  // `Fold in the dry ingredients`
  if (steps.some((step) => speaksOf(step, 'ingredients'))) return false;
  const named = ledger.filter(({ uses }) => uses.length > 0).length;
  return named >= MUCH && (ledger.length - named) * MUCH <= named;
}

/** `Add all the rest` */
const isAllElse = ({ event: { act, objects }, names }: BoundEvent): boolean =>
  act === 'combine' && names.length === 0 && objects.some(({ by }) => by === 'rest');

/** What puts foods together or makes them ready to eat. */
const WORKS: ReadonlySet<Act> = new Set<Act>(['heat', 'combine', 'steep', 'rise', 'stuff', 'freeze', 'smoke', 'shape']);

const isEatenAsItIs = (ingredient: Ingredient): boolean =>
  !isIn(ingredient, 'flesh') && !isIn(ingredient, 'egg') && !isIn(ingredient, 'raw flour');

/** `Take the cabbage and the paste`, both made before: nothing has begun. */
const isHandedOver = ({ event: { act }, names }: BoundEvent): boolean =>
  act === 'ready' && names.every(({ mention }) => mention.part !== undefined);

/** What boils for so long, with no word of what, is all that is listed: a stock. */
const LONG_MIN = 60;
const isLongBoiled = ({ event: { act, cooks, medium, times }, names }: BoundEvent): boolean =>
  names.length === 0 &&
  act === 'heat' &&
  cooks === 'through' &&
  medium?.is === 'water' &&
  times.some(({ kind, minutes }) => kind === 'spent' && minutes.low >= LONG_MIN);

/** What happens, or may. */
const eventsOf = (steps: readonly Step[]): readonly BoundEvent[] =>
  steps.flatMap((step) => boundEvents(step)).filter(({ event: { said } }) => said !== 'not' && said !== 'advice');

const isPortion = ({ portion: { kind } }: Mention): boolean => kind !== 'plain' && kind !== 'all';

function takenBy(
  { event: { act, craft, objects }, names, unnamed }: BoundEvent,
  started: boolean,
  isPortioned: boolean,
): Taken {
  const isUnnamed = (slot: Slot): boolean =>
    !names.some(({ mention }) => mention.start < slot.end && slot.start < mention.end);
  if (
    objects.some((slot) => slot.by === 'all' && slot.role !== 'into' && isUnnamed(slot)) ||
    names.some(({ mention }) => mention.bare)
  )
    return 'all';
  // `Mix the chicken with all the rest`, and of what nothing came before `cook the pumpkin with these`.
  if (
    objects.some(
      ({ role, by, ...slot }) =>
        role === 'with' &&
        ((by === 'rest' && !isPortioned) || (by === 'it' && !started)) &&
        isUnnamed({ role, by, ...slot }),
    )
  )
    return 'all';
  const atStart = AT_THE_START[act];
  // A tin is buttered before anything begins.
  if (atStart === undefined || unnamed === 'vessel') return 'none';
  // `Cool leftovers` are of the dish.
  if (
    names.length === 0 &&
    !isPortioned &&
    act !== 'cool' &&
    act !== 'freeze' &&
    objects.some(({ by }) => by === 'rest')
  )
    return 'all';
  // `Rub in the butter` wants something to rub it into.
  if (names.some(({ role }) => role === 'what')) return craft === 'rub' && !started ? 'main' : 'none';
  if (!started && unnamed !== 'name') return act === 'combine' || names.length === 0 ? atStart : 'main';
  // `Turn the breasts`: a word that names nothing listed is likely what the part is of.
  return unnamed === 'name' ? 'main' : 'none';
}

/** The flesh, or what the list begins with. */
function mainOf(ingredients: readonly Ingredient[]): readonly number[] {
  const flesh = ingredients.flatMap((ingredient, i) => (isIn(ingredient, 'flesh') ? [i] : []));
  return flesh.length > 0 ? flesh : [0];
}

/** Whether a step brings in something by a word that names nothing listed, and may be what is left over: `shape the loaves` does not. */
export const speaksOfStrangers = ({ steps }: Part): boolean =>
  eventsOf(steps).some(({ event: { act }, unnamed }) => unnamed === 'name' && BRINGS_IN.has(act));

const BRINGS_IN: ReadonlySet<Act> = new Set<Act>([
  'combine',
  'heat',
  'steep',
  'put',
  'cut',
  'pack',
  'smoke',
  'unknown',
]);

/** `Rub with the salt`: what it is done with is named, and not what it is done to. */
function isDoneWith({ event: { craft }, names }: BoundEvent, ingredients: readonly Ingredient[]): boolean {
  const named = names.flatMap(({ mention }) => mention.ingredients.map((ref) => ingredients[ref.ingredient]));
  return (
    BY_CRAFT.has(craft ?? '') && named.length > 0 && named.every((ingredient) => isMaterial('marinate', ingredient))
  );
}

/** What an order of its craft needs, unless it names something of the kind. */
function addMaterials({ event: { craft, onto }, names }: BoundEvent, part: Part, found: Set<number>): void {
  const { ingredients } = part.head;
  // `Scatter with the parsley` takes no sugar, and of a list above nobody says here what it needs.
  const isNamed = names.some(
    ({ role, mention }) =>
      (craft === 'dust' && (role === 'with' || onto === true)) ||
      mention.ingredients.some((ref) => ref.part !== part.index || isMaterial(craft, ingredients[ref.ingredient])),
  );
  if (isNamed) return;
  for (const [i, ingredient] of ingredients.entries()) if (isMaterial(craft, ingredient)) found.add(i);
}

const isMaterial = (craft: Craft | undefined, ingredient: Ingredient | undefined): boolean =>
  craft !== undefined && ingredient !== undefined && BY_CRAFT.get(craft)?.has(foodOf(ingredient)?.class ?? '') === true;

/** `Boil the sugar and the 120 ml water`: other water on the list is for something else. */
const namesWater = ({ names }: BoundEvent, ingredients: readonly Ingredient[]): boolean =>
  names.some(({ mention }) =>
    mention.ingredients.some((ref) => {
      const named = ingredients[ref.ingredient];
      return named !== undefined && isIn(named, 'water');
    }),
  );

/** What is boiled has its water. */
function addWater(ingredients: readonly Ingredient[], found: Set<number>): void {
  for (const [i, ingredient] of ingredients.entries()) if (isIn(ingredient, 'water')) found.add(i);
}
