/**
 * Lists words that stand in the place of an order, a place or vessel, a time or a sign and are in no row of `server/data/prose`, by how
 * often: `npm run audit:prose -- PATH… [--most 40]`. A path is a recipe, a folder of them, or a table whose first column is a sentence.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import './fresh-forms.ts';

const { unknownWords } = await import('../src/prose/audit.ts');
const { sentenceIn } = await import('../src/notation/sentence.ts');
const { namesIn } = await import('../../tests/outside/sentences/score.ts');

const args = process.argv.slice(2);
const most = args.includes('--most') ? Number(args[args.indexOf('--most') + 1]) : 40;
const paths = args.filter((arg, at) => !arg.startsWith('--') && args[at - 1] !== '--most');

const filesIn = (path: string): readonly string[] =>
  statSync(path).isDirectory()
    ? readdirSync(path, { recursive: true, encoding: 'utf8' })
        .map((name) => join(path, name))
        .filter((name) => /\.(?:quern|tsv|txt)$/.test(name))
    : [path];

/** The steps of a recipe, or the first column of a table. */
function sentencesOf(file: string): readonly string[] {
  const lines = readFileSync(file, 'utf8').split(/\r?\n/);
  if (!file.endsWith('.quern')) return lines.map((line) => line.split('\t', 1)[0] ?? '');
  return lines.flatMap((line) => /^\s*do\s+(.*)$/.exec(line)?.[1] ?? []);
}

const counts = new Map<string, Map<string, { times: number; from: string }>>();
let sentences = 0;
for (const sentence of paths.flatMap(filesIn).flatMap(sentencesOf)) {
  sentences++;
  const { items } = sentenceIn(sentence);
  for (const { as, word } of unknownWords(items, namesIn(items))) {
    const words = counts.get(as) ?? new Map<string, { times: number; from: string }>();
    counts.set(as, words);
    const known = words.get(word);
    words.set(word, { times: (known?.times ?? 0) + 1, from: known?.from ?? sentence });
  }
}

console.log(`${sentences} sentences`);
for (const as of ['order', 'place', 'time', 'sign']) {
  const words = [...(counts.get(as) ?? [])].sort(([, a], [, b]) => b.times - a.times);
  console.log(`\n${as}: ${words.length} words in no row`);
  for (const [word, { times, from }] of words.slice(0, most))
    console.log(`  ${String(times).padStart(4)}  ${word.padEnd(18)} ${from.slice(0, 90)}`);
}
