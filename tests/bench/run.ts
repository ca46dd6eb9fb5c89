/**
 * Builds and measures: the cost table, with VS Code's JSON language server measured beside it in the same run, the servers taking turns.
 * It prints what it saw and never fails for what it saw.
 */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { argv, stdout } from 'node:process';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { bundleSizes } from './bundles.ts';
import { SIZES, type Size } from './cases.ts';
import { measureClientLoad } from './client-load.ts';
import { type Cost, measureCosts } from './costs.ts';
import { printCosts } from './costs-table.ts';
import type { SentenceFigures } from './engine-figures.ts';
import { printEngine } from './engine-table.ts';
import { quantile, sum } from './figures.ts';
import { checkFolder, indexFolder, writeFolder } from './folder.ts';
import { measureGrowth, printGrowth } from './growth.ts';
import { type Effort, type Figures, measureServer } from './measure.ts';
import { runEngine } from './profile.ts';
import { measureSentences } from './sentences.ts';
import { JSON_SERVER, QUERN, type ServerUnderTest } from './servers.ts';
import { medianFigure, printTable, type Row, ratioOf, serverRows } from './table.ts';
import { CLOSED_VARIANTS, measureVariants, OPEN_VARIANTS, type VariantFigures } from './variants.ts';
import { measureShapes, measureWorst } from './worst.ts';
import { printFolders, printTexts } from './worst-table.ts';

const USAGE = `npm run bench -- [--quick] [--rounds N] [--json PATH] [--no-build]
npm run bench -- --costs [--rounds N] [--json PATH]
npm run bench -- --growth [--json PATH]
npm run bench -- --worst [--json PATH]
npm run bench -- --engine [--lines 60|1000|10000] [--json PATH]

  --quick      one round with fewer edits, in some 20 seconds
  --rounds N   rounds of both servers; three unless said
  --json PATH  writes the figures there too
  --no-build   measures dist/ as it is
  --costs      what is felt, in ratios to anchors of the same run, alone
  --growth     how costs grow with the house, the variants of a base and the lines of a file, alone
  --worst      the worst cases alone: texts and folders up to the limits, and how their cost grows
  --engine     the engine alone, stage by stage, with its hottest functions at the size given by --lines
`;

interface Plan {
  readonly rounds: number;
  readonly effort: Effort;
  readonly recipes: number;
  /** With the worst cases. */
  readonly isFull: boolean;
}

const FULL: Plan = {
  rounds: 3,
  effort: { starts: 3, tries: 40, edits: 200, limitMs: 20_000, budgetMs: 10_000 },
  recipes: 10_000,
  isFull: true,
};
const QUICK: Plan = {
  rounds: 1,
  effort: { starts: 1, tries: 10, edits: 50, limitMs: 6000, budgetMs: 500 },
  recipes: 200,
  isFull: false,
};

/** So long a server is waited for that should answer in a second. */
const WORST_LIMIT_MS = 60_000;

const [loadAtStart = 0] = loadavg();

for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => process.exit(1));

const options = readOptions();
if (options !== undefined) {
  if (options.build && !options.engine) build();
  const json = options.engine
    ? await benchEngine(options.lines)
    : options.costs
      ? await benchCosts(options.plan)
      : options.growth
        ? await benchGrowth()
        : options.worst
          ? await benchWorst()
          : await benchServers(options.plan);
  if (options.json !== undefined) writeFileSync(options.json, `${JSON.stringify(json, null, 2)}\n`);
}

