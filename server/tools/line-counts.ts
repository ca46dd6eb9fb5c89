/**
 * Prints how printed lines of ingredient lists are read: `npm run lines -- [FILE.tsv] [--list] [--measures us]`.
 * Without a file, the lines that come with the project. `--list` prints every line that is not read right;
 * `--write-misses` writes the list of them that the tests hold against.
 */
import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import './tables-as-text.ts';

const { bookOf, countsOf, groupsOf, readPrintedLines, readTable, scoreLine, tableHere } = await import(
  '../../tests/outside/lines/score.ts'
);

const args = process.argv.slice(2);
const house = args.includes('--measures') ? args[args.indexOf('--measures') + 1] : undefined;
const file = args.find((arg, at) => !arg.startsWith('--') && args[at - 1] !== '--measures');
const measures = house === 'metric' || house === 'imperial' ? house : 'us';
const scores = readPrintedLines(readTable(file === undefined ? tableHere('printed.tsv') : resolve(file)), measures).map(
  scoreLine,
);

console.log(countsOf(scores));
const mended = scores.filter((s) => s.printed.mended);
if (mended.length > 0) console.log(`of these mended readings: ${countsOf(mended)}`);
const right = scores.filter((s) => s.verdict === 'right');
const close = right.filter((s) => s.close).length;
const which = right.filter((s) => s.cause !== '').length;
console.log(
  `right: the likeliest weight in range ${close}; asking which food of that name, or refused as they should be ${which}`,
);
const choices = right.filter((s) => s.others !== undefined);
console.log(
  `right, with alternatives: ${choices.filter((s) => s.others).length} of ${choices.length} keep every one of them`,
);
if (args.includes('--list'))
  for (const { printed } of choices.filter((s) => s.others === false))
    console.log(`  an alternative is lost: ${printed.line}`);
const said = scores.filter((s) => s.verdict === 'refused' || s.verdict === 'asked');
console.log(`refused or asked: ${said.filter((s) => s.writes).length} of ${said.length} say what to write`);
console.log('\nby source');
for (const [source, of] of groupsOf(scores, bookOf)) console.log(`  ${source}: ${countsOf(of)}`);
console.log('\nby cause');
const wrong = scores.filter((s) => s.verdict !== 'right');
for (const [cause, of] of groupsOf(wrong, (s) => `${s.verdict}: ${s.cause}`)) {
  console.log(`  ${of.length}  ${cause}`);
  for (const { printed, made } of args.includes('--list') ? of : of.slice(0, 3))
    console.log(
      `        ${printed.line}  →  ${made}  [${printed.foods.map((f) => f.join('|')).join(' + ')} ${printed.grams === undefined ? '' : `${printed.grams.low}-${printed.grams.high} g`}]`,
    );
}

if (args.includes('--write-misses'))
  writeFileSync(tableHere('misses.txt'), `${wrong.map((s) => s.printed.line).join('\n')}\n`);
