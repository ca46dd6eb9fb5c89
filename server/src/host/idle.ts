/**
 * Knows when nobody is typing, and what a process can do for its machine then.
 */

/** In a bundle, keeps what was compiled so far for the next start (`launch.ts`). */
declare const QUERN_COMPILED: { readonly keep?: () => void } | undefined;

/** Runs what it was last given once nothing new has been given for so many milliseconds. */
export function whenIdle(pauseMs: number): (run: () => void) => void {
  let last: (() => void) | undefined;
  let timer: NodeJS.Timeout | undefined;
  return (run) => {
    last = run;
    if (timer !== undefined) timer.refresh();
    else
      timer = setTimeout(() => {
        timer = undefined;
        last?.();
      }, pauseMs);
  };
}

/**
 * So many bytes more than were left by the last collection are worth another, which takes 30 ms, and 100 in a file of 10,000 lines:
 * always once a first file is open, seldom while one is typed.
 */
const WORTH_COLLECTING = 24 * 2 ** 20;
/** The same after many files were read, whose texts are waste at once and whose like will not come soon. */
const WORTH_AFTER_READING = 4 * 2 ** 20;

/**
 * Makes what a process does when it is idle: it gives back to the machine what it no longer needs, as the engine by itself
 * waits until more memory is asked for; and it keeps what was compiled so far for the next start.
 */
export function tidying(): (hasReadMany: boolean) => void {
  let collect: ((options: object) => void) | undefined;
  let kept = 0;
  return (hasReadMany) => {
    // Before the collection, which drops what was compiled.
    if (typeof QUERN_COMPILED !== 'undefined') QUERN_COMPILED.keep?.();
    // These modules take longer to load than a start can spare; Node before 20.16 has them only at the start.
    const v8 = process.getBuiltinModule?.('node:v8');
    const worth = hasReadMany ? WORTH_AFTER_READING : WORTH_COLLECTING;
    if (v8 === undefined || v8.getHeapStatistics().total_physical_size - kept < worth) return;
    if (collect === undefined) {
      v8.setFlagsFromString('--expose-gc');
      collect = process.getBuiltinModule('node:vm').runInNewContext('gc') as (options: object) => void;
    }
    collect({ type: 'major', execution: 'sync', flavor: 'last-resort' });
    kept = v8.getHeapStatistics().total_physical_size;
  };
}
