/**
 * Packs texts and tables into one file: what they have in common, far from each other, stands in it once. Its beginning can be unpacked by itself.
 * Refuses to know what they say, but for the largest table, which has a packing of its own.
 */
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createBrotliCompress, constants as zlib } from 'node:zlib';
import type { Plugin } from 'esbuild';
import { packedFigures } from '../src/food/packed-figures.ts';
import { packedTables } from '../src/host/packed-tables.ts';
import { shownOf } from './unshown.ts';

/** What the programs know the unpacked tables by: a list, in the order of their paths. */
const TABLES_NAME = 'QUERN_TABLES';

/** All tables below a folder. */
export class Tables {
  private readonly paths: readonly string[];

  constructor(folder: string) {
    this.paths = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.tsv'))
      .map((name) => join(folder, name))
      .sort();
  }

  /** Imports each table as its place in the list. */
  readonly plugin: Plugin = {
    name: 'tables',
    setup: (build) => {
      build.onLoad({ filter: /\.tsv$/ }, ({ path }) => {
        const at = this.paths.indexOf(path);
        if (at < 0) return { errors: [{ text: `${path} is not below the folder of the tables` }] };
        return { contents: `export default ${TABLES_NAME}[${at}];`, loader: 'js', watchFiles: [path] };
      });
    },
  };

  /** One after the other. */
  async text(): Promise<string> {
    const { readNumbers } = await import('../src/food/tables.ts');
    const numbers = readNumbers();
    // One table of figures has a packing that its reader undoes when it is asked for.
    return packedTables(
      this.paths.map((path) => {
        const text = shownOf(path, readFileSync(path, 'utf8'));
        return { path, text: path.endsWith('minerals.tsv') ? packedFigures(text, numbers) : text };
      }),
    );
  }
}

/** How hard to try: `quick` takes less than a second, and a tenth more room than `small`, which takes ten. */
export type Effort = 'quick' | 'small';
const QUALITY = { quick: 9, small: zlib.BROTLI_MAX_QUALITY } as const satisfies Readonly<Record<Effort, number>>;

/** What is packed has a window as large as all of it, and whoever unpacks it as much memory. */
const WINDOW_BITS = 22;
/** Tried on what the programs are: a kilobyte less than what the packer takes by itself. */
const BLOCK_BITS = 17;
const NEAR_DISTANCES = 15;

/**
 * The parts one behind the other, packed, and behind each how many packed bytes give all up to there.
 */
export async function packParts(
  parts: readonly Uint8Array[],
  effort: Effort,
): Promise<{ readonly packed: Buffer; readonly ends: readonly number[] }> {
  const stream = createBrotliCompress({
    params: {
      [zlib.BROTLI_PARAM_MODE]: zlib.BROTLI_MODE_TEXT,
      [zlib.BROTLI_PARAM_QUALITY]: QUALITY[effort],
      [zlib.BROTLI_PARAM_LGWIN]: WINDOW_BITS,
      [zlib.BROTLI_PARAM_LGBLOCK]: BLOCK_BITS,
      [zlib.BROTLI_PARAM_NDIRECT]: NEAR_DISTANCES,
      [zlib.BROTLI_PARAM_SIZE_HINT]: parts.reduce((sum, { length }) => sum + length, 0),
    },
  });
  const chunks: Buffer[] = [];
  let bytes = 0;
  stream.on('data', (chunk: Buffer) => {
    chunks.push(chunk);
    bytes += chunk.length;
  });
  const ends: number[] = [];
  for (const part of parts) {
    stream.write(part);
    await new Promise<void>((resolve) => stream.flush(zlib.BROTLI_OPERATION_FLUSH, resolve));
    ends.push(bytes);
  }
  stream.end();
  await once(stream, 'end');
  return { packed: Buffer.concat(chunks), ends };
}
