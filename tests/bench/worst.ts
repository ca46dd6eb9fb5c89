/** Measures the texts and folders that cost most, at growing sizes up to the limits, and how their cost grows. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { Client, NoAnswer } from './client.ts';
import { checkFolder } from './folder.ts';
import type { Figure } from './measure.ts';
import { QUERN } from './servers.ts';
import { LONG_LINES, PATTERNS, type Pattern } from './worst-patterns.ts';
import { SHAPES, type Shape } from './worst-shapes.ts';

/** What is asked of a text, in order. */
export const OPERATIONS = [
  'open',
  'edit',
  'hover',
  'complete',
  'symbols',
  'colours',
  'actions',
  'references',
  'format',
  'scale',
] as const;
export type Operation = (typeof OPERATIONS)[number];

export interface Growth {
  /** Milliseconds at the limit. */
  readonly atMost: Figure;
  /** The power of the size by which it grows over the last doublings; undefined where it is too little to be told. */
  readonly exponent: number | undefined;
}

export interface WorstText {
  readonly name: string;
  readonly most: number;
  readonly growth: Readonly<Record<Operation, Growth>>;
}

export interface WorstFolder {
  readonly name: string;
  readonly most: number;
  readonly check: Growth;
}

/** Shares of the limit at which a text is measured. */
const SHARES = [1 / 8, 1 / 4, 1 / 2, 1];
/** Less is the clock's and the compiler's. */
const LEAST_MS = 8;

export async function measureWorst(limitMs: number, say: (words: string) => void): Promise<readonly WorstText[]> {
  const texts: WorstText[] = [];
  for (const pattern of [...PATTERNS, ...LONG_LINES]) {
    say(`Worst texts: ${pattern.name}`);
    texts.push(await measurePattern(pattern, limitMs));
  }
  return texts;
}

async function measurePattern(pattern: Pattern, limitMs: number): Promise<WorstText> {
  const sizes = SHARES.map((share) => Math.floor(pattern.most * share));
  const times = new Map<Operation, Figure[]>(OPERATIONS.map((operation) => [operation, []]));
  let client = await Client.start(QUERN, limitMs);
  try {
    // The smallest is asked twice: once to compile what is run.
    for (const [i, size] of [sizes[0] ?? 1, ...sizes].entries()) {
      const uri = `untitled:worst-${i}.quern`;
      for (const [operation, run] of operations(client, uri, pattern.text(size))) {
        const before = client.workedMs();
        let took: Figure;
        try {
          await run();
          took = client.workedMs() - before;
        } catch (error) {
          if (!(error instanceof NoAnswer)) throw error;
          took = 'no answer';
          await client.stop();
          client = await Client.start(QUERN, limitMs);
          times.get(operation)?.push(took);
          break;
        }
        if (i > 0) times.get(operation)?.push(took);
      }
      client.tell('textDocument/didClose', { textDocument: { uri } });
    }
  } finally {
    await client.stop();
  }
  const growth = Object.fromEntries(
    OPERATIONS.map((operation) => [operation, growthOf(sizes, times.get(operation) ?? [])]),
  ) as Record<Operation, Growth>;
  return { name: pattern.name, most: pattern.most, growth };
}

/** What is asked of a text, near its middle where a place is asked for. */
function operations(client: Client, uri: string, text: string): readonly [Operation, () => Promise<unknown>][] {
  const lines = text.split('\n');
  const line = Math.floor(lines.length / 2);
  const textDocument = { uri };
  const position = { line, character: Math.min(12, lines[line]?.length ?? 0) };
  const range = { start: { line: 0, character: 0 }, end: { line: lines.length, character: 0 } };
  const pull = () => client.ask('textDocument/diagnostic', { textDocument });
  return [
    [
      'open',
      () => {
        client.openBeside(uri, text);
        return pull();
      },
    ],
    [
      'edit',
      () => {
        const end = { line, character: lines[line]?.length ?? 0 };
        const contentChanges = [{ range: { start: end, end }, text: 'e' }];
        client.tell('textDocument/didChange', { textDocument: { uri, version: 2 }, contentChanges });
        return pull();
      },
    ],
    ['hover', () => client.ask('textDocument/hover', { textDocument, position })],
    ['complete', () => client.ask('textDocument/completion', { textDocument, position })],
    ['symbols', () => client.ask('textDocument/documentSymbol', { textDocument })],
    ['colours', () => client.ask('textDocument/semanticTokens/full', { textDocument })],
    ['actions', () => client.ask('textDocument/codeAction', { textDocument, range, context: { diagnostics: [] } })],
    [
      'references',
      () => client.ask('textDocument/references', { textDocument, position, context: { includeDeclaration: true } }),
    ],
    [
      'format',
      () => client.ask('textDocument/formatting', { textDocument, options: { tabSize: 2, insertSpaces: true } }),
    ],
    ['scale', () => client.ask('quern/scale', { uri, to: 'by 2' })],
  ];
}

/** The slope of the logarithms over the sizes whose time says something. */
function growthOf(sizes: readonly number[], times: readonly Figure[]): Growth {
  const points = sizes.flatMap((size, i) => {
    const ms = times[i];
    return typeof ms === 'number' && ms >= LEAST_MS ? [{ x: Math.log(size), y: Math.log(ms) }] : [];
  });
  const atMost = times[sizes.length - 1] ?? 'no answer';
  if (points.length < 2) return { atMost, exponent: undefined };
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
  const [x, y] = [mean(points.map((p) => p.x)), mean(points.map((p) => p.y))];
  const covariance = mean(points.map((p) => (p.x - x) * (p.y - y)));
  return { atMost, exponent: covariance / mean(points.map((p) => (p.x - x) ** 2)) };
}

/** Folders that `quern check` is run over. */
export async function measureShapes(limitMs: number, say: (words: string) => void): Promise<readonly WorstFolder[]> {
  const folders: WorstFolder[] = [];
  for (const shape of SHAPES) {
    say(`Worst folders: ${shape.name}`);
    const sizes = SHARES.map((share) => Math.floor(shape.most * share));
    const times: Figure[] = [];
    for (const size of sizes) times.push(await checkShape(shape, size, limitMs));
    folders.push({ name: shape.name, most: shape.most, check: growthOf(sizes, times) });
  }
  return folders;
}

async function checkShape(shape: Shape, size: number, limitMs: number): Promise<Figure> {
  const path = mkdtempSync(join(tmpdir(), 'quern-worst-'));
  const remove = () => rmSync(path, { recursive: true, force: true });
  process.on('exit', remove);
  try {
    for (const [name, text] of Object.entries(shape.files(size))) {
      mkdirSync(dirname(join(path, name)), { recursive: true });
      writeFileSync(join(path, name), text);
    }
    const { processorS } = await checkFolder({ path, recipes: size, remove }, limitMs);
    return processorS === 'no answer' ? processorS : 1000 * processorS;
  } finally {
    remove();
    process.off('exit', remove);
  }
}
