/** A note is said of the whole recipe, wherever it stands above the trials: read, shown and judged as one at the top. */
import { describe, expect, test } from 'vitest';
import { partToFile } from '../../server/src/editor/part-to-file.ts';
import { jsonLd } from '../../server/src/publish/json-ld.ts';
import { markdownPage } from '../../server/src/publish/plain-pages.ts';
import { readerPage } from '../../server/src/publish/reader-page.ts';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { foldsOf, formatted, labelsAt } from '../support/at-cursor.ts';
import { open } from '../support/harness.ts';
import { kitchenOf } from '../support/kitchen.ts';

/** After an edit of those words. */
function edited(text: string, find: string, put: string): Snapshot {
  const before = open(text);
  const place = (offset: number) => {
    const above = text.slice(0, offset).split('\n');
    return { line: above.length - 1, character: above.at(-1)?.length ?? 0 };
  };
  const from = text.indexOf(find);
  return before.edited(2, [{ range: { start: place(from), end: place(from + find.length) }, text: put }]);
}

/** The same recipe with its note in three places. */
function wherever(note: string): readonly (readonly [string, string])[] {
  const head = 'recipe Porridge\n  yield   2 bowls\n';
  const oats =
    '\npart oats\n  100 g     rolled oats\n  400 ml    water\n  do Simmer the oats in the water for 10 min.\n';
  const top = '\npart top\n  20 g      honey\n  do Pour the honey over the oats.\n';
  const line = `  note    ${note}\n`;
  return [
    ['above the parts', head + line + oats + top],
    ['between them', head + oats + line + top],
    ['below them', head + oats + top + line],
    ['below them, behind a blank line', `${head}${oats}${top}\n${line}`],
    ['above the trials', `${head}${oats}${top}\n${line}\ntrial 2026-09-14\n  verdict keep\n`],
  ];
}

describe.each(wherever('For babies from six months on; dairy-free.'))('a note %s', (_, text) => {
  const { recipe, findings } = open(text);

  test('is no fault', () => {
    expect(findings.open.filter(({ severity }) => severity === 'error').map(({ code }) => code)).not.toContain(
      'syntax',
    );
  });

  test('is heard by the checks', () => {
    expect(findings.open.map(({ code }) => code)).toContain('unsafe-for-them');
  });

  test('is on every page', () => {
    const page = readerPage(recipe, findings, { measures: 'weight-first', label: 'eu' });
    expect(page.notes).toEqual(['For babies from six months on; dairy-free.']);
    expect(markdownPage(page)).toContain('## Notes');
    expect(jsonLd(page)).toContain('For babies from six months on');
  });

  test('stays where it is when the file is laid out', () => {
    expect(formatted(text)).toBe(text);
  });
});

describe('below a part', () => {
  const [, , [, text]] = wherever('Keeps three days.') as [unknown, unknown, readonly [string, string]];

  test('what is wrong in it is found as above', () => {
    const claimed = wherever('Vegan.').map(([, each]) => open(each).findings.open.map(({ code }) => code));
    for (const codes of claimed) expect(codes).toContain('allergen-claim');
  });

  test('the head folds without it', () => {
    expect(foldsOf(text)[0]).toBe('0-1');
  });

  test('a list may go on below it', () => {
    const { recipe } = open(text.replace('  note', '  note    Stir it often.\n  1 g       salt\n  note'));
    expect(recipe.parts[1]?.head.ingredients.map(({ name }) => name)).toEqual(['honey', 'salt']);
  });

  test('under a trial it is refused, and told where it may stand', () => {
    const { findings } = open(`${text}\ntrial 2026-09-14\n  verdict keep\n  note Later.\n`);
    expect(findings.open.find(({ code }) => code === 'syntax')?.said.message).toContain('above the trials');
  });

  test('it is offered', () => {
    expect(labelsAt(`${text}  $0`)).toContain('note');
  });

  test('an edit reads it as the whole file is read', () => {
    for (const change of [
      { find: '400 ml', put: '450 ml' },
      { find: '  note    Keeps three days.\n', put: '' },
      { find: 'Keeps three days.', put: 'Keeps a day.' },
      { find: '  do Pour', put: '  note    Warm the honey.\n  do Pour' },
    ]) {
      const after = edited(text, change.find, change.put);
      const anew = open(after.document.lines.map((line) => line.text).join('\n'));
      expect(after.outline.head.map(({ at, line }) => [at, line.text])).toEqual(
        anew.outline.head.map(({ at, line }) => [at, line.text]),
      );
      expect(after.findings.open.map(({ code, at }) => [code, at])).toEqual(
        anew.findings.open.map(({ code, at }) => [code, at]),
      );
    }
  });

  test('a part that moves to its own file leaves it behind', () => {
    const { snapshot } = kitchenOf({
      'p.quern': wherever('Keeps three days.')[1]?.[1].replace('Porr', '$0Porr') ?? '',
    });
    const moved = partToFile(snapshot, 3);
    expect(moved?.text).not.toContain('note');
    expect(moved?.edits[0]?.text).toBe('part oats from oats.quern : oats\n  note    Keeps three days.');
  });

  test('a variant has the notes of its base and its own', () => {
    const { snapshot } = kitchenOf({
      'base.quern': text,
      'new.quern': 'recipe $0Other\n  from    base.quern\n\npart top\n  30 g      honey\n  note    Sweeter.\n',
    });
    const { recipe, findings } = snapshot.whole;
    expect(readerPage(recipe, findings, { measures: 'weight-first', label: 'eu' }).notes.toSorted()).toEqual([
      'Keeps three days.',
      'Sweeter.',
    ]);
  });
});
