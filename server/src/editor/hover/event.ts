/** A verb or place of a step: what was understood to happen, where, how warm and for how long. */
import { trimmed } from '../../measure/number-text.ts';
import type { Span } from '../../notation/tree.ts';
import { type BoundEvent, boundEvents } from '../../recipe/journey/bind.ts';
import type { Stay } from '../../recipe/journey/bodies.ts';
import { journeyAt } from '../../recipe/journey/fold.ts';
import { bandOf } from '../../recipe/journey/places.ts';
import type { Step } from '../../recipe/model.ts';
import { waitsSaid } from '../../recipe/waiting/said.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { figure } from '../facts.ts';
import { type Cursor, holds, placeOf } from '../place.ts';
import { listOf, sayMinutesRange, span, textOf } from '../words.ts';
import type { Fact, HoverSource } from './fact.ts';

type Event = BoundEvent['event'];

export const hoverEvent: HoverSource = (snapshot, cursor) => {
  const { line, at, character } = cursor;
  const step = stepAt(cursor);
  if (step === undefined) return undefined;
  for (const { event } of boundEvents(step)) {
    const word = [event.verb, ...event.where, event.vessel, event.medium].find((each) => holds(each, character));
    if (word === undefined) continue;
    return {
      at: placeOf(at, word),
      title: textOf(line, word),
      subtitle: ACTS[event.act],
      facts: understood(snapshot, cursor, event),
    };
  }
  return undefined;
};

/** A vessel or place of a sign: no food lies there by that. */
export const hoverSign: HoverSource = (_snapshot, cursor) => {
  const { line, at, character } = cursor;
  const step = stepAt(cursor);
  if (step === undefined) return undefined;
  for (const { event } of boundEvents(step))
    for (const sign of event.until)
      if (sign.at !== undefined && holds(sign.at, character))
        return {
          at: placeOf(at, sign.at),
          title: textOf(line, sign.at),
          subtitle: 'where the sign is looked for',
          facts: [figure('Sign', textOf(line, sign))],
        };
  return undefined;
};

/** Beside a time or temperature: the event that it was understood to be of. */
export function understoodFacts(snapshot: Snapshot, cursor: Cursor, figureAt: Span): Fact[] {
  const step = stepAt(cursor);
  if (step === undefined) return [];
  const isThere = (said: Span): boolean => said.start < figureAt.end && said.end > figureAt.start;
  const found = boundEvents(step).find(
    ({ event }) => event.times.some(isThere) || event.temperatures.some(isThere),
  )?.event;
  return found === undefined ? [] : understood(snapshot, cursor, found);
}

const stepAt = ({ part, inPart }: Cursor): Step | undefined => part?.steps.find(({ line }) => line === inPart);

function understood({ recipe }: Snapshot, { line, part, inPart }: Cursor, event: Event): Fact[] {
  const journey = part && journeyAt(recipe, part.index);
  const stay = journey?.stays.find((s) => s.part === part?.index && s.line === inPart && s.by.event === event);
  const facts = [figure('Understood', sentenceOf(event, stay))];
  if (event.said !== 'yes') facts.push(figure('Said', SAID[event.said]));
  if (stay !== undefined) for (const { label, words } of waitsSaid(recipe, stay)) facts.push(figure(label, words));
  const signs = event.until.map((sign) => textOf(line, sign));
  if (signs.length > 0) facts.push(figure('Ends or begins', listOf(signs)));
  return facts;
}

/** `stays in a room, 10 to 30 °C, 8 to 12 h; cooked through`. */
function sentenceOf(event: Event, stay: Stay | undefined): string {
  const { act, cooks, where, temperatures, times } = event;
  const place = where.find(({ way, not }) => !not && way !== 'out of' && way !== 'off');
  const kind = stay?.lies.place ?? place?.is;
  const said = [`${ACTS[act]}${kind === undefined ? '' : ` ${PLACES[kind]}`}`];
  const celsius = stay?.lies.celsius ?? place?.celsius ?? (kind && bandOf(kind));
  if (celsius !== undefined && temperatures.length === 0) said.push(sayCelsius(celsius));
  for (const { celsius: of, of: what, sure } of temperatures)
    said.push(`${sayCelsius(of)} ${sure === 'unread' ? 'of nobody knows what' : HEATS[what]}`);
  for (const { minutes, kind: as, per } of times) {
    // A point that opens a stay, as an hour before roasting does, is as long as that.
    const opens = as === 'point' && stay !== undefined && stay.minutes.high > 0;
    said.push(
      `${opens ? '' : TIMES[as]}${sayTime(opens ? stay.minutes : minutes)}${per === undefined ? '' : ` a ${per}`}`,
    );
  }
  if (times.length === 0 && stay !== undefined && stay.minutes.high > 0) said.push(sayTime(stay.minutes));
  const cooked = stay?.body.members.map(({ state }) => state.cooked);
  const state =
    cooked === undefined || cooked.length === 0 ? undefined : cooked.includes('raw') ? 'raw' : cooked.at(-1);
  const done = cooks === undefined ? state && COOKED[state] : COOKS[cooks];
  return said.join(', ') + (done === undefined ? '' : `; ${done}`);
}

