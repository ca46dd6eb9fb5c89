import { describe, expect, test } from 'vitest';
import { readLine } from '../../server/src/notation/statements.ts';
import type { AmountNode, Statement } from '../../server/src/notation/tree.ts';

function amountText(amount: AmountNode | undefined): string {
  if (amount === undefined) return '-';
  if (amount.kind === 'free') return 'free';
  const { low, high, about, unit, size, count, each } = amount.quantity;
  const number = low === high ? String(low) : `${low}..${high}`;
  return [
    about ? 'about' : '',
    number,
    unit ?? '',
    size ?? '',
    count ?? '',
    each === undefined ? '' : `of ${each.low} ${each.unit}`,
  ]
    .filter((w) => w !== '')
    .join(' ');
}

function ingredientText(s: Statement): string {
  if (s.kind !== 'ingredient') return s.kind;
  return [
    s.optional === undefined ? '' : 'optional',
    amountText(s.amount),
    ...(s.beside ?? []).map((b) => `${b.sign} ${amountText(b.amount)}`),
    `| ${s.name?.text ?? '?'}`,
    s.bought === undefined ? '' : `from ${amountText(s.bought)}`,
    s.preparation === undefined ? '' : `, ${s.preparation.text}`,
    s.note === undefined ? '' : `(${s.note.text})`,
  ]
    .filter((w) => w !== '')
    .join(' ');
}

describe('ingredient lines', () => {
  test.each([
    ['150 g plain flour', '150 g | plain flour'],
    ['150g plain flour', '150 g | plain flour'],
    ['1.5 kg bread flour', '1.5 kg | bread flour'],
    ['1/2 cup butter', '0.5 cup | butter'],
    ['1 1/2 cups plain flour', '1.5 cup | plain flour'],
    ['½ tsp salt', '0.5 tsp | salt'],
    ['1½ cups milk', '1.5 cup | milk'],
    ['40-45 g butter', '40..45 g | butter'],
    ['40–45 g butter', '40..45 g | butter'],
    ['40 to 45 g butter', '40..45 g | butter'],
    ['about 3 tbsp oil', 'about 3 tbsp | oil'],
    ['2 onions', '2 | onions'],
    ['3 large eggs', '3 large | eggs'],
    ['1 extra large egg', '1 extra large | egg'],
    ['1 large egg yolk', '1 large | egg yolk'],
    ['2 cloves garlic', '2 clove | garlic'],
    ['2 cloves', '2 clove | cloves'],
    ['1 stick butter', '1 stick | butter'],
    ['4 sheets gelatine', '4 sheet | gelatine'],
    ['1 bunch chives', '1 bunch | chives'],
    ['1 can of 400 g tomatoes', '1 can of 400 g | tomatoes'],
    ['2 cups = 476 g  double cream', '2 cup = 476 g | double cream'],
    ['65 % water', '65 % | water'],
    ['65% water', '65 % | water'],
    ['2 fl oz cream', '2 fl oz | cream'],
    ['2 fluid ounces cream', '2 fl oz | cream'],
    ['500 g plums, halved and stoned from 560 g', '500 g | plums from 560 g , halved and stoned'],
    ['500 g plums from 560 g, halved and stoned', '500 g | plums from 560 g , halved and stoned'],
    ['200 g butter (unsalted), cold', '200 g | butter , cold (unsalted)'],
    ['200 g butter, cold (from the fridge), cubed', '200 g | butter , cold (from the fridge), cubed (from the fridge)'],
    ['to taste  nutmeg', 'free | nutmeg'],
    ['as needed flour', 'free | flour'],
    ['optional 20 g walnuts', 'optional 20 g | walnuts'],
    ['500 g 00 flour', '500 g | 00 flour'],
    ['200 g 2 % milk', '200 g | 2 % milk'],
    ['2 l water', '2 l | water'],
    ['9 in pastry case', '9 in | pastry case'],
    ['20 g cream of tartar', '20 g | cream of tartar'],
    ['250 grm flour', '250 g | flour'],
    ['1-1/2 cups flour', '1.5 cup | flour'],
    ['pinch of black pepper', '1 pinch | black pepper'],
    ['a pinch of salt', '1 pinch | salt'],
    ['two large eggs', '2 large | eggs'],
    ['3 tbsp l’huile', '3 tbsp | l’huile'],
  ])('%s', (line, read) => {
    const { statement, faults } = readLine(line);
    expect(ingredientText(statement)).toBe(read);
    expect(faults).toEqual([]);
  });
});

