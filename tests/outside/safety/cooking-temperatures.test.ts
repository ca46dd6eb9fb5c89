/**
 * Cooking temperatures, row by row, against the published tables.
 *
 * FDA Food Code 2022, 3-401.11(A) and (B), 3-401.12, 3-403.11 (the table of whole roasts and the equivalents of (A)(2) as state
 * rules print them; the rest from memory). USDA FSIS, safe minimum internal temperatures (for consumers). FSIS Appendix A to the
 * compliance guidelines of 1999 (meat, 6.5 log of Salmonella) and its poultry tables (chicken of 12 % fat, 7 log; from 65.6 °C on
 * from memory). 9 CFR 318.23, cooked patties (from memory).
 */
import { describe, expect, test } from 'vitest';
import { CHECKS } from '../../../server/src/checks/index.ts';
import { open } from '../../support/harness.ts';
import { readMarks } from '../../support/marks.ts';

type Rules = 'us-food-code-2022' | 'usda-fsis-home';

const found = (text: string, rules: Rules) =>
  open(text, { foodSafety: rules }).findings.open.filter((f) => f.code === 'undercooked' && f.severity === 'error');

const cooked = (food: string, degrees: string, then = '') =>
  `recipe Dish\n  1 kg      ${food}\n  do Roast the ${food} at 200 C until the centre reads ${degrees}${then}.\n`;

describe('the figure for each food', () => {
  // food, °F of the table; °C as the Food Code prints it. Source: see the head.
  test.each<[Rules, string, number, number]>([
    ['us-food-code-2022', 'chicken', 165, 74],
    ['us-food-code-2022', 'turkey', 165, 74],
    ['us-food-code-2022', 'duck breast', 165, 74],
    ['us-food-code-2022', 'minced chicken', 165, 74],
    ['us-food-code-2022', 'minced beef', 155, 68],
    ['us-food-code-2022', 'minced pork', 155, 68],
    ['us-food-code-2022', 'pork sausages', 155, 68],
    ['us-food-code-2022', 'beef', 145, 63],
    ['us-food-code-2022', 'pork loin', 145, 63],
    ['us-food-code-2022', 'lamb shoulder', 145, 63],
    ['us-food-code-2022', 'salmon', 145, 63],
    ['us-food-code-2022', 'cod', 145, 63],
    ['us-food-code-2022', 'scallops', 145, 63],
    ['us-food-code-2022', 'eggs', 155, 68],
    ['usda-fsis-home', 'chicken', 165, 74],
    ['usda-fsis-home', 'minced turkey', 165, 74],
    ['usda-fsis-home', 'minced beef', 160, 71],
    ['usda-fsis-home', 'beef', 145, 63],
    ['usda-fsis-home', 'veal', 145, 63],
    ['usda-fsis-home', 'cod', 145, 63],
    ['usda-fsis-home', 'eggs', 160, 71],
  ])('%s: %s at %i °F, %i °C', (rules, food, fahrenheit, celsius) => {
    expect(found(cooked(food, `${fahrenheit} F`), rules)).toEqual([]);
    expect(found(cooked(food, `${celsius} C`), rules)).toEqual([]);
    const [low] = found(cooked(food, `${fahrenheit - 3} F`), rules);
    expect(low?.said.message).toContain(`${fahrenheit} °F, ${celsius} °C`);
    expect(found(cooked(food, `${celsius - 2} C`), rules)).toHaveLength(1);
  });
});

/** °C, minutes. */
type Row = readonly [number, number];

/** Each row's own time is enough at its temperature; a tenth less is not, nor is the time at half a degree below. */
function holdsTable(rules: Rules, food: string, rows: readonly Row[]): void {
  test.each(rows)(`${rules}, ${food}: %f °C for %f min`, (celsius, min) => {
    const seconds = Math.ceil(min * 60);
    const held = (c: number, s: number) => cooked(food, `${c} C`, `, and hold for ${s} s`);
    expect(found(held(celsius, seconds), rules)).toEqual([]);
    expect(found(held(celsius, Math.floor(seconds * 0.9)), rules)).toHaveLength(1);
    const below = rows[rows.findIndex(([c]) => c === celsius) - 1];
    // Between two rows the longer time of the lower one is asked for.
    if (below !== undefined) {
      const between = (celsius + below[0]) / 2;
      expect(found(held(between, seconds), rules)).toHaveLength(1);
      expect(found(held(between, Math.ceil(below[1] * 60)), rules)).toEqual([]);
    } else expect(found(held(celsius - 0.3, seconds * 10), rules)).toHaveLength(1);
  });
}

