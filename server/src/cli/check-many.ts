/**
 * Knows how many files are checked: one after the other, or a batch at a time by workers where there are many.
 * Refuses to know what a worker is.
 */
import { type CheckedFile, type CheckWish, checkFile } from './checked-file.ts';
import { housesFor, type Input } from './inputs.ts';
import type { Io } from './io.ts';

/** Fewer files are checked sooner than a worker has started. */
const LEAST_FOR_WORKERS = 300;

/** So many that a message costs little, so few that a worker keeps little and none waits long for the last. */
const FILES_A_JOB = 100;

/** What a worker is sent: which files, and what is wanted of them. */
export interface CheckJob {
  readonly inputs: readonly Pick<Input, 'path' | 'shown'>[];
  readonly wish: CheckWish;
}

export async function checkMany(inputs: readonly Input[], wish: CheckWish, io: Io): Promise<readonly CheckedFile[]> {
  const { workers } = io;
  if (workers === undefined || workers.count < 2 || inputs.length < LEAST_FOR_WORKERS) {
    const houses = housesFor(io);
    return inputs.map((input, i) => {
      io.progress(`${i} of ${inputs.length} files checked`);
      return checkFile(input, houses, wish);
    });
  }
  const jobs: CheckJob[] = [];
  for (let i = 0; i < inputs.length; i += FILES_A_JOB)
    jobs.push({ inputs: inputs.slice(i, i + FILES_A_JOB).map(({ path, shown }) => ({ path, shown })), wish });
  const done = new Map<CheckJob, readonly CheckedFile[]>();
  let count = 0;
  await workers.run<CheckJob, readonly CheckedFile[]>(jobs, (files, job) => {
    done.set(job, files);
    count += files.length;
    io.progress(`${count} of ${inputs.length} files checked`);
  });
  return jobs.flatMap((job) => done.get(job) ?? []);
}

/** A worker's share of the work. */
export function doJob(job: CheckJob, io: Io): readonly CheckedFile[] {
  const houses = housesFor(io);
  return job.inputs.map(({ path, shown }) =>
    checkFile({ path, shown, text: io.files.read(path) ?? '' }, houses, job.wish),
  );
}