async function benchServers({ rounds, effort, recipes, isFull }: Plan): Promise<object> {
  const began = performance.now();
  const measured: {
    round: number;
    server: ServerUnderTest['name'];
    lines: Size;
    findings: number | undefined;
    figures: Figures;
  }[] = [];
  const failures = new Set<string>();
  const folders: Awaited<ReturnType<typeof checkFolder>>[] = [];
  const indexes: Awaited<ReturnType<typeof indexFolder>>[] = [];
  const variants: VariantFigures[] = [];
  const sentences: SentenceFigures[] = [];
  say(`Writing ${recipes.toLocaleString('en')} recipes of 60 lines`);
  const folder = writeFolder(recipes);
  try {
    for (let round = 0; round < rounds; round++) {
      for (const lines of SIZES) {
        const turns = round % 2 === 0 ? [QUERN, JSON_SERVER] : [JSON_SERVER, QUERN];
        for (const server of turns) {
          say(
            `Round ${round + 1} of ${rounds}: ${server.name === 'quern' ? 'Quern' : 'JSON server'}, ${lines.toLocaleString('en')} lines`,
          );
          const { figures, findings, failures: why } = await measureServer(server, lines, effort);
          measured.push({ round, server: server.name, lines, findings, figures });
          for (const failure of why) failures.add(failure);
        }
      }
      say(`Round ${round + 1} of ${rounds}: quern check over the folder`);
      folders.push(await checkFolder(folder, 120_000));
      indexes.push(await indexFolder(folder, 60_000));
      say(`Round ${round + 1} of ${rounds}: a base and its variants`);
      variants.push(await measureVariants(effort.tries, effort.limitMs));
      say(`Round ${round + 1} of ${rounds}: changed sentences`);
      sentences.push(await measureSentences(10 * effort.edits, 60_000));
    }
  } finally {
    folder.remove();
  }
  const bundles = bundleSizes();
  const client = measureClientLoad(effort.tries);
  const rows: Row[] = [
    ...serverRows(measured),
    {
      measure: 'one changed sentence to findings in the engine, p50',
      unit: 'ms',
      lines: 60,
      quern: medianFigure(sentences.map((s) => s.p50)),
      toReach: 0.15,
    },
    {
      measure: 'one changed sentence to findings in the engine, p95',
      unit: 'ms',
      lines: 60,
      quern: medianFigure(sentences.map((s) => s.p95)),
    },
    {
      measure: `check ${recipes.toLocaleString('en')} recipes of 60 lines, cold`,
      unit: 's',
      quern: medianFigure(folders.map((f) => f.seconds)),
      ...(recipes === 10_000 && { toReach: 5 }),
    },
    { measure: 'processor time of that', unit: 's', quern: medianFigure(folders.map((f) => f.processorS)) },
    {
      measure: 'memory of that, at most, all processes',
      unit: 'MB',
      quern: medianFigure(folders.map((f) => f.peakMb)),
    },
    {
      measure: `first index of ${recipes.toLocaleString('en')} recipes, in the server`,
      unit: 's',
      quern: medianFigure(indexes.map((f) => f.seconds)),
    },
    {
      measure: 'memory of the server with these indexed',
      unit: 'MB',
      quern: medianFigure(indexes.map((f) => f.memoryMb)),
      ...(recipes === 10_000 && { toReach: 250 }),
    },
    {
      measure: `base of ${OPEN_VARIANTS} open variants changed, to findings of all`,
      unit: 'ms',
      quern: medianFigure(variants.map((v) => v.open)),
    },
    {
      measure: `the same, with ${CLOSED_VARIANTS} closed ones`,
      unit: 'ms',
      quern: medianFigure(variants.map((v) => v.closed)),
    },
    { measure: 'processor time of the client loaded by an editor, first', unit: 'ms', quern: client.firstMs },
    { measure: 'the same, again', unit: 'ms', quern: client.againMs },
    {
      measure: `bundles, packed (${bundles.map((b) => `${b.name} ${Math.round(b.packedKb)}`).join(', ')})`,
      unit: 'KB',
      quern: bundles.length === 0 ? 'no answer' : sum(bundles.map((b) => b.packedKb)),
      toReach: 1000,
    },
  ];
  say('');
  stdout.write(`${printTable(rows)}\n\n`);
  const model = cpus()[0]?.model ?? 'unknown processor';
  const machine = {
    node: process.version,
    processors: cpus().length,
    model,
    loadBefore: loadAtStart,
    loadAfter: loadavg()[0] ?? 0,
  };
  stdout.write(
    `Medians of ${rounds} ${rounds === 1 ? 'round' : 'rounds'} of ${effort.edits} edits, Node ${machine.node} for both, ${machine.processors} x ${model}, load ${loadAtStart.toFixed(1)} before; ${Math.round((performance.now() - began) / 1000)} s.
Findings are pulled; the row "pushed" counts a server's own delay (the JSON server waits 500 ms). "over" and "reached" judge this machine's figures
against the contract's, which were taken on another day: the ratio to the JSON server is the steadier figure.\n`,
  );
  const found = SIZES.map((lines) => {
    const of = (name: ServerUnderTest['name']) =>
      quantile(
        measured.filter((m) => m.server === name && m.lines === lines).flatMap((m) => m.findings ?? []),
        0.5,
      ) ?? 'none';
    return `${lines.toLocaleString('en')} lines: ${of('quern')} and ${of('json')}`;
  });
  stdout.write(`Findings sent by Quern and the JSON server. ${found.join('; ')}.\n`);
  for (const failure of failures) stdout.write(`No answer: ${failure}\n`);
  const worst = isFull ? await benchWorst() : undefined;
  return {
    version: 1,
    machine,
    rounds,
    edits: effort.edits,
    rows: rows.map((row) => ({ ...row, ratio: ratioOf(row) ?? null })),
    measured,
    folders,
    indexes,
    variants,
    sentences,
    bundles,
    ...(worst && { worst }),
    failures: [...failures],
  };
}

