/**
 * Lays out the modules that a bundler split for packing: what several programs need stands once, behind what the programs before them need;
 * and says of each program where its parts lie.
 * Refuses to know how they are packed.
 */
import { basename } from 'node:path';
import { crc32 } from 'node:zlib';
import type { Metafile } from 'esbuild';
import type { Place, Program } from '../src/host/program.ts';
import { AROUND, entryText, sharedText } from './linked-text.ts';

/** A program as it is asked for. */
interface Asked {
  readonly name: string;
  readonly hasTables: boolean;
  readonly isGuest: boolean;
}

/** What starts a program is told where its parts lie, but for how they are packed. */
type Linked = Omit<Program, 'file' | 'packedBytes'>;

/** A module as the bundler wrote it, minified. */
interface Output {
  readonly path: string;
  readonly text: string;
}

/** What is to be packed, a group for each program with what none before it has; and the programs, in their order. */
export function linkedPrograms(
  asked: readonly Asked[],
  outputs: readonly Output[],
  { outputs: known }: Metafile,
  tables: string,
): { readonly groups: readonly Buffer[]; readonly programs: readonly Linked[] } {
  const texts = new Map(outputs.map(({ path, text }) => [basename(path), text]));
  const order = [...texts.keys()];
  const given = (name: string): string => `QUERN_${order.indexOf(name)}`;
  const importsOf = (name: string): readonly string[] => [
    ...new Set(
      (known[`dist/${name}`]?.imports ?? [])
        .filter(({ external, kind }) => external !== true && kind === 'import-statement')
        .map(({ path }) => basename(path)),
    ),
  ];
  const moduleOf = (name: string) => ({
    text: texts.get(name) ?? '',
    from: importsOf(name).map((from) => `./${from}`),
  });
  const givenFrom = (from: string): string => given(basename(from));

  const groups: string[] = [];
  const places = new Map<string, Place>();
  let bytes = 0;
  const sum = crc32([...texts.values(), tables].join('\0'));
  const head = `${sum}\0`;
  const programs = asked.map(({ name, hasTables, isGuest }, at): Linked => {
    const group: string[] = [];
    const place = (key: string, text: () => string): Place => {
      const old = places.get(key);
      if (old !== undefined) return old;
      const made = text();
      const from = bytes;
      bytes += Buffer.byteLength(made);
      group.push(made);
      const own: Place = [from, bytes];
      places.set(key, own);
      return own;
    };
    if (at === 0) place('head', () => head);
    const entry = `${name}.js`;
    const shared = needed(entry, importsOf).flatMap((module) => [
      AROUND.before(given(module)),
      place(module, () => sharedText(moduleOf(module), givenFrom)),
      AROUND.behind,
    ]);
    const tablesAt = hasTables ? place('tables', () => tables) : undefined;
    const text = [AROUND.start, ...shared, place(entry, () => entryText(moduleOf(entry), givenFrom)), AROUND.end];
    groups.push(group.join(''));
    return {
      unpackedBytes: bytes,
      head,
      text: joined(text),
      ...(tablesAt !== undefined && { tables: tablesAt }),
      sum,
      ...(isGuest && { isGuest }),
    };
  });
  return { groups: groups.map((group) => Buffer.from(group)), programs };
}

/** What a module needs, in an order in which each stands behind all that it needs itself. */
function needed(of: string, importsOf: (name: string) => readonly string[]): readonly string[] {
  const order = new Set<string>();
  const visit = (name: string): void => {
    for (const each of importsOf(name)) {
      visit(each);
      order.add(each);
    }
  };
  visit(of);
  return [...order];
}

/** Words that stand behind each other as one. */
function joined(parts: readonly (string | Place)[]): readonly (string | Place)[] {
  const all: (string | Place)[] = [];
  for (const part of parts) {
    const last = all.at(-1);
    if (typeof part === 'string' && typeof last === 'string') all[all.length - 1] = last + part;
    else all.push(part);
  }
  return all;
}
