/**
 * Whole recipes in other words than the checks' own examples: those that work are left in peace, and in each of the others the one slip
 * is found, with all that is said beside it. The recipes are invented; which findings are right is common practice and the rules named
 * in `tests/outside/safety/`.
 */
import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const found = (text: string): string[] => open(text).findings.open.map((f) => `${f.code} ${f.severity}`);

describe('recipes that work', () => {
  test.each<[string, string]>([
    [
      'Banana Nut Bread',
      `recipe Banana Nut Bread
  yield 1 loaf
  pan loaf 9 x 5 x 3 in
  oven 350 F
  1/2 cup unsalted butter, softened
  3/4 cup packed light brown sugar
  2 large eggs
  3 ripe bananas, mashed
  1 tsp vanilla extract
  2 cups all-purpose flour
  1 tsp baking soda
  1/2 tsp salt
  3/4 cup chopped walnuts
  do Cream the butter and brown sugar until fluffy, then beat in the eggs one at a time.
  do Stir in the bananas and vanilla.
  do Whisk together the flour, baking soda and salt; fold into the wet mixture with the walnuts.
  do Scrape into a greased loaf pan and bake for 55 to 60 min, until a toothpick comes out clean.
  do Cool in the pan for 10 min, then turn out onto a rack.
`,
    ],
    [
      'Chicken tikka skewers',
      `recipe Chicken tikka skewers
  yield 4 portions
part marinade
  150 g Greek yoghurt
  2 cloves garlic, crushed
  20 g fresh ginger, grated
  1 tbsp lemon juice
  2 tsp garam masala
  1 tsp ground cumin
  1 tsp chilli powder
  5 g fine salt
  do Stir everything together.
part skewers
  800 g boneless chicken thighs, cut in 3 cm pieces
  1 red onion, cut in wedges
  do Toss the chicken in the marinade, cover and chill for 4 h.
  do Thread onto skewers with the onion and grill under a high heat for 12-15 min, turning, until charred and 74 C inside.
`,
    ],
    [
      'Ragu',
      `recipe Ragu
  yield 6 servings
  2 tbsp olive oil
  1 onion, finely chopped
  2 carrots, finely diced
  2 sticks celery, finely diced
  3 cloves garlic, chopped
  500 g beef mince
  150 ml red wine
  2 tins of 400 g chopped tomatoes
  2 tbsp tomato paste
  1 tsp dried oregano
  to taste salt
  do Soften the onion, carrots and celery in the oil over a medium heat for 10 min.
  do Add the garlic and cook for 1 min, then brown the mince.
  do Pour in the wine and let it bubble away, then stir in the tomatoes, tomato paste and oregano.
  do Simmer gently for 1 h 30 min, season with salt and serve.
`,
    ],
    [
      'Country sourdough',
      `recipe Country sourdough
  yield 2 loaves
part levain
  50 g sourdough starter
  100 g bread flour
  100 g water
  do Mix the starter, flour and water and ferment at 25 C for 5 h.
part dough as lean bread
  900 g bread flour
  100 g wholemeal flour
  700 g water
  20 g fine sea salt
  do Mix the flours with the water and rest for 40 min.
  do Add the levain and the salt, and fold every 30 min for 3 h at 25 C.
  do Divide in two, shape, and prove in the fridge at 4 C for 14 h.
  do Bake in a covered pot at 250 C for 20 min, uncover and bake at 230 C for 20-25 min until deep brown.
`,
    ],
    [
      'Vanilla ice cream',
      `recipe Vanilla ice cream
  yield 1.2 l
part base as ice cream
  500 ml whole milk
  300 ml double cream
  150 g caster sugar
  5 large egg yolks
  1 vanilla pod
  do Heat the milk and cream with the vanilla pod to 80 C, and infuse for 20 min.
  do Whisk the yolks with the sugar, pour on the hot milk and cook over a low heat to 82 C, stirring.
  do Strain, cool over ice to 5 C within 1 h, and age at 4 C overnight.
  do Churn, and freeze at -18 C for 4 h.
`,
    ],
    [
      'Lemon curd',
      `recipe Lemon curd
  yield 2 jars
  4 lemons, zest and juice
  200 g caster sugar
  100 g unsalted butter, cubed
  3 large eggs
  1 large egg yolk
  do Whisk the eggs, yolk, sugar, lemon zest and juice in a bowl over simmering water, and stir until it reads 78 C and coats the spoon.
  do Beat in the butter, strain into clean jars, cool and keep in the fridge for up to 2 weeks.
`,
    ],
    [
      'Pavlova',
      `recipe Pavlova
  yield 8 slices
part meringue as meringue
  4 large egg whites
  220 g caster sugar
  1 tsp cornflour
  1 tsp white wine vinegar
  do Whisk the egg whites to soft peaks, then add the sugar a spoonful at a time until stiff and glossy.
  do Fold in the cornflour and vinegar, heap onto a lined tray and bake at 120 C fan for 1 h 15 min, until crisp and dry.
  do Turn off the oven and leave inside until cold.
part topping
  300 ml double cream
  400 g strawberries, hulled
  do Whip the cream, spoon onto the meringue and top with the strawberries.
`,
    ],
    [
      'Kimchi',
      `recipe Kimchi
  yield 1.2 kg
part kimchi as lacto-ferment
  1.2 kg Chinese cabbage, cut
  30 g fine sea salt
  20 g garlic, crushed
  15 g ginger, grated
  30 g gochugaru
  150 g daikon, in matchsticks
  do Toss the cabbage with the salt and stand for 2 h.
  do Mix in the garlic, ginger, gochugaru and daikon and pack into a jar, pressing out the air.
  do Ferment at 18-20 C for 5 d, then keep in the fridge.
`,
    ],
    [
      'Lasagne',
      `recipe Lasagne
  yield 8 portions
  pan rectangle 33 x 23 x 6 cm
  oven 180 C
part ragu
  2 tbsp olive oil
  1 onion, chopped
  750 g minced beef
  700 g passata
  do Fry the onion in the oil until soft, brown the minced beef, add the passata and simmer for 45 min.
part sauce as roux sauce
  75 g butter
  75 g plain flour
  1 l whole milk
  1 pinch nutmeg
  do Melt the butter, stir in the flour and cook for 2 min. Whisk in the milk and nutmeg and simmer for 5 min.
part assembly
  300 g dried lasagne sheets
  150 g mozzarella, sliced
  60 g Parmesan, grated
  do Layer the ragu, lasagne sheets and sauce, and finish with the mozzarella and Parmesan.
  do Bake for 40-45 min until golden and bubbling, and 74 C in the middle.
`,
    ],
    [
      'Brown chicken stock as stock',
      `recipe Brown chicken stock as stock
  yield 2 l
  2 kg chicken wings and backs
  3 l water
  1 onion, halved
  1 carrot, chopped
  2 sticks celery
  1 bay leaf
  do Roast the chicken wings and backs at 200 C for 40 min until brown.
  do Cover with the water, add the onion, carrot, celery and bay leaf, and simmer for 4 h.
  do Strain, chill over ice to 21 C within 2 h and to 4 C within 6 h in all.
`,
    ],
    [
      'Sunday roast chicken as roast',
      `recipe Sunday roast chicken as roast
  yield 4 portions
  1 whole chicken
  30 g butter, softened
  1 lemon, halved
  10 g fine salt
  do Heat the oven to gas 6.
  do Rub the chicken with the butter and salt, and put the lemon inside.
  do Roast for 1 h 20 min, or until the thickest part of the thigh reads 75 C. Rest for 15 min before carving.
`,
    ],
    [
      'Cheese scones',
      `recipe Cheese scones
  yield 8 scones
part dough as scone
  225 g self-raising flour
  1/2 tsp mustard powder
  55 g cold butter, diced
  120 g mature cheddar, grated
  90 ml whole milk
  1 pinch salt
  do Rub the butter into the flour, mustard powder and salt.
  do Stir in most of the cheddar, then bind with the milk.
  do Pat out 2 cm thick, cut out 8 rounds and top with the rest of the cheddar.
  do Bake at 220 C for 12-14 min until risen and golden.
`,
    ],
    [
      'Hollandaise',
      `recipe Hollandaise
  yield 4 servings
part sauce as butter sauce
  3 large pasteurised egg yolks
  1 tbsp water
  1 tbsp lemon juice
  200 g unsalted butter, melted
  1 pinch salt
  do Whisk the yolks, water and lemon juice over barely simmering water until thick.
  do Trickle in the butter, whisking all the time, season with the salt and serve at once.
`,
    ],
    [
      'Pilau rice as rice',
      `recipe Pilau rice as rice
  yield 4 portions
  300 g basmati rice
  450 ml water
  30 g ghee
  1 onion, sliced
  1 tsp cumin seeds
  4 g fine salt
  do Rinse the rice and soak for 20 min; drain.
  do Fry the onion in the ghee with the cumin seeds until golden.
  do Add the rice, water and salt, bring to the boil, cover and cook over a low heat for 12 min. Rest for 5 min.
`,
    ],
    [
      'Strawberry jam',
      `recipe Strawberry jam
  yield 6 jars
part jam as jam
  1 kg strawberries, hulled
  850 g jam sugar
  1 lemon, juiced
  do Put a saucer in the freezer.
  do Simmer the strawberries with the lemon for 10 min, add the sugar and stir until dissolved.
  do Boil hard to 104.5 C, then pot in hot sterilised jars, seal and label.
`,
    ],
    [
      'Gravlax',
      `recipe Gravlax
  yield 10 portions
  1 kg salmon fillet, previously frozen
  60 g coarse sea salt
  60 g caster sugar
  30 g dill, chopped
  do Rub the salmon with the salt, sugar and dill, wrap and cure at 4 C for 36 h.
  do Wipe, slice thinly and serve.
`,
    ],
    [
      'Tiramisu',
      `recipe Tiramisu
  yield 8 portions
  300 ml strong black coffee
  4 pasteurised egg yolks
  100 g caster sugar
  500 g mascarpone
  200 ml double cream
  200 g sponge fingers
  2 tbsp cocoa powder
  do Whisk the yolks and sugar until pale, beat in the mascarpone and fold in the whipped cream.
  do Dip the sponge fingers in the coffee and layer with the cream mixture in a dish.
  do Chill for 6 h, then dust with the cocoa.
`,
    ],
    [
      'Quiche Lorraine',
      `recipe Quiche Lorraine
  yield 8 slices
  pan round 23 x 3.5 cm
part pastry as shortcrust
  175 g plain flour
  100 g butter, cold
  1 pinch salt
  35 ml ice-cold water
  do Rub the butter into the flour and salt, bind with the water and chill for 45 min.
  do Roll out, line the tin and chill for 30 min.
  do Blind-bake at 190 C for 20 min, then 5 min more without the beans until pale gold.
part filling as quiche
  200 g smoked streaky bacon, diced
  3 large eggs
  200 ml double cream
  100 ml whole milk
  75 g Gruyere, grated
  do Fry the bacon until crisp.
  do Whisk the eggs with the cream and milk; scatter the bacon and Gruyere in the pastry and pour over.
  do Bake at 160 C fan for 30 min, until just set and 74 C in the centre.
`,
    ],
    [
      'Neapolitan pizza',
      `recipe Neapolitan pizza
  yield 4 pizzas
part dough as pizza dough
  600 g 00 flour
  390 g water
  16 g fine sea salt
  1 g instant yeast
  do Mix the flour, water, salt and yeast, knead for 10 min and prove at 20 C for 10 h.
  do Divide in 4 balls and prove for 4 h at 20 C.
part topping
  400 g canned San Marzano tomatoes, crushed
  300 g mozzarella, torn
  8 basil leaves
  do Spread the dough with the tomatoes and mozzarella and bake on a stone at 450 C for 90 s, until blistered.
  do Scatter over the basil leaves.
`,
    ],
    [
      'Apple chutney',
      `recipe Apple chutney
  yield 1.5 kg
  1 kg cooking apples, peeled and chopped
  400 g onions, chopped
  250 g sultanas
  400 g dark muscovado sugar
  500 ml malt vinegar
  10 g fine salt
  1 tbsp ground ginger
  do Put everything in a pan and simmer for 1 h 30 min until thick.
  do Spoon into hot sterilised jars, seal and mature in a cupboard for 4 weeks.
`,
    ],
    [
      'Chocolate chip cookies',
      `recipe Chocolate chip cookies
  yield 24 cookies
part dough as cookie
  1 cup = 226 g unsalted butter
  3/4 cup granulated sugar
  1 cup packed dark brown sugar
  2 large eggs
  2 tsp vanilla extract
  2 1/4 cups all purpose flour
  1 tsp baking soda
  1 tsp kosher salt
  2 cups chocolate chips
  do Beat the butter with both sugars; beat in the eggs and vanilla.
  do Stir in the flour, baking soda and salt, then the chocolate chips.
  do Drop by tablespoons on a sheet and bake at 375 F for 9-11 min until the edges are brown.
`,
    ],
    [
      'Tacos al pastor',
      `recipe Tacos al pastor
  yield 6 servings
  2 lb boneless pork shoulder, sliced thin
  3 dried guajillo chiles
  1/2 cup pineapple juice
  2 tbsp white vinegar
  2 tsp kosher salt
  12 corn tortillas
  do Blend the chiles, pineapple juice, vinegar and salt, and marinate the pork in it in the fridge overnight.
  do Grill over high heat for 4 min a side until charred and 145 F inside, and rest for 3 min.
  do Chop and serve in the tortillas.
`,
    ],
    [
      'New England clam chowder as soup',
      `recipe New England clam chowder as soup
  yield 6 servings
  4 slices bacon, chopped
  1 onion, diced
  2 tbsp all-purpose flour
  3 cups diced potatoes
  2 cups clam juice
  2 cans of 6.5 oz clams
  1 1/2 cups half-and-half
  do Fry the bacon until crisp, add the onion and cook until soft.
  do Stir in the flour, then the clam juice and the potatoes; simmer for 15 min until tender.
  do Add the clams and half-and-half and heat through without boiling.
`,
    ],
    [
      'Treacle tart',
      `recipe Treacle tart
  yield 8 slices
  pan round 23 x 3 cm
part pastry as sweet paste
  200 g plain flour
  100 g butter
  50 g icing sugar
  1 large egg
  do Rub the butter into the flour and sugar, bind with the egg, wrap and chill for 30 min.
  do Roll out, line the tin and rest in the fridge for 30 min. Bake blind at 180 C for 15 min until dry.
part filling
  400 g golden syrup
  120 g fresh white breadcrumbs
  1 lemon, zest and juice
  1 large egg, beaten
  do Warm the syrup, stir in the breadcrumbs, lemon and egg, and pour into the case.
  do Bake at 160 C for 30-35 min until set and golden.
`,
    ],
    [
      'Overnight oats',
      `recipe Overnight oats
  yield 2 bowls
  100 g rolled oats
  250 ml milk
  100 g Greek yogurt
  20 g chia seeds
  15 ml maple syrup
  do Stir everything together, cover and leave in the fridge overnight.
`,
    ],
    [
      'Focaccia',
      `recipe Focaccia
  yield 1 tray
part dough as flatbread
  500 g strong white flour
  375 g water
  10 g fine salt
  7 g fast-action yeast
  30 ml olive oil
  do Mix the flour, water, salt, yeast and oil; prove at 25 C for 1 h 30 min.
  do Stretch into an oiled tin, prove for 45 min and bake at 220 C for 20 min until golden.
`,
    ],
    [
      'Roast leg of lamb as roast',
      `recipe Roast leg of lamb as roast
  yield 8 portions
  2.2 kg leg of lamb
  4 cloves garlic, slivered
  20 g rosemary
  30 ml olive oil
  12 g salt
  do Stud the lamb with the garlic and rosemary and rub with the oil and salt.
  do Roast at 220 C for 20 min, then at 170 C for 1 h 20 min, to 63 C in the thickest part.
  do Rest for 20 min.
`,
    ],
    [
      'Pesto',
      `recipe Pesto
  yield 250 g
  60 g basil leaves
  40 g pine nuts
  1 clove garlic
  50 g Parmesan, grated
  120 ml olive oil
  do Blitz everything; keep in the fridge and use within 3 d.
`,
    ],
    [
      'Hummus',
      `recipe Hummus
  yield 400 g
  1 tin of 400 g chickpeas, drained
  80 g tahini
  40 ml lemon juice
  1 clove garlic
  30 ml olive oil
  4 g salt
  do Blend the chickpeas with the tahini, lemon juice, garlic and salt; drizzle with the oil.
`,
    ],
    [
      'Buttercream',
      `recipe Buttercream
  yield 600 g
  200 g unsalted butter, soft
  400 g icing sugar
  2 tbsp milk
  1 tsp vanilla extract
  do Beat the butter until pale, then the icing sugar, milk and vanilla.
`,
    ],
    [
      'Cornbread',
      `recipe Cornbread
  yield 9 squares
  pan square 8 x 2 in
  oven 400 F
  1 cup yellow cornmeal
  1 cup all-purpose flour
  1/4 cup sugar
  1 tbsp baking powder
  1/2 tsp salt
  1 cup buttermilk
  2 large eggs
  1/4 cup = 57 g butter, melted
  do Whisk the cornmeal, flour, sugar, baking powder and salt.
  do Stir in the buttermilk, eggs and butter and scrape into the pan.
  do Bake for 20-25 min until golden and a skewer comes out clean.
`,
    ],
    [
      'Marmalade',
      `recipe Marmalade
  yield 8 jars
part marmalade as jam
  1 kg Seville oranges
  2 l water
  2 kg granulated sugar
  1 lemon, juiced
  do Simmer the oranges whole in the water for 2 h until soft; halve, scoop out and shred the peel.
  do Add the lemon and the sugar and boil to 104.5 C.
  do Stand for 15 min, pot in hot jars and seal.
`,
    ],
    [
      'Confit garlic',
      `recipe Confit garlic
  yield 1 jar
  200 g garlic, peeled
  300 ml olive oil
  do Cook the garlic in the oil at 95 C for 1 h until soft.
  do Cool over ice, cover with the oil, keep at 4 C and use within 4 d.
`,
    ],
    [
      'Corned beef',
      `recipe Corned beef
  yield 2 kg
part brine
  4 l water
  200 g fine salt
  18 g curing salt no. 1
  100 g brown sugar
  do Boil the water with the fine salt, curing salt and sugar; chill at 4 C.
part beef
  2 kg beef brisket
  do Submerge the beef in the brine and keep at 4 C for 5 d.
  do Rinse and simmer for 3 h until tender.
`,
    ],
    [
      'Gelato al pistacchio',
      `recipe Gelato al pistacchio
  yield 1 l
part mix as ice cream
  600 g whole milk
  120 g double cream
  130 g caster sugar
  30 g dextrose
  35 g skimmed milk powder
  80 g pistachio paste
  do Heat the milk, cream, sugar, dextrose and milk powder to 85 C and blend in the pistachio paste.
  do Cool over ice to 4 C within 1 h, age overnight and churn.
`,
    ],
    [
      'Fish and chips',
      `recipe Fish and chips
  yield 4
part batter as pancake batter
  200 g plain flour
  8 g baking powder
  300 ml cold lager
  4 g salt
  do Whisk the flour, baking powder, salt and lager.
part fish
  800 g cod fillet
  2 l sunflower oil
  do Heat the oil to 180 C. Dip the cod in the batter and fry for 6 min until golden and 63 C inside.
`,
    ],
    [
      'Beef marinade',
      `recipe Beef marinade
  yield 4
  600 g beef rump
  100 ml soy sauce
  do Marinate the beef in the soy sauce overnight in the fridge.
  do Grill for 8 min until 63 C inside.
`,
    ],
    [
      'Quick marinade',
      `recipe Quick marinade
  yield 4
  600 g chicken thighs
  50 ml lemon juice
  do Marinate the chicken in the lemon juice for 30 min at room temperature.
  do Grill for 12 min until 75 C inside.
`,
    ],
    [
      'Marinated mushrooms',
      `recipe Marinated mushrooms
  yield 4
  400 g mushrooms
  100 ml white wine vinegar
  50 ml olive oil
  do Marinate the mushrooms in the vinegar and olive oil for 6 h at room temperature.
`,
    ],
    [
      'Sous vide steak',
      `recipe Sous vide steak
  yield 2
  600 g beef sirloin steak
  do Cook the beef sous vide at 56 C for 3 h, then sear for 1 min a side until brown.
`,
    ],
    [
      'Caramelised onion relish',
      `recipe Caramelised onion relish
  yield 3 jars
  1 kg onions, sliced
  30 ml olive oil
  200 g brown sugar
  300 ml balsamic vinegar
  do Soften the onions in the oil for 30 min, add the sugar and balsamic vinegar and simmer until thick.
  do Spoon into sterilised jars and seal. Refrigerate once opened.
`,
    ],
    [
      'Salsa verde',
      `recipe Salsa verde
  yield 250 g
  60 g parsley
  30 g capers
  150 ml olive oil
  20 ml red wine vinegar
  1 clove garlic
  do Chop the parsley, capers and garlic, stir in the oil and vinegar and leave to stand at room temperature for 30 min.
`,
    ],
    [
      'Roast vegetables',
      `recipe Roast vegetables
  yield 4 portions
  500 g courgettes, sliced
  500 g aubergines, diced
  80 ml olive oil
  3 cloves garlic
  do Toss the courgettes, aubergines and garlic in the oil and roast at 200 C for 40 min until browned.
  do Cover and stand for 10 min before serving.
`,
    ],
    [
      'Pancakes for a crowd',
      `recipe Pancakes for a crowd
  yield 20 pancakes
  3 cups all-purpose flour
  2 tbsp baking powder
  3 tbsp sugar
  1 tsp salt
  2 1/2 cups milk
  3 eggs
  75 g butter, melted
  do Whisk the flour, baking powder, sugar and salt; whisk in the milk, eggs and butter.
  do Fry on a griddle for 2 min a side until golden; keep warm in a 200 F oven.
`,
    ],
    [
      'Turkey brine and roast',
      `recipe Turkey brine and roast
  yield 10 portions
part brine
  5 l water
  300 g salt
  100 g sugar
  do Boil 1 l of the water with the salt and sugar, add the rest of the water and chill to 4 C.
part turkey
  5 kg whole turkey
  do Submerge the turkey in the brine and keep at 3 C for 18 h.
  do Roast at 170 C for 2 h 45 min until the thigh reads 76 C.
`,
    ],
    [
      'Peach jam',
      `recipe Peach jam
  yield 5 jars
part jam as jam
  1 kg peaches, peeled and stoned
  700 g sugar
  40 ml lemon juice
  do Simmer the peaches with the lemon juice for 15 min, add the sugar and boil to 104 C.
  do Put into hot jars and seal.
`,
    ],
    [
      'Mango chutney',
      `recipe Mango chutney
  yield 4 jars
  1 kg mangoes, diced
  300 g sugar
  300 ml cider vinegar
  20 g ginger, grated
  5 g salt
  do Simmer everything for 45 min until thick; pack in hot jars, seal and store in the larder.
`,
    ],
  ])('%s', (_name, text) => {
    expect(found(text)).toEqual([]);
  });
});

