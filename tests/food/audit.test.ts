import { describe, expect, test } from 'vitest';
import { allergensOf } from '../../server/src/food/allergens.ts';
import { auditFoods } from '../../server/src/food/audit.ts';
import { builtInBook } from '../../server/src/food/book.ts';
import type { Food } from '../../server/src/food/food.ts';

const foods = builtInBook().all();

describe('the food tables', () => {
  const audit = auditFoods();

  test('raise no objection: names are of one food, parts add up or say why, every figure has a source', () => {
    expect(audit.objections).toEqual([]);
  });

  test('are as wide as a test kitchen needs', () => {
    expect(audit.foods).toBeGreaterThanOrEqual(1500);
    expect(audit.fromUsda / audit.foods).toBeGreaterThan(0.7);
    expect(audit.measures).toBeGreaterThan(1800);
    expect(audit.pieces).toBeGreaterThan(1500);
  });

  test('know only allergens that the law names', () => {
    expect(allergensOf(['wheat', 'milk', 'lupin', 'gluten', 'moon']).unknown).toEqual(['moon']);
    expect(allergensOf(['wheat', 'gluten'])).toMatchObject({ us: ['wheat'], eu: ['cereals containing gluten'] });
  });

  test.each<[string, readonly string[], readonly string[]]>([
    ['crab sticks', ['wheat', 'eggs', 'fish', 'soybeans'], ['crustaceans', 'fish', 'soybeans']],
    ['mayonnaise', ['eggs'], ['eggs', 'mustard']],
    ['salad cream', ['eggs'], ['mustard']],
    ['tartare sauce', ['eggs'], ['mustard']],
    ['horseradish sauce', ['milk', 'eggs'], ['milk', 'mustard', 'sulphites']],
    ['Thai red curry paste', ['crustacean shellfish'], ['crustaceans']],
    ['barley miso', ['soybeans'], ['cereals containing gluten', 'soybeans']],
    ['cornflakes', [], ['cereals containing gluten']],
    ['candied peel', [], ['sulphites']],
    ['glacé cherries', [], ['sulphites']],
    ['pine nuts', ['tree nuts'], []],
  ])('say what is hidden in %s', (words, us, eu) => {
    const match = builtInBook().find(words);
    const { allergens }: Pick<Food, 'allergens'> =
      match.kind === 'food' ? match.food : { allergens: { us: [], eu: [] } };
    const { label } = allergens;
    // For sure, or as the label tells.
    expect([...allergens.us, ...(label?.us ?? [])]).toEqual(expect.arrayContaining([...us]));
    expect([...allergens.eu, ...(label?.eu ?? [])]).toEqual(expect.arrayContaining([...eu]));
  });

  test('mark what is not safe raw', () => {
    const raw = ['flour', 'poultry', 'ground meat', 'ground poultry'];
    const cooked = /^(?:cooked|hard-boiled|dried|pasteurised|meringue|fried|scrambled|century|egg-substitute|canned)/;
    for (const food of foods) {
      const risky = raw.includes(food.class) || (food.class === 'egg' && !cooked.test(food.id));
      if (risky && !cooked.test(food.id))
        expect(food.roles.includes('raw risk') || food.id === 'potato-flour', food.id).toBe(true);
    }
  });

  // Words in a food's own name that an allergen follows from.
  test.each<[RegExp, string, RegExp]>([
    [
      /\b(?:milk|butter|cream|cheese|yogurt|whey)\b/,
      'milk',
      /coconut|almond|cashew|sunflower|oat|soya|rice|hemp|peanut|cocoa|apple|cream of tartar|cream cracker|ice cream cone|salad cream|nut|creme|butter bean|lettuce|horseradish|marshmallow|pumpkin seed|pear butter|butter cracker|hazelnut/,
    ],
    [/\begg\b/, 'eggs', /^(?:egg noodle|egg replacer|flax egg)$/],
    [/\b(?:prawn|crab|lobster|crayfish)\b/, 'crustaceans', /crab apple/],
    [/\b(?:mussel|clam|oyster|squid|octopus|scallop)\b/, 'molluscs', /mushroom|vegetarian/],
    [/\b(?:almond|hazelnut|walnut|pecan|cashew|pistachio|macadamia)\b/, 'nuts', /extract/],
    [/\bpeanut\b/, 'peanuts', /^$/],
    [/\bsesame|tahini\b/, 'sesame', /^$/],
    [/\b(?:soy|soya|tofu)\b/, 'soybeans', /^$/],
    [/\bmustard\b/, 'mustard', /^$/],
    [/\bcelery|celeriac\b/, 'celery', /^$/],
    [/\b(?:bread|pasta|spaghetti|couscous|bulgur)\b/, 'cereals containing gluten', /squash|gluten-free|lentil|cheese/],
    [/\b(?:cod|salmon|tuna|mackerel|anchovy|haddock|sardine|trout|herring)\b/, 'fish', /^$/],
  ])('%s in a name means %s', (name, allergen, except) => {
    for (const food of foods) {
      if (!name.test(food.name) || except.test(food.name)) continue;
      expect(food.allergens.eu, food.name).toContain(allergen);
    }
  });

  test('say which raw fruit undo gelatine', () => {
    for (const id of ['pineapple', 'kiwi-fruit', 'papaya', 'fig', 'ginger-root', 'guava']) {
      expect(builtInBook().byId(id)?.roles, id).toContain('undoes gelatine');
    }
    expect(builtInBook().byId('canned-pineapple')?.roles).not.toContain('undoes gelatine');
  });
});
