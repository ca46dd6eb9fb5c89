/**
 * Knows tested recipes for canned pickles and salsas, as a cook would type them: USDA, Complete Guide to Home Canning (AIB 539, rev. 2009), by its pages; read
 * in full as printed by extension services (Michigan State, Oklahoma State, Arkansas, NCHFP) and in copies of the guide, where `seen`, else from memory.
 */

export interface TestedPreserve {
  readonly name: string;
  /** Of the guide. */
  readonly page: string;
  readonly seen: boolean;
  /** What is sour, by the number that is written, so that it can be halved. */
  readonly sour: readonly (readonly [number, string])[];
  readonly list: readonly string[];
  readonly steps: readonly string[];
}

/** Every one of them ends like this. */
const SHELVED =
  'Adjust the lids, process for 10 min in a boiling-water canner, and store in the pantry for up to a year.';

export const textOf = ({ name, sour, list, steps }: TestedPreserve, of = 1): string =>
  [
    `recipe ${name}`,
    ...sour.map(([amount, what]) => `  ${amount * of} ${what}`),
    ...list.map((line) => `  ${line}`),
    ...steps.map((step) => `  do ${step}`),
    `  do ${SHELVED}\n`,
  ].join('\n');

export const TESTED: readonly TestedPreserve[] = [
  {
    name: 'Bread-and-butter pickles',
    page: '6-9',
    seen: true,
    sour: [[4, 'cup vinegar (5 %)']],
    list: [
      '6 lb pickling cucumbers',
      '8 cup thinly sliced onions',
      '1/2 cup canning salt',
      '4 1/2 cup sugar',
      '2 tbsp mustard seed',
      '1 1/2 tbsp celery seed',
      '1 tbsp ground turmeric',
    ],
    steps: [
      'Cut the cucumbers into slices. Combine the cucumbers and onions in a large bowl and add the salt. Cover with crushed ice and refrigerate for 4 h.',
      'Boil the sugar, mustard seed, celery seed, turmeric and vinegar for 10 min. Drain the cucumbers and onions, add them and slowly reheat to boiling.',
      'Fill the jars with the slices and the hot syrup.',
    ],
  },
  {
    name: 'Quick fresh-pack dill pickles',
    page: '6-10',
    seen: true,
    sour: [[1.5, 'qt vinegar (5 %)']],
    list: [
      '8 lb pickling cucumbers',
      '2 gal water',
      '1 1/4 cup canning salt',
      '1/4 cup sugar',
      '2 qt water',
      '2 tbsp mixed pickling spice',
      '3 tbsp mustard seed',
      '4 1/2 tbsp dill seed',
    ],
    steps: [
      'Dissolve 3/4 cup of the salt in 2 gal of the water. Pour over the cucumbers and let stand for 12 h. Drain.',
      'Combine the vinegar, 1/2 cup of the salt, the sugar and 2 qt of the water. Add the pickling spice and heat to boiling.',
      'Fill the jars with the cucumbers. Add the mustard seed and dill seed. Cover with the boiling pickling solution.',
    ],
  },
  {
    name: 'Quick sweet pickles',
    page: '6-12',
    seen: true,
    sour: [[3.5, 'cup vinegar (5 %)']],
    list: [
      '8 lb pickling cucumbers',
      '1/3 cup canning salt',
      '4 1/2 cup sugar',
      '2 tsp celery seed',
      '1 tbsp whole allspice',
      '2 tbsp mustard seed',
    ],
    steps: [
      'Slice the cucumbers. Place in a bowl and sprinkle with the salt. Cover with crushed ice and refrigerate for 3 h. Drain well.',
      'Combine the sugar, vinegar, celery seed, allspice and mustard seed and heat to boiling.',
      'Fill the jars with the cucumbers and add the hot pickling syrup.',
    ],
  },
  {
    name: 'Pickled asparagus',
    page: '6-13',
    seen: true,
    sour: [[4.5, 'cup white distilled vinegar (5 %)']],
    list: ['10 lb asparagus', '6 large cloves garlic', '4 1/2 cup water', '1/2 cup canning salt', '3 tsp dill seed'],
    steps: [
      'Cut the asparagus into spears and place a garlic clove at the bottom of each jar. Pack the asparagus into the jars.',
      'Bring the water, vinegar, salt and dill seed to a boil. Pour over the spears.',
    ],
  },
  {
    name: 'Pickled dilled beans',
    page: '6-13',
    seen: false,
    sour: [[4, 'cup white vinegar (5 %)']],
    list: [
      '4 lb green beans',
      '8 heads fresh dill',
      '8 cloves garlic',
      '1/2 cup canning salt',
      '4 cup water',
      '1 tsp hot red pepper flakes',
    ],
    steps: [
      'Trim the beans to 4-inch lengths. In each jar place 1 to 2 dill heads and a clove of garlic. Place the whole beans upright in the jars.',
      'Combine the salt, vinegar, water and pepper flakes. Bring to a boil. Add the hot solution to the beans.',
    ],
  },
  {
    name: 'Pickled three-bean salad',
    page: '6-14',
    seen: true,
    sour: [
      [0.5, 'cup white vinegar (5 %)'],
      [0.25, 'cup bottled lemon juice'],
    ],
    list: [
      '1 1/2 cup green beans, cut and blanched',
      '1 1/2 cup canned kidney beans, drained',
      '1 cup canned chickpeas, drained',
      '1/2 cup thinly sliced onion',
      '1/2 cup thinly sliced celery',
      '1/2 cup sliced green bell pepper',
      '3/4 cup sugar',
      '1/4 cup oil',
      '1/2 tsp canning salt',
      '1 1/4 cup water',
    ],
    steps: [
      'Combine the vinegar, lemon juice, sugar and water and bring to a boil. Remove from the heat. Add the oil and salt and mix well.',
      'Add the beans, chickpeas, onion, celery and pepper to the solution and bring to a simmer. Marinate for 12 h in the refrigerator, then heat the entire mixture to a boil.',
      'Fill clean jars with the solids and add the hot liquid.',
    ],
  },
  {
    name: 'Pickled beets',
    page: '6-15',
    seen: true,
    sour: [[4, 'cup vinegar (5 %)']],
    list: [
      '7 lb beets',
      '1 1/2 tsp canning salt',
      '2 cup sugar',
      '2 cup water',
      '2 cinnamon sticks',
      '12 cloves',
      '5 onions',
    ],
    steps: [
      'Cover the beets with boiling water and cook until tender, 25 min. Drain and discard the liquid. Cool, trim and slip off the skins. Slice the beets. Slice the onions.',
      'Bring the vinegar, salt, sugar, water, cinnamon and cloves to a boil. Add the beets and onions. Simmer for 5 min.',
      'Fill the jars with the beets and onions. Add the hot vinegar solution.',
    ],
  },
  {
    name: 'Pickled carrots',
    page: '6-16',
    seen: false,
    sour: [[5.5, 'cup white vinegar (5 %)']],
    list: [
      '2 3/4 lb carrots, peeled',
      '1 cup water',
      '2 cup sugar',
      '2 tsp canning salt',
      '8 tsp mustard seed',
      '4 tsp celery seed',
    ],
    steps: [
      'Cut the carrots into rounds. Combine the vinegar, water, sugar and salt and bring to a boil. Add the carrots and simmer for 10 min.',
      'Place the mustard seed and celery seed in the jars. Fill the jars with the hot carrots and cover with the hot pickling liquid.',
    ],
  },
  {
    name: 'Marinated whole mushrooms',
    page: '6-18',
    seen: true,
    sour: [
      [0.5, 'cup bottled lemon juice'],
      [2.5, 'cup white vinegar (5 %)'],
    ],
    list: [
      '7 lb small whole mushrooms',
      '2 cup olive oil',
      '1 tbsp dried oregano',
      '1 tbsp dried basil',
      '1 tbsp canning salt',
      '1/2 cup finely chopped onions',
      '1/4 cup diced pimiento',
      '2 cloves garlic',
      '25 black peppercorns',
    ],
    steps: [
      'Cut the stems of the mushrooms. Add the lemon juice and water to cover. Bring to a boil and simmer for 5 min. Drain the mushrooms.',
      'Mix the olive oil, vinegar, oregano, basil and salt. Stir in the onions and pimiento and heat to boiling.',
      'Place the garlic and peppercorns in the jars. Fill the jars with the mushrooms and the hot oil and vinegar solution.',
    ],
  },
  {
    name: 'Pickled dilled okra',
    page: '6-19',
    seen: false,
    sour: [[6, 'cup vinegar (5 %)']],
    list: [
      '7 lb small okra',
      '6 small hot peppers',
      '4 tsp dill seed',
      '8 cloves garlic',
      '2/3 cup canning salt',
      '6 cup water',
    ],
    steps: [
      'Trim the okra. Fill the jars with the whole okra and place a garlic clove in each.',
      'Combine the salt, hot peppers, dill seed, water and vinegar and bring to a boil. Pour the hot pickling solution over the okra.',
    ],
  },
  {
    name: 'Marinated peppers',
    page: '6-20',
    seen: false,
    sour: [
      [1, 'cup bottled lemon juice'],
      [2, 'cup white vinegar (5 %)'],
    ],
    list: [
      '4 lb firm bell peppers',
      '1 tbsp dried oregano',
      '1 cup olive oil',
      '1/2 cup chopped onions',
      '2 cloves garlic',
      '1 tbsp prepared horseradish',
    ],
    steps: [
      'Blister the skins of the peppers and peel. Flatten whole peppers. Mix the lemon juice, vinegar, oregano, oil, onions, garlic and horseradish in a saucepan and heat to boiling.',
      'Place the peppers in the jars. Pour in the hot, well-mixed solution.',
    ],
  },
  {
    name: 'Pickled bell peppers',
    page: '6-20',
    seen: true,
    sour: [[3, 'cup vinegar (5 %)']],
    list: ['7 lb firm bell peppers', '3 1/2 cup sugar', '3 cup water', '9 cloves garlic', '4 1/2 tsp canning salt'],
    steps: [
      'Slice the peppers in strips. Boil the sugar, vinegar and water for 1 min. Add the peppers and bring to a boil.',
      'Place the garlic and salt in the jars. Add the pepper strips and cover with the hot vinegar mixture.',
    ],
  },
  {
    name: 'Pickled hot peppers',
    page: '6-21',
    seen: false,
    sour: [[5, 'cup vinegar (5 %)']],
    list: [
      '4 lb hot peppers',
      '3 lb sweet red and green bell peppers',
      '1 cup water',
      '4 tsp canning salt',
      '2 tbsp sugar',
      '2 cloves garlic',
    ],
    steps: [
      'Quarter the peppers and fill them into the jars.',
      'Heat the vinegar, water, salt, sugar and garlic to boiling and simmer for 10 min. Remove the garlic. Add the hot pickling solution over the peppers.',
    ],
  },
  {
    name: 'Pickled sweet green tomatoes',
    page: '6-24',
    seen: false,
    sour: [[4, 'cup vinegar (5 %)']],
    list: [
      '10 lb green tomatoes',
      '2 cup sliced onions',
      '1/4 cup canning salt',
      '3 cup brown sugar',
      '1 tbsp mustard seed',
      '1 tbsp allspice',
      '1 tbsp celery seed',
      '1 tbsp cloves',
    ],
    steps: [
      'Slice the tomatoes. Place the tomatoes and onions in a bowl, sprinkle with the salt and let stand for 4 h. Drain.',
      'Heat the sugar and vinegar with the mustard seed, allspice, celery seed and cloves. Add the tomatoes and onions, bring to a boil and simmer for 30 min.',
      'Fill the jars with the solids and cover with the hot pickling solution.',
    ],
  },
  {
    name: 'Pickled mixed vegetables',
    page: '6-24',
    seen: true,
    sour: [[5, 'cup white vinegar (5 %)']],
    list: [
      '4 lb pickling cucumbers',
      '2 lb small onions, peeled and quartered',
      '4 cup cut celery',
      '2 cup peeled and cut carrots',
      '2 cup cut sweet red peppers',
      '2 cup cauliflower florets',
      '1/4 cup prepared mustard',
      '1/2 cup canning salt',
      '3 1/2 cup sugar',
      '3 tbsp celery seed',
      '2 tbsp mustard seed',
    ],
    steps: [
      'Combine the cucumbers, onions, celery, carrots, peppers and cauliflower, cover with crushed ice and refrigerate for 3 h.',
      'Mix the vinegar and mustard. Add the salt, sugar, celery seed and mustard seed and bring to a boil. Drain the vegetables and add to the hot pickling solution. Slowly bring to a boil.',
      'Fill the vegetables into the jars and add the pickling solution.',
    ],
  },
  {
    name: 'Pickled bread-and-butter zucchini',
    page: '6-25',
    seen: false,
    sour: [[4, 'cup white vinegar (5 %)']],
    list: [
      '16 cup sliced zucchini',
      '4 cup thinly sliced onions',
      '1/2 cup canning salt',
      '2 cup sugar',
      '4 tbsp mustard seed',
      '2 tbsp celery seed',
      '2 tsp ground turmeric',
    ],
    steps: [
      'Cover the zucchini and onions with 1 inch of water and the salt. Let stand for 2 h and drain thoroughly.',
      'Combine the vinegar, sugar, mustard seed, celery seed and turmeric. Bring to a boil and add the zucchini and onions. Simmer for 5 min.',
      'Fill the jars with the mixture and the pickling solution.',
    ],
  },
  {
    name: 'Piccalilli',
    page: '6-27',
    seen: false,
    sour: [[4.5, 'cup vinegar (5 %)']],
    list: [
      '6 cup chopped green tomatoes',
      '1 1/2 cup chopped sweet red peppers',
      '1 1/2 cup chopped green peppers',
      '2 1/4 cup chopped onions',
      '7 1/2 cup chopped cabbage',
      '1/2 cup canning salt',
      '3 tbsp pickling spice',
      '3 cup brown sugar',
    ],
    steps: [
      'Combine the tomatoes, peppers, onions and cabbage with the salt. Cover with hot water and let stand for 12 h. Drain and press to remove all possible liquid.',
      'Add the spice to the combined vinegar and brown sugar and heat to a boil. Add the vegetables and boil gently for 30 min.',
      'Fill the jars with the hot mixture.',
    ],
  },
  {
    name: 'Pickled corn relish',
    page: '6-28',
    seen: false,
    sour: [[5, 'cup vinegar (5 %)']],
    list: [
      '10 cup fresh corn kernels',
      '2 1/2 cup diced sweet red peppers',
      '2 1/2 cup diced sweet green peppers',
      '2 1/2 cup chopped celery',
      '1 1/4 cup diced onions',
      '1 3/4 cup sugar',
      '2 1/2 tbsp canning salt',
      '2 1/2 tsp celery seed',
      '2 1/2 tbsp dry mustard',
      '1 1/4 tsp turmeric',
    ],
    steps: [
      'Combine the peppers, celery, onions, sugar, vinegar, salt and celery seed in a saucepan. Bring to a boil and simmer for 5 min. Add the mustard, turmeric and corn. Simmer for 5 min.',
      'Fill the jars with the hot mixture.',
    ],
  },
  {
    name: 'Pickled green tomato relish',
    page: '6-29',
    seen: true,
    sour: [[1, 'qt vinegar (5 %)']],
    list: [
      '10 lb small hard green tomatoes',
      '1 1/2 lb red bell peppers',
      '1 1/2 lb green bell peppers',
      '2 lb onions',
      '1/2 cup canning salt',
      '1 qt water',
      '4 cup sugar',
      '1/3 cup prepared yellow mustard',
      '2 tbsp cornstarch',
    ],
    steps: [
      'Finely chop the tomatoes, peppers and onions. Dissolve the salt in the water and pour over the vegetables. Heat to boiling and simmer for 5 min. Drain in a colander.',
      'Return the vegetables to the kettle. Add the sugar, vinegar, mustard and cornstarch. Heat to a boil and simmer for 5 min.',
      'Fill the jars with the hot relish.',
    ],
  },
  {
    name: 'Pickled pepper-onion relish',
    page: '6-30',
    seen: false,
    sour: [[6, 'cup white vinegar (5 %)']],
    list: [
      '6 cup finely chopped onions',
      '3 cup finely chopped sweet red peppers',
      '3 cup finely chopped green peppers',
      '1 1/2 cup sugar',
      '2 tbsp canning salt',
    ],
    steps: [
      'Combine the onions, peppers, sugar, vinegar and salt and boil gently for 30 min, until it thickens.',
      'Fill the jars with the hot relish.',
    ],
  },
  {
    name: 'Chile salsa',
    page: '3-21',
    seen: true,
    sour: [[1, 'cup vinegar (5 %)']],
    list: ['5 lb tomatoes', '2 lb chile peppers', '1 lb onions', '3 tsp canning salt', '1/2 tsp black pepper'],
    steps: [
      'Peel and chop the chile peppers. Peel and chop the tomatoes. Chop the onions. Combine the tomatoes, chile peppers, onions, vinegar, salt and pepper in a large saucepan. Heat to a boil, and simmer for 10 min.',
      'Fill the jars with the hot salsa.',
    ],
  },
  {
    name: 'Chile salsa II',
    page: '3-22',
    seen: false,
    sour: [[1, 'cup vinegar (5 %)']],
    list: [
      '10 cup chopped tomatoes',
      '6 cup seeded chopped chili peppers',
      '4 cup chopped onions',
      '3 tsp canning salt',
      '1/2 tsp black pepper',
    ],
    steps: [
      'Combine the tomatoes, peppers, onions, vinegar, salt and black pepper in a large saucepan. Heat to a boil and simmer for 10 min.',
      'Fill the jars with the hot salsa.',
    ],
  },
  {
    name: 'Tomatillo green salsa',
    page: '3-22',
    seen: true,
    sour: [[1, 'cup bottled lemon juice']],
    list: [
      '5 cup chopped tomatillos',
      '1 1/2 cup seeded chopped long green chiles',
      '1/2 cup seeded chopped jalapeño peppers',
      '4 cup chopped onions',
      '6 cloves garlic',
      '1 tbsp canning salt',
      '1 tsp black pepper',
    ],
    steps: [
      'Combine the tomatillos, chiles, jalapeños, onions, lemon juice, garlic, salt and pepper in a large saucepan and bring to a boil. Simmer for 20 min.',
      'Ladle the hot salsa into the jars.',
    ],
  },
  {
    name: 'Tomato salsa using paste tomatoes',
    page: '3-23',
    seen: true,
    sour: [[2, 'cup bottled lemon juice']],
    list: [
      '7 qt chopped tomatoes',
      '4 cup seeded chopped long green chiles',
      '5 cup chopped onion',
      '1/2 cup seeded chopped jalapeño peppers',
      '6 cloves garlic',
      '2 tbsp salt',
      '1 tbsp black pepper',
    ],
    steps: [
      'Combine the tomatoes, chiles, onion, jalapeños, garlic, lemon juice, salt and pepper in a large saucepan and bring to a boil. Simmer for 30 min.',
      'Ladle the hot salsa into the jars.',
    ],
  },
  {
    name: 'Choice salsa',
    page: 'NCHFP',
    seen: true,
    sour: [[1.5, 'cup bottled lemon juice']],
    list: ['6 cup chopped tomatoes', '5 cup diced onions', '4 cup diced bell peppers', '3 tsp canning salt'],
    steps: [
      'Combine the tomatoes, onions and peppers in a large pot and add the lemon juice and salt. Bring to a boil and simmer for 3 min.',
      'Spoon the hot salsa into the jars.',
    ],
  },
];