function sayTime(minutes: { readonly low: number; readonly high: number }): string {
  const low = toTheHalfHour(minutes.low);
  if (Number.isFinite(minutes.high)) return sayMinutesRange({ low, high: toTheHalfHour(minutes.high) });
  return low === 0 ? 'nobody says how long' : `${sayMinutesRange({ low, high: low })} or longer`;
}

/** Of long times, which are ranges of habit, nobody wants the minutes. */
const toTheHalfHour = (minutes: number): number => (minutes > 180 ? Math.round(minutes / 30) * 30 : minutes);

function sayCelsius({ low, high }: { readonly low: number; readonly high: number }): string {
  if (!Number.isFinite(high)) return `${trimmed(low, 0)} °C or warmer`;
  if (!Number.isFinite(low)) return `${trimmed(high, 0)} °C or colder`;
  return `${span({ low, high }, (n) => trimmed(n, 0))} °C`;
}

const ACTS: Readonly<Record<Event['act'], string>> = {
  heat: 'heats',
  cool: 'cools',
  freeze: 'freezes',
  thaw: 'thaws',
  stay: 'stays',
  rise: 'rises',
  steep: 'steeps',
  dry: 'dries',
  smoke: 'smokes',
  pack: 'is packed',
  close: 'is closed',
  open: 'is opened',
  cover: 'is covered',
  combine: 'is mixed',
  divide: 'is divided',
  reserve: 'is set aside',
  return: 'comes back',
  remove: 'is taken out',
  put: 'is put',
  cut: 'is cut',
  mince: 'is minced',
  pierce: 'is pierced',
  stuff: 'is stuffed',
  shape: 'is shaped',
  ready: 'is made ready',
  read: 'is measured',
  adjust: 'is changed',
  eat: 'is eaten',
  discard: 'is thrown away',
  unknown: 'something happens to it',
};

const PLACES: Readonly<Record<NonNullable<Event['where'][number]['is']>, string>> = {
  frozen: 'in the freezer',
  cold: 'in the cold',
  cool: 'in a cool place',
  room: 'in a room',
  outdoors: 'outdoors',
  warm: 'in a warm place',
  hot: 'where it is kept hot',
  oven: 'in the oven',
  stove: 'on the stove',
  level: 'on the stove',
  bath: 'in a bath',
  smoker: 'in the smoker',
};

const HEATS: Readonly<Record<Event['temperatures'][number]['of'], string>> = {
  food: 'in the food',
  oven: 'in the oven',
  around: 'around it',
  medium: 'in what it lies in',
  nothing: 'of nothing that counts',
};

const TIMES: Readonly<Record<Event['times'][number]['kind'], string>> = {
  spent: '',
  limit: 'at most ',
  life: 'good for ',
  until: 'until then, ',
  every: 'every ',
  point: 'after ',
};

const COOKS: Readonly<Record<NonNullable<Event['cooks']>, string>> = {
  through: 'cooked through',
  'as read': 'cooked as far as a figure or sign says',
  again: 'heated again',
  outside: 'its outside alone is cooked',
  barely: 'warmed, and not cooked',
};

const COOKED: Readonly<Record<Stay['body']['members'][number]['state']['cooked'], string>> = {
  raw: 'not heated so far',
  outside: 'its outside alone is cooked',
  unsaid: 'heated, and nothing says how far',
  through: 'cooked through',
};

const SAID: Readonly<Record<Event['said'], string>> = {
  yes: 'for sure',
  not: 'that it does not happen',
  'at most': 'as the most that may happen',
  if: 'on a condition',
  optional: 'as the cook likes',
  advice: 'of what others do',
  asked: 'as a question',
};
