import { describe, expect, it } from 'vitest';
import { COUNT_WORDS } from '../../server/src/measure/count-words.ts';
import { verbNamed } from '../../server/src/prose/verb-named.ts';
import { completeAt, completionsAt, labelsAt } from '../support/at-cursor.ts';

/** A line put into a recipe that has used its flour and a part of its butter. */
const within = (line: string): string => `recipe Slab
  yield   12 squares

part base as shortcrust
  200 g     plain flour
  100 g     cold butter
  30 g      ice water
  2 g       fine salt
  do Rub 60 g of the butter into the flour.
${line}

part top
  4 large   eggs
  do Whisk the eggs.
`;
const later = (line: string): string => `${within('')}${line}\n`;

describe('in a sentence', () => {
  it('offers what is not used yet first, then what is left over, then the used', () => {
    expect(labelsAt(within('  do Add $0'))).toEqual(['ice water', 'fine salt', 'cold butter', 'plain flour']);
    expect(completionsAt(within('  do Add $0')).map((c) => c.detail)).toEqual([
      '30 g, not used yet',
      '2 g, not used yet',
      '40 g left',
      'used up',
    ]);
  });

  it.each([
    ['  do Add i$0', 'ice water', '  do Add the ice water'],
    ['  do Add the i$0', 'ice water', '  do Add the ice water'],
    ['  do Add half of the i$0', 'ice water', '  do Add half of the ice water'],
    ['  do Add fl$0', 'plain flour', '  do Add the flour'],
    ['  do Add plain fl$0', 'plain flour', '  do Add the plain flour'],
    ['  do Add the plain fl$0, then stir', 'plain flour', '  do Add the plain flour, then stir'],
    ['  do Add [pl$0', 'plain flour', '  do Add [plain flour'],
  ])('%s takes %s', (line, label, expected) => {
    expect(completeAt(within(line), label)).toBe(expected);
  });

  it('offers earlier parts, and what they have left', () => {
    const labels = labelsAt(later('  do Pour over $0'));
    expect(labels.indexOf('base')).toBeGreaterThanOrEqual(0);
    expect(labels).toContain('cold butter');
    expect(completeAt(later('  do Pour over b$0'), 'base')).toBe('  do Pour over the base');
  });

  it('offers the nearest of very many earlier parts, and any of them by a letter', () => {
    const many = Array.from({ length: 80 }, (_, i) => `part ${i === 3 ? 'zabaione' : `sauce ${i}`}\n  1 g  salt\n`);
    const last = (line: string) => `recipe Menu\n${many.join('')}part last\n${line}\n`;
    const labels = labelsAt(last('  do Pour over $0'));
    expect(labels.length).toBe(50);
    expect(labels.slice(0, 2)).toEqual(['sauce 79', 'sauce 78']);
    expect(labels).not.toContain('zabaione');
    expect(labelsAt(last('  do Pour over z$0'))).toEqual(['zabaione']);
  });

  it('offers the verbs of the kind in the order of the work, those that are done last', () => {
    expect(labelsAt(within('  do $0'))).toEqual(['Bring together', 'Rest', 'Chill', 'Roll out', 'Line', 'Bake', 'Rub']);
    expect(labelsAt('recipe A\n  100 g  butter\n  do $0')[0]).toBe('Mix');
    expect(completeAt(within('  do Ro$0'), 'Roll out')).toBe('  do Roll out ');
  });

  it('offers verbs that it reads itself', () => {
    const groups = [
      'shortcrust',
      'lean bread',
      'muffin',
      'popover batter',
      'quiche',
      'jam',
      'cure',
      'dressing',
      'soup',
      'x',
    ];
    const verbs = groups.flatMap((kind) => labelsAt(`recipe A as ${kind}\n  1 g  salt\n  do $0`));
    expect(verbs.filter((verb) => verbNamed(verb.toLowerCase()) === undefined)).toEqual([]);
  });

  it('leaves blanks that are only blanks', () => {
    expect(labelsAt(within('  do $0'), true)).toEqual([]);
    expect(labelsAt(within('  do Rub well $0'), true)).toEqual([]);
    expect(labelsAt(within('  do Rub the $0'), true)[0]).toBe('ice water');
  });

  it.each([
    ['  do Chill for 30 $0', 'min'],
    ['  do Bake at 180 $0', 'C'],
    ['  do Bake until the centre reads 80 $0', 'C'],
    ['  do Add 30 $0', 'g'],
    ['  do Rest for 1½ $0', 'min'],
  ])('%s offers %s first', (line, unit) => {
    expect(labelsAt(within(line))[0]).toBe(unit);
  });

  it.each([
    // 74 °C for poultry: FDA Food Code 2022, 3-401.11(A)(3); the oven's figure: common practice, no source.
    ['poultry', '500 g  chicken thighs', 'until the thickest part reads $0', ['74 C'], 'us-food-code-2022'],
    ['minced beef, by the home rules', '500 g  minced beef', 'until the middle reaches $0', ['71 C'], 'usda-fsis-home'],
    ['nothing that is a risk', '500 g  potatoes', 'until the centre reads $0', [], 'us-food-code-2022'],
  ] as const)('asks of %s what safety asks first', (_what, line, end, labels, foodSafety) => {
    const text = `recipe A\n  ${line}\n  do Roast at 200 C for 40 min, ${end}`;
    expect(completionsAt(text, true, { foodSafety }).map((c) => c.label)).toEqual(labels);
  });

  it('offers the oven usual for the kind, on the scale of the recipe', () => {
    const scones = (oven: string) => `recipe A as scone\n${oven}  200 g  plain flour\n  do Bake at $0`;
    expect(labelsAt(scones(''), true)).toEqual(['220 C']);
    expect(labelsAt(scones('  oven 425 F\n'), true)).toEqual(['425 F']);
  });

  it('never offers a heat of the food below what safety asks of it', () => {
    const tart =
      'recipe A as cheese filling\n  500 g  minced pork\n  4 large  eggs\n  do Bake until the centre reads $0';
    const offered = labelsAt(tart, true).map((label) => Number.parseInt(label, 10));
    expect(offered.length).toBeGreaterThan(0);
    expect(offered.filter((celsius) => celsius < 68)).toEqual([]);
  });

  it('puts the blank between a number and its unit', () => {
    expect(completeAt(within('  do Add 30$0'), 'ml')).toBe('  do Add 30 ml');
    expect(completeAt(within('  do Add 30 m$0'), 'ml')).toBe('  do Add 30 ml');
  });
});

