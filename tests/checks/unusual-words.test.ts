/**
 * Whole recipes in words that no other test has: those that work keep the peace but for what is listed, and in each of the others the
 * danger is found. The recipes are invented; which findings are right is common practice and the rules named in `tests/outside/safety/`.
 */
import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const found = (text: string): string[] => open(text).findings.open.map((f) => `${f.code} ${f.severity}`);

describe('what works, in unusual words', () => {
  test.each<[string, string, string[]]>([
    [
      'Hot chocolate mix',
      `recipe Hot chocolate mix
  yield   10 cups
  300 g     dried milk powder
  100 g     cocoa powder
  200 g     caster sugar
  do Mix the milk powder, cocoa and sugar, and store in a jar in the cupboard for 6 months.
`,
      [],
    ],
    [
      'Jerky in the cupboard',
      `recipe Jerky
  yield   20 strips
  1 kg      beef topside, sliced
  100 ml    soy sauce
  do Marinate the beef in the soy sauce in the fridge overnight.
  do Heat the beef in the oven at 135 C until it reads 71 C, then dry at 65 C for 6 h.
  do Store in an airtight jar in the cupboard for 2 weeks.
`,
      [],
    ],
    [
      'Fruit cake in the cupboard',
      `recipe Fruit cake
  yield   1 cake
  oven 150 C
  225 g     plain flour
  225 g     butter
  225 g     dark brown sugar
  4 large   eggs
  800 g     mixed dried fruit
  do Cream the butter and sugar, beat in the eggs, fold in the flour and fruit.
  do Bake for 3 h until a skewer comes out clean. Store in the cupboard for 2 months.
`,
      ['unknown-kind hint'],
    ],
    [
      'Onion chutney in the cupboard',
      `recipe Onion chutney
  yield   4 jars
  1 kg      onions
  300 ml    white wine vinegar
  200 g     light brown sugar
  do Simmer the onions in the vinegar with the sugar for 1 h.
  do Fill into sterilised jars, seal, and leave in a dark cupboard for 4 weeks.
`,
      ['unknown-kind hint'],
    ],
    [
      'Granola on the shelf',
      `recipe Granola
  yield   1 jar
  oven 150 C
  300 g     rolled oats
  100 g     honey
  50 ml     sunflower oil
  100 g     almonds
  1 egg white
  do Stir the oats, honey, oil, almonds and egg white together and bake for 35 min until golden and crisp.
  do Store in an airtight jar on the shelf for 1 month.
`,
      [],
    ],
    [
      'Pork and cabbage jiaozi',
      `recipe Pork and cabbage jiaozi
  yield 50 dumplings
part wrappers
  300 g plain flour
  160 g just-boiled water
  do Stir the water into the flour, knead for 10 min and rest for 1 h.
part filling
  400 g pork mince
  250 g napa cabbage, finely chopped
  5 g fine salt
  3 spring onions, chopped
  20 g ginger, grated
  2 tbsp soy sauce
  1 tbsp Shaoxing wine
  1 tbsp sesame oil
  do Salt the cabbage, leave for 20 min and squeeze it dry.
  do Stir the mince with the soy sauce, wine, sesame oil, ginger and spring onions, then fold in the cabbage.
part cooking
  2 tbsp vegetable oil
  120 ml water
  do Roll the wrappers out, fill and pleat.
  do Fry in the oil for 2 min until the bottoms are golden, add the water, cover and steam for 8 min until cooked through.
`,
      [],
    ],
    [
      'Green tomato chutney',
      `recipe Green tomato chutney
  yield 6 jars
  1.5 kg green tomatoes, chopped
  500 g onions, chopped
  500 g cooking apples, peeled and chopped
  300 g sultanas
  500 g light brown sugar
  600 ml malt vinegar
  15 g fine salt
  20 g fresh ginger, grated
  2 tsp mustard seeds
  do Put everything in a preserving pan and bring slowly to the boil, stirring until the sugar has dissolved.
  do Simmer for 1 h 30 min, until a spoon drawn through leaves a channel.
  do Ladle into hot sterilised jars, seal and mature in a cupboard for 6 weeks.
`,
      [],
    ],
    [
      'Rough puff pastry as puff pastry',
      `recipe Rough puff pastry as puff pastry
  yield 850 g
  350 g plain flour
  5 g fine salt
  300 g butter, cold and diced
  170 g ice-cold water
  do Toss the butter through the flour and salt. Add the water and bring together in a rough mass.
  do Roll out, fold in three and turn four times, chilling for 30 min after every second turn.
  do Chill for 1 h before use.
`,
      [],
    ],
    [
      'Boston baked beans',
      `recipe Boston baked beans
  yield 8 servings
  1 lb dried navy beans
  1/2 lb salt pork, scored
  1 onion
  1/2 cup molasses
  1/4 cup brown sugar
  2 tsp dry mustard
  1 tsp salt
  as needed water
  do Soak the beans in plenty of cold water overnight; drain.
  do Cover with fresh water and simmer for 45 min, until the skins burst when blown upon. Drain, keeping the liquid.
  do Put the onion and half the salt pork in a bean pot, add the beans, and bury the rest of the pork on top.
  do Mix the molasses, brown sugar, mustard and salt with 1 cup of the bean liquid, pour over and add liquid to cover.
  do Cover and bake at 250 F for 7 h, uncovering for the last hour so that the pork crisps.
`,
      [],
    ],
    [
      'No-knead overnight bread as lean bread',
      `recipe No-knead overnight bread as lean bread
  yield 1 loaf
  430 g bread flour
  345 g water
  1 g instant yeast
  8 g salt
  do Stir everything together, cover and leave at room temperature for 14 h.
  do Fold, shape and prove for 1 h 30 min.
  do Bake in a preheated lidded pot at 230 C for 30 min, then lid off for 15 min until mahogany.
`,
      [],
    ],
    [
      'Bagels in percentages',
      `recipe Bagels in percentages
  yield 10 bagels
part dough as lean bread
  800 g bread flour
  55 % water
  2 % fine salt
  0.6 % instant yeast
  2 % malt syrup
  do Knead everything for 12 min to a stiff, smooth dough. Rest for 20 min.
  do Divide into 10, shape into rings and chill at 4 C overnight.
part boiling
  3 l water
  30 g honey
  20 g sesame seeds
  do Bring the water to the boil with the honey. Boil the bagels for 45 s a side, drain and dip in the sesame seeds.
  do Bake at 230 C for 18-20 min until golden brown.
`,
      ['unused-part info'],
    ],
    [
      'Candied orange peel',
      `recipe Candied orange peel
  yield 300 g
  4 oranges, peel only
  400 g granulated sugar
  400 ml water
  100 g caster sugar
  do Cut the peel in strips, cover with cold water, boil for 5 min and drain; do this three times.
  do Simmer the peel in the granulated sugar and the water for 1 h, until clear.
  do Dry on a rack overnight and toss in the caster sugar.
`,
      [],
    ],
    [
      'Sauerkraut with caraway as lacto-ferment',
      `recipe Sauerkraut with caraway as lacto-ferment
  yield 1.8 kg
  2 kg white cabbage, shredded
  2 % fine salt
  5 g caraway seeds
  do Massage the salt into the cabbage until it weeps, mix in the caraway and pack tightly into a crock, under its own brine.
  do Ferment at 18 C for 3 weeks, then keep somewhere cool.
`,
      [],
    ],
    [
      'Ricotta',
      `recipe Ricotta
  yield 400 g
  2 l whole milk
  250 ml double cream
  1 tsp salt
  60 ml lemon juice
  do Heat the milk, cream and salt to 90 C. Stir in the lemon juice and stand off the heat for 15 min.
  do Ladle into muslin, drain for 1 h and chill. Eat within 4 d.
`,
      [],
    ],
    [
      'Paneer',
      `recipe Paneer
  yield 350 g
  2 l whole milk
  4 tbsp lemon juice
  1 tsp salt
  do Bring the milk to the boil, stir in the lemon juice and take off the heat until it curdles.
  do Strain through cloth, rinse, mix in the salt and press under a weight for 2 h. Chill.
`,
      [],
    ],
    [
      'Thai green curry',
      `recipe Thai green curry
  yield 4 portions
  50 g green curry paste
  400 ml coconut milk
  500 g chicken thigh fillets, sliced
  150 g green beans, halved
  1 aubergine, diced
  1 tbsp fish sauce
  2 tsp palm sugar
  4 lime leaves
  1 handful Thai basil
  do Fry the curry paste in the thick top of the coconut milk for 3 min, until the oil splits.
  do Add the chicken, the rest of the coconut milk, the lime leaves and the aubergine and simmer for 10 min.
  do Add the green beans and simmer for 5 min more, until the chicken is cooked through and 74 C inside.
  do Season with the fish sauce and palm sugar and stir in the basil.
`,
      ['out-of-order hint'],
    ],
    [
      'Chana masala',
      `recipe Chana masala
  yield 6 portions
  300 g dried chickpeas
  1.5 l water
  3 tbsp sunflower oil
  2 onions, finely chopped
  4 cloves garlic, crushed
  20 g ginger, grated
  2 green chillies, slit
  2 tsp ground coriander
  1 tsp ground cumin
  1/2 tsp turmeric
  400 g chopped tomatoes
  1 tsp garam masala
  8 g salt
  do Soak the chickpeas in plenty of cold water for 12 h and drain.
  do Boil in the 1.5 l water for 1 h until soft; do not drain.
  do Fry the onions in the oil until brown, add the garlic, ginger and chillies, then the coriander, cumin and turmeric. Add the tomatoes and cook down for 10 min.
  do Stir in the chickpeas with their liquid, the salt and garam masala, and simmer for 20 min.
`,
      [],
    ],
    [
      'Scotch eggs',
      `recipe Scotch eggs
  yield 6
  6 eggs
  500 g sausage meat
  1 tbsp chopped sage
  60 g plain flour
  2 eggs, beaten
  120 g dried breadcrumbs
  1 l sunflower oil
  do Boil the 6 eggs for 7 min, cool in iced water and peel.
  do Mix the sausage meat with the sage and wrap round each egg.
  do Roll in the flour, the beaten eggs and the breadcrumbs, and deep-fry at 160 C for 9 min until the sausage meat reads 74 C.
`,
      [],
    ],
    [
      'Cornish pasties',
      `recipe Cornish pasties
  yield 6 pasties
part pastry as shortcrust
  500 g strong white flour
  120 g lard
  125 g butter
  5 g salt
  175 g cold water
  do Rub the lard and butter into the flour and salt, mix in the water, knead lightly and chill for 1 h.
part filling
  450 g stewing beef, cut small
  450 g potatoes, diced
  250 g swede, diced
  200 g onions, chopped
  to taste salt and pepper
  do Toss the filling together with plenty of seasoning.
part assembly
  1 egg, beaten
  do Roll out the pastry, cut 6 rounds, fill and crimp, and brush with the egg.
  do Bake at 180 C for 50-55 min until deep golden.
`,
      [],
    ],
    [
      'Osso buco as braise',
      `recipe Osso buco as braise
  yield 4 portions
  4 slices = 1.2 kg veal shin
  40 g plain flour
  50 g butter
  1 onion, finely chopped
  1 carrot, diced
  1 stick celery, diced
  200 ml white wine
  400 ml veal stock
  200 g chopped tomatoes
  1 lemon, zested
  1 clove garlic
  15 g parsley
  do Dust the veal with the flour and brown in the butter. Add the onion, carrot and celery and soften.
  do Pour in the wine, then the stock and tomatoes, cover and braise at 160 C for 2 h until the meat leaves the bone.
  do Chop the zest with the garlic and parsley and scatter over.
`,
      [],
    ],
    [
      'Garlic confit for tonight',
      `recipe Garlic confit for tonight
  yield 8 portions
  3 heads garlic
  300 ml olive oil
  do Cook the garlic in the oil at 110 C for 45 min until soft.
  do Set aside in the oil until you serve.
`,
      [],
    ],
    [
      'Chilli crisp kept cold',
      `recipe Chilli crisp kept cold
  yield 1 jar
  300 ml groundnut oil
  60 g shallots, sliced
  40 g garlic, sliced
  40 g chilli flakes
  5 g salt
  do Fry the shallots and garlic slowly in the oil until golden, and strain the hot oil over the chilli flakes and salt.
  do Stir the shallots and garlic back in, spoon into a jar, and keep in the fridge for up to 4 d.
`,
      [],
    ],
    [
      'Aglio e olio',
      `recipe Aglio e olio
  yield 2 portions
  200 g spaghetti
  60 ml olive oil
  4 cloves garlic, sliced
  1/2 tsp chilli flakes
  10 g parsley
  do Boil the spaghetti in salted water for 9 min. Keep a cup of the pasta water.
  do Warm the garlic and chilli flakes in the oil; keep the oil warm while the pasta cooks.
  do Toss the spaghetti in the oil with the parsley and a splash of the pasta water.
`,
      [],
    ],
    [
      'Dry cure bacon by per cent as cure',
      `recipe Dry cure bacon by per cent as cure
  yield 1.8 kg
  2 kg pork belly
  2.5 % salt
  0.25 % Prague powder no 1
  1 % sugar
  do Mix the salt, Prague powder and sugar, rub over the pork belly, bag and cure in the fridge for 8 d.
  do Rinse, dry overnight in the fridge and smoke at 80 C until the centre reads 66 C.
`,
      [],
    ],
    [
      'Rolls each',
      `recipe Rolls each
  yield 12 rolls
part dough as enriched bread
  500 g bread flour
  250 g milk
  60 g butter
  1 egg
  9 g salt
  7 g instant yeast
  do Knead everything, prove at 24 C for 2 h, shape in 12 and bake at 200 C for 15 min until golden.
trial 2026-01-02
  weighed 64 g out of the oven
`,
      [],
    ],
    [
      'Apple pie',
      `recipe Apple pie
  yield 8 slices
part crust as shortcrust
  350 g plain flour
  180 g butter
  70 g water
  do Rub the butter into the flour, bind with the water and chill for 1 h.
part filling
  1.2 kg apples, peeled and cored from 1.5 kg
  120 g sugar
  20 g cornflour
  do Toss together.
part assembly
  1 egg, beaten
  do Roll out the crust, line a pie dish, chill for 30 min, fill with the filling, cover, brush with the egg and bake at 190 C for 55 min until golden.
trial 2026-01-02
  weighed 1.75 kg out of the oven
`,
      [],
    ],
    [
      'Rice pudding baked',
      `recipe Rice pudding baked
  yield 6 portions
  120 g pudding rice
  1.2 l whole milk
  60 g sugar
  20 g butter
  do Stir together, dot with the butter and bake at 150 C for 2 h until golden.
trial 2026-01-02
  weighed 1.1 kg out of the oven
`,
      [],
    ],
    [
      'Slow tomatoes',
      `recipe Slow tomatoes
  yield 1 tray
  2 kg tomatoes, halved
  40 g olive oil
  10 g salt
  do Toss the tomatoes with the oil and salt and dry in the oven at 100 C for 6 h until shrivelled.
trial 2026-01-02
  weighed 480 g out of the oven
`,
      [],
    ],
    [
      'Pulled pork',
      `recipe Pulled pork
  yield 10 portions
  3 kg pork shoulder
  60 g salt
  do Rub with the salt and roast at 120 C for 10 h until the centre reads 94 C.
trial 2026-01-02
  weighed 1.7 kg out of the oven
`,
      ['undercooked info'],
    ],
    [
      'Pavlova with cream after',
      `recipe Pavlova with cream after
  yield 8 portions
part meringue as meringue
  180 g egg whites
  350 g caster sugar
  do Whisk the whites with the sugar until stiff and bake at 120 C for 75 min until crisp.
part topping
  400 ml double cream
  300 g raspberries
  do Whip the cream, pile on the meringue and top with the raspberries.
trial 2026-01-02
  weighed 455 g out of the oven
`,
      [],
    ],
    [
      'Dulce de leche',
      `recipe Dulce de leche
  yield 500 g
  1.5 l whole milk
  350 g sugar
  1/2 tsp baking soda
  1 vanilla pod
  do Bring the milk to a simmer with the sugar, soda and vanilla pod and cook gently for 2 h, stirring, until thick and brown.
`,
      [],
    ],
    [
      'Soft pretzels as lean bread',
      `recipe Soft pretzels as lean bread
  yield 8 pretzels
  500 g strong white flour
  300 g water
  10 g salt
  7 g instant yeast
  30 g butter
  1 l water (for the bath)
  40 g baking soda
  do Knead the flour with the 300 g water, salt, yeast and butter, prove for 1 h and shape.
  do Bring the other water to a simmer with the soda, dip each pretzel for 30 s and bake at 220 C for 14 min until deep brown.
`,
      [],
    ],
    [
      'Granola jar',
      `recipe Granola jar
  500 g rolled oats
  100 g honey
  80 g oil
  do Toss the oats with the honey and oil and bake at 150 C for 35 min until golden. Cool and store in an airtight jar.
`,
      [],
    ],
    [
      'Dried mushrooms',
      `recipe Dried mushrooms
  1 kg porcini, sliced
  do Dry in the oven at 55 C for 6 h until brittle and keep in an airtight jar.
`,
      [],
    ],
    [
      'Puffed rice mix',
      `recipe Puffed rice mix
  200 g puffed rice
  100 g peanuts
  40 g oil
  do Fry the peanuts in the oil, toss with the puffed rice and store in a sealed jar.
`,
      [],
    ],
    [
      'Roasted chickpeas',
      `recipe Roasted chickpeas
  400 g cooked chickpeas
  20 g olive oil
  do Toss the chickpeas in the oil and roast at 200 C for 40 min until crisp. Store in an airtight jar.
`,
      [],
    ],
    [
      'Muesli',
      `recipe Muesli
  400 g rolled oats
  100 g raisins
  100 g hazelnuts
  do Mix and keep in a jar with a tight lid in the cupboard.
`,
      [],
    ],
    [
      'Cookie mix in a jar',
      `recipe Cookie mix in a jar
  250 g flour
  150 g sugar
  100 g chocolate chips
  100 g rolled oats
  5 g baking soda
  do Layer in a jar and close the lid. Keeps for 3 months in the larder.
`,
      [],
    ],
    [
      'Keep oil warm',
      `recipe Keep oil warm
  300 ml olive oil
  6 cloves garlic
  do Keep the garlic in the warm oil while you fry the fish.
`,
      [],
    ],
    [
      'Jar shake',
      `recipe Jar shake
  100 ml olive oil
  1 clove garlic, crushed
  1 tsp honey
  do Put everything into a jar, screw on the lid and shake.
`,
      [],
    ],
    [
      'Fried shallots stored dry',
      `recipe Fried shallots stored dry
  300 g shallots, sliced
  300 ml oil
  do Fry the shallots in the oil until golden, drain on paper and store in an airtight jar for a week.
`,
      [],
    ],
    [
      'Rice salt curing mention',
      `recipe Rice salt curing mention
  2 kg pork belly
  50 g salt
  5 g curing salt
  20 g sugar
  do Mix the salt, curing salt and sugar, and rub over the pork belly. Cure in the fridge at 3 C for 7 d.
  do Roast at 170 C until the centre reads 66 C.
`,
      [],
    ],
    [
      'Fine salt and pink salt',
      `recipe Fine salt and pink salt
  2 kg pork belly
  50 g fine salt
  5 g curing salt
  do Rub the salt and the curing salt over the pork belly. Cure in the fridge at 3 C for 7 d.
  do Roast at 170 C until the centre reads 66 C.
`,
      [],
    ],
    [
      'Soup to the next day',
      `recipe Soup to the next day
  1 l chicken stock
  200 g carrots
  do Simmer the carrots in the stock for 20 min. Cool, and keep in the fridge until the next day.
`,
      [],
    ],
    [
      'Chicken thawed in the fridge',
      `recipe Chicken thawed in the fridge
  1 kg chicken thighs, thawed in the fridge overnight
  do Roast the chicken thighs at 200 C for 45 min until 75 C inside.
`,
      [],
    ],
    [
      'Prawns pink with chicken',
      `recipe Prawns pink with chicken
  300 g chicken thighs
  200 g prawns
  20 g oil
  do Fry the chicken thighs in the oil until no longer pink in the middle, 75 C.
  do Add the prawns and fry until pink.
`,
      [],
    ],
    [
      'Pasta water',
      `recipe Pasta water
  400 g pasta
  3 l water
  30 g salt
  100 g pecorino
  do Boil the pasta in the water with the salt for 10 min and drain.
  do Toss with the pecorino and 1 cup of the pasta water.
`,
      [],
    ],
    [
      'Brisket',
      `recipe Brisket
  yield 10 portions
  5 kg beef brisket
  do Smoke the brisket at 110 C for 12 h until the centre reads 93 C, then rest in a cool box at 65 C for 3 h.
`,
      [],
    ],
    [
      'Warm croissants with ham',
      `recipe Warm croissants with ham
  yield 4 portions
  4 croissants
  200 g cooked ham
  do Warm the ham through in the croissants at 150 C until the centre is 60 C.
`,
      [],
    ],
    [
      'Rested rib',
      `recipe Rested rib
  yield 6 portions
  2 kg beef rib
  do Roast the beef at 180 C until the centre reads 63 C. Rest under the lamps at 45 C for 30 min.
`,
      [],
    ],
    [
      'Beans in the sink',
      `recipe Beans in the sink
  yield 6 portions
  1 kg chicken thighs
  do Thaw the chicken in a sink of cold water for 2 h. Roast at 200 C until 75 C inside.
`,
      [],
    ],
    [
      'Cassoulet',
      `recipe Cassoulet
  yield 6 portions
  500 g dried haricot beans
  1 kg pork belly
  3 l water
  do Soak the beans on the counter overnight.
  do Simmer the pork belly and beans in the water for 2 h.
`,
      [],
    ],
    [
      'Stew',
      `recipe Stew
  yield 6 portions
  1 kg stewing beef
  500 g beef stock
  do Leave the beef to simmer in the stock on the hob for 6 h.
`,
      [],
    ],
    [
      'Stew',
      `recipe Stew
  yield 6 portions
  1 kg stewing beef
  500 g beef stock
  do Put the beef and stock on the kitchen hob, let it bubble, and cook gently for 5 h.
`,
      [],
    ],
    [
      'Smoked pork',
      `recipe Smoked pork
  yield 6 portions
  2 kg pork shoulder
  do Set the pork outside in the smoker at 110 C for 10 h until the centre reads 93 C.
`,
      [],
    ],
    [
      'Hot-held soup',
      `recipe Hot-held soup
  yield 6 portions
  1 l chicken stock
  300 g chicken breast
  do Simmer the chicken in the stock for 25 min until 75 C. Set out on the buffet in a soup kettle at 70 C for 5 h.
`,
      [],
    ],
    [
      'Roast pork',
      `recipe Roast pork
  yield 6 portions
  2 kg pork loin
  do Roast the pork at 220 C for 60 min to an internal temperature of 63 C.
`,
      [],
    ],
    [
      'Tempered steak',
      `recipe Tempered steak
  yield 2 portions
  600 g rump steak
  do Take the steak from the fridge and leave at 20 C for 1 h. Fry the steak until the centre reads 63 C.
`,
      [],
    ],
    [
      'Cold-smoked bacon',
      `recipe Cold-smoked bacon
  yield 1 kg
  1 kg pork belly
  25 g salt
  2.5 g curing salt 1
  do Rub the pork with the salt and curing salt and chill at 4 C for 5 d.
  do Smoke at 25 C for 8 h, maintaining the smoker at 25 C.
`,
      [],
    ],
    [
      'Sous vide steak',
      `recipe Sous vide steak
  yield 2 portions
  600 g rump steak
  do Bag the steak and maintain the bath at 55 C for 2 h. Sear in a pan at 220 C for 1 min a side.
`,
      [],
    ],
    [
      'Labneh',
      `recipe Labneh
  yield 1 bowl
  1 kg yoghurt
  8 g salt
  do Stir the salt into the yoghurt, tie in a cloth and hang over the sink overnight.
`,
      [],
    ],
    [
      'Braised pork',
      `recipe Braised pork
  yield 6 portions
  2 kg pork shoulder
  1 l chicken stock
  do Put the pork and stock in a pot on the stove, and when only a little liquid is left, simmer for 5 h until the centre reads 90 C.
`,
      [],
    ],
    [
      'Barbecue outside',
      `recipe Barbecue outside
  yield 6 portions
  2 kg pork shoulder
  do Put the pork in the drum outside and smoke for 8 h until the centre reads 93 C.
`,
      [],
    ],
    [
      'Pulled pork',
      `recipe Pulled pork
  yield 6 portions
  2 kg pork shoulder
  do Roast the pork at 140 C for 6 h; it is done at 93 C. Remove and hold at 65 C for 1 h.
`,
      [],
    ],
    [
      'Pork chops',
      `recipe Pork chops
  yield 2 portions
  600 g pork chops
  do Fry the chops for 5 min a side and pull them at 63 C; rest for 3 min.
`,
      [],
    ],
    [
      'Roast beef',
      `recipe Roast beef
  yield 6 portions
  2 kg beef topside
  do Put the beef in the oven at 180 C for 2 h.
`,
      [],
    ],
    [
      'Quiche pot',
      `recipe Quiche pot
  yield 6 portions
  4 eggs
  300 ml double cream
  150 g plain flour
  do Whisk the eggs with the cream and flour and slide into the oven at 180 C for 30 min until the centre reads 80 C.
`,
      [],
    ],
    [
      'Slow lamb',
      `recipe Slow lamb
  yield 6 portions
  2 kg lamb shoulder
  500 ml beef stock
  do Put the lamb in the pot with the stock, cover and braise for 5 h on the side of the range.
`,
      [],
    ],
    [
      'Beef ragu',
      `recipe Beef ragu
  yield 3 l
  2 kg beef shin
  1 l tomatoes, canned
  do Put the beef and tomatoes in a Dutch oven, lid on, and leave on the stove over a very low flame for 5 h, simmering gently.
`,
      [],
    ],
    [
      'Tasso',
      `recipe Tasso
  yield 1 kg
  1 kg pork shoulder
  25 g salt
  2.5 g curing salt 1
  do Rub the pork with the salt and curing salt, put in the fridge for 24 h.
  do Set the pork outside in the smoker for 5 h until the centre reads 71 C.
`,
      [],
    ],
    [
      'Haybox stew',
      `recipe Haybox stew
  yield 6 portions
  1 kg stewing beef
  1 l beef stock
  do Simmer the beef in the stock for 30 min, then leave in the haybox in the kitchen for 6 h, keeping it above 65 C.
`,
      [],
    ],
    [
      'Buttercream',
      `recipe Buttercream
  yield 1 bowl
  4 egg whites
  250 g sugar
  350 g butter
  do Whisk the whites and sugar over a bain-marie until 71 C, beat cool, beat in the butter and leave at 20 C until needed.
`,
      [],
    ],
    [
      'Fish pate on ice',
      `recipe Fish pate on ice
  yield 10 portions
  300 g smoked mackerel
  200 g cream cheese
  do Blend and set out on the buffet over crushed ice at 4 C for 4 h.
`,
      [],
    ],
  ])('%s', (_name, text, want) => {
    expect(found(text)).toEqual(want);
  });
});

