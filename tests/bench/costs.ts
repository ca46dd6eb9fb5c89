/**
 * Measures what is felt, in ratios to an anchor of the same run: a key at the pace of typing in a file on disk in a house of 1,000, the start,
 * memory, and `check` over few and many files, with nothing kept and with all of it.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type Edit, jsonCase } from './cases.ts';
import { Client } from './client.ts';
import { median, quantile } from './figures.ts';
import { type House, REAL_RECIPES, writeHouse } from './house.ts';
import { commandMs } from './processor.ts';
import { Random } from './random.ts';
import { measureSentences } from './sentences.ts';
import { JSON_SERVER, QUERN, type ServerUnderTest } from './servers.ts';
import { measureVariants, OPEN_VARIANTS } from './variants.ts';

const CLI = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));
const LIMIT_MS = 30_000;
/** A frame of a screen, in ms. */
const FRAME_MS = 16;

/** One row: a figure over its anchor, or the figure itself where there is none. */
export interface Cost {
  readonly what: string;
  readonly anchor: string;
  readonly toReach: number | undefined;
  readonly beyond: number | undefined;
  /** A round each. */
  readonly rounds: readonly number[];
  /** What the row leaves out. */
  readonly without?: string;
}

export interface Pace {
  readonly rounds: number;
  readonly keys: number;
  readonly many: number;
}

type Rows = Map<string, Omit<Cost, 'rounds'> & { rounds: number[] }>;

/** All rows but the guards, which `run.ts` has of long files. */
export async function measureCosts(
  { rounds, keys, many }: Pace,
  say: (words: string) => void,
): Promise<readonly Cost[]> {
  const rows: Rows = new Map();
  const add = (
    what: string,
    anchor: string,
    figure: number | undefined,
    toReach?: number,
    beyond?: number,
    without?: string,
  ) => {
    const row = rows.get(what) ?? { what, anchor, toReach, beyond, rounds: [], ...(without && { without }) };
    if (figure !== undefined && Number.isFinite(figure)) row.rounds.push(figure);
    rows.set(what, row);
  };
  say(`Writing houses of 1,000 and ${many.toLocaleString('en')} recipes`);
  const houses = { thousand: writeHouse(1000), many: writeHouse(many) };
  const kept = mkdtempSync(join(tmpdir(), 'quern-kept-'));
  try {
    await keepCompiled(houses.thousand);
    for (let round = 0; round < rounds; round++) {
      say(`Round ${round + 1} of ${rounds}: keys`);
      const turns = round % 2 === 0 ? ([QUERN, JSON_SERVER] as const) : ([JSON_SERVER, QUERN] as const);
      const typed: Partial<Record<ServerUnderTest['name'], Typed>> = {};
      for (const server of turns) typed[server.name] = await type(server, houses.thousand, keys, round);
      const { quern, json } = typed;
      if (quern !== undefined && json !== undefined) {
        add('key to findings, p50', 'JSON server', quern.p50 / json.p50, 1.6, 1);
        add('the same, p95', 'a frame, 16 ms', quern.p95 / FRAME_MS, 0.5, 0.2);
        add(
          'CPU a key, with eight requests',
          'JSON server',
          quern.cpuAKey / json.cpuAKey,
          2,
          1.2,
          'lenses are asked, not resolved',
        );
        add(
          'start to first findings, CPU, compiled code kept',
          'JSON server',
          quern.startCpu / json.startCpu,
          0.47,
          0.37,
        );
        add(
          'private memory, file open',
          'JSON server',
          quern.memoryMb / json.memoryMb,
          0.56,
          0.45,
          'written pages alone; no collection is forced',
        );
      }
      say(`Round ${round + 1} of ${rounds}: starts`);
      const fresh = join(kept, `fresh-${round}`);
      const first = await startCpu({ ...QUERN, env: { NODE_COMPILE_CACHE: fresh } }, houses.thousand);
      if (json !== undefined) add('the same, nothing kept', 'JSON server', first / json.startCpu, 0.75, 0.6);
      const alone = await startCpu(QUERN, undefined);
      const inMany = await startCpu(QUERN, houses.many);
      add(`the same in a house of ${many.toLocaleString('en')} recipes`, 'itself, alone', inMany / alone, 1.5, 1.1);
      say(`Round ${round + 1} of ${rounds}: check`);
      checkRows(houses, many, join(kept, `results-${round}`), add);
      say(`Round ${round + 1} of ${rounds}: index, base, sentence`);
      add('index, MB per 1,000 files', '–', await indexMb(houses.thousand), 5, 2, 'resident, after and before');
      const variants = await measureVariants(20, LIMIT_MS);
      if (typeof variants.open === 'number' && quern !== undefined)
        add(
          'a base edited, time per open variant',
          'a key',
          variants.open / OPEN_VARIANTS / quern.p50,
          0.4,
          0.1,
          'time, not CPU',
        );
      const sentence = await measureSentences(200, 60_000);
      if (typeof sentence.p50 === 'number')
        add(
          'one changed sentence, all checks, hot, ms',
          '–',
          sentence.p50,
          0.15,
          0.1,
          'what takes it back, which costs a tenth',
        );
    }
  } finally {
    for (const house of Object.values(houses)) house.remove();
    rmSync(kept, { recursive: true, force: true });
  }
  return [...rows.values()];
}