describe('what cannot be read says what to write instead', () => {
  test.each([
    ['Do mix it.', 'capital-keyword', 'do'],
    ['Serve warm with a salad.', 'not-a-statement', 'do Serve warm with a salad.'],
    ['- 200 g flour', 'not-a-statement', '200 g flour'],
    ['Mix the flour and water well.', 'not-a-statement', 'do Mix the flour and water well.'],
    ['1. Mix the flour', 'not-a-statement', 'do Mix the flour'],
    ['plain flour', 'not-a-statement', undefined],
    ['clove garlic', 'not-a-statement', '1 clove garlic'],
    ['cloves, ground', 'not-a-statement', undefined],
    ['salt and pepper, to taste', 'not-a-statement', 'to taste salt and pepper'],
    [
      'A pinch of salt goes a long way here, so taste.',
      'not-a-statement',
      'do A pinch of salt goes a long way here, so taste.',
    ],
    ['1,5 kg flour', 'decimal-comma', '1.5'],
    ['1,500 g flour', 'decimal-comma', '1500'],
    ['1/0 cup flour', 'bad-number', undefined],
    ['99999999999999999999 g flour', 'bad-number', undefined],
    ['200 g butter (cold', 'unclosed', undefined],
    ['do Pour [whole milk on top.', 'unclosed', undefined],
    ['do', 'missing-value', undefined],
    ['recipe', 'missing-name', undefined],
    ['part crust as', 'missing-value', undefined],
    ['pan round 24 x 3 kg', 'bad-pan', undefined],
    ['pan hat, 24 cm', 'bad-pan', undefined],
    ['oven hot', 'missing-value', undefined],
    ['yield plenty', 'missing-value', undefined],
    ['trial yesterday', 'bad-date', undefined],
    ['trial 2026-02-30 by Ines', 'bad-date', undefined],
    ['verdict perhaps', 'bad-verdict', undefined],
    ['took long', 'missing-value', undefined],
    ['took to bake in lower deck', 'missing-value', undefined],
    ['took .. min to bake', 'missing-value', undefined],
    ['started cold', 'missing-value', undefined],
    ['started at 8 C and wet', 'stray-text', undefined],
    ['swap butter', 'missing-value', undefined],
    ['optional nutmeg', 'missing-amount', undefined],
    ['<<<<<<< HEAD', 'conflict-mark', undefined],
  ])('%s', (line, code, write) => {
    const { faults } = readLine(line);
    expect(faults.map((f) => f.code)).toContain(code);
    const fault = faults.find((f) => f.code === code);
    expect(fault?.detail.length).toBeGreaterThan(15);
    expect(fault?.write).toBe(write);
  });
});

