/**
 * Starts the server, the command or the editor's client: its text and the tables are unpacked from the file that lies beside it, where all
 * programs have theirs. Keeps for the next start what was unpacked and what was compiled of it: every function that ran until the process was
 * idle or ended. (Node's own compile cache keeps a file as it was just loaded, with none of its functions compiled.)
 * It is kept in the user's own cache folder, or where NODE_COMPILE_CACHE says; nothing is kept with
 * NODE_DISABLE_COMPILE_CACHE=1.
 */
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { basename, isAbsolute, join } from 'node:path';
import { Script } from 'node:vm';
import { crc32 } from 'node:zlib';
import { cacheFolder } from './cache-folder.ts';
import { type Code, NUMBER_BYTES, NUMBERS, type Texts } from './launch-kept.ts';
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
/** To be counted up when what is kept looks otherwise: two builds of the same program may differ in what starts them alone. */
const FORM = 4;
const program = QUERN_PROGRAM;
const file = keptIn();
const begun = begin();
const compiled: Compiled = {};
if (file !== undefined) {
  compiled.keep = keepCompiled;
  process.on('exit', keepCompiled);
}
const main = begun.script.runInThisContext() as Main;
main(module.exports, require, module, __filename, compiled, begun.tables);

interface Begun {
  readonly script: Script;
  readonly tables: readonly string[];
  readonly keptBytes: number;
  /** Of a first start. */
  readonly texts?: Texts;
}

/** Holds on to nothing that was read of the file but its texts: what is written to in memory is a good part of what a start costs. */
function begin(): Begun {
  const kept = file === undefined ? undefined : readKept(file);
  if (kept !== undefined) {
    const script = new Script(kept.text, { filename: __filename, cachedData: kept.data });
    return { script, tables: split(kept.tables), keptBytes: script.cachedDataRejected === true ? 0 : kept.codeBytes };
  }
  const texts = rarely().unpacked(program, __filename);
  const { text, tables, isLatin } = texts;
  return {
    script: new Script(text.toString('latin1'), { filename: __filename }),
    tables: split(tablesOf(tables, isLatin)),
    keptBytes: 0,
    texts,
  };
}

/** One text, which lies outside of what is collected: at one byte a letter, where it has but Latin letters. */
function tablesOf(bytes: Buffer, isLatin: boolean): string {
  return bytes.toString(isLatin ? 'latin1' : 'utf8');
}

/** Parts of that text. */
function split(tables: string): readonly string[] {
  return tables.split(BETWEEN_TABLES);
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

interface Kept extends Code {
  readonly text: string;
  readonly tables: string;
}

/** What was kept of this very text, whole. The engine itself would trust whatever it is given. */
function readKept(from: string): Kept | undefined {
  try {
    const opened = openSync(from, 'r');
    try {
      return readOpened(opened, fstatSync(opened).size);
    } finally {
      closeSync(opened);
    }
  } catch {
    return undefined;
  }
}

function readOpened(opened: number, size: number): Kept | undefined {
  const end = Buffer.alloc((NUMBERS + 1) * NUMBER_BYTES);
  readSync(opened, end, 0, end.length, size - end.length);
  const number = (at: number): number => end.readUInt32LE(at * NUMBER_BYTES);
  const [textBytes, tableBytes] = [number(0), number(1)];
  const dataBytes = size - end.length - textBytes - tableBytes;
  if (dataBytes < 0) return undefined;
  // One after the other into the same memory; what was compiled stays in it until it is read.
  const room = Buffer.allocUnsafeSlow(Math.max(textBytes, tableBytes, dataBytes));
  let sum = program.sum;
  const next = (bytes: number): Buffer => {
    const piece = room.subarray(0, bytes);
    if (readSync(opened, piece, 0, bytes, null) < bytes) throw new Error('cut short');
    sum = crc32(piece, sum);
    return piece;
  };
  const text = next(textBytes).toString('latin1');
  const tables = tablesOf(next(tableBytes), number(3) === 1);
  const data = next(dataBytes);
  const whole = crc32(end.subarray(0, -NUMBER_BYTES), sum);
  return whole === number(NUMBERS) ? { text, tables, data, codeBytes: number(2) } : undefined;
}

/** Once, where there is more to keep than is kept. After it nothing holds on to the text. */
function keepCompiled(): void {
  delete compiled.keep;
  process.off('exit', keepCompiled);
  if (file === undefined) return;
  const codeBytes = bytesOfCode();
  // How much code the others in its process have says nothing of a guest.
  if (codeBytes < begun.keptBytes * WORTH_KEEPING || (program.isGuest && begun.keptBytes > 0)) return;
  // Asked last, as that module takes a while to load.
  if (!process.getBuiltinModule('node:worker_threads').isMainThread) return;
  rarely().keep(file, __filename, program, { data: begun.script.createCachedData(), codeBytes }, begun.texts);
}

/** What was compiled lies in a space of its own from Node 22 on; before, the whole heap is walked through for it. */
function bytesOfCode(): number {
  const v8 = process.getBuiltinModule('node:v8');
  const own = v8.getHeapSpaceStatistics().find(({ space_name }) => (space_name as string) === 'trusted_space');
  return own?.space_used_size ?? v8.getHeapCodeStatistics().bytecode_and_metadata_size;
}

/** What most starts do without is in a file that all programs share. */
function rarely(): typeof import('./launch-rarely.ts') {
  return require('./launch-rarely.js') as typeof import('./launch-rarely.ts');
}
