/** Lye goes into the water: water that is poured on it boils up (US OSHA and NIOSH on sodium hydroxide; from memory). */
import { expect, test } from 'vitest';
import { onlyCheck, open } from '../../support/harness.ts';

test.each([
  ['Put the lye in a steel bowl. Pour the cold water on it, and stir until clear.', 1],
  ['Pour the water over the lye and stir.', 1],
  ['Pour the water into a glass bowl and sprinkle in the lye.', 0],
  ['Sprinkle the lye into the water, never the other way round.', 0],
  ['Dissolve the lye in the water.', 0],
  ['Never pour the water on the lye. Stir the lye into the water.', 0],
])('%s: %i', (step, found) => {
  const text = `recipe Pretzels\npart dough\n  500 g bread flour\n  280 g water\n  5 g instant yeast\n  do Knead all for 10 min. Shape into 10 pretzels.\npart bath\n  40 g food-grade sodium hydroxide (lye)\n  1 l water\n  do ${step}\n  do Dip the pretzels for 20 s and bake at 220 C for 15 min until brown.\n`;
  expect(open(text, onlyCheck('burn-or-burst')).findings.open).toHaveLength(found);
});
