/**
 * Food that is put by, in words that no other test has: in each of the first the danger is found, and those that work and resemble them are
 * quiet about it. The recipes are invented; what is dangerous is what the rules named in the checks say.
 */
import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const found = (text: string): string[] => open(text).findings.open.map((f) => f.code);

const recipe = (name: string, list: readonly string[], ...steps: readonly string[]): string =>
  `recipe ${name}\n${list.map((line) => `  ${line}\n`).join('')}${steps.map((step) => `  do ${step}\n`).join('')}`;

const ONIONS = ['1 kg onions, peeled', '100 g malt vinegar', '900 g water', '30 g fine salt'];
const PASSATA = ['5 kg tomatoes', '10 g basil'];
const STOCK = ['2 kg beef bones', '4 l water'];
const GARLIC_BUTTER = ['500 g butter', '60 g garlic, crushed', '30 g parsley, chopped'];
const CURD = ['4 eggs', '200 g caster sugar', '120 g butter', '120 g lemon juice'];
const KIMCHI = ['2 kg Chinese cabbage', '50 g gochugaru', '20 g garlic'];

describe('found', () => {
  test.each<[string, string, string]>([
    [
      'low-acid-preserve',
      'a thin pickle left on the worktop, with no word of a lid',
      recipe(
        'Onions',
        ONIONS,
        'Pack the onions into jars, cover with the liquor, and leave on the worktop for 3 weeks.',
      ),
    ],
    [
      'low-acid-preserve',
      'inversion, and a time that is not how long it is stored',
      recipe(
        'Chutney',
        ['2 kg onions, sliced', '100 g cider vinegar', '150 g soft brown sugar'],
        'Cook the onions with the vinegar and sugar for 1 h.',
        'Spoon into hot jars, turn upside down for 5 min and store for a year.',
      ),
    ],
    [
      'low-acid-preserve',
      'sterile bottles that are capped',
      recipe(
        'Ketchup',
        ['2 kg red peppers', '300 g onions', '50 g cider vinegar', '50 g caster sugar'],
        'Roast the peppers and onions at 200 C for 40 min, then blend with the vinegar and sugar.',
        'Pour into sterile bottles, cap them and keep at room temperature.',
      ),
    ],
    [
      'low-acid-preserve',
      'caps',
      recipe(
        'Passata',
        PASSATA,
        'Cook the tomatoes for 30 min.',
        'Funnel into bottles, put on the caps and boil for 20 min.',
      ),
    ],
    [
      'low-acid-preserve',
      'bones',
      recipe(
        'Stock',
        STOCK,
        'Simmer the bones in the water for 6 h and strain.',
        'Pour into preserving jars, put on the rubber rings and sterilise in the oven at 120 C for 1 h.',
      ),
    ],
    [
      'low-acid-preserve',
      'a waterbath in one word',
      recipe(
        'Pumpkin butter',
        ['2 kg pumpkin, cubed', '300 g brown sugar'],
        'Simmer the pumpkin with the sugar until thick.',
        'Ladle into half-pint jars, leaving 5 mm headspace, and waterbath for 10 min.',
      ),
    ],
    [
      'low-acid-preserve',
      'a dishwasher',
      recipe(
        'Corn',
        ['2 kg sweetcorn kernels', '20 g fine salt', '1 l water'],
        'Fill the jars with corn, salt and water, cap loosely and run through the hot cycle of the dishwasher.',
      ),
    ],
    [
      'low-acid-preserve',
      'paraffin',
      recipe(
        'Beans',
        ['1 kg green beans', '1 l water', '20 g fine salt'],
        'Boil the beans with the salt for 20 min.',
        'Pour into crocks and cover with melted paraffin wax.',
      ),
    ],
    [
      'low-acid-preserve',
      'to can, as an order',
      recipe(
        'Meat sauce',
        ['1 kg beef mince', '500 g potatoes, diced', '300 ml beef stock'],
        'Simmer everything for 1 h until it reads 80 C.',
        'Can in quarts in a water bath for 3 h.',
      ),
    ],
    [
      'low-acid-preserve',
      'jars by their maker, with cake baked in them',
      recipe(
        'Carrot cake',
        ['300 g plain flour', '300 g carrots, grated', '200 g caster sugar', '4 eggs', '200 ml sunflower oil'],
        'Mix everything and half fill Kilner jars. Bake at 175 C for 40 min until risen, and clamp the lids on at once.',
      ),
    ],
    [
      'low-acid-preserve',
      'bread steamed in cans for the pantry',
      recipe(
        'Brown bread',
        ['300 g rye flour', '300 ml whole milk', '100 g molasses'],
        'Mix everything and fill into cans, seal with foil and steam for 3 h. Store the cans in the pantry for a year.',
      ),
    ],
    [
      'low-acid-preserve',
      'a stew bottled for the winter',
      recipe(
        'Ratatouille',
        ['1 kg courgettes', '1 kg tomatoes', '500 g aubergines', '100 ml olive oil'],
        'Stew everything for 1 h. Bottle in preserving bottles and heat in the oven at 100 C for 1 h. Lasts all winter.',
      ),
    ],
    [
      'low-acid-preserve',
      'a sauce kept at room temperature, nobody says for how long',
      recipe(
        'Pepper sauce',
        ['1 kg red peppers', '50 g cider vinegar'],
        'Simmer the peppers with the vinegar for 30 min, blend, pour into jars and keep at room temperature.',
      ),
    ],
    [
      'garlic-in-oil',
      'a bottle by the cooker',
      recipe(
        'Garlic spray',
        ['200 ml rapeseed oil', '50 g garlic'],
        'Crush the garlic into the oil in a spray bottle. Keep it by the cooker.',
      ),
    ],
    [
      'garlic-in-oil',
      'garlic butter on the counter',
      recipe('Garlic butter', GARLIC_BUTTER, 'Beat everything.', 'Roll in paper and keep on the counter for 2 weeks.'),
    ],
    [
      'garlic-in-oil',
      'too long in the cold, said in another clause',
      recipe(
        'Ready garlic',
        ['200 g garlic, minced', '250 g sunflower oil'],
        'Stir the garlic into the oil, scrape in a tub and put in the fridge; a month later it is as good.',
      ),
    ],
    [
      'garlic-in-oil',
      'lard in a crock, in a place on no list',
      recipe(
        'Garlic lard',
        ['500 g lard', '80 g garlic'],
        'Melt the lard, put the pressed garlic in and pour in a crock. Keep in the entry hall through the winter.',
      ),
    ],
    [
      'low-acid-preserve',
      'jars that nobody names, boiled in a pot',
      recipe(
        'Snap beans',
        ['2 kg green beans', '1 l water', '20 g salt'],
        'Stuff the beans in quarts with the salt and boiling water, lids on, and boil in the kettle three hours.',
      ),
    ],
    [
      'low-acid-preserve',
      'pouches that are cooked and kept',
      recipe(
        'Beetroot',
        ['2 kg beetroot', '10 g salt'],
        'Peel the beetroot, vacuum it in pouches with the salt and simmer the pouches 1 h. Keep in the cupboard all season.',
      ),
    ],
    [
      'garlic-in-oil',
      'fresh truffle, and a present',
      recipe(
        'Truffle oil',
        ['250 ml olive oil', '20 g fresh truffle, shaved'],
        'Warm the oil with the truffle to 60 C.',
        'Decant into a bottle and give as a present within the month.',
      ),
    ],
    [
      'cooling-too-slow',
      'curd in a dry cupboard, where nothing is dried',
      recipe(
        'Lemon curd',
        CURD,
        'Cook the eggs, sugar, butter and juice until the curd reads 82 C.',
        'Pot into jars and keep in a cool, dry cupboard for 2 months.',
      ),
    ],
    [
      'cooling-too-slow',
      'smoked fish in the pantry',
      recipe(
        'Smoked trout',
        ['1 kg trout fillets', '30 g salt'],
        'Salt the trout at 4 C for 12 h, then hot smoke until the centre reads 65 C.',
        'Vacuum pack and keep in the pantry for 2 months.',
      ),
    ],
    [
      'weak-brine',
      'kimchi with half a per cent of salt, and no kind',
      recipe('Kimchi', ['10 g sea salt', ...KIMCHI], 'Mix everything and pack in a jar.', 'Ferment at 20 C for 5 d.'),
    ],
    [
      'weak-brine',
      'a hot sauce for weeks',
      recipe(
        'Hot sauce',
        ['500 g red chillies', '500 g water', '5 g fine salt'],
        'Dissolve the salt in the water, cover the chillies and ferment at room temperature for 2 weeks, then blend.',
      ),
    ],
    [
      'cooling-too-slow',
      'what was cooked under pressure, and only then filled into tubs',
      recipe(
        'Stew',
        ['1 kg stewing beef', '500 g beef stock'],
        'Cook the beef and stock in a pressure cooker for 30 min.',
        'Ladle into a tub, seal it and leave to cool on the counter for 12 h.',
      ),
    ],
    [
      'low-acid-preserve',
      'jars in boiling water, with no pounds',
      recipe(
        'Peas',
        ['2 kg peas', '1 l water', '10 g fine salt'],
        'Pack the peas into jars with the salt, cover with the boiling water and put on lids.',
        'Process for 60 min.',
      ),
    ],
    [
      'cooling-too-slow',
      'flesh that thaws by what is warm, and a date',
      recipe(
        'Goose',
        ['1 frozen goose, about 4 kg'],
        'Stand the frozen goose in a bowl next to the radiator on the 24th.',
        'Roast at 180 C until the thickest part of the thigh reads 75 C.',
      ),
    ],
    [
      'garlic-in-oil',
      'a jar that stands beside the salt, at a figure, and is used from there',
      recipe(
        'Garlic',
        ['5 heads garlic, peeled', '500 ml olive oil', '10 g fine salt'],
        'Simmer the garlic in the oil for 40 min.',
        'Tip into a jar. We leave ours next to the salt at 20 C and dip in for 2 weeks.',
      ),
    ],
  ])('%s: %s', (code, _, text) => expect(found(text)).toContain(code));
});

