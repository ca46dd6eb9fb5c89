/**
 * Starts the server, the command or the editor's client: its text and the tables are unpacked from the file that lies beside it, where all
 * programs have theirs. Keeps for the next start what was unpacked and what was compiled of it: every function that ran until the process was
 * idle or ended. (Node's own compile cache keeps a file as it was just loaded, with none of its functions compiled.)
 * It is kept in the user's own cache folder, or where NODE_COMPILE_CACHE says; nothing is kept with
 * NODE_DISABLE_COMPILE_CACHE=1.
 */
import { readFileSync } from 'node:fs';
import { basename, isAbsolute, join } from 'node:path';
import { Script } from 'node:vm';
import { crc32 } from 'node:zlib';
import { cacheFolder } from './cache-folder.ts';
import { type Kept, NUMBER_BYTES, NUMBERS, type Texts } from './launch-kept.ts';
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
const FORM = 3;
const program = QUERN_PROGRAM;
const file = keptIn();
const kept = file === undefined ? undefined : readKept(file);
const texts = kept ?? rarely().unpacked(program, __filename);
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

/** Parts of one text, which lies outside of what is collected: at one byte a letter, where it has but Latin letters. */
function split({ tables, isLatin }: Texts): readonly string[] {
  return tables.toString(isLatin ? 'latin1' : 'utf8').split(BETWEEN_TABLES);
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

/** Once, where there is more to keep than is kept. After it nothing holds on to the text. */
function keepCompiled(): void {
  delete compiled.keep;
  process.off('exit', keepCompiled);
  if (file === undefined) return;
  const codeBytes = bytesOfCode();
  // How much code the others in its process have says nothing of a guest.
  if (codeBytes < keptBytes * WORTH_KEEPING || (program.isGuest && keptBytes > 0)) return;
  // Asked last, as that module takes a while to load.
  if (!process.getBuiltinModule('node:worker_threads').isMainThread) return;
  rarely().keep(file, __filename, program, { ...texts, data: script.createCachedData(), codeBytes });
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
