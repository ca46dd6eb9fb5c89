import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixesOf } from '../../server/src/checks/finding.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { Houses, makeHouse } from '../../server/src/workspace/houses.ts';
import { DEFAULTS } from '../../server/src/workspace/settings.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { textOf } from '../../server/src/workspace/written.ts';

const HOUSE = makeHouse(DEFAULTS).house;

const BASE = `recipe Slab as flatbread
  yield   8 bars
  oven    180 C

  240 g     plain flour
  100 g     butter
  150 g     whole milk
  20 g      caster sugar

  do Rub the butter into the flour and sugar.
  do Bind with the milk and bake for 20 min until golden.
`;

const PASTRY = `part sweet paste as sweet paste
  240 g     plain flour
  150 g     butter, cold
  60 g      icing sugar
  30 g      ice water

  do Rub the butter into the flour and sugar, and bring together with the ice water.
`;

/** A file opened among others, by name; later changes of the files are seen. */
function openAmong(name: string, files: Readonly<Record<string, string>>): Snapshot {
  const disk = {
    read: (path: string) => files[path.replace('/k/', '')],
    recipesBelow: (folder: string) =>
      Object.keys(files)
        .map((f) => `/k/${f}`)
        .filter((p) => p.startsWith(folder)),
    houseAbove: () => '/k',
    join: (folder: string, file: string) => `${folder}/${file}`,
    beside: (path: string, file: string) => new URL(file, `file://${path}`).pathname,
  };
  return Snapshot.open(`/k/${name}`, 1, files[name] ?? '', HOUSE, new Houses(disk).bases);
}

const written = (name: string, files: Readonly<Record<string, string>>): string => {
  const { written: out } = openAmong(name, files);
  return out === undefined ? '' : textOf(out);
};

const found = (name: string, files: Readonly<Record<string, string>>): string[] =>
  openAmong(name, files).findings.open.map((f) => `${f.at.line + 1}: ${f.code}`);

