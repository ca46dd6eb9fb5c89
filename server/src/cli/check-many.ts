/**
 * Knows how many files are checked: one after the other, or in equal shares by workers where there are many.
 * Refuses to know what a worker is.
 */
import { type CheckedFile, type CheckWish, checkFile } from './checked-file.ts';
import { housesFor, type Input } from './inputs.ts';
import type { Io } from './io.ts';

/** Fewer files are checked sooner than a worker has started. */
const LEAST_FOR_WORKERS = 300;

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
  // Every nth file to each, so that a folder of large ones is shared; this thread waits.
  const jobs = Array.from(
    { length: workers.count },
    (_, n): CheckJob => ({
      inputs: inputs.filter((_input, i) => i % workers.count === n).map(({ path, shown }) => ({ path, shown })),
      wish,
    }),
  );
  io.progress(`checking ${inputs.length} files on ${workers.count} cores`);
  const shares = await workers.run<CheckJob, readonly CheckedFile[]>(jobs);
  return inputs
    .map((_, i) => shares[i % workers.count]?.[Math.floor(i / workers.count)])
    .filter((f) => f !== undefined);
}

/** A worker's share of the work. */
export function doJob(job: CheckJob, io: Io): readonly CheckedFile[] {
  const houses = housesFor(io);
  return job.inputs.map(({ path, shown }) =>
    checkFile({ path, shown, text: io.files.read(path) ?? '' }, houses, job.wish),
  );
}
