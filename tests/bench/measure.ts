/** Measures one server with one file: every figure of the cost table, or that there was no answer. */
import type { Case, Size } from './cases.ts';
import { Client, NoAnswer } from './client.ts';
import { median, quantile } from './figures.ts';
import type { ServerUnderTest } from './servers.ts';

/** What is counted, in milliseconds or MB. */
export const MEASURES = [
  'edit-p50',
  'edit-p95',
  'symbols',
  'hover',
  'completion',
  'format',
  'start',
  'memory-open',
  'memory-edited',
  'pushed',
] as const;
export type Measure = (typeof MEASURES)[number];

export type Figure = number | 'no answer';
export type Figures = Partial<Record<Measure, Figure>>;

export interface Measured {
  readonly figures: Figures;
  readonly findings: number | undefined;
  /** Whether findings were asked for. */
  readonly pulled: boolean | undefined;
  /** Why there was no answer, in the server's words. */
  readonly failures: readonly string[];
}

export interface Effort {
  readonly starts: number;
  /** Of each figure, some more for the edits. */
  readonly tries: number;
  readonly edits: number;
  /** For one question. */
  readonly limitMs: number;
  /** For all tries of one figure: a slow server is tried less often. */
  readonly budgetMs: number;
}

export async function measureServer(server: ServerUnderTest, size: Size, effort: Effort): Promise<Measured> {
  const file = server.caseOf(size);
  const figures: Figures = {};
  const failures: string[] = [];
  let findings: number | undefined;
  let pulled: boolean | undefined;
  const guarded = async (measure: Measure, run: () => Promise<number | undefined>) => {
    try {
      figures[measure] = (await run()) ?? 'no answer';
    } catch (error) {
      if (!(error instanceof NoAnswer)) throw error;
      figures[measure] = 'no answer';
      failures.push(`${server.name}, ${size} lines, ${measure}: ${error.message}`);
    }
  };

  let client: Client | undefined;
  const starts: number[] = [];
  await guarded('start', async () => {
    for (let i = 0; i < effort.starts; i++) {
      await client?.stop();
      const start = performance.now();
      client = await Client.start(server, effort.limitMs);
      findings = await client.open(file.text);
      starts.push(performance.now() - start);
      pulled = client.pulls;
    }
    return median(starts);
  });
  // A server that never gave a finding is asked nothing more, as each question would have to run out of time.
  if (client === undefined || findings === undefined) {
    await client?.stop();
    return { figures: allUnanswered(figures), findings, pulled, failures };
  }
  const asked: Client = client;
  try {
    await guarded('memory-open', () => asked.memoryMb());
    await measureAnswers(asked, file, effort, guarded);
  } finally {
    await asked.stop();
  }
  if (asked.pulls && size === 1000) await guarded('pushed', () => pushed(server, file, effort));
  return { figures, findings, pulled, failures };
}

type Guarded = (measure: Measure, run: () => Promise<number | undefined>) => Promise<void>;

async function measureAnswers(client: Client, file: Case, effort: Effort, guarded: Guarded): Promise<void> {
  const script = file.edits();
  const samples: number[] = [];
  await guarded('edit-p50', async () => {
    const end = performance.now() + effort.budgetMs;
    for (let i = 0; i < effort.edits && (i < 12 || performance.now() < end); i++) {
      const edit = script.next().value;
      const start = performance.now();
      client.edit(edit);
      await client.findings();
      // The first fifth warms the code up.
      if (i >= effort.edits / 5 || performance.now() > end) samples.push(performance.now() - start);
    }
    return quantile(samples, 0.5);
  });
  await guarded('edit-p95', async () => quantile(samples, 0.95));
  await guarded('memory-edited', () => client.memoryMb());
  await guarded('symbols', () =>
    p50(
      effort,
      () => {
        client.edit(script.next().value);
        return client.symbols();
      },
      async () => {
        await client.findings();
      },
    ),
  );
  // At rest: the findings of the newest text are known.
  await guarded('hover', async () => {
    await client.findings();
    return p50(effort, (i) => client.hover(at(file.hovers, i)));
  });
  await guarded('completion', () => p50(effort, (i) => client.completion(at(file.completions, i))));
  await guarded('format', () =>
    p50(
      effort,
      () => client.format(),
      async () => {
        client.edit(script.next().value);
        await client.findings();
      },
    ),
  );
}

/** The same edits where the client cannot ask, so that a server's own delay counts. */
async function pushed(server: ServerUnderTest, file: Case, effort: Effort): Promise<number | undefined> {
  const client = await Client.start(server, effort.limitMs, false);
  try {
    await client.open(file.text);
    const script = file.edits();
    return await p50({ ...effort, tries: Math.min(effort.tries, 10) }, async () => {
      client.edit(script.next().value);
      await client.findings();
      return true;
    });
  } finally {
    await client.stop();
  }
}

/** The median time of an answer that holds something, after a fifth more tries to warm up. `before` is not timed. */
async function p50(
  { tries, budgetMs }: Effort,
  run: (i: number) => Promise<boolean>,
  before?: () => Promise<void>,
): Promise<number> {
  const samples: number[] = [];
  const end = performance.now() + budgetMs;
  const warmUp = Math.ceil(tries / 5);
  for (let i = 0; i < tries + warmUp && (i < 2 || performance.now() < end); i++) {
    await before?.();
    const start = performance.now();
    const answered = await run(i);
    if (answered && (i >= warmUp || performance.now() > end)) samples.push(performance.now() - start);
  }
  const p50 = quantile(samples, 0.5);
  if (p50 === undefined) throw new NoAnswer('empty answers alone');
  return p50;
}

/** Places spread over the file. */
function at<T>(places: readonly T[], i: number): T {
  const place = places[(i * 7919) % places.length];
  if (place === undefined) throw new NoAnswer('no place to ask at');
  return place;
}

function allUnanswered(figures: Figures): Figures {
  return { ...Object.fromEntries(MEASURES.map((m) => [m, 'no answer' as const])), ...figures };
}