describe('a variant written out in full', () => {
  const TWICE =
    'recipe Tart\n\npart case\n  200 g     flour\n  120 g     butter\n  do Rub the butter into the flour.\n\npart cream\n  40 g      butter\n  100 g     sugar\n  do Beat the butter with the sugar.\n';
  const amounts = (swap: string, base = TWICE): string[] =>
    (
      written('v.quern', { 'v.quern': `recipe V\n  from    base.quern\n  ${swap}\n`, 'base.quern': base }).match(
        /^.*margarine$/gm,
      ) ?? []
    )
      .filter((line) => /\d/.test(line))
      .map((line) => line.trim());

  test.each<[string, readonly string[]]>([
    ['swap butter for 160 g margarine', ['120 g margarine', '40 g margarine']],
    ['swap butter for 1 kg margarine', ['0.75 kg margarine', '0.25 kg margarine']],
    ['swap butter for 100-200 g margarine', ['75-150 g margarine', '25-50 g margarine']],
  ])('shares out a swap among the parts that have the old: %s', (swap, shares) => {
    expect(amounts(swap)).toEqual(shares);
  });

  test('gives each part all of a swap whose old shares are not known, and asks', () => {
    const base = TWICE.replace('40 g      butter', 'to taste  butter');
    expect(amounts('swap butter for 160 g margarine', base)).toEqual(['160 g margarine', '160 g margarine']);
    const files = {
      'v.quern': 'recipe V\n  from    base.quern\n  swap butter for 160 g margarine\n',
      'base.quern': base,
    };
    expect(found('v.quern', files)).toContain('3: swap-in-two-parts');
  });

  test('keeps what it does not change, and takes its own name, fields and lines', () => {
    const variant =
      'recipe Oat slab\n  from    base.quern\n  yield   10 bars\n  swap plain flour for 240 g wholemeal flour\n  swap butter for 100 g margarine\n  drop caster sugar\n';
    expect(written('v.quern', { 'v.quern': variant, 'base.quern': BASE })).toBe(`recipe Oat slab as flatbread
  yield   10 bars
  oven    180 C

  240 g wholemeal flour
  100 g margarine
  150 g     whole milk

  do Rub the margarine into the flour and sugar.
  do Bind with the milk and bake for 20 min until golden.
`);
  });

  test('lays lines of the same name over the base’s, and adds the rest', () => {
    const variant =
      'recipe Sweet slab\n  from    base.quern\n\n  60 g      caster sugar\n  40 g      walnuts\n\n  do Rub the butter into the flour, sugar and walnuts.\n  do Bind with the milk and bake for 20 min until golden.\n';
    const text = written('v.quern', { 'v.quern': variant, 'base.quern': BASE });
    expect(text).toContain('  60 g      caster sugar\n  40 g      walnuts\n');
    expect(text).not.toContain('20 g      caster sugar');
    expect(text.match(/Rub the butter/g)).toHaveLength(1);
  });

  test('takes a part of another file, under its own name, with its kind', () => {
    const variant =
      'recipe Tart\n  yield   1 tart\n\npart base from pastry.quern : sweet paste\n  40 g      ice water\n\npart fruit\n  500 g     plums\n  do Lay the plums on the base.\n';
    const text = written('v.quern', { 'v.quern': variant, 'pastry.quern': PASTRY });
    expect(text).toContain(
      'part base as sweet paste\n  240 g     plain flour\n  150 g     butter, cold\n  60 g      icing sugar\n  40 g      ice water\n',
    );
  });

  test('takes a recipe without parts as a part, with all its lines and its kind', () => {
    const variant = 'recipe Bars\n  yield   8 bars\n\npart slab from base.quern\n  90 g      butter\n';
    expect(written('v.quern', { 'v.quern': variant, 'base.quern': BASE })).toContain(
      'part slab as flatbread\n  240 g     plain flour\n  90 g      butter\n  150 g     whole milk\n',
    );
  });

  test.each<[string, string, string, string]>([
    [
      'of the head, before the time',
      '  oven    180 C fan\n',
      'Bake the slab for 20 min',
      'Bake the slab at 180 C fan for 20 min',
    ],
    ['with no time', '  oven    180 C fan\n', 'Bake until golden', 'Bake at 180 C fan until golden'],
    ['before a comma', '  oven    gas 4\n', 'Roast, uncovered, for 20 min', 'Roast at gas 4, uncovered, for 20 min'],
    ['of the step itself', '  oven    180 C\n', 'Bake at 200 C for 20 min', 'Bake at 200 C for 20 min'],
    ['of no line', '', 'Bake for 20 min until golden', 'Bake for 20 min until golden'],
    [
      'of the head, and not of a later step,',
      '  oven    180 C\n',
      'Bake for 20 min.\n  do Lower the oven to 160 C and bake for 5 min',
      'Bake at 180 C for 20 min.\n  do Lower the oven to 160 C and bake for 5 min',
    ],
    ['on a griddle', '  oven    180 C\n', 'Bake on a griddle for 4 min', 'Bake on a griddle for 4 min'],
  ])('takes with a part the oven %s of its file', (_, oven, step, out) => {
    const base = `recipe Slab\n${oven}  240 g     oats\n  90 g      butter\n  do Melt the butter into the oats.\n  do ${step}.\n`;
    const variant = 'recipe Bars\n  yield   8 bars\n  oven    150 C\n\npart slab from base.quern\n';
    expect(written('v.quern', { 'v.quern': variant, 'base.quern': base })).toContain(`  do ${out}.\n`);
  });

  test('takes with a part the oven that an earlier part of its file set, and no finding asks for one', () => {
    const base =
      'recipe Tart\n\npart case\n  200 g     plain flour\n  100 g     butter\n  do Rub the butter into the flour, and bake at 190 C for 15 min until pale.\n\npart nuts\n  200 g     walnuts\n  do Roast the walnuts for 8 min until brown.\n';
    const variant = 'recipe Nuts\n  yield   2 jars\n\npart nuts from base.quern\n';
    const files = { 'v.quern': variant, 'base.quern': base };
    expect(written('v.quern', files)).toContain('  do Roast the walnuts at 190 C for 8 min until brown.\n');
    expect(found('v.quern', files)).toEqual([]);
    expect(found('v.quern', { ...files, 'base.quern': base.replace(' at 190 C', '') })).toEqual(['4: oven-not-set']);
  });

  test('goes through a chain of bases', () => {
    const files = {
      'a.quern': BASE,
      'b.quern': 'recipe B\n  from    a.quern\n  swap butter for 90 g butter\n',
      'c.quern': 'recipe C\n  from    b.quern\n  drop caster sugar\n',
    };
    const text = written('c.quern', files);
    expect(text).toContain('90 g butter');
    expect(text).not.toContain('caster sugar');
  });
});