describe('on a line of the list', () => {
  it('offers units that suit the food', () => {
    expect(labelsAt(within('  30 $0 whole milk')).slice(0, 2)).toEqual(['ml', 'l']);
    expect(labelsAt(within('  3 $0 eggs'))[0]).toBe('large');
    expect(labelsAt(within('  3 $0 eggs'))).not.toContain('ml');
  });

  it.each([
    [
      '  2 $0',
      ['g', 'kg', 'oz', 'lb', 'ml', 'l', 'fl oz', 'pint', 'quart', 'gallon', 'cl', 'dl', 'tsp', 'tbsp', 'cup'],
    ],
    ['  2 c$0', ['cl', 'cup', ...COUNT_WORDS.filter((word) => word.startsWith('c'))]],
    ['  2 p$0', ['pint', 'pinch', ...COUNT_WORDS.filter((word) => word.startsWith('p'))]],
    ['  2 $0 ice cubes of the house', ['g', 'kg']],
    ['  2 $0 plain flour', ['g', 'kg', 'oz', 'lb', 'tsp', 'tbsp', 'cup', 'pinch', 'dash', 'drop', '%']],
  ])('%s offers what the tables hold: %j', (line, first) => {
    const labels = labelsAt(within(line));
    expect(labels.slice(0, first.length)).toEqual(first);
    for (const old of ['gill', 'wineglass', 'peck', 'mg']) expect(labels).not.toContain(old);
  });

  it('offers foods once a letter is typed, by any word of any name', () => {
    expect(labelsAt(within('  30 g $0'))).toEqual([]);
    expect(labelsAt(within('  30 g but$0'))[0]).toBe('butter');
    expect(labelsAt(within('  3 eg$0'))).toContain('egg');
    expect(labelsAt(within('  2 cups all-p$0'))).toContain('all purpose flour');
    expect(labelsAt(within('  2 large eg$0'))).toContain('egg yolk');
    expect(completeAt(within('  30 g double cr$0'), 'double cream')).toBe('  30 g double cream');
    expect(labelsAt(within('  1½ cups but$0'))).toContain('butter');
    expect(labelsAt(within('  to taste nut$0'))).toContain('nutmeg');
  });

  it('caps them', () => {
    expect(labelsAt(within('  30 g a$0')).length).toBe(50);
  });

  it('offers nothing in a preparation or a comment', () => {
    expect(labelsAt(within('  30 g butter, co$0'))).toEqual([]);
    expect(labelsAt(within('  30 g butter # co$0'))).toEqual([]);
  });
});

