/** The rewrites offered at a place: what each writes, and what none of them may break. */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { type Action, type ActionKind, codeActions } from '../../server/src/editor/code-actions.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { type Position, parseDocument, printDocument } from '../../server/src/notation/document.ts';
import { quernText } from '../support/arbitrary.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';
import { recipeText } from './generated-recipes.ts';

// Properties take as long as the machine lets them.
vi.setConfig({ testTimeout: 120_000 });

type Opened = ReturnType<typeof open>;

const REWRITES: ReadonlySet<ActionKind> = new Set([
  'refactor.rewrite',
  'refactor.extract',
  'source.organizeIngredients.quern',
]);

/** The rewrites at a range, and those quick fixes that mend no finding. */
function offered(snapshot: Opened, start: Position, end = start): readonly Action[] {
  return codeActions(
    snapshot,
    { start, end },
    (kind) => REWRITES.has(kind) || kind === 'quickfix',
    (error) => {
      throw error;
    },
  ).filter((a) => a.finding === undefined);
}

/** The text, with `$0` taken out, and the range it marked. */
function marked(fixture: string): { readonly text: string; readonly start: Position; readonly end: Position } {
  const places: Position[] = [];
  let text = '';
  for (const piece of fixture.split('$0')) {
    text += piece;
    const lines = text.split('\n');
    places.push({ line: lines.length - 1, character: lines.at(-1)?.length ?? 0 });
  }
  const [start = { line: 0, character: 0 }, second] = places;
  return { text, start, end: places.length > 2 && second !== undefined ? second : start };
}

function rewrite(fixture: string, title: RegExp): string {
  const { text, start, end } = marked(fixture);
  const snapshot = open(text);
  const actions = offered(snapshot, start, end);
  const action = actions.find((a) => title.test(a.title));
  if (action === undefined) throw new Error(`${title} is not among\n${actions.map((a) => a.title).join('\n')}`);
  return apply(snapshot, action);
}

const apply = ({ document }: Opened, action: Action): string => printDocument(applyEdits(document, action.edits()));
const titles = (fixture: string): string[] => {
  const { text, start, end } = marked(fixture);
  return offered(open(text), start, end).map((a) => a.title);
};

describe('order of use', () => {
  test('sorts each group; headings, blank lines and accepted findings stay with their own', () => {
    const text = `recipe Slab$0
part base
  # dry
  200 g     rolled oats   # jumbo
  # softened
  80 g      butter
  allow unknown-food because it is ours
  5 g       grunglewort

  60 g      honey
  do Melt the butter.
  do Stir in the honey, grunglewort and oats.
`;
    expect(rewrite(text, /order of use/)).toBe(`recipe Slab
part base
  # dry
  # softened
  80 g      butter
  allow unknown-food because it is ours
  5 g       grunglewort
  200 g     rolled oats   # jumbo

  60 g      honey
  do Melt the butter.
  do Stir in the honey, grunglewort and oats.
`);
  });

  test('is not offered where the list is in order', () => {
    expect(
      titles('recipe S$0\n  80 g  butter\n  60 g  honey\n  do Melt the butter.\n  do Add the honey.\n'),
    ).not.toContain('Put the lists in the order of use');
  });
});

describe('merge and split', () => {
  const TWO = `recipe Slab
  150 g     butter, cold   # the good one
  200 g     rolled oats
  10 g      butter, soft   # for the tin
  do Rub the butter into the oats.
  do Brush the tin with the butter.
`;
  const ONE = `recipe Slab
  160 g     butter, cold; soft   # the good one; for the tin
  200 g     rolled oats
  do Rub 150 g of the butter into the oats.
  do Brush the tin with the rest of the butter.
`;

  test('two lines become one, and the steps say how much', () => {
    expect(rewrite(TWO.replace('  10 g', '  $010 g'), /^Merge with the butter above: 160 g/)).toBe(ONE);
  });

  test('one line becomes two, and the steps take them in turn', () => {
    const split = rewrite(ONE.replace(', cold; soft', '').replace('  160', '  $0160'), /^Split the butter/);
    expect(split).toContain('  150 g     butter   # the good one; for the tin\n  10 g      butter\n');
    expect(split).toContain('do Rub the butter into the oats.\n  do Brush the tin with the butter.');
  });

  test('a portion that a later part takes goes to its list', () => {
    const text = `recipe Tart
part base
  $0150 g     butter
  200 g     plain flour
  do Rub 140 g of the butter into the flour.
part fruit
  500 g     plums
  do Brush the dish with the rest of the butter and lay in the plums.
`;
    const after = rewrite(text, /^Split the butter/);
    expect(after).toContain('  140 g     butter\n  200 g');
    expect(after).toContain('  500 g     plums\n  10 g      butter\n  do Brush the dish with the butter');
    expect(open(after).recipe.parts.flatMap((p) => p.ledger.map((e) => e.left.high))).toEqual([0, 0, 0, 0]);
  });

  test('lines of different measures are merged by weight', () => {
    const text = 'recipe S\n  1 cup     honey\n  $020 g      honey\n  do Warm the honey.\n';
    expect(rewrite(text, /^Merge/)).toMatch(/ {2}3[45]\d g\s+honey\n {2}do/);
  });
});