describe('what is found in a variant', () => {
  test('is placed on the line that caused it', () => {
    const variant = 'recipe Wet slab\n  from    base.quern\n  swap whole milk for 500 g whole milk\n';
    expect(found('v.quern', { 'v.quern': variant, 'base.quern': BASE })).toEqual(['3: dough-too-wet']);
  });

  test('has fixes in the file’s own lines alone', () => {
    const variant = 'recipe Wet slab\n  from    base.quern\n\n  500 g     whole milk\n';
    const snapshot = openAmong('v.quern', { 'v.quern': variant, 'base.quern': BASE });
    const [finding] = snapshot.findings.open;
    expect(finding?.code).toBe('dough-too-wet');
    const fixes = finding === undefined ? [] : fixesOf(finding, snapshot);
    expect(fixes).toHaveLength(1);
    for (const fix of fixes) for (const edit of fix.edits) expect(edit.start.line).toBe(3);
  });

  test('stands on the words of a swap and an addition, and is mended there', () => {
    const variant =
      'recipe Wet slab\n  from    base.quern\n  swap whole milk for 500 g whole milk\n  add 40 g walnuts\n';
    const files = { 'v.quern': variant, 'base.quern': BASE };
    const snapshot = openAmong('v.quern', files);
    const lines = variant.split('\n');
    const marked = snapshot.findings.open.map((f) => `${f.code}: ${lines[f.at.line]?.slice(f.at.start, f.at.end)}`);
    expect(marked).toEqual(['dough-too-wet: whole milk', 'unused-ingredient: walnuts']);
    const [wet] = snapshot.findings.open;
    const [fix] = wet === undefined ? [] : fixesOf(wet, snapshot);
    const mended = printDocument(applyEdits(snapshot.document, fix?.edits ?? []));
    expect(mended).toMatch(/^ {2}swap whole milk for \d+ g {1,5}whole milk$/m);
    expect(openAmong('v.quern', { ...files, 'v.quern': mended }).findings.open.map((f) => f.code)).toEqual([
      'unused-ingredient',
    ]);
  });

  test.each([
    [
      'at the head of a part',
      'part slab from base.quern\n  allow dough-too-wet because it is poured\n  500 g     whole milk\n',
    ],
    [
      'above the line that causes it',
      'part slab from base.quern\n  90 g      butter\n  allow dough-too-wet because it is poured\n  500 g     whole milk\n',
    ],
    [
      'above a swap',
      'part slab from base.quern\n  90 g      butter\n  allow dough-too-wet because it is poured\n  swap whole milk for 500 g whole milk\n',
    ],
    [
      'at the head of the nameless part',
      '  from    base.quern\n\n  allow dough-too-wet because it is poured\n  500 g     whole milk\n',
    ],
  ])('is accepted %s', (_, rest) => {
    const snapshot = openAmong('v.quern', {
      'v.quern': `recipe V\n  yield   8 bars\n  oven    180 C\n${rest}`,
      'base.quern': BASE,
    });
    expect(snapshot.findings.open.map((f) => f.code)).toEqual([]);
    expect(snapshot.findings.accepted.map((f) => f.code)).toEqual(['dough-too-wet']);
  });

  test('is not said again where the base says it at home', () => {
    const wet = BASE.replace('150 g     whole milk', '500 g     whole milk');
    expect(
      found('v.quern', { 'v.quern': 'recipe V\n  from    base.quern\n  yield   9 bars\n', 'base.quern': wet }),
    ).toEqual([]);
    expect(found('base.quern', { 'base.quern': wet })).toEqual(['7: dough-too-wet']);
  });

  test.each([
    ['swap butter for 100 g butter or margarine', ['plain flour: 240', 'butter: 100']],
    ['swap butter for margarine, 90 g', ['plain flour: 240', 'margarine: 90']],
    ['add salt and pepper', ['plain flour: 240', 'butter: 100', 'salt: to taste', 'pepper: to taste']],
    ['add juice of 1 lemon', ['plain flour: 240', 'butter: 100', 'lemon juice: weighed']],
    ['add 2 x 400 g tins tomatoes', ['plain flour: 240', 'butter: 100', 'tomatoes: 800']],
    ['add 100 g + 20 g lard', ['plain flour: 240', 'butter: 100', 'lard: 120']],
    ['add lard, 50 g', ['plain flour: 240', 'butter: 100', 'lard: 50']],
  ])('a change is read like a line of the list: %s', (change, want) => {
    const base = 'recipe Rub\n  240 g     plain flour\n  100 g     butter\n  do Rub together.\n';
    const files = { 'v.quern': `recipe V\n  from    base.quern\n  ${change}\n`, 'base.quern': base };
    const { findings, whole } = openAmong('v.quern', files);
    const said = (whole.recipe.parts[0]?.head.ingredients ?? []).map(({ name, free, weighed }) => {
      const grams = weighed.known ? weighed.grams : undefined;
      return `${name}: ${free ? 'to taste' : grams?.low === grams?.high ? grams?.low : 'weighed'}`;
    });
    expect(said.toSorted()).toEqual([...want].sort());
    expect(findings.open.filter((f) => f.check.family === 'reading')).toEqual([]);
  });

  test.each([
    ['at the head', '  swap cheddar for 200 g gouda\n'],
    ['in its part', '\npart sauce\n  swap cheddar for 200 g gouda\n'],
  ])('what is swapped %s has its new name in the steps of other parts too', (_, swap) => {
    const base =
      'recipe Bake\n  yield   4 portions\n\npart sauce\n  200 g     cheddar, grated\n  500 ml    whole milk\n  do Warm the milk and stir in half the cheddar.\n\npart top\n  100 g     breadcrumbs\n  do Mix the rest of the cheddar with the breadcrumbs.\n  do Scatter over the sauce and bake at 200 C for 20 min.\n';
    const files = { 'v.quern': `recipe V\n  from    base.quern\n${swap}`, 'base.quern': base };
    const { recipe } = openAmong('v.quern', files).whole;
    const gouda = recipe.parts.flatMap(({ ledger }) => ledger).find(({ ingredient }) => ingredient.name === 'gouda');
    expect(gouda?.uses).toHaveLength(2);
    expect(gouda?.left).toEqual({ low: 0, high: 0 });
    expect(found('v.quern', files)).toEqual([]);
  });

  test('of its own trials is said, though the base’s trials say the same of the line', () => {
    const trial = '\ntrial 2026-09-14\n  used    190 g whole milk\n  verdict keep\n';
    const files = { 'v.quern': `recipe V\n  from    base.quern\n${trial}`, 'base.quern': `${BASE}${trial}` };
    expect(found('base.quern', files)).toEqual(['7: trial-disagrees']);
    expect(found('v.quern', files)).toEqual(['2: trial-disagrees']);
  });

  test.each<[string, string, string]>([
    ['a missing file', 'recipe V\n  from    bade.quern\n', '2: missing-file'],
    ['a circle', 'recipe V\n  from    round.quern\n', '2: missing-file'],
    ['a part that is not there', 'recipe V\n  yield   1 tart\npart x from pastry.quern : puff\n', '3: unknown-part'],
    ['a swap that meets nothing', 'recipe V\n  from    base.quern\n  swap lard for 20 g butter\n', '3: unknown-part'],
    [
      'a drop of what a kept step still names',
      'recipe V\n  from    base.quern\n  drop caster sugar\n',
      '3: unknown-part',
    ],
    [
      'and in a step where another thing is swapped',
      'recipe V\n  from    base.quern\n  drop caster sugar\n  swap butter for 90 g lard\n',
      '3: unknown-part',
    ],
    ['a base whose own base is missing', 'recipe V\n  from    lost.quern\n', '2: missing-file'],
    [
      'a swap in a part that the base does not have',
      'recipe V\n  from    base.quern\npart y\n  swap butter for 20 g lard\n',
      '4: unknown-part',
    ],
    ['a second base', 'recipe V\n  from    base.quern\n  from    pastry.quern\n', '3: syntax'],
    ['a drop that meets nothing', 'recipe V\n  from    base.quern\n  drop lard\n', '3: unknown-part'],
  ])('%s is said', (_, text, want) => {
    expect(
      found('v.quern', {
        'v.quern': text,
        'base.quern': BASE,
        'pastry.quern': PASTRY,
        'lost.quern': 'recipe L\n  from    gone.quern\n',
        'round.quern': 'recipe R\n  from    v.quern\n',
      }),
    ).toContain(want);
  });

  test.each<[string, string, Readonly<Record<string, string>>, string]>([
    ['a file that builds on itself', 'v.quern', {}, '`v.quern` is this file, and a recipe cannot build on itself'],
    ['two that build on each other', 'a.quern', { 'a.quern': 'v.quern' }, '`a.quern` builds on this file'],
    ['three', 'a.quern', { 'a.quern': 'b.quern', 'b.quern': 'v.quern' }, '`a.quern` builds on this file'],
    ['a base that builds on itself', 'a.quern', { 'a.quern': 'a.quern' }, '`a.quern` comes back to itself'],
    [
      'a circle below the base',
      'a.quern',
      { 'a.quern': 'b.quern', 'b.quern': 'c.quern', 'c.quern': 'b.quern' },
      '`a.quern` comes back to itself',
    ],
  ])('a circle is told by who is in it: %s', (_, base, others, want) => {
    const files = Object.fromEntries(Object.entries(others).map(([f, of]) => [f, `recipe X\n  from    ${of}\n`]));
    const [whole, part] = [`recipe V\n  from    ${base}\n`, `recipe V\n  yield   1 tart\npart x from ${base}\n`].map(
      (text) => openAmong('v.quern', { ...files, 'v.quern': text }).findings.open.map((f) => f.said.message),
    );
    expect(whole).toEqual([expect.stringContaining(want)]);
    // Not that the part is not there, too.
    expect(part).toEqual(whole);
  });

  test('a part of a recipe that has none is told to take the whole', () => {
    const variant = 'recipe V\n  yield   1 tart\npart x from base.quern : dough\n';
    const snapshot = openAmong('v.quern', { 'v.quern': variant, 'base.quern': BASE });
    expect(snapshot.findings.open.map((f) => f.said.message)).toContain(
      'That file has no named parts: leave out `: dough` to take its whole recipe.',
    );
  });

  test.each([
    [
      'its own steps take the place of those that named it',
      '  do Rub the butter into the flour.\n  do Bind with the milk and bake for 20 min until golden.\n',
    ],
    ['another of that name is there', '  20 g      light brown sugar\n'],
  ])('a drop is nothing to speak of where %s', (_, rest) => {
    const variant = `recipe V\n  from    base.quern\n  drop caster sugar\n\n${rest}`;
    expect(found('v.quern', { 'v.quern': variant, 'base.quern': BASE })).not.toContain('3: unknown-part');
  });

  test('a swap in a part that the base does not have is told so', () => {
    const variant = 'recipe V\n  from    base.quern\npart y\n  swap butter for 20 g lard\n';
    expect(
      openAmong('v.quern', { 'v.quern': variant, 'base.quern': BASE }).findings.open.map((f) => f.said.message),
    ).toEqual(['What this builds on lists nothing in this part, so there is no `butter` to change.']);
  });

  test('and of a base that is missing no more is said', () => {
    const variant = 'recipe V\n  from    gone.quern\npart y\n  swap butter for 20 g lard\n';
    expect(found('v.quern', { 'v.quern': variant })).toEqual(['2: missing-file']);
    const part = 'recipe V\n  yield   1 tart\npart y from gone.quern\n  swap butter for 20 g lard\n';
    expect(found('v.quern', { 'v.quern': part })).toEqual(['3: missing-file']);
  });

  test('the nearest ingredients are named for a swap that meets nothing', () => {
    const variant = 'recipe V\n  from    base.quern\n  swap castor sugar for 20 g honey\n';
    const [finding] = openAmong('v.quern', { 'v.quern': variant, 'base.quern': BASE }).findings.open;
    expect(finding?.said.message).toMatch(/^What this builds on lists no `castor sugar`: there is `caster sugar`/);
  });

  test('and those that end so', () => {
    const base = BASE.replace('butter\n', 'unsalted butter\n');
    const variant = 'recipe V\n  from    base.quern\n  drop buter\n';
    const [finding] = openAmong('v.quern', { 'v.quern': variant, 'base.quern': base }).findings.open;
    expect(finding?.said.message).toMatch(/^What this builds on lists no `buter`: there is `unsalted butter`/);
  });

  test.each([
    ['from    foods.quern', 'food rye\n  like    rye flour\n'],
    ['from    foods.quern', ''],
    ['from    foods.quern', 'recipe Begun\n  yield   8 bars\n'],
    ['yield   1 tart\npart y from foods.quern : z', 'recipe Begun\n'],
  ])('what has nothing to build on is said to: %s, %j', (line, foods) => {
    const snapshot = openAmong('v.quern', { 'v.quern': `recipe V\n  ${line}\n`, 'foods.quern': foods });
    expect(snapshot.findings.open.map((f) => f.said.message)).toContainEqual(
      '`foods.quern` has no ingredient and no step to build on: name the file that has the recipe.',
    );
    expect(snapshot.isWhole).toBe(false);
  });

  test('a swap that cannot be read is said to be, and no more', () => {
    const variant = 'recipe V\n  from    base.quern\n  swap butter with 20 g lard\n';
    expect(found('v.quern', { 'v.quern': variant, 'base.quern': BASE })).toEqual(['3: syntax']);
  });

  test('a near name is offered for a file that is not there', () => {
    const snapshot = openAmong('v.quern', { 'v.quern': 'recipe V\n  from    bade.quern\n', 'base.quern': BASE });
    const [finding] = snapshot.findings.open;
    expect(finding === undefined ? [] : fixesOf(finding, snapshot).map((f) => f.title)).toEqual(['Write `base.quern`']);
    expect(finding?.said.message).toBe(
      'There is no file `bade.quern` beside this one: write its name from this folder on, perhaps `base.quern`.',
    );
  });

  test('without its ending too', () => {
    const snapshot = openAmong('v.quern', { 'v.quern': 'recipe V\n  from    base\n', 'base.quern': BASE });
    const [finding] = snapshot.findings.open;
    expect(finding === undefined ? [] : fixesOf(finding, snapshot).map((f) => f.title)).toEqual(['Write `base.quern`']);
  });

  test('and in the folder that its name points to', () => {
    const snapshot = openAmong('tarts/v.quern', {
      'tarts/v.quern': 'recipe V\n  from    ../bases/slabb.quern\n',
      'bases/slab.quern': BASE,
    });
    const [finding] = snapshot.findings.open;
    expect(finding === undefined ? [] : fixesOf(finding, snapshot).map((f) => f.title)).toEqual([
      'Write `../bases/slab.quern`',
    ]);
  });
});

