/** Room: what a yield says of all of it or of one, and what of a pot goes on into a tin. */
import { expect, test } from 'vitest';
import { onlyCheck, open } from '../support/harness.ts';

const count = (code: string, text: string): number => open(text, onlyCheck(code)).findings.open.length;

test.each([
  ['6 servings, about 2 litres', 0],
  ['6 servings (2 litres)', 1],
  ['8 bowls, 250 ml', 0],
  ['6 servings, about 9 litres', 1],
  ['8 bowls, 250 ml each', 0],
  ['8 bowls, 2 litres each', 1],
])('the yield %s of 2 litres of soup: %i', (makes, found) => {
  const text = `recipe Soup\n  yield ${makes}\n  1.5 l vegetable stock\n  600 g potatoes\n  do Simmer the potatoes in the stock for 15 min until soft.\n`;
  expect(count('pieces-misfit', text)).toBe(found);
});

const terrine = (steps: string, pan = '1.2 l'): string =>
  `recipe Terrine\n  yield 8 portions\n  pan ${pan}\npart meat\n  1 kg chicken thighs\n  2 onions\n  4 carrots\n  as needed water\n${steps}part jelly\n  300 ml chicken stock\n  5 sheets gelatine\n  do Heat the stock to 80 C and melt the gelatine in it.\npart all\n  do Layer the meat and the jelly in the tin. Chill at 4 C overnight.\n`;

test.each([
  ['  do Simmer the thighs with the onions, carrots and water for 1 h. Lift out the thighs and shred.\n', '1.2 l', 0],
  ['  do Simmer the thighs with the onions, carrots and water for 1 h. Lift out the onions and carrots.\n', '1.2 l', 0],
  ['  do Simmer the thighs with the onions, carrots and water for 1 h. Lift out the thighs and shred.\n', '500 ml', 1],
  ['  do Mince the thighs with the onions and carrots and simmer in the water for 1 h.\n', '1.2 l', 1],
])('what is lifted out leaves the rest behind: %s in %s: %i', (steps, pan, found) => {
  expect(count('pan-overfull', terrine(steps, pan))).toBe(found);
});

test.each([
  ['9 in pie dish', 1.6, 1],
  ['9 in deep pie dish', 1.6, 0],
  ['deep 9 in pie dish', 3.2, 1],
])('what is heaped under a crust may stand over the brim: %s, %f kg: %i', (pan, kg, found) => {
  const text = `recipe Apple pie\n  yield 8 slices\n  pan ${pan}\n  ${kg} kg apples, sliced\n  150 g caster sugar\n  400 g shortcrust pastry\n  do Line the dish with half the pastry, heap in the apples and sugar and cover with the rest of the pastry.\n  do Bake at 200 C for 50 min until golden.\n`;
  expect(
    open(text, onlyCheck('pan-overfull')).findings.open.filter(({ severity }) => severity === 'warning').length,
  ).toBe(found);
});

/** Tins that cakes and loaves of that weight are usually baked in, and those of half their size. */
test.each([
  ['two 20 cm round sandwich tins', 0],
  ['two 10 cm round sandwich tins', 1],
  ['2 lb loaf tin', 0],
  ['1 lb loaf tin', 1],
  ['round 20 x 7 cm', 0],
  ['square 15 x 4 cm', 1],
])('225 g each of four of a sponge in %s: %i', (pan, found) => {
  const text = `recipe Victoria sponge\n  yield 8 slices\n  pan ${pan}\n  225 g butter\n  225 g caster sugar\n  4 large eggs\n  225 g self-raising flour\n  do Cream the butter and sugar, beat in the eggs and fold in the flour.\n  do Bake at 180 C for 30 min, until springy.\n`;
  const loud = open(text, onlyCheck('pan-overfull')).findings.open.filter(({ severity }) => severity === 'warning');
  expect(loud).toHaveLength(found);
});

test.each([
  ['2 lb loaf tin', 0],
  ['1 lb loaf tin', 1],
  ['rectangle 33 x 23 x 5 cm', 0],
  ['round 15 x 5 cm', 1],
])('a kilo of dough of no kind in %s: %i', (pan, found) => {
  const text = `recipe Slab\n  yield 12 pieces\n  pan ${pan}\n  550 g strong white flour\n  400 g water\n  40 ml olive oil\n  7 g instant yeast\n  11 g salt\n  do Mix all, tip into the tin and leave for 2 h, until puffy.\n  do Bake at 220 C for 25 min, until golden.\n`;
  const loud = open(text, onlyCheck('pan-overfull')).findings.open.filter(({ severity }) => severity === 'warning');
  expect(loud).toHaveLength(found);
});

test.each([
  ['Cut 6 by 8 into 48.', '48 squares', 0],
  ['Cut 4 by 6 into 48.', '48 squares', 1],
  ['Cut into a 4 x 6 grid.', '48 squares', 0],
  ['Cut into 2 by 3 cm pieces.', '48 squares', 0],
  ['Roll up, cut into 12 and bake at 180 C for 20 min.', '24 rolls', 1],
  ['Roll up, cut into 12 and bake at 180 C for 20 min.', '12 rolls', 0],
  ['Halve, roll up both, cut each into 12 and bake at 180 C for 20 min.', '24 rolls', 0],
  ['Roll up, cut into 12 and bake at 180 C for 20 min.', '6 portions', 0],
  ['Cut the butter into 12 and dot over. Bake at 180 C for 20 min.', '24 rolls', 0],
  ['Divide into 3, roll each to a rope and braid.', '1 large braid', 0],
  ['Roll out 1.5 cm thick, cut into 8 cm rings and fry at 180 C.', '60 doughnuts', 1],
  ['Roll out 1.5 cm thick, cut into 8 cm rings and fry at 180 C.', '12 doughnuts', 0],
  ['Pat out 2.5 cm thick and cut with a 6 cm cutter.', '14 scones', 0],
  ['Roll out 1 cm thick and cut out 16 rounds of 7 cm.', '16 rounds', 0],
  ['Pat out 2.5 cm thick and cut with a 16 cm cutter.', '14 scones', 1],
  ['Roll out to a 30 cm round 1 cm thick and cut into 8 wedges.', '8 wedges', 0],
])('%s of %s: %i', (step, makes, found) => {
  const text = `recipe Pieces\n  yield ${makes}\n  500 g plain flour\n  300 ml milk\n  100 g butter\n  2 large eggs\n  do Mix the flour, milk, eggs and 80 g of the butter to a dough.\n  do ${step}\n  do Melt the rest of the butter and brush it on.\n`;
  expect(count('pieces-misfit', text) + count('too-thick', text)).toBe(found);
});

test.each([
  ['Divide into 24 pieces.', 'Dip each pretzel for 20 s.', 1],
  ['Divide into 10 pieces.', 'Dip each pretzel for 20 s.', 0],
  ['Divide into 24 pieces.', 'Divide into 10 bowls.', 0],
])('of parts, the one whose pieces they are is the one that shapes any: %s %s: %i', (shape, other, found) => {
  const text = `recipe Pretzels\n  yield 10 pretzels\npart dough\n  500 g bread flour\n  280 g water\n  5 g instant yeast\n  10 g salt\n  do Knead for 10 min and rest for 30 min.\n  do ${shape}\npart bath\n  1 l water\n  20 g baking soda\n  do Boil the water with the soda.\n  do ${other}\npart all\n  1 tbsp coarse salt\n  do Sprinkle with the salt. Bake at 220 C for 15 min until brown.\n`;
  expect(count('pieces-misfit', text)).toBe(found);
});
