/** What is found only where a title, a line or a sentence is read as it is meant: each with one like it that is sound. */
import { expect, test } from 'vitest';
import { onlyCheck, open } from '../support/harness.ts';

const found = (code: string, text: string): boolean => open(text, onlyCheck(code)).findings.open.length > 0;

const jam = (celsius: number): string =>
  `recipe Plum, Apple and Cinnamon Jam\n  1 kg plums, stoned\n  400 g apples, diced\n  1.2 kg sugar\n  1 lemon, juiced\n  do Simmer the plums and apples with the lemon juice for 20 min.\n  do Stir in the sugar and boil hard until the jam reaches ${celsius} C. Fill into hot jars.\n`;
const oven = (celsius: number): string =>
  `recipe Lemon Cheesecake\n  700 g cream cheese\n  200 g sugar\n  4 eggs\n  do Heat the oven to 180 C. Beat the cream cheese with the sugar and the eggs.\n  do Pour into a 23 cm springform tin. Lower the oven to ${celsius} C and bake for 55 min, until set.\n`;
const bird = (celsius: number): string =>
  `recipe Roast Chicken\n  1 whole chicken (about 2 kg), giblets removed\n  30 g butter\n  2 tsp salt\n  do Heat the oven to ${celsius} C. Pat the chicken dry and rub it with the butter and salt.\n  do Roast for 80 min, until the thickest part of the thigh reads 74 C.\n`;
const rice = (stock: string): string =>
  `recipe Risotto alla Zucca\n  ${stock} light chicken or vegetable stock\n  300 g carnaroli rice\n  400 g pumpkin, diced\n  1 onion, chopped\n  60 g butter\n  do Soften the onion in the butter, add the pumpkin and the rice and stir for 2 min.\n  do Add the hot stock a ladleful at a time, stirring, until the rice is tender.\n`;
const links = (salt: string): string =>
  `recipe Lamb Sausages\n  900 g lamb shoulder, cubed\n  200 g pork back fat, cubed\n  ${salt} fine salt\n  2 m hog casings, salted\n  do Soak the casings for 40 min and freeze the lamb and the fat for 40 min.\n  do Toss the meat and fat with the salt and mince through a 6 mm plate. Fill the casings.\n  do Chill on a rack for 12 h to dry the skins, then fry until the middle reads 72 C.\n`;
const cold = (time: string): string =>
  `recipe Coffee Panna Cotta\n  4 leaves (8 g) gelatine\n  600 ml double cream\n  100 ml espresso\n  80 g sugar\n  do Soak the gelatine in cold water for 5 min.\n  do Warm the cream, espresso and sugar, take off the heat and stir in the gelatine until melted.\n  do Pour into moulds, cover and chill for at least ${time}. Turn out and serve.\n`;
const loaf = (proves: string): string =>
  `recipe Milk Sandwich Loaf\n  500 g strong white flour\n  7 g dried yeast\n  9 g salt\n  310 g milk\n  do Mix all to a dough, knead for 10 min, cover and leave for 1 h, until doubled.\n  do Knock back, roll up tightly and lay it in the tin, seam down.\n${proves}  do Heat the oven to 200 C, brush with milk and bake for 32 min, until well browned.\n`;
const stew = (time: string): string =>
  `recipe Beef in Ale\n  1.2 kg beef shin, in large pieces\n  3 onions, sliced\n  500 ml ale\n  2 tsp salt\n  do Brown the beef, add the onions, salt and ale and bring to a simmer.\n  do Cover and cook in the oven at 150 C for ${time}, until the beef gives way to a spoon.\n`;
const bake = (dish: string): string =>
  `recipe Potato Gratin\n  pan ${dish}\n  1.5 kg potatoes\n  500 ml double cream\n  2 tsp salt\n  do Peel the potatoes and slice them thin. Bring the cream and salt to a simmer, add the potatoes and simmer for 5 min.\n  do Tip into the dish and press the potatoes under the cream. Bake at 160 C for 75 min, until a knife slips in.\n`;

test.each([
  ['a list that ends in the dish', 'heat-out-of-range', jam(84), jam(105)],
  ['an oven that is lowered', 'heat-out-of-range', oven(60), oven(160)],
  ['a whole bird, its giblets removed', 'bake-time-doubtful', bird(105), bird(200)],
  ['a dish of another language, and stock that is light', 'unlike-its-name', rice('150 ml'), rice('1.2 l')],
  ['salt of what is minced', 'too-salty', links('180 g'), links('18 g')],
  ['a time in the cold', 'step-forgotten', cold('5 min'), cold('5 h')],
  [
    'what lies seam down stays nowhere',
    'step-forgotten',
    loaf(''),
    loaf('  do Cover and leave to prove for 45 min, until puffy.\n'),
  ],
  ['until it gives way', 'time-out-of-range', stew('14 min'), stew('3 h')],
  [
    'what is pressed down stays in the dish',
    'pan-overfull',
    bake('rectangle 12 x 10 x 4 cm'),
    bake('rectangle 30 x 20 x 6 cm'),
  ],
])('%s', (_, code, slip, sound) => {
  expect(found(code, slip)).toBe(true);
  expect(open(sound).findings.open.filter(({ severity }) => severity === 'error' || severity === 'warning')).toEqual(
    [],
  );
});