async function benchCosts({ rounds, isFull }: Plan): Promise<readonly Cost[]> {
  const costs = await measureCosts({ rounds, keys: isFull ? 100 : 40, many: isFull ? 10_000 : 3000 }, say);
  stdout.write(`${printCosts(costs)}\n\n`);
  return costs;
}

async function benchGrowth(): Promise<object> {
  const growth = await measureGrowth(say);
  stdout.write(`${printGrowth(growth)}\n\n`);
  return growth;
}

async function benchWorst(): Promise<object> {
  const texts = await measureWorst(WORST_LIMIT_MS, say);
  stdout.write(`${printTexts(texts)}\n\n`);
  const folders = await measureShapes(WORST_LIMIT_MS, say);
  stdout.write(`${printFolders(folders)}\n`);
  return { texts, folders };
}

async function benchEngine(lines: Size): Promise<object> {
  say('Measuring the engine in a process of its own');
  const run = await runEngine(200, lines, 120_000).catch((error: unknown) => String(error));
  if (typeof run === 'string') {
    say(run);
    return { version: 1, failures: [run] };
  }
  stdout.write(`${printEngine(run)}\n`);
  return {
    version: 1,
    hot: run.hot.slice(0, 50),
    sizes: run.figures.sizes.map(({ profile: _, ...figures }) => figures),
  };
}

/** A build that fails is said, and what was built before is measured. */
function build(): void {
  say('Building');
  const script = fileURLToPath(new URL('../../server/tools/build.ts', import.meta.url));
  const { status } = spawnSync(process.execPath, [...process.execArgv, script], {
    stdio: ['ignore', 'ignore', 'inherit'],
    timeout: 60_000,
  });
  if (status !== 0) say('The build failed: what dist/ holds is measured');
}

interface Options {
  readonly plan: Plan;
  readonly engine: boolean;
  readonly worst: boolean;
  readonly costs: boolean;
  readonly growth: boolean;
  readonly lines: Size;
  readonly build: boolean;
  readonly json: string | undefined;
}

/** Undefined when there is nothing to do but to say how it is called. */
function readOptions(): Options | undefined {
  try {
    const { values } = parseArgs({
      args: argv.slice(2),
      options: {
        quick: { type: 'boolean', default: false },
        rounds: { type: 'string' },
        json: { type: 'string' },
        'no-build': { type: 'boolean', default: false },
        engine: { type: 'boolean', default: false },
        worst: { type: 'boolean', default: false },
        costs: { type: 'boolean', default: false },
        growth: { type: 'boolean', default: false },
        lines: { type: 'string', default: '10000' },
        help: { type: 'boolean', default: false },
      },
    });
    const lines = SIZES.find((size) => String(size) === values.lines);
    const rounds = values.rounds === undefined ? undefined : Number(values.rounds);
    if (values.help || lines === undefined || (rounds !== undefined && !(Number.isInteger(rounds) && rounds > 0))) {
      stdout.write(USAGE);
      return undefined;
    }
    const plan = values.quick ? QUICK : FULL;
    return {
      plan: rounds === undefined ? plan : { ...plan, rounds },
      engine: values.engine,
      worst: values.worst,
      costs: values.costs,
      growth: values.growth,
      lines,
      build: !values['no-build'],
      json: values.json,
    };
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n${USAGE}`);
    return undefined;
  }
}

function say(words: string): void {
  process.stderr.write(`${words}\n`);
}
