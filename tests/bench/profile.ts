/** Runs the engine bench in a process of its own, and names the functions that took most of the time by their place in the source. */
import { readFileSync } from 'node:fs';
import type { Profiler } from 'node:inspector';
import { SourceMap, type SourceMapPayload } from 'node:module';
import { dirname, relative, resolve } from 'node:path';
import { BUNDLE, inBundle, ROOT } from './bundle.ts';
import type { Size } from './cases.ts';
import type { EngineFigures } from './engine-figures.ts';

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
  return inBundle('engine.ts', [String(edits), String(profiled)], limitMs, (output, bundle) => {
    const figures = JSON.parse(output) as EngineFigures;
    const profile = figures.sizes.find((s) => s.size === profiled)?.profile;
    const map = new SourceMap(JSON.parse(readFileSync(`${bundle}.map`, 'utf8')) as SourceMapPayload);
    return { figures, profiled, hot: profile === undefined ? [] : hottest(profile, map, dirname(bundle)) };
  });
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
  if (!url.endsWith(BUNDLE)) return url;
  const entry = map.findEntry(lineNumber, columnNumber);
  if (!('originalSource' in entry)) return '';
  return `${relative(ROOT, resolve(folder, entry.originalSource))}:${entry.originalLine + 1}`;
}
