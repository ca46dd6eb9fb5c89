/** Runs one of these files with the engine it measures in a process of its own, bundled, as the tables are loaded by the bundler only. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as esbuild from 'esbuild';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const BUNDLE = 'engine.mjs';

/** What `read` makes of what the file wrote to its standard output, while the bundle lies on the disk. Throws when it does not build or fails. */
export async function inBundle<T>(
  file: string,
  args: readonly string[],
  limitMs: number,
  read: (output: string, bundle: string) => T,
): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'quern-engine-'));
  try {
    const outfile = join(folder, BUNDLE);
    await bundled(`tests/bench/${file}`, outfile);
    const run = spawnSync(process.execPath, [outfile, ...args], {
      encoding: 'utf8',
      timeout: limitMs,
      maxBuffer: 2 ** 28,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    if (run.status !== 0) throw new Error(`${file} ended with ${run.status ?? run.signal ?? 'nothing'}`);
    return read(run.stdout, outfile);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Writes a file with all that it imports, the tables as text. */
export async function bundled(entry: string, outfile: string): Promise<void> {
  await esbuild.build({
    absWorkingDir: ROOT,
    entryPoints: [entry],
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
}
