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

/** A schedule that notes what it works out, and no pause. */
const noting = (hand: ReturnType<typeof byHand>, done: string[]) =>
  new Schedule(
    hand.turn,
    { whenIdle: () => undefined, whenStill: () => undefined },
    {
      soon: (uri) => done.push(uri),
      later: () => undefined,
      last: () => undefined,
      still: () => undefined,
    },
  );

describe('a schedule', () => {
  it('works out once what was marked many times', () => {
    const hand = byHand();
    const done: string[] = [];
    const schedule = noting(hand, done);
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
    const schedule = noting(hand, done);
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
    const schedule = noting(hand, done);
    const waited = schedule.quiet().then(() => done.push('answered'));
    schedule.mark(['a']);
    while (!hand.idle()) hand.next();
    await waited;
    expect(done).toEqual(['a', 'answered']);
  });

  it('does what can wait once nobody types, and then tidies up', () => {
    const hand = byHand();
    const done: string[] = [];
    let idle = () => {};
    let still = () => {};
    const schedule = new Schedule(
      hand.turn,
      {
        whenIdle: (run) => {
          idle = run;
        },
        whenStill: (run) => {
          still = run;
        },
      },
      {
        soon: (uri) => done.push(`soon ${uri}`),
        later: (uri) => done.push(`later ${uri}`),
        last: () => done.push('tidied'),
        still: (uri) => done.push(`still ${uri}`),
      },
    );
    schedule.mark(['a', 'b']);
    schedule.forget('b');
    while (!hand.idle()) hand.next();
    schedule.mark(['a']);
    while (!hand.idle()) hand.next();
    expect(done).toEqual(['soon a', 'soon a']);
    idle();
    idle();
    expect(done).toEqual(['soon a', 'soon a', 'later a', 'tidied', 'tidied']);
    still();
    still();
    expect(done.slice(5)).toEqual(['still a']);
  });

  it('forgets what was closed', () => {
    const hand = byHand();
    const done: string[] = [];
    const schedule = noting(hand, done);
    schedule.mark(['a']);
    schedule.forget('a');
    while (!hand.idle()) hand.next();
    expect(done).toEqual([]);
  });

  it('begins a pause anew after work, and none where nothing waits for it', () => {
    const hand = byHand();
    const done: string[] = [];
    const pauses: (() => void)[] = [];
    const schedule = new Schedule(
      hand.turn,
      { whenIdle: (run) => pauses.push(run), whenStill: () => undefined },
      {
        soon: (uri) => done.push(`soon ${uri}`),
        later: (uri) => done.push(`later ${uri}`),
        last: () => done.push('last'),
        still: () => undefined,
      },
    );
    schedule.worked();
    expect(pauses).toHaveLength(0);
    schedule.mark(['a']);
    hand.next();
    hand.next();
    expect(done).toEqual(['soon a']);
    expect(pauses).toHaveLength(2);
    schedule.worked();
    expect(pauses).toHaveLength(3);
    pauses.at(-1)?.();
    expect(done).toEqual(['soon a', 'later a', 'last']);
    schedule.worked();
    expect(pauses).toHaveLength(3);
  });
});
