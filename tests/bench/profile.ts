/** Runs the engine bench in a process of its own, and names the functions that took most of the time by their place in the source. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import type { Profiler } from 'node:inspector';
import { SourceMap, type SourceMapPayload } from 'node:module';
import { tmpdir } from 'node:os';
import { join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as esbuild from 'esbuild';
import type { Size } from './cases.ts';
import type { EngineFigures } from './engine-figures.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Hot {
  readonly name: string;
  readonly place: string;
  /** Share of the time of the profiled edits, spent in the function itself. */
  readonly share: number;
}

export interface EngineRun {
  readonly figures: EngineFigures;
  /** Lines of the file whose edits were sampled. */
  readonly profiled: Size;
  readonly hot: readonly Hot[];
}

/** Throws when the engine does not build or fails. */
export async function runEngine(edits: number, profiled: Size, limitMs: number): Promise<EngineRun> {
  const folder = mkdtempSync(join(tmpdir(), 'quern-engine-'));
  try {
    const outfile = join(folder, 'engine.mjs');
    await esbuild.build({
      absWorkingDir: root,
      entryPoints: ['tests/bench/engine.ts'],
      bundle: true,
      platform: 'node',
      format: 'esm',
      target: 'node24',
      loader: { '.tsv': 'text' },
      define: { QUERN_BUNDLED: 'true', QUERN_VERSION: '"bench"' },
      banner: { js: "import{createRequire}from'node:module';const require=createRequire(import.meta.url);" },
      sourcemap: 'external',
      outfile,
      logLevel: 'warning',
    });
    const run = spawnSync(process.execPath, [outfile, String(edits), String(profiled)], {
      encoding: 'utf8',
      timeout: limitMs,
      maxBuffer: 2 ** 28,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    if (run.status !== 0) throw new Error(`the engine bench ended with ${run.status ?? run.signal ?? 'nothing'}`);
    const figures = JSON.parse(run.stdout) as EngineFigures;
    const profile = figures.sizes.find((s) => s.size === profiled)?.profile;
    const map = new SourceMap(JSON.parse(readFileSync(`${outfile}.map`, 'utf8')) as SourceMapPayload);
    return { figures, profiled, hot: profile === undefined ? [] : hottest(profile, map, folder) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function hottest({ nodes, samples = [], timeDeltas = [] }: Profiler.Profile, map: SourceMap, folder: string): Hot[] {
  const microseconds = new Map<number, number>();
  let total = 0;
  samples.forEach((id, i) => {
    const spent = timeDeltas[i] ?? 0;
    microseconds.set(id, (microseconds.get(id) ?? 0) + spent);
    total += spent;
  });
  const byPlace = new Map<string, { name: string; place: string; spent: number }>();
  for (const { id, callFrame } of nodes) {
    const place = placeOf(callFrame, map, folder);
    const key = `${callFrame.functionName} ${place}`;
    const entry = byPlace.get(key) ?? { name: callFrame.functionName || '(anonymous)', place, spent: 0 };
    entry.spent += microseconds.get(id) ?? 0;
    byPlace.set(key, entry);
  }
  return [...byPlace.values()]
    .sort((a, b) => b.spent - a.spent)
    .map(({ name, place, spent }) => ({ name, place, share: spent / total }));
}

function placeOf(
  { url, lineNumber, columnNumber }: Profiler.Profile['nodes'][number]['callFrame'],
  map: SourceMap,
  folder: string,
): string {
  if (!url.endsWith('engine.mjs')) return url;
  const entry = map.findEntry(lineNumber, columnNumber);
  if (!('originalSource' in entry)) return '';
  return `${relative(root, resolve(folder, entry.originalSource))}:${entry.originalLine + 1}`;
}
