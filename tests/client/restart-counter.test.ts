import { describe, expect, it } from 'vitest';
import { createRestartCounter } from '../../client/src/restart-counter.ts';

const windowMs = 180_000;

describe('after a crash', () => {
  it('starts again until there were too many within the window', () => {
    const { counter } = counting();
    expect([1, 2, 3, 4, 5].map(counter.crashed)).toEqual([true, true, true, true, false]);
  });

  it('forgets crashes that are older than the window, so a rare crash never stops the server for good', () => {
    const { counter, pass } = counting();
    for (let day = 0; day < 100; day += 1) {
      expect(counter.crashed()).toBe(true);
      pass(windowMs / 3);
    }
  });

  it('starts again once the window has passed, even after giving up', () => {
    const { counter, pass } = counting();
    for (let crash = 0; crash < 5; crash += 1) counter.crashed();
    expect(counter.crashed()).toBe(false);
    pass(windowMs);
    expect(counter.crashed()).toBe(true);
  });

  it('starts again when it is asked to', () => {
    const { counter } = counting();
    for (let crash = 0; crash < 5; crash += 1) counter.crashed();
    counter.reset();
    expect([1, 2, 3, 4, 5].map(counter.crashed)).toEqual([true, true, true, true, false]);
  });
});

function counting(): { counter: ReturnType<typeof createRestartCounter>; pass: (ms: number) => void } {
  let nowMs = 1_000_000;
  return {
    counter: createRestartCounter({ most: 4, windowMs, now: () => nowMs }),
    pass: (ms) => {
      nowMs += ms;
    },
  };
}
