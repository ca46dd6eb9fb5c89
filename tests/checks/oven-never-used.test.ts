/** An oven that is lit for nothing, and ovens that something goes into in other words. Common practice, no source. */
import { expect, test } from 'vitest';
import { onlyCheck, open } from '../support/harness.ts';

const BATTER = '  200 g     plain flour\n  100 g     sugar\n  3         eggs\n  300 ml    milk\n';

test.each<[string, number]>([
  ['Heat the oven to 180 C and butter the tin. Whisk all and pour into the tin. Cool on a rack.', 1],
  ['Whisk all. Preheat the oven to 350 F. Divide between 12 cups. Leave for 5 min and turn out.', 1],
  ['Heat the oven to 180 C. Melt the sugar over a low heat on the stove. Whisk in the rest. Unmould and slice.', 1],
  ['Heat the oven to 180 C. Whisk all, pour into the tin and bake for 30 min.', 0],
  ['Heat the oven to 180 C. Whisk all, pour into the tin and give it 30 min in the oven.', 0],
  ['Heat the oven to 100 C. Whisk all, fry by the spoonful and keep warm in the oven.', 0],
  ['Heat the oven to 180 C. Whisk all, slide it in, shut the door and wait for 30 min.', 0],
  ['Heat the oven to 200 C. Whisk all and cook for 30 min until puffed.', 0],
  ['Whisk all and fry by the spoonful.', 0],
])('%s: %i', (method, found) => {
  const text = `recipe Pudding\n  yield   6 portions\n${BATTER}${method
    .split(/(?<=\.) /)
    .map((step) => `  do ${step}\n`)
    .join('')}`;
  expect(open(text, onlyCheck('oven-never-used')).findings.open.length).toBe(found);
});