describe('longer at a lower temperature', () => {
  // 3-401.11(B)(2), whole roasts; 62.2 and 62.8 °C are within a thermometer's half degree of 63 °C.
  holdsTable('us-food-code-2022', 'beef', [
    [54.4, 112],
    [55.0, 89],
    [56.1, 56],
    [57.2, 36],
    [57.8, 28],
    [58.9, 18],
    [60.0, 12],
    [61.1, 8],
    [62.2, 5],
  ]);
  // 3-401.11(A)(2): 63 °C 3 min, 66 °C 1 min; 68 °C for 17 s is the rule itself.
  holdsTable('us-food-code-2022', 'minced beef', [
    [63, 3],
    [66, 1],
  ]);
  holdsTable('us-food-code-2022', 'eggs', [
    [63, 3],
    [66, 1],
  ]);
  // FSIS Appendix A, chicken of 12 % fat.
  holdsTable('us-food-code-2022', 'chicken', [
    [57.8, 81.4],
    [58.9, 52.9],
    [60.0, 35],
    [61.1, 23.7],
    [62.2, 16.6],
    [62.8, 13],
    [65.6, 5],
    [68.3, 55 / 60],
    [71.1, 17 / 60],
  ]);
  // FSIS Appendix A, meat, 6.5 log.
  holdsTable('usda-fsis-home', 'beef', [
    [54.4, 112],
    [55.0, 89],
    [57.2, 36],
    [60.0, 12],
  ]);
  // 9 CFR 318.23: 151 °F 41 s, 152 °F 32 s, 153 °F 26 s, 154 °F 20 s, 155 °F 16 s, 156 °F 13 s, 157 °F 10 s.
  holdsTable('usda-fsis-home', 'minced beef', [
    [66.1, 41 / 60],
    [66.7, 32 / 60],
    [67.2, 26 / 60],
    [67.8, 20 / 60],
    [68.3, 16 / 60],
    [68.9, 13 / 60],
    [69.4, 10 / 60],
  ]);

  test('no time makes fish below its figure safe: none is published', () => {
    expect(found(cooked('cod', '58 C', ', and hold for 3 h'), 'us-food-code-2022')).toHaveLength(1);
  });

  test('a hold in a step of its own counts once the food has been read', () => {
    const text = (min: number) =>
      `recipe Dish\n  1 kg      minced beef\n  do Cook the beef until it reads 63 C.\n  do Hold at 63 C for ${min} min.\n`;
    expect(found(text(3), 'us-food-code-2022')).toEqual([]);
    expect(found(text(2), 'us-food-code-2022')).toHaveLength(1);
  });
});

describe('what is cooked otherwise', () => {
  test('the strictest ingredient decides (3-401.11)', () => {
    const loaf = (c: number) =>
      `recipe Loaf\n  300 g     minced beef\n  300 g     minced chicken\n  do Mix the beef and the chicken.\n  do Bake at 180 C until the centre reads ${c} C.\n`;
    const [mixed] = found(loaf(70), 'us-food-code-2022');
    expect(mixed?.said.message).toContain('minced chicken');
    expect(mixed?.said.message).toContain('74 °C');
    expect(found(loaf(74), 'us-food-code-2022')).toEqual([]);
  });

  test('stuffed meat counts as poultry (3-401.11(A)(3))', () => {
    const stuffed = (c: number) =>
      `recipe Dish\n  1 kg      pork loin\n  100 g     breadcrumbs\n  do Stuff the pork with the breadcrumbs.\n  do Roast at 180 C until the centre reads ${c} C.\n`;
    expect(found(stuffed(65), 'us-food-code-2022')).toHaveLength(1);
    expect(found(stuffed(74), 'us-food-code-2022')).toEqual([]);
  });

  test('a microwave must reach 74 °C (3-401.12)', () => {
    const text = (c: number) =>
      `recipe Dish\n  600 g     cod\n  do Cover the cod and microwave for 6 min, until the centre reads ${c} C; stand for 2 min.\n`;
    expect(found(text(65), 'us-food-code-2022')[0]?.said.source).toContain('3-401.12');
    expect(found(text(74), 'us-food-code-2022')).toEqual([]);
  });

  test('what is reheated must reach 74 °C (3-403.11)', () => {
    const text = (c: number) =>
      `recipe Dish\n  600 g     cooked chicken\n  do Reheat the chicken until the centre reads ${c} C.\n`;
    expect(found(text(65), 'us-food-code-2022')[0]?.said.source).toContain('3-403.11');
    expect(found(text(74), 'us-food-code-2022')).toEqual([]);
  });

  test('meat and poultry are not roasted below 163 °C, 325 °F (FSIS, for consumers)', () => {
    const text = (oven: string) =>
      `recipe Dish\n  2 kg      turkey breast\n  do Roast the turkey at ${oven} for 3 h, until the centre reads 74 C.\n`;
    const cool = (oven: string) =>
      open(text(oven))
        .findings.open.filter((f) => f.code === 'undercooked')
        .map((f) => f.severity);
    expect(cool('325 F')).toEqual([]);
    expect(cool('145 C fan')).toEqual([]);
    expect(cool('250 F')).toEqual(['info']);
    expect(cool('140 C')).toEqual(['info']);
  });
});

test('every message of the family ends with the caution, and none is downgraded by a band', () => {
  for (const check of CHECKS.filter((c) => c.family === 'safety')) {
    for (const bad of check.examples.bad) {
      const snapshot = open(readMarks(typeof bad === 'string' ? bad : bad.text).text);
      const own = snapshot.findings.open.filter((f) => f.code === check.code);
      expect(own.length).toBeGreaterThan(0);
      for (const finding of own) expect(finding.said.message).toMatch(/Local rules may ask for more\.$/);
    }
  }
});
