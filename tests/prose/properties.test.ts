/** What holds of any text: it is read without a throw, to the same events each time, and all they say lies in it. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import type { Span } from '../../server/src/notation/tree.ts';
import type { Event } from '../../server/src/prose/event.ts';
import type { NameRun } from '../../server/src/prose/pieces.ts';
import { read } from '../../server/src/prose/read.ts';
import { namesIn, readSentences } from '../outside/sentences/score.ts';

const TABLES = ['verbs', 'places', 'vessels', 'media', 'times', 'signs', 'joints', 'evidence'];
/** Words of every table, figures and marks, and some that nobody knows. */
const WORDS = TABLES.flatMap((name) =>
  readFileSync(`server/data/prose/${name}.tsv`, 'utf8')
    .split('\n')
    .slice(2, -1)
    .flatMap((row) => row.split('\t').slice(0, 2).join(';').split(';')),
)
  .filter((word) => word !== '')
  .concat([
    'butter',
    'chicken',
    'zorb',
    '2 h',
    '180 C',
    '325 F.',
    '3 cups',
    '1/2',
    'two',
    '20 to 30 minutes',
    '(',
    ')',
    ',',
    '.',
    ';',
    ':',
    '--',
    '?',
  ]);

const text = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 80 }),
  fc.array(fc.constantFrom(...WORDS), { maxLength: 30 }).map((words) => words.join(' ')),
);
const runs = fc.array(fc.nat({ max: 30 }), { maxLength: 8 });

/** Some items as names, none over another. */
function runsFrom(places: readonly number[], items: number): readonly NameRun[] {
  const ends = [...new Set(places)].filter((at) => at <= items).sort((a, b) => a - b);
  return ends.slice(1).flatMap((to, i) => (i % 2 === 0 ? [{ from: ends[i] ?? 0, to }] : []));
}

const spansOf = (event: Event): readonly Span[] => [
  event,
  ...(event.verb ? [event.verb] : []),
  ...(event.vessel ? [event.vessel] : []),
  ...(event.medium ? [event.medium] : []),
  ...event.objects,
  ...event.where,
  ...event.temperatures,
  ...event.times,
  ...event.until,
  ...event.amounts,
];

test('any text is read, and what is read lies in it', () => {
  fc.assert(
    fc.property(text, runs, (line, places) => {
      const { items } = sentenceIn(line);
      const names = runsFrom(places, items.length);
      const events = read(items, names);
      for (const span of events.flatMap(spansOf)) {
        expect(span.start).toBeGreaterThanOrEqual(0);
        expect(span.start).toBeLessThanOrEqual(span.end);
        expect(span.end).toBeLessThanOrEqual(line.length);
      }
      for (const { minutes } of events.flatMap(({ times }) => times)) {
        expect(minutes.low).toBeGreaterThanOrEqual(0);
        expect(minutes.low).toBeLessThanOrEqual(minutes.high);
      }
      for (const { celsius } of events.flatMap(({ temperatures }) => temperatures))
        expect(celsius.low).toBeLessThanOrEqual(celsius.high);
      expect(read(sentenceIn(line).items, names)).toEqual(events);
    }),
    { numRuns: 1500 },
  );
});

test('what is said in a sentence does not hang on the sentence before it', () => {
  const printed = readSentences(readFileSync('tests/outside/sentences/printed.tsv', 'utf8'))
    .map(({ sentence }) => sentence)
    .filter((sentence) => /^[A-Z][a-z].*[a-z]\.$/.test(sentence));
  const sentence = fc.constantFrom(...printed);
  fc.assert(
    fc.property(sentence, sentence, (one, other) => {
      const alone = readAll(other);
      const behind = readAll(`${one} ${other}`).filter(({ start }) => start > one.length);
      const moved = (event: Event): unknown => ({ ...whatOf(event), start: event.start + one.length + 1 });
      expect(behind.map((event) => ({ ...whatOf(event), start: event.start }))).toEqual(alone.map(moved));
    }),
    { numRuns: 500 },
  );
});

const whatOf = ({ act, cooks, as, said }: Event): object => ({ act, cooks, as, said });

function readAll(line: string): readonly Event[] {
  const { items } = sentenceIn(line);
  return read(items, namesIn(items));
}
