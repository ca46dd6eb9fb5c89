/** A measure of a part brought to a value: sums worked by hand, what is written, and what holds whatever the recipe is. */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { type Adjustment, type AdjustWish, adjustPart } from '../../server/src/edits/adjust/adjust.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { middle } from '../../server/src/measure/quantity.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { contentsOf } from '../../server/src/recipe/measures/contents.ts';
import type { MeasureName } from '../../server/src/recipe/measures/kind.ts';
import { workOut } from '../../server/src/recipe/measures/measures.ts';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { open } from '../support/harness.ts';

// Properties take as long as the machine lets them.
vi.setConfig({ testTimeout: 120_000 });

function adjust(text: string, wish: AdjustWish, at = 0) {
  const snapshot = open(text);
  const part = snapshot.recipe.parts[at];
  if (part === undefined) throw new Error('there is no such part');
  return { snapshot, result: adjustPart(snapshot.document, snapshot.recipe, part, wish) };
}

/** The text after it, which must be had. */
function after(text: string, wish: AdjustWish, at = 0): string {
  const { snapshot, result } = adjust(text, wish, at);
  if (!result.ok) throw new Error(result.why);
  return printDocument(applyEdits(snapshot.document, result.edits));
}

function whyNot(text: string, wish: AdjustWish): string {
  const { result } = adjust(text, wish);
  if (result.ok) throw new Error(`had: ${result.moved.map((m) => `${m.ingredient.name} ${m.after}`).join(', ')}`);
  return result.why;
}

const to = (measure: MeasureName, value: number): AdjustWish => ({ targets: [{ measure, to: value }] });

function valueIn(snapshot: Snapshot, measure: MeasureName, at = 0): number {
  const part = snapshot.recipe.parts[at];
  const worked = part && workOut(measure, contentsOf(part));
  return worked?.known ? middle(worked.value) : Number.NaN;
}

const LEAN = `recipe Loaf
part dough as lean bread
  1000 g    bread flour
  600 g     water
  20 g      fine salt
  10 g      instant yeast

  do Mix the flour with 400 g of the water and leave for 30 min.
  do Knead in the salt, the yeast and the remaining water.
`;

describe('sums by hand', () => {
  // A baker's percentage is the weight of an ingredient on that of the flour (Gisslen, Professional Baking, 7th ed. 2017, chapter 1;
  // the American Institute of Baking has the same): 65 % of 1000 g are 650 g.
  test('a lean dough is brought from 60 to 65 % of water by 50 g more', () => {
    expect(after(LEAN, to('hydration', 0.65))).toBe(
      LEAN.replace('600 g     water', '650 g     water').replace('400 g of the water', '433 g of the water'),
    );
  });

  // 1630 g in all at 65 + 100 + 2 + 1 = 168 %: flour is 1630 / 1.68 = 970.2 g, water 630.7 g, salt 19.4 g, yeast 9.7 g.
  test('and with what it weighs held, the other percentages stay', () => {
    const text = after(LEAN, { ...to('hydration', 0.65), hold: ['mass'] });
    expect(text).toMatch(/970 g +bread flour\n +631 g +water\n +19\.[45] g +fine salt\n +9\.7 g +instant yeast/);
  });

  // The method's `1 : 2 : 3` of flour, fat and water by weight for pie dough is 3 : 2 : 1 (Ruhlman 2009). Butter is 17.94 % of water
  // (USDA SR26, NDB 01145): for water on flour of 1/3 in 300 g flour and 200 g butter, 100 − 35.88 g of water are to be added.
  test('the water of butter counts', () => {
    const pie =
      'recipe P\npart crust as shortcrust\n  300 g     plain flour\n  200 g     unsalted butter\n  100 g     water\n  do Rub the butter into the flour and bind with the water.\n';
    const grams = /([\d.]+) g +water/.exec(after(pie, to('hydration', 1 / 3)))?.[1];
    expect(Number(grams)).toBeCloseTo(64, 0);
  });

  // Bakers weigh the salt itself: 2.2 % of 1000 g are 22 g.
  test('salt is turned by salt', () => {
    const grams = /([\d.]+) g +fine/.exec(after(LEAN, to('salt', 0.022)))?.[1];
    expect(Number(grams)).toBe(22);
  });

  // A dressing of 3 oil : 1 vinegar by weight (Ruhlman 2009): 30 g vinegar want 90 g oil.
  test('oil to vinegar', () => {
    const text = after(
      'recipe D\npart dressing as vinaigrette\n  60 g      olive oil\n  30 g      red wine vinegar\n  do Whisk the oil into the vinegar.\n',
      to('oil per acid', 3),
    );
    expect(text).toMatch(/90 g +olive oil/);
  });

  // Fat on flour of 0.6 in 200 g flour: 120 g; 100 g butter bring 81.11 g (NDB 01145), oil is all fat (NDB 04053). Both move by one factor,
  // nearly: each costs the same for its share, and the butter brings a little more.
  test('what brings the same is moved together, by the least', () => {
    const text = after(
      'recipe C\npart cake as creamed cake\n  200 g     plain flour\n  60 g      unsalted butter\n  48.7 g    olive oil\n  200 g     caster sugar\n  do Cream all.\n',
      to('fat', 0.6),
    );
    const [butter, oil] = [/([\d.]+) g +unsalted/, /([\d.]+) g +olive/].map((r) => Number(r.exec(text)?.[1]));
    expect((butter ?? 0) * 0.8111 + (oil ?? 0)).toBeCloseTo(120, -0.5);
    expect((butter ?? 0) / 60).toBeCloseTo((oil ?? 0) / 48.7, 1);
  });
});

