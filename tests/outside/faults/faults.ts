/**
 * Slips of a writer, one to a row: each is made to a published recipe, and is to be found by its code.
 * The recipes are those of `tests/outside/recipes`; the slips are common practice, no source.
 */

/** What is written, and what stands there instead; each stands exactly once in the recipe. `{tested}` is the mark of the recipe as it is. */
export type Edit = readonly [find: string, replace: string];

export interface Fault {
  /** Relative to the folder of recipes, without its extension. */
  readonly recipe: string;
  readonly title: string;
  readonly code: string;
  readonly edits: readonly Edit[];
}

type Row = readonly [code: string, title: string, ...edits: Edit[]];

const ROWS: Readonly<Record<string, readonly Row[]>> = {
  'published/theory-cottage-pudding': [
    [
      'nutrition-disagrees',
      'a tenth of the energy',
      ['The oven figure was added', 'The whole cake has 180 kcal. The oven figure was added'],
    ],
  ],
  'published/theory-spice-cake': [
    ['left-out', 'no soda', ['  1 tsp     baking soda\n', ''], ['with the baking soda, cinnamon', 'with the cinnamon']],
  ],
  'published/usda-1978-pork-sausage': [
    ['salt-out-of-range', 'three times the salt', ['2 lb      salt', '6 lb      salt']],
  ],
  'published/ncsu-tomato-salsa': [
    [
      'sour-limit-too-high',
      'the limit of another food',
      ['for 20 min, stirring.', 'for 20 min, stirring, and check that the pH is below 6.0.'],
    ],
    ['salt-out-of-range', 'a quarter cup of salt', ['1 1/2 tsp salt', '1/4 cup   salt']],
    ['low-acid-preserve', 'a quarter cup of vinegar for two cups', ['2 cup     vinegar', '1/4 cup   vinegar']],
  ],
  'published/afrs-coleslaw': [
    ['sugar-out-of-range', 'pounds of sugar for ounces', ['12.3 oz   sugar', '12.3 lb   sugar']],
    ['fat-out-of-range', 'pounds of mayonnaise for ounces', ['10.5 oz   mayonnaise', '10.5 lb   mayonnaise']],
  ],
  'published/farmer-mashed-potatoes': [
    ['starch-out-of-range', 'three cups of milk for a third', ['1/3 cup   hot milk', '3 cup     hot milk']],
    ['salt-out-of-range', 'a tablespoon for a teaspoon', ['1 tsp     salt', '1 tbsp    salt']],
  ],
  'published/farmer-turkish-pilaf': [
    ['starch-out-of-range', 'five times the rice', ['1/2 cup   white rice', '2 1/2 cup white rice']],
  ],
  'published/usu-yogurt': [
    ['yeast-out-of-range', 'a tablespoon of yogurt for a cup', ['1 cup     plain yogurt', '1 tbsp    plain yogurt']],
  ],
  'published/usda-1977-corned-beef': [
    ['weak-brine', 'ounces of salt for pounds', ['8 lb      salt', '8 oz      salt']],
  ],
  'home/mango-chutney': [
    ['acid-out-of-range', 'half a cup of vinegar for three', ['3 cup     distilled', '1/2 cup   distilled']],
    ['sugar-out-of-range', 'five times the sugar', ['4 1/2 cup sugar', '22 cup    sugar']],
  ],
  'home/brown-stock': [
    ['wrong-encoding', 'a letter lost', ['add the peppercorns', 'add the pepper\ufffdorns']],
    [
      'natural-toxin',
      'beans in it, and the slow cooker for the stove',
      ['  1 tbsp    salt\n', '  1 tbsp    salt\n  1 lb      dried kidney beans\n'],
      [
        'add the browned meat and heat slowly to the boil.',
        'add the browned meat and the beans, and put it in the slow cooker.',
      ],
      ['Simmer for 6 h, then add the peppercorns', 'Cook on low for 9 h, then add the peppercorns'],
    ],
    ['cooling-too-slow', 'six hours to the middle', ['70 F within 2 h', '70 F within 6 h']],
    [
      'burn-or-burst',
      'boiling, in a blender that is shut',
      ['Strain and cool', 'Fill a blender to the brim with it boiling, clamp the lid down and blend. Strain and cool'],
    ],
    [
      'kept-too-long',
      'weeks for days',
      ['to 41 F within 6 h in all.', 'to 41 F within 6 h in all, and keep in the refrigerator for 5 weeks.'],
    ],
    [
      'cooling-too-slow',
      'left on the stove overnight',
      ['Strain and cool to 70 F within 2 h and to 41 F within 6 h in all.', 'Strain and leave on the stove overnight.'],
    ],
    ['salt-out-of-range', 'a cup of salt for a spoon', ['1 tbsp    salt', '1 cup     salt']],
    ['solids-out-of-range', 'ounces for pounds of beef', ['6 lb      beef shin', '6 oz      beef shin']],
    [
      'low-acid-preserve',
      'sealed in jars',
      ['Strain and cool to 70 F within 2 h and to 41 F within 6 h in all.', 'Strain, fill hot in jars and seal.'],
    ],
    ['unlisted-ingredient', 'the carrot left out of the list', ['  1/2 cup   carrot, diced\n', '']],
  ],
  'home/charlotte-russe': [
    ['gel-wont-set', 'a teaspoon of gelatine for a tablespoon', ['1 tbsp    gelatin', '1 tsp     gelatin']],
    ['gel-too-firm', 'four times the gelatine', ['1 tbsp    gelatin', '4 tbsp    gelatin']],
    ['unused-part', 'the cream never goes in', [', turn in the cream and chill', ' and chill']],
  ],
  'home/cream-filling': [
    ['starch-out-of-range', 'a teaspoon of flour for a cup', ['1/3 cup   all-purpose', '1/3 tsp   all-purpose']],
    ['starch-out-of-range', 'a cup more of flour', ['1/3 cup   all-purpose', '1 1/3 cup  all-purpose']],
    ['salt-out-of-range', 'a cup of salt for a teaspoon', ['1/8 tsp   salt', '1/8 cup   salt']],
    ['implausible-temperature', 'Celsius for Fahrenheit in the cream', ['185 F', '185 C']],
    [
      'unread-temperature',
      'no word of what reads it',
      [
        'Cook for 15 min in a double boiler, stirring until thick, until the cream reads 185 F.',
        'Eggs and milk over a pan, whisk to ribbon, 185 F.',
      ],
    ],
    ['cooling-too-slow', 'cooled on the bench overnight', ['Cool over ice, stir', 'Cool on the bench overnight, stir']],
    [
      'disposition-unsaid',
      'set down by the window, for nobody knows how long',
      ['Cool over ice, stir', 'Set it on the window sill. Cool over ice, stir'],
    ],
  ],
  'home/crushed-tomatoes': [
    ['low-acid-preserve', 'a teaspoon for each tablespoon of juice', ['14 tbsp', '14 tsp']],
    ['unknown-unit', 'a letter too few', ['14 tbsp', '14 tbp']],
  ],
  'home/cup-custard': [
    ['pieces-misfit', 'cups that are too small', ['strain in cups', 'strain into eight 40 ml cups']],
    [
      'time-disagrees',
      'ten minutes in the oven',
      ['  yield   8 cups\n', '  yield   8 cups\n  time    10 min in the oven\n'],
    ],
    ['weights-disagree', 'a weight of half of it', ['1/2 cup   sugar', '1/2 cup = 4 oz = 50 g  sugar']],
    [
      'swap-in-two-parts',
      'made a variant of what has butter in two parts',
      [
        'recipe Cup custards as baked custard\n',
        'recipe Cup custards\n  from    meat-loaf.quern\n  swap butter for 100 g lard\n',
      ],
      ['  4 cup     whole milk, scalded\n', '\npart custard as baked custard\n  4 cup     whole milk, scalded\n'],
    ],
    ['custard-wont-set', 'an egg for five', ['5         eggs', '1         egg']],
    ['custard-too-firm', 'a quarter of the milk', ['4 cup     whole milk', '1 cup     whole milk']],
    ['undercooked', 'taken out at 130 F', ['176 F', '130 F']],
    ['no-safe-temperature', 'no reading', [', until the centre reads 176 F', '']],
    [
      'cooling-too-slow',
      'on the bench overnight',
      ['Cool for 30 min, then chill at 40 F.', 'Cool on the bench overnight.'],
    ],
    ['held-too-warm', 'a fridge at 50 F', ['chill at 40 F', 'chill at 50 F']],
    ['implausible-temperature', 'a fridge in Celsius', ['chill at 40 F', 'chill at 40 C']],
    ['repeated-ingredient', 'sugar listed twice', ['  1/2 cup   sugar\n', '  1/2 cup   sugar\n  1/4 cup   sugar\n']],
    [
      'trial-disagrees',
      'the trial reached less',
      ['then chill at 40 F.\n', 'then chill at 40 F.\n\ntrial 2026-10-08 by Ruth\n  reached 160 F in the centre\n'],
    ],
  ],
  'home/dill-pickles': [
    ['weak-brine', 'half a spoon of salt for half a cup', ['1/2 cup   canning salt', '1/2 tbsp  canning salt']],
    ['weak-brine', 'quarts of water for cups', ['8 cup     water', '8 quart   water']],
  ],
  'home/dilled-beans': [
    ['acid-out-of-range', 'a cup of vinegar for four', ['4 cup     white vinegar', '1 cup     white vinegar']],
    ['low-acid-preserve', 'quarts of water for cups', ['4 cup     water', '4 quart   water']],
  ],
  'home/dry-salt-pork': [
    ['weak-brine', 'ounces of salt for pounds', ['8 lb      salt', '8 oz      salt']],
    ['curing-salt-dose', 'curing salt taken for salt', ['8 lb      salt', '8 lb      curing salt']],
    ['yield-mismatch', 'a nought too many', ['yield   100 lb', 'yield   1000 lb']],
    ['decimal-comma', 'a comma', ['2 1/2 lb  brown', '2,5 lb    brown']],
  ],
  'home/french-dressing': [
    [
      'raw-contact',
      'poured over what was marinated in it',
      ['  4 tbsp    olive oil\n', '  4 tbsp    olive oil\n  1 lb      chicken breast\n'],
      [
        'Mix the salt, pepper, vinegar and oil, and stir until well blended.',
        'Mix the salt, pepper, vinegar and oil, add the chicken and refrigerate for 2 h.\n  do Take the chicken out and broil until it reads 165 F, and spoon over what is left in the bowl.',
      ],
    ],
    ['emulsion-unstable', 'cups of oil for spoons', ['4 tbsp    olive oil', '4 cup     olive oil']],
    ['salt-out-of-range', 'a cup of salt for a teaspoon', ['1/2 tsp   salt', '1/2 cup   salt']],
    ['missing-amount', 'no amount', ['2 tbsp    vinegar', '          vinegar']],
    ['unused-ingredient', 'the pepper never goes in', ['salt, pepper, vinegar', 'salt, vinegar']],
    ['yield-missing', 'no yield', ['  yield   6 tbsp\n', '']],
  ],
  'home/fricassee': [
    [
      'undercooked',
      'taken off at 140 F',
      [
        'simmer for 1 h until tender and the thigh reads 165 F',
        'bake at 350 F for 1 h until tender and the thigh reads 140 F',
      ],
    ],
    ['leftover-amount', 'half the flour, and never the rest', [' with the rest of the flour,', ',']],
    ['overdrawn-amount', 'all the butter at first', ['half the butter', 'all the butter']],
  ],
  'home/fry-bread': [
    ['leavening-out-of-range', 'a cup of powder for a spoon', ['1 tbsp    baking powder', '1 cup     baking powder']],
    ['dough-too-wet', 'quarts of water for cups', ['1 1/2 cup  warm', '1 1/2 quart  warm']],
    ['salt-out-of-range', 'a cup of salt for a teaspoon', ['1 tsp     salt', '1/4 cup   salt']],
  ],
  'home/griddle-cakes': [
    ['leavening-out-of-range', 'cups of powder for spoons', ['1 1/2 tbsp  baking', '1 1/2 cup  baking']],
    ['dough-too-wet', 'quarts of milk for cups', ['2 cup     whole milk', '2 quart   whole milk']],
    ['dough-too-dry', 'spoons of milk for cups', ['2 cup     whole milk', '2 tbsp    whole milk']],
    [
      'measure-mismatch',
      'the weight of twice as much',
      ['3 cup     all-purpose flour', '3 cup = 750 g  all-purpose flour'],
    ],
    ['unknown-food', 'misspelled', ['1/4 cup   sugar', '1/4 cup   sgar']],
  ],
  'home/hollandaise': [
    ['emulsion-unstable', 'cups of butter for half a cup', ['1/2 cup   butter', '2 1/2 cup  butter']],
    ['undercooked', 'taken off at 120 F', ['160 F', '120 F']],
  ],
  'home/imperial/puff-paste': [
    ['dough-too-dry', 'half the water', ['1/2 pint  cold', '1/5 pint  cold']],
    ['fat-out-of-range', 'a quarter of the butter', ['1 lb      butter', '1/4 lb    butter']],
    ['short-rest', 'five minutes in the cold', ['Chill at 4 C for 30 min and roll', 'Chill at 4 C for 5 min and roll']],
    [
      'leftover-amount',
      'half the butter, and never the rest',
      ['Lay on the rest of the butter in thin pieces, fold', 'Fold'],
    ],
  ],
  'home/kisses': [
    ['time-out-of-range', 'seconds for minutes', ['225 F for 30 min', '225 F for 30 s']],
    ['heat-out-of-range', '225 °C for °F', ['bake at 225 F for 30 min', 'bake at 275 C for 30 min']],
    ['meringue-unstable', 'a quarter of a cup of sugar', ['1 1/4 cup  powdered', '1/4 cup   powdered']],
    [
      'meringue-unstable',
      'whole eggs',
      ['4         egg whites', '4         eggs'],
      ['Beat the egg whites', 'Beat the eggs'],
    ],
    ['raw-egg', 'not baked', [' and bake at 225 F for 30 min until dry', ' and serve']],
    ['time-missing', 'no time and no sign', ['at 225 F for 30 min until dry', 'at 225 F']],
    ['no-doneness-cue', 'no sign', [' until dry', '']],
  ],
  'home/lemon-ice': [
    ['freeze-out-of-range', 'a quarter of the sugar', ['2 cup     sugar', '1/2 cup   sugar']],
    ['freeze-out-of-range', 'sugar doubled and more', ['2 cup     sugar', '6 cup     sugar']],
    [
      'allow-without-effect',
      'accepts what is not there',
      ['  4 cup     water', '  allow sugar-out-of-range because it is a dessert\n  4 cup     water'],
    ],
  ],
  'home/lemon-jelly': [
    ['chill-too-short', 'minutes for hours', ['chill for 4 h', 'chill for 40 min']],
    ['gel-wont-set', 'teaspoons of gelatine for tablespoons', ['2 tbsp    gelatin', '2 tsp     gelatin']],
    ['gel-too-firm', 'cups of gelatine for tablespoons', ['2 tbsp    gelatin', '1/2 cup   gelatin']],
    [
      'gel-wont-set',
      'raw pineapple in it',
      ['  1/2 cup   lemon juice\n', '  1/2 cup   lemon juice\n  1 cup     pineapple, diced\n'],
      ['sugar and lemon juice.', 'sugar, lemon juice and pineapple.'],
    ],
    ['ambiguous-mention', 'which water?', ['Dissolve in the boiling water', 'Dissolve in the water']],
  ],
  'home/mayonnaise': [
    ['unsafe-for-them', 'for a home', ['recipe Mayonnaise', 'recipe Nursing home mayonnaise']],
    ['emulsion-unstable', 'quarts of oil for cups', ['1 1/2 cup  olive', '1 1/2 quart  olive']],
    [
      'allow-without-reason',
      'accepted without a reason',
      [
        "allow raw-egg because the book's yolks are raw; the note says for whom to take pasteurised ones",
        'allow raw-egg',
      ],
    ],
    [
      'raw-egg',
      'not accepted',
      ["  allow raw-egg because the book's yolks are raw; the note says for whom to take pasteurised ones\n", ''],
    ],
    ['allow-without-effect', 'the wrong code accepted', ['allow raw-egg because', 'allow raw-flour because']],
    ['leftover-amount', 'half the vinegar, and never the rest', ['the rest of the vinegar and the lemon', 'the lemon']],
    ['salt-out-of-range', 'a cup of salt for a teaspoon', ['1 tsp     salt', '1/2 cup   salt']],
  ],
  'home/meat-loaf': [
    ['measure-said-twice', 'six inches taken for 25 cm', ['6 in long', '6 in (25 cm) long']],
    ['unfinished-line', 'broken off at an or', ['  2 tbsp    butter, melted\n', '  2 tbsp    butter, melted, or\n']],
    ['percent-of-what', 'a percentage of anything', ['1 tsp     salt', '1.5 %     salt']],
    ['unread-amount', 'a figure in a name', ['1 tbsp    parsley,', '1 tbsp    bunches 3 parsli,']],
    ['undercooked', 'taken out at 130 F', ['reads 160 F', 'reads 130 F']],
    ['no-safe-temperature', 'no reading', [', until the centre reads 160 F', '']],
    ['unused-part', 'never basted', [', spooning over the basting,', ',']],
    ['curing-salt-dose', 'curing salt taken for salt', ['1 tsp     salt', '1 tsp     curing salt']],
    ['needs-weight', 'half a cup of herb, packed or not', ['1 tbsp    parsley, finely chopped', '2 cup     parsley']],
    [
      'unknown-part',
      'a part misspelled in the trial',
      ['centre reads 160 F.\n', 'centre reads 160 F.\n\ntrial 2026-10-08 by Bao\n  used    1/4 cup butter in bastng\n'],
    ],
    [
      'missing-file',
      'a part of a file that is not there',
      ['part basting\n', 'part gravy from gravies.quern : brown gravy\n\npart basting\n'],
    ],
    [
      'food-for-one-file',
      'a food of the house described where no other recipe finds it',
      ['centre reads 160 F.\n', 'centre reads 160 F.\n\nfood bastng butter\n  like    butter\n'],
    ],
    [
      'picture-missing',
      'a picture that was never put there',
      ['centre reads 160 F.\n', 'centre reads 160 F.\n  picture no-such-loaf.jpg\n'],
    ],
  ],
  'home/milk-and-water-bread': [
    [
      'unlike-its-name',
      'half a cup of salt, and no kind',
      ['bread as lean bread', 'bread'],
      ['2 1/2 tsp ', '1/2 cup   '],
    ],
    ['proportion-disagrees', 'another hydration', ['The oven figure,', 'Hydration 95 %. The oven figure,']],
    ['salt-out-of-range', 'tablespoons of salt for teaspoons', ['2 1/2 tsp  salt', '2 1/2 tbsp  salt']],
    ['yeast-out-of-range', 'days of rising for hours', ['68 F for 3 h', '68 F for 3 d']],
    ['dough-too-dry', 'flour doubled', ['6 cup     all-purpose', '12 cup    all-purpose']],
    ['implausible-temperature', 'Celsius for Fahrenheit in the loaf', ['205 F', '205 C']],
    ['unused-ingredient', 'the lard never goes in', ['on the lard, butter and salt', 'on the butter and salt']],
  ],
  'home/noodles': [
    ['dough-too-wet', 'a quarter of a cup of flour', ['3/4 cup   all', '1/4 cup   all']],
    ['dough-too-dry', 'cups of flour for three quarters', ['3/4 cup   all', '3 cup     all']],
    ['unknown-kind', 'misspelled', ['as pasta dough', 'as pasta doug']],
  ],
  'home/one-egg-cake': [
    ['time-out-of-range', 'a digit lost', ['for 30 min in a shallow', 'for 3 min in a shallow']],
    ['heat-out-of-range', '250 °C', ['at 350 F', 'at 250 C']],
    ['allergen-claim', 'called egg-free', ['  yield   1 cake\n', '  yield   1 cake\n  tags    egg-free\n']],
    ['leavening-out-of-range', 'tablespoons of powder for teaspoons', ['2 1/2 tsp  baking', '2 1/2 tbsp  baking']],
    ['sugar-out-of-range', 'two cups more of sugar', ['1/2 cup   sugar', '2 1/2 cup  sugar']],
    ['dough-too-wet', 'five times the milk', ['1/2 cup   whole milk', '2 1/2 cup  whole milk']],
    ['no-doneness-cue', 'no sign', [', until a pick comes out clean', '']],
    ['leftover-amount', 'half the milk, and never the rest', ['in turn with the milk', 'in turn with half the milk']],
    ['yield-mismatch', 'heavier than what goes in', ['yield   1 cake', 'yield   1 cake of 2 kg']],
    [
      'raw-flour',
      'not baked',
      [
        'do Bake at 350 F for 30 min in a shallow pan, until a pick comes out clean.',
        'do Serve chilled, by the spoon.',
      ],
    ],
    ['missing-amount', 'no amount', ['1/4 cup   butter', '          butter']],
    [
      'untested-change',
      'changed after the trial',
      ['1/2 cup   sugar', '2/3 cup   sugar'],
      ['comes out clean.\n', 'comes out clean.\n\ntrial 2026-10-08 by Tomasz\n  tested  {tested}\n  verdict keep\n'],
    ],
  ],
  'home/one-egg-muffins': [
    [
      'leavening-out-of-range',
      'soda for powder',
      ['6 tsp     baking powder', '6 tsp     baking soda'],
      ['flour, baking powder', 'flour, baking soda'],
    ],
    ['leavening-out-of-range', 'a twelfth of the powder', ['6 tsp     baking', '1/2 tsp   baking']],
    ['oven-not-set', 'no oven', [' at 400 F', '']],
    ['unlisted-ingredient', 'the egg left out of the list', ['  1         egg\n', '']],
    ['syntax', 'a step without `do`', ['do Stir in the milk', 'Stir in the milk']],
    ['fat-out-of-range', 'cups of butter for spoons', ['3 tbsp    butter', '3 cup     butter']],
    ['unlisted-ingredient', 'the sugar left out of the list', ['  3 tbsp    sugar\n', '']],
  ],
  'home/parker-house-rolls': [
    ['time-out-of-range', 'hours for minutes', ['for 12-15 min', 'for 12-15 h']],
    ['heat-out-of-range', '200 °F', ['bake at 400 F', 'bake at 250 F']],
    ['leftover-amount', 'the rest of the flour forgotten', ['Work in the rest of the flour, knead,', 'Knead,']],
    ['overdrawn-amount', 'more flour than there is', ['3 cups of the flour', '6 cups of the flour']],
    ['unknown-food', 'letters swapped', ['1 tsp     salt', '1 tsp     slat']],
    ['unknown-unit', 'letters swapped', ['2 cup     whole', '2 cpu     whole']],
    ['unknown-kind', 'letters swapped', ['as enriched bread', 'as enriched braed']],
    ['decimal-comma', 'a comma', ['5 1/2 cup  all', '5,5 cup   all']],
    ['fat-out-of-range', 'cups of butter for spoons', ['3 tbsp    butter', '3 cup     butter']],
    ['yeast-out-of-range', 'ten cakes of yeast', ['1 cake    compressed', '10 cake   compressed']],
    ['sugar-out-of-range', 'cups of sugar for spoons', ['2 tbsp    sugar', '2 cup     sugar']],
  ],
  'home/pound-cake': [
    [
      'comes-too-late',
      'baked before the flour is in',
      ['  do Beat in the flour, mace and brandy for 5 min.\n', ''],
      [
        'until a pick comes out clean.',
        'until a pick comes out clean.\n  do Beat in the flour, mace and brandy for 5 min.',
      ],
    ],
    [
      'comes-too-early',
      'the yolks before there is a batter',
      ['  do Cream the butter, add the sugar little by little and beat well.\n', ''],
      [
        'eggs beaten stiff.\n',
        'eggs beaten stiff.\n  do Cream the butter, add the sugar little by little and beat well.\n',
      ],
    ],
    [
      'ovens-disagree',
      'another oven in the head',
      ['  yield   1 deep cake\n', '  yield   1 deep cake\n  oven    425 F\n'],
      ['  do Cream', '  do Heat the oven to 300 F.\n  do Cream'],
    ],
    [
      'oven-never-used',
      'an oven, and no bake',
      ['  do Bake in a deep pan at 300 F for 75 min until a pick comes out clean.', '  do Cool in the pan.'],
      ['  yield   1 deep cake\n', '  yield   1 deep cake\n  oven    300 F\n'],
    ],
    ['time-out-of-range', 'a digit too many', ['for 75 min', 'for 750 min']],
    ['heat-out-of-range', '300 °C for °F', ['at 300 F', 'at 300 C']],
    ['egg-out-of-range', 'four eggs for ten', ['10        eggs', '4         eggs']],
    ['sugar-out-of-range', 'a quarter of the sugar', ['1 lb      sugar', '1/4 lb    sugar']],
    ['fat-out-of-range', 'butter doubled', ['1 lb      butter', '2 lb      butter']],
    ['yield-missing', 'no yield', ['  yield   1 deep cake\n', '']],
    ['implausible-temperature', 'Celsius for Fahrenheit', ['at 300 F', 'at 350 C']],
    [
      'trial-disagrees',
      'the trial took longer',
      ['comes out clean.\n', 'comes out clean.\n\ntrial 2026-10-08 by Ines\n  took    110 min to bake\n'],
    ],
    [
      'range-measured',
      'the promise copied into the trial',
      ['comes out clean.\n', 'comes out clean.\n\ntrial 2026-10-08 by Ines\n  took    70-80 min to bake\n'],
    ],
  ],
  'home/quiche-lorraine': [
    ['pan-overfull', 'a pan of half the width', ['round 22 x 3', 'round 11 x 3']],
    ['pan-underfull', 'ten times as deep', ['round 22 x 3 cm', 'round 22 x 30 cm']],
    ['pan-disagrees', 'another tin in the step', ['line the pan', 'line a 30 cm tin']],
    ['short-rest', 'five minutes in the cold', ['Chill at 4 C for 1 h', 'Chill at 4 C for 5 min']],
    ['unlisted-ingredient', 'the eggs left out of the list', ['  3         eggs\n', '']],
    ['fat-out-of-range', 'a nought too few', ['100 g     butter', '10 g      butter']],
    ['unknown-kind', 'letters swapped', ['as shortcrust', 'as shortcurst']],
    ['undercooked', 'taken out at 54 C', ['74 C', '54 C']],
    ['custard-wont-set', 'two litres of cream', ['250 ml    single', '2.5 l     single']],
    ['unused-part', 'the case never named', ['strew it in the case with', 'mix it with']],
  ],
  'home/raspberry-jam': [
    ['jam-wont-set', 'ounces of sugar for pounds', ['2 lb      sugar', '2 oz      sugar']],
    ['jam-wont-set', 'taken off at 214 F', ['220 F', '214 F']],
    ['yield-mismatch', 'more than goes in', ['about 3 pint', '4 kg']],
    ['unknown-food', 'misspelled', ['2 lb      raspberries', '2 lb      rapsberies']],
    ['syntax', 'a step without `do`', ['do Mash', 'Mash']],
    ['overdrawn-amount', 'more sugar than there is', ['Add the sugar', 'Add 3 lb of the sugar']],
  ],
  'home/rich-cookies': [
    ['time-out-of-range', 'hours for minutes', ['for 8 min until brown', 'for 8 h until brown']],
    ['heat-out-of-range', 'a wrong hundred', ['Bake at 375 F', 'Bake at 575 F']],
    ['fat-out-of-range', 'a spoon of butter for a cup', ['1/2 cup   butter', '1/2 tbsp  butter']],
    ['sugar-out-of-range', 'three cups of sugar for a third', ['1/3 cup   sugar', '3 cup     sugar']],
    ['no-doneness-cue', 'no sign', [' until brown at the rim', '']],
    [
      'dangerous-advice',
      'bare hands at the oven',
      ['until brown at the rim.', 'until brown at the rim. Lift them out of the oven with your bare hands.'],
    ],
    [
      'offered-raw',
      'the rest of the dough for the children',
      ['until brown at the rim.', 'until brown at the rim. What is left of the dough is safe to eat raw.'],
    ],
    [
      'raw-flour',
      'eaten raw',
      [
        'do Drop from a spoon two inches apart on a greased sheet and spread thin.\n  do Bake at 375 F for 8 min until brown at the rim.',
        'do Roll in balls and serve.',
      ],
    ],
  ],
  'home/roast-turkey': [
    ['time-out-of-range', 'days for hours', ['for 3 h, basting', 'for 3 days, basting']],
    ['bake-time-doubtful', 'an hour for three', ['350 F for 3 h', '350 F for 1 h']],
    ['undercooked', 'taken out at 140 F', ['reads 165 F', 'reads 140 F']],
    ['no-safe-temperature', 'no reading', [', until the thigh reads 165 F', '']],
    ['implausible-temperature', 'Celsius for Fahrenheit', ['350 F', '350 C']],
    ['scales-disagree', 'another heat in Celsius', ['350 F', '350 F (200 C)']],
  ],
  'home/sauerkraut': [
    ['weak-brine', 'a quarter of a cup of salt', ['3/4 cup   canning', '1/4 cup   canning']],
    ['weak-brine', 'the pounds of cabbage swapped', ['25 lb     cabbage', '52 lb     cabbage']],
  ],
  'home/sour-milk-griddle-cakes': [
    [
      'leavening-out-of-range',
      'sweet milk, and no acid for the soda',
      ['2 cup     sour milk', '2 cup     whole milk'],
      ['Add the sour milk', 'Add the milk'],
    ],
    ['leavening-out-of-range', 'tablespoons of soda for teaspoons', ['1 1/4 tsp  baking', '1 1/4 tbsp  baking']],
    [
      'missing-file',
      'a base that is not there',
      ['  yield   about 20 cakes\n', '  from    batter.quern\n  yield   about 20 cakes\n'],
    ],
  ],
  'home/sponge-cake': [
    ['egg-out-of-range', 'an egg for six', ['6         eggs', '1         eggs']],
    ['sugar-out-of-range', 'a quarter of the sugar', ['1 cup     sugar', '1/4 cup   sugar']],
    ['oven-not-set', 'no oven', [' at 325 F', '']],
  ],
  'home/steamed-rice': [
    ['starch-out-of-range', 'quarts of water for cups', ['3 cup     boiling', '3 quart   boiling']],
    ['starch-out-of-range', 'half a cup of water', ['3 cup     boiling', '1/2 cup   boiling']],
    ['salt-out-of-range', 'a cup of salt for a teaspoon', ['1 tsp     salt', '1/4 cup   salt']],
    [
      'cooling-too-slow',
      'left out for hours',
      [
        'steam in a covered double boiler for 45 min until soft.',
        'steam in a covered double boiler for 45 min until soft.\n  do Leave at room temperature for 6 h.',
      ],
    ],
  ],
  'home/stirred-custard': [
    ['amount-implausible', 'a tenth of a spoon of vanilla', ['1/2 tsp   vanilla', '0.05 tsp  vanilla']],
    ['out-of-proportion', 'half a cup of vanilla', ['1/2 tsp   vanilla', '1/2 cup   vanilla']],
    ['custard-wont-set', 'one yolk for three', ['3         egg yolks', '1         egg yolks']],
    ['undercooked', 'taken off at 120 F', ['180 F', '120 F']],
    ['held-too-warm', 'a fridge at 60 F', ['chill at 40 F', 'chill at 60 F']],
    ['custard-too-firm', 'ten yolks for three', ['3         egg yolks', '13        egg yolks']],
  ],
  'home/sweet-paste': [
    ['too-thick', 'as thick as a loaf', ['and roll out.', 'and roll out 30 cm thick, and cut 40 rounds of 6 cm.']],
    ['fat-out-of-range', 'grams of butter for ounces', ['10 oz     butter', '10 g      butter']],
    ['short-rest', 'five minutes in the cold', ['40 F for 2 h', '40 F for 5 min']],
    ['time-missing', 'no time and no sign', ['at 375 F for 12 min until pale gold', 'at 375 F']],
    ['dough-too-wet', 'a pint of water for a spoon', ['1 tbsp    orange', '1 pint    orange']],
  ],
  'home/vanilla-sauce': [
    ['starch-out-of-range', 'half a teaspoon of starch for a spoon', ['1 tbsp    cornstarch', '1/2 tsp   cornstarch']],
    ['starch-out-of-range', 'half a cup of starch', ['1 tbsp    cornstarch', '1/2 cup   cornstarch']],
  ],
  'home/water-bread': [
    ['step-forgotten', 'no second rise', ['greased pans and let rise for 1 h', 'greased pans']],
    ['dough-too-wet', 'water doubled', ['2 cup     boiling', '4 cup     boiling']],
    ['yeast-out-of-range', 'four cakes for a quarter', ['1/4 cake  compressed', '4 cake    compressed']],
    ['oven-not-set', 'no oven', ['Bake at 400 F for', 'Bake for']],
    ['unused-ingredient', 'the sugar never goes in', ['lard, sugar and salt', 'lard and salt']],
  ],
  'published/afrs-chicken-noodle-soup': [
    ['held-too-warm', 'kept hot at 100 F', ['hold at 140 F', 'hold at 100 F']],
    ['unused-ingredient', 'the celery never goes in', ['carrots, celery, onions', 'carrots, onions']],
  ],
  'published/afrs-g012-devils-food': [
    ['overdrawn-amount', 'more water than there is', ['5 cups of the cold water', '9 cups of the cold water']],
    ['leftover-amount', 'the rest of the water forgotten', [', the rest of the cold water and', ' and']],
    ['measure-mismatch', 'a nought too few', ['2 1/2 quart = 1134 g', '2 1/2 quart = 113 g']],
  ],
  'published/afrs-g022-orange-frosting': [
    ['sugar-out-of-range', 'pounds of juice for ounces', ['8 3/4 oz  orange juice', '8 3/4 lb  orange juice']],
    [
      'fat-out-of-range',
      'pounds of butter four times over, and a pound of sugar',
      ['1 1/4 lb  butter', '5 lb      butter'],
      ['5 lb      powdered', '1 lb      powdered'],
    ],
  ],
  'published/afrs-l023-el-rancho-stew': [
    ['undercooked', 'reheated to 130 F', ['165 F', '130 F']],
    ['salt-out-of-range', 'cups of salt for spoons', ['9 tbsp = 170.1 g  salt', '9 cup     salt']],
    [
      'out-of-order',
      'beef listed last',
      ['  30 lb     stewing beef, diced\n', ''],
      ['  2 lb      frozen peas\n', '  2 lb      frozen peas\n  30 lb     stewing beef, diced\n'],
    ],
  ],
  'published/afrs-l143-baked-breast': [
    ['portion-implausible', 'ounces of chicken for pounds', ['31 1/4 lb', '31 1/4 oz']],
    ['undercooked', 'taken out at 145 F', ['reads 165 F', 'reads 145 F']],
    ['held-too-warm', 'digits swapped', ['at 140 F', 'at 104 F']],
  ],
  'published/afrs-m060-garlic-french': [
    ['vessel-too-small', 'a bowl of half a litre', ['in a mixer bowl', 'in a 500 ml mixer bowl']],
    [
      'garlic-in-oil',
      'made over into a garlic oil for the shelf',
      ['  3 cup     white vinegar\n', ''],
      ['salt, sugar and vinegar', 'salt and sugar'],
      ['Cover and chill;', 'Bottle, keep in a cupboard;'],
    ],
    [
      'garlic-in-oil',
      'made over into a garlic oil kept for weeks',
      ['3 cup     white', '3 tsp     white'],
      ['Cover and chill;', 'Cover and keep in the fridge for 21 d;'],
    ],
    ['emulsion-unstable', 'a tenth of the vinegar', ['3 cup     white', '0.3 cup   white']],
  ],
  'published/army-pie-crust-1942': [
    ['dough-too-wet', 'a pint more of water', ['1/4 pint  cold', '1 1/4 pint  cold']],
    ['fat-out-of-range', 'a quarter of the lard', ['8 oz      lard', '2 oz      lard']],
    ['dough-too-dry', 'the water left out', ['  1/4 pint  cold water\n', '']],
    ['leftover-amount', 'half the lard, and never the rest', ['Cut in the rest of the lard, leaving', 'Leave']],
    ['salt-out-of-range', 'five ounces for a fifth', ['1/5 oz    salt', '5 oz      salt']],
  ],
  'published/cacfp-chicken-nuggets': [
    ['no-safe-temperature', 'no reading', [', until the inside reads 165 F; hold', '; hold']],
    ['implausible-temperature', 'Celsius for Fahrenheit', ['500 F', '500 C']],
  ],
  'published/century-french-ice-cream': [
    ['freeze-out-of-range', 'a quarter of a cup of sugar', ['1 cup     sugar', '1/4 cup   sugar']],
    ['undercooked', 'taken off at 52 C', ['82 C', '52 C']],
    ['repeated-ingredient', 'sugar listed twice', ['  1 cup     sugar\n', '  1 cup     sugar\n  1/4 cup   sugar\n']],
  ],
  'published/century-philadelphia-ice-cream': [
    ['freeze-out-of-range', 'sugar doubled', ['1 cup = 227 g', '2 cup = 454 g']],
    [
      'raw-milk',
      'raw cream that is not scalded',
      ['light cream (cream in the book)', 'raw light cream'],
      ['Scald the cream and sugar in a double boiler.', 'Stir the cream and sugar.'],
    ],
  ],
  'published/farmer-angel-cake': [
    ['egg-out-of-range', 'two whites for eight', ['8         egg whites', '2         egg whites']],
    ['sugar-out-of-range', 'three cups of sugar', ['1 cup     caster', '3 cup     caster']],
    [
      'meringue-unstable',
      'eggs, yolk and all',
      ['8         egg whites', '8         eggs'],
      ['Beat the egg whites', 'Beat the eggs'],
    ],
  ],
  'published/farmer-apricot-wine-jelly': [
    [
      'gel-wont-set',
      'raw pineapple for the apricots',
      ['1 cup     canned apricots, halved', '1 cup     pineapple, diced'],
      ['the canned apricots', 'the pineapple'],
    ],
    ['gel-wont-set', 'half a spoon of gelatine', ['2 tbsp    gelatin', '1/2 tbsp  gelatin']],
  ],
  'published/farmer-cream-cakes': [
    ['egg-out-of-range', 'two eggs for four', ['4         eggs', '2         eggs']],
    ['dough-too-dry', 'a spoon of water for a cup', ['1 cup     boiling', '1 tbsp    boiling']],
    ['fat-out-of-range', 'tablespoons of butter for cups', ['1/2 cup   butter', '1/2 tbsp  butter']],
    ['implausible-temperature', 'Fahrenheit for Celsius', ['190 C', '190 F']],
  ],
  'published/farmer-fritter-batter': [
    ['dough-too-wet', 'quarts of milk for a cup', ['2/3 cup   whole', '2/3 quart  whole']],
    ['leavening-out-of-range', 'tablespoons of powder', ['2 tsp     baking', '2 tbsp    baking']],
  ],
  'published/farmer-suet-pudding': [
    ['leavening-out-of-range', 'tablespoons of soda', ['1 tsp     baking', '2 tbsp    baking']],
    ['sugar-out-of-range', 'a quart of molasses', ['1 cup     molasses', '1 quart   molasses']],
    ['dough-too-dry', 'a spoonful of milk', ['1 cup     whole', '1 tbsp    whole']],
  ],
  'published/gillette-raspberry-shrub': [
    ['sugar-out-of-range', 'ounces for pounds', ['1/2 lb    sugar', '1/2 oz    sugar']],
  ],
  'published/greenbaum-cherry-syrup': [
    ['sugar-out-of-range', 'an ounce of sugar for a pound', ['1 lb      sugar', '1 oz      sugar']],
  ],
  'published/greenbaum-potato-dumplings': [
    ['starch-out-of-range', 'a quart of flour and more', ['1 cup     plain', '2 quart   plain']],
    ['starch-out-of-range', 'a spoon of flour', ['1 cup     plain', '2 tbsp    plain']],
  ],
  'published/imperial/beeton-1268-baked-custard': [
    ['custard-wont-set', 'one egg for four', ['4         eggs', '1         egg']],
    ['undercooked', 'taken out at 60 C', ['centre reads 80 C', 'centre reads 50 C']],
  ],
  'published/imperial/beeton-1384-yorkshire': [
    [
      'leftover-amount',
      'half the milk, and never the rest',
      ['Add the rest of the milk and the beaten eggs', 'Add the beaten eggs'],
    ],
    ['unlisted-ingredient', 'the eggs left out of the list', ['  3         eggs\n', '']],
  ],
  'published/imperial/beeton-144-pea-soup': [
    ['time-out-of-range', 'days for hours', ['simmer for 3 h', 'simmer for 3 days']],
    ['salt-out-of-range', 'cups of salt for teaspoons', ['2 tsp     salt', '2 cup     salt']],
    ['low-acid-preserve', 'sealed in jars', ['boil for 15 min and serve', 'boil for 15 min, fill in jars and seal']],
    [
      'cooling-too-slow',
      'left on the stove overnight',
      ['boil for 15 min and serve', 'boil for 15 min and leave on the stove overnight'],
    ],
    ['needs-weight', 'cups of a leaf that packs', ['1 tbsp    mint', '1 cup     mint']],
    ['decimal-comma', 'a comma', ['1/4 lb    carrots', '0,25 lb   carrots']],
  ],
  'published/imperial/beeton-486-pickled-onions': [
    [
      'acid-out-of-range',
      'the vinegar watered',
      ['  2 pint    vinegar, cold\n', '  2 pint    vinegar, cold\n  4 pint    water\n'],
      ['Pour on the vinegar', 'Pour on the vinegar and the water'],
    ],
    ['unknown-unit', 'a letter too few', ['2 pint    vinegar', '2 pnt     vinegar']],
  ],
  'published/imperial/beeton-952-roast-fowls': [
    ['undercooked', 'taken out at 60 C', ['thigh reads 75 C', 'thigh reads 60 C']],
  ],
  'published/imperial/beeton-lemon-cheese': [
    ['custard-wont-set', 'one egg for six', ['6         eggs', '1         egg'], ['sugar, eggs,', 'sugar, egg,']],
    ['sugar-out-of-range', 'an ounce of sugar for a pound', ['1 lb      caster', '1 oz      caster']],
    ['fat-out-of-range', 'four pounds of butter for a quarter', ['1/4 lb    butter', '4 lb      butter']],
  ],
  'published/imperial/beeton-orange-brandy': [
    ['sugar-out-of-range', 'stones of sugar for pounds', ['1 1/4 lb  caster', '26 lb     caster']],
  ],
  'published/library-blancmange': [
    ['starch-out-of-range', 'a teaspoon of cornflour', ['1/4 cup   cornflour', '1 tsp     cornflour']],
    ['starch-out-of-range', 'a cup of cornflour', ['1/4 cup   cornflour', '1 cup     cornflour']],
    ['salt-out-of-range', 'tablespoons of salt', ['1/4 tsp   salt', '1 tbsp    salt']],
  ],
  'published/library-rhubarb-pie': [
    ['starch-out-of-range', 'a cup and a half of cornflour', ['2 tbsp    cornflour', '1 1/2 cup  cornflour']],
    ['sugar-out-of-range', 'four cups of sugar', ['1 1/2 cup  caster', '4 cup     caster']],
  ],
  'published/navy-biscuits-1958': [
    ['leavening-out-of-range', 'cups of powder five times over', ['2 1/2 cup = 425 g  baking', '12 cup    baking']],
    ['measure-mismatch', 'teaspoons of powder for cups', ['2 1/2 cup = 425 g', '2 1/2 tsp = 425 g']],
    ['dough-too-dry', 'cups of milk for quarts', ['5 1/2 quart  whole', '5 1/2 cup  whole']],
    ['oven-not-set', 'no oven', ['Bake at 425 F for', 'Bake for']],
  ],
  'published/theory-popovers': [
    ['dough-too-wet', 'quarts of milk for cups', ['1 cup     whole', '1 quart   whole']],
    ['egg-out-of-range', 'no egg but a white', ['2         eggs', '1/4       eggs']],
    ['implausible-temperature', 'Fahrenheit for Celsius', ['220 C', '220 F']],
  ],
  'published/usda-1988-carrot-cake': [
    ['fat-out-of-range', 'quarts of oil for cups', ['2 cup     vegetable', '2 quart   vegetable']],
    ['leavening-out-of-range', 'cups of powder', ['1/4 cup   baking', '1 cup     baking']],
    ['sugar-out-of-range', 'three times the sugar', ['4 cup = 780 g  sugar', '12 cup    sugar']],
  ],
  'published/usda-1988-peanut-butter-cookies': [
    ['ambiguous-mention', 'which sugar?', ['1 1/2 cup = 298 g  sugar', '1 1/2 cup = 298 g  caster sugar']],
  ],
  'published/usda-1988-royal-brownies': [
    ['sugar-out-of-range', 'five times the sugar', ['3 3/4 cup = 737 g  sugar', '18 3/4 cup  sugar']],
    ['pan-overfull', 'centimetres for inches', ['18 x 13 x 1 in', '18 x 13 x 1 cm']],
    ['unknown-food', 'misspelled', ['walnuts, chopped', 'wallnutz, chopped']],
  ],
  'published/usda-b04-sugar-cookies': [
    ['unused-part', 'the spiced sugar never goes on', ['  do Sprinkle with the spiced sugar.\n', '']],
    [
      'out-of-order',
      'margarine listed last',
      ['  3/4 cup = 170.1 g  margarine (or butter)\n', ''],
      ['  1/2 tsp   ground cinnamon\n', '  1/2 tsp   ground cinnamon\n  3/4 cup = 170.1 g  margarine (or butter)\n'],
    ],
    ['yield-missing', 'no yield', ['  yield   25 cookies\n', '']],
    ['yield-mismatch', 'cookies of a pound each', ['25 cookies\n', '25 cookies of 400 g\n']],
    [
      'unknown-part',
      'a part misspelled in the trial',
      ['inside reads 160 F.\n', 'inside reads 160 F.\n\ntrial 2026-10-08 by Bao\n  used    1 tsp salt in duogh\n'],
    ],
    [
      'untested-change',
      'changed after the trial',
      ['375 F for 12 min', '375 F for 20 min'],
      ['inside reads 160 F.\n', 'inside reads 160 F.\n\ntrial 2026-10-08 by Bao\n  tested  {tested}\n  verdict keep\n'],
    ],
    ['sugar-out-of-range', 'teaspoons of sugar for cups', ['1 1/2 cup = 340 g  sugar', '1 1/2 tsp  sugar']],
  ],
  'published/usda-b09-cornbread': [
    ['too-salty', 'half a cup of salt for a teaspoon', ['1 1/4 tsp  salt', '1/2 cup  salt']],
    ['pan-overfull', 'a pan of half the length and width', ['18 x 13 x 1 in', '9 x 6.5 x 1 in']],
    ['implausible-temperature', 'Celsius for Fahrenheit', ['400 F', '400 C']],
  ],
  'published/usda-c07-medium-white-sauce': [
    ['measure-mismatch', 'teaspoons of flour for spoons', ['9 tbsp = 63.8 g', '9 tsp = 63.8 g']],
    ['starch-out-of-range', 'gallons of milk for quarts', ['1 quart   nonfat', '1 gallon  nonfat']],
    ['held-too-warm', 'kept hot at 110 F', ['Hold at 140 F', 'Hold at 110 F']],
    ['cooling-too-slow', 'eight hours for two', ['within 2 h', 'within 8 h']],
  ],
  'published/usda-dumplings': [
    ['leavening-out-of-range', 'tablespoons of powder', ['2 1/2 tsp  baking', '2 1/2 tbsp  baking']],
    ['dough-too-wet', 'three cups of milk for a third', ['1/3 cup   whole', '3 cup     whole']],
    ['salt-out-of-range', 'a tablespoon of salt', ['1/2 tsp   salt', '1/2 tbsp  salt']],
  ],
  'published/usda-school-granola': [
    ['sugar-out-of-range', 'quarts of honey', ['1 cup     honey', '1 quart   honey']],
    ['fat-out-of-range', 'cups of oil for spoons', ['5 tbsp    vegetable', '5 cup     vegetable']],
  ],
  'published/wright-marshmallows': [
    ['gel-wont-set', 'a teaspoon of gelatine', ['2 oz      gelatin', '1 tsp     gelatin']],
    ['gel-too-firm', 'six ounces of gelatine', ['2 oz      gelatin', '6 oz      gelatin']],
    ['sugar-out-of-range', 'a quart and a half of water', ['1 cup     water', '1 1/2 quart  water']],
  ],
  'published/wright-peanut-brittle': [
    ['leavening-out-of-range', 'a quarter cup of soda', ['1 tbsp    baking', '1/4 cup   baking']],
    ['fat-out-of-range', 'pounds of butter', ['1 tbsp    butter', '2 lb      butter']],
    ['sugar-out-of-range', 'quarts of peanuts', ['2 cup     peanuts', '4 quart   peanuts']],
  ],
};

export const FAULTS: readonly Fault[] = Object.entries(ROWS).flatMap(([recipe, rows]) =>
  rows.map(([code, title, ...edits]) => ({ recipe, title, code, edits })),
);
