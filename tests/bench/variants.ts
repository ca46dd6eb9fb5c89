/** Measures what a change of a base costs: the findings of the variants that build on it, open in the editor or closed. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Client, NoAnswer } from './client.ts';
import { median } from './figures.ts';
import type { Figure } from './measure.ts';
import { writeRecipe } from './recipes.ts';
import { QUERN } from './servers.ts';

export const OPEN_VARIANTS = 20;
export const CLOSED_VARIANTS = 100;
const WARM_UP = 10;

/** Milliseconds from one character in the base to all findings. */
export interface VariantFigures {
  /** Of the base and its open variants, pulled as an editor does. */
  readonly open: Figure;
  /** Of every file of the folder, the closed variants too. */
  readonly closed: Figure;
}

/** A base of 60 lines with variants that change two of its lines and its yield. */
export async function measureVariants(
  edits: number,
  limitMs: number,
  openVariants = OPEN_VARIANTS,
): Promise<VariantFigures> {
  const path = mkdtempSync(join(tmpdir(), 'quern-bench-'));
  const remove = () => rmSync(path, { recursive: true, force: true });
  process.on('exit', remove);
  const base = writeRecipe(60, 60);
  const rows = base.split('\n');
  const amounts = rows.flatMap((row, line) => (/^ {2}\d\d+ g /.test(row) ? [line] : []));
  const names = amounts.map((line) => (rows[line] ?? '').slice(12).replace(/,.*/, '').trim());
  const variant = (i: number) =>
    `recipe Menu ${i}\n  from    base.quern\n  yield   ${90 + i} kg\n  swap ${names[i % names.length]} for ${100 + i} g ${names[i % names.length]}\n  add 12 g      olive oil\n`;
  const uriOf = (name: string) => pathToFileURL(join(path, name)).href;
  const open = Array.from({ length: openVariants }, (_, i) => `open-${i}.quern`);
  const closed = Array.from({ length: CLOSED_VARIANTS }, (_, i) => `closed-${i}.quern`);
  for (const [name, text] of [
    ['quern.json', '{}'],
    ['base.quern', base],
    ...[...open, ...closed].map((name, i) => [name, variant(i)] as const),
  ] as const)
    writeFileSync(join(path, name), text);

  const client = await Client.start({ ...QUERN, rootUri: pathToFileURL(path).href, uri: uriOf('base.quern') }, limitMs);
  try {
    await client.open(base);
    open.forEach((name, i) => {
      client.openBeside(uriOf(name), variant(i));
    });
    const uris = ['base.quern', ...open].map(uriOf);
    await client.findingsOf(uris);
    // The yield no longer fits another weight: a change reaches every one of them.
    const timed = async (ask: () => Promise<number>, least: number, count: number): Promise<number | undefined> => {
      const times: number[] = [];
      for (let i = 0; i < WARM_UP + count; i++) {
        const line = amounts[(i >> 1) % amounts.length] ?? 0;
        const start = performance.now();
        client.edit({ line, character: 3, length: i % 2 === 0 ? 0 : 1, text: i % 2 === 0 ? '5' : '' });
        const others = await ask();
        if (others < least) throw new NoAnswer(`a change of the base reached ${others} of ${least} variants`);
        if (i >= WARM_UP) times.push(performance.now() - start);
      }
      return median(times);
    };
    const openMs = await timed(() => client.findingsOf(uris), openVariants / 2, edits);
    await client.findingsOfFolder();
    const closedMs = await timed(() => client.findingsOfFolder(), CLOSED_VARIANTS / 2, Math.ceil(edits / 4));
    return { open: openMs ?? 'no answer', closed: closedMs ?? 'no answer' };
  } catch (error) {
    if (!(error instanceof NoAnswer)) throw error;
    process.stderr.write(`${error.message}\n`);
    return { open: 'no answer', closed: 'no answer' };
  } finally {
    await client.stop();
    remove();
  }
}
