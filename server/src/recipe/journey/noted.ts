/**
 * Knows what notes say of the dish: where it is kept and for how long, as what the steps leave in the end lies so, and of fish that it is one
 * to be eaten raw.
 * Refuses to know how long is too long, and hears what a note says of a thing by name only where the title calls the dish so: others may be
 * something else.
 */
import { keptOn } from '../../notation/kept.ts';
import { sentenceIn } from '../../notation/sentence.ts';
import type { Line, TextField, TextNode } from '../../notation/tree.ts';
import type { Event, Slot } from '../../prose/event.ts';
import { jointOf, senseOf } from '../../prose/lexicon.ts';
import { read } from '../../prose/read.ts';
import { statesIn } from '../list/families.ts';
import { callNames } from '../measures/kinds.ts';
import type { Part, Recipe } from '../model.ts';
import { calledName } from '../names/title.ts';
import { FUNCTION_WORDS, wordsOf } from '../words.ts';
import { boundEvents } from './bind.ts';
import { type Body, type Stay, sharesFood } from './bodies.ts';
import { Journey, journeysOf } from './fold.ts';
import { eventsIn } from './listed.ts';
import { lie } from './stays.ts';
import { settleTemperatures } from './temperatures.ts';

export interface Noted {
  readonly journey: Journey;
  readonly stay: Stay;
  /** In the document. */
  readonly line: number;
}

const NOTED = keptOn<Recipe, readonly Noted[]>();
const PROSE: ReadonlySet<TextField> = new Set(['note', 'serve']);
const NONE: readonly never[] = [];

/** Every stay that a note tells of all that is there in the end; where it lies is said, and so is for how long. */
export function notedStays(recipe: Recipe): readonly Noted[] {
  let noted = NOTED.get(recipe);
  if (noted === undefined) {
    const told = recipe.outline.head
      .map(({ at, line }) => ({ line: at, events: eventsOf(recipe, line) }))
      .filter(({ events }) => events.length > 0);
    const ofParts = recipe.outline.head.flatMap(({ at, line }) => eventsOfParts(recipe, line, at));
    noted =
      told.length + ofParts.length === 0
        ? NONE
        : journeysOf(recipe).flatMap((journey) => [
            ...told.flatMap(({ line, events }) =>
              bodiesAt(recipe, journey, line).flatMap((body) =>
                staysOf(body, events).map((stay) => ({ journey, stay, line })),
              ),
            ),
            ...ofParts.flatMap(({ part, event, line }) =>
              madeOf(part, journey).flatMap((body) => staysOf(body, [event]).map((stay) => ({ journey, stay, line }))),
            ),
          ]);
    NOTED.set(recipe, noted);
  }
  return noted;
}

const TOLD = keptOn<Recipe, readonly Journey[]>();

/** Each way of the foods, with a place where a note says that they lie in the end: what a rule finds there is a conclusion. */
export function journeysTold(recipe: Recipe): readonly Journey[] {
  let told = TOLD.get(recipe);
  if (told === undefined) {
    told = notedStays(recipe).map(({ journey: { parts, pieces }, stay }) => {
      const piece = pieces.find(({ open }) => open.some((body) => sharesFood(body, stay.body))) ?? pieces[0];
      return piece === undefined
        ? new Journey(parts, pieces)
        : new Journey(parts, [{ folded: piece.folded, stays: [stay], bodies: [stay.body], open: [stay.body] }]);
    });
    TOLD.set(recipe, told);
  }
  return told;
}

/**
 * Whether a note asks for fish that lay frozen so cold and so long (°C and minutes), or that is sold to be eaten raw; or a step, where it was not
 * bought so: `unless it was frozen, freeze it at -20 C for 7 days`.
 */
export const isNotedForRaw = ({ outline, parts }: Recipe, rows: readonly (readonly number[])[]): boolean =>
  outline.head.some(({ line }) => {
    const text = noteOn(line);
    return (
      text !== undefined &&
      (statesIn(text.text).has('for raw') ||
        read(sentenceIn(text.text).items, NONE).some((event) => isFrozenSo(event, rows)))
    );
  }) ||
  parts.some(({ steps }) =>
    steps.some((step) => boundEvents(step).some(({ event }) => event.said === 'if' && isFrozenSo(event, rows))),
  );

const isFrozenSo = ({ temperatures, times }: Event, rows: readonly (readonly number[])[]): boolean =>
  rows.some(
    ([celsius = 0, min = 0]) =>
      temperatures.some((each) => each.celsius.high <= celsius) && times.some(({ minutes }) => minutes.low >= min),
  );

const noteOn = ({ statement }: Line): TextNode | undefined =>
  statement.kind === 'text' && PROSE.has(statement.field) ? statement.value : undefined;

const ON_LINE = keptOn<Line, readonly Event[]>();

