/**
 * Changes texts by chance for so many seconds and holds each against the laws; what reaches a piece of the program that none
 * reached before is changed further. A text that breaks a law is cut down and kept as a file. To be bundled and run by `run.ts`.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { argv, stderr, stdout } from 'node:process';
import { crc32 } from 'node:zlib';
import { Coverage } from './coverage.ts';
import { holdsAlone, holdsInSession, session } from './laws.ts';
import { mutated } from './mutate.ts';
import { Random } from './random.ts';

const [, , secondsText = '60', seedText = '1', currentFile = '', keptIn = '', ...from] = argv;
const random = new Random(Number(seedText));
/** Longer ones take too long each: how long texts do, the bench says. */
const LONGEST = 6000;
/** One in so many is held against the laws of a session, which takes longer. */
const IN_SESSION = 4;
const MOST_FAULTS = 10;
/** The engine takes a tenth of a second to tell what ran: it is asked for so many texts together. */
const AT_ONCE = 5;

const pool = from
  .flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.quern'))
      .sort()
      .map((name) => readFileSync(join(folder, name), 'utf8')),
  )
  .filter((text) => text.length <= LONGEST);
const own = pool.length;
const coverage = new Coverage(import.meta.url);
const client = await session();
const faults: string[] = [];
let runs = 0;

async function faultOf(text: string, inSession: boolean): Promise<string | undefined> {
  writeFileSync(currentFile, text);
  try {
    holdsAlone(text);
    if (inSession) await holdsInSession(text, client);
    return undefined;
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  }
}

/** What a fault is known by: the same cut down is the same. */
const kindOf = (fault: string): string =>
  fault
    .split('\n')
    .slice(0, 2)
    .join(' ')
    .replace(/:.*? at /, ' at ')
    .slice(0, 120);

/** The text with all lines gone that the fault does not need. */
async function cutDown(text: string, kind: string, inSession: boolean): Promise<string> {
  let lines = text.split('\n');
  for (let size = lines.length >> 1; size > 0; size >>= 1)
    for (let at = 0; at < lines.length; ) {
      const fewer = lines.toSpliced(at, size);
      const fault = await faultOf(fewer.join('\n'), inSession);
      if (fault !== undefined && kindOf(fault) === kind) lines = fewer;
      else at += size;
    }
  return lines.join('\n');
}

const until = performance.now() + Number(secondsText) * 1000;
const kinds = new Set<string>();
let asked: string[] = [];
while (performance.now() < until && faults.length < MOST_FAULTS) {
  // What was found last is changed most.
  const text = random.below(2) === 0 ? random.one(pool.slice(-50)) : random.one(pool);
  const next = mutated(text ?? '', random.one(pool) ?? '', random);
  if (next.length > LONGEST) continue;
  const inSession = runs % IN_SESSION === 0;
  const fault = await faultOf(next, inSession);
  runs++;
  asked.push(next);
  if (asked.length === AT_ONCE && coverage.fresh() > 0) pool.push(...asked);
  asked = asked.length === AT_ONCE ? [] : asked;
  if (fault === undefined) continue;
  const kind = kindOf(fault);
  if (kinds.has(kind)) continue;
  kinds.add(kind);
  const least = await cutDown(next, kind, inSession);
  mkdirSync(keptIn, { recursive: true });
  const file = join(keptIn, `${crc32(least).toString(16)}.quern`);
  writeFileSync(file, least);
  faults.push(file);
  stderr.write(`${file}: ${fault}\n`);
}
client.close();
stdout.write(JSON.stringify({ runs, own, kept: pool.length - own, pieces: coverage.pieces, faults }));
