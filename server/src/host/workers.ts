/**
 * Knows how the work of one command is shared between threads, each running the same bundle.
 */
import { availableParallelism } from 'node:os';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import type { Workers } from '../cli/io.ts';

/** More threads than this read the disk against each other. */
const MOST = 8;

/** Workers that run a script; it must call `answerJob` when it finds itself in one. */
export function nodeWorkers(script: string): Workers {
  return {
    count: Math.min(availableParallelism(), MOST),
    run: <Job, Answer>(jobs: readonly Job[]) => Promise.all(jobs.map((job) => inWorker<Answer>(script, job))),
  };
}

function inWorker<Answer>(script: string, job: unknown): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(script, { workerData: { job } });
    worker.once('message', (answer: Answer) => resolve(answer));
    worker.once('error', reject);
    worker.once('exit', (code) => {
      if (code !== 0) reject(new Error(`a worker ended with ${code}`));
    });
  });
}

/** In a worker, answers its one job and returns true; in the main thread does nothing. */
export function answerJob<Job, Answer>(answer: (job: Job) => Answer): boolean {
  if (isMainThread || parentPort === null) return false;
  parentPort.postMessage(answer((workerData as { readonly job: Job }).job));
  return true;
}
