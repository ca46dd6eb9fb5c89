/**
 * Prints how the checks do on published recipes: what they raise on sound ones, and how many faults made in them they find.
 * Lists every miss; exits 1 when there is one. Run it as `npm run outside`.
 */
import './tables-as-text.ts';

const { gravest, KINDS_COVERED, RECIPES } = await import('../../tests/outside/faults/corpus.ts');
const { FAULTS } = await import('../../tests/outside/faults/faults.ts');
const { judge, miss } = await import('../../tests/outside/faults/judge.ts');

const raised = RECIPES.flatMap(({ file, snapshot }) => gravest(snapshot).map((finding) => ({ file, finding })));
const errors = raised.filter(({ finding }) => finding.severity === 'error').length;
const judged = FAULTS.map(judge);
const misses = judged.flatMap((j) => miss(j) ?? []);
const codes = new Set(FAULTS.map((f) => f.code)).size;

console.log(
  `${RECIPES.length} recipes over ${KINDS_COVERED.length} kinds: ${errors} errors, ${raised.length - errors} warnings; ` +
    `${FAULTS.length} faults over ${codes} codes: ${judged.length - misses.length} found by the right code`,
);
for (const { file, finding } of raised)
  console.log(`  ${file}: ${finding.severity} ${finding.code}: ${finding.said.message}`);
for (const words of misses) console.log(`  missed: ${words}`);
process.exitCode = errors + misses.length === 0 ? 0 : 1;
