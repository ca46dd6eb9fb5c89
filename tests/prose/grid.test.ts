/** Every row multiplies with the others by itself: what stays, where and for how long is read whatever words say it, and what is denied is not. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import type { Act, Event } from '../../server/src/prose/event.ts';
import { jointOf, longerSense, senseOf, signOf, timeOf, verbOf } from '../../server/src/prose/lexicon.ts';
import { read } from '../../server/src/prose/read.ts';
import { type PlaceRow, TABLES, type TimeRow, type VerbRow } from '../../server/src/prose/rows.ts';
import { timesIn } from '../../server/src/prose/times.ts';

type Word<Row> = readonly [string, Row];

const eventsOf = (text: string): readonly Event[] => read(sentenceIn(text).items, []);
const saysTime = (words: string): boolean => timesIn(sentenceIn(words).items, []).length > 0;
/** It has its own preposition or article, or is no noun: `on low`, `the pass`, `outside`. */
const opens = (words: string): boolean =>
  words.startsWith('the ') ||
  jointOf(senseOf(words.split(' ', 1)[0] ?? ''))?.way !== undefined ||
  jointOf(longerSense(senseOf('the'), words)) !== undefined;
/** `carry on` is another verb, and `double` and `last` as often none; `leave over` may end where `over night` begins. */
const isOther = (verb: string): boolean =>
  (signOf(senseOf(verb)) ?? jointOf(senseOf(verb)) ?? timeOf(senseOf(verb.split(' ').at(-1) ?? ''))) !== undefined ||
  ['on', 'in'].some((next) => verbOf(longerSense(senseOf(verb), next)) !== undefined);

const LASTING: ReadonlySet<Act> = new Set(['stay', 'cool', 'rise', 'steep', 'thaw', 'dry']);

/** What goes on by itself, wherever that is. */
const verbs = TABLES.verb
  .all()
  .flatMap((row): Word<VerbRow>[] =>
    LASTING.has(row.act) && row.lasts === 'waits' && row.where === undefined
      ? row.words.filter((word) => !saysTime(word) && !isOther(word)).map((word) => [word, row])
      : [],
  );
const places = TABLES.thing
  .all()
  .flatMap((row): Word<PlaceRow>[] =>
    row.sort === 'place' && row.is !== 'stove'
      ? row.words.filter((word) => !opens(word)).map((word) => [word, row])
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

/** What may stand around them. */
const FRAMES: readonly string[] = [
  'let the stew VERB in the PLACE TIME.',
  'the stew should VERB in the PLACE TIME.',
  'cover it and let it VERB TIME in the PLACE.',
  'let it VERB, covered, in the PLACE TIME.',
  'after cooking, VERB the stew in the PLACE TIME.',
  'VERB the stew in a PLACE TIME.',
  'VERB it TIME in the PLACE before eating.',
  'in the PLACE, let it VERB TIME.',
  'VERB in the PLACE TIME or until needed.',
  'once cold, VERB in the PLACE TIME.',
  'you can VERB it in the PLACE TIME.',
];

test('whatever lasts, wherever, however long, is read', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...FRAMES),
      fc.constantFrom(...verbs),
      fc.constantFrom(...places),
      fc.constantFrom(...times),
      (frame, [verb, { act }], [place, { is }], [time, { range }]) => {
        const text = frame.replace('VERB', verb).replace('PLACE', place).replace('TIME', time);
        const events = eventsOf(text);
        expect(lies(events, is, range?.low), text).toBe(true);
        expect(
          events.map((event) => event.act),
          text,
        ).toContain(act);
      },
    ),
    { numRuns: 400 },
  );
});

test('and its twin that is denied moves nothing', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('never let it', 'do not let the stew', 'it must not'),
      fc.constantFrom(...verbs),
      fc.constantFrom(...places),
      fc.constantFrom(...times),
      (denied, [verb], [place], [time]) => {
        const text = `${denied} ${verb} in the ${place} ${time}.`;
        for (const event of eventsOf(text)) expect(event.said, text).toBe('not');
      },
    ),
    { numRuns: 200 },
  );
});