describe('quiet', () => {
  const CODES = [
    'low-acid-preserve',
    'garlic-in-oil',
    'weak-brine',
    'acid-out-of-range',
    'cooling-too-slow',
    'held-too-warm',
  ];
  test.each<[string, string]>([
    [
      'oil that chips were fried in',
      recipe(
        'Chips',
        ['1 kg potatoes', '2 l sunflower oil'],
        'Fry the potatoes in the oil at 190 C for 5 min until gold. Keep the strained oil in the cupboard for next time.',
      ),
    ],
    [
      'salsa with the juice of a tested one',
      recipe(
        'Salsa',
        ['1080 g tomatoes', '725 g onions', '600 g red peppers', '367 g lime juice', '18 g salt'],
        'Boil everything, and simmer for 3 min. Fill hot jars, and process 15 min in a boiling-water canner.',
      ),
    ],
    [
      'a pickle with sugar, and no water',
      recipe(
        'Bread and butter pickles',
        ['1360 g cucumbers, sliced', '500 g onions, sliced', '70 g salt', '478 g cider vinegar', '450 g sugar'],
        'Mix the cucumbers, onions and salt and refrigerate for 3 h; drain.',
        'Boil the vinegar and sugar, add the vegetables, bring to a boil, fill hot jars and process 10 min in boiling water.',
      ),
    ],
    [
      'a salad in its jar, for lunch',
      recipe(
        'Salad',
        ['200 g lettuce', '100 g tomatoes', '60 ml olive oil', '20 ml cider vinegar'],
        'Put the oil and vinegar in the jar, pack the tomatoes and lettuce on top, put the lid on and take to work for lunch.',
      ),
    ],
    [
      'cabbage that turns sour, though nobody says ferment',
      recipe(
        'Kraut',
        ['1 kg white cabbage, shredded', '22 g fine salt'],
        'Pack the cabbage and the salt in a jar and leave at room temperature for 3 weeks.',
      ),
    ],
    [
      'a bug of ginger',
      recipe(
        'Ginger bug',
        ['50 g fresh ginger, grated', '50 g caster sugar', '500 g water'],
        'Stir everything in a jar, cover with a cloth and leave at room temperature for 5 d.',
      ),
    ],
    [
      'a pickle of nothing but vinegar',
      recipe(
        'Shallots',
        ['1 kg shallots, peeled', '1 l malt vinegar', '30 g fine salt'],
        'Boil the vinegar with the salt, pour over the shallots in jars, and leave in a dark cupboard for 3 weeks.',
      ),
    ],
    [
      'caps of mushrooms, and a jar that is bought',
      recipe(
        'Stuffed mushrooms',
        ['12 portobello mushrooms', '100 g cream cheese', '1 jar sun-dried tomatoes of 280 g'],
        'Drain the jar of tomatoes, fill the mushroom caps with them and the cheese and bake at 200 C for 20 min until golden.',
      ),
    ],
    [
      'a pie that is capped',
      recipe(
        'Pie',
        ['500 g beef chuck', '200 g onions', '500 ml beef stock'],
        'Braise everything for 2 h until tender, then cap the dish with pastry. Serve pickles in jars.',
      ),
    ],
    [
      'garlic butter in the freezer, and softened on the counter',
      recipe(
        'Garlic butter',
        GARLIC_BUTTER,
        'Leave the butter on the counter for 2 h, and beat everything.',
        'Roll in paper and freeze for 3 months.',
      ),
    ],
    [
      'stock that is frozen with its headspace',
      recipe(
        'Stock',
        STOCK,
        'Simmer the bones in the water for 6 h and strain.',
        'Cool to 4 C within 2 h, pour into jars, leave headspace and freeze.',
      ),
    ],
    [
      'bread steamed in a can and eaten',
      recipe(
        'Brown bread',
        ['300 g rye flour', '300 ml whole milk', '100 g molasses'],
        'Mix everything and fill into cans, seal with foil and steam for 3 h until firm. Serve warm.',
      ),
    ],
    [
      'what cools to the temperature of the room in a jar',
      recipe(
        'Soup in a jar',
        ['500 g carrots', '500 g water'],
        'Simmer the carrots in the water for 30 min, pour into a jar, leave until it is at room temperature and serve.',
      ),
    ],
    [
      'lentils that sprout',
      recipe('Sprouts', ['200 g green lentils'], 'Soak the lentils, drain, and leave in a jar for 4 d until sprouted.'),
    ],
    [
      'onions fried until crisp',
      recipe(
        'Birista',
        ['500 g onions, sliced', '60 g ghee'],
        'Fry the onions in the ghee until brown and crisp. Cool, and keep in a jar for 1 week.',
      ),
    ],
    [
      'a stew with a jar that is bought',
      recipe(
        'Stew',
        ['1 kg beef chuck', '500 g carrots', '1 jar passata of 700 g'],
        'Braise the beef and carrots with a jar of passata for 3 h until tender. It keeps for 3 d.',
      ),
    ],
    [
      'carrots in sugar',
      recipe(
        'Candied carrots',
        ['500 g carrots', '500 g caster sugar'],
        'Boil the carrots with the sugar until it reads 106 C. Keep in a jar for 2 weeks.',
      ),
    ],
    [
      'a smoked ham that hangs',
      recipe(
        'Ham',
        ['5 kg pork leg', '250 g salt'],
        'Rub the pork with the salt and cure at 4 C for 20 d. Smoke at 20 C for 3 d and keep in the cellar for 6 months.',
      ),
    ],
    [
      'biscuits in a dry larder',
      recipe(
        'Biscuits',
        ['200 g plain flour', '100 g butter', '80 g caster sugar'],
        'Rub everything together, roll out and bake at 180 C for 12 min until golden.',
        'Keep in a tin in a dry larder for 2 weeks.',
      ),
    ],
    [
      'kimchi with its salt',
      recipe('Kimchi', ['60 g sea salt', ...KIMCHI], 'Mix everything and pack in a jar.', 'Ferment at 20 C for 2 d.'),
    ],
    [
      'bread with potatoes',
      recipe(
        'Potato bread',
        ['300 g potatoes, boiled', '500 g bread flour', '8 g fine salt', '5 g instant yeast', '200 g water'],
        'Knead everything and ferment at 4 C for 24 h.',
        'Bake at 230 C for 40 min until brown.',
      ),
    ],
    [
      'a kvass of beetroot, thinly salted',
      recipe(
        'Kvass',
        ['300 g beetroot, cubed', '1.5 l water', '15 g fine salt'],
        'Put everything in a jar and ferment at room temperature for 5 d.',
      ),
    ],
    [
      'pressure that is said in pounds alone, and jars that cool overnight',
      recipe(
        'Broth',
        ['2 kg beef bones', '4 l water', '20 g fine salt'],
        'Simmer the bones in the water with the salt for 3 h and strain.',
        'Fill hot jars with it and put on lids.',
        'Process 25 minutes at 11 pounds.',
        'Cool on the counter for 12 to 24 hours.',
      ),
    ],
    [
      'cabbage that turns sour until nothing bubbles any more',
      recipe(
        'Red kraut',
        ['3 kg red cabbage, shredded', '65 g fine salt'],
        'Toss the cabbage with the salt and press it into a crock.',
        'Leave at 19 C for 3 weeks, until sour and no more bubbles rise. Keep in the fridge.',
      ),
    ],
    [
      'a flask that keeps soup hot until it is eaten',
      recipe(
        'Soup',
        ['300 g split peas', '1.5 l water', '100 g onion'],
        'Simmer the peas and onion in the water for 50 min.',
        'Pour into a flask and close. It stays above 65 C for 5 hours.',
      ),
    ],
    [
      'what lies in the fridge it came to still warm',
      recipe(
        'Custard',
        ['1 l whole milk', '8 egg yolks', '150 g caster sugar'],
        'Stir the milk, yolks and sugar over a low heat until it reads 83 C.',
        'Set it over ice, then have it in the fridge below 8 C within 90 minutes. Leave overnight there.',
      ),
    ],
    [
      'livers blended with warm butter',
      recipe(
        'Parfait',
        ['400 g duck livers', '300 g butter, melted', '100 g shallots', '100 ml port'],
        'Simmer the shallots in the port for 10 min.',
        'Blend the livers, the shallots and the butter and pour into a terrine.',
        'Stand in a bain-marie and bake at 130 C until the centre reads 75 C.',
        'Refrigerate overnight.',
      ),
    ],
    [
      'what is carried to table',
      recipe(
        'Pilaf',
        ['300 g basmati rice', '400 g smoked haddock', '600 g water'],
        'Simmer the rice and haddock in the water for 15 min.',
        'Carry it to table in a hot dish.',
      ),
    ],
  ])('%s', (_, text) => expect(found(text).filter((code) => CODES.includes(code))).toEqual([]));
});

test('the lot, before anything is made, is all of the list', () => {
  const text = recipe(
    'Garlic',
    ['5 heads garlic, cloves peeled', '500 ml olive oil', '2 sprigs thyme', '1 bay leaf'],
    'Put the lot in a pot, oil well over the cloves, and let it tick along on the smallest flame until the garlic is soft.',
    'Tip into a jar, making sure the cloves are drowned.',
    "I leave mine beside the hob and dip in whenever I'm cooking.",
  );
  const severities = open(text).findings.open.flatMap((f) => (f.code === 'garlic-in-oil' ? [f.severity] : []));
  expect(severities).toEqual(['error']);
});
