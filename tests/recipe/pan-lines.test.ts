/** A pan as a cook says it goes through the checks, the hover, scaling and the page, and a part may have its own. */
import { describe, expect, test } from 'vitest';
import { scaleRecipe } from '../../server/src/edits/scale.ts';
import { readTarget } from '../../server/src/edits/scale-target.ts';
import { jsonLd } from '../../server/src/publish/json-ld.ts';
import { markdownPage, textPage } from '../../server/src/publish/plain-pages.ts';
import { readerPage } from '../../server/src/publish/reader-page.ts';
import { edited, hoverAt } from '../support/at-cursor.ts';
import { onlyCheck, open } from '../support/harness.ts';

const custard = (pan: string, ml = 1000) =>
  `recipe Custard\n  yield   6 portions\n  pan     ${pan}\npart custard as baked custard\n  6 large   eggs\n  ${ml} ml    whole milk\n  100 g     caster sugar\n  do Whisk the eggs with the milk and sugar and pour into the pan.\n  do Bake at 150 C for 45 min until the centre reads 80 C.\n`;

describe('checks', () => {
  const said = (text: string, code: string) => open(text, onlyCheck(code)).findings.open.map((f) => f.said.message);

  test.each([
    ['9 x 13-inch pan', 0],
    ['2-quart casserole', 0],
    ['12 ramekins of 150 ml', 0],
    ['6-inch round cake pan', 1],
    // A batch of 1.37 l may just go into the deeper of the two.
    ['8-inch round cake pan', 0],
    ['9-inch pie plate', 1],
    ['1 lb loaf tin', 1],
    ['4 ramekins', 1],
    ['2 l jelly mould', 0],
    ['500 ml jelly mould', 1],
    ['500 ml glass bowl', 1],
    // 0.95 to 1.4 l would be too little, 2.4 l is not: it is not certain which it is.
    ['18 cm round cake tin', 0],
  ])('pan %s overfull: %i', (pan, found) => {
    expect(said(custard(pan), 'pan-overfull')).toHaveLength(found);
  });

  test('an assumed depth is said', () => {
    expect(said(custard('8-inch round cake pan', 1500), 'pan-overfull')[0]).toContain('holds 0.95 to 1.4 l');
    expect(said(custard('8-inch round cake pan', 1500), 'pan-overfull')[0]).toContain('if it is 3.8 to 5.1 cm deep');
  });

  test('a sheet is too large for a small custard', () => {
    expect(said(custard('full hotel pan', 300).replace('6 large', '2 large'), 'pan-underfull')).toHaveLength(1);
  });

  test('a part has a pan of its own', () => {
    const text = custard('9 x 13-inch pan').replace(
      'part custard as baked custard\n',
      'part custard as baked custard\n  pan     4 ramekins\n',
    );
    const { findings, recipe } = open(text, onlyCheck('pan-overfull'));
    expect(findings.open.map((f) => f.at.line)).toEqual([4]);
    expect(recipe.parts[0]?.head.pan?.node.count).toBe(4);
  });

  test('below the list it is out of place', () => {
    const { outline } = open('recipe A\npart b\n  100 g  butter\n  pan round 9 x 2 in\n');
    expect(outline.misplaced.map((m) => m.fault.code)).toEqual(['misplaced']);
  });
});

describe('hover', () => {
  test('says what was assumed', () => {
    const text = hoverAt(custard('9-inch sp$0ringform'));
    expect(text).toMatch(/Holds: 2\.6 to 3\.1 l, to the brim/);
    expect(text).toContain('it is 6.4 to 7.6 cm deep');
  });
});

describe('scaling', () => {
  const scaled = (text: string, words: string) => {
    const target = readTarget(words);
    const snapshot = open(text);
    const found = target && scaleRecipe(snapshot.document, snapshot.recipe, target);
    return found?.ok ? edited(snapshot, found.scaling.edits) : 'no';
  };

  test.each([
    ['23 cm springform', 'by 2', '2 x 23 cm springform'],
    ['9 x 13-inch pan', 'by 2', '2 x 9 x 13-inch pan'],
    ['9 x 5 loaf pan', 'by 3', '3 x 9 x 5 loaf pan'],
    ['half sheet', 'by 2', '2 x half sheet'],
    ['2 x 20 cm sandwich tins', 'by 2', '4 x 20 cm sandwich tins'],
    ['two 8-inch round cake pans', 'by 2', '4 8-inch round cake pans'],
    ['12 ramekins of 150 ml', 'by 1.5', '18 ramekins of 150 ml'],
    ['muffin tin, 12', 'by 2', 'muffin tin, 24'],
    ['2 lb loaf tin', 'by 2', '2 x 2 lb loaf tin'],
    ['2 lb loaf tin', 'by 1.5', '2 lb loaf tin'],
    ['12-cup fluted ring tin', 'by 2', '2 x 12-cup fluted ring tin'],
    ['round 24 x 3 cm', 'by 2', '2 x round 24 x 3 cm'],
    ['8-inch square', 'to 9 x 13-inch pan', '9 x 13-inch pan'],
    ['8-inch square', 'to 23 cm springform', '23 cm springform'],
  ])('%s %s', (pan, words, wanted) => {
    expect(scaled(custard(pan), words)).toContain(`  pan     ${wanted}\n`);
  });

  test('to another pan by what both hold', () => {
    // 6 to 8 cups and 15 cups: 8 cups are usual.
    expect(scaled(custard('8-inch square'), 'to 9 x 13-inch pan')).toMatch(/ {2}18[5-9]\d ml +whole milk/);
    expect(scaled(custard('8-inch square'), 'to 12 portions')).toContain('yield   12 portions');
  });
});

test('pages and data', () => {
  const { recipe, findings } = open(custard('9 x 13-inch pan'));
  const page = readerPage(recipe, findings, { measures: 'weight-first', label: 'us' });
  expect(textPage(page)).toContain('Pan: 9 × 13-inch pan (23 × 33 cm)');
  expect(markdownPage(page)).toContain('9 × 13-inch pan');
  expect(JSON.parse(jsonLd(page))).toMatchObject({ tool: { name: 'Pan: 9 × 13-inch pan (23 × 33 cm)' } });
});
