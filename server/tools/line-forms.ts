/**
 * Prints which forms of a line are not read right or go wrong when they are used: `npm run lines:forms`.
 * `--write-open` writes the list of them that the tests leave out.
 */
import { writeFileSync } from 'node:fs';
import './tables-as-text.ts';

const { countsOf, readPrintedLines, readTable, scoreLine, tableHere } = await import(
  '../../tests/outside/lines/score.ts'
);
const { usesGoneWrong } = await import('../../tests/outside/lines/uses.ts');

const lines = readPrintedLines(readTable(tableHere('forms.tsv')));
const scores = lines.map(scoreLine);
console.log(countsOf(scores));
const open: string[] = [];
for (const score of scores) {
  const { printed, verdict, cause, made } = score;
  const reading = verdict === 'right' ? [] : [`${verdict}, ${cause}: ${made}`];
  const wrong = [...reading, ...(printed.note === 'refuse' ? [] : usesGoneWrong(printed))];
  if (wrong.length === 0) continue;
  open.push(printed.line);
  console.log(`${printed.line}  [${printed.form}]\n${wrong.map((words) => `    ${words}`).join('\n')}`);
}
console.log(`${lines.length - open.length} of ${lines.length} right in every use`);
if (process.argv.includes('--write-open')) writeFileSync(tableHere('forms-open.txt'), `${open.join('\n')}\n`);
