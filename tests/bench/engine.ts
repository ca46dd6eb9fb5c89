/**
 * Measures the engine without a server, stage by stage, to see where the time of an edit goes. Bundled and run by `profile.ts`,
 * as the tables are loaded by the bundler only. `check-clock.ts` comes first, before the engine takes the checks' functions.
 */
import './check-clock.ts';
import type { Profiler } from 'node:inspector';
import { Session } from 'node:inspector/promises';
import { argv } from 'node:process';
import type { Abilities } from '../../server/src/lsp/capabilities.ts';
import { readAbilities } from '../../server/src/lsp/capabilities.ts';
import { diagnosticsOf } from '../../server/src/lsp/convert.ts';
import { makeHouse } from '../../server/src/workspace/houses.ts';
import { DEFAULTS } from '../../server/src/workspace/settings.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { recipeCase, SIZES, type Size } from './cases.ts';
import { timeChecks } from './check-clock.ts';
import type { EngineFigures, StageFigures } from './engine-figures.ts';
import { quantile } from './figures.ts';

const STAGES = ['parse', 'outline', 'bind', 'checks', 'convert', 'serialise'] as const;
type Samples = Record<(typeof STAGES)[number] | 'all', number[]>;

const ABILITIES: Abilities = readAbilities(
  {
    processId: null,
    rootUri: null,
    workspaceFolders: null,
    capabilities: { textDocument: { diagnostic: {}, publishDiagnostics: { relatedInformation: true } } },
  },
  () => undefined,
);

const [, , edits = '400', profiled = ''] = argv;
const house = makeHouse(DEFAULTS).house;
const figures: EngineFigures = { sizes: [] };
for (const size of SIZES) figures.sizes.push(await measure(size));
process.stdout.write(JSON.stringify(figures));

async function measure(size: Size): Promise<EngineFigures['sizes'][number]> {
  const { text, edits: typing, renames } = recipeCase(size);
  const opened = newSamples();
  const open = (samples: Samples) =>
    stages(() => Snapshot.open('bench.quern', 1, text, makeHouse(DEFAULTS).house), samples);
  repeat(5, () => open(opened));
  let snapshot = Snapshot.open('bench.quern', 1, text, house);
  const findings = snapshot.findings.open.length;
  const parts = snapshot.recipe.parts.length;
  const script = typing();
  const next = (samples: Samples, from = script) => {
    const { line, character, length, text: typed } = from.next().value;
    const range = { start: { line, character }, end: { line, character: character + length } };
    const before = snapshot;
    snapshot = stages(() => before.edited(before.version + 1, [{ range, text: typed }]), samples);
  };
  const warm = newSamples();
  repeat(Number(edits) / 2, () => next(warm));
  const edited = newSamples();
  repeat(Number(edits), () => next(edited));
  const renamed = newSamples();
  const renaming = renames();
  repeat(Number(edits) / 4, () => next(renamed, renaming));
  const shown = profiled === String(size);
  const profile = shown ? await sampled(() => repeat(Number(edits), () => next(newSamples()))) : undefined;
  return {
    size,
    characters: text.length,
    findings,
    parts,
    opened: summary(opened),
    edited: summary(edited),
    renamed: summary(renamed),
    openedByCheck: timeChecks(() => repeat(1, () => open(newSamples()))),
    editedByCheck: timeChecks(() => repeat(Number(edits), () => next(newSamples()))),
    ...(profile !== undefined && { profile }),
  };
}

async function sampled(run: () => void): Promise<Profiler.Profile> {
  const session = new Session();
  session.connect();
  await session.post('Profiler.enable');
  await session.post('Profiler.setSamplingInterval', { interval: 100 });
  await session.post('Profiler.start');
  run();
  const { profile } = await session.post('Profiler.stop');
  session.disconnect();
  return profile;
}

/** So many times, or as often as three seconds allow; how often it was. */
function repeat(times: number, run: () => void): number {
  const end = performance.now() + 3000;
  let ran = 0;
  for (; ran < times && (ran === 0 || performance.now() < end); ran++) run();
  return ran;
}

/** Times every stage from making the snapshot to the answer's text. */
function stages(make: () => Snapshot, samples: Samples): Snapshot {
  const start = performance.now();
  let last = start;
  const lap = (stage: keyof Samples) => {
    const now = performance.now();
    samples[stage].push(now - last);
    last = now;
  };
  const snapshot = make();
  lap('parse');
  void snapshot.outline;
  lap('outline');
  void snapshot.recipe;
  lap('bind');
  void snapshot.findings;
  lap('checks');
  const diagnostics = diagnosticsOf(snapshot, ABILITIES);
  lap('convert');
  void JSON.stringify(diagnostics);
  lap('serialise');
  samples.all.push(last - start);
  return snapshot;
}

function newSamples(): Samples {
  return { parse: [], outline: [], bind: [], checks: [], convert: [], serialise: [], all: [] };
}

function summary(samples: Samples): StageFigures {
  return [...STAGES, 'all' as const].map((stage) => ({
    stage,
    p50: quantile(samples[stage], 0.5) ?? 0,
    p95: quantile(samples[stage], 0.95) ?? 0,
  }));
}
