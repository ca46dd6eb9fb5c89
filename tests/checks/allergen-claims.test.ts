/**
 * What a text promises, and which foods break it: by 21 CFR 101.91, Regulation (EU) 828/2014, FALCPA 2004 and the FASTER Act 2021,
 * Regulation (EU) 1169/2011, annex II, and ISO 23662:2021, all from memory. The texts are invented.
 */
import { describe, expect, test } from 'vitest';
import { claimsIn } from '../../server/src/checks/safety/claims.ts';
import { open } from '../support/harness.ts';

const claimed = (text: string): string[] => claimsIn(text).map(({ claim }) => claim.claim);

describe('a promise', () => {
  test.each<[string, string[]]>([
    ['Gluten-free brownies', ['gluten-free']],
    ['Gluten free brownies', ['gluten-free']],
    ['GLUTEN FREE BROWNIES', ['gluten-free']],
    ['Brownies, free from gluten', ['gluten-free']],
    ['Made without gluten', ['gluten-free']],
    ['Contains neither wheat nor milk', ['wheat-free', 'dairy-free']],
    ['Neither egg nor milk is needed', []],
    ['It contains no gluten', ['gluten-free']],
    ['Perfect for coeliacs', ['gluten-free']],
    ['Dairy- and gluten-free loaf', ['gluten-free', 'dairy-free']],
    ['Egg, nut and dairy free', ['dairy-free', 'nut-free', 'egg-free']],
    ['Vegan, gluten-free and nut-free', ['gluten-free', 'nut-free', 'vegan']],
    ['Non-dairy ice', ['dairy-free']],
    ['No-egg custard', ['egg-free']],
    ['Eggless sponge', ['egg-free']],
    ['Suitable for vegans', ['vegan']],
    ['Plant-based mince pies', ['vegan']],
    ['This one is nut free, fine for the class', ['nut-free']],
    ['Non-alcoholic punch', ['alcohol-free']],
    ['An alcohol-free punch', ['alcohol-free']],
    ['Lactose-free pudding', ['lactose-free']],
    ['Meatless balls', ['meat-free']],
    ['Not very sweet; vegan', ['vegan']],
    ['Contains wheat. Free from milk and egg.', ['dairy-free', 'egg-free']],
    ['Free of gluten, nuts and eggs', ['gluten-free', 'nut-free', 'egg-free']],
    ['Without milk, eggs or nuts', ['dairy-free', 'egg-free', 'nut-free']],
    ['Contains no eggs or milk', ['egg-free', 'dairy-free']],
    ['Contains no pork', ['pork-free']],
    ['Halal chicken pie', ['alcohol-free', 'pork-free']],
    ['No-yeast flatbreads', ['yeast-free']],
    ['No added sugar', ['sugar-free']],
    ['Unsweetened apple sauce', ['sugar-free']],
    ['No added salt', ['salt-free']],
  ])('is made by: %s', (text, claims) => {
    expect(claimed(text).sort()).toEqual([...claims].sort());
  });

  test.each([
    'Not suitable for vegans',
    'The dip alone is vegan',
    'Not gluten-free',
    'This is not, alas, vegan',
    "It isn't dairy-free",
    'Contains nuts',
    'For a vegan version use oil for the butter',
    'Vegan version: use oil',
    'Can be made gluten-free',
    'Could be dairy-free with a spread',
    'To make it vegan, leave out the honey',
    'Gluten-free if you use tamari',
    'Vegan, if made with oil',
    'Gluten-free option below',
    'With vegan mayonnaise',
    'Steak with a gluten-free gravy',
    'Fish and vegan chips',
    'Use gluten-free oats',
    'Serve with or without nuts',
    'Almost vegan',
    'Otherwise gluten-free',
    'Free from colours; contains milk and egg',
    'Never call it nut-free',
    'Free-range egg sandwich',
    'Coconut-free',
    'Trouble-free pastry',
    'Fat-free yogurt cake',
    'Seamless, effortless, sugarless',
    'No-knead loaf',
    'Free from the tin at once',
    'For vegetarians, leave out the bacon',
  ])('is not made by: %s', (text) => {
    expect(claimed(text)).toEqual([]);
  });

  test.each([
    'Free from egg and mustard.',
    'Free from mustard, crustaceans and egg.',
    'Without mustard, crustaceans or eggs.',
  ])('holds for all that it lists, though each is a food: %s', (note) => {
    const text = `recipe Salad\n  note    ${note}\n  2 large   eggs\n  5 g       Dijon mustard\n  90 g      cooked prawns\n`;
    expect(claimFindings(text)).toHaveLength(note.split(/crustaceans|egg|mustard/i).length - 1);
  });

  test('of prose is about the food that follows', () => {
    const text = 'recipe Toast\n  note    Gluten-free oats keep for a year.\n  100 g     white bread\n';
    expect(claimFindings(text)).toEqual([]);
  });
});