describe('what moves', () => {
  const CASE = `recipe T
part base as sweet paste
  240 g     plain flour
  80 g      icing sugar
  130 g     unsalted butter
  1 large   egg yolk
  70 g      ice water
  do Bind all.
`;

  test('water before milk, milk before eggs', () => {
    const milk = CASE.replace('70 g      ice water', '70 g      whole milk\n  30 g      ice water');
    expect(after(milk, to('hydration', 0.42))).toContain('70 g      whole milk');
    const noWater = CASE.replace('ice water', 'whole milk');
    expect(after(noWater, to('hydration', 0.3))).toMatch(/1 large +egg yolk/);
    expect(after(noWater, to('hydration', 0.3))).not.toContain('70 g      whole milk');
  });

  test('leavening is turned by the powder, though soda is stronger', () => {
    const muffin =
      'recipe M\npart batter as muffin\n  200 g     plain flour\n  10 g      baking powder\n  1 g       baking soda\n  200 g     buttermilk\n  80 g      caster sugar\n  do Mix.\n';
    expect(after(muffin, to('leavening', 0.05))).toMatch(/1 g +baking soda/);
  });

  test('nitrite is never what salt is turned by', () => {
    const cure =
      'recipe B\npart cure as cure\n  1000 g    pork belly\n  2.5 g     curing salt no. 1\n  30 g      fine salt\n  do Rub the salts into the belly.\n';
    expect(after(cure, to('cure salt', 0.025))).toContain('2.5 g     curing salt');
    expect(whyNot(cure, { ...to('cure salt', 0.025), keep: ['fine salt'] })).toMatch(/may move brings salt/);
  });

  test('what is kept stays, and the other way round is taken', () => {
    expect(
      after(CASE, { ...to('hydration', 0.35), keep: ['ice water', 'egg yolk', 'unsalted butter', 'icing sugar'] }),
    ).toMatch(/70 g +ice water/);
  });

  test('several at once, where one moves the other', () => {
    // Butter brings water too.
    const text = after(CASE, {
      targets: [
        { measure: 'fat', to: 0.6 },
        { measure: 'hydration', to: 0.24 },
      ],
    });
    const snapshot = open(text);
    expect(valueIn(snapshot, 'fat')).toBeCloseTo(0.6, 2);
    expect(valueIn(snapshot, 'hydration')).toBeCloseTo(0.24, 2);
  });

  test('a percentage of the flour gets another percentage', () => {
    const percents =
      'recipe L\npart dough as lean bread\n  1000 g    bread flour\n  60 %      water\n  2 %       fine salt\n  1 %       instant yeast\n  do Knead all.\n';
    expect(after(percents, to('hydration', 0.68))).toContain('68 %      water');
    expect(whyNot(percents, { ...to('hydration', 0.68), hold: ['mass'] })).toMatch(/hold the flour/);
  });

  test('cups and spoons become grams, and so does what a step takes of them', () => {
    const cups =
      'recipe L\npart dough as lean bread\n  500 g     bread flour\n  1 1/4 cup  water\n  2 tsp     fine salt\n  do Mix 1/2 cup of the water into the flour and salt.\n  do Knead in the remaining water.\n';
    const text = after(cups, to('hydration', 0.65));
    expect(text).toMatch(/\n {2}325 g +water\n/);
    expect(text).toMatch(/Mix \d+ g of the water/);
    expect(valueIn(open(text), 'hydration')).toBeCloseTo(0.65, 2);
  });

  test('portions still add up to the line', () => {
    const text = LEAN.replace('the remaining water', '200 g of the water');
    const adjusted = after(text, to('hydration', 0.653));
    const [all, first, last] = [/([\d.]+) g +water/, /([\d.]+) g of the water and/, /([\d.]+) g of the water\.\n$/].map(
      (r) => Number(r.exec(adjusted)?.[1]),
    );
    expect((first ?? 0) + (last ?? 0)).toBeCloseTo(all ?? 0, 6);
  });

  test('in the notation’s other units', () => {
    const text = LEAN.replace('600 g     water', '600 ml    water').replace('20 g      fine', '0.7 oz    fine');
    expect(after(text, to('hydration', 0.65))).toMatch(/650 ml +water|651 ml +water/);
  });
});

