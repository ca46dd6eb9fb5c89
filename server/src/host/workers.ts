/**
 * Knows how the work of one command is shared between threads, each running the same bundle.
 */
import { availableParallelism } from 'node:os';
import { isMainThread, parentPort, Worker } from 'node:worker_threads';
import type { Workers } from '../cli/io.ts';

/** More threads than this read the disk against each other. */
const MOST = 8;

/** What a file was worked out from dies young, so that a nursery is emptied at little cost, and the less often the larger it is; past this, memory is only spread. */
const resourceLimits = { maxYoungGenerationSizeMb: 32 };

/** Workers that run a script; it must call `answerJobs` when it finds itself in one. */
export function nodeWorkers(script: string): Workers {
  const count = Math.min(availableParallelism(), MOST);
  return {
    count,
    async run<Job, Answer>(jobs: readonly Job[], answered: (answer: Answer, job: Job) => void) {
      const waiting = jobs.values();
      const workers = Array.from(
        { length: Math.min(count, jobs.length) },
        () => new Worker(script, { resourceLimits }),
      );
      try {
        await Promise.all(workers.map((worker) => work(worker, waiting, answered)));
      } finally {
        for (const worker of workers) void worker.terminate();
      }
    },
  };
}

/** One worker, which is given the next job whenever it has done one. */
function work<Job, Answer>(
  worker: Worker,
  waiting: IterableIterator<Job>,
  answered: (answer: Answer, job: Job) => void,
): Promise<void> {
  return new Promise((resolve, reject) => {
    let job: Job | undefined;
    const next = () => {
      const { done, value } = waiting.next();
      if (done === true) return resolve();
      job = value;
      worker.postMessage(job);
    };
    worker.on('message', (answer: Answer) => {
      try {
        if (job !== undefined) answered(answer, job);
        next();
      } catch (error) {
        reject(error);
      }
    });
    worker.once('error', reject);
    worker.once('exit', (code) => {
      if (code !== 0) reject(new Error(`a worker ended with ${code}`));
    });
    next();
  });
}

/** In a worker, makes what answers jobs, which it does until it is ended, and returns true; in the main thread does nothing. */
export function answerJobs<Job, Answer>(start: () => (job: Job) => Answer): boolean {
  const port = parentPort;
  if (isMainThread || port === null) return false;
  const answer = start();
  port.on('message', (job: Job) => port.postMessage(answer(job)));
  return true;
}
