/** Words that the generated recipes are made of. Everyday names of foods; how they are put together is invented. */

/** A food as a recipe lists it: its name, the word a step calls it by, how it is measured beside grams, and what is done to it first. */
export interface Stock {
  readonly name: string;
  readonly short: string;
  readonly measure: 'g' | 'ml' | 'cup' | 'tbsp' | 'tsp' | 'large' | 'count' | 'cloves';
  readonly prepared?: string;
}

function one(measure: Stock['measure'], line: string): Stock {
  const [name = '', called = '', prepared] = line.split('|');
  return { name, short: called === '' ? name : called, measure, ...(prepared !== undefined && { prepared }) };
}

const stock = (measure: Stock['measure'], ...lines: readonly string[]): readonly Stock[] =>
  lines.map((line) => one(measure, line));

export const PASTRY_FLOURS = stock('cup', 'plain flour|flour', 'cake flour|flour|sifted', 'pastry flour|flour');
export const BREAD_FLOURS = stock('cup', 'bread flour|flour', 'wholemeal flour|flour', 'spelt flour|flour');

export const SUGARS = stock(
  'cup',
  'caster sugar|sugar',
  'icing sugar|sugar|sifted',
  'light brown sugar|sugar|packed',
  'demerara sugar|sugar',
  'granulated sugar|sugar',
);

export const SYRUPS = stock('tbsp', 'honey', 'golden syrup|syrup', 'maple syrup|syrup', 'black treacle|treacle');

export const FATS = stock(
  'g',
  'unsalted butter|butter|cold and cubed',
  'cultured butter|butter|soft',
  'lard||cold',
  'vegetable shortening|shortening',
);

export const OILS = stock('ml', 'olive oil|oil', 'sunflower oil|oil', 'rapeseed oil|oil', 'groundnut oil|oil');

export const CREAMS = stock(
  'ml',
  'double cream|cream',
  'whipping cream|cream',
  'single cream|cream',
  'sour cream|cream',
  'creme fraiche',
);

export const MILKS = stock('ml', 'whole milk|milk', 'semi-skimmed milk|milk', 'buttermilk', 'evaporated milk|milk');

export const EGGS = one('large', 'eggs');
export const YOLKS = one('large', 'egg yolks|yolks');

export const CHEESES = stock(
  'g',
  'cheddar||grated',
  'gruyere||grated',
  'parmesan||finely grated',
  'ricotta||drained',
  'feta||crumbled',
  'mascarpone',
  'mozzarella||torn',
);

export const FRUITS = stock(
  'g',
  'plums||halved and stoned',
  'apples||peeled and sliced',
  'pears||cored and diced',
  'raspberries',
  'blueberries',
  'apricots||halved',
  'cherries||stoned',
  'rhubarb||cut in short lengths',
  'strawberries||hulled',
  'mango||diced',
  'figs||quartered',
  'blackberries',
  'gooseberries||topped and tailed',
  'peaches||skinned and sliced',
);

export const VEGETABLES = stock(
  'g',
  'onions||finely sliced',
  'leeks||washed and sliced',
  'carrots||peeled and diced',
  'celery||finely diced',
  'parsnips||peeled and cut in batons',
  'mushrooms||quartered',
  'spinach||washed',
  'courgettes||sliced',
  'aubergine||diced',
  'fennel||shaved',
  'cauliflower||in small florets',
  'tomatoes||chopped',
  'butternut squash|squash|peeled and cubed',
  'beetroot||peeled and grated',
  'potatoes||peeled and sliced',
  'savoy cabbage|cabbage|shredded',
  'green beans|beans|topped',
  'kale||stripped and chopped',
  'celeriac||peeled and diced',
);

export const MEATS = stock(
  'g',
  'beef mince|mince',
  'pork shoulder||cubed',
  'chicken thighs||boned and diced',
  'lamb shoulder||trimmed and diced',
  'bacon||cut in lardons',
  'turkey breast|turkey|diced',
  'stewing beef|beef|cubed',
);

export const FISH = stock('g', 'salmon||skinned and cubed', 'cod||in large flakes', 'smoked haddock|haddock|skinned');

export const PULSES = stock(
  'cup',
  'red lentils|lentils|rinsed',
  'canned chickpeas|chickpeas|drained',
  'long-grain rice|rice|rinsed',
  'pearl barley|barley|rinsed',
  'bulgur',
  'couscous',
);

export const NUTS = stock(
  'g',
  'walnuts||chopped',
  'hazelnuts||roasted and chopped',
  'ground almonds|almonds',
  'pistachios||shelled',
  'pecans||broken',
  'sesame seeds|seeds|toasted',
);

export const HERBS = stock(
  'tbsp',
  'parsley||chopped',
  'thyme leaves|thyme',
  'basil||torn',
  'dill||chopped',
  'chives||snipped',
  'mint||chopped',
  'tarragon||chopped',
);

export const SPICES = stock(
  'tsp',
  'ground cumin|cumin',
  'smoked paprika|paprika',
  'ground cinnamon|cinnamon',
  'ground ginger|ginger',
  'black pepper|pepper',
  'turmeric',
  'nutmeg||grated',
  'coriander seeds||crushed',
);

export const SALTS = stock('g', 'fine salt|salt', 'flaky sea salt|salt');
export const YEAST = one('g', 'instant yeast|yeast');
export const BAKING_POWDER = one('tsp', 'baking powder');
export const AROMATICS = stock('cloves', 'garlic||crushed');
export const SOURS = stock('tbsp', 'lemon juice', 'cider vinegar|vinegar', 'white wine vinegar|vinegar', 'lime juice');
export const STOCKS = stock('ml', 'chicken stock|stock', 'vegetable stock|stock', 'beef stock|stock');
export const CHOCOLATES = stock('g', 'dark chocolate|chocolate|chopped', 'milk chocolate|chocolate|chopped');

export const TESTERS = ['Ines', 'Tomasz', 'Ruth', 'Bao'] as const;
export const TAGS = ['autumn', 'spring', 'supper club', 'every day', 'bread', 'dessert', 'lunch', 'set menu'] as const;
export const ASPECTS = [
  'Set to the middle, top a little dark at one corner.',
  'Cut clean at 6 C.',
  'Edges dry, centre good.',
  'Wept a little on the second day.',
  'Good colour, could take more salt.',
  'Rose evenly and held.',
  'Sauce split near the end, came back with the blender.',
] as const;