test('text of any kind beside it does not throw', () => {
  for (const base of ['', '\u0000', 'part', 'recipe', 'from v.quern', 'do', '1/0', '[[', 'part x from', 'swap a for']) {
    for (const own of [
      'recipe V\n  from b.quern\n',
      'part p from b.quern : q\n',
      'from b.quern\nswap\ndrop\nadd\n  1 g x\n',
    ]) {
      void openAmong('v.quern', { 'v.quern': own, 'b.quern': base }).findings;
    }
  }
});

describe('after its base has changed', () => {
  const VARIANTS = [
    'recipe Late slab\n  from    base.quern\n  yield   400 g\n  swap butter for 90 g lard\n  drop caster sugar\n',
    'recipe Tart\n  yield   1 tart\n\npart slab from base.quern\n  swap whole milk for 400 g whole milk\n\npart top\n  20 g      icing sugar\n  do Dust the slab with the sugar.\n',
    'recipe Third slab\n  from    middle.quern\n  yield   9 bars\n\ntrial 2026-09-14\n  took    40 min to bake\n  weighed 900 g out of the oven\n',
  ];
  const LINES = BASE.split('\n');
  const edit = fc.record({
    line: fc.nat(LINES.length - 1),
    text: fc.constantFrom(
      '',
      '  150 g     butter',
      '  900 g     whole milk',
      '  do Bake for 20 min.',
      'part rest',
      '  from gone.quern',
      LINES[5] ?? '',
    ),
  });
  const said = ({ findings: { open, accepted } }: Snapshot) =>
    [...open, ...accepted].map(({ code, at, said, related }) => ({ code, at, said, related }));

  test('what is found is what is found afresh', () => {
    fc.assert(
      fc.property(fc.constantFrom(...VARIANTS), fc.array(edit, { minLength: 1, maxLength: 8 }), (variant, edits) => {
        const files: Record<string, string> = {
          'v.quern': variant,
          'base.quern': BASE,
          'middle.quern': 'recipe Middle\n  from    base.quern\n  swap whole milk for 160 g whole milk\n',
        };
        let snapshot = openAmong('v.quern', files);
        expect(said(snapshot)).toEqual(said(openAmong('v.quern', { ...files })));
        let lines = LINES;
        for (const { line, text } of edits) {
          lines = lines.with(line, text);
          files['base.quern'] = lines.join('\n');
          snapshot = snapshot.refreshed();
          expect(said(snapshot)).toEqual(said(openAmong('v.quern', { ...files })));
        }
      }),
    );
  });
});
