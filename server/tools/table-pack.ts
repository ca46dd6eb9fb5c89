/**
 * Packs the tables into one file beside the bundles, a quarter smaller than where each is a text of the program: they have many words in common,
 * far from each other. Refuses to know what they say, but for the largest, which has a packing of its own.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { brotliCompressSync, brotliDecompressSync, crc32, constants as zlib } from 'node:zlib';
import type { Plugin } from 'esbuild';
import { packedForms } from '../src/prose/packed-forms.ts';

/** What the programs know the unpacked tables by: a list, in the order of their paths. */
export const TABLES_NAME = 'QUERN_TABLES';

/** Between two tables. */
const END = '\0';

/** All tables below a folder. */
export class TablePack {
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

  /**
   * Writes the file, where it does not hold the same already: to pack takes seconds. What it unpacks to begins with what is given back,
   * the checksum of the rest.
   */
  async write(file: string): Promise<string> {
    const tables = this.paths.map((path) => packed(path, readFileSync(path, 'utf8'))).join(END);
    const head = `${crc32(tables)}${END}`;
    const whole = Buffer.from(head + tables);
    if (!(await holds(file, whole)))
      await writeFile(
        file,
        brotliCompressSync(whole, {
          params: {
            [zlib.BROTLI_PARAM_MODE]: zlib.BROTLI_MODE_TEXT,
            [zlib.BROTLI_PARAM_QUALITY]: zlib.BROTLI_MAX_QUALITY,
            [zlib.BROTLI_PARAM_SIZE_HINT]: whole.length,
          },
        }),
      );
    return head;
  }
}

/** A table without its remark, which is for who reads it here. */
const packed = (path: string, table: string): string =>
  path.endsWith('forms.tsv') ? packedForms(table) : table.replace(/^#.*/, '#');

async function holds(file: string, whole: Buffer): Promise<boolean> {
  try {
    return brotliDecompressSync(await readFile(file)).equals(whole);
  } catch {
    return false;
  }
}