/** One run that is left alone until it has kept what was compiled, so that every other finds it. */
async function keepCompiled(house: House): Promise<void> {
  await type(QUERN, house, 10, 0);
  const { server, text } = fileFor(QUERN, house, 0);
  const client = await Client.start(server, LIMIT_MS);
  try {
    await client.open(text);
    await new Promise((resolve) => setTimeout(resolve, IDLE_MS));
  } finally {
    await client.stop();
  }
  commandMs([CLI, 'check', '--no-cache', house.pathOf(3)], house.path);
}
/** So long nobody asks anything that a server does what waits. */
const IDLE_MS = 8000;

interface Typed {
  readonly p50: number;
  readonly p95: number;
  readonly cpuAKey: number;
  readonly startCpu: number;
  readonly memoryMb: number;
}

/** A shorter one has no whole part of a generated recipe, in which to type. */
const LEAST_JSON = 60;

/** The file of a house that is opened, and its text; for the JSON server one of as many lines that says the same sort of thing. */
function fileFor(
  server: ServerUnderTest,
  house: House | undefined,
  round: number,
): { readonly server: ServerUnderTest; readonly text: string } {
  const at = round % REAL_RECIPES.length;
  const recipe = house?.textOf(at) ?? `${REAL_RECIPES[at]}\n`;
  const rootUri = house && pathToFileURL(house.path).href;
  const uri = house === undefined ? server.uri : pathToFileURL(house.pathOf(at)).href;
  if (server.name === 'quern') return { server: { ...server, uri, ...(rootUri && { rootUri }) }, text: recipe };
  const { text } = jsonCase(Math.max(LEAST_JSON, recipe.split('\n').length));
  return { server: { ...server, ...(rootUri && { rootUri }), uri: uri.replace(/\.quern$/, '.json') }, text };
}

/** Typing into steps and amounts, a key every 60 to 180 ms, at each of which all is asked that an editor asks. */
async function type(under: ServerUnderTest, house: House, keys: number, round: number): Promise<Typed> {
  const { server, text } = fileFor(under, house, round);
  const random = new Random(7 + round);
  const client = await Client.start(server, LIMIT_MS);
  try {
    await client.open(text);
    const start = client.cpuMs();
    const memoryMb = await client.privateMb();
    const times: number[] = [];
    const edits = keysIn(text, random);
    let cpu = 0;
    for (let i = 0; i < keys; i++) {
      await new Promise((resolve) => setTimeout(resolve, 60 + random.whole(0, 120)));
      const edit = edits.next().value;
      const before = client.cpuMs();
      const begun = performance.now();
      client.edit(edit);
      await client.findings();
      const took = performance.now() - begun;
      await askAll(client, server.uri, edit);
      // The first fifth warms up.
      if (i < keys / 5) continue;
      times.push(took);
      cpu += client.cpuMs() - before;
    }
    return {
      p50: quantile(times, 0.5) ?? Number.NaN,
      p95: quantile(times, 0.95) ?? Number.NaN,
      cpuAKey: cpu / times.length,
      startCpu: start,
      memoryMb,
    };
  } finally {
    await client.stop();
  }
}

/** What an editor asks after a key, findings apart; what a server has not is answered at once. */
async function askAll(client: Client, uri: string, { line, character }: Edit): Promise<void> {
  const textDocument = { uri };
  const place = { line, character };
  const range = { start: place, end: place };
  const asked = [
    ['textDocument/documentSymbol', { textDocument }],
    ['textDocument/semanticTokens/full', { textDocument }],
    ['textDocument/foldingRange', { textDocument }],
    ['textDocument/codeLens', { textDocument }],
    ['textDocument/documentLink', { textDocument }],
    ['textDocument/documentHighlight', { textDocument, position: place }],
    ['textDocument/codeAction', { textDocument, range, context: { diagnostics: [], triggerKind: 2 } }],
  ] as const;
  await Promise.all(asked.map(([method, params]) => client.ask(method, params).catch(() => undefined)));
}

