/** Curing salt by the names it is sold under, and where it reaches the meat from another part. */
import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const doses = (text: string) => open(text).findings.open.filter((f) => f.code === 'curing-salt-dose');
const ppm = (text: string): unknown[] => doses(text).map((f) => f.said.value);

const rubbed = (line: string) =>
  `recipe Cure\n  1 kg      pork shoulder\n  ${line}\n  do Rub the pork with everything and cure at 4 C for 7 d.\n`;

describe('the names that curing salt goes by', () => {
  test.each([
    'pink curing salt',
    'prague powder',
    'prague powder no. 1',
    'cure no. 2',
    'cure #1',
    'pink cure',
    'tinted cure',
    'tinted curing mixture',
    'insta-cure',
    'some speedy cure',
    'nitrite curing salt',
    'pink salt',
    'cure no. 1',
    'house cure #2',
    'quick cure',
    'nitrite salt',
    'sodium nitrite curing mix',
    "butcher's cure no. 2",
    'pork cure',
    'jerky cure and seasoning',
  ])('%s is found: 20 g a kg are 1250 ppm', (name) => {
    expect(ppm(rubbed(`20 g      ${name}`))).toEqual([1250]);
  });

  test('one of no known strength says what it is taken for', () => {
    expect(doses(rubbed('20 g      speedy cure'))[0]?.said.message).toContain('Taken for curing salt no. 1');
    expect(doses(rubbed('20 g      cure no. 1'))[0]?.said.message).not.toContain('Taken for');
  });

  test.each(['dry cure bacon', 'cured ham', 'sea salt', 'wild boar belly, to cure', 'cured sea salt flakes'])(
    '%s is none',
    (name) => {
      expect(ppm(rubbed(`200 g     ${name}`))).toEqual([]);
    },
  );

  test('salt, and a cure without meat, are let be', () => {
    expect(ppm(rubbed('20 g      himalayan pink salt'))).toEqual([]);
    expect(ppm(rubbed('20 g      fine salt'))).toEqual([]);
    expect(
      ppm('recipe Mix\n  500 g     fine salt\n  40 g      curing salt\n  do Mix the fine salt and curing salt.\n'),
    ).toEqual([]);
  });

  test('a spoon of it weighs what its line says that it was weighed as', () => {
    const minced = (line: string) =>
      `recipe Sausage\n  4 lb      lean ground beef\n  ${line}\n  do Mix the beef with the salt.\n`;
    expect(ppm(minced('1 tsp curing salt, weighed as 4.5 g'))).toEqual([]);
    // 9 g of 6.25 % on 1814 g.
    expect(ppm(minced('1 tsp curing salt, weighed as 9 g'))).toEqual([310]);
  });

  test('saltpetre is nitrate, and none may be in bacon', () => {
    // 9 CFR 424.21(c): 3.5 oz to 100 lb, rubbed on dry, are 2187 ppm.
    expect(ppm(rubbed('2 g       saltpetre'))).toEqual([]);
    expect(ppm(rubbed('3 g       saltpetre'))).toEqual([3000]);
    const [bacon] = doses(rubbed('1 g       saltpeter').replace('shoulder', 'belly'));
    expect(bacon?.said.message).toContain('1000 ppm of nitrate; dry-cured bacon may have none');
  });
});

describe('a cure that is a part of its own', () => {
  const cure =
    'part cure\n  60 g      fine salt\n  20 g      curing salt\n  20 g      caster sugar\n  do Mix the fine salt, curing salt and sugar.\n';
  const belly = (step: string) => `recipe Bacon\n${cure}part belly\n  2 kg      pork belly\n  do ${step}\n`;

  test('is held against the meat of the part that takes it', () => {
    expect(ppm(belly('Rub the belly with the cure and keep at 4 C for 7 d.'))).toEqual([625]);
  });

  test('counts by the portion that is taken', () => {
    // 20 g of 100 g: 4 g of curing salt on 2 kg.
    expect(ppm(belly('Rub the belly with 20 g of the cure and keep at 4 C for 7 d.'))).toEqual([]);
    // Half of it, 10 g on 2 kg.
    expect(ppm(belly('Rub the belly with half the cure and keep at 4 C for 7 d.'))).toEqual([313]);
  });

  test('counts by the weight on the list', () => {
    const listed = (grams: number) =>
      `recipe Bacon\n${cure}part belly\n  2 kg      pork belly\n  ${grams} g      cure\n  do Rub the belly with the cure and keep at 4 C for 7 d.\n`;
    expect(ppm(listed(30))).toEqual([]);
    expect(ppm(listed(60))).toEqual([375]);
  });

  test('is told of once, though a third part brings the two together', () => {
    const text =
      'recipe Ham\npart brine\n  1 kg      water\n  100 g     fine salt\n  50 g      curing salt\n  do Boil the water with the fine salt and curing salt.\npart leg\n  1 kg      pork leg\n  do Trim the pork.\npart assembly\n  do Put the leg in the brine and keep at 4 C for 5 d.\n  do Simmer the leg until the centre reads 70 C.\n';
    // 50 g × 0.0625 / 2 kg.
    expect(ppm(text)).toEqual([1563]);
    const [found] = doses(text);
    expect(found?.at.line).toBe(4);
  });
});