describe('lines that are no ingredient', () => {
  test.each<[string, Partial<Record<string, unknown>>]>([
    [
      'recipe Plum slice as sweet paste',
      { title: 'Plum slice as sweet paste', ofKind: { name: 'Plum slice', kind: 'sweet paste' } },
    ],
    [
      'part base from pastry.quern : sweet paste',
      { kind: 'part', title: 'base', file: 'pastry.quern', filePart: 'sweet paste' },
    ],
    ['yield 12 squares', { kind: 'yield', of: 'squares' }],
    ['tags autumn, supper club', { kind: 'tags', tags: ['autumn', 'supper club'] }],
    ['trial 2026-09-14 by Ines', { kind: 'trial', date: '2026-09-14', by: 'Ines' }],
    ['took 52 min to bake', { kind: 'took', to: 'bake' }],
    ['took 46 min to bake in lower deck', { kind: 'took', to: 'bake', in: 'lower deck' }],
    ['took 46 min in the lower deck', { kind: 'took', in: 'the lower deck' }],
    ['took … min to bake in lower deck', { kind: 'took', blank: { start: 5, end: 6 }, to: 'bake', in: 'lower deck' }],
    ['took ... min to bake', { kind: 'took', blank: { start: 5, end: 8 }, to: 'bake' }],
    ['reached … C in the centre', { kind: 'reached', blank: { start: 8, end: 9 }, place: 'the centre' }],
    ['weighed ? g out of the oven', { kind: 'weighed', blank: { start: 8, end: 9 }, outOf: 'the oven' }],
    ['started at 8 C', { kind: 'started', temperature: { lowDegrees: 8, highDegrees: 8, unit: 'C' } }],
    ['started 46 F', { kind: 'started', temperature: { lowDegrees: 46, unit: 'F' } }],
    ['reached 81 C in the centre', { kind: 'reached', place: 'the centre' }],
    ['weighed 1385 g out of the oven', { kind: 'weighed', outOf: 'the oven' }],
    ['used 90 g caster sugar in custard', { kind: 'used', name: 'caster sugar', part: 'custard' }],
    ['used 1 cup + 2 tbsp sugar in custard', { kind: 'used', name: 'sugar', part: 'custard' }],
    ['used juice of 1 lemon in curd', { kind: 'used', name: 'lemon', part: 'curd' }],
    ['used 90 g butter, softened in the dough', { kind: 'used', name: 'butter', part: 'the dough' }],
    ['drop nutmeg', { kind: 'drop', name: 'nutmeg' }],
    ['swap butter for 120 g margarine', { kind: 'swap', old: 'butter' }],
    ['food quay flour', { kind: 'food', name: 'quay flour' }],
    ['also strong flour, house flour', { kind: 'also', names: ['strong flour', 'house flour'] }],
    ['contains wheat, milk', { kind: 'contains', names: ['wheat', 'milk'] }],
    ['allow dough-too-wet because it is a batter', { kind: 'allow', code: 'dough-too-wet', reason: 'it is a batter' }],
    [
      'note Squares must cut clean. # and this is none',
      { kind: 'text', field: 'note', value: 'Squares must cut clean.' },
    ],
  ])('%s', (line, want) => {
    const { statement, faults } = readLine(line);
    const flat = JSON.parse(JSON.stringify(statement), (_, v: unknown) =>
      typeof v === 'object' && v !== null && 'text' in v ? v.text : v,
    ) as object;
    expect(flat).toMatchObject(want);
    expect(faults).toEqual([]);
  });

  test.each<[string, number, number]>([
    ['took 5 h 30 min to simmer', 330, 330],
    ['took 2 d 3 h to cure', 3060, 3060],
    ['took 1-2 h to prove', 60, 120],
    ['took 1.5 h to prove', 90, 90],
    ['took 30 min 2 h to prove', 30, 30],
  ])('%s', (line, lowMin, highMin) => {
    const { statement } = readLine(line);
    expect(statement).toMatchObject({ kind: 'took', duration: { lowMin, highMin } });
  });

  test.each<[string, [string, number, number][]]>([
    ['do Prove for 1 h 30 min and shape.', [['1 h 30 min', 90, 90]]],
    ['do Prove for 1 hour 15 to 30 minutes.', [['1 hour 15 to 30 minutes', 75, 90]]],
    [
      'do Bake for 1 h, 30 min of it covered.',
      [
        ['1 h', 60, 60],
        ['30 min', 30, 30],
      ],
    ],
    [
      'do Bake for 20 min, then 1 h 5 min more.',
      [
        ['20 min', 20, 20],
        ['1 h 5 min', 65, 65],
      ],
    ],
    ['do Boil for 2 min 30 s.', [['2 min 30 s', 2.5, 2.5]]],
    [
      'do Turn after 30 min 2 h long.',
      [
        ['30 min', 30, 30],
        ['2 h', 120, 120],
      ],
    ],
  ])('the times of %s', (line, want) => {
    const { statement } = readLine(line);
    const items = statement.kind === 'step' ? statement.sentence.items : [];
    expect(
      items.flatMap((i) => (i.kind === 'duration' ? [[line.slice(i.start, i.end), i.lowMin, i.highMin]] : [])),
    ).toEqual(want);
  });

  test.each([
    ['pan round 24 x 3 cm', 1, 'round', [24, 3]],
    ['pan 12 x round 7 x 3 cm', 12, 'round', [7, 3]],
    ['pan rectangle 30 x 20 x 4 cm', 1, 'rectangle', [30, 20, 4]],
    ['pan ring 24 × 8 × 10 cm', 1, 'ring', [24, 8, 10]],
    // What a remark behind a comma says is no part of it.
    ['pan 10-inch tube pan, ungreased', 1, 'ring', [10]],
    ['pan two 9-inch round cake pans, greased and floured', 2, 'round', [9]],
    ['pan 10-inch cast iron skillet', 1, 'round', [10]],
    ['pan 20 cm round, old and trusty, 7 cm deep', 1, 'round', [20]],
    ['pan 4 x 13 in tray, lined with papers', 1, undefined, [4, 13]],
    ['pan 23 cm, springform', 1, 'round', [23]],
    // How many, without a cross, before all the sizes of one.
    ['pan 2 round 20 x 4 cm', 2, 'round', [20, 4]],
    ['pan 4 loaf 8 x 5 x 4 cm', 4, 'loaf', [8, 5, 4]],
    ['pan 2 round 9-inch', 2, 'round', [9]],
    ['pan 20 round, 7 cm deep', 1, 'round', []],
  ])('%s', (line, count, shape, sizes) => {
    const { statement } = readLine(line);
    expect(
      statement.kind === 'pan' && [
        statement.pan?.count,
        statement.pan?.shape,
        statement.pan?.sizes.map((s) => s.value),
      ],
    ).toEqual([count, shape, sizes]);
  });
});

describe('how big a piece is, behind the name, is no further ingredient', () => {
  test.each<[string, string[]]>([
    ['600 g cod fillet, 1 in thick', []],
    ['600 g cod fillet, 2.5 cm thick, skinned', []],
    ['1 kg beef, 3 cm thick and 10 cm long', []],
    ['1 kg beef, about 1 inch thick, in one piece', []],
    ['200 g onion, 2 in ginger', ['ginger']],
  ])('%s', (line, more) => {
    const { statement } = readLine(line);
    const others = statement.kind === 'ingredient' ? (statement.more ?? []) : undefined;
    expect(others?.map(({ name }) => name?.text)).toEqual(more);
  });
});