describe('a part made of lines', () => {
  test('takes its list and steps, and goes in where they stood', () => {
    const text = `recipe Tart
part base
  200 g     plain flour
$0  20 g      honey
  # toasted
  30 g      almonds
  do Rub the flour.
  do Warm the honey with the almonds.
$0  do Press together.
`;
    expect(rewrite(text.replace('  do Rub the flour.\n', ''), /^Make a part/)).toBe(`recipe Tart
part mix
  20 g      honey
  # toasted
  30 g      almonds

  do Warm the honey with the almonds.

part base
  200 g     plain flour
  do Add the mix.
  do Press together.
`);
  });

  test('is not offered where a step would lose what it uses, nor at a caret', () => {
    const text =
      'recipe T\npart a\n  20 g  honey\n  30 g  flour\n$0  10 g  salt\n  do Mix the honey, flour and salt.\n$0  do Bake.\n';
    expect(titles(text).filter((t) => /Make a part/.test(t))).toEqual([]);
    expect(titles('recipe T\npart a\n$0  20 g  honey\n  30 g  flour\n').filter((t) => /Make a part/.test(t))).toEqual(
      [],
    );
  });
});

describe('sentences', () => {
  test('a mention takes the list’s wording', () => {
    const text = 'recipe S\n  200 g     plain flour\n  do Sift the f$0lour.\n';
    expect(rewrite(text, /^Write plain flour/)).toContain('do Sift the plain flour.');
  });

  test.each<[string, RegExp, string]>([
    ['do Bake at 180$0 C fan for 20 min.', /^Write 200 C$/, 'do Bake at 200 C for 20 min.'],
    ['do Bake at 180$0 C for 20 min.', /^Write 160 C fan$/, 'do Bake at 160 C fan for 20 min.'],
    ['do Bake at 180$0 C for 20 min.', /^Write gas 4$/, 'do Bake at gas 4 for 20 min.'],
    ['do Bake at gas$0 4 for 20 min.', /^Write 350 F$/, 'do Bake at 350 F for 20 min.'],
    ['do Roast until the centre reads 74$0 °C.', /^Write 165 °F$/, 'do Roast until the centre reads 165 °F.'],
    ['do Bake at 350-375$0 F for 20 min.', /^Write 180-190 C$/, 'do Bake at 180-190 C for 20 min.'],
  ])('%s', (step, title, after) => {
    expect(rewrite(`recipe S\n  200 g  oats\n  ${step}\n`, title)).toContain(after);
  });

  test('a temperature in the food has no gas mark and no fan', () => {
    const found = titles('recipe S\n  200 g  chicken\n  do Roast until the centre reads 74$0 C.\n');
    expect(found.filter((t) => /gas|fan/.test(t))).toEqual([]);
  });
});

describe('as bought', () => {
  const leeks = (line: string) => `recipe S\n  ${line}\n  do Slice the leeks.\n`;

  test('is written from the trim, corrected, and the other way', () => {
    const share = open(leeks('400 g  leeks')).recipe.parts[0]?.head.ingredients[0]?.food?.trim?.share ?? 0;
    const whole = Math.round(400 / (1 - share));
    expect(rewrite(leeks('$0400 g  leeks'), /^Write the weight as bought/)).toContain(`400 g  leeks from ${whole} g`);
    expect(rewrite(leeks('$0400 g  leeks, sliced from 420 g'), /^Correct/)).toContain(`sliced from ${whole} g`);
    expect(rewrite(leeks('$0400 g  leeks from 420 g'), /^Write what trimming leaves/)).toContain(
      `${Math.round(420 * (1 - share))} g  leeks from 420 g`,
    );
    expect(titles(leeks(`$0400 g  leeks from ${whole} g`)).filter((t) => /bought|trimming/.test(t))).toEqual([]);
  });
});

