/**
 * Knows what notes say of the dish: where it is kept and for how long, as what the steps leave in the end lies so, and of fish that it is one
 * to be eaten raw.
 * Refuses to know how long is too long, and hears nothing that a note says of a thing by name: it may be another.
 */
import { keptOn } from '../../notation/kept.ts';
import { sentenceIn } from '../../notation/sentence.ts';
import type { Line, TextField, TextNode } from '../../notation/tree.ts';
import type { Event } from '../../prose/event.ts';
import { read } from '../../prose/read.ts';
import { statesIn } from '../list/families.ts';
import type { Recipe } from '../model.ts';
import type { Body, Stay } from './bodies.ts';
import { type Journey, journeysOf } from './fold.ts';
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
      .map(({ at, line }) => ({ line: at, events: eventsOn(line) }))
      .filter(({ events }) => events.length > 0);
    noted =
      told.length === 0
        ? NONE
        : journeysOf(recipe).flatMap((journey) =>
            journey.pieces.flatMap(({ open }) =>
              open.flatMap((body) =>
                told.flatMap(({ line, events }) => staysOf(body, events).map((stay) => ({ journey, stay, line }))),
              ),
            ),
          );
    NOTED.set(recipe, noted);
  }
  return noted;
}

/** Whether a note asks for fish that lay frozen so cold and so long (°C and minutes), or that is sold to be eaten raw. */
export const isNotedForRaw = ({ outline }: Recipe, rows: readonly (readonly number[])[]): boolean =>
  outline.head.some(({ line }) => {
    const text = noteOn(line);
    return (
      text !== undefined &&
      (statesIn(text.text).has('for raw') ||
        read(sentenceIn(text.text).items, NONE).some(({ temperatures, times }) =>
          rows.some(
            ([celsius = 0, min = 0]) =>
              temperatures.some((each) => each.celsius.high <= celsius) &&
              times.some(({ minutes }) => minutes.low >= min),
          ),
        ))
    );
  });

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
      ? all.filter(isOfDish)
      : NONE;
    ON_LINE.set(line, events);
  }
  return events;
}

const isOfDish = ({ act, said, objects }: Event): boolean =>
  KEEPS.has(act) &&
  (said === 'yes' || said === 'optional') &&
  objects.every(({ by }) => by === 'it' || by === 'nothing' || by === 'all' || by === 'rest' || by === 'vessel');
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
