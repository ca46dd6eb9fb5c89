/**
 * Measures how costs grow: with the recipes of a house, with the open variants of a base, with the lines of a file. The exponent is that of
 * the last step, where what a start costs anyway weighs least: 1 is as the size grows, 0 not at all.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { recipeCase, type Size } from './cases.ts';
import { Client } from './client.ts';
import { median } from './figures.ts';
import { writeHouse } from './house.ts';
import { commandMs } from './processor.ts';
import { QUERN } from './servers.ts';
import { printColumns, show } from './table.ts';
import { measureVariants } from './variants.ts';

const CLI = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));
const LIMIT_MS = 60_000;
const KEYS = 30;

const HOUSES = [500, 1000, 2000, 4000] as const;
const VARIANTS = [5, 10, 20, 40] as const;
const LINES: readonly Size[] = [60, 1000, 10_000];

export interface Growth {
  readonly what: string;
  /** Milliseconds by size. */
  readonly points: readonly (readonly [size: number, ms: number])[];
}

export async function measureGrowth(say: (words: string) => void): Promise<readonly Growth[]> {
  const rows = new Map<string, [number, number][]>();
  const add = (what: string, size: number, ms: number | undefined) => {
    if (ms === undefined) return;
    // On a busy machine the whole may not come to its end.
    say(`  ${what}: ${show(ms)}`);
    const points = rows.get(what) ?? [];
    points.push([size, ms]);
    rows.set(what, points);
  };
  for (const count of HOUSES) {
    say(`A house of ${count}`);
    const house = writeHouse(count);
    const kept = mkdtempSync(join(tmpdir(), 'quern-kept-'));
    try {
      const check = () => commandMs([CLI, 'check', '--cache', kept], house.path);
      add('check, cold, CPU', count, check());
      add('check, warm, CPU', count, median([check(), check(), check()].flatMap((ms) => ms ?? [])));
      const server = { ...QUERN, uri: pathToFileURL(house.pathOf(1)).href, rootUri: pathToFileURL(house.path).href };
      const client = await Client.start(server, LIMIT_MS);
      try {
        await client.open(house.textOf(1));
        const opened = client.cpuMs();
        add('start to first findings, CPU', count, opened);
        await client.namesLike('cake');
        const indexed = client.cpuMs();
        add('first index, CPU', count, indexed - opened);
        for (let i = 0; i < KEYS; i++) {
          client.changed(pathToFileURL(house.pathOf(i + 2)).href);
          await client.findings();
        }
        add('another file saved, CPU', count, (client.cpuMs() - indexed) / KEYS);
      } finally {
        await client.stop();
      }
    } finally {
      house.remove();
      rmSync(kept, { recursive: true, force: true });
    }
  }
  for (const count of VARIANTS) {
    say(`A base of ${count} variants`);
    const { open } = await measureVariants(KEYS, LIMIT_MS, count);
    if (typeof open === 'number') add('a base edited, all open variants, time', count, open);
  }
  for (const lines of LINES) {
    say(`A file of ${lines} lines`);
    const { text, edits } = recipeCase(lines);
    const client = await Client.start(QUERN, LIMIT_MS);
    try {
      await client.open(text);
      const times: number[] = [];
      const keys = edits();
      for (let i = 0; i < KEYS; i++) {
        const begun = performance.now();
        client.edit(keys.next().value);
        await client.findings();
        times.push(performance.now() - begun);
      }
      add('a key in a file, time', lines, median(times));
    } finally {
      await client.stop();
    }
  }
  return [...rows].map(([what, points]) => ({ what, points }));
}

export function printGrowth(growth: readonly Growth[]): string {
  return printColumns([
    ['what', 'ms at each size', 'exponent'],
    ...growth.map(({ what, points }) => [
      what,
      points.map(([size, ms]) => `${size}: ${show(ms)}`).join('  '),
      show(exponentOf(points)),
    ]),
  ]);
}

function exponentOf(points: Growth['points']): number {
  const [[size, ms] = [1, 1], [largest, most] = [1, 1]] = points.slice(-2);
  return Math.log(most / ms) / Math.log(largest / size);
}
