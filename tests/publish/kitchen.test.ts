/**
 * The kitchen: no step of any recipe is left out or told before what it waits for, what the steps take is what the list has, and what is not
 * safe stands at its step. Amounts are sums by hand.
 */
import { describe, expect, test } from 'vitest';
import { allSteps, kitchenStep } from '../../server/src/publish/kitchen/page.ts';
import { kitchenFacts } from '../../server/src/publish/kitchen/steps.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';

const LINKS = { step: (number: number) => `?kitchen=${number}`, all: '?kitchen=all', recipe: '?view=recipe' };

function facts(text: string, serve?: string) {
  const { recipe, findings } = open(text).whole;
  return kitchenFacts(recipe, findings.open, serve);
}

const wordsOf = ({ pieces }: ReturnType<typeof facts>['steps'][number]) => pieces.map(({ text }) => text).join('');

describe('the steps', () => {
  test.each(EXAMPLES.map(([path]) => path))('%s: each is there once, and within its part in order', (path) => {
    const [, text = ''] = EXAMPLES.find(([each]) => each === path) ?? [];
    const snapshot = openInKitchen(text, path);
    if (!snapshot.isWhole || snapshot.outline.recipe === undefined) return;
    const { recipe, findings } = snapshot.whole;
    const { steps } = kitchenFacts(recipe, findings.open, undefined);
    for (const part of recipe.parts) {
      const own = steps.filter((step) => step.part === part.head.name);
      expect(own, part.head.name).toHaveLength(part.steps.length);
      const starts = own.map(({ pieces }) => pieces[0]?.start);
      expect(starts).toEqual(part.steps.map(({ sentence }) => sentence.start));
    }
    expect(steps).toHaveLength(recipe.parts.reduce((sum, part) => sum + part.steps.length, 0));
  });

  test('are told by the clock: what is worked on while another part waits stands between', () => {
    const { steps, serve } = facts(
      `recipe Tart
part crust
  200 g     plain flour
  100 g     unsalted butter
  do Rub the butter into the flour for 10 min.
  do Chill at 4 C for 1 h.
part filling
  4 large   eggs
  300 g     double cream
  do Whisk the eggs and the cream for 5 min.
part assembly
  do Fill the crust with the filling for 5 min.
  do Bake at 160 C for 40 min.
`,
      '13:00',
    );
    // Baked from 12:20, filled from 12:15, whisked from 12:10, while the crust is in the cold from 11:15 to 12:15.
    expect(serve).toBe('13:00');
    expect(steps.map(wordsOf)).toEqual([
      'Rub the butter into the flour for 10 min.',
      'Chill at 4 °C for 1 h.',
      'Whisk the eggs and the cream for 5 min.',
      'Fill the crust with the filling for 5 min.',
      'Bake at 160 °C for 40 min.',
    ]);
  });
});

describe('what a step takes', () => {
  const SLAB = `recipe Slab
  200 g     rolled oats
  80 g      butter, soft
  3         eggs
  to taste  salt
  do Rub 50 g of the butter into the oats with the salt.
  do Stir in half the oats and two of the eggs.
  do Glaze with the rest of the butter and the remaining egg.
`;

  test('the whole as the list has it, a part by weight, the rest by what is left', () => {
    const [first, , third] = facts(SLAB).steps;
    expect(first?.takes).toEqual(expect.arrayContaining([{ amount: '50 g', name: 'butter', soft: 'soft' }]));
    // 80 g less 50 g.
    expect(third?.takes).toContainEqual({ amount: '30 g', name: 'butter', soft: 'the rest of 80 g' });
    expect(third?.takes.find(({ name }) => name === 'eggs')?.soft).toBe('the rest of 3');
  });

  test('what nobody says how much of has no amount', () => {
    const [step] = facts('recipe Soup\n  500 g     carrots\n  do Boil some of the carrots for 10 min.\n').steps;
    expect(step?.takes).toEqual([{ amount: 'some', name: 'carrots', soft: '' }]);
  });

  test('a part that was made before is named without a weight, as it has none that anybody knows', () => {
    const { steps } = facts(
      'recipe Pie\npart crust\n  200 g     plain flour\n  100 g     butter\n  do Rub the butter into the flour.\npart assembly\n  500 g     apples\n  do Fill the crust with the apples.\n',
    );
    expect(steps.at(-1)?.takes).toEqual([
      { amount: '', name: 'crust', soft: '' },
      { amount: '500 g', name: 'apples', soft: '' },
    ]);
  });
});

describe('what is read from a step away', () => {
  test('oven, centre, what is written, and the clock if it goes in by the plan', () => {
    const bake = facts(
      `recipe Cake
  pan round 22 x 6 cm
  part cake as butter cake
    200 g     unsalted butter
    200 g     caster sugar
    200 g     plain flour
    4 large   eggs
    do Beat the butter with the sugar, eggs and flour for 10 min.
    do Bake at 180 C for 40-50 min, until the centre reads 98 C.
`,
    ).steps[1];
    expect(bake?.figures.slice(0, 3)).toEqual([
      ['oven', '180 °C'],
      ['in the centre', '98 °C'],
      ['written', '40–50 min'],
    ]);
    // Served at 19:30 and planned with the middle of what is written: in at 18:45.
    expect(bake?.figures[3]?.[0]).toBe('likely, if in at 18:45');
    expect(bake?.figures[3]?.[1]).toMatch(/^19:\d\d–19:\d\d$/);
  });
});

describe('what is not safe', () => {
  const CHICKEN = `recipe Chicken
  1 kg      chicken thighs
  do Roast at 180 C for 30 min, until the thickest part reads 55 C.
  do Serve at once.
`;

  test('stands at its step, and in the list of all steps if it stands at none', () => {
    const { steps, errors } = facts(CHICKEN);
    expect(steps.map((step) => step.errors.length > 0)).toEqual([true, false]);
    expect(errors).toEqual([]);
    const html = kitchenStep(facts(CHICKEN), 1, LINKS);
    expect(html).toMatch(/<p class="warn"><svg class="mark error" role="img" aria-label="error">.*55/);
    // The figures that are read from afar carry the mark too.
    expect(html).toMatch(/<dt>in the centre<\/dt><dd><svg class="mark error"[^>]*><use href="#error"\/><\/svg> 55/);
    expect(kitchenStep(facts(CHICKEN), 2, LINKS)).not.toContain('class="warn"');
  });

  test('whatever a text says stays text', () => {
    const html = kitchenStep(facts(CHICKEN.replace('chicken thighs', 'chicken <b>thighs</b> & "x"')), 1, LINKS);
    expect(html).not.toContain('<b>thighs');
    expect(allSteps(facts(CHICKEN.replace('Serve', '<img src=x>')), LINKS)).not.toContain('<img');
  });

  test('a recipe without steps says so, and leads back', () => {
    expect(allSteps(facts('recipe Nothing\n'), LINKS)).toContain('0 steps');
  });
});