/** A letter more in a word or a figure of the text, and taken back with the next key. */
function* keysIn(text: string, random: Random): Generator<Edit, never> {
  const rows = text.split('\n');
  const lines = rows.flatMap((row, line) => (/^\s+(?:do\s|\d)|"(?:food|grams)"/.test(row) ? [line] : []));
  for (;;) {
    const line = random.pick(lines);
    const row = rows[line] ?? '';
    const digits = [...row.matchAll(/\d/g)].map(({ index }) => index + 1);
    const letters = [...row.matchAll(/[a-z](?=[a-z])/g)].map(({ index }) => index + 1);
    const places = random.chance(0.5) && digits.length > 0 ? digits : letters;
    const character = places.length === 0 ? row.length : random.pick(places);
    const letter = /\d/.test(row.charAt(character - 1)) ? '5' : 'e';
    yield { line, character, length: 0, text: letter };
    yield { line, character, length: 1, text: '' };
  }
}

/** Milliseconds of all threads until the findings of one file are there. */
async function startCpu(under: ServerUnderTest, house: House | undefined): Promise<number> {
  const { server, text } = fileFor(under, house, 1);
  const figures: number[] = [];
  // With nothing kept there is one first start.
  for (let i = 0; i < (under.env === undefined ? 3 : 1); i++) {
    const client = await Client.start(server, LIMIT_MS);
    try {
      await client.open(text);
      figures.push(client.cpuMs());
    } finally {
      await client.stop();
    }
  }
  return median(figures) ?? Number.NaN;
}

async function indexMb(house: House): Promise<number | undefined> {
  const { server, text } = fileFor(QUERN, house, 2);
  const client = await Client.start(server, LIMIT_MS);
  try {
    await client.open(text);
    const before = await client.privateMb();
    await client.namesLike('cake');
    return (await client.privateMb()) - before;
  } finally {
    await client.stop();
  }
}

type Add = (
  what: string,
  anchor: string,
  figure: number | undefined,
  toReach?: number,
  beyond?: number,
  without?: string,
) => void;

function checkRows(
  { thousand, many }: { readonly thousand: House; readonly many: House },
  count: number,
  kept: string,
  add: Add,
): void {
  const node = commandMs(['-e', '0'], thousand.path);
  const check = (house: House, args: readonly string[]) => commandMs([CLI, 'check', ...args], house.path);
  const one = median([1, 2, 3].flatMap(() => check(thousand, ['--no-cache', thousand.pathOf(3)]) ?? []));
  if (node === undefined || one === undefined) return;
  const fifty = check(thousand, ['--no-cache', ...Array.from({ length: 50 }, (_, i) => thousand.pathOf(i * 7))]);
  const cold = check(thousand, ['--cache', join(kept, 'thousand')]);
  const warm = check(thousand, ['--cache', join(kept, 'thousand')]);
  writeFileSync(thousand.pathOf(5), `${thousand.textOf(5)}# ${kept}\n`);
  const changed = check(thousand, ['--cache', join(kept, 'thousand')]);
  const manyCold = check(many, ['--cache', join(kept, 'many')]);
  const manyWarm = check(many, ['--cache', join(kept, 'many')]);
  const over = (figure: number | undefined, of: number | undefined) =>
    figure !== undefined && of !== undefined ? figure / of : undefined;
  const name = count.toLocaleString('en');
  add('check of one file, CPU', 'node -e 0', over(one, node), 3.2, 2.5);
  add('check of 50, cold, CPU', 'one file', over(fifty, one), 3.5, 3);
  add('check of 1,000, cold, CPU', 'one file', over(cold, one), 20, 15, 'what is found is written down too');
  add('check of 1,000, warm: nothing changed', 'one file', over(warm, one), 1.5, 1.2);
  add('check of 1,000, warm: one file changed', 'one file', over(changed, one), 2.2, 1.5);
  add(`check of ${name}, warm`, 'one file', over(manyWarm, one), 9, 6);
  add(`check of ${name}, cold, CPU`, '1,000 cold', over(manyCold, cold), 6, 5);
}
