/**
 * Prints how printed sentences are read: `npm run sentences -- [FILE.tsv] [--list [SLOT]] [--open | --held-back]`.
 * Without a file, the sentences that come with the project. `--list` prints every sentence with a slot that is not right, and what is
 * missed (`-`) or said by nobody (`+`); `--write-misses` writes the list of them that the tests hold against.
 */
import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import './fresh-forms.ts';

const { readSentences, scoreSentence, sharesOf, SLOTS } = await import('../../tests/outside/sentences/score.ts');
const { readTable } = await import('../../tests/outside/lines/score.ts');

const args = process.argv.slice(2);
const HERE = resolve('tests/outside/sentences');
const list = args.indexOf('--list');
const asked = SLOTS.filter((slot) => slot === args[list + 1]);
const file = args.find((arg, at) => !arg.startsWith('--') && !(list >= 0 && at === list + 1 && asked.length > 0));
const scores = readSentences(readTable(file === undefined ? resolve(HERE, 'printed.tsv') : resolve(file)))
  .filter(({ hasReading }) => hasReading)
  .map(scoreSentence);

const line = (of: typeof scores): string => {
  const shares = sharesOf(of);
  const slots = SLOTS.map((slot) => {
    const { right, of: all } = shares[slot];
    return `${slot} ${all === 0 ? '-' : ((100 * right) / all).toFixed(1)} % (${right}/${all})`;
  });
  return `${of.length} sentences: ${slots.join(', ')}; all of it ${of.filter((s) => s.isRight).length}`;
};
console.log(line(scores));
const halves = [
  ['open', scores.filter((s) => s.printed.half === 'open')],
  ['held back', scores.filter((s) => s.printed.half === 'held back')],
] as const;
for (const [half, of] of halves) console.log(`${half}: ${line(of)}`);
const mended = scores.filter((s) => s.printed.mended);
if (mended.length > 0) console.log(`readings mended: ${line(mended)}`);

if (list >= 0) {
  const shown = args.includes('--open') ? halves[0][1] : args.includes('--held-back') ? halves[1][1] : scores;
  for (const { printed, slots } of shown) {
    const wrong = (asked.length > 0 ? asked : SLOTS).filter(
      (slot) => slots[slot].missed.length + slots[slot].extra.length > 0,
    );
    if (wrong.length === 0) continue;
    console.log(`\n${printed.sentence}`);
    for (const slot of wrong) {
      const { missed, extra } = slots[slot];
      console.log(`   ${slot}: ${[...missed.map((m) => `-${m}`), ...extra.map((e) => `+${e}`)].join(', ')}`);
    }
  }
}

if (args.includes('--write-misses'))
  writeFileSync(
    resolve(HERE, 'misses.txt'),
    `${scores
      .filter((s) => !s.isRight)
      .map((s) => s.printed.sentence)
      .join('\n')}\n`,
  );
