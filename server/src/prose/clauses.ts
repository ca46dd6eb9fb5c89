/**
 * Knows what a clause is while the passes read it.
 * Refuses to know how it was found.
 */
import type { Manner, Saying, Sign } from './event.ts';

/** What a clause is for. Only `order` and `told` make events; the others say something of the clause that they belong to. */
export type Frame = 'order' | 'told' | 'beside' | 'before' | 'sign' | 'state' | 'purpose' | 'talk' | 'verbless';

export class Clause {
  /** Its first piece, and the piece after its last. */
  readonly from: number;
  to: number;
  /** The piece that is its verb; -1 where it has none. */
  readonly verb: number;
  frame: Frame = 'order';
  as: Manner = 'ordered';
  said: Saying = 'yes';
  either = 0;
  until: Sign[] | undefined;

  constructor(from: number, to: number, verb: number) {
    this.from = from;
    this.to = to;
    this.verb = verb;
  }
}
