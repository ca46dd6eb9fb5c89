/**
 * What the checks of bookkeeping, method and safety say of recipes of all kinds: first forty that work, in which only what is eaten raw
 * and what gives no sign is told of, then some with one slip each. The recipes are invented; which findings are right is common
 * practice and the rules named in `tests/outside/safety/`.
 */
import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const FAMILIES: ReadonlySet<string> = new Set(['bookkeeping', 'method', 'safety']);

/** Codes in order, with the severity where it is not the check's own. */
const found = (text: string): string[] =>
  open(text)
    .findings.open.filter((f) => FAMILIES.has(f.check.family))
    .map((f) => (f.severity === f.check.severity ? f.code : `${f.code} ${f.severity}`));

describe('everyday recipes as a test kitchen writes them', () => {
  test.each<[string, string[]]>([
    [
      `recipe Bolognese
  yield   6 portions
  30 g  olive oil
  1  onion, chopped
  1  carrot, diced
  2 stalks celery, diced
  500 g  minced beef
  150 ml  red wine
  400 g  canned tomatoes
  1 tsp  fine salt
  do Soften the onion, carrot and celery in the oil for 10 min.
  do Add the beef and brown for 8 min.
  do Pour in the wine and reduce, then add the tomatoes and salt and simmer for 2 h.
`,
      [],
    ],
    [
      `recipe Carbonara
  yield   4 portions
  400 g  spaghetti
  150 g  guanciale, diced
  4 large  egg yolks
  80 g  pecorino, grated
  to taste  black pepper
  do Boil the spaghetti in salted water for 9 min.
  do Fry the guanciale until crisp.
  do Beat the yolks with the pecorino and pepper.
  do Drain the spaghetti, toss with the guanciale off the heat, and stir in the yolks.
`,
      ['raw-egg'],
    ],
    [
      `recipe Tiramisu
  yield   8 portions
  pan     rectangle 28 x 18 x 6 cm
  4 large  eggs, separated
  100 g  caster sugar
  500 g  mascarpone
  300 ml  espresso
  24  ladyfingers
  10 g  cocoa powder
  do Whisk the yolks with the sugar until pale and beat in the mascarpone.
  do Whisk the whites to soft peaks and fold in.
  do Dip the ladyfingers in the espresso and layer with the cream.
  do Chill at 4 C overnight and dust with the cocoa powder.
`,
      ['raw-egg'],
    ],
    [
      `recipe Hollandaise as butter sauce
  yield   4 portions
  3 large egg yolks
  20 g  water
  200 g unsalted butter, melted
  10 g  lemon juice
  do Whisk the yolks and water over simmering water until thick, about 5 min.
  do Whisk in the butter in a thin stream and season with the lemon juice.
`,
      [],
    ],
    [
      `recipe Chicken curry
  yield   4 portions
  600 g  chicken thighs, boneless, diced
  200 g  plain yoghurt
  2 tbsp garam masala
  1  onion, sliced
  30 g  ghee
  400 ml  coconut milk
  do Marinate the chicken in the yoghurt and garam masala at 4 C for 4 h.
  do Fry the onion in the ghee until brown.
  do Add the chicken and cook for 6 min, stirring.
  do Pour in the coconut milk and simmer for 20 min.
`,
      [],
    ],
    [
      `recipe Grilled steak
  yield   2 portions
  2  sirloin steaks
  10 g  olive oil
  to taste  fine salt
  do Rub the steaks with the oil and salt.
  do Grill for 3 min a side and rest for 5 min.
`,
      ['no-doneness-cue'],
    ],
    [
      `recipe Pan-fried salmon
  yield   2 portions
  2 fillets salmon
  10 g butter
  do Fry the salmon in the butter for 4 min a side until it flakes.
`,
      [],
    ],
    [
      `recipe Sushi bowl
  yield   2 portions
  200 g  sushi rice
  300 ml  water
  200 g  sashimi-grade tuna, sliced
  do Simmer the rice in the water for 12 min and rest for 10 min.
  do Lay the tuna on the rice.
`,
      [],
    ],
    [
      `recipe Beef tartare
  yield   2 portions
  300 g  beef fillet, finely chopped
  1  egg yolk
  10 g  capers
  do Mix the beef with the capers.
  do Top with the yolk and serve.
`,
      ['no-safe-temperature', 'raw-egg'],
    ],
    [
      `recipe Burgers
  yield   4 burgers
  600 g  ground beef
  4  burger buns
  to taste salt
  do Shape the beef in 4 patties and salt them.
  do Grill for 4 min a side, until the centre reads 71 C.
  do Toast the buns and fill.
`,
      [],
    ],
    [
      `recipe Fried chicken
  yield   4 portions
  1 kg  chicken drumsticks
  300 ml  buttermilk
  200 g  plain flour
  2 tsp  paprika
  1 l  sunflower oil
  do Soak the drumsticks in the buttermilk at 4 C for 8 h.
  do Mix the flour with the paprika and dredge the drumsticks.
  do Deep-fry in the oil at 170 C for 14 min until golden and the centre reads 75 C.
`,
      [],
    ],
    [
      `recipe Eggs Benedict
  yield   2 portions
  4  eggs
  2  English muffins
  4 slices  ham
  do Poach the eggs in barely simmering water for 3 min.
  do Toast the muffins and top with the ham and the eggs.
`,
      [],
    ],
    [
      `recipe Scrambled eggs
  yield   1 portion
  3  eggs
  10 g  butter
  do Beat the eggs.
  do Melt the butter, pour in the eggs and stir over a low heat until just set.
`,
      [],
    ],
    [
      `recipe Caesar salad
  yield   4 portions
  1  egg yolk
  2  anchovies
  1 clove  garlic
  150 ml  olive oil
  15 g  lemon juice
  2 heads  romaine lettuce
  do Pound the anchovies and garlic, whisk in the yolk and lemon juice, then the oil.
  do Toss the lettuce in the dressing.
`,
      ['raw-egg'],
    ],
    [
      `recipe Chicken stock as stock
  yield   2 l
  1.5 kg  chicken carcass
  3 l  water
  do Simmer the carcass in the water for 4 h.
  do Strain, cool over ice and chill at 4 C.
`,
      [],
    ],
    [
      `recipe Roast lamb
  yield   6 portions
  oven    180 C
  2 kg  leg of lamb
  4 cloves garlic
  do Stud the lamb with the garlic.
  do Roast for 90 min and rest for 20 min.
`,
      ['no-doneness-cue'],
    ],
    [
      `recipe Pulled pork
  yield   10 portions
  2.5 kg  pork shoulder
  30 g  fine salt
  do Rub the pork with the salt and chill at 4 C overnight.
  do Smoke at 110 C for 10 h, until the centre reads 93 C.
  do Rest for 1 h and pull.
`,
      [],
    ],
    [
      `recipe Crème brûlée as baked custard
  yield   6 pots
  oven    150 C
  pan     6 x round 9 x 4 cm
  500 g  double cream
  6 large  egg yolks
  80 g  caster sugar
  1  vanilla pod
  do Warm the cream with the vanilla pod to 80 C.
  do Whisk the yolks with the sugar and pour on the cream.
  do Bake in a bain-marie for 35 min until set with a wobble.
  do Cool for 30 min and chill at 4 C for 4 h.
`,
      [],
    ],
    [
      `recipe Cheesecake
  yield   12 slices
  pan     round 23 x 7 cm
part base
  200 g digestive biscuits, crushed
  100 g  butter, melted
  do Mix the biscuits with the butter and press in the pan.
part filling as cheese filling
  900 g  cream cheese
  250 g  caster sugar
  4 large eggs
  200 g  sour cream
  do Beat the cream cheese with the sugar, then the eggs and the sour cream.
part assembly
  do Pour the filling on the base and bake at 150 C for 60 min, until the centre reads 68 C.
  do Cool in the oven for 1 h, then at room temperature for 2 h, and chill at 4 C overnight.
`,
      [],
    ],
    [
      `recipe Lasagne
  yield   8 portions
  pan     rectangle 33 x 23 x 6 cm
part ragu
  30 g  olive oil
  500 g  minced beef
  700 g  passata
  do Brown the beef in the oil, add the passata and simmer for 40 min.
part white sauce as roux sauce
  60 g  butter
  60 g  plain flour
  800 ml  whole milk
  do Cook the flour in the butter for 2 min, whisk in the milk and simmer for 5 min.
part assembly
  250 g  lasagne sheets
  100 g  parmesan, grated
  do Layer the ragu, lasagne sheets and white sauce, and strew with the parmesan.
  do Bake at 190 C for 40 min until bubbling and brown.
`,
      [],
    ],
    [
      `recipe Vegetable soup
  yield   6 bowls
  500 g  leeks
  300 g  potatoes
  1 l  vegetable stock
  30 g  butter
  do Sweat the leeks in the butter for 10 min.
  do Add the potatoes and the stock, simmer for 25 min and blend.
`,
      [],
    ],
    [
      `recipe Pickled onions as quick pickle
  yield   1 jar
  300 g  red onions, sliced
  200 g  cider vinegar
  100 g  water
  20 g  caster sugar
  6 g  fine salt
  do Boil the vinegar, water, sugar and salt.
  do Pour over the onions in a clean jar, cool and chill at 4 C.
`,
      [],
    ],
    [
      `recipe Strawberry jam as jam
  yield   4 jars
  1 kg  strawberries
  800 g granulated sugar
  30 g  lemon juice
  do Boil the strawberries with the sugar and lemon juice until it reads 105 C.
  do Pour into sterilised jars, seal and leave to cool overnight.
`,
      [],
    ],
    [
      `recipe Pesto
  yield   250 g
  60 g  basil
  30 g  pine nuts
  1 clove  garlic
  50 g  parmesan, grated
  120 ml  olive oil
  do Blend the basil, pine nuts, garlic and parmesan with the oil.
  do Keep in the fridge for 3 d.
`,
      [],
    ],
    [
      `recipe Chocolate chip cookies as cookie
  yield   24 cookies
  225 g  unsalted butter, soft
  200 g  light brown sugar
  100 g  caster sugar
  2 large eggs
  300 g  plain flour
  1 tsp  baking soda
  1 tsp  fine salt
  300 g  dark chocolate, chopped
  do Cream the butter with the brown sugar and the caster sugar.
  do Beat in the eggs.
  do Fold in the flour, baking soda and salt, then the chocolate.
  do Scoop in 24 balls and chill at 4 C for 1 h.
  do Bake at 180 C for 11 min until gold at the rim.
  do Serve warm.
`,
      [],
    ],
    [
      `recipe Pancakes as pancake batter
  yield   12 pancakes
  250 g  plain flour
  2 large  eggs
  400 ml  whole milk
  30 g  butter
  do Whisk the flour with the eggs and milk, and stand for 30 min.
  do Melt a little of the butter, and cook spoonfuls of the batter for 2 min a side until brown.
  do Fry the rest in the rest of the butter.
`,
      [],
    ],
    [
      `recipe Banana bread
  yield   1 loaf
  pan     loaf 23 x 13 x 7 cm
  300 g  bananas, mashed
  120 g  butter, melted
  150 g  brown sugar
  2 large  eggs
  220 g  plain flour
  1 tsp  baking soda
  do Mix the bananas, butter, sugar and eggs.
  do Fold in the flour and baking soda and pour into the pan.
  do Bake at 175 C for 60 min until a skewer comes out clean.
  do Cool in the pan for 10 min, then on a rack.
`,
      [],
    ],
    [
      `recipe Dal
  yield   4 portions
  250 g  red lentils
  1 l  water
  1 tsp  turmeric
  30 g  ghee
  1 tsp  cumin seeds
  do Boil the lentils in the water with the turmeric for 25 min until soft.
  do Heat the ghee, sizzle the cumin seeds and pour over.
`,
      [],
    ],
    [
      `recipe Duck confit
  yield   4 portions
  4  duck legs
  40 g  fine salt
  800 g  duck fat
  do Rub the duck legs with the salt and chill at 4 C overnight.
  do Rinse and cover with the fat; cook in the oven at 120 C for 3 h until tender.
  do Cool in the fat and keep at 3 C for up to 14 d.
`,
      [],
    ],
    [
      `recipe Yorkshire puddings
  yield 12 puddings
part batter as popover batter
  140 g plain flour
  4 large eggs
  200 ml whole milk
  2 g fine salt
  40 g beef dripping
  do Whisk the flour, eggs, milk and salt and rest for 30 min.
  do Heat the dripping in the tin at 230 C until smoking.
  do Pour in the batter and bake for 20 min until puffed and gold.
`,
      [],
    ],
    [
      `recipe Confit duck legs
  yield 4 portions
  oven 120 C
  1.2 kg      duck legs
  30 g      coarse sea salt
  800 g     duck fat
  do Rub the duck legs with the salt and chill for 12 h.
  do Rinse the legs and cook them gently in the duck fat at 120 C for 3 h until very tender.
  do Roast at 200 C for 15 min until the skin is crisp.
`,
      [],
    ],
    [
      `recipe Confit duck legs as roast
  yield 4 portions
  1.2 kg      duck legs
  24 g      coarse sea salt
  800 g     duck fat
  do Rub the duck legs with the salt and chill for 12 h.
  do Rinse the legs, submerge in the duck fat, and roast in a 110 C oven for 4 h, until the centre reads 90 C.
`,
      [],
    ],
    [
      `recipe Ceviche
  yield   4 portions
  500 g  sea bass, diced
  200 g  lime juice
  1  red onion, sliced
  do Toss the sea bass in the lime juice and stand at 4 C for 20 min.
  do Fold in the onion and serve.
`,
      ['no-safe-temperature'],
    ],
    [
      `recipe Sous-vide chicken
  yield   2 portions
  2  chicken breasts
  do Vacuum-pack the chicken breasts and cook in a water bath at 60 C for 90 min, until the centre reads 60 C; hold for 35 min.
`,
      [],
    ],
    [
      `recipe Yoghurt
  yield   1 l
  1 l  whole milk
  60 g  live yoghurt
  do Heat the milk to 85 C, cool to 43 C and whisk in the yoghurt.
  do Keep at 43 C for 6 h, then chill at 4 C.
`,
      [],
    ],
    [
      `recipe Sourdough as lean bread
  yield   1 loaf of 850 g
  450 g  bread flour
  320 g  water
  100 g  sourdough starter
  9 g  fine salt
  do Mix the flour, water and starter and stand for 1 h.
  do Add the salt and bulk ferment at 24 C for 5 h.
  do Shape and prove at 4 C overnight.
  do Bake at 240 C for 40 min, until the centre reads 97 C.
`,
      [],
    ],
    [
      `recipe Fried rice
  yield   2 portions
  400 g  cooked rice
  2  eggs
  100 g  peas
  20 g  oil
  do Scramble the eggs in the oil.
  do Add the rice and peas and fry for 5 min.
`,
      ['no-doneness-cue'],
    ],
    [
      `recipe Rice salad
  yield   6 portions
  300 g  basmati rice
  600 ml  water
  100 g  cucumber
  do Simmer the rice in the water for 12 min.
  do Spread on a tray and leave on the counter for 6 h.
  do Mix in the cucumber.
`,
      ['cooling-too-slow'],
    ],
    [
      `recipe Gravlax as cure
  yield   10 portions
  1 kg  salmon
  50 g  fine salt
  50 g  caster sugar
  20 g  dill
  do Rub the salmon with the salt, sugar and dill and cure at 4 C for 2 d.
`,
      ['no-safe-temperature'],
    ],
    [
      `recipe Terrine
  yield   10 slices
  pan     loaf 25 x 10 x 8 cm
  600 g  minced pork
  300 g  chicken livers
  200 g  streaky bacon
  16 g  fine salt
  2.2 g  curing salt no 1
  do Mix the pork, livers, fine salt and curing salt.
  do Line the pan with the bacon, fill and cover.
  do Bake in a bain-marie at 150 C for 75 min, until the centre reads 74 C.
  do Press, cool for 1 h and chill at 4 C overnight.
`,
      [],
    ],
    [
      `recipe Lemon meringue pie
  yield   8 slices
  pan     round 23 x 4 cm
part crust as shortcrust
  200 g  plain flour
  100 g  butter
  40 g  water
  do Rub the butter into the flour and bind with the water.
  do Chill at 4 C for 1 h, roll out, line the pan and freeze for 20 min.
  do Bake blind at 190 C for 15 min, then bare for 8 min until gold.
part curd
  150 g  lemon juice
  200 g  caster sugar
  4 large  egg yolks
  30 g  cornflour
  250 g  water
  do Boil the lemon juice, sugar, water and cornflour until thick.
  do Beat in the yolks and cook for 2 min.
part meringue as meringue
  4 large  egg whites
  220 g  caster sugar
  do Whisk the whites to soft peaks and whisk in the sugar.
part assembly
  do Fill the crust with the curd and top with the meringue.
  do Bake at 180 C for 15 min until brown.
`,
      [],
    ],
    [
      `recipe Ice cream without cooking
  yield   1 l
  3 large  eggs
  100 g  caster sugar
  400 ml  double cream
  do Whisk the eggs with the sugar, fold in the cream whipped and freeze for 6 h.
`,
      ['raw-egg'],
    ],
    [
      `recipe Smoothie
  yield   2 glasses
  1  banana
  200 g  frozen raspberries
  300 ml  whole milk
  1  egg
  do Blend everything.
`,
      ['raw-egg'],
    ],
    [
      `recipe Royal icing
  yield   300 g
  1 large  egg white
  250 g  icing sugar
  do Beat the egg white with the icing sugar until stiff.`,
      ['raw-egg'],
    ],
  ])('%s', (text, want) => {
    expect(found(text)).toEqual(want);
  });
});

