import { describe, expect, it } from 'vitest';
import { parseDocument } from '../../server/src/notation/document.ts';
import { layout } from '../../server/src/notation/layout.ts';
import { outline } from '../../server/src/notation/outline.ts';
import { readLine } from '../../server/src/notation/statements.ts';
import { picturesOf } from '../../server/src/recipe/pictures.ts';

const read = (line: string) => {
  const { statement, faults } = readLine(line);
  return [
    statement.kind === 'picture' ? (statement.file?.text ?? null) : statement.kind,
    statement.kind === 'picture' ? (statement.words?.text ?? null) : null,
    faults.map(({ code }) => code).join(' '),
  ];
};

describe('the line of a picture', () => {
  it.each([
    ['picture slice.jpg', 'slice.jpg', null, ''],
    ['picture slice.JPG, Cut when cold', 'slice.JPG', 'Cut when cold', ''],
    [
      '  picture   ../pictures/tart 2.webp ,  Seen from above, cut  # new',
      '../pictures/tart 2.webp',
      'Seen from above, cut',
      '',
    ],
    ['picture a.b.png', 'a.b.png', null, ''],
    ['picture plums, halved.avif', 'plums, halved.avif', null, ''],
    ['picture slice.jpg,', 'slice.jpg', null, ''],
    ['picture', null, null, 'missing-value'],
    ['picture slice', null, null, 'missing-value'],
    // A drawing may hold a programme.
    ['picture slice.svg', null, null, 'missing-value'],
    ['picture https://example.com/slice.jpg', null, null, 'stray-text'],
    ['picture //example.com/slice.jpg', null, null, 'stray-text'],
    ['picture data:image/png;base64,AAAA.png', null, null, 'stray-text'],
  ])('%s', (line, file, words, faults) => {
    expect(read(line)).toEqual([file, words, faults]);
  });

  it('is laid out, and keeps the name as it is', () => {
    const text = 'recipe Tart\npicture  my  tart.jpg,  cut   here\n  1 egg\n  do Boil the egg.\n picture x.png # yes\n';
    const laidOut = layout(parseDocument(text));
    expect(laidOut[1]).toBe('  picture my  tart.jpg,  cut   here');
    expect(laidOut[4]).toBe('  picture x.png  # yes');
  });
});

const RECIPE = `recipe Plum tart
  picture tart.jpg
part case
  200 g     plain flour
  do Rub the butter in.
  picture rubbed.jpg
  picture sand.png, Like wet sand

  do Roll it out.
trial 2026-09-14 by Ines
  picture cut.webp
`;

describe('what a picture shows', () => {
  it('is the dish, the step above it or the trial, in words of its own or theirs', () => {
    const shown = picturesOf(outline(parseDocument(RECIPE))).map(({ at, file, of, alt }) => [at, file.text, of, alt]);
    expect(shown).toEqual([
      [1, 'tart.jpg', { kind: 'dish' }, 'Plum tart'],
      [5, 'rubbed.jpg', { kind: 'step', line: 4 }, 'Rub the butter in.'],
      [6, 'sand.png', { kind: 'step', line: 4 }, 'Like wet sand'],
      [10, 'cut.webp', { kind: 'trial', line: 9, date: '2026-09-14' }, 'Trial of 2026-09-14'],
    ]);
  });

  it('stands below a step, and nowhere in a list or a food', () => {
    const of = outline(
      parseDocument(
        'recipe Slab\npart a\n  picture a.jpg\n  1 egg\n  picture b.jpg\n  do Boil the egg.\nfood jam\n  picture c.jpg\n',
      ),
    );
    expect(of.misplaced.map(({ at, fault }) => [at, fault.code])).toEqual([
      [2, 'misplaced'],
      [4, 'misplaced'],
      [7, 'misplaced'],
    ]);
    expect(picturesOf(of)).toEqual([]);
  });

  it('is the same however the text came to be', () => {
    const before = parseDocument(RECIPE.replace('  picture rubbed.jpg\n', ''));
    const after = parseDocument(RECIPE);
    const edited = outline(after, outline(before));
    expect(picturesOf(edited).map(({ at }) => at)).toEqual(picturesOf(outline(after)).map(({ at }) => at));
  });
});
