import { describe, expect, it } from 'vitest';
import { Schedule } from '../../server/src/lsp/schedule.ts';

/** A clock turned by hand. */
function byHand() {
  let waiting: (() => void)[] = [];
  return {
    turn: (run: () => void) => {
      waiting.push(run);
    },
    next: () => {
      const now = waiting;
      waiting = [];
      for (const run of now) run();
    },
    idle: () => waiting.length === 0,
  };
}

describe('a schedule', () => {
  it('works out once what was marked many times', () => {
    const hand = byHand();
    const done: string[] = [];
    const schedule = new Schedule(hand.turn, (uri) => done.push(uri));
    schedule.mark(['a']);
    schedule.mark(['a', 'b']);
    hand.next();
    hand.next();
    expect(done).toEqual(['a', 'b']);
    expect(hand.idle()).toBe(true);
  });

  it('waits while changes keep coming, one a turn', () => {
    const hand = byHand();
    const done: string[] = [];
    const schedule = new Schedule(hand.turn, (uri) => done.push(uri));
    schedule.mark(['a']);
    for (let i = 0; i < 6; i++) {
      hand.next();
      schedule.mark(['a']);
    }
    expect(done).toEqual([]);
    for (let i = 0; i < 4; i++) hand.next();
    expect(done).toEqual(['a']);
  });

  it('answers who waits after working out', async () => {
    const hand = byHand();
    const done: string[] = [];
    const schedule = new Schedule(hand.turn, (uri) => done.push(uri));
    const waited = schedule.quiet().then(() => done.push('answered'));
    schedule.mark(['a']);
    while (!hand.idle()) hand.next();
    await waited;
    expect(done).toEqual(['a', 'answered']);
  });

  it('forgets what was closed', () => {
    const hand = byHand();
    const done: string[] = [];
    const schedule = new Schedule(hand.turn, (uri) => done.push(uri));
    schedule.mark(['a']);
    schedule.forget('a');
    while (!hand.idle()) hand.next();
    expect(done).toEqual([]);
  });
});
