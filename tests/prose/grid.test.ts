/** Every row multiplies with the others by itself: what stays, where and for how long is read whatever words say it, and what is denied is not. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import type { Act, Event } from '../../server/src/prose/event.ts';
import { jointOf, longerSense, senseOf, verbOf } from '../../server/src/prose/lexicon.ts';
import { read } from '../../server/src/prose/read.ts';
import { type PlaceRow, TABLES, type TimeRow, type VerbRow } from '../../server/src/prose/rows.ts';
import { timesIn } from '../../server/src/prose/times.ts';

type Word<Row> = readonly [string, Row];

const eventsOf = (text: string): readonly Event[] => read(sentenceIn(text).items, []);
const saysTime = (words: string): boolean => timesIn(sentenceIn(words).items, []).length > 0;
/** It has its own preposition, or is no noun: `on low`, `outside`. */
const opens = (words: string): boolean =>
  jointOf(senseOf(words.split(' ', 1)[0] ?? ''))?.way !== undefined ||
  jointOf(longerSense(senseOf('the'), words)) !== undefined;
/** `carry on` is another verb. */
const goesOn = (verb: string): boolean =>
  ['on', 'in'].some((next) => verbOf(longerSense(senseOf(verb), next)) !== undefined);
const noArticle = (words: string): string => words.replace(/^the /, '');

const LASTING: ReadonlySet<Act> = new Set(['stay', 'cool', 'rise', 'steep', 'thaw', 'dry']);

/** What goes on by itself, wherever that is. */
const verbs = TABLES.verb
  .all()
  .flatMap((row): Word<VerbRow>[] =>
    LASTING.has(row.act) && row.lasts === 'waits' && row.where === undefined
      ? row.words.filter((word) => !saysTime(word) && !goesOn(word)).map((word) => [word, row])
      : [],
  );
const places = TABLES.thing
  .all()
  .flatMap((row): Word<PlaceRow>[] =>
    row.sort === 'place' && row.is !== 'stove'
      ? row.words.filter((word) => !opens(word)).map((word) => [noArticle(word), row])
      : [],
  );
const times = TABLES.time
  .all()
  .flatMap((row): Word<TimeRow>[] =>
    row.is === 'span' && row.kind === 'spent' ? row.words.map((word) => [word, row]) : [],
  );
const horizons = TABLES.time
  .all()
  .flatMap((row): Word<TimeRow>[] =>
    row.is === 'hour' || row.is === 'horizon' || row.is === 'day' ? row.words.map((word) => [word, row]) : [],
  );

const lies = (events: readonly Event[], place: PlaceRow['is'], lowMin: number | undefined): boolean =>
  events.some(
    ({ where, times: said }) =>
      where.some(({ is, way, not }) => is === place && way === 'at' && !not) &&
      said.some(({ minutes }) => minutes.low === lowMin),
  );

const namesOf = (wrong: readonly Word<unknown>[]): readonly string[] => wrong.map(([word]) => word);

test('every verb that lasts is heard where it stands and for how long', () => {
  expect(verbs.length).toBeGreaterThan(150);
  const wrong = verbs.filter(([verb, { act }]) => {
    const events = eventsOf(`Let the soup ${verb} on the counter for 9 hours.`);
    return !lies(events, 'room', 540) || !events.some((event) => event.act === act);
  });
  expect(namesOf(wrong)).toEqual([]);
});

test('every place is heard', () => {
  expect(places.length).toBeGreaterThan(500);
  const wrong = places.filter(
    ([place, { is }]) => !lies(eventsOf(`Leave the soup in the ${place} for 9 hours.`), is, 540),
  );
  expect(namesOf(wrong)).toEqual([]);
});

test('every time that has words of its own is heard', () => {
  expect(times.length).toBeGreaterThan(100);
  const wrong = times.filter(
    ([time, { range }]) => !lies(eventsOf(`Leave the soup on the counter ${time}.`), 'room', range?.low),
  );
  expect(namesOf(wrong)).toEqual([]);
});

test('every horizon is heard', () => {
  expect(horizons.length).toBeGreaterThan(150);
  const wrong = horizons.filter(([horizon, { is, range, all }]) => {
    const until = is === 'horizon' ? range : all;
    return !lies(eventsOf(`Leave the soup on the counter until ${horizon}.`), 'room', until?.low);
  });
  expect(namesOf(wrong)).toEqual([]);
});

test('whatever lasts, wherever, however long, is read; and its twin that is denied moves nothing', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...verbs),
      fc.constantFrom(...places),
      fc.constantFrom(...times),
      ([verb, { act }], [place, { is }], [time, { range }]) => {
        const text = `Let the stew ${verb} in the ${place} ${time}.`;
        const events = eventsOf(text);
        expect(lies(events, is, range?.low), text).toBe(true);
        expect(
          events.map((event) => event.act),
          text,
        ).toContain(act);
        const denied = `Never let the stew ${verb} in the ${place} ${time}.`;
        for (const event of eventsOf(denied)) expect(event.said, denied).toBe('not');
      },
    ),
    { numRuns: 400 },
  );
});
