import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createWatchdog } from '../../client/src/watchdog.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const everyMs = 1000;

function watching(answers: () => Promise<unknown>) {
  const heard = { asked: 0, hung: 0 };
  const watchdog = createWatchdog({
    ask: () => {
      heard.asked += 1;
      return answers();
    },
    hung: () => {
      heard.hung += 1;
    },
    everyMs,
    patience: 3,
  });
  return { watchdog, heard };
}

const never = (): Promise<unknown> => new Promise(() => undefined);

describe('a server that is watched', () => {
  it.each([
    ['answers', () => Promise.resolve(null)],
    ['refuses', () => Promise.reject(new Error('not known'))],
  ])('and %s is left alone', async (_how, answers) => {
    const { watchdog, heard } = watching(answers);
    watchdog.watch();
    await vi.advanceTimersByTimeAsync(20 * everyMs);
    expect(heard).toEqual({ asked: 20, hung: 0 });
    watchdog.rest();
  });

  it('and says nothing several times over is said to hang, once', async () => {
    const { watchdog, heard } = watching(never);
    watchdog.watch();
    await vi.advanceTimersByTimeAsync(3 * everyMs);
    expect(heard).toEqual({ asked: 1, hung: 0 });
    await vi.advanceTimersByTimeAsync(10 * everyMs);
    expect(heard).toEqual({ asked: 1, hung: 1 });
  });

  it('and answers late, but before patience ends, is left alone', async () => {
    const { watchdog, heard } = watching(() => new Promise((resolve) => setTimeout(resolve, 2.5 * everyMs)));
    watchdog.watch();
    await vi.advanceTimersByTimeAsync(30 * everyMs);
    expect(heard.hung).toBe(0);
    watchdog.rest();
  });

  it('is asked nothing any more once it is stopped', async () => {
    const { watchdog, heard } = watching(never);
    watchdog.watch();
    await vi.advanceTimersByTimeAsync(2 * everyMs);
    watchdog.rest();
    await vi.advanceTimersByTimeAsync(20 * everyMs);
    expect(heard).toEqual({ asked: 1, hung: 0 });
  });

  it('and was started again is asked anew: what the last one left unanswered is forgotten', async () => {
    let late: (() => void) | undefined;
    const { watchdog, heard } = watching(
      () =>
        new Promise<void>((resolve) => {
          late ??= resolve;
        }),
    );
    watchdog.watch();
    await vi.advanceTimersByTimeAsync(3 * everyMs);
    watchdog.watch();
    await vi.advanceTimersByTimeAsync(everyMs);
    late?.();
    await vi.advanceTimersByTimeAsync(2 * everyMs);
    expect(heard).toEqual({ asked: 2, hung: 0 });
    // The late answer was of the one before: this one still says nothing.
    await vi.advanceTimersByTimeAsync(everyMs);
    expect(heard.hung).toBe(1);
  });
});