/** What a line tells of food that it does not name. */
function eventsOn(line: Line): readonly Event[] {
  let events = ON_LINE.get(line);
  if (events === undefined) {
    const text = noteOn(line);
    const all = text === undefined ? NONE : eventsIn(text, sentenceIn(text.text).items);
    events = all.some(({ times, temperatures }) => times.length + temperatures.length > 0)
      ? all.filter(({ act, said }) => KEEPS.has(act) && (said === 'yes' || said === 'optional'))
      : NONE;
    ON_LINE.set(line, events);
  }
  return events;
}

/** What is there in the end; of a note in a part that others go on from, what its steps made. */
function bodiesAt({ outline, parts }: Recipe, { pieces }: Journey, line: number): readonly Body[] {
  const index = outline.parts.findLastIndex(({ at }) => at < line);
  const isLast = index < 0 || index === outline.parts.length - 1;
  if (isLast || parts.length < 2) return pieces.flatMap(({ open }) => open);
  const here = pieces.find(({ folded }) => folded.part.head.source === outline.parts[index]?.source);
  return here?.folded.made.map(({ body }) => body) ?? NONE;
}

interface OfPart {
  readonly part: Part;
  readonly event: Event;
  readonly line: number;
}

/** `The batter keeps for a day in the fridge`: of a part, by its name or by what its kind is called. */
function eventsOfParts({ parts }: Recipe, line: Line, at: number): readonly OfPart[] {
  const text = noteOn(line)?.text ?? '';
  return eventsOn(line).flatMap((event): readonly OfPart[] => {
    const [slot, ...others] = event.objects.filter(({ role }) => role === 'what');
    if (slot?.by !== 'name' || others.length > 0) return NONE;
    const called = wordsOf(text.slice(slot.start, slot.end)).join(' ');
    const part = parts.find(({ head: { name, kind } }) =>
      [name, ...(kind === undefined ? NONE : callNames(kind))].some((call) => wordsOf(call).join(' ') === called),
    );
    return part === undefined ? NONE : [{ part, event, line: at }];
  });
}

/** What its steps made; of what is called a batter or a dough, as it was before it was heated. */
function madeOf({ index, head: { kind } }: Part, { pieces }: Journey): readonly Body[] {
  const folded = pieces.find((piece) => piece.folded.part.index === index)?.folded;
  if (folded === undefined) return NONE;
  const made = folded.made.map(({ body }) => body);
  if (kind === undefined || !RAW_CALLED.has(kind.group) || !made.every(isHeated)) return made;
  const mixed = folded.steps
    .flatMap(({ after }) => after.bodies)
    .findLast(
      (body) => body.members.length > 1 && body.members.every(({ of }) => of.part === index) && !isHeated(body),
    );
  return mixed === undefined ? NONE : [mixed];
}

const isHeated = ({ members }: Body): boolean => members.some(({ state }) => state.heatedBy !== undefined);
const RAW_CALLED: ReadonlySet<string> = new Set(['dough', 'batter', 'cake', 'pastry']);

/** What a line tells of the dish: without a name, or by what the title calls it, or of what is left. */
function eventsOf({ name }: Recipe, line: Line): readonly Event[] {
  const events = eventsOn(line);
  if (events.length === 0) return events;
  const text = noteOn(line)?.text ?? '';
  const own = headOf(name);
  // `With the cream in, keep it cold`
  const isOfDish = ({ start, end, by, role }: Slot): boolean =>
    by !== 'name' ||
    role === 'with' ||
    wordsOf(text.slice(start, end)).some((word) => word === own || jointOf(senseOf(`${word}s`))?.is === 'rest');
  return events.filter(({ objects }) => objects.every((slot) => slot.by !== 'mixture' && isOfDish(slot)));
}

/** `chicken` of `Roast chicken with lemon`. */
function headOf(title: string): string | undefined {
  const words = calledName(title).toLowerCase().split(/\s+/);
  const end = words.findIndex((word, at) => at > 0 && FUNCTION_WORDS.has(word));
  return wordsOf(words.slice(0, end < 0 ? words.length : end).join(' ')).at(-1);
}

const KEEPS: ReadonlySet<Event['act']> = new Set<Event['act']>([
  'stay',
  'pack',
  'close',
  'put',
  'cool',
  'eat',
  'cover',
  'unknown',
]);

function staysOf(body: Body, events: readonly Event[]): readonly Stay[] {
  const stays: Stay[] = [];
  let now = body;
  for (const event of events) {
    const by = { event, names: [], unnamed: undefined, into: undefined };
    const at = { part: body.members[0]?.of.part ?? 0, line: 0, branch: false };
    const lain = lie(now, by, settleTemperatures(event, now), at);
    now = lain.body;
    if ((lain.stay?.timed || event.temperatures.length > 0) && lain.stay?.lies.sure === 'said') stays.push(lain.stay);
  }
  return stays;
}
