/** Pages for readers: whole ones as files that were read, and rules of each kind of page. */
import { describe, expect, test } from 'vitest';
import { htmlPage } from '../../server/src/publish/html.ts';
import { duration, jsonLd } from '../../server/src/publish/json-ld.ts';
import { markdownPage, textPage } from '../../server/src/publish/plain-pages.ts';
import { type PageOptions, type ReaderPage, readerPage } from '../../server/src/publish/reader-page.ts';
import { fillTemplate } from '../../server/src/publish/template.ts';
import { prettyFigures } from '../../server/src/publish/two-measures.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';
import { schemaOrgErrors } from '../support/schema-org.ts';

const WEIGHT: PageOptions = { measures: 'weight-first', label: 'eu' };
const MEASURE: PageOptions = { measures: 'measure-first', label: 'us' };

const pageOf = (text: string, options: PageOptions = WEIGHT): ReaderPage => {
  const snapshot = openInKitchen(text);
  return readerPage(snapshot.whole.recipe, snapshot.whole.findings, options);
};
const small = (text: string, options: PageOptions = WEIGHT): ReaderPage => {
  const snapshot = open(text);
  return readerPage(snapshot.recipe, snapshot.findings, options);
};
/** The sheet is looked at, and is that of every page. */
const withoutStyle = (html: string): string => html.replace(/<style>[\s\S]*?<\/style>/, '<style></style>');
const example = (path: string): string => EXAMPLES.find(([p]) => p === path)?.[1] ?? '';

