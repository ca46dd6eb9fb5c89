/**
 * Knows how many files are checked: what an earlier run found is taken again where nothing that it hangs on is another; the others one after
 * the other, or a batch at a time by workers where there are many.
 * Refuses to know what a worker is, and where results are kept.
 */
import { type CheckedFile, type CheckWish, checkFile } from './checked-file.ts';
import { housesFor, type Input, inputAt } from './inputs.ts';
import { type Io, type KeptTexts, type Machine, UsageError } from './io.ts';
import { isToldTheSame, writingDown } from './results/asked-bases.ts';
import { type KeptResult, KeptResults } from './results/kept-results.ts';
import { shownOn } from './shown-on.ts';

/** So many files, shared by the cores there are, are checked sooner than workers have started and read the house each for itself (measured with 2, 4 and 8). */
const LEAST_FOR_WORKERS = 6000;

/** So many that a message costs little, so few that a worker keeps little and none waits long for the last. */
const FILES_A_JOB = 100;

/** What a worker is sent: which files, and what is wanted of them. */
export interface CheckJob {
  readonly inputs: readonly Pick<Input, 'path' | 'shown' | 'within'>[];
  readonly wish: CheckWish;
}

/** `kept`: where results of other runs lie. */
export async function checkMany(
  inputs: readonly Input[],
  wish: CheckWish,
  io: Io,
  kept?: KeptTexts,
): Promise<readonly CheckedFile[]> {
  // What mends a file is asked for once.
  if (kept === undefined || wish.mend) return (await checkAnew(inputs, wish, io)).map(({ file }) => file);
  const houses = housesFor(io);
  const name = `check-${kept.digest(io.cwd).slice(0, 16)}`;
  const results = new KeptResults(kept.read(name), kept.build);
  const houseSums = new Map<string, string>();
  const sumOf = (house: string): string => {
    let sum = houseSums.get(house);
    if (sum === undefined) {
      sum = kept.digest(house);
      houseSums.set(house, sum);
    }
    return sum;
  };
  const looked = inputs.map((input) => {
    if (input.within !== undefined) houses.opened(input.within);
    const { path, shown, within = '', encoding } = input;
    const text = encoding?.isRead === false ? '' : input.text;
    const key = kept.digest(
      JSON.stringify([path, shown, within, text, encoding, sumOf(houses.keyOf(path, text)), wish.fixes]),
    );
    const found = results.find(key);
    const isSame = found !== undefined && isToldTheSame(found.asked, houses.bases, kept.digest);
    return { input, key, file: isSame ? found.file : undefined };
  });
  const others = looked.filter(({ file }) => file === undefined);
  const made = await checkAnew(
    others.map(({ input }) => input),
    wish,
    io,
    kept.digest,
  );
  for (const [i, { key }] of others.entries()) {
    const result = made[i];
    if (result !== undefined && result.file.bugs.length === 0) results.keep(key, result);
  }
  const text = results.text();
  const why = text === undefined ? undefined : kept.write(name, text);
  if (why !== undefined && wish.keepsIn !== undefined)
    io.err(`quern: nothing is kept in \`${wish.keepsIn}\`: ${why}\n`);
  let next = 0;
  return looked.flatMap(({ file }) => file ?? made[next++]?.file ?? []);
}

/** Each file with what it asked of the files around it, which is written down where sums are to be made. */
async function checkAnew(
  inputs: readonly Input[],
  wish: CheckWish,
  io: Io,
  digest?: KeptTexts['digest'],
): Promise<readonly KeptResult[]> {
  const { workers } = io;
  if (workers === undefined || workers.count < 2 || inputs.length < LEAST_FOR_WORKERS / workers.count) {
    const houses = housesFor(io);
    return inputs.map((input, i) => {
      io.progress(`${i} of ${inputs.length} files checked`);
      return resultOf(input, houses, wish, digest);
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
  const done = new Map<CheckJob, readonly KeptResult[]>();
  let count = 0;
  await workers.run<CheckJob, JobAnswer>(jobs, (answer, job) => {
    if ('refused' in answer) throw new UsageError(answer.refused);
    done.set(job, answer.results);
    count += answer.results.length;
    io.progress(`${count} of ${inputs.length} files checked`);
  });
  return jobs.flatMap((job) => done.get(job) ?? []);
}

function resultOf(
  input: Input,
  houses: ReturnType<typeof housesFor>,
  wish: CheckWish,
  digest: KeptTexts['digest'] | undefined,
): KeptResult {
  if (digest === undefined) return { asked: [], file: checkFile(input, houses, wish) };
  const { bases, asked } = writingDown(houses.bases, digest);
  const file = checkFile(input, houses, wish, bases);
  return { asked: asked(), file };
}

/** What a worker answers: the files in the order of the job, or why one of them could not be read. */
type JobAnswer = { readonly results: readonly KeptResult[] } | { readonly refused: string };

/** A worker's share of the work. What it learns of a house serves all its jobs. */
export function jobsOver(machine: Machine): (job: CheckJob) => JobAnswer {
  // What could not be used of a house goes back with each file.
  const io: Io = { ...shownOn(machine), trouble: () => undefined };
  const houses = housesFor(io);
  const digest = machine.keptTexts?.(undefined)?.digest;
  return ({ inputs, wish }) => {
    try {
      return {
        results: inputs.map(({ path, shown, within }) =>
          resultOf(inputAt(path, shown, io, within), houses, wish, digest),
        ),
      };
    } catch (error) {
      if (error instanceof UsageError) return { refused: error.message };
      throw error;
    }
  };
}