describe('one slip each', () => {
  test.each<[string, string[]]>([
    [
      `recipe Turkey
  3 kg  turkey
  do Roast the turkey at 180 C for 3 h until the juices run clear.
`,
      ['no-safe-temperature info'],
    ],
    [
      `recipe Burgers
  600 g  ground beef
  do Shape the beef in 4 patties and grill for 3 min a side.
`,
      ['no-safe-temperature', 'no-doneness-cue'],
    ],
    [
      `recipe Chicken skewers
  600 g  chicken breasts, diced
  20 g  olive oil
  do Toss the chicken in the oil and grill for 8 min.
`,
      ['no-safe-temperature', 'no-doneness-cue'],
    ],
    [
      `recipe Meatballs
  500 g  minced pork
  1  egg
  50 g  breadcrumbs
  do Mix all the ingredients and shape in 20 balls.
  do Bake at 200 C for 15 min until brown.
`,
      ['no-safe-temperature info'],
    ],
    [
      `recipe Frittata
  6  eggs
  100 ml  milk
  do Beat the eggs with the milk.
  do Bake at 180 C for 15 min.
`,
      ['no-safe-temperature warning', 'no-doneness-cue'],
    ],
    [
      `recipe Ragu
  500 g  minced beef
  400 g  canned tomatoes
  do Brown the beef, add the tomatoes and simmer for 1 h.
  do Leave to cool overnight on the stove.
`,
      ['cooling-too-slow'],
    ],
    [
      `recipe Rice pudding
  1 l  whole milk
  120 g  pudding rice
  do Simmer the rice in the milk for 40 min.
  do Cool at room temperature for 4 h.
`,
      ['cooling-too-slow'],
    ],
    [
      `recipe Soup
  500 g  carrots
  1 l  chicken stock
  do Simmer the carrots in the stock for 20 min.
  do Hold at 45 C for service.
`,
      ['held-too-warm'],
    ],
    [
      `recipe Potato salad
  1 kg  potatoes
  200 g  mayonnaise
  do Boil the potatoes for 20 min.
  do Mix with the mayonnaise and keep at 12 C.
`,
      ['held-too-warm'],
    ],
    [
      `recipe Quiche
  4  eggs
  400 g  double cream
  do Beat the eggs with the cream and bake at 160 C until the centre reads 55 C.
`,
      ['undercooked'],
    ],
    [
      `recipe Cookie dough ice cream
  200 g  plain flour
  100 g  butter
  100 g  sugar
  do Beat the butter with the sugar and flour.
  do Shape in small balls and freeze.
  do Serve in a bowl.
`,
      ['raw-flour'],
    ],
    [
      `recipe Green beans
  1 kg  green beans
  20 g  salt
  do Pack the beans in sterilised jars with the salt, seal and process in boiling water for 40 min.
`,
      ['low-acid-preserve'],
    ],
    [
      `recipe Confit garlic
  200 g  garlic, peeled
  400 ml  olive oil
  do Cook the garlic in the oil at 95 C for 2 h.
  do Pour into jars and store in the pantry.
`,
      ['garlic-in-oil'],
    ],
    [
      `recipe Chili oil with garlic
  6 cloves  garlic
  500 ml  rapeseed oil
  do Warm the oil with the garlic and leave to infuse for 2 weeks.
`,
      ['garlic-in-oil'],
    ],
    [
      `recipe Mousse
  200 g  dark chocolate
  6  eggs, separated
  do Melt the chocolate over simmering water.
  do Beat in the yolks off the heat.
  do Whisk the whites and fold in; chill for 3 h.
`,
      ['raw-egg'],
    ],
    [
      `recipe Bratwurst
  1 kg  pork shoulder, minced
  18 g  salt
  10 g  pink curing salt
  do Mix the pork with the [salt] and the [pink curing salt].
`,
      ['curing-salt-dose'],
    ],
    [
      `recipe Aioli
  2 cloves  garlic
  1  egg
  250 ml  olive oil
  do Blend the garlic with the egg, then stream in the oil.
`,
      ['raw-egg'],
    ],
    [
      `recipe Chicken
  1.8 kg  chicken
  do Roast the chicken at 120 C for 4 h, until the thigh reads 76 C.
`,
      ['undercooked info'],
    ],
    [
      `recipe Chicken
  1.8 kg  chicken
  do Roast the chicken at 200 C for 80 min, until the thigh reads 165 C.
`,
      ['implausible-temperature'],
    ],
    [
      `recipe Stew
  1 kg  stewing beef
  500 ml  water
  do Simmer the beef in the water for 2 h.
  do Cool to 70 F within 5 h.
`,
      ['cooling-too-slow'],
    ],
    [
      `recipe Tuna
  400 g  fresh tuna
  do Slice the tuna thinly.
`,
      [],
    ],
    [
      `recipe Eggnog
  4  eggs
  500 ml  whole milk
  80 g  sugar
  do Whisk the eggs with the sugar and the milk and chill.
`,
      ['raw-egg'],
    ],
    [
      `recipe Beef
  2 kg  beef
  do Roast the beef at 180 C until the centre reads 50 C.
`,
      ['undercooked'],
    ],
    [
      `recipe Pasta
  200 g  pasta
  do Boil the pasta for 9 min.
  do Keep warm at 40 C.
`,
      ['held-too-warm'],
    ],
    [
      `recipe Mustard chicken
  800 g  chicken thighs
  30 g  mustard
  do Rub the thighs with the mustard.
  do Bake at 200 C for 35 min.
  do Rest for 5 min and serve.`,
      ['no-safe-temperature', 'no-doneness-cue'],
    ],
  ])('%s', (text, want) => {
    expect(found(text)).toEqual(want);
  });
});