describe('eggs', () => {
  const PASTA =
    'recipe P\npart dough as pasta dough\n  300 g     plain flour\n  3 large   eggs\n  do Knead the eggs into the flour.\n';

  test('part of one is written with what it weighs', () => {
    expect(after(PASTA, to('hydration', 0.35))).toMatch(/2 3\/4 large = 13\d g +eggs/);
  });

  test('stay whole where that is asked, and the flour gives way', () => {
    const text = after(PASTA, { ...to('hydration', 0.35), whole: true });
    expect(text).toMatch(/3 large +eggs/);
    expect(valueIn(open(text), 'hydration')).toBeCloseTo(0.35, 2);
  });

  test('another whole number, where they are what is turned', () => {
    // 1 large egg is 50 g (USDA SR26, NDB 01123): egg on flour of 1 is 200 g, four eggs; the flour follows the rest.
    const cake =
      'recipe S\npart cake as sponge\n  200 g     plain flour\n  3 large   eggs\n  150 g     caster sugar\n  do Whisk all.\n';
    const text = after(cake, { ...to('egg', 1), whole: true });
    expect(text).toMatch(/\n {2}[34](?: large)? +eggs/);
    expect(valueIn(open(text), 'egg')).toBeCloseTo(1, 2);
  });

  test('and where nothing else may, it is said what whole ones make of it', () => {
    expect(whyNot(PASTA, { ...to('hydration', 0.35), whole: true, hold: ['flour'] })).toMatch(
      /cannot be had with whole pieces: 3 eggs make it 38 %, 2 eggs make it 25 %/,
    );
  });
});

describe('what cannot be had', () => {
  const CASE =
    'recipe T\npart base as sweet paste\n  240 g     plain flour\n  130 g     unsalted butter\n  1 large   egg yolk\n  70 g      ice water\n  do Bind all.\n';
  test.each<[string, string, AdjustWish, RegExp]>([
    [
      'less than the rest brings',
      CASE,
      to('hydration', 0.05),
      /no lower than 14 %, so not to 5 %: unsalted butter and egg yolk bring the rest/,
    ],
    ['what nothing brings', CASE, to('sugar', 0.3), /nothing on the list of the base that may move brings sugar/],
    ['what is not measured', CASE, to('agar', 0.005), /there is no agar/],
    [
      'a weight that is not known',
      CASE.replace('70 g      ice', '1 packet  ice'),
      to('hydration', 0.2),
      /the weight of ice water is not known/,
    ],
    [
      'a food that nobody knows',
      CASE.replace('unsalted butter', 'grunglewort'),
      to('fat', 0.5),
      /hangs on `grunglewort`|no fat/,
    ],
    [
      'mass, where nothing else may move',
      'recipe S\npart s as vinaigrette\n  60 g      olive oil\n  20 g      lemon juice\n  do Whisk.\n',
      { ...to('oil per acid', 4), hold: ['mass'], keep: ['lemon juice'] },
      /while the mass holds/,
    ],
    [
      'two that want one line to go both ways',
      LEAN,
      {
        targets: [
          { measure: 'salt', to: 0.022 },
          { measure: 'salt share', to: 0.02 },
        ],
      },
      /cannot|can each be had, and not together/,
    ],
    [
      'another file’s part',
      'recipe A\npart base from other.quern\n  do Bake.\n',
      to('hydration', 0.5),
      /comes from|has no list|another file/,
    ],
  ])('%s', (_, text, wish, words) => {
    expect(whyNot(text, wish)).toMatch(words);
  });
});