describe('dangers and slips, in unusual words', () => {
  test.each<[string, string, string[]]>([
    [
      'Curd in the cupboard',
      `recipe Lemon curd
  yield   2 jars
  4 large   lemons
  200 g     caster sugar
  100 g     unsalted butter
  3 large   eggs
  do Whisk the eggs with the juice and zest of the lemons, the sugar and the butter over simmering water until it reads 82 C, 12 min.
  do Pour into sterilised jars, seal, and keep in a cool cupboard for up to 3 months.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Custard in the larder',
      `recipe Custard
  yield   4 portions
  500 ml    whole milk
  60 g      caster sugar
  4 large   egg yolks
  do Whisk the yolks with the sugar, add the milk and stir over a low heat until it reads 82 C, 10 min.
  do Pour into jars and keep in the larder for 3 d.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Pâté in the larder',
      `recipe Pâté
  yield   1 terrine
  400 g     chicken livers
  200 g     butter
  50 ml     double cream
  do Fry the livers in half the butter until they read 75 C, blend with the cream.
  do Pour over the rest of the butter and keep in the larder for 5 d.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Flan in the room',
      `recipe Flan
  yield   6 portions
  500 ml    whole milk
  4 large   eggs
  100 g     caster sugar
  do Whisk the eggs, sugar and milk and bake in a water bath at 150 C for 50 min until the centre reads 80 C.
  do Store at room temperature for up to 3 d.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Garlic-in-oil kept',
      `recipe Garlic-in-oil kept
  250 ml olive oil
  2 heads garlic, cloves peeled
  do Simmer the garlic in the oil for 40 min until soft.
  do Keep the garlic in the olive oil.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Garlic-in-oil bottle',
      `recipe Garlic-in-oil bottle
  500 ml sunflower oil
  6 cloves garlic, bruised
  2 sprigs rosemary
  do Warm the oil with the garlic and rosemary to 90 C for 10 min.
  do Bottle the oil.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Garlic-in-oil gift',
      `recipe Garlic-in-oil gift
  400 ml olive oil
  4 red chillies, slit
  do Push the chillies into a pretty bottle, fill up with the oil and cork it. Makes a good present.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Garlic-in-oil mushrooms',
      `recipe Garlic-in-oil mushrooms
  300 g chanterelles
  350 ml olive oil
  do Fry the chanterelles in a little of the oil until dry.
  do Pack into a jar, cover with the rest of the oil and put the lid on.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Garlic-in-oil basil cold too long',
      `recipe Garlic-in-oil basil cold too long
  80 g basil
  300 ml olive oil
  do Blanch the basil, squeeze dry and blend with the oil. Strain. Lasts three weeks in the fridge.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Leftovers in preparation',
      `recipe Leftovers in preparation
  500 g cooked rice, left out overnight
  2 tbsp oil
  3 eggs
  do Fry the rice in the oil, push to one side, scramble the eggs and mix until piping hot.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Chicken thawed on the counter',
      `recipe Chicken thawed on the counter
  1 kg chicken thighs, thawed on the counter overnight
  30 g butter
  do Roast the chicken thighs with the butter at 200 C for 45 min, until 75 C inside.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Stock cools in the garage',
      `recipe Stock cools in the garage
  2 kg chicken backs
  4 l water
  do Simmer the chicken backs in the water for 4 h and strain.
  do Put the lid on and let the pot cool by itself until the next day.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Soup on the back burner',
      `recipe Soup on the back burner
  1 l chicken stock
  300 g chicken breast
  200 g leeks, sliced
  do Simmer the chicken breast and leeks in the stock for 25 min until 75 C.
  do Turn off the heat and leave the soup on the hob till breakfast.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Rare chicken',
      `recipe Rare chicken
  4 chicken breasts
  20 g butter
  do Fry the chicken breasts in the butter until pink in the middle, 58 C.
`,
      ['undercooked error'],
    ],
    [
      'Beans in bottles',
      `recipe Beans in bottles
  1 kg dried cannellini beans
  3 l water
  do Soak the beans overnight, drain, and boil in the water for 1 h.
  do Fill clean bottles with the beans, cork them and sterilise in a boiling bath for 2 h.
`,
      ['low-acid-preserve error'],
    ],
    [
      'Fridge in wrong unit',
      `recipe Fridge in wrong unit
  1 l milk
  100 g cooked ham
  do Mix the ham into the milk and keep at 40 C in the refrigerator.
`,
      ['implausible-temperature error'],
    ],
    [
      'Marinated on the worktop',
      `recipe Marinated on the worktop
  800 g lamb neck fillet
  100 ml olive oil
  2 lemons, juiced
  do Steep the lamb in the oil and lemon juice on the worktop overnight.
  do Grill the lamb until 63 C inside.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Tofu bowl left',
      `recipe Tofu bowl left
  400 g tofu
  300 g cooked quinoa
  do Mix the tofu with the quinoa and leave it out on the table for 6 h.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Liver pate pink',
      `recipe Liver pate pink
  500 g chicken livers
  200 g butter
  2 tbsp brandy
  do Fry the livers in the butter until just coloured outside and raw in the middle, flame with the brandy and blend.
`,
      ['no-safe-temperature error'],
    ],
    [
      'Pesto jar on the shelf',
      `recipe Pesto jar on the shelf
  100 g basil
  200 ml olive oil
  50 g pine nuts
  60 g Parmesan
  1 clove garlic
  do Blend everything, spoon into a jar, and store.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Shallot oil',
      `recipe Shallot oil
  200 g shallots, sliced
  400 ml sunflower oil
  do Fry the shallots in the oil until crisp.
  do Strain, and store the shallots in the oil.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Rosemary gift',
      `recipe Rosemary gift
  4 sprigs rosemary
  250 ml olive oil
  do Put the rosemary into a flask, fill up with the oil, and seal.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Peppers under oil',
      `recipe Peppers under oil
  600 g red peppers, roasted and peeled
  300 ml olive oil
  2 cloves garlic
  do Pack the peppers and garlic in jars and cover with the oil. They keep all winter.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Mince on the side',
      `recipe Mince on the side
  500 g beef mince, left on the side overnight
  1 onion
  do Brown the mince with the onion and simmer for 20 min.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Prawns thawed all day',
      `recipe Prawns thawed all day
  400 g raw prawns, defrosted on the worktop for 8 hours
  30 g butter
  do Fry the prawns in the butter for 4 min until pink and firm.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Gravy overnight',
      `recipe Gravy overnight
  1 l chicken stock
  60 g butter
  60 g flour
  do Melt the butter, cook the flour, whisk in the stock and simmer for 5 min.
  do Leave in the pan on the side until morning.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Duck rare',
      `recipe Duck rare
  2 duck breasts
  do Fry skin side down for 8 min, turn and fry for 2 min until pink inside.
`,
      ['no-safe-temperature error'],
    ],
    [
      'Turkey burger',
      `recipe Turkey burger
  500 g turkey mince
  5 g salt
  do Shape and grill for 5 min a side; serve pink.
`,
      ['no-safe-temperature error'],
    ],
    [
      'Oven 200 for degrees F meat',
      `recipe Oven 200 for degrees F meat
  2 kg lamb leg
  do Roast the lamb at 60 C for 2 h.
`,
      ['no-safe-temperature error'],
    ],
    [
      'Burger in F too low',
      `recipe Burger in F too low
  1 lb ground beef
  1 tsp salt
  do Shape with the salt and grill until 135 F in the center.
`,
      ['undercooked error'],
    ],
    [
      'Yoghurt marinade counter',
      `recipe Yoghurt marinade counter
  1 kg chicken thighs
  200 g yoghurt
  do Coat the chicken in the yoghurt and rest on the counter overnight.
  do Roast at 220 C for 30 min until 75 C inside.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Sausages with sel rose',
      `recipe Sausages with sel rose
  1 kg pork shoulder, minced
  18 g salt
  6 g sel rose
  do Mix the pork with the salt and sel rose and poach until the centre reads 72 C.
`,
      ['curing-salt-dose error'],
    ],
    [
      'Sodium nitrite itself',
      `recipe Sodium nitrite itself
  2 kg pork belly
  50 g salt
  3 g sodium nitrite
  do Rub the pork belly with the salt and sodium nitrite, cure in the fridge for 7 d and smoke at 100 C until the centre reads 68 C.
`,
      ['curing-salt-dose error'],
    ],
    [
      'Bath salmon cool',
      `recipe Bath salmon cool
  600 g salmon fillet
  do Seal the salmon in bags and cook in a water bath at 45 C for 20 min.
`,
      ['no-safe-temperature error'],
    ],
    [
      'Hot dogs held in tepid water',
      `recipe Hot dogs held in tepid water
  12 frankfurters
  2 l water
  do Simmer the frankfurters in the water for 8 min and keep in the water at 45 C until sold.
`,
      ['held-too-warm error'],
    ],
    [
      'Bread in a jar',
      `recipe Bread in a jar
  200 g flour
  150 g sugar
  100 ml milk
  2 eggs
  5 g baking powder
  do Mix, fill into jars, bake at 170 C for 40 min until a skewer comes out clean, and seal while hot. Keeps for 6 months in the cupboard.
`,
      ['low-acid-preserve error'],
    ],
    [
      'Salmon left to cure on the counter',
      `recipe Salmon left to cure on the counter
  1 kg salmon fillet (frozen at -20 C for 7 d)
  60 g salt
  50 g sugar
  do Rub the salmon with the salt and sugar and cure at room temperature for 48 h.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Garlic water bottled',
      `recipe Garlic water bottled
  200 g garlic
  1 l water
  50 ml vinegar
  do Boil the garlic in the water and vinegar, bottle and store.
`,
      ['low-acid-preserve error'],
    ],
    [
      'Rolls each light',
      `recipe Rolls each light
  yield 12 rolls
part dough as enriched bread
  500 g bread flour
  250 g milk
  60 g butter
  1 egg
  9 g salt
  7 g instant yeast
  do Knead everything, prove at 24 C for 2 h, shape in 12 and bake at 200 C for 15 min until golden.
trial 2026-01-02
  weighed 41 g out of the oven
`,
      ['trial-disagrees warning'],
    ],
    [
      'One loaf weighed of two as lean bread',
      `recipe One loaf weighed of two as lean bread
  yield 2 loaves
  1 kg bread flour
  700 g water
  20 g salt
  5 g instant yeast
  do Knead everything, prove at 24 C for 3 h, shape 2 and bake at 230 C for 40 min until brown.
trial 2026-01-02
  weighed 1180 g out of the oven
`,
      ['trial-disagrees warning'],
    ],
    [
      'Sushi rice bowl',
      `recipe Sushi rice bowl
  yield 4 portions
  300 g sushi rice, cooked
  200 g prawns, cooked
  do Toss the rice with the prawns and let it sit on the sideboard for 7 h.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Monster cookie dough pots',
      `recipe Monster cookie dough pots
  yield 6 pots
  150 g plain flour
  120 g butter, melted
  120 g brown sugar
  80 g chocolate chips
  do Stir everything together, spoon into pots and tuck in with a spoon.
`,
      ['raw-flour error'],
    ],
    [
      'Cake batter ice cream',
      `recipe Cake batter ice cream
  yield 1 l
  80 g plain flour
  400 ml double cream
  200 g condensed milk
  do Whip the cream, fold in the condensed milk and flour, and freeze overnight.
`,
      ['raw-flour error'],
    ],
    [
      'Hollandaise',
      `recipe Hollandaise
  yield 6 portions
  4 egg yolks
  300 g butter
  20 ml lemon juice
  do Whisk the yolks with the lemon juice over simmering water until thick, then whisk in the butter.
  do Stand the bowl in a water bath at 45 C until wanted, up to 3 h.
`,
      ['held-too-warm error'],
    ],
    [
      'Turkey gravy',
      `recipe Turkey gravy
  yield 1 l
  1 l chicken stock
  50 g plain flour
  50 g butter
  do Melt the butter, cook the flour and whisk in the stock; boil for 5 min.
  do Leave to go cold on the range the whole night.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Prime rib',
      `recipe Prime rib
  yield 8 portions
  3 kg beef rib, frozen
  do Thaw the beef in the sink for 12 h.
  do Roast the beef at 180 C for 2 h until the centre reads 63 C.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Reheated takeaway',
      `recipe Reheated takeaway
  yield 2 portions
  400 g cooked chicken
  300 g cooked rice
  do Nuke the chicken and rice in the microwave until lukewarm, about 50 C in the middle.
`,
      ['undercooked error'],
    ],
    [
      'Warmed-up lasagne',
      `recipe Warmed-up lasagne
  yield 4 portions
  400 g cooked chicken
  200 ml bechamel
  do Warm through the chicken and bechamel in the oven at 150 C until the core is 55 C.
`,
      ['undercooked error'],
    ],
    [
      'Buffet chilli',
      `recipe Buffet chilli
  yield 20 portions
  2 kg minced beef
  1 kg kidney beans, canned
  1 kg tomatoes, canned
  do Brown the beef, add the beans and tomatoes and simmer for 1 h.
  do Set out on the buffet over tea lights at 48 C for 4 h.
`,
      ['held-too-warm error'],
    ],
    [
      'Chafing dish eggs',
      `recipe Chafing dish eggs
  yield 10 portions
  20 eggs
  100 g butter
  do Scramble the eggs in the butter until they read 72 C.
  do Park in a chafing dish at 50 C for the brunch.
`,
      ['held-too-warm error'],
    ],
    [
      'Deli chicken salad',
      `recipe Deli chicken salad
  yield 8 portions
  800 g cooked chicken
  200 g mayonnaise
  do Mix the chicken with the mayonnaise and display in the cabinet at 9 C.
`,
      ['held-too-warm error'],
    ],
    [
      'Smoked mackerel pâté',
      `recipe Smoked mackerel pâté
  yield 6 portions
  300 g smoked mackerel
  200 g cream cheese
  do Blend the mackerel with the cream cheese and stash in the cool box at 12 C.
`,
      ['held-too-warm error'],
    ],
    [
      'Sponge',
      `recipe Sponge
  yield 1 cake
  oven 180 F
  200 g self-raising flour
  200 g butter
  200 g caster sugar
  4 eggs
  do Cream the butter and sugar, beat in the eggs, fold in the flour and slide into the oven for 25 min until risen.
`,
      ['implausible-temperature error'],
    ],
    [
      'Pot-au-feu',
      `recipe Pot-au-feu
  yield 8 portions
  2 kg beef shin
  4 l water
  500 g carrots
  do Simmer the beef and carrots in the water for 3 h.
  do Slide the covered pot to the back of the range and forget about it overnight.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Stock in the conservatory',
      `recipe Stock in the conservatory
  yield 3 l
  2 kg chicken wings
  4 l water
  do Simmer the wings in the water for 3 h and strain.
  do Let it come down to room temperature over 8 h, then lid and refrigerate.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Caesar dressing',
      `recipe Caesar dressing
  yield 1 jar
  2 egg yolks
  4 anchovy fillets
  200 ml olive oil
  20 ml lemon juice
  do Blitz the yolks, anchovies and lemon juice, and trickle in the oil.
  do Toss through warm grilled lettuce.
`,
      ['raw-egg error'],
    ],
    [
      'Brined turkey in the shed',
      `recipe Brined turkey in the shed
  yield 10 portions
  5 kg turkey
  200 g salt
  8 l water
  do Sink the turkey in the salt and water in a bucket in the shed for 24 h.
  do Roast the turkey at 170 C until the thigh reads 75 C.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Marinated chicken',
      `recipe Marinated chicken
  yield 4 portions
  1 kg chicken wings
  100 ml soy sauce
  do Steep the wings in the soy sauce at room temperature all day.
  do Roast the wings at 200 C until they read 75 C.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Potato salad for the fete',
      `recipe Potato salad for the fete
  yield 20 portions
  3 kg potatoes
  600 g mayonnaise
  6 eggs, hard-boiled
  do Boil the potatoes for 20 min, drain and mix with the mayonnaise and eggs.
  do Put out on the trestle at 9 and serve until 17, 8 h.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Roast beef on the carvery',
      `recipe Roast beef on the carvery
  yield 20 portions
  4 kg beef topside
  do Roast the beef at 170 C until the centre reads 60 C.
  do Rest under the lamps at 40 C for 4 h of service.
`,
      ['undercooked error', 'held-too-warm error'],
    ],
    [
      'Bean pot',
      `recipe Bean pot
  yield 6 portions
  500 g dried cannellini beans
  2 l water
  do Boil the beans in the water for 90 min.
  do Turn the heat off and let them sit in their pot overnight on the hotplate.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Bolognese',
      `recipe Bolognese
  yield 20 portions
  2 kg beef mince
  2 kg tomatoes, canned
  do Brown the mince, add the tomatoes and simmer for 2 h.
  do Leave in the bain-marie set to 50 C throughout lunch.
`,
      ['held-too-warm error'],
    ],
    [
      'Fish soup',
      `recipe Fish soup
  yield 10 portions
  1 kg cod fillet
  2 l fish stock
  do Simmer the cod in the stock for 15 min.
  do Maintain at 120 F until service.
`,
      ['held-too-warm error'],
    ],
    [
      'Panna cotta',
      `recipe Panna cotta
  yield 8 portions
  500 ml double cream
  500 ml whole milk
  100 g sugar
  8 g gelatine
  do Warm the cream, milk and sugar to 80 C, stir in the gelatine and pour in moulds.
  do Leave to set in the wine fridge at 12 C overnight.
`,
      ['held-too-warm error'],
    ],
    [
      'Cheesecake with biscuit dough swirl',
      `recipe Cheesecake with biscuit dough swirl
  yield 8 portions

part dough
  100 g plain flour
  60 g butter
  60 g sugar
  do Beat the butter, sugar and flour together.

part cheesecake
  400 g cream cheese
  200 ml double cream
  do Whip the cream, fold in the cream cheese and crumbled dough, and chill at 4 C for 6 h.
`,
      ['raw-flour error'],
    ],
    [
      'Cold larder salad',
      `recipe Cold larder salad
  yield 6 portions
  500 g cooked chicken
  200 g mayonnaise
  do Mix the chicken and mayonnaise, cover and set in the walk-in at 38 C.
`,
      ['implausible-temperature error'],
    ],
    [
      'Seafood risotto for arancini',
      `recipe Seafood risotto for arancini
  yield 20 pieces
  300 g arborio rice
  1 l fish stock
  200 g prawns
  do Simmer the rice and prawns in the stock for 18 min.
  do Tip on a tray and let it firm up on the kitchen table overnight.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Stuffed peppers',
      `recipe Stuffed peppers
  yield 6 portions
  400 g beef mince
  200 g cooked rice
  6 peppers
  do Fill the peppers with the mince and rice and bake at 180 C until the centre reads 72 C.
  do They are best left at room temperature until the evening and eaten tepid, 8 h later.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Rolled turkey',
      `recipe Rolled turkey
  yield 6 portions
  1.5 kg turkey breast
  100 g stuffing mix
  do Roll the turkey around the stuffing and roast at 180 C; pull it at 62 C and rest for 15 min.
`,
      ['undercooked error'],
    ],
    [
      'Quail',
      `recipe Quail
  yield 4 portions
  4 quails
  do Roast the quails at 220 C for 12 min to an internal 135 F.
`,
      ['undercooked error'],
    ],
    [
      'Mutton curry',
      `recipe Mutton curry
  yield 10 portions
  2 kg lamb shoulder
  500 g beef stock
  do Simmer the lamb in the stock for 2 h. It can be kept at 50 C.
`,
      ['held-too-warm error'],
    ],
    [
      'Egg salad',
      `recipe Egg salad
  yield 10 portions
  12 eggs, hard-boiled
  200 g mayonnaise
  do Mix the eggs with the mayonnaise. Best held at 11 C before serving.
`,
      ['held-too-warm error'],
    ],
    [
      'Stuffed vegetables',
      `recipe Stuffed vegetables
  yield 6 portions
  400 g beef mince
  200 g cooked rice
  900 g red peppers
  do Fill the peppers with the mince and rice and bake at 180 C until the centre reads 72 C.
  do The dish improves: leave it at room temperature for 8 h.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Beef broth',
      `recipe Beef broth
  yield 3 l
  2 kg chicken wings
  4 l water
  do Simmer the wings in the water for 5 h. Once strained, the broth is forgotten on the hob overnight.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Beef bone broth',
      `recipe Beef bone broth
  yield 3 l
  2 kg beef bones
  4 l water
  do Simmer the bones in the water for 5 h.
  do Leave on the hob overnight.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Congee',
      `recipe Congee
  yield 6 portions
  200 g jasmine rice
  2 l chicken stock
  do Simmer the rice in the stock for 1 h.
  do Switch off and leave in the rice cooker, unplugged, on the counter overnight.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Beer can chicken',
      `recipe Beer can chicken
  yield 4 portions
  1.6 kg chicken
  do Sit the chicken on a can and barbecue for 70 min; the bird is done at 66 C.
`,
      ['undercooked error'],
    ],
    [
      'Salt dough snack',
      `recipe Salt dough snack
  yield 12 balls
  100 g self-raising flour
  80 g peanut butter
  60 g honey
  do Work everything to a paste, roll in balls and keep in the fridge for snacking.
`,
      ['raw-flour error'],
    ],
    [
      'Tart with cold mousse',
      `recipe Tart with cold mousse
  yield 6 portions
  3 eggs
  200 ml double cream
  100 g sugar
  200 g digestive biscuits
  80 g butter
  do Press the biscuits with the butter in a tin and put in the oven at 180 C for 10 min.
  do Whisk the eggs with the sugar, fold in the whipped cream, spread on top and chill.
`,
      ['raw-egg error'],
    ],
    [
      'Tuna plate',
      `recipe Tuna plate
  yield 2 portions
  300 g salmon fillet
  200 g bread
  do Put the bread in the oven at 200 C for 5 min. Slice the salmon on top.
`,
      ['no-safe-temperature error'],
    ],
  ])('%s', (_name, text, want) => {
    expect(found(text).filter((f) => f.endsWith('error') || f.startsWith('trial-disagrees'))).toEqual(want);
  });
});