describe('recipes with one slip', () => {
  test.each<[string, string, string[]]>([
    [
      'Beef stew: held-too-warm',
      `recipe Beef stew
  yield 6 portions
  1 kg stewing beef, diced
  30 g oil
  2 onions, chopped
  1 l beef stock
  do Brown the beef in the oil with the onions, add the stock and simmer for 2 h.
  do Transfer to a bain-marie and keep at 120 F for service.
`,
      ['held-too-warm error'],
    ],
    [
      'Lentil dal: cooling-too-slow',
      `recipe Lentil dal
  yield 6 portions
  400 g red lentils
  1.5 l water
  1 onion, chopped
  30 g ghee
  do Fry the onion in the ghee, add the lentils and water and simmer for 30 min.
  do Leave the pot on the worktop until morning, about 10 h, then refrigerate.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Fried rice base: cooling-too-slow',
      `recipe Fried rice base
  yield 2 kg
  800 g jasmine rice
  1.1 l water
  do Boil the rice in the water for 12 min, cover and steam for 10 min.
  do Let the rice sit out at room temperature for 8 h before frying.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Turkey burgers: undercooked',
      `recipe Turkey burgers
  yield 4 burgers
  500 g ground turkey
  1 egg
  50 g breadcrumbs
  5 g salt
  do Mix the turkey, egg, breadcrumbs and salt and form 4 patties.
  do Grill for 5 min a side until the internal temperature is 150 F.
`,
      ['undercooked error'],
    ],
    [
      'Pork and fennel meatballs: undercooked',
      `recipe Pork and fennel meatballs
  yield 24 meatballs
  600 g minced pork
  2 tsp fennel seeds
  60 g fresh breadcrumbs
  8 g salt
  do Mix the minced pork, fennel seeds, breadcrumbs and salt and roll into 24 balls.
  do Bake at 200 C for 12 min, pulling them at 57 C in the middle.
`,
      ['undercooked error'],
    ],
    [
      'Chicken goujons: no-safe-temperature',
      `recipe Chicken goujons
  yield 4 portions
  500 g chicken breast, cut in strips
  50 g plain flour
  2 eggs, beaten
  100 g panko
  1 l sunflower oil
  do Coat the chicken in the flour, then the eggs, then the panko.
  do Shallow-fry in the oil for 2 min a side until golden.
`,
      ['no-safe-temperature info'],
    ],
    [
      'Chocolate mousse: raw-egg',
      `recipe Chocolate mousse
  yield 6 portions
  200 g dark chocolate
  4 eggs, separated
  40 g caster sugar
  do Melt the chocolate and beat in the yolks.
  do Whisk the whites with the sugar to soft peaks, fold in and chill for 4 h.
`,
      ['raw-egg error'],
    ],
    [
      'Caesar dressing: raw-egg',
      `recipe Caesar dressing
  yield 250 ml
  2 coddled eggs
  150 ml olive oil
  30 ml lemon juice
  3 anchovy fillets
  do Blend the eggs, lemon juice and anchovies, and trickle in the oil.
`,
      ['raw-egg error'],
    ],
    [
      'Egg nog: raw-egg',
      `recipe Egg nog
  yield 6 glasses
  6 egg yolks
  120 g sugar
  500 ml milk
  250 ml double cream
  200 ml dark rum
  do Beat the yolks with the sugar until pale; stir in the milk, cream and rum, and chill.
`,
      ['raw-egg error'],
    ],
    [
      'Edible cookie dough: raw-flour',
      `recipe Edible cookie dough
  yield 8 portions
  150 g butter, softened
  150 g light brown sugar
  200 g plain flour
  100 g chocolate chips
  do Beat the butter and sugar, then stir in the flour and the chocolate chips. Roll in balls and chill.
`,
      ['raw-flour error'],
    ],
    [
      'Birthday milkshake: raw-flour',
      `recipe Birthday milkshake
  yield 2 glasses
  400 ml milk
  200 g vanilla ice cream
  60 g yellow cake mix
  do Blend the milk, ice cream and cake mix and serve.
`,
      ['raw-flour error'],
    ],
    [
      'Roasted peppers in jars: low-acid-preserve',
      `recipe Roasted peppers in jars
  yield 4 jars
  2 kg red peppers
  20 g salt
  do Roast the peppers at 220 C for 30 min until black, and peel.
  do Pack in jars with the salt, screw the lids on tight and boil in a water bath for 20 min. Keeps for a year.
`,
      ['low-acid-preserve error'],
    ],
    [
      'Canned beef stew: low-acid-preserve',
      `recipe Canned beef stew
  yield 6 jars
  1.5 kg stewing beef
  500 g carrots, diced
  1 l beef stock
  do Simmer the beef and carrots in the stock for 1 h 30 min.
  do Ladle into Mason jars, cap, and process in a boiling water canner for 3 h.
`,
      ['low-acid-preserve error'],
    ],
    [
      'Marinated artichokes: low-acid-preserve',
      `recipe Marinated artichokes
  yield 3 jars
  1 kg artichoke hearts
  1 l water
  50 ml lemon juice
  10 g salt
  do Boil the artichoke hearts in the water with the lemon juice and salt for 15 min.
  do Pot into sterilised jars, cover with the cooking liquor, seal and store on a cool shelf.
`,
      ['low-acid-preserve error'],
    ],
    [
      'Chilli oil: garlic-in-oil',
      `recipe Chilli oil
  yield 500 ml
  500 ml rapeseed oil
  60 g red chillies, sliced
  6 cloves garlic
  do Warm the oil with the chillies and garlic to 90 C and leave to infuse.
  do Decant into bottles; it lasts for 3 months in the larder.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Slow-roast tomatoes: garlic-in-oil',
      `recipe Slow-roast tomatoes
  yield 2 jars
  1 kg cherry tomatoes
  500 ml olive oil
  4 sprigs thyme
  5 cloves garlic
  do Roast the tomatoes at 120 C for 3 h.
  do Pack in a jar with the garlic and thyme, cover with the oil and store at room temperature for up to a month.
`,
      ['garlic-in-oil error', 'no-doneness-cue info'],
    ],
    [
      'Corned beef: curing-salt-dose',
      `recipe Corned beef
  yield 2 kg
part brine
  2 l water
  150 g kosher salt
  4 tbsp pink curing salt
  100 g brown sugar
  do Bring the water to the boil with the kosher salt, pink curing salt and sugar; chill.
part beef
  2 kg beef brisket
  do Submerge the brisket in the brine and refrigerate at 4 C for 7 d.
  do Rinse and simmer for 3 h until tender.
`,
      ['curing-salt-dose error'],
    ],
    [
      'Summer sausage: curing-salt-dose',
      `recipe Summer sausage
  yield 2 kg
  4 lb ground beef
  1 lb ground pork
  2 tbsp prague powder #1
  3 tbsp salt
  do Mix the beef, pork, prague powder and salt, stuff and chill overnight.
  do Smoke to 160 F inside.
`,
      ['curing-salt-dose error'],
    ],
    [
      'Roast potatoes: implausible-temperature',
      `recipe Roast potatoes
  yield 4 portions
  1 kg potatoes
  60 g goose fat
  do Heat the oven to 425 C.
  do Parboil the potatoes for 8 min, toss in the goose fat and roast for 45 min until crisp.
`,
      ['implausible-temperature error'],
    ],
    [
      'Meat loaf: implausible-temperature',
      `recipe Meat loaf
  yield 8 slices
  1 kg ground beef
  2 eggs
  80 g breadcrumbs
  do Mix the ground beef, eggs and breadcrumbs and shape in a tin.
  do Bake at 350 F for 1 h, until a thermometer in the middle shows 160 C.
`,
      ['implausible-temperature error'],
    ],
    [
      'Crumble: oven-not-set',
      `recipe Crumble
  yield 6 portions
  800 g apples, sliced
  150 g plain flour
  100 g butter
  100 g demerara sugar
  do Rub the butter into the flour and stir in the sugar.
  do Scatter over the apples and bake until golden and bubbling, about 40 min.
`,
      ['oven-not-set warning'],
    ],
    [
      'Roast squash: time-missing',
      `recipe Roast squash
  yield 4 portions
  1 butternut squash
  30 ml olive oil
  do Toss the squash in the oil and roast at 200 C.
`,
      ['time-missing warning'],
    ],
    [
      'Dinner rolls: yield-mismatch',
      `recipe Dinner rolls
  yield 20 rolls of 75 g
  500 g bread flour
  300 ml milk
  60 g butter
  8 g salt
  7 g instant yeast
  do Knead the flour, milk, butter, salt and yeast for 10 min and prove for 1 h at 24 C.
  do Shape, prove for 40 min and bake at 200 C for 15 min until golden.
`,
      ['yield-mismatch warning'],
    ],
    [
      'Victoria sponge: pan-overfull',
      `recipe Victoria sponge
  yield 8 slices
  pan round 18 x 3 cm
part cake as creamed cake
  350 g butter
  350 g caster sugar
  6 large eggs
  350 g self-raising flour
  do Cream the butter and sugar, beat in the eggs, fold in the flour.
  do Bake at 180 C for 30 min until springy.
`,
      ['pan-overfull warning'],
    ],
    [
      'Pancakes: leavening-out-of-range',
      `recipe Pancakes
  yield 12
part batter as pancake batter
  2 cups flour
  4 tbsp baking powder
  2 tbsp sugar
  2 large eggs
  1 3/4 cups milk
  60 g butter, melted
  do Whisk everything together and fry on a griddle for 2 min a side until golden.
`,
      ['leavening-out-of-range warning'],
    ],
    [
      'Overnight white: yeast-out-of-range',
      `recipe Overnight white
  yield 1 loaf
part dough as lean bread
  500 g bread flour
  360 g water
  10 g salt
  2 tbsp instant yeast
  do Mix the flour, water, salt and yeast and leave at 21 C for 12 h.
  do Shape and bake at 230 C for 40 min until hollow when tapped.
`,
      ['yeast-out-of-range warning'],
    ],
    [
      'Dill pickles: weak-brine',
      `recipe Dill pickles
  yield 2 jars
part pickles as lacto-ferment
  1 kg cucumbers
  1 l water
  10 g salt
  20 g dill
  do Dissolve the salt in the water and pour over the cucumbers and dill.
  do Ferment at 20 C for 7 d.
`,
      ['weak-brine warning'],
    ],
    [
      'Fridge pickled onions: acid-out-of-range',
      `recipe Fridge pickled onions
  yield 1 jar
part onions as quick pickle
  2 red onions, sliced
  1/2 cup white vinegar
  2 cups water
  1 tbsp sugar
  1 tsp salt
  do Boil the vinegar, water, sugar and salt, pour over the onions and chill.
`,
      ['acid-out-of-range warning'],
    ],
    [
      'Pineapple jelly: gel-wont-set',
      `recipe Pineapple jelly
  yield 6 portions
part jelly as jelly
  600 ml fresh pineapple juice
  80 g sugar
  6 sheets gelatine
  do Soak the gelatine in cold water, melt in a little of the juice with the sugar, stir in the rest and chill for 4 h.
`,
      ['gel-wont-set warning'],
    ],
    [
      'Creme brulee: custard-wont-set',
      `recipe Creme brulee
  yield 6 portions
part custard as baked custard
  600 ml double cream
  1 large egg yolk
  80 g caster sugar
  1 vanilla pod
  do Heat the cream with the vanilla pod, whisk into the yolk and sugar, pour in ramekins.
  do Bake at 130 C for 40 min until barely set and 78 C inside.
`,
      ['custard-wont-set warning'],
    ],
    [
      'Limoncello sorbet: freeze-out-of-range',
      `recipe Limoncello sorbet
  yield 1 l
part mix as sorbet
  300 ml water
  200 g sugar
  400 ml limoncello
  100 ml lemon juice
  do Boil the water with the sugar, cool, add the limoncello and lemon juice, chill and churn.
`,
      ['freeze-out-of-range warning'],
    ],
    [
      'Mayonnaise: emulsion-unstable',
      `recipe Mayonnaise
  yield 900 ml
part mayo as mayonnaise
  1 pasteurised egg yolk
  900 ml sunflower oil
  1 tbsp vinegar
  do Whisk the yolk with the vinegar and trickle in the oil.
`,
      ['emulsion-unstable warning'],
    ],
    [
      'White loaf: salt-out-of-range',
      `recipe White loaf
  yield 1 loaf
part dough as lean bread
  500 g strong white flour
  320 ml water
  2 tbsp fine salt
  7 g instant yeast
  do Mix the flour, water, salt and yeast, knead for 10 min and prove for 1 h at 25 C.
  do Shape, prove for 45 min at 25 C and bake at 220 C for 35 min until it sounds hollow.
`,
      ['salt-out-of-range warning'],
    ],
    [
      'Apricot jam: jam-wont-set',
      `recipe Apricot jam
  yield 4 jars
part jam as jam
  1 kg apricots
  250 g sugar
  do Simmer the apricots with the sugar for 30 min and pot.
`,
      ['jam-wont-set warning'],
    ],
    [
      'Rice pudding: leftover-amount',
      `recipe Rice pudding
  yield 4 portions
  1 l whole milk
  100 g pudding rice
  50 g sugar
  do Simmer the rice in 600 ml of the milk with the sugar for 40 min until creamy.
`,
      ['leftover-amount warning'],
    ],
    [
      'Garlic bread: overdrawn-amount',
      `recipe Garlic bread
  yield 1 loaf
  150 g butter
  20 g parsley
  1 baguette
  do Beat 120 g of the butter with the parsley, spread over the baguette.
  do Bake at 200 C for 10 min until crisp, then brush with 80 g of the butter.
`,
      ['overdrawn-amount warning'],
    ],
    [
      'Tart case: short-rest',
      `recipe Tart case
  yield 1 case
part pastry as sweet paste
  250 g plain flour
  125 g butter
  80 g icing sugar
  1 egg
  do Rub the butter into the flour and icing sugar, bind with the egg and chill for 10 min.
  do Roll out, line the tin and bake at 180 C for 20 min until golden.
`,
      ['short-rest info', 'short-rest info'],
    ],
    [
      'Mushroom soup as soup: cooling-too-slow',
      `recipe Mushroom soup as soup
  yield 4 portions
  500 g mushrooms, sliced
  800 ml chicken stock
  150 ml single cream
  do Simmer the mushrooms in the stock for 20 min, blend and stir in the cream.
  do Leave it on the stove until the next morning.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Chicken curry: cooling-too-slow',
      `recipe Chicken curry
  yield 4 portions
  600 g chicken thighs, diced
  200 g yoghurt
  2 onions, sliced
  do Simmer the chicken with the onions and yoghurt for 40 min until 80 C inside.
  do Let stand at room temperature overnight to develop.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Cold tortellini salad: cooling-too-slow',
      `recipe Cold tortellini salad
  yield 6 portions
  500 g dried pasta
  200 g ham, diced
  150 g mayonnaise
  do Boil the pasta for 10 min; drain, and toss with the ham and mayonnaise.
  do Set out on the buffet table for 6 h.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Potato salad: held-too-warm',
      `recipe Potato salad
  yield 6 portions
  1 kg potatoes, boiled
  200 g mayonnaise
  3 hard-boiled eggs
  do Mix the potatoes, mayonnaise and eggs.
  do Hold in a display fridge at 55 F until served.
`,
      ['held-too-warm error'],
    ],
    [
      'Gravy: held-too-warm',
      `recipe Gravy
  yield 1 l
  1 l beef stock
  60 g roux
  do Whisk the roux into the simmering stock and cook for 10 min.
  do Keep warm in a flask at 50 C for the service.
`,
      ['unknown-food info', 'held-too-warm error'],
    ],
    [
      'Chicken liver parfait: undercooked',
      `recipe Chicken liver parfait
  yield 1 terrine
  400 g chicken livers
  200 g butter, melted
  3 eggs
  100 ml port
  do Blend the livers, eggs and port, then the butter.
  do Pour into a terrine and bake in a water bath at 130 C until the centre reads 60 C.
`,
      ['undercooked error'],
    ],
    [
      'Reheated pilaf: undercooked',
      `recipe Reheated pilaf
  yield 4 portions
  500 g cooked rice
  100 g cooked chicken
  do Reheat the rice with the chicken to 55 C and serve.
`,
      ['undercooked error'],
    ],
    [
      'Salmon burgers: undercooked',
      `recipe Salmon burgers
  yield 4
  500 g salmon fillet, minced
  1 egg
  do Mix the salmon with the egg, form 4 patties and grill until the middle hits 52 C.
`,
      ['undercooked error'],
    ],
    [
      'Meatballs in the microwave: undercooked',
      `recipe Meatballs in the microwave
  yield 12
  500 g minced beef
  1 egg
  do Mix the minced beef and egg, roll in balls and microwave on high for 8 min until they register 68 C.
`,
      ['undercooked error'],
    ],
    [
      'Steak tartare: no-safe-temperature',
      `recipe Steak tartare
  yield 2 portions
  300 g beef fillet
  1 pasteurised egg yolk
  10 g capers
  do Chop the beef finely and mix with the yolk and capers.
`,
      ['no-safe-temperature error'],
    ],
    [
      'Ceviche: no-safe-temperature',
      `recipe Ceviche
  yield 4 portions
  500 g sea bass fillets
  6 limes, juiced
  do Dice the sea bass and marinate in the limes for 20 min.
`,
      ['no-safe-temperature error'],
    ],
    [
      'Kebabs: no-safe-temperature',
      `recipe Kebabs
  yield 6
  600 g lamb mince
  1 onion, grated
  8 g salt
  do Mix the lamb mince with the onion and salt, mould on skewers.
  do Barbecue over hot coals for 10 min until browned.
`,
      ['no-safe-temperature info'],
    ],
    [
      'Aioli: raw-egg',
      `recipe Aioli
  yield 300 ml
  2 egg yolks
  3 cloves garlic
  250 ml olive oil
  20 ml lemon juice
  do Pound the garlic, whisk in the yolks and lemon juice and drip in the oil.
`,
      ['raw-egg error'],
    ],
    [
      'Royal icing: raw-egg',
      `recipe Royal icing
  yield 500 g
  2 egg whites
  450 g icing sugar
  do Beat the egg whites with the icing sugar until stiff and pipe onto the cake.
`,
      ['raw-egg error'],
    ],
    [
      'Semifreddo: raw-egg',
      `recipe Semifreddo
  yield 8 slices
  4 eggs
  100 g caster sugar
  400 ml double cream
  do Whisk the eggs and sugar until thick, fold in the whipped cream and freeze at -18 C for 6 h.
`,
      ['raw-egg error'],
    ],
    [
      'Whisky sour: raw-egg',
      `recipe Whisky sour
  yield 2 glasses
  100 ml whisky
  50 ml lemon juice
  30 ml sugar syrup
  1 egg white
  do Shake everything with ice and strain.
`,
      ['raw-egg error'],
    ],
    [
      'Fudge brownie batter truffles: raw-flour',
      `recipe Fudge brownie batter truffles
  yield 20 truffles
  120 g butter, melted
  150 g sugar
  80 g cocoa powder
  150 g all-purpose flour
  60 ml milk
  do Stir everything together, chill and roll.
`,
      ['raw-flour error'],
    ],
    [
      'Elderberry spread as jam: low-acid-preserve',
      `recipe Elderberry spread as jam
  yield 6 jars
  2 kg elderberries
  200 g sugar
  do Boil the elderberries with the sugar for 30 min and fill into hot jars. Seal at once.
`,
      ['low-acid-preserve error', 'jam-wont-set warning'],
    ],
    [
      'Garlic cloves in water: low-acid-preserve',
      `recipe Garlic cloves in water
  yield 2 jars
  500 g garlic cloves
  400 ml water
  5 g salt
  do Blanch the garlic in the water with the salt, bottle and boil the bottles for 15 min.
`,
      ['low-acid-preserve error'],
    ],
    [
      'Tomato sauce: low-acid-preserve',
      `recipe Tomato sauce
  yield 6 jars
  4 kg plum tomatoes
  2 onions, chopped
  40 g basil
  do Simmer the tomatoes with the onions and basil for 1 h 30 min.
  do Ladle into sterilized jars, put the lids on and turn them upside down.
`,
      ['low-acid-preserve error'],
    ],
    [
      'Corn relish: low-acid-preserve',
      `recipe Corn relish
  yield 4 jars
  1 kg sweetcorn
  300 g red pepper
  100 ml white wine vinegar
  500 ml water
  100 g sugar
  do Simmer everything for 20 min, pack into jars and process in a water bath for 15 min.
`,
      ['low-acid-preserve error'],
    ],
    [
      'Confit garlic: garlic-in-oil',
      `recipe Confit garlic
  yield 1 jar
  300 g garlic cloves, peeled
  400 ml olive oil
  do Cook the garlic in the oil at 95 C for 1 h until soft.
  do Cover with the oil in a jar and refrigerate for up to 3 months.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Basil oil: garlic-in-oil',
      `recipe Basil oil
  yield 300 ml
  100 g basil
  300 ml grapeseed oil
  do Blanch the basil, squeeze dry and blend with the oil.
  do Strain and keep on the counter for a week.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Antipasto aubergines: garlic-in-oil',
      `recipe Antipasto aubergines
  yield 2 jars
  800 g aubergines, sliced
  250 ml olive oil
  3 cloves garlic
  do Grill the aubergines until soft.
  do Layer in a jar with the garlic, submerge in the oil and keep in the pantry for 2 months.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Pastrami: curing-salt-dose',
      `recipe Pastrami
  yield 2 kg
  2 kg beef brisket
  60 g kosher salt
  2 tbsp pink salt
  30 g sugar
  do Rub the brisket with the salts and sugar and refrigerate for 6 d.
  do Smoke to 93 C inside.
`,
      ['curing-salt-dose error', 'unknown-food info'],
    ],
    [
      'Salami: curing-salt-dose',
      `recipe Salami
  yield 1 kg
  1 kg pork shoulder, minced
  25 g salt
  10 g cure #2
  do Mix the pork with the salt and cure, stuff into casings and dry at 13 C for 30 d.
`,
      ['curing-salt-dose error'],
    ],
    [
      'Sponge: implausible-temperature',
      `recipe Sponge
  yield 8 slices
  oven 350 C
  120 g butter
  120 g sugar
  2 eggs
  120 g self-raising flour
  do Cream the butter and sugar, beat in the eggs and fold in the flour.
  do Bake for 25 min until golden.
`,
      ['implausible-temperature error'],
    ],
    [
      'Yoghurt bread: implausible-temperature',
      `recipe Yoghurt bread
  yield 1 loaf
  500 g bread flour
  300 g water
  9 g salt
  5 g instant yeast
  do Mix the flour, water, salt and yeast, and prove at 75 C for 1 h.
  do Bake at 220 C for 30 min until it sounds hollow.
`,
      ['implausible-temperature error'],
    ],
    [
      'Roast beef as roast: implausible-temperature',
      `recipe Roast beef as roast
  yield 6 portions
  1.5 kg beef topside
  do Roast at 180 C for 1 h until the middle reads 135 C.
`,
      ['implausible-temperature error'],
    ],
    [
      'Creme patissiere as pastry cream: cooling-too-slow',
      `recipe Creme patissiere as pastry cream
  yield 700 g
  500 ml milk
  5 egg yolks
  100 g sugar
  45 g cornflour
  do Whisk the yolks, sugar and cornflour, pour on the hot milk and boil for 2 min.
  do Cool to 20 C in 4 h on the bench.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Oysters with shallot: no-safe-temperature',
      `recipe Oysters with shallot
  yield 2 portions
  12 oysters
  30 ml red wine vinegar
  1 shallot, minced
  do Shuck the oysters, mix the vinegar and shallot and serve on ice.
`,
      ['no-safe-temperature error'],
    ],
    [
      'Slow pork belly: undercooked',
      `recipe Slow pork belly
  yield 6 portions
  1.5 kg pork belly
  do Roast at 230 F for 5 h until it reads 145 F in the centre. Rest for 3 min.
`,
      ['undercooked info'],
    ],
    [
      'Madeira as pound cake: sugar-out-of-range',
      `recipe Madeira as pound cake
  yield 1 loaf
  175 g butter
  600 g caster sugar
  3 eggs
  250 g self-raising flour
  do Cream the butter and sugar, beat in the eggs, fold in the flour.
  do Bake at 160 C for 1 h until a skewer comes out clean.
`,
      ['sugar-out-of-range warning', 'egg-out-of-range info'],
    ],
    [
      'Pie crust as shortcrust: fat-out-of-range',
      `recipe Pie crust as shortcrust
  yield 1 crust
  2 1/2 cups all-purpose flour
  1/4 cup butter
  1/2 tsp salt
  6 tbsp ice water
  do Cut the butter into the flour and salt, and bind with the water.
`,
      ['fat-out-of-range warning'],
    ],
    [
      'Soda scones as scone: dough-too-wet',
      `recipe Soda scones as scone
  yield 8
  250 g plain flour
  400 ml buttermilk
  1 tsp baking soda
  50 g butter
  do Rub the butter into the flour and soda, and stir in the buttermilk.
`,
      ['dough-too-wet warning'],
    ],
    [
      'Eclairs as choux: egg-out-of-range',
      `recipe Eclairs as choux
  yield 12
  125 g water
  60 g butter
  75 g plain flour
  1 egg
  do Boil the water and butter, beat in the flour, then the egg.
`,
      ['egg-out-of-range warning'],
    ],
    [
      'White sauce as roux sauce: starch-out-of-range',
      `recipe White sauce as roux sauce
  yield 1 l
  5 g butter
  10 g plain flour
  1 l milk
  do Melt the butter, stir in the flour and whisk in the milk; simmer for 5 min.
`,
      ['starch-out-of-range warning'],
    ],
    [
      'Creme caramel as baked custard: custard-too-firm',
      `recipe Creme caramel as baked custard
  yield 6
  300 ml milk
  8 large eggs
  80 g sugar
  do Whisk the milk, eggs and sugar and bake at 150 C for 40 min until the centre reads 80 C.
`,
      ['custard-too-firm info'],
    ],
    [
      'Panna cotta as set cream: gel-too-firm',
      `recipe Panna cotta as set cream
  yield 4
  500 ml double cream
  60 g sugar
  3 tbsp powdered gelatine
  do Soak the gelatine in 50 ml water, melt into the warm cream and sugar, and chill for 4 h.
`,
      ['gel-too-firm warning'],
    ],
    [
      'Truffles as ganache: solids-out-of-range',
      `recipe Truffles as ganache
  yield 30
  200 g dark chocolate
  500 ml double cream
  do Heat the cream to 80 C, pour over the chocolate and stir.
`,
      ['solids-out-of-range warning'],
    ],
    [
      'Roast turkey: undercooked',
      `recipe Roast turkey
  yield 10 portions
  oven 325 F
  1 whole turkey
  60 g butter
  do Rub the turkey with the butter and roast for 3 h, until a thermometer in the breast says 145 F.
`,
      ['undercooked error'],
    ],
    [
      'Hamburgers: undercooked',
      `recipe Hamburgers
  yield 4
  600 g ground chuck
  6 g salt
  do Shape the chuck in 4, salt and grill over high heat to medium-rare, 130 F in the middle.
`,
      ['undercooked error'],
    ],
    [
      'Chicken Kiev: undercooked',
      `recipe Chicken Kiev
  yield 4
  4 chicken breasts
  100 g garlic butter
  80 g breadcrumbs
  do Fill the chicken breasts with the garlic butter and coat with the breadcrumbs.
  do Bake at 200 C for 20 min until the probe shows 68 C.
`,
      ['unknown-food info', 'undercooked error'],
    ],
    [
      'Duck breast: undercooked',
      `recipe Duck breast
  yield 2
  2 duck breasts
  4 g salt
  do Salt the duck breasts and fry skin side down until crisp and 54 C at the core.
`,
      ['undercooked error'],
    ],
    [
      'Pork tenderloin: undercooked',
      `recipe Pork tenderloin
  yield 4
  600 g pork tenderloin
  10 g oil
  do Sear the pork in the oil and roast at 200 C to an internal 52 C.
`,
      ['undercooked error'],
    ],
    [
      'Egg custard sauce as stirred custard: undercooked',
      `recipe Egg custard sauce as stirred custard
  yield 500 ml
  500 ml milk
  5 egg yolks
  80 g sugar
  do Whisk the yolks and sugar, add the milk and cook, stirring, to 60 C.
`,
      ['undercooked error'],
    ],
    [
      'Buffet chicken: held-too-warm',
      `recipe Buffet chicken
  yield 10 portions
  2 kg chicken thighs
  40 g oil
  do Roast the chicken thighs with the oil at 200 C until they read 80 C inside.
  do Keep in a low oven at 50 C until served.
`,
      ['held-too-warm error'],
    ],
    [
      'Custard tarts: held-too-warm',
      `recipe Custard tarts
  yield 12
  300 ml milk
  3 eggs
  60 g sugar
  12 tart shells
  do Whisk the milk, eggs and sugar, fill the tart shells and bake at 170 C for 25 min until the filling reads 78 C.
  do Store at 15 C.
`,
      ['held-too-warm error'],
    ],
    [
      'Ham stock as stock: cooling-too-slow',
      `recipe Ham stock as stock
  yield 3 l
  1 kg ham bones
  4 l water
  do Simmer the ham bones in the water for 3 h.
  do Cover and let cool slowly for 12 h before skimming.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Beef chilli: cooling-too-slow',
      `recipe Beef chilli
  yield 6
  1 kg minced beef
  800 g canned tomatoes
  400 g canned kidney beans
  do Brown the minced beef, add the tomatoes and kidney beans and simmer for 1 h.
  do Cool at room temperature for 5 h, then freeze.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Cheesecake: cooling-too-slow',
      `recipe Cheesecake
  yield 12 slices
part filling as cheese filling
  900 g cream cheese
  200 g sugar
  4 eggs
  200 ml sour cream
  do Beat the cream cheese, sugar, eggs and sour cream and bake at 150 C for 1 h until the centre reads 70 C.
  do Leave on the counter overnight to set.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Tartare sauce: raw-egg',
      `recipe Tartare sauce
  yield 300 g
  1 whole egg
  250 ml rapeseed oil
  30 g capers
  30 g gherkins
  15 ml white wine vinegar
  do Blend the egg with the vinegar and slowly add the oil; stir in the capers and gherkins.
`,
      ['raw-egg error'],
    ],
    [
      'Cold lemon souffle: raw-egg',
      `recipe Cold lemon souffle
  yield 6
  3 eggs, separated
  150 g caster sugar
  2 lemons, juiced
  250 ml double cream
  3 sheets gelatine
  do Whisk the yolks with half the sugar and the lemons. Soak and melt the gelatine and stir in.
  do Whip the cream and fold in. Whisk the whites with the rest of the sugar, fold in and chill for 4 h.
`,
      ['raw-egg error'],
    ],
    [
      'Protein smoothie: raw-egg',
      `recipe Protein smoothie
  yield 1 glass
  2 raw eggs
  250 ml milk
  1 banana
  do Blend.
`,
      ['raw-egg error'],
    ],
    [
      'Flour-thickened raw nut butter bites: raw-flour',
      `recipe Flour-thickened raw nut butter bites
  yield 12 bites
  150 g peanut butter
  60 g oat flour
  40 g wholemeal flour
  40 g honey
  do Mix everything, roll into balls and chill.
`,
      ['raw-flour error', 'raw-flour error'],
    ],
    [
      'Bottled asparagus: low-acid-preserve',
      `recipe Bottled asparagus
  yield 4 jars
  2 kg asparagus
  1.5 l water
  20 g salt
  do Pack the asparagus upright in clean jars, cover with the boiling water and the salt, clip down the lids and simmer the jars for 1 h.
`,
      ['low-acid-preserve error'],
    ],
    [
      'Chicken soup for the shelf: low-acid-preserve',
      `recipe Chicken soup for the shelf
  yield 6 jars
  1 kg chicken thighs
  2 l water
  300 g carrots
  do Simmer the chicken in the water with the carrots for 1 h.
  do Fill Kilner jars to the brim, close and keep in the store cupboard.
`,
      ['low-acid-preserve error'],
    ],
    [
      'Melon preserve as jam: low-acid-preserve',
      `recipe Melon preserve as jam
  yield 4 jars
  1.5 kg cantaloupe melon
  200 g sugar
  1 vanilla pod
  do Cook the melon with the sugar and vanilla pod for 1 h, jar and seal.
`,
      ['low-acid-preserve error', 'jam-wont-set warning'],
    ],
    [
      'Pickled garlic: low-acid-preserve',
      `recipe Pickled garlic
  yield 2 jars
  500 g garlic, peeled
  100 ml rice vinegar
  300 ml water
  30 g sugar
  do Boil the rice vinegar, water and sugar, pour over the garlic in sterilised jars, seal and keep in a dark cupboard.
`,
      ['low-acid-preserve error'],
    ],
    [
      'Sun-dried tomatoes in oil: garlic-in-oil',
      `recipe Sun-dried tomatoes in oil
  yield 1 jar
  300 g sun-dried tomatoes
  250 ml olive oil
  4 cloves garlic
  10 g basil
  do Pack the tomatoes with the garlic and basil in a jar, cover with the oil and leave in a cool dark place for a month.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Porcini in oil: garlic-in-oil',
      `recipe Porcini in oil
  yield 1 jar
  500 g porcini mushrooms
  300 ml olive oil
  2 bay leaves
  do Fry the porcini until tender, put up in jars under the oil with the bay leaves and keep for the winter.
`,
      ['garlic-in-oil error'],
    ],
    [
      'Home-cured ham: curing-salt-dose',
      `recipe Home-cured ham
  yield 4 kg
part pickle
  4 l water
  300 g salt
  1 cup prague powder no. 1
  do Boil the water with the salt and the prague powder and chill at 3 C.
part ham
  4 kg pork leg
  do Inject and cover the pork with the pickle and keep at 3 C for 10 d.
  do Simmer until the centre reads 70 C.
`,
      ['curing-salt-dose error'],
    ],
    [
      'Bratwurst: curing-salt-dose',
      `recipe Bratwurst
  yield 2 kg
  1.5 kg pork shoulder, ground
  500 g veal, ground
  36 g salt
  1 oz pink cure
  do Mix the pork, veal, salt and cure; stuff in casings.
  do Poach until the centre reads 72 C.
`,
      ['curing-salt-dose error'],
    ],
    [
      'Poached salmon: implausible-temperature',
      `recipe Poached salmon
  yield 4
  800 g salmon fillet
  1 l court bouillon
  do Poach the salmon in the court bouillon until the centre reads 145 C.
`,
      ['implausible-temperature error'],
    ],
    [
      'Gingerbread: implausible-temperature',
      `recipe Gingerbread
  yield 24
  oven 180 F
  300 g plain flour
  100 g butter
  150 g treacle
  1 tsp baking soda
  do Melt the butter with the treacle, stir in the flour and soda, roll and cut out.
  do Bake for 12 min until firm.
`,
      ['implausible-temperature error'],
    ],
    [
      'Panna cotta as set cream: implausible-temperature',
      `recipe Panna cotta as set cream
  yield 4
  500 ml double cream
  60 g sugar
  3 sheets gelatine
  do Soak the gelatine, melt in the hot cream and sugar and pour in moulds.
  do Refrigerate at 39 C for 4 h.
`,
      ['implausible-temperature error'],
    ],
    [
      'Chicken satay: no-safe-temperature',
      `recipe Chicken satay
  yield 4
  500 g chicken thigh fillets
  100 ml coconut milk
  20 g curry paste
  do Marinate the chicken in the coconut milk and curry paste at 4 C for 2 h.
  do Chargrill for 8 min.
`,
      ['no-safe-temperature error', 'no-doneness-cue info'],
    ],
    [
      'Beef sliders: no-safe-temperature',
      `recipe Beef sliders
  yield 8
  700 g beef mince
  50 g onion, grated
  do Mix the mince with the onion, shape in 8 and cook on a hot griddle, 3 min a side.
`,
      ['no-safe-temperature error', 'no-doneness-cue info'],
    ],
    [
      'Turkey meatloaf: no-safe-temperature',
      `recipe Turkey meatloaf
  yield 8 slices
  900 g minced turkey
  100 g breadcrumbs
  2 eggs
  do Mix the turkey, breadcrumbs and eggs, press in a tin and bake at 180 C for 45 min.
`,
      ['no-safe-temperature error', 'no-doneness-cue info'],
    ],
    [
      'Salmon poke: no-safe-temperature',
      `recipe Salmon poke
  yield 2
  300 g salmon
  20 ml soy sauce
  10 ml sesame oil
  do Dice the salmon and toss with the soy sauce and sesame oil. Serve cold.
`,
      ['no-safe-temperature error'],
    ],
    [
      'Chicken and leek pie: no-safe-temperature',
      `recipe Chicken and leek pie
  yield 6
  500 g chicken breast, diced
  3 leeks, sliced
  200 ml cream
  320 g puff pastry sheet
  do Put the raw chicken, leeks and cream in a dish, cover with the pastry and bake at 200 C for 35 min until golden.
`,
      ['no-safe-temperature info', 'unknown-food info'],
    ],
    [
      'Chicken marinade: cooling-too-slow',
      `recipe Chicken marinade
  yield 4
  600 g chicken thighs
  150 g yoghurt
  do Marinate the chicken in the yoghurt at room temperature overnight.
  do Roast at 220 C for 30 min until 75 C inside.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Brined turkey: cooling-too-slow',
      `recipe Brined turkey
  yield 8
  4 kg turkey
  6 l water
  300 g salt
  do Dissolve the salt in the water and leave the turkey to brine on the counter for 12 h.
  do Roast at 180 C for 3 h until the thigh reads 76 C.
`,
      ['cooling-too-slow error'],
    ],
    [
      'Sous vide salmon: no-safe-temperature',
      `recipe Sous vide salmon
  yield 2
  300 g salmon fillet
  do Cook the salmon sous vide at 45 C for 40 min.
`,
      ['no-safe-temperature error'],
    ],
    [
      'Sous vide pork: no-safe-temperature',
      `recipe Sous vide pork
  yield 2
  600 g pork loin
  do Cook the pork in a water-bath at 52 C for 2 h, then sear for 1 min a side until brown.
`,
      ['no-safe-temperature error'],
    ],
  ])('%s', (_name, text, want) => {
    expect(found(text)).toEqual(want);
  });
});