/** Recipes of real foods that are wholly weighed, each with measures that something on its list is turned by. */
const grams = (least: number, most: number) => fc.integer({ min: least, max: most });
const bread = fc
  .record({
    flour: grams(200, 2000),
    water: grams(45, 90),
    salt: grams(10, 30),
    yeast: grams(2, 15),
    butter: grams(0, 30),
    milk: grams(0, 20),
    eggs: grams(0, 3),
    portion: grams(1, 9),
  })
  .map(({ flour, water, salt, yeast, butter, milk, eggs, portion }) => {
    const of = (percent: number) => Math.max(1, Math.round((flour * percent) / 100));
    const first = Math.max(1, Math.round((of(water) * portion) / 10));
    return {
      measures: ['hydration', 'salt', 'yeast', ...(butter > 0 ? (['fat'] as const) : [])] as MeasureName[],
      text: `recipe B
part dough as enriched bread
  ${flour} g     bread flour
  ${of(water)} g     water
${milk > 0 ? `  ${of(milk)} g     whole milk\n` : ''}${butter > 0 ? `  ${of(butter)} g     unsalted butter\n` : ''}${eggs > 0 ? `  ${eggs} large   eggs\n` : ''}  ${Math.max(1, (flour * salt) / 1000).toFixed(1)} g     fine salt
  ${Math.max(0.5, (flour * yeast) / 1000).toFixed(1)} g     instant yeast

  do Mix the flour${milk > 0 ? ', the milk' : ''}${eggs > 0 ? ', the eggs' : ''} and ${first} g of the water.
  do Knead in the salt, the yeast${butter > 0 ? ', the butter' : ''} and the remaining water.
`,
    };
  });
const ice = fc
  .record({
    milk: grams(300, 900),
    cream: grams(100, 400),
    sugar: grams(80, 250),
    powder: grams(10, 60),
    yolks: grams(0, 6),
  })
  .map(({ milk, cream, sugar, powder, yolks }) => ({
    measures: ['fat share', 'sugars share', 'milk solids', 'freezing point'] as MeasureName[],
    text: `recipe I
part mix as ice cream
  ${milk} g     whole milk
  ${cream} g     double cream
  ${sugar} g     caster sugar
  ${powder} g     skimmed milk powder
${yolks > 0 ? `  ${yolks} large   egg yolks\n` : ''}
  do Whisk the milk, the cream, the sugar${yolks > 0 ? ', the yolks' : ''} and the milk powder, and cook to 85 C.
  do Chill at 4 C and churn.
`,
  }));
const anyRecipe = fc.oneof(bread, ice);

/** What an amount of a line may be off once it is rounded, of what is written: half a step of the scale. */
const roundedOff = (g: number): number => (g < 1 ? 0.005 : g < 10 ? 0.05 : Math.max(0.05, g * 0.005));

/** How far the value may lie from its target when every line that moved is rounded. */
function allowance(snapshot: Snapshot, measure: MeasureName, { moved }: Adjustment): number {
  const part = snapshot.recipe.parts[0];
  if (part === undefined) return 0;
  const contents = contentsOf(part);
  const value = (factors: ReadonlyMap<number, number>) => {
    const worked = workOut(
      measure,
      contents.map((i) =>
        i.weighed.known && factors.has(i.line)
          ? {
              ...i,
              weighed: {
                ...i.weighed,
                grams: {
                  low: i.weighed.grams.low + (factors.get(i.line) ?? 0),
                  high: i.weighed.grams.high + (factors.get(i.line) ?? 0),
                },
              },
            }
          : i,
      ),
    );
    return worked.known ? middle(worked.value) : Number.NaN;
  };
  const here = value(new Map());
  return contents.reduce((sum, i) => {
    const written = moved.find((m) => m.ingredient.line === i.line);
    if (!i.weighed.known) return sum;
    // A counted line's weight is a range, which its grams take the place of.
    const was = written?.ingredient.weighed;
    const spread = was?.known && written?.after.includes('=') ? was.grams.high - was.grams.low : 0;
    const off = roundedOff(middle(i.weighed.grams)) + spread;
    return sum + Math.abs(value(new Map([[i.line, off]])) - here);
  }, 1e-6);
}

