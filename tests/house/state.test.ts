/**
 * Nothing that a module holds changes once it is loaded: what changes belongs to a session, a store, or an object that is passed on.
 * The layout is the formatter's: what begins in the first column is the module's own.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { CHECKS } from '../../server/src/checks/index.ts';
import { deed, type Question } from '../../server/src/recipe/journey/deeds.ts';
import { open } from '../support/harness.ts';

const SRC = resolve('server/src');
const modules = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'))
  .map((file) => ({ file, text: readFileSync(join(SRC, file), 'utf8') }));

/** What is filled as the modules are loaded, by a function that only they call (below): the questions that steps are asked. */
const FILLED_AT_LOAD = ['recipe/journey/deeds.ts: ASKED.push('];

const CHANGES = 'set|add|delete|clear|push|pop|shift|unshift|splice|sort|reverse|fill|copyWithin|forget|put'
  .split('|')
  .map((name) => `\\.${name}\\(`)
  .join('|');
/** `LIST.push(`, `TABLE.row = `, `BY_NAME[word] ??= `, `COUNT.of++`. */
const writesTo = (name: string): RegExp =>
  new RegExp(
    `(?<![\\w.#])${name}(?:${CHANGES}|(?:\\.\\w+|\\[[^\\]\\n]*\\])+ ?(?:(?:[-+*/%|&^]|\\*\\*|\\?\\?|\\|\\||&&|<<|>>)?=(?![=>])|\\+\\+|--))`,
    'g',
  );

/** Statements of the module itself, which run as it is loaded. */
const RUNS_AT_LOAD = /^(?:for|if|while|try|switch) /;

/** The line in the first column that what stands at a place belongs to. */
function ownerAt(text: string, at: number): string {
  const above = text.slice(0, text.indexOf('\n', at)).split('\n');
  return above.findLast((line) => /^[^\s})\]]/.test(line)) ?? '';
}

/** What functions of a module write to of that which it holds; what hangs on an object goes with it (`notation/kept.ts`). */
function changedLater({ file, text }: (typeof modules)[number]): string[] {
  const held = [...text.matchAll(/^(?:export )?const (\w+)\b(?![^=\n]* = keptOn[<(])/gm)].map(
    (match) => match[1] ?? '',
  );
  return held.flatMap((name) =>
    [...text.matchAll(writesTo(name))]
      .filter(({ index }) => {
        const owner = ownerAt(text, index);
        return !RUNS_AT_LOAD.test(owner) && !owner.startsWith(name);
      })
      .map(([write]) => `${file}: ${write}`),
  );
}

test('no module has a variable', () => {
  const variables = modules.flatMap(({ file, text }) =>
    [...text.matchAll(/^(?:export )?(?:let|var) (\w+)/gm)].map((match) => `${file}: ${match[1]}`),
  );
  expect(variables).toEqual([]);
});

test('no function changes what its module holds', () => {
  expect([...new Set(modules.flatMap(changedLater))]).toEqual(FILLED_AT_LOAD);
});

test('what changes is seen in every way to write it', () => {
  const changed = (text: string) => changedLater({ file: 'a.ts', text });
  expect(changed('const A = [];\nexport function add(): void {\n  A.push(1);\n}\n')).toHaveLength(1);
  expect(changed('const A = new Map();\nexport const add = (a: string) => A.set(a, 1);\n')).toHaveLength(1);
  expect(changed('const A = { n: 0 };\nfunction add(): void {\n  A.n++;\n}\n')).toHaveLength(1);
  expect(
    changed('const A: Record<string, number> = {};\nfunction add(a: string): void {\n  A[a] ??= 1;\n}\n'),
  ).toHaveLength(1);
  expect(changed('const A = new Map();\nfor (const a of B) {\n  A.set(a, 1);\n}\n')).toEqual([]);
  expect(changed('const A = keptOn<B, C>();\nfunction add(b: B): void {\n  A.set(b, 1);\n}\n')).toEqual([]);
  expect(changed('const A = { n: 0 };\nconst is = (a: string) => A.n === 1 || A.n <= 2;\n')).toEqual([]);
});

test('no question is made after the checks are loaded', () => {
  const placeOf = ({ bank, bit }: Question) => bank * 30 + Math.log2(bit);
  const before = placeOf(deed(() => false));
  for (const { examples } of CHECKS) for (const text of examples.good) void open(text).findings;
  expect(placeOf(deed(() => false))).toBe(before + 1);
});
