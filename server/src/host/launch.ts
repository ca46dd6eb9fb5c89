/**
 * Starts the server or the command: its own text within the scope of the one that both have in common, which lies beside
 * it. Keeps for the next start what was compiled of them: every function that ran until the process was idle or ended.
 * (Node's own compile cache keeps a file as it was just loaded, with none of its functions compiled.)
 * It is kept in the user's own cache folder, or where NODE_COMPILE_CACHE says; nothing is kept with
 * NODE_DISABLE_COMPILE_CACHE=1.
 */
import { existsSync, mkdirSync, readFileSync, renameSync, unlinkSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { basename, dirname, isAbsolute, join } from 'node:path';
import { Script } from 'node:vm';
import { brotliDecompressSync, crc32 } from 'node:zlib';

/** The program's own text: around what stands in the shared file it makes a function that is given what a module has, and what keeps. Named once, as it stands wherever it is named. */
declare const QUERN_BEFORE: string;
declare const QUERN_BEHIND: string;
/** The shared file, and how it begins where it was built with this one. */
declare const QUERN_SHARED: string;
declare const QUERN_SHARED_HEAD: string;
/** The packed tables, and what they begin with, unpacked, where they were built with this program; behind it one after the other, a NUL between. */
declare const QUERN_TABLES_FILE: string;
declare const QUERN_TABLES_HEAD: string;
/** The checksum of the whole. */
declare const QUERN_SUM: number;

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
const WORTH_KEEPING = 1.2;
/** Behind what is kept stand how many bytes of code the process had then, and the checksum of all before it. */
const CODE_BYTES = 4;
const SUM_BYTES = 4;

interface Kept {
  readonly data: Buffer;
  readonly codeBytes: number;
}

const file = keptIn();
const kept = file === undefined ? undefined : readKept(file);
const script = new Script(whole(), {
  filename: __filename,
  ...(kept !== undefined && { cachedData: kept.data }),
});
const keptBytes = kept === undefined || script.cachedDataRejected === true ? 0 : kept.codeBytes;
const compiled: Compiled = {};
if (file !== undefined) {
  compiled.keep = keepCompiled;
  process.on('exit', keepCompiled);
}
(script.runInThisContext() as Main)(module.exports, require, module, __filename, compiled, tables());

function whole(): string {
  const beside = join(__dirname, QUERN_SHARED);
  const shared = existsSync(beside) ? readFileSync(beside, 'latin1') : '';
  if (!shared.startsWith(QUERN_SHARED_HEAD)) notOfThisBuild(beside);
  return QUERN_BEFORE + shared + QUERN_BEHIND;
}

/** The tables, each a text of its own: one that has but Latin letters is held at one byte a letter. */
function tables(): readonly string[] {
  const beside = join(__dirname, QUERN_TABLES_FILE);
  const bytes = unpacked(beside);
  const from = Buffer.byteLength(QUERN_TABLES_HEAD);
  if (bytes.toString('latin1', 0, from) !== QUERN_TABLES_HEAD) notOfThisBuild(beside);
  const texts: string[] = [];
  for (let start = from; start <= bytes.length; ) {
    const nul = bytes.indexOf(0, start);
    const end = nul < 0 ? bytes.length : nul;
    texts.push(bytes.toString('utf8', start, end));
    start = end + 1;
  }
  return texts;
}

function unpacked(packed: string): Buffer {
  try {
    return brotliDecompressSync(readFileSync(packed));
  } catch {
    return Buffer.alloc(0);
  }
}

/** What lies beside the program is missing or was built with another one. */
function notOfThisBuild(beside: string): never {
  process.stderr.write(`quern cannot start: ${beside} is not of the same build as ${__filename}\n`);
  process.exit(2);
}

/** The file for this engine; another engine could not read it. */
function keptIn(): string | undefined {
  const { env, platform, versions, arch } = process;
  // Node before 20.16 has no checksum, or loads no module only where it is needed.
  if (env.NODE_DISABLE_COMPILE_CACHE === '1' || crc32 === undefined || process.getBuiltinModule === undefined)
    return undefined;
  const own = () =>
    platform === 'win32'
      ? env.LOCALAPPDATA || homedir()
      : platform === 'darwin'
        ? join(homedir(), 'Library', 'Caches')
        : env.XDG_CACHE_HOME || join(homedir(), '.cache');
  try {
    const folder = env.NODE_COMPILE_CACHE || join(own(), 'quern');
    return isAbsolute(folder) ? join(folder, `${basename(__filename)}-${versions.v8}-${arch}.bin`) : undefined;
  } catch {
    // Not every user has a home.
    return undefined;
  }
}

/** What was kept of this very text, whole. The engine itself would trust whatever it is given. */
function readKept(from: string): Kept | undefined {
  try {
    const bytes = readFileSync(from);
    const summed = bytes.subarray(0, -SUM_BYTES);
    if (bytes.readUInt32LE(summed.length) !== crc32(summed, QUERN_SUM)) return undefined;
    const data = summed.subarray(0, -CODE_BYTES);
    return { data, codeBytes: summed.readUInt32LE(data.length) };
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
  if (codeBytes < keptBytes * WORTH_KEEPING) return;
  const data = script.createCachedData();
  const tail = Buffer.alloc(CODE_BYTES + SUM_BYTES);
  tail.writeUInt32LE(codeBytes);
  tail.writeUInt32LE(crc32(tail.subarray(0, CODE_BYTES), crc32(data, QUERN_SUM)), CODE_BYTES);
  // Another process may read or write the file at the same time.
  const written = `${file}.${process.pid}`;
  try {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(written, Buffer.concat([data, tail]), { mode: 0o600 });
    renameSync(written, file);
  } catch {
    // Nothing is kept where nothing may be written.
    forget(written);
  }
}

function forget(written: string): void {
  try {
    unlinkSync(written);
  } catch {
    // It was not even begun.
  }
}