describe('water kept', () => {
  test('herbs in, the dough’s water down by what they set free', () => {
    const text = `recipe Bread
part dough as lean bread
  500 g     bread flour
  350 g     water
  $040 g      chives
  do Mix the flour, water and chives.
`;
    // Chives are nine tenths water, of which half stays in the tissue: 18 g.
    expect(rewrite(text, /^Take the water of the chives out of the water: 18 g less/)).toContain('332 g     water');
  });

  test('a wetter cheese in, the water down by the difference', () => {
    const text = `recipe Bread
part dough as lean bread
  500 g     bread flour
  350 g     water
  $0100 g     cheddar, grated   # mature
  do Mix the flour and the water with the cheddar.
`;
    const after = rewrite(text, /^Swap the cheddar for 100 g feta/);
    expect(after).toContain('100 g     feta, grated   # mature');
    expect(after).toContain('332 g     water');
    expect(after).toContain('with the feta.');
    expect(titles(text).find((t) => /feta/.test(t))).toMatch(/18\.5 g less water.*moves fat/);
  });
});

describe('sizes', () => {
  test('one part alone, and the least that uses whole eggs', () => {
    const text = `recipe Tart
$0part base
  200 g     plain flour
  do Sift the flour.
part custard
  4 large   eggs
  2 large   egg yolks
  500 g     whole milk
  do Beat the eggs and yolks with the milk, and pour over the base.
`;
    expect(rewrite(text, /^Scale base alone by two/)).toContain('400 g     plain flour');
    const least = rewrite(`$0${text.replace('$0', '')}`, /whole eggs/);
    expect(least).toContain('2 large   eggs');
    expect(least).toContain('1 large   egg yolk\n');
    expect(least).toContain('100 g     plain flour');
  });
});

/** What another size, measure or formula may really bring; and formulas that the swap’s own note speaks of. */
const BROUGHT: ReadonlySet<string> = new Set([
  'pan-overfull',
  'pan-underfull',
  'trial-disagrees',
  'untested-change',
  'yield-mismatch',
  'out-of-order',
]);

const codes = (snapshot: Opened): string[] => snapshot.findings.open.map((f) => f.code).filter((c) => !BROUGHT.has(c));

/** Every word of every comment. */
const commentWords = (text: string): string[] =>
  parseDocument(text)
    .lines.flatMap((l) => l.comment?.text.split(/[#;\s]+/) ?? [])
    .filter((w) => w !== '')
    .sort();

/** Offered on many lines, and the same on each. */
const WIDE = /^(?:Scale the recipe|Put the lists|Write this part|Write the whole|Write the percentages)/;

function checkAll(
  text: string,
  openHere: (text: string) => Opened,
  every: (title: string, after: string) => void,
): void {
  const snapshot = openHere(text);
  const { lines } = snapshot.document;
  const seen = new Set<string>();
  lines.forEach((line, at) => {
    const middle = Math.floor(line.text.length * 0.6);
    for (const [from, to] of [
      [0, 0],
      [middle, middle],
      [0, line.text.length],
    ] as const) {
      for (const action of offered(snapshot, { line: at, character: from }, { line: at, character: to })) {
        const key = WIDE.test(action.title) ? action.title : `${at} ${action.title}`;
        if (seen.has(key)) continue;
        seen.add(key);
        every(`line ${at + 1}: ${action.title}`, apply(snapshot, action));
      }
    }
  });
}

describe.each(EXAMPLES.filter(([file]) => file !== 'first-draft.quern'))('every rewrite of %s', (_, text) => {
  test('keeps the comments, loses no gram it does not say, and leaves a file found no worse', () => {
    const before = codes(openInKitchen(text));
    checkAll(text, openInKitchen, (title, after) => {
      expect(commentWords(after), title).toEqual(commentWords(text));
      const worse = codes(openInKitchen(after)).filter((c) => !before.includes(c));
      // A swap may leave a formula's band, and a part scaled alone what the whole makes: the title says what moves.
      const bands = /^line \d+: (?:Swap|Scale|Write|Show)/.test(title)
        ? worse.filter((c) => !/out-of-range|wont-set|firm|too-(?:wet|dry)|misfit|implausible/.test(c))
        : worse;
      expect(bands, `${title}\n${after}`).toEqual([]);
    });
  });
});

test('on generated recipes every rewrite keeps the comments and adds no line that cannot be read', () => {
  fc.assert(
    fc.property(recipeText, (text) => {
      checkAll(text, open, (title, after) => {
        expect(commentWords(after), title).toEqual(commentWords(text));
        const unread = (t: string) => parseDocument(t).lines.filter((l) => l.faults.length > 0).length;
        expect(unread(after), `${title}\n${after}`).toBe(unread(text));
      });
    }),
    { numRuns: 12 },
  );
});

test('on hostile text nothing is thrown', () => {
  fc.assert(
    fc.property(quernText, (text) => {
      checkAll(text, open, () => {});
    }),
    { numRuns: 40 },
  );
});
