/**
 * One reader of what a cook writes: outside `notation`, `prose` and the binder nobody reads the words of a sentence, and no check holds a
 * list of words or a pattern over prose. What stands apart is named with its reason, and a name that is not needed any more fails.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const SRC = 'server/src';
const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
/** The text of a file without its remarks: they may say what they like. */
const codeOf = (file: string): string =>
  readFileSync(join(SRC, file), 'utf8')
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/^\s*\/\/.*$/gm, '');
const isIn = (...folders: readonly string[]): ((file: string) => boolean) => {
  const heads = folders.map((folder) => `${folder}/`);
  return (file) => heads.some((head) => file.startsWith(head));
};

/** The binder: it finds the names of foods and parts in a sentence, and their portions. */
const BINDER: ReadonlySet<string> = new Set([
  'recipe/names/mentions.ts',
  'recipe/names/names-as-verbs.ts',
  'recipe/names/portions.ts',
  'recipe/journey/foods-said.ts',
]);
const readsLines = isIn('notation', 'prose', 'measure', 'food');

/** Files that stand apart, with the reason; the rule fails for one that keeps it. */
function holds(
  breaks: (file: string) => boolean,
  apart: Readonly<Record<string, string>>,
  among: readonly string[],
): void {
  const breaking = among.filter(breaks);
  expect(breaking.filter((file) => !(file in apart))).toEqual([]);
  expect(
    Object.keys(apart).filter((file) => !breaking.includes(file)),
    'stands apart without need',
  ).toEqual([]);
}

/** A word of a sentence can be asked for its letters only by one who knows that it is a word. */
const ASKS_WORDS = /\bkind\s*(?:===|!==|:)\s*'word'|\bcase 'word'|\bWordNode\b/;

test('nobody but the reader and the binder reads the words of a sentence', () => {
  holds(
    (file) => ASKS_WORDS.test(codeOf(file)),
    {},
    files.filter((file) => !readsLines(file) && !BINDER.has(file)),
  );
});

/** What says nothing of a word: types, closed unions, functions of a whole text or of places in it, figures with the names that they are printed of, and how words are inflected. */
const OPEN_TO_ALL = [
  'event',
  'topics',
  'things',
  'misled',
  'counts',
  'counted-pieces',
  'rounds',
  'verb-named',
  'place-named',
  'gear-named',
  'dish-named',
  'alike',
  'expected',
  'thickness',
  'sized-vessels',
  'sour-limit',
  'printed-energy',
  'printed-pieces',
  'printed-shares',
  'printed-times',
  'made-forms',
];
/** Who hands sentences to the reader, and its events on. */
const HANDS_ON = isIn('recipe/journey');

test('nobody else looks words up in the lexicon, or reads sentences anew', () => {
  holds(
    (file) =>
      [...codeOf(file).matchAll(/^(?:import|export) (?!type\b)[^;]*? from '(?:\.\.?\/)+prose\/([\w-]+)\.ts'/gm)].some(
        ([, module = '']) => !OPEN_TO_ALL.includes(module),
      ),
    {},
    files.filter((file) => !readsLines(file) && !BINDER.has(file) && !HANDS_ON(file)),
  );
});

const checks = files.filter(isIn('checks'));
/** A pattern with letters in it that are no class of letters: `/yolk|white/`, `new RegExp(…)`. */
const PATTERN =
  /(?:^|[=(,:&|!?[]|=>|return)\s*\/(?![*/ ])(?:\\.|\[(?:\\.|[^\]\n])*\]|[^/\n\\[])+\/[dgimsuvy]*(?=[.,;)\s\]])|\bnew RegExp\(/gm;
const hasWord = (pattern: string): boolean =>
  pattern.startsWith('new RegExp') ||
  /[a-z]{2}/i.test(
    pattern
      .replace(/\/[dgimsuvy]*$/, '')
      .replace(/\\p\{\w+\}|\\[a-z]/gi, '')
      .replace(/^(?:=>|return)/, '')
      .replace(/\[(?:\\.|[^\]])*\]/g, ''),
  );

test('no check has a pattern over prose', () => {
  holds(
    (file) => [...codeOf(file).matchAll(PATTERN)].some(([pattern]) => hasWord(pattern.trim())),
    {
      'checks/reading/unfinished-line.ts': 'the end of a line of the list',
      'checks/reading/unknown-food.ts': 'a name in the list',
      'checks/reading/unknown-part.ts': 'a name in the list',
      'checks/formula/gel-wont-set.ts': 'a name in the list',
      'checks/safety/curing-salt-dose.ts': 'a name in the list',
      'checks/safety/curing-salts.ts': 'a name in the list',
      'checks/safety/claims.ts': 'what titles, tags and notes claim, made of `data/claims.json`',
    },
    checks,
  );
});

/** Strings in a set, map or list that is not declared to be of a closed union: words. */
const LISTS = [
  /(?:Set|Map)<string\b[^=;]*=\s*new (?:Set|Map)(?:<[^(]*>)?\(\s*\[\s*\[?\s*'/g,
  /const \w+\s*=\s*new (?:Set|Map)\(\s*\[\s*\[?\s*'/g,
  /\[\s*'[^\]]*'\s*,?\s*\]\s*\.(?:includes|some|indexOf)\(/g,
  /(?:readonly )?string\[\]\s*=\s*\[\s*'/g,
];

test('no check has a list of words', () => {
  holds((file) => LISTS.some((list) => codeOf(file).match(list) !== null), {}, checks);
});

test('the lists that steps were searched for are gone', () => {
  expect(['recipe/step-words.ts', 'recipe/verbs.ts'].filter((file) => existsSync(join(SRC, file)))).toEqual([]);
  expect(existsSync('server/data/verbs.json')).toBe(false);
});

test.each([
  ['const A = /yolk|white/i.test(name);', true],
  ['text.replace(/^the /i, "")', true],
  ['/^\\s*/.exec(line)', false],
  ['/[.;,:]/.test(mark)', false],
  ['const half = a / b / c;', false],
  ["new RegExp(words, 'i')", true],
])('`%s` is a pattern over words: %s', (code, is) => {
  expect([...` ${code}`.matchAll(PATTERN)].some(([pattern]) => hasWord(pattern.trim()))).toBe(is);
});
