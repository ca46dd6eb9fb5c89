/**
 * Knows what words beside an order or in a line of the list say was done: `the whipped cream`, `gelatine leaves, soaked`.
 * Refuses to know to what, and what follows.
 */
import { keptOn } from '../../notation/kept.ts';
import type { SentenceItem } from '../../notation/tree.ts';
import type { Event } from '../../prose/event.ts';
import { formOf, sensesOf, verbOf } from '../../prose/lexicon.ts';
import type { BoundEvent } from './bind.ts';

const DONE = keptOn<readonly SentenceItem[], readonly BoundEvent[]>();

/** What each participle tells, as an act on nothing that is named. */
export function toldDone(items: readonly SentenceItem[]): readonly BoundEvent[] {
  let done = DONE.get(items);
  if (done === undefined) {
    done = sensesOf(items).flatMap((sense) => {
      const verb = formOf(sense) === 'past' ? verbOf(sense) : undefined;
      if (verb === undefined) return [];
      const { act, craft, where } = verb;
      const event: Event = {
        ...TOLD,
        act,
        ...(craft !== undefined && { craft }),
        where: where === undefined ? [] : [{ start: 0, end: 0, is: where, sure: 'said', way: 'at', not: false }],
      };
      return [{ event, names: [], unnamed: 'nothing' as const, into: undefined }];
    });
    DONE.set(items, done);
  }
  return done;
}

const TOLD: Event = {
  start: 0,
  end: 0,
  verb: undefined,
  act: 'unknown',
  lasts: 'no',
  as: 'told',
  said: 'yes',
  either: 0,
  objects: [],
  where: [],
  temperatures: [],
  times: [],
  until: [],
  amounts: [],
  meanwhile: false,
  elsewhere: false,
};
