/**
 * Knows when nobody is typing, and what a process can do for its machine then.
 */
import module from 'node:module';
import { getHeapStatistics, setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

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

/** Garbage worth a collection, in bytes. */
const WORTH_COLLECTING = 8 * 2 ** 20;

/**
 * Makes what a process does when it is idle: it gives back to the machine what it no longer needs, as the engine by itself
 * waits until more memory is asked for; and it keeps what was compiled so far for the next start.
 */
export function tidying(): () => void {
  let collect: ((options: object) => void) | undefined;
  let kept = 0;
  let flushed = false;
  return () => {
    if (!flushed) {
      flushed = true;
      module.flushCompileCache?.();
    }
    if (getHeapStatistics().total_physical_size - kept < WORTH_COLLECTING) return;
    if (collect === undefined) {
      setFlagsFromString('--expose-gc');
      collect = runInNewContext('gc') as (options: object) => void;
    }
    collect({ type: 'major', execution: 'sync', flavor: 'last-resort' });
    kept = getHeapStatistics().total_physical_size;
  };
}
