/**
 * Knows how many files are checked: what an earlier run found is taken again where nothing that it hangs on is another; the others one after
 * the other, or a batch at a time by workers where there are many. Each is handed on in its turn, and nothing here holds on to it.
 * Refuses to know what a worker is, and where results are kept.
 */
import type { Houses } from '../workspace/houses.ts';
import { type CheckedFile, type CheckWish, checkFile } from './checked-file.ts';
import { housesFor, type Input, inputAt } from './inputs.ts';
import { type Io, type KeptTexts, type Machine, UsageError } from './io.ts';
import { writingDown } from './results/asked-bases.ts';
import type { KeptResult } from './results/kept-results.ts';
import { ResultKeys, ResultStore } from './results/store.ts';
import { shownOn } from './shown-on.ts';

/** So many files, shared by the cores there are, are checked sooner than workers have started and read the house each for itself (measured with 2, 4 and 8). */
const LEAST_FOR_WORKERS = 6000;

/** So many that a message costs little, so few that a worker keeps little and none waits long for the last. */
const FILES_A_JOB = 100;

/** What a worker is sent: which files, and what is wanted of them. */
export interface CheckJob {
  readonly inputs: readonly Pick<Input, 'path' | 'shown' | 'within'>[];
  readonly wish: CheckWish;
  /** Whether what is found is kept: then each comes with its key, of the very text that was checked. */
  readonly isKept: boolean;
}

interface Checked extends KeptResult {
  readonly key?: string;
}

/** A file behind one that workers may check. */
interface Waiting {
  readonly input: Input;
  /** Of what an earlier run found. */
  readonly key: string | undefined;
}

/** `kept`: where results of other runs lie. `each` is given the files in their order. */
export async function checkMany(
  inputs: readonly Input[],
  wish: CheckWish,
  io: Io,
  kept: KeptTexts | undefined,
  each: (file: CheckedFile) => void,
): Promise<void> {
  // What mends a file is asked for once.
  const store = kept === undefined || wish.mend ? undefined : new ResultStore(kept, io.cwd);
  const houses = housesFor(io);
  const keys = store && kept && new ResultKeys(houses, kept.digest);
  let count = 0;
  const hand = ({ key, asked, file }: Checked): void => {
    if (key !== undefined) store?.keep(key, { asked, file });
    count++;
    io.progress(`${count} of ${inputs.length} files checked`);
    each(file);
  };
  const waiting: Waiting[] = [];
  const mayBeMany = isForWorkers(inputs.length, io);
  for (const input of inputs) {
    const read = readAfresh(input);
    const key = keys?.of(read, wish);
    const found = key === undefined ? undefined : store?.find(key, houses);
    if (waiting.length > 0 || (mayBeMany && found === undefined))
      waiting.push({ input, key: found === undefined ? undefined : key });
    else hand(found ?? checkedOf(read, houses, wish, keys));
  }
  const again = (turn: Waiting | undefined): KeptResult | undefined =>
    turn?.key === undefined ? undefined : store?.again(turn.key);
  const others = waiting.filter(({ key }) => key === undefined).map(({ input }) => input);
  if (isForWorkers(others.length, io)) {
    let turn = 0;
    const handKept = (): void => {
      for (; turn < waiting.length; turn++) {
        const found = again(waiting[turn]);
        if (found === undefined) return;
        hand(found);
      }
    };
    await byWorkers(others, { wish, isKept: keys !== undefined }, io, (result) => {
      handKept();
      hand(result);
      turn++;
    });
    handKept();
  } else for (const turn of waiting) hand(again(turn) ?? checkedOf(readAfresh(turn.input), houses, wish, keys));
  store?.write(wish, io);
}

const isForWorkers = (files: number, { workers }: Io): boolean =>
  workers !== undefined && workers.count >= 2 && files >= LEAST_FOR_WORKERS / workers.count;

/** An input that holds on to what it reads no longer than it is worked on. */
const readAfresh = (input: Input): Input => input.again?.() ?? input;

/** The file with what it asked of the files around it, which is written down where results are kept. */
function checkedOf(input: Input, houses: Houses, wish: CheckWish, keys: ResultKeys | undefined): Checked {
  if (keys === undefined) return { asked: [], file: checkFile(input, houses, wish) };
  const { bases, asked } = writingDown(houses.bases, keys.digest);
  const file = checkFile(input, houses, wish, bases);
  return { key: keys.of(input, wish), asked: asked(), file };
}

/** Each file in its order, as soon as it and all before it were checked. */
async function byWorkers(
  inputs: readonly Input[],
  job: Omit<CheckJob, 'inputs'>,
  { workers }: Io,
  each: (result: Checked) => void,
): Promise<void> {
  const jobs: CheckJob[] = [];
  for (let i = 0; i < inputs.length; i += FILES_A_JOB)
    jobs.push({
      inputs: inputs
        .slice(i, i + FILES_A_JOB)
        .map(({ path, shown, within }) => ({ path, shown, ...(within !== undefined && { within }) })),
      ...job,
    });
  const early = new Map<CheckJob | undefined, readonly Checked[]>();
  let next = 0;
  await workers?.run<CheckJob, JobAnswer>(jobs, (answer, done) => {
    if ('refused' in answer) throw new UsageError(answer.refused);
    early.set(done, answer.results);
    for (let results = early.get(jobs[next]); results !== undefined; results = early.get(jobs[++next])) {
      early.delete(jobs[next]);
      for (const result of results) each(result);
    }
  });
}

/** What a worker answers: the files in the order of the job, or why one of them could not be read. */
type JobAnswer = { readonly results: readonly Checked[] } | { readonly refused: string };

/** A worker's share of the work. What it learns of a house serves all its jobs. */
export function jobsOver(machine: Machine): (job: CheckJob) => JobAnswer {
  // What could not be used of a house goes back with each file.
  const io: Io = { ...shownOn(machine), trouble: () => undefined };
  const houses = housesFor(io);
  const digest = machine.keptTexts?.(undefined)?.digest;
  const keys = digest && new ResultKeys(houses, digest);
  return ({ inputs, wish, isKept }) => {
    try {
      return {
        results: inputs.map(({ path, shown, within }) =>
          checkedOf(inputAt(path, shown, io, within), houses, wish, isKept ? keys : undefined),
        ),
      };
    } catch (error) {
      if (error instanceof UsageError) return { refused: error.message };
      throw error;
    }
  };
}
