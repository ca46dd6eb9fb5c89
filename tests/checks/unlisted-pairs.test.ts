/**
 * Steps that name a food, in pairs: in the first it is wanted and nowhere listed, in its twin the same word is no such thing: an order,
 * what is listed under another name, what was made of the list, or what the pan and the board take. Which is which is common practice.
 */
import { expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const DEFAULT_LIST = ['200 g rolled oats', '2 eggs'];

/** The foods that are said to be missing when these steps stand under this list. */
function unlisted(steps: string, list: readonly string[] = DEFAULT_LIST): string[] {
  const text = `recipe Test\n${[...list, ...steps.split(' / ').map((step) => `do ${step}`)].map((line) => `  ${line}\n`).join('')}`;
  return open(text)
    .findings.open.filter((f) => f.code === 'unlisted-ingredient')
    .map((f) => text.split('\n')[f.at.line]?.slice(f.at.start, f.at.end) ?? '');
}

interface Twin {
  readonly steps: string;
  readonly list?: readonly string[];
}

test.each<[found: Twin & { readonly foods: readonly string[] }, twin: Twin]>([
  [{ steps: 'Melt butter in a pan.', foods: ['butter'] }, { steps: 'Butter the pan.' }],
  [{ steps: 'Melt the butter.', foods: ['butter'] }, { steps: 'Grease the tin with butter.' }],
  [{ steps: 'Add the flour.', foods: ['flour'] }, { steps: 'Flour the board and roll out the oats.' }],
  [
    { steps: 'Stir in flour and cook for 2 min.', foods: ['flour'] },
    { steps: 'Dust the worktop with flour and shape the oats.' },
  ],
  [{ steps: 'Beat in the sugar.', foods: ['sugar'] }, { steps: 'Stir until the sugar dissolves.' }],
  [{ steps: 'Dust with icing sugar.', foods: ['icing sugar'] }, { steps: 'Dust with flour.' }],
  [{ steps: 'Pour in the milk.', foods: ['milk'] }, { steps: 'Pour into the milk pan.' }],
  [
    { steps: 'Stir in the bicarbonate of soda.', foods: ['bicarbonate of soda'] },
    { steps: 'Stir in the bicarbonate of soda.', list: ['2 eggs', '1 tsp bicarbonate of soda'] },
  ],
  [
    { steps: 'Whisk the eggs with the cream of tartar.', foods: ['cream of tartar'] },
    { steps: 'Whisk the eggs to the thickness of double cream.' },
  ],
  [
    { steps: 'Brown the leg of lamb.', foods: ['leg of lamb'] },
    { steps: 'Lay in slices of bread.', list: ['2 eggs', '200 g white bread'] },
  ],
  [{ steps: 'Thin with a little milk.', foods: ['milk'] }, { steps: 'Beat until it runs like milk.' }],
  [
    { steps: 'Stir in the citric acid.', foods: ['citric acid'] },
    { steps: 'Boil the sugar until amber. / Stir in the caramel.', list: ['2 eggs', '200 g sugar'] },
  ],
  [
    { steps: 'Stir in the Dijon mustard.', foods: ['Dijon mustard'] },
    { steps: 'Bake the oats. / Ice the warm rolls.' },
  ],
  [{ steps: 'Whisk in mayonnaise.', foods: ['mayonnaise'] }, { steps: 'Whisk in the eggs as for mayonnaise.' }],
  [{ steps: 'Fold in cream.', foods: ['cream'] }, { steps: 'Fold in the eggs as you would with cream.' }],
  [{ steps: 'Stir in honey.', foods: ['honey'] }, { steps: 'Bake to the colour of honey.' }],
  [
    { steps: 'Drizzle with the honey.', foods: ['honey'] },
    { steps: 'Drizzle with the honey.', list: ['200 g rolled oats', '50 g clear honey'] },
  ],
  [
    { steps: 'Fry the bacon until crisp.', foods: ['bacon'] },
    { steps: 'Fry the bacon until crisp.', list: ['2 eggs', '80 g smoked streaky bacon'] },
  ],
  [{ steps: 'Add a splash of wine.', foods: ['wine'] }, { steps: 'Serve with a glass of wine.' }],
  [
    { steps: 'Add the red wine and reduce.', foods: ['red wine'] },
    { steps: 'Add the wine and reduce.', list: ['2 eggs', '200 ml red wine'] },
  ],
  [{ steps: 'Fold in walnuts.', foods: ['walnuts'] }, { steps: 'Shape in balls the size of walnuts.' }],
  [{ steps: 'Scatter over the almonds.', foods: ['almonds'] }, { steps: 'Serve with almonds.' }],
  [{ steps: 'Season with nutmeg.', foods: ['nutmeg'] }, { steps: 'Season with salt and pepper.' }],
  [
    { steps: 'Add the cinnamon and the cloves.', foods: ['cinnamon', 'cloves'] },
    { steps: 'Leave it to cool on the rack.' },
  ],
  [{ steps: 'Whisk in cream.', foods: ['cream'] }, { steps: 'Cream the eggs.' }],
  [
    { steps: 'Whisk the cream to soft peaks.', foods: ['cream'] },
    { steps: 'Whisk the cream to soft peaks.', list: ['2 eggs', '200 g mascarpone'] },
  ],
  [
    { steps: 'Add grated cheese.', foods: ['cheese'] },
    { steps: 'Add the grated cheese.', list: ['2 eggs', '80 g gruyere'] },
  ],
  [{ steps: 'Mix with yoghurt.', foods: ['yoghurt'] }, { steps: 'Mix until as thick as yoghurt.' }],
  [
    { steps: 'Whisk together flour, sugar and baking powder.', foods: ['flour', 'sugar', 'baking powder'] },
    { steps: 'Tip the flour mixture into the oats.' },
  ],
  [{ steps: 'Brush with beaten egg.', list: ['200 g rolled oats'], foods: ['egg'] }, { steps: 'Brush with egg wash.' }],
  [
    { steps: 'Squeeze over lemon juice.', foods: ['lemon juice'] },
    { steps: 'Squeeze over lemon juice.', list: ['2 eggs', '1 lemon'] },
  ],
  [
    { steps: 'Pour over the syrup.', list: ['2 eggs'], foods: ['syrup'] },
    { steps: 'Boil to a thick syrup and pour over the syrup.', list: ['200 g caster sugar', '200 ml water'] },
  ],
  [
    { steps: 'Pour over golden syrup.', foods: ['golden syrup'] },
    { steps: 'Pour the sugar syrup over.', list: ['200 g caster sugar', '200 ml water'] },
  ],
  [{ steps: 'Stir in the rice.', foods: ['rice'] }, { steps: 'Serve over rice.' }],
  [
    { steps: 'Simmer the lentils for 20 min.', foods: ['lentils'] },
    { steps: 'Simmer the lentils for 20 min.', list: ['200 g red lentils'] },
  ],
  [{ steps: 'Whisk in olive oil in a thin stream.', foods: ['olive oil'] }, { steps: 'Fry in oil until golden.' }],
  [
    { steps: 'Add vanilla extract.', foods: ['vanilla extract'] },
    { steps: 'Add the vanilla.', list: ['2 eggs', '1 tsp vanilla extract'] },
  ],
  [
    { steps: 'Add onion and garlic.', foods: ['onion', 'garlic'] },
    { steps: 'Chop with a garlic press.', list: ['2 eggs'] },
  ],
  [
    { steps: 'Top with parsley.', foods: ['parsley'] },
    { steps: 'Take out the parsley stalks.', list: ['2 eggs'] },
  ],
  [
    { steps: 'Mix the oats, the eggs and raisins.', foods: ['raisins'] },
    { steps: 'Mix the oats and eggs, wrap and chill.' },
  ],
  [{ steps: 'Roll in desiccated coconut.', foods: ['desiccated coconut'] }, { steps: 'Roll in balls.' }],
  [
    { steps: 'Dissolve gelatine in the hot water.', foods: ['gelatine'] },
    { steps: 'Set the tin in a water bath and bake at 150 C for 40 min.' },
  ],
  [{ steps: 'Boil the potatoes in salted water.', foods: ['potatoes'] }, { steps: 'Boil the oats in salted water.' }],
  [
    { steps: 'Melt the dark chocolate with the eggs.', foods: ['dark chocolate'] },
    { steps: 'Melt the chocolate with the eggs.', list: ['2 eggs', '100 g chocolate chips'] },
  ],
  [
    { steps: 'Fill with raspberry jam.', foods: ['raspberry jam'] },
    { steps: 'Pot the jam.', list: ['500 g raspberries', '500 g jam sugar'] },
  ],
  [
    { steps: 'Add ground almonds.', list: ['100 g plain flour', '2 eggs'], foods: ['ground almonds'] },
    { steps: 'Add half the almonds or hazelnuts.', list: ['2 eggs', '50 g almonds'] },
  ],
  // Told off among what is listed, and named alone.
  [
    { steps: 'Whisk the oats, salt and cocoa together.', list: ['200 g oats', '20 g cocoa'], foods: ['salt'] },
    { steps: 'Whisk the oats and cocoa with salt.', list: ['200 g oats', '20 g cocoa'] },
  ],
  [
    { steps: 'Simmer the oats, milk and honey.', list: ['200 g oats', '300 ml milk'], foods: ['honey'] },
    { steps: 'Put oats and juices in a bag.', list: ['200 g oats', '2 oranges'] },
  ],
  [
    {
      steps: 'Bring the vinegar, water and sugar to a boil.',
      list: ['200 ml vinegar', '50 g sugar'],
      foods: ['water'],
    },
    { steps: 'Add the vinegar and a litre of water.', list: ['200 ml vinegar', '50 g sugar'] },
  ],
  [
    {
      steps: 'Simmer the flour in the water. / Mix the sugar with the oatmeal and salt.',
      list: ['20 g rice flour', '200 ml water', '5 g salt', '9 g sugar'],
      foods: ['oatmeal'],
    },
    {
      steps: 'Simmer the flour in the water. / Mix the sugar with the porridge and salt.',
      list: ['20 g rice flour', '200 ml water', '5 g salt', '9 g sugar'],
    },
  ],
  // Another food of one noun, and the same by another name.
  [
    { steps: 'Dust with the icing sugar.', list: ['200 g demerara sugar'], foods: ['icing sugar'] },
    { steps: 'Fold in the whipped cream.', list: ['200 ml double cream'] },
  ],
  [
    { steps: 'Sprinkle the gelatine over the water.', list: ['100 ml water, for the gelatine'], foods: ['gelatine'] },
    { steps: 'Stir in the syrup.', list: ['100 g sugar, for the syrup'] },
  ],
  // Butter is made of the cream that was taken before it.
  [
    { steps: 'Whip the cream. / Melt the butter and fry the oats.', list: ['200 g oats', '200 ml cream'], foods: [] },
    { steps: 'Churn the cream, pour off the milk and knead the butter.', list: ['1 l double cream'] },
  ],
  [
    {
      steps: 'Melt the butter and fry the oats. / Pour over the cream.',
      list: ['200 g oats', '200 ml cream'],
      foods: ['butter'],
    },
    { steps: 'Wash the rice. / Stir in the rice.', list: ['200 g basmati rice'] },
  ],
  [
    { steps: 'Wash the rice. / Stir the rice into the oats.', foods: ['rice'] },
    { steps: 'Tip the beans in to weigh the crust down. / Lift out the beans.' },
  ],
  [
    { steps: 'Heat the ghee.', list: ['200 g oats', '80 g butter'], foods: ['ghee'] },
    { steps: 'Heat ghee for the pan.', list: ['200 g oats', '80 g ghee'] },
  ],
  [
    { steps: 'Simmer the oats. / Beat in the tahini.', foods: ['tahini'] },
    { steps: 'Simmer the oats. / Beat in the sauce.' },
  ],
  [
    { steps: 'Beat in the eggs one by one, beating well after each, then the vanilla.', foods: ['vanilla'] },
    { steps: 'Trim the oats of its crusts.' },
  ],
  [
    { steps: 'Add baking powder.', list: ['20 g cocoa powder', '2 eggs'], foods: ['baking powder'] },
    { steps: 'Add the powder.', list: ['20 g cocoa powder', '2 eggs'] },
  ],
])('%o', (found, twin) => {
  expect(unlisted(found.steps, found.list)).toEqual(found.foods);
  expect(unlisted(twin.steps, twin.list)).toEqual([]);
});

/** How grave it is, by the first that is said to be missing. */
function severityOf(steps: string, list: readonly string[]): string {
  const text = `recipe Test\n${[...list, ...steps.split(' / ').map((step) => `do ${step}`)].map((line) => `  ${line}\n`).join('')}`;
  return open(text).findings.open.find((f) => f.code === 'unlisted-ingredient')?.severity ?? 'quiet';
}

const SLAW = ['400 g cabbage', '100 g yoghurt', '10 g Dijon mustard', '10 g sugar'];
const CHEESE = ['40 g butter', '40 g plain flour', '500 ml milk', '120 g cheddar'];

test.each<[steps: string, list: readonly string[], severity: string]>([
  ['Stir the mayonnaise, yoghurt and mustard together. / Fold in the cabbage.', SLAW, 'warning'],
  ['Beat the eggs with the yoghurt.', SLAW, 'warning'],
  ['Fold in the walnuts.', SLAW, 'warning'],
  ['Whisk in the baking powder.', CHEESE, 'warning'],
  ['Off the heat stir in two thirds of the stilton, the butter and the milk.', CHEESE, 'warning'],
  ['Stir in half of the gruyere.', CHEESE, 'warning'],
  ['Add the chicken and simmer for 30 min.', SLAW, 'warning'],
  ['Scatter with parsley.', SLAW, 'warning'],
  ['Add the saffron and the avocado.', SLAW, 'warning'],
  ['Pour in the chicken stock.', SLAW, 'warning'],
  ['Blanch the cabbage. / Stir in the salt.', SLAW, 'warning'],
  ['Add the cabbage and the baking soda.', ['10 g baking powder', ...SLAW], 'warning'],
  ['Fold in the cabbage, then the carrots and the sugar.', SLAW, 'warning'],
  ['Toss the cabbage with slivers of the fennel.', SLAW, 'warning'],
  ['Soak the mustard in the milk for 5 min.', SLAW, 'warning'],
  ['Simmer the cabbage, then fish out the stalks.', SLAW, 'quiet'],
  ['Salt the cabbage. / Rinse off the salt.', SLAW, 'quiet'],
  // What may be made of the list, lie in the kitchen, or stand beside.
  ['Whisk the yoghurt, mustard and sugar. / Toss the cabbage with the dressing.', SLAW, 'quiet'],
  ['Dress with a splash of wine.', SLAW, 'info'],
  ['Melt butter in a pan and fry the cabbage.', SLAW, 'info'],
  [
    'Make the mayonnaise. / Stir the mayonnaise into the cabbage.',
    [...SLAW, '2 egg yolks', '200 ml sunflower oil'],
    'quiet',
  ],
  ['Scrape in the seeds.', [...SLAW, '1 vanilla pod'], 'quiet'],
])('%s, of %j: %s', (steps, list, severity) => {
  expect(severityOf(steps, list)).toBe(severity);
});
