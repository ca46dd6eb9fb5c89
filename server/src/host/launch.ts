/**
 * Starts the server, the command or the editor's client: its text and the tables are unpacked from the file that lies beside it, where all
 * programs have theirs. Keeps for the next start what was unpacked and what was compiled of it: every function that ran until the process was
 * idle or ended. (Node's own compile cache keeps a file as it was just loaded, with none of its functions compiled.)
 * It is kept in the user's own cache folder, or where NODE_COMPILE_CACHE says; nothing is kept with
 * NODE_DISABLE_COMPILE_CACHE=1.
 */
import { mkdirSync, readdirSync, readFileSync, renameSync, statSync, unlinkSync, writeFileSync } from 'node:fs';
import { basename, dirname, isAbsolute, join } from 'node:path';
import { Script } from 'node:vm';
import { brotliDecompressSync, crc32, constants as zlib } from 'node:zlib';
import { cacheFolder } from './cache-folder.ts';
import { unpackedTables } from './packed-tables.ts';
import { BETWEEN_TABLES, type Program } from './program.ts';

declare const QUERN_PROGRAM: Program;

type Main = (
  exports: unknown,
  require: NodeJS.Require,
  module: NodeJS.Module,
  __filename: string,
  compiled: Compiled,
  tables: readonly string[],
) => void;

/** What keeps what is compiled by then; gone once it has. */
interface Compiled {
  keep?: () => void;
}

/** So much more was compiled than is kept, as a factor, that it is worth keeping. */
const WORTH_KEEPING = 1.35;
/** Of so many builds of a program what was compiled is kept. */
const MOST_BUILDS = 4;
/**
 * Behind what is kept stand, in four bytes each, how long its text and tables are, how many bytes of code the process had then, whether the
 * tables are Latin letters, and the checksum of all before it.
 */
const NUMBERS = 4;
/** To be counted up when what is kept looks otherwise: two builds of the same program may differ in what starts them alone. */
const FORM = 2;
const NUMBER_BYTES = 4;

interface Texts {
  readonly text: Buffer;
  readonly tables: Buffer;
  /** A byte a letter, which are read ten times as fast as UTF-8. */
  readonly isLatin: boolean;
}

interface Kept extends Texts {
  readonly data: Buffer;
  readonly codeBytes: number;
}

const program = QUERN_PROGRAM;
const file = keptIn();
const kept = file === undefined ? undefined : readKept(file);
const texts = kept ?? unpacked();
const script = new Script(texts.text.toString('latin1'), {
  filename: __filename,
  ...(kept !== undefined && { cachedData: kept.data }),
});
const keptBytes = kept === undefined || script.cachedDataRejected === true ? 0 : kept.codeBytes;
const compiled: Compiled = {};
if (file !== undefined) {
  compiled.keep = keepCompiled;
  process.on('exit', keepCompiled);
}
const main = script.runInThisContext() as Main;
main(module.exports, require, module, __filename, compiled, split(texts));

function unpacked(): Texts {
  const beside = join(__dirname, program.file);
  const bytes = unpack(beside);
  const { head, unpackedBytes, text, tables } = program;
  if (bytes.length !== unpackedBytes || bytes.toString('latin1', 0, head.length) !== head) notOfThisBuild(beside);
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

function unpack(packed: string): Buffer {
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

/** Each a text of its own: one that has but Latin letters is held at one byte a letter. */
function split({ tables, isLatin }: Texts): readonly string[] {
  const each: string[] = [];
  for (let start = 0; start <= tables.length; ) {
    const nul = tables.indexOf(BETWEEN_TABLES, start);
    const end = nul < 0 ? tables.length : nul;
    each.push(tables.toString(isLatin ? 'latin1' : 'utf8', start, end));
    start = end + 1;
  }
  return each;
}

/** What lies beside the program is missing or was built with another one. */
function notOfThisBuild(beside: string): never {
  const words = `quern cannot start: ${beside} is not of the same build as ${__filename}`;
  if (program.isGuest) throw new Error(words);
  process.stderr.write(`${words}\n`);
  process.exit(2);
}

/** The file for this build and this engine; another engine could not read it. */
function keptIn(): string | undefined {
  const { env, versions, arch } = process;
  // Node before 20.16 has no checksum, or loads no module only where it is needed.
  if (env.NODE_DISABLE_COMPILE_CACHE === '1' || crc32 === undefined || process.getBuiltinModule === undefined)
    return undefined;
  const folder = env.NODE_COMPILE_CACHE || cacheFolder('');
  if (folder === undefined || !isAbsolute(folder)) return undefined;
  return join(folder, `${basename(__filename)}-${FORM}-${program.sum.toString(36)}-${versions.v8}-${arch}.bin`);
}

/** What was kept of this very text, whole. The engine itself would trust whatever it is given. */
function readKept(from: string): Kept | undefined {
  try {
    const bytes = readFileSync(from);
    const numbersAt = bytes.length - (NUMBERS + 1) * NUMBER_BYTES;
    const number = (at: number): number => bytes.readUInt32LE(numbersAt + at * NUMBER_BYTES);
    if (number(NUMBERS) !== crc32(bytes.subarray(0, -NUMBER_BYTES), program.sum)) return undefined;
    const tablesAt = numbersAt - number(1);
    const textAt = tablesAt - number(0);
    return {
      data: bytes.subarray(0, textAt),
      text: bytes.subarray(textAt, tablesAt),
      tables: bytes.subarray(tablesAt, numbersAt),
      codeBytes: number(2),
      isLatin: number(3) === 1,
    };
  } catch {
    return undefined;
  }
}

/**
 * Once, where there is more to keep than is kept. The modules that it alone needs are not loaded at a start. After it nothing
 * holds on to the text.
 */
function keepCompiled(): void {
  delete compiled.keep;
  process.off('exit', keepCompiled);
  if (file === undefined) return;
  if (!process.getBuiltinModule('node:worker_threads').isMainThread) return;
  const codeBytes = process.getBuiltinModule('node:v8').getHeapCodeStatistics().bytecode_and_metadata_size;
  // How much code the others in its process have says nothing of a guest.
  if (codeBytes < keptBytes * WORTH_KEEPING || (program.isGuest && keptBytes > 0)) return;
  const { text, tables, isLatin } = texts;
  const numbers = Buffer.alloc(NUMBERS * NUMBER_BYTES);
  [text.length, tables.length, codeBytes, Number(isLatin)].forEach((number, at) => {
    numbers.writeUInt32LE(number, at * NUMBER_BYTES);
  });
  const whole = Buffer.concat([script.createCachedData(), text, tables, numbers]);
  const sum = Buffer.alloc(NUMBER_BYTES);
  sum.writeUInt32LE(crc32(whole, program.sum));
  // Another process may read or write the file at the same time.
  const written = `${file}.${process.pid}`;
  try {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(written, Buffer.concat([whole, sum]), { mode: 0o600 });
    renameSync(written, file);
    forgetOlder(file);
  } catch {
    // Nothing is kept where nothing may be written.
    forget(written);
  }
}

/** What was kept of builds before the last few. */
function forgetOlder(newest: string): void {
  const folder = dirname(newest);
  const begins = `${basename(__filename)}-`;
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