function claimFindings(text: string): string[] {
  return open(text)
    .findings.open.filter(({ code }) => code === 'allergen-claim')
    .map(({ severity, said }) => `${severity} ${/`([^`]*)`/.exec(said.message)?.[1] ?? ''}`);
}

describe('what a step tells of the dish', () => {
  const NUTS = ['recipe Slice', '  200 g plain flour', '  150 g ground almonds', '  80 g butter', '  1 egg'];
  const told = (step: string): string[] =>
    claimFindings([...NUTS, '  do Rub all together and bake.', `  do ${step}`, ''].join('\n'));

  test.each<[string, string[]]>([
    ['Free from nuts, so it may go into every lunchbox.', ['error ground almonds']],
    ['Cool and cut. Contains no nuts.', ['error ground almonds']],
    ['These are nut-free and keep for a week in a tin.', ['error ground almonds']],
    ['There is not a nut in it, for the little ones.', ['error ground almonds']],
    ['Children with a nut allergy can have these.', ['error ground almonds']],
    ['Safe for anyone with a nut allergy.', ['error ground almonds']],
    ['Safe for anyone with a nut or peanut allergy.', ['error ground almonds']],
    ['Suitable for people with egg or nut allergies.', ['error egg', 'error ground almonds']],
    ['Fine for friends who are allergic to nuts.', ['error ground almonds']],
    ['Safe to serve to a child allergic to milk or eggs.', ['error egg', 'error butter']],
    ["It is perfect for those who can't eat gluten.", ['error plain flour']],
    ['Suitable for anyone who avoids dairy.', ['error butter']],
    ['Good for guests who must not have any nuts.', ['error ground almonds']],
    ['Okay for the gluten intolerant.', ['error plain flour']],
    ['Safe for the whole class, those with milk and egg allergies too.', ['error egg', 'error butter']],
    ['It is gluten-free, and the coeliacs of the club are glad of it.', ['error plain flour']],
    ['Label the box: nut-free.', ['error ground almonds']],
    ['Egg-free, dairy-free: everybody eats.', ['error egg', 'error butter']],
  ])('claims it: %s', (step, found) => {
    expect(told(step).sort()).toEqual([...found].sort());
  });

  test.each([
    'Dust with gluten-free flour.',
    'Serve with dairy-free yogurt.',
    'Use a nut-free board.',
    'No nuts at hand? Take seeds.',
    'Not for anyone with a nut allergy.',
    'Not safe for anyone with a nut or peanut allergy.',
    'It is unsafe for people allergic to nuts.',
    'Fine for anyone but those with a nut allergy.',
    'Good for a crowd, but not for people who cannot eat nuts.',
    'Never safe for those who are allergic to eggs.',
    'Good for a week in a tin with no nuts on top.',
    'Perfect for a picnic. Guests who avoid nuts should have the fruit.',
    'For those with a nut allergy leave the almonds out.',
    'Eat it without milk.',
    'No egg wash is needed.',
    'Free from the tin while warm.',
    'Serve it with the nut-free biscuits from the shop.',
    'Gluten-free oats would do as well.',
    'Bake until there is no wet egg left.',
    'Vegetarian flatmate? Take the other tray.',
    'Vegan guests get the fruit.',
    'Vegetarians have the salad, and everybody else has this.',
    'Is it nut-free? Ask at the shop, and tell nobody that it is.',
    'The vegan neighbours brought their own.',
  ])('claims nothing: %s', (step) => {
    expect(told(step)).toEqual([]);
  });
});

describe('a note of allergens', () => {
  const found = (note: string, list = ['200 g plain flour', '200 g butter', '3 eggs', '50 ml red wine']): string[] =>
    open(['recipe Cake', `  note ${note}`, ...list.map((line) => `  ${line}`), ''].join('\n'))
      .findings.open.filter(({ code, severity }) => code === 'allergen-claim' && severity === 'warning')
      .flatMap(({ said }) => /^Contains (.*?) too/.exec(said.message)?.[1] ?? []);

  test.each<[string, string]>([
    ['Contains wheat, milk, sulphites.', 'eggs (`eggs`)'],
    ['Contains: wheat, milk and sulphites. Keeps a week.', 'eggs (`eggs`)'],
    ['Keeps a week. ALLERGENS: egg, milk (butter), sulphites.', 'wheat (`plain flour`)'],
    ['Allergens: wheat, egg, milk, celery.', 'sulphites (`red wine`)'],
    ['Allergy advice: contains gluten (wheat), eggs, sulphites', 'milk (`butter`)'],
    ['Contains milk.', 'eggs (`eggs`), wheat (`plain flour`)'],
    ['No allergens.', 'eggs (`eggs`), milk (`butter`), wheat (`plain flour`)'],
    ['Free from all fourteen allergens.', 'eggs (`eggs`), milk (`butter`), wheat (`plain flour`)'],
    ['Contains none of the major allergens.', 'eggs (`eggs`), milk (`butter`), wheat (`plain flour`)'],
    ['Allergen-free.', 'eggs (`eggs`), milk (`butter`), wheat (`plain flour`)'],
    ['Allergens: none.', 'eggs (`eggs`), milk (`butter`), wheat (`plain flour`)'],
    // A word about where one is from tells no other.
    ['Contains milk, egg, soy (soy sauce), sulphites.', 'wheat (`plain flour`)'],
  ])('lacks one: %s', (note, lacks) => {
    expect(found(note).join().split(', ').sort().join(', ')).toBe(lacks);
  });

  test.each([
    'Contains wheat, milk, egg and sulphites.',
    'Allergens: wheat flour, butter, eggs, wine (sulphites).',
    'Allergens: see the label.',
    'Contains nuts.',
    'Contains raw egg, so not for the frail.',
    'Contains no nuts.',
    'May contain nuts.',
    'Contains all that is good.',
  ])('tells all, or is none: %s', (note) => {
    expect(found(note)).toEqual([]);
  });

  test.each([
    ['Contains wheat and egg.', ['2 burger buns', '40 g mayonnaise']],
    ['Contains wheat.', ['500 g minced pork', '50 g rusk']],
    ['Contains wheat, milk.', ['100 g zwieback', '100 g butter']],
    ['Contains fish, egg.', ['300 g cod', '40 g tartare sauce']],
  ])('leaves what only some makes hold to the label: %s', (note, list) => {
    expect(found(note, list)).toEqual([]);
  });

  test.each([
    ['Contains wheat.', ['2 burger buns', '40 g mayonnaise'], 'eggs'],
    ['Contains milk.', ['500 g minced pork', '50 g rusk'], 'wheat'],
  ])('and not what all of them do: %s', (note, list, lacks) => {
    expect(found(note, list).join()).toContain(lacks);
  });

  test.each([
    ['Contains milk and wheat.', ['1 cup celery, diced', '1 cup milk', '1 cup plain flour'], ''],
    ['Contains milk and wheat.', ['100 g celery, diced', '200 ml milk', '100 g plain flour'], 'celery (`celery`)'],
    ['Contains milk and mustard.', ['1 cup celery, diced', '1 cup milk', '20 g mustard'], 'celery (`celery`)'],
    ['Contains milk.', ['1 cup celery, diced', '1 cup milk', '3 eggs'], 'celery (`celery`), eggs (`eggs`)'],
  ])('goes by the law that the measures tell of: %s', (note, list, lacks) => {
    expect(found(note, list).join().split(', ').sort().join(', ')).toBe(lacks);
  });

  test('leaves sulphites of vinegar to the label', () => {
    expect(found('Contains egg.', ['2 egg yolks', '20 ml white wine vinegar'])).toEqual([]);
  });
});

const under = (claim: string, line: string): string[] => claimFindings(`recipe ${claim} dish\n  ${line}\n`);

describe('a food of the list', () => {
  test.each<[string, string]>([
    ['Gluten-free', '200 g plain flour'],
    ['Gluten-free', '40 g soy sauce'],
    ['Gluten-free', '20 g barley malt syrup'],
    ['Gluten-free', '200 g couscous'],
    ['Gluten-free', '200 g semolina'],
    ['Gluten-free', '100 g seitan'],
    ['Gluten-free', '330 ml beer'],
    ['Gluten-free', '100 g rye flour'],
    ['Gluten-free', '100 g pearl barley'],
    ['Gluten-free', '100 g bulgur'],
    ['Gluten-free', '30 g panko'],
    ['Gluten-free', 'as needed flour, for dusting'],
    ['Gluten-free', '100 g spelt flour'],
    ['Dairy-free', '80 g butter'],
    ['Dairy-free', '80 g ghee'],
    ['Dairy-free', '80 g whey powder'],
    ['Dairy-free', '80 g cheese'],
    ['Dairy-free', '200 ml cream'],
    ['Dairy-free', '200 g goat cheese'],
    ['Nut-free', '150 g ground almonds'],
    ['Nut-free', '150 g marzipan'],
    ['Nut-free', '150 g praline'],
    ['Nut-free', '50 g pesto'],
    ['Nut-free', '50 g peanut butter'],
    ['Nut-free', '50 g pine nuts'],
    ['Egg-free', '100 g mayonnaise'],
    ['Egg-free', '2 egg whites'],
    ['Egg-free', '100 g meringues'],
    ['Vegan', '40 g honey'],
    ['Vegan', '4 sheets gelatine'],
    ['Vegan', '10 g Worcestershire sauce'],
    ['Vegan', '2 large eggs'],
    ['Vegan', '40 g parmesan'],
    ['Vegan', '100 g bacon'],
    ['Vegan', '500 ml chicken stock'],
    ['Vegan', '100 g prawns'],
    ['Vegan', '20 g fish sauce'],
    ['Vegan', '20 g oyster sauce'],
    ['Vegetarian', '10 g gelatine'],
    ['Vegetarian', '20 g fish sauce'],
    ['Vegetarian', '100 g lard'],
    ['Vegetarian', '100 g suet'],
    ['Vegetarian', '100 g anchovies'],
    ['Vegetarian', '500 ml beef stock'],
    ['Alcohol-free', '100 ml white wine'],
    ['Alcohol-free', '20 ml rum'],
    ['Alcohol-free', '100 ml wine'],
    ['Lactose-free', '200 ml milk'],
    ['Sugar-free', '40 g caster sugar'],
    ['Sugar-free', '40 g honey'],
    ['Soy-free', '100 g tofu'],
    ['Sesame-free', '50 g tahini'],
    ['Shellfish-free', '300 g mussels'],
    ['Halal', '100 g bacon'],
    ['Pork-free', '40 g lard'],
    ['Yeast-free', '7 g instant yeast'],
    ['No-added-salt', '8 g fine salt'],
    ['No-added-sugar', '40 g caster sugar'],
  ])('%s: %s breaks it', (claim, line) => {
    expect(under(claim, line)).toEqual([expect.stringMatching(/^error /)]);
  });

  test.each<[string, string]>([
    ['Gluten-free', '200 g gluten-free flour'],
    ['Gluten-free', '40 g gluten-free soy sauce'],
    ['Gluten-free', '40 g soy sauce (gluten-free)'],
    ['Gluten-free', '200 g rice flour'],
    ['Gluten-free', '200 g buckwheat flour'],
    ['Gluten-free', '100 g cornflour'],
    ['Gluten-free', '200 g gluten-free pasta'],
    ['Gluten-free', '20 ml whisky'],
    ['Dairy-free', '200 ml coconut milk'],
    ['Dairy-free', '200 ml oat milk'],
    ['Dairy-free', '100 g peanut butter'],
    ['Dairy-free', '100 g cocoa butter'],
    ['Dairy-free', '100 g vegan butter'],
    ['Dairy-free', '10 g cream of tartar'],
    ['Nut-free', '2 g nutmeg'],
    ['Nut-free', '300 g butternut squash'],
    ['Egg-free', '1 aubergine'],
    ['Vegan', '200 ml oat milk'],
    ['Vegan', '100 g vegan sausages'],
    ['Vegan', '100 g agar'],
    ['Vegan', '100 g butter beans'],
    ['Vegan', '40 g maple syrup'],
    ['Vegetarian', '2 large eggs'],
    ['Vegetarian', '40 g cheddar'],
    ['Vegetarian', '40 g honey'],
    ['Alcohol-free', '20 ml wine vinegar'],
    ['Alcohol-free', '300 ml non-alcoholic beer'],
    ['Lactose-free', '200 ml lactose-free milk'],
    ['Lactose-free', '40 g parmesan'],
    ['Sugar-free', '40 g erythritol'],
    ['Halal', '100 g turkey bacon'],
    ['Salt-free', '80 g unsalted butter'],
    ['Yeast-free', '10 g baking powder'],
  ])('%s: %s keeps it', (claim, line) => {
    expect(under(claim, line)).toEqual([]);
  });

  test.each<[string, string]>([
    ['Gluten-free', '100 g rolled oats'],
    ['Gluten-free', '100 g oat flour'],
    ['Gluten-free', '1 stock cube'],
    ['Gluten-free', '100 g pork sausages'],
    ['Gluten-free', '20 g miso'],
    ['Dairy-free', '100 g dark chocolate'],
    ['Dairy-free', '100 g margarine'],
    ['Nut-free', '5 ml almond extract'],
    ['Nut-free', '100 g desiccated coconut'],
    ['Vegan', '100 g breadcrumbs'],
    ['Vegan', '500 ml stock'],
    ['Vegetarian', '40 g parmesan'],
    ['Alcohol-free', '5 ml vanilla extract'],
    ['Egg-free', '100 g xyloquartz'],
  ])('%s: of %s only a label can tell', (claim, line) => {
    expect(under(claim, line)).toEqual([expect.stringMatching(/^info /)]);
  });

  test('is held against the claim of its own part alone', () => {
    const text = 'recipe Plate\npart vegan dip\n  100 g     hummus\npart lamb\n  500 g     lamb mince\n';
    expect(claimFindings(text)).toEqual([]);
  });

  test('of a part that is taken in is held against the claim of the part that takes it', () => {
    const text =
      'recipe Plate\npart butter base\n  100 g     butter\n  do Melt the butter.\npart vegan dip\n  100 g     lentils\n  do Stir the butter base into the lentils.\n';
    expect(claimFindings(text)).toEqual(['error butter']);
  });

  test('is named once for all claims that it breaks', () => {
    const text = 'recipe Vegan dairy-free mash\n  500 g     potatoes\n  80 g      butter\n';
    expect(claimFindings(text)).toEqual(['error butter']);
  });

  test('that is not known is said once, at the claim', () => {
    const text = 'recipe Vegan bowl\n  100 g     xyloquartz\n  100 g     yzzumite\n  100 g     spinach\n';
    const found = open(text).findings.open.filter(({ code }) => code === 'allergen-claim');
    expect(found.map(({ said }) => said.message)).toEqual([expect.stringMatching(/xyloquartz.*yzzumite/)]);
    expect(found[0]?.at).toMatchObject({ line: 0, start: 7, end: 12 });
  });

  test('that is a part of the recipe is not unknown', () => {
    const text =
      'recipe Vegan bread\npart poolish\n  100 g     bread flour\n  100 g     water\npart dough\n  200 g     poolish\n  300 g     bread flour\n';
    expect(claimFindings(text)).toEqual([]);
  });
});