describe('at the start of a line', () => {
  it.each([
    ['nothing yet', '$0', 'recipe, with a part and a step'],
    ['the head', 'recipe A\n$0', 'by'],
    ['a part', within('$0'), 'do'],
    ['a trial', 'recipe A\n  1 g flour\ntrial 2026-09-14\n$0', 'took'],
    ['a food', 'food house flour\n$0', 'like'],
  ])('in %s', (_where, text, first) => {
    expect(labelsAt(text)[0]).toBe(first);
  });

  it('offers a whole block before the word that opens it, and none into a line that goes on', () => {
    const labels = labelsAt(within('$0'));
    expect(labels.indexOf('part, with a list and a step')).toBe(labels.indexOf('part') - 1);
    expect(labelsAt(within('pa$0 top'))).not.toContain('part, with a list and a step');
    const block = completionsAt(within('  pa$0')).find((c) => c.skeleton === true && c.filter === 'part');
    expect(block?.start).toBe(0);
    expect(block?.snippet?.split('\n')[0]).toBe(`part ${'$'}{1:filling}`);
  });

  it('aligns fields, and gives snippets their stops', () => {
    expect(completeAt('recipe A\n  yi$0', 'yield')).toBe('  yield   ');
    const verdict = completionsAt('recipe A\n  1 g flour\ntrial 2026-09-14\n$0').find((c) => c.label === 'verdict');
    expect(verdict?.snippet).toBe(`verdict ${'$'}{1|keep,change,reject|}`);
  });
});

describe('values', () => {
  it.each([
    ['part x as $0', 'shortcrust'],
    ['  pan $0', 'round'],
    ['  contains w$0', 'wheat'],
    ['  contains wheat, m$0', 'milk'],
    ['  oven 180 $0', 'C fan'],
    ['  yield 12 $0', 'slices'],
    ['  verdict $0', 'keep'],
  ])('%s offers %s', (line, label) => {
    expect(labelsAt(within(line))).toContain(label);
  });

  it.each([
    ['british', 'muffin tin', 'muffin pan'],
    ['american', 'muffin pan', 'muffin tin'],
  ] as const)('%s houses have a %s and no %s', (language, said, other) => {
    const labels = completionsAt(within('  pan $0'), false, { language }).map((c) => c.label);
    expect(labels).toContain(said);
    expect(labels).not.toContain(other);
  });

  it('offers the tins of the trade that hold about what is listed', () => {
    const cake = (grams: number) => `recipe A\n  pan $0\n  ${grams} g  plain flour\n  do Mix the flour.\n`;
    const first = (grams: number) => completionsAt(cake(grams), false, { measures: 'metric' })[0];
    // 0.65 of a tin is filled: 1000 g wants about 1.5 l, and 3000 g about 4.6 l.
    expect(first(1000)?.detail).toMatch(/^holds 1\.[4-6] l$/);
    expect(first(3000)?.detail).toMatch(/^holds (?:4|5)(?:\.\d)? l$/);
    expect(completionsAt(cake(1000), false, { measures: 'us' })[0]?.label).toMatch(/ in$/);
    expect(labelsAt(cake(1000).replace('pan $0', 'pan loaf$0'))[0]).toMatch(/^loaf \d/);
  });

  it('offers as the name of a part what steps speak of and no line has', () => {
    const text = 'recipe A\npart base\n  100 g  plain flour\n  do Pour the custard over the flour.\npart $0\n';
    expect(labelsAt(text)[0]).toBe('custard');
    expect(labelsAt(text)).not.toContain('base');
    expect(labelsAt(text)).toContain('filling');
  });

  it('offers what a trial may have used, and where', () => {
    const trial = (line: string) => `${within('')}trial 2026-09-14\n${line}\n`;
    expect(labelsAt(trial('  used 90 g co$0'))).toContain('cold butter');
    expect(labelsAt(trial('  used 90 g cold butter in $0'))).toEqual(['base', 'top']);
    const timed =
      'recipe A\n  1 g flour\n  do Chill the flour for 1 h, then bake at 180 C for 5 min.\n\ntrial 2026-09-14\n';
    expect(labelsAt(`${timed}  took 6 min to $0`)).toEqual(['chill', 'bake']);
  });

  it('offers the codes found on the next line before all others', () => {
    const text = within('').replace('  2 g       fine salt', '  allow $0\n  2 g       fine salt');
    expect(labelsAt(text)[0]).toBe('unused-ingredient');
    expect(completeAt(text, 'unused-ingredient')).toBe('  allow unused-ingredient because ');
    expect(labelsAt(text).length).toBeGreaterThan(10);
    expect(labelsAt(within('  allow dough-too-wet b$0'))).toEqual(['because']);
  });
});
