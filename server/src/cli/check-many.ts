/**
 * Knows how many files are checked: one after the other, or a batch at a time by workers where there are many.
 * Refuses to know what a worker is.
 */
import { type CheckedFile, type CheckWish, checkFile } from './checked-file.ts';
import { housesFor, type Input, inputAt } from './inputs.ts';
import { type Io, type Machine, UsageError } from './io.ts';
import { shownOn } from './shown-on.ts';

/** Fewer files are checked sooner than a worker has started. */
const LEAST_FOR_WORKERS = 300;

/** So many that a message costs little, so few that a worker keeps little and none waits long for the last. */
const FILES_A_JOB = 100;

/** What a worker is sent: which files, and what is wanted of them. */
export interface CheckJob {
  readonly inputs: readonly Pick<Input, 'path' | 'shown' | 'within'>[];
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
    jobs.push({
      inputs: inputs
        .slice(i, i + FILES_A_JOB)
        .map(({ path, shown, within }) => ({ path, shown, ...(within !== undefined && { within }) })),
      wish,
    });
  const done = new Map<CheckJob, readonly CheckedFile[]>();
  let count = 0;
  await workers.run<CheckJob, JobAnswer>(jobs, (answer, job) => {
    if ('refused' in answer) throw new UsageError(answer.refused);
    done.set(job, answer.files);
    count += answer.files.length;
    io.progress(`${count} of ${inputs.length} files checked`);
  });
  return jobs.flatMap((job) => done.get(job) ?? []);
}

/** What a worker answers: the files in the order of the job, or why one of them could not be read. */
type JobAnswer = { readonly files: readonly CheckedFile[] } | { readonly refused: string };

/** A worker's share of the work. What it learns of a house serves all its jobs. */
export function jobsOver(machine: Machine): (job: CheckJob) => JobAnswer {
  // What could not be used of a house goes back with each file.
  const io: Io = { ...shownOn(machine), trouble: () => undefined };
  const houses = housesFor(io);
  return ({ inputs, wish }) => {
    try {
      return {
        files: inputs.map(({ path, shown, within }) => checkFile(inputAt(path, shown, io, within), houses, wish)),
      };
    } catch (error) {
      if (error instanceof UsageError) return { refused: error.message };
      throw error;
    }
  };
}