describe('whole pages', () => {
  test.each([
    ['pastry/leek-quiche.quern', 'leek-quiche'],
    ['bread/country-loaf.quern', 'country-loaf'],
    ['sauces/mayonnaise.quern', 'mayonnaise'],
  ])('%s', async (path, name) => {
    const page = pageOf(example(path));
    await expect(withoutStyle(htmlPage(page))).toMatchFileSnapshot(`pages/${name}.html`);
    await expect(markdownPage(page)).toMatchFileSnapshot(`pages/${name}.md`);
    await expect(textPage(pageOf(example(path), MEASURE))).toMatchFileSnapshot(`pages/${name}.txt`);
    await expect(jsonLd(page)).toMatchFileSnapshot(`pages/${name}.jsonld`);
  });

  test.each(EXAMPLES)('%s has a page in every format, without a hole in it', (_, text) => {
    const page = pageOf(text);
    for (const made of [htmlPage(page), markdownPage(page), textPage(page), jsonLd(page)])
      expect(made).not.toMatch(/undefined|NaN|\[object|\\n\\n\\n/);
  });
});

const PIE = `recipe Plum & apple pie
  by      Ruth
  yield   8 slices
  pan     round 9 x 1 1/2 in
  oven    gas 4
  note    Keep the dough under 20 C.

part crust
  1 1/2 cup plain flour
  100 g     butter, cold
  2 large   eggs
  1 tsp     fine salt
  optional 10 g  caster sugar
  150 ml    whole milk
  1-2 tbsp  ice water (if needed)

  do Mix the salt, [plain flour] and \\butter knife.
  do Add the milk, eggs, ice water, caster sugar and butter.
  do Roll 3 mm thick and bake at 180 C fan for 35-40 min, until the centre reads 74 C.
  do Cool for 1 h and chill at 4 C overnight.
`;

describe('what is on a page', () => {
  test.each([
    ['1 cup plus 2 tbsp sugar', '1 cup plus 2 tbsp', 'sugar'],
    ['1 cup sugar plus 2 tbsp', '1 cup + 2 tbsp', 'sugar'],
    ['1 1/4 cups (156 g) flour', '1¼ cups', 'flour'],
    ['juice of 1/2 lemon', '', 'juice of ½ lemon'],
    ['2 eggs plus 1 yolk', '2', 'eggs'],
  ])('%s stands with all its amount', (line, first, name) => {
    const page = small(`recipe A\n\n  50 g      walnuts\n  ${line}\n\n  do Mix all.\n`, MEASURE);
    expect(page.sections[0]?.ingredients[1]).toMatchObject({ first, name });
  });

  const page = small(PIE);
  const [crust] = page.sections;

  test('ingredients stand as the cook wrote them, or in the order the steps take them', () => {
    const written = ['plain flour', 'butter', 'eggs', 'fine salt', 'caster sugar', 'whole milk', 'ice water'];
    expect(crust?.ingredients.map((i) => i.name)).toEqual(written);
    const [used] = small(PIE, { ...WEIGHT, order: 'as-used' }).sections;
    expect(used?.ingredients.map((i) => i.name)).toEqual([
      'fine salt',
      'plain flour',
      'whole milk',
      'eggs',
      'ice water',
      'caster sugar',
      'butter',
    ]);
  });

  test('weights with measures behind, and the other way', () => {
    const told = (options: PageOptions) =>
      Object.fromEntries(
        (small(PIE, options).sections[0]?.ingredients ?? []).map((i) => [i.name, [i.first, i.second]]),
      );
    expect(told(WEIGHT)).toMatchObject({
      'plain flour': ['about 190 g', '1½ cups'],
      butter: ['100 g', '7 tbsp'],
      eggs: ['2 large', 'about 100 g'],
      'whole milk': ['150 ml', '½ cup + 2 tbsp'],
      'ice water': ['1–2 tbsp', expect.stringMatching(/^about \d+ g$/)],
      'fine salt': ['1 tsp', 'about 6 g'],
    });
    expect(told(MEASURE)).toMatchObject({
      'plain flour': ['1½ cups', 'about 190 g'],
      butter: ['7 tbsp', '100 g'],
      eggs: ['2 large', 'about 100 g'],
    });
  });

  test('temperatures in both scales, lengths and the pan too, marks of the notation gone', () => {
    expect(crust?.steps).toEqual([
      'Mix the salt, plain flour and butter knife.',
      'Add the milk, eggs, ice water, caster sugar and butter.',
      'Roll 3 mm (⅛ in) thick and bake at 180 °C fan (350 °F) for 35–40 min, until the centre reads 74 °C (165 °F).',
      'Cool for 1 h and chill at 4 °C (39 °F) overnight.',
    ]);
    expect(page.pan).toBe('round, 9 × 1.5 in (23 × 4 cm)');
    expect(page.oven).toBe('gas 4 (180 °C, 350 °F)');
    expect(page.notes).toEqual(['Keep the dough under 20 °C (68 °F).']);
  });

  test('the pan of a part is said with the head, by the name of the part', () => {
    const page = small(
      'recipe Tart\n  pan     round 24 x 3 cm\n\npart lid\n  pan     round 20 x 3 cm\n  100 g     plain flour\n  50 g      butter\n  do Rub the butter into the flour.\n',
    );
    expect(page.pan).toMatch(/^round, 24 × 3 cm/);
    expect(page.sections[0]?.pan).toMatch(/^round, 20 × 3 cm/);
    expect(textPage(page)).toContain('Pan of the lid: round, 20 × 3 cm');
    expect(htmlPage(page)).toContain('<dt>Pan of the lid</dt>');
  });

  test('what can be done ahead, and the times', () => {
    expect(page.ahead).toEqual(['Chill overnight (crust)']);
    expect(page.times.cookingMin).toBe(38);
  });

  test.each<[string, string, RegExp]>([
    ['never cooked', '', /^Not yet cooked as written\.$/],
    ['without a fingerprint', '\ntrial 2026-09-14 by Ines\n  verdict keep\n', /changed since/],
  ])('its state: %s', (_, trial, want) => expect(small(PIE + trial).state).toMatch(want));

  test('a caution where a safety finding exists, accepted or not', () => {
    const raw =
      'recipe Dip\n  yield 4 portions\n\n  2 large eggs\n  200 g olive oil\n\n  do Whisk the eggs into the oil.\n';
    expect(small(raw).cautions[0]).toMatch(/raw or lightly cooked egg/);
    const allowed = raw.replace('\n\n  2', '\n\n  allow raw-egg because we say so on the card\n  2');
    expect(small(allowed).cautions[0]).toMatch(/raw or lightly cooked egg/);
    expect(small(raw.replace('eggs', 'pasteurised eggs')).cautions).toEqual([]);
  });

  test('an unknown food is said of the allergens, and in the figures', () => {
    const unknown = small(PIE.replace('100 g     butter, cold', '100 g     xyloquartz'));
    expect(unknown.allergens.not_known).toEqual(['xyloquartz']);
    expect(textPage(unknown)).toMatch(/Not known for: xyloquartz\./);
    expect(unknown.notCounted).toEqual(['xyloquartz']);
  });

  test('figures and dashes', () => {
    expect(prettyFigures('1 1/2-2 cups, 3/4, 1/16, 2026-09-14')).toBe('1½–2 cups, ¾, 1/16, 2026–09–14');
  });
});

describe('HTML', () => {
  test('what was written is text, in the page and in its data', () => {
    const evil = '<script>alert(1)</script> & "more"';
    const html = htmlPage(small(PIE.replace('Keep the dough under 20 C.', evil).replace('Ruth', evil)));
    expect(html).toContain('<p class="by soft">By &lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;more&quot;</p>');
    expect(html.match(/<script/g)).toHaveLength(1);
    expect(html).not.toContain('</script> &');
  });

  test('a figure keeps its degrees beside it, and what is part of a figure stands under it', () => {
    const page = htmlPage(pageOf(example('bread/country-loaf.quern')));
    expect(page).toContain('<li>Bake at <b>230&nbsp;°C</b><span class="soft"> (450&nbsp;°F)</span> for');
    expect(page).toContain('<th scope="row" class="within">of which sugars</th>');
    expect(page).toContain('"text": "Bake at 230 °C (450 °F) for');
    expect(page.indexOf('class="state"')).toBeLessThan(page.indexOf('id="ingredients"'));
  });

  test('it needs no script, has a language, one first heading, and a name for every section', () => {
    const html = htmlPage(small(PIE));
    expect(html).toMatch(/^<!doctype html>\n<html lang="en">/);
    expect(html.match(/<h1>/g)).toHaveLength(1);
    expect(html).not.toMatch(/<script(?! type="application\/ld\+json")/);
    expect(html).not.toMatch(/\son\w+=|https?:\/\/(?!schema\.org)/);
    const ids = [...html.matchAll(/aria-labelledby="([^"]+)"/g)].map((m) => m[1]);
    for (const id of ids) expect(html).toContain(`id="${id}"`);
    expect(new Set(ids).size).toBe(ids.length);
    expect(html).toContain('@media print');
  });
});

test('Markdown keeps what was written from being read as marks', () => {
  expect(markdownPage(small(PIE.replace('Plum & apple pie', 'Pie *of* [the] day')))).toMatch(
    /^# Pie \\\*of\\\* \\\[the\\\] day\n/,
  );
});

describe('templates', () => {
  test('holes are filled, and only known ones', () => {
    expect(fillTemplate('<h1>{{title}}</h1>{{ method }}', { title: 'A $& B', method: 'x' })).toEqual({
      ok: true,
      text: '<h1>A $& B</h1>x',
    });
    expect(fillTemplate('{{titel}}', { title: 'A' })).toMatchObject({
      ok: false,
      why: expect.stringContaining('{{title}}'),
    });
    expect(fillTemplate('nothing', { title: 'A' })).toMatchObject({ ok: false });
  });
});

describe('JSON-LD', () => {
  test.each<[number, string]>([
    [0, 'PT0M'],
    [45, 'PT45M'],
    [60, 'PT1H'],
    [85, 'PT1H25M'],
    [1440, 'P1D'],
    [3000, 'P2DT2H'],
  ])('%s minutes are %s', (minutes, want) => expect(duration(minutes)).toBe(want));

  test.each(EXAMPLES)('%s keeps to the types of schema.org', (_, text) => {
    expect(schemaOrgErrors(JSON.parse(jsonLd(pageOf(text))))).toEqual([]);
  });

  test('the check would see a property that a type does not have, and a wrong value', () => {
    const good = JSON.parse(jsonLd(small(PIE)));
    expect(schemaOrgErrors(good)).toEqual([]);
    expect(schemaOrgErrors({ ...good, recipeServings: 4 })).not.toEqual([]);
    expect(schemaOrgErrors({ ...good, cookTime: 45 })).not.toEqual([]);
    expect(schemaOrgErrors({ ...good, recipeInstructions: [{ '@type': 'HowToStep', words: 'Mix.' }] })).not.toEqual([]);
  });

  test('steps are steps, in sections where there are several parts', () => {
    expect(JSON.parse(jsonLd(small(PIE))).recipeInstructions[0]['@type']).toBe('HowToStep');
    const [first] = JSON.parse(jsonLd(pageOf(example('pastry/leek-quiche.quern')))).recipeInstructions;
    expect(first).toMatchObject({
      '@type': 'HowToSection',
      name: 'crust',
      itemListElement: [{ '@type': 'HowToStep', position: 1 }, {}, {}, {}, {}],
    });
  });

  test('what is not known is left out', () => {
    const bare = JSON.parse(jsonLd(small('recipe Bread\n\n  200 g flour\n\n  do Knead the flour.\n')));
    for (const field of ['totalTime', 'cookTime', 'author', 'recipeYield', 'isBasedOn'])
      expect(bare).not.toHaveProperty(field);
  });
});