const HOLDS = [[], ['mass'], ['flour']] as const;

describe('whatever the recipe is', () => {
  const wishes = anyRecipe.chain((recipe) =>
    fc.record({
      recipe: fc.constant(recipe),
      measures: fc.subarray([...recipe.measures], { minLength: 1, maxLength: 2 }),
      by: fc.array(
        fc.integer({ min: 70, max: 140 }).map((n) => n / 100),
        { minLength: 2, maxLength: 2 },
      ),
      hold: fc.constantFrom(...HOLDS),
      whole: fc.boolean(),
    }),
  );

  test('measures land on their targets within rounding, what is to hold holds, and no sum of the steps is broken', () => {
    let had = 0;
    fc.assert(
      fc.property(wishes, ({ recipe, measures, by, hold, whole }) => {
        const before = open(recipe.text);
        const targets = measures.map((measure, i) => ({ measure, to: valueIn(before, measure) * (by[i] ?? 1) }));
        const [part] = before.recipe.parts;
        if (part === undefined || targets.some((t) => !Number.isFinite(t.to))) return;
        const result = adjustPart(before.document, before.recipe, part, { targets, hold, whole });
        if (!result.ok) {
          expect(result.why).toMatch(/\S/);
          return;
        }
        had++;
        // One step of undo: one list of edits, none over another.
        const sorted = [...result.edits].sort(
          (a, b) => a.start.line - b.start.line || a.start.character - b.start.character,
        );
        for (const [i, edit] of sorted.entries()) {
          const next = sorted[i + 1];
          if (next?.start.line === edit.end.line)
            expect(next.start.character).toBeGreaterThanOrEqual(edit.end.character);
        }
        const now = before.after(result.edits);
        for (const { measure, to: wanted } of targets)
          expect(Math.abs(valueIn(now, measure) - wanted)).toBeLessThanOrEqual(allowance(now, measure, result));
        const [then] = now.recipe.parts;
        // Lines that hardly move are left as they are.
        const rounding = part.head.ingredients.reduce(
          (sum, i) => sum + (i.weighed.known ? roundedOff(middle(i.weighed.grams)) : 0),
          1e-6,
        );
        const eggs = result.moved.some((m) => m.after.includes('=') || m.before.includes('=')) ? 40 : 0;
        if (hold.some((h) => h === 'mass'))
          expect(Math.abs(middle(then?.head.massG ?? part.head.massG) - middle(part.head.massG))).toBeLessThanOrEqual(
            rounding + eggs,
          );
        if (hold.some((h) => h === 'flour'))
          expect(middle(then?.head.flourG ?? part.head.flourG)).toBe(middle(part.head.flourG));
        if (whole) for (const m of result.moved) expect(m.after).not.toMatch(/=|\//);
        for (const m of result.moved) expect(m.gramsAfter).toBeGreaterThan(0);
        const sums = (s: Snapshot) => s.findings.open.filter((f) => f.check.family === 'bookkeeping').length;
        expect(sums(now)).toBeLessThanOrEqual(sums(before));
      }),
      { numRuns: 150 },
    );
    expect(had).toBeGreaterThan(60);
  });

  test('nothing throws, whatever is asked', () => {
    fc.assert(
      fc.property(
        anyRecipe,
        fc.double(),
        fc.constantFrom(...HOLDS),
        fc.string(),
        ({ text, measures }, value, hold, keep) => {
          const [measure] = measures;
          if (measure === undefined) return;
          const { result } = adjust(text, { targets: [{ measure, to: value }], hold, keep: [keep], whole: value > 0 });
          if (!result.ok) expect(result.why.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 60 },
    );
  });
});
