/**
 * Prints what the food tables hold and what a reviewer would object to; exits 1 when there is an objection.
 * Run it as `node server/tools/audit-foods.ts`.
 */
import './tables-as-text.ts';

const { auditFoods } = await import('../src/food/audit.ts');

const audit = auditFoods();
console.log(
  `foods ${audit.foods} (${audit.fromUsda} by NDB number), names ${audit.names}, ambiguous words ${audit.ambiguousWords}`,
);
console.log(`household measures ${audit.measures}, pieces ${audit.pieces}, trims ${audit.trims}`);
console.log('\nclass            foods  unweighed  missing');
for (const { class: name, foods, unweighed, missing } of audit.classes) {
  const gaps = Object.entries(missing).map(([component, count]) => `${component} ${count}`);
  console.log(`${name.padEnd(16)} ${String(foods).padStart(5)}  ${String(unweighed).padStart(9)}  ${gaps.join(', ')}`);
}
console.log(audit.objections.length === 0 ? '\nno objections' : `\n${audit.objections.length} objections`);
for (const words of audit.objections) console.log(`  ${words}`);
process.exitCode = audit.objections.length === 0 ? 0 : 1;
