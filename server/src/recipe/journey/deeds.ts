/**
 * Knows what steps do and speak of: every question is held against every event of a step once, whoever asks it.
 * Refuses to know what the questions are for, and compares no words.
 */
import { onceByText } from '../../measure/once.ts';
import { keptOn } from '../../notation/kept.ts';
import { sentenceIn } from '../../notation/sentence.ts';
import type { SentenceItem } from '../../notation/tree.ts';
import type { Craft, Event, Where } from '../../prose/event.ts';
import { type Topic, topicBits, topicsAt } from '../../prose/topics.ts';
import type { Step } from '../model.ts';
import { type BoundEvent, boundEvents } from './bind.ts';

/** A question that steps are asked, made once for the life of the process. */
export interface Question {
  readonly bank: number;
  readonly bit: number;
}

/** Bits to a bank: a small integer holds so many. */
const BITS = 30;
/** Every question, in the order in which the modules that ask them are loaded; none comes later (a test holds it). */
const ASKED: ((event: Event) => boolean)[] = [];
/** The answers: a bit for every question. */
type Marks = readonly number[];
const BY_EVENTS = keptOn<readonly BoundEvent[], Marks>();
const DONE = keptOn<readonly BoundEvent[], readonly Event[]>();
const BY_STEPS = keptOn<readonly Step[], Marks>();

/** Whether something is done; what is denied or only told of others is not. */
export function deed(is: (event: Event) => boolean): Question {
  const question = { bank: Math.floor(ASKED.length / BITS), bit: 1 << (ASKED.length % BITS) };
  ASKED.push(is);
  return question;
}

/** What a step orders and tells of, in order, without what it denies. */
export function eventsOf(step: Step): readonly Event[] {
  const events = boundEvents(step);
  let done = DONE.get(events);
  if (done === undefined) {
    done = events.flatMap(({ event }) => (isDone(event) ? [event] : []));
    DONE.set(events, done);
  }
  return done;
}

const isDone = ({ said }: Event): boolean => said !== 'not' && said !== 'advice' && said !== 'asked';

/** Whether the step does it. */
export const does = (step: Step, { bank, bit }: Question): boolean => ((marksOf(step)[bank] ?? 0) & bit) !== 0;

/** Whether one of the steps does. */
export function anyDoes(steps: readonly Step[], { bank, bit }: Question): boolean {
  let marks = BY_STEPS.get(steps);
  if (marks === undefined) {
    const all = emptyMarks();
    for (const step of steps) {
      const own = marksOf(step);
      for (let i = 0; i < all.length; i++) all[i] = (all[i] ?? 0) | (own[i] ?? 0);
    }
    marks = all;
    BY_STEPS.set(steps, marks);
  }
  return ((marks[bank] ?? 0) & bit) !== 0;
}

function marksOf(step: Step): Marks {
  const events = boundEvents(step);
  let marks = BY_EVENTS.get(events);
  if (marks === undefined) {
    const all = emptyMarks();
    for (const { event } of events)
      if (isDone(event))
        for (let i = 0; i < ASKED.length; i++)
          if (ASKED[i]?.(event) === true) {
            const bank = Math.floor(i / BITS);
            all[bank] = (all[bank] ?? 0) | (1 << (i % BITS));
          }
    marks = all;
    BY_EVENTS.set(events, marks);
  }
  return marks;
}

function emptyMarks(): number[] {
  const marks: number[] = [];
  for (let bank = Math.ceil(ASKED.length / BITS); bank > 0; bank--) marks.push(0);
  return marks;
}

/** In the oven, or into it. */
export const isInOven = ({ is, way, not }: Where): boolean => is === 'oven' && (way === 'at' || way === 'to') && !not;
/** It is heated by the air around it, whatever it stands in. */
export const isBaked = ({ act, craft, medium, where, temperatures }: Event): boolean =>
  act === 'heat' &&
  (medium?.is === 'air' ||
    (craft !== undefined && BAKES.has(craft)) ||
    where.some(isInOven) ||
    temperatures.some(({ of }) => of === 'oven'));
const BAKES: ReadonlySet<Craft> = new Set(['bake', 'roast', 'grill']);

const TOPICS_IN = keptOn<Step['sentence'], { readonly one: number; readonly several: number }>();

function topicsIn({ sentence }: Step): { readonly one: number; readonly several: number } {
  let topics = TOPICS_IN.get(sentence);
  if (topics === undefined) {
    let [one, several] = [0, 0];
    for (const item of sentence.items) {
      const marks = topicsAt(item);
      one |= marks.one;
      several |= marks.several;
    }
    topics = { one, several };
    TOPICS_IN.set(sentence, topics);
  }
  return topics;
}

/** Whether the step speaks of one of the topics, in whatever number. */
export function speaksOf(step: Step, ...topics: readonly Topic[]): boolean {
  const { one, several } = topicsIn(step);
  // Most steps speak of none.
  return (one | several) !== 0 && ((one | several) & topicBits(topics)) !== 0;
}

/** Whether it speaks of several. */
export function speaksOfSeveral(step: Step, ...topics: readonly Topic[]): boolean {
  const { several } = topicsIn(step);
  return several !== 0 && (several & topicBits(topics)) !== 0;
}

/** Whether it speaks of it outside its mentions: `half of this` is of what lies there, `half the butter` is not. */
export const speaksOfUnnamed = (step: Step, ...topics: readonly Topic[]): boolean =>
  speaksOf(step, ...topics) &&
  step.sentence.items.some(
    (item) =>
      isAbout(item, ...topics) &&
      !step.mentions.some(({ whole }) => whole.start <= item.start && item.end <= whole.end),
  );

/** Whether an item does, in whatever number. */
export function isAbout(item: SentenceItem | undefined, ...topics: readonly Topic[]): boolean {
  const { one, several } = topicsAt(item);
  return ((one | several) & topicBits(topics)) !== 0;
}

/** Whether a name does: of a part, of a yield. */
export const nameSpeaksOf = (name: string, ...topics: readonly Topic[]): boolean =>
  (bitsOfName(name) & topicBits(topics)) !== 0;

const bitsOfName = onceByText(
  (name: string): number => {
    let bits = 0;
    for (const item of name === '' ? [] : sentenceIn(name).items) {
      const { one, several } = topicsAt(item);
      bits |= one | several;
    }
    return bits;
  },
  { texts: 2000 },
);
