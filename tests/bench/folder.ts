/** Measures the command line over a folder of recipes, each of 60 lines and different from the others. */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Client, NoAnswer } from './client.ts';
import { sum } from './figures.ts';
import type { Figure } from './measure.ts';
import { childrenOf, peakMb, processorS } from './memory.ts';
import { writeRecipe } from './recipes.ts';
import { QUERN } from './servers.ts';

const CLI = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));
const PER_FOLDER = 100;

export interface FolderFigures {
  readonly recipes: number;
  readonly seconds: number | 'no answer';
  /** On all processors: steadier than the time that passes on a busy machine. */
  readonly processorS: number | 'no answer';
  readonly peakMb: number | 'no answer';
}

export interface RecipeFolder {
  readonly path: string;
  readonly recipes: number;
  readonly remove: () => void;
}

export function writeFolder(recipes: number): RecipeFolder {
  const path = mkdtempSync(join(tmpdir(), 'quern-bench-'));
  const remove = () => rmSync(path, { recursive: true, force: true });
  process.on('exit', remove);
  for (let i = 0; i < recipes; i++) {
    const folder = join(path, String(Math.floor(i / PER_FOLDER)));
    if (i % PER_FOLDER === 0) mkdirSync(folder);
    writeFileSync(join(folder, `menu-${i}.quern`), writeRecipe(60, 100_000 + i));
  }
  return { path, recipes, remove };
}

export interface IndexFigures {
  readonly seconds: Figure;
  readonly memoryMb: Figure;
}

/** The language server started on the folder and asked for a name in it: it then holds the index of all its recipes. */
export async function indexFolder({ path, recipes }: RecipeFolder, limitMs: number): Promise<IndexFigures> {
  const rootUri = pathToFileURL(path).href;
  const client = await Client.start({ ...QUERN, rootUri, uri: `${rootUri}/new.quern` }, limitMs);
  try {
    await client.open('recipe New\n');
    const start = performance.now();
    const found = await client.namesLike('set menu');
    const seconds = (performance.now() - start) / 1000;
    if (found === 0) throw new NoAnswer(`no name of ${recipes} recipes was found`);
    return { seconds, memoryMb: await client.memoryMb() };
  } catch (error) {
    if (!(error instanceof NoAnswer)) throw error;
    return { seconds: 'no answer', memoryMb: 'no answer' };
  } finally {
    await client.stop();
  }
}

/** One run of `quern check` over the folder, in a process of its own. */
export function checkFolder({ path, recipes }: RecipeFolder, limitMs: number): Promise<FolderFigures> {
  return new Promise((resolve) => {
    const start = performance.now();
    const child = spawn(process.execPath, [CLI, 'check', path], { stdio: 'ignore' });
    const kill = () => child.kill('SIGKILL');
    process.on('exit', kill);
    const peaks = new Map<number, number>();
    const spent = new Map<number, number>();
    // The most that each of its processes ever held; all of them run at once.
    const look = () => {
      const { pid } = child;
      for (const id of pid === undefined ? [] : [pid, ...childrenOf(pid)]) {
        const mb = peakMb(id);
        if (mb !== undefined) peaks.set(id, mb);
        const used = processorS(id);
        if (used !== undefined) spent.set(id, used);
      }
    };
    const looking = setInterval(look, 20);
    const limit = setTimeout(kill, limitMs);
    const end = (answered: boolean) => {
      clearInterval(looking);
      clearTimeout(limit);
      process.off('exit', kill);
      const seconds = (performance.now() - start) / 1000;
      const known = (of: ReadonlyMap<number, number>) =>
        answered && of.size > 0 ? sum([...of.values()]) : ('no answer' as const);
      resolve({ recipes, seconds: answered ? seconds : 'no answer', processorS: known(spent), peakMb: known(peaks) });
    };
    child.once('error', () => end(false));
    // 1 says that there are findings.
    child.once('exit', (code) => end(code === 0 || code === 1));
  });
}
