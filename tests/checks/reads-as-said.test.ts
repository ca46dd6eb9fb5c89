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

const pie = (water: string): string =>
  `recipe Chicken and Leek Pie\npart filling\n  800 g chicken thighs, boned and diced\n  3 leeks, sliced\n  40 g plain flour\n  400 ml chicken stock\n  1 1/2 tsp salt\n  do Soften the leeks, add the chicken and flour, then the stock and salt. Simmer for 25 min until cooked through and cool completely.\npart crust as shortcrust\n  300 g plain flour\n  150 g butter\n  ${water} cold water\n  1 egg, beaten, to glaze\n  do Rub the butter into the flour and bind with the water. Chill for 40 min.\n  do Roll out, lay the pastry over the filling and trim. Brush with the egg and bake at 200 C for 40 min, until golden.\n`;
const ribbons = (eggs: string): string =>
  `recipe Pappardelle with Duck\npart sauce\n  4 duck legs\n  400 g tinned tomatoes\n  1 tsp salt\n  do Brown the duck legs, add the tomatoes and salt and simmer for 2 h until the meat falls from the bone.\npart pasta\n  400 g plain flour\n  ${eggs}\n  do Knead the flour and eggs for 10 min, rest for 30 min and roll out. Cut in ribbons.\n  do Boil the ribbons in 4 litres of salted water for 3 min, drain and toss with the sauce.\n`;
const toffees = (celsius: number): string =>
  `recipe Vanilla Caramels\n  300 g sugar\n  150 g glucose syrup\n  300 ml double cream\n  60 g butter\n  1 pinch salt\n  do Heat the cream with the butter and salt. Melt the sugar with the syrup until amber, 8 min, and pour in the cream.\n  do Put back over the heat and cook until it reaches ${celsius} C. Pour into a lined tin and leave for 3 h, until firm, then cut.\n`;
const fritters = (celsius: number): string =>
  `recipe Cauliflower Fritters\n  1 cauliflower, in florets\n  150 g plain flour\n  200 ml cold beer\n  1 tsp salt\n  1.5 l sunflower oil\n  do Whisk the flour, beer and salt. Pour the oil into a deep pan. Heat to ${celsius} C.\n  do Dip the florets and fry in batches for 4 min, until golden.\n`;
const pot = (time: string): string =>
  `recipe Mussels in Cider\n  1.5 kg mussels\n  200 ml dry cider\n  2 shallots, chopped\n  30 g butter\n  do Soften the shallots in the butter. Pour in the cider and boil for 1 min.\n  do Add the mussels, cover and steam for ${time}, until they open. Throw away any that stay shut.\n`;
const salad = (time: string): string =>
  `recipe Warm Lentil Salad\n  250 g green lentils\n  1 carrot, diced\n  2 tbsp olive oil\n  1 tbsp red wine vinegar\n  1/2 tsp salt\n  do Simmer the lentils and carrot in 1 litre of water for ${time}, until tender. Drain.\n  do Toss with the oil, vinegar and salt.\n`;
const legs = (fat: string): string =>
  `recipe Goose Leg Confit\n  4 goose legs (about 1.4 kg)\n  20 g salt\n  ${fat} goose fat\n  do Rub the legs with the salt, leave for 12 h in the fridge and rinse.\n  do Melt the fat, add the legs and cook at 120 C for 3 h, until tender and 90 C inside.\n`;
const churned = (makes: string): string =>
  `recipe Hazelnut Gelato\n  yield ${makes}\n  600 ml whole milk\n  200 ml double cream\n  150 g sugar\n  4 egg yolks\n  do Whisk the yolks and sugar, add the milk and cream and heat, stirring, to 82 C.\n  do Chill for 4 h, then churn for 30 min and freeze for 4 h.\n`;

test.each([
  ['a crust over its filling', 'dough-too-wet', pie('400 ml'), pie('75 ml')],
  ['a dough and its sauce, boiled in much water', 'unlike-its-name', ribbons('1 egg'), ribbons('4 eggs')],
  ['what was in the pot before', 'heat-out-of-range', toffees(98), toffees(121)],
  ['oil that is named before', 'heat-out-of-range', fritters(105), fritters(175)],
  ['shellfish that turns to rubber', 'time-out-of-range', pot('50 min'), pot('5 min')],
  ['pulses that are drained', 'time-out-of-range', salad('2 h 30 min'), salad('25 min')],
  ['fat that is to cover', 'out-of-proportion', legs('120 g'), legs('900 g')],
  ['an ice with its air', 'yield-mismatch', churned('3 litres'), churned('1.2 litres')],
])('%s', (_, code, slip, sound) => {
  expect(found(code, slip)).toBe(true);
  expect(found(code, sound)).toBe(false);
});
