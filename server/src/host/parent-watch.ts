/**
 * Knows how a process ends with the one that started it, whatever it computes: another thread looks on.
 * Refuses to wait for the end of its work: what it has to say nobody hears any more.
 */
import { Worker } from 'node:worker_threads';

/** Twice within the second in which nobody should miss it. */
const EVERY_MS = 500;

/**
 * What the thread runs, as a text: it needs no file beside the bundle. It looks at the process that started this one, and at
 * the client's own where that is another and can be seen from here.
 */
const LOOKS = `
const { workerData } = require('node:worker_threads');
const isGone = (pid) => {
  try {
    process.kill(pid, 0);
    return false;
  } catch (error) {
    return error.code === 'ESRCH';
  }
};
const seen = workerData.pids.filter((pid) => !isGone(pid));
setInterval(() => {
  if (process.ppid !== workerData.parent || seen.some(isGone)) process.kill(process.pid, 'SIGKILL');
}, workerData.everyMs);
`;

/** Ends this process, by force, within a second of the end of its parent or of the client, which may have told its own number. */
export function endWithParent(client: number | null): void {
  const parent = process.ppid;
  const pids = [...new Set([parent, ...(client === null ? [] : [client])])];
  const watch = new Worker(LOOKS, {
    eval: true,
    workerData: { parent, pids, everyMs: EVERY_MS },
    resourceLimits: { maxOldGenerationSizeMb: 8, maxYoungGenerationSizeMb: 1, stackSizeMb: 1 },
  });
  // A thread for which there is no room is no reason not to serve.
  watch.on('error', () => undefined);
  watch.unref();
}
