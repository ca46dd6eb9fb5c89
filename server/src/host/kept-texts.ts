/**
 * Knows texts that one run leaves for the next, in a folder of the user's cache or one that was named. They may be gone at any time; one that is
 * there was written whole. Whoever writes last is read.
 */
import { mkdirSync, readdirSync, readFileSync, renameSync, statSync, unlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { KeptTexts } from '../cli/io.ts';
import { cacheFolder } from './cache-folder.ts';
import { diskErrorWords } from './disk-errors.ts';
import { digest } from './later.ts';

/** Texts that nobody read for so long go, and all but the newest few. */
const OLDEST_MS = 30 * 24 * 3_600_000;
const MOST = 40;

/** `script` is the bundle that runs: what another build left is not read. */
export function nodeKeptTexts(script: string, named: string | undefined): KeptTexts | undefined {
  const folder = named ?? cacheFolder('results');
  const build = textOf(script);
  if (folder === undefined || build === undefined) return undefined;
  return {
    build: digest(build),
    digest,
    read: (name) => textOf(join(folder, name)),
    write: (name, text) => {
      const path = join(folder, name);
      const staged = `${path}.${process.pid}`;
      try {
        mkdirSync(dirname(path), { recursive: true });
        writeFileSync(staged, text, { mode: 0o600 });
        renameSync(staged, path);
        forgetOld(folder);
        return undefined;
      } catch (error) {
        remove(staged);
        return diskErrorWords(error, 'it is not allowed');
      }
    },
  };
}

function textOf(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}

function forgetOld(folder: string): void {
  const now = Date.now();
  const all = readdirSync(folder)
    .filter((name) => name.startsWith('check-'))
    .map((name) => join(folder, name))
    .map((path) => ({ path, at: statSync(path).mtimeMs }))
    .sort((a, b) => b.at - a.at);
  for (const [i, { path, at }] of all.entries()) if (i >= MOST || now - at > OLDEST_MS) remove(path);
}

function remove(path: string): void {
  try {
    unlinkSync(path);
  } catch {
    // It is gone, or never was.
  }
}
