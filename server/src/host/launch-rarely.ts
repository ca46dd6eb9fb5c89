/**
 * What most starts do without: unpacks the text and the tables of a program where nothing is kept of it, and keeps them with what was compiled.
 * All programs share it.
 */
import { mkdirSync, readdirSync, readFileSync, renameSync, statSync, unlinkSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { brotliDecompressSync, crc32, constants as zlib } from 'node:zlib';
import { type Code, NUMBER_BYTES, NUMBERS, type Texts } from './launch-kept.ts';
import { unpackedTables } from './packed-tables.ts';
import { BETWEEN_TABLES, type Program } from './program.ts';

/** Of so many builds of a program what was compiled is kept. */
const MOST_BUILDS = 4;

/** The texts of a program, from the file that lies beside it. */
export function unpacked(program: Program, of: string): Texts {
  const beside = join(dirname(of), program.file);
  const bytes = unpack(beside, program);
  const { head, unpackedBytes, text, tables } = program;
  if (bytes.length !== unpackedBytes || bytes.toString('latin1', 0, head.length) !== head)
    notOfThisBuild(beside, of, program);
  return {
    text: Buffer.concat(text.map((part) => (typeof part === 'string' ? Buffer.from(part) : bytes.subarray(...part)))),
    ...inRows(tables === undefined ? '' : bytes.toString('utf8', ...tables)),
  };
}

function inRows(packed: string): Pick<Texts, 'tables' | 'isLatin'> {
  const tables = unpackedTables(packed).join(BETWEEN_TABLES);
  const isLatin = !/[^\0-\xff]/.test(tables);
  return { tables: Buffer.from(tables, isLatin ? 'latin1' : 'utf8'), isLatin };
}

function unpack(packed: string, program: Program): Buffer {
  try {
    return brotliDecompressSync(readFileSync(packed).subarray(0, program.packedBytes), {
      finishFlush: zlib.BROTLI_OPERATION_FLUSH,
      // In one piece: pieces are put together again.
      chunkSize: program.unpackedBytes + 64,
    });
  } catch {
    return Buffer.alloc(0);
  }
}

/** What lies beside the program is missing or was built with another one. */
function notOfThisBuild(beside: string, of: string, program: Program): never {
  const words = `quern cannot start: ${beside} is not of the same build as ${of}`;
  if (program.isGuest) throw new Error(words);
  process.stderr.write(`${words}\n`);
  process.exit(2);
}

/** Writes what is kept; `of` is the file of the program. The texts are those that the file has where none are given. */
export function keep(
  file: string,
  of: string,
  program: Program,
  { data, codeBytes }: Code,
  texts = keptTexts(file, program),
): void {
  if (texts === undefined) return;
  const { text, tables, isLatin } = texts;
  const numbers = Buffer.alloc(NUMBERS * NUMBER_BYTES);
  [text.length, tables.length, codeBytes, Number(isLatin)].forEach((number, at) => {
    numbers.writeUInt32LE(number, at * NUMBER_BYTES);
  });
  const whole = Buffer.concat([text, tables, data, numbers]);
  const sum = Buffer.alloc(NUMBER_BYTES);
  sum.writeUInt32LE(crc32(whole, program.sum));
  // Another process may read or write the file at the same time.
  const written = `${file}.${process.pid}`;
  try {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(written, Buffer.concat([whole, sum]), { mode: 0o600 });
    renameSync(written, file);
    forgetOlder(file, of);
  } catch {
    // Nothing is kept where nothing may be written.
    forget(written);
  }
}

function keptTexts(file: string, { sum }: Program): Texts | undefined {
  try {
    const bytes = readFileSync(file);
    const numbersAt = bytes.length - (NUMBERS + 1) * NUMBER_BYTES;
    const number = (at: number): number => bytes.readUInt32LE(numbersAt + at * NUMBER_BYTES);
    if (number(NUMBERS) !== crc32(bytes.subarray(0, -NUMBER_BYTES), sum)) return undefined;
    const [textTo, tablesTo] = [number(0), number(0) + number(1)];
    return { text: bytes.subarray(0, textTo), tables: bytes.subarray(textTo, tablesTo), isLatin: number(3) === 1 };
  } catch {
    return undefined;
  }
}

/** What was kept of builds before the last few. */
function forgetOlder(newest: string, of: string): void {
  const folder = dirname(newest);
  const begins = `${basename(of)}-`;
  const all = readdirSync(folder)
    .filter((name) => name.startsWith(begins) && name.endsWith('.bin'))
    .map((name) => ({ path: join(folder, name), at: statSync(join(folder, name)).mtimeMs }))
    .sort((a, b) => b.at - a.at);
  for (const { path } of all.slice(MOST_BUILDS)) forget(path);
}

function forget(written: string): void {
  try {
    unlinkSync(written);
  } catch {
    // It was not even begun.
  }
}
