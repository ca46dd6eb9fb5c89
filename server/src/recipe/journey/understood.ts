/**
 * Knows how much of the steps was understood: their sentences, and the figures of heat and time in them.
 * Refuses to know what of it matters.
 */
import type { SentenceItem } from '../../notation/tree.ts';
import type { Event } from '../../prose/event.ts';
import type { Recipe } from '../model.ts';
import { boundEvents } from './bind.ts';

export interface Understood {
  readonly sentences: number;
  /** Those that order something, with no word in the place of an order, a place or a sign that nobody knows. */
  readonly understood: number;
  /** Temperatures and times. */
  readonly figures: number;
  /** Those of which it is known what they are of. */
  readonly figuresUnderstood: number;
}

export function understoodOf({ parts }: Recipe): Understood {
  let [sentences, understood, figures, figuresUnderstood] = [0, 0, 0, 0];
  for (const { steps } of parts)
    for (const step of steps) {
      const events = boundEvents(step).map(({ event }) => event);
      const { items } = step.sentence;
      let start = 0;
      items.forEach((item, at) => {
        if (item.kind === 'temperature' || item.kind === 'duration') {
          figures++;
          if (events.some((event) => tells(event, item))) figuresUnderstood++;
        } else if (item.kind === 'measured' && events.some((event) => isTimeOf(event, item))) {
          // `for 3 weeks` is no duration on the line, but it is a figure.
          figures++;
          figuresUnderstood++;
        }
        const isEnd = isStop(item) || at === items.length - 1;
        if (!isEnd) return;
        const first = items[start];
        if (first !== undefined && !(start === at && isStop(item))) {
          sentences++;
          const own = events.filter((event) => event.start >= first.start && event.start < item.end);
          if (own.length > 0 && own.every(isUnderstood)) understood++;
        }
        start = at + 1;
      });
    }
  return { sentences, understood, figures, figuresUnderstood };
}

const isTimeOf = ({ times }: Event, { start, end }: SentenceItem): boolean =>
  times.some((t) => t.start <= start && t.end >= end && t.sure !== 'unread');

const isStop = (item: SentenceItem): boolean =>
  item.kind === 'mark' && (item.mark === '.' || item.mark === '!' || item.mark === '?');

const isUnderstood = ({ act, where, until }: Event): boolean =>
  act !== 'unknown' && where.every(({ sure }) => sure !== 'unread') && until.every(({ sure }) => sure !== 'unread');

const tells = ({ temperatures, times }: Event, { kind, start, end }: SentenceItem): boolean =>
  kind === 'temperature'
    ? temperatures.some((t) => t.start < end && t.end > start && t.sure !== 'unread')
    : times.some((t) => t.start < end && t.end > start && t.sure !== 'unread');
