/** What runs with nobody looking leaves every gram, food, step, line that was not read, and other finding as it was. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CHECKS } from '../../server/src/checks/index.ts';
import { applyEdits, editsBetween } from '../../server/src/edits/text-edit.ts';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { judgedFix, mended } from '../../server/src/workspace/unattended.ts';
import { RECIPES } from '../outside/faults/corpus.ts';
import { brokenLine, quernText } from '../support/arbitrary.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';
import { readMarks } from '../support/marks.ts';

/** Only these may go. */
const MENDABLE: ReadonlySet<string> = new Set(['allow-without-effect', 'out-of-order']);

function held({ whole, document, recipe, findings }: Snapshot) {
  return {
    list: whole.recipe.parts
      .flatMap(({ head }) =>
        head.ingredients.map((i) => [head.name, i.name, i.food?.id, i.weighed, i.optional, i.free, i.percent]),
      )
      .map((row) => JSON.stringify(row))
      .sort(),
    method: whole.recipe.parts.flatMap((p) => p.steps.map((s) => p.head.source.lines[s.line]?.text)),
    mass: whole.recipe.parts.map(({ head: { massG } }) => [
      massG.low.toFixed(6),
      massG.high.toFixed(6),
      massG.complete,
    ]),
    notRead: document.lines.filter((l) => l.faults.length > 0).map((l) => l.text),
    notUnderstood: recipe.parts.map((p) => p.head.notUnderstood.map((line) => p.head.source.lines[line]?.text)),
    findings: [...findings.open, ...findings.accepted]
      .filter((f) => !MENDABLE.has(f.code))
      .map((f) => `${f.code} ${f.severity} ${f.said.message} ${document.lines[f.at.line]?.text}`)
      .sort(),
  };
}

function expectLeft(before: Snapshot): Snapshot {
  const after = mended(before);
  expect(held(open(after.text)), after.text).toEqual(held(open(before.text)));
  expect(mended(after)).toBe(after);
  return after;
}

const BAD = CHECKS.flatMap((check) =>
  check.examples.bad.map(
    (example) => [check.code, readMarks(typeof example === 'string' ? example : example.text).text] as const,
  ),
);

describe('fixes that run unattended', () => {
  test('leave the example kitchen as it is understood', () => {
    for (const [path, text] of EXAMPLES) {
      const before = openInKitchen(text, path);
      expect(held(mended(before)), path).toEqual(held(before));
    }
  });

  test('and published recipes', () => {
    for (const { text } of RECIPES) expectLeft(open(text));
  });

  test('and what each check is shown to find', () => {
    const changed = BAD.filter(([, text]) => expectLeft(open(text)).text !== text);
    expect([...new Set(changed.map(([code]) => code))].sort()).toEqual([...MENDABLE].sort());
  });

  test('and whatever is broken in them', () => {
    const texts = [...RECIPES.map((r) => r.text), ...BAD.map(([, text]) => text)];
    fc.assert(
      fc.property(
        fc.constantFrom(...texts),
        fc.array(fc.tuple(fc.nat(60), brokenLine), { minLength: 1, maxLength: 3 }),
        (text, broken) => {
          const lines = text.split('\n');
          for (const [at, line] of broken) lines.splice(1 + (at % lines.length), 0, `  ${line}`);
          expectLeft(open(lines.join('\n')));
        },
      ),
      { numRuns: 150 },
    );
  });

  test('and any text', () => {
    fc.assert(
      fc.property(quernText, (text) => void expectLeft(open(text))),
      { numRuns: 200 },
    );
  });

  const SLAB =
    'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  60 g      honey\n  do Melt the butter.\n  do Stir in the honey.\n  do Add the oats.\n';
  test('a list is put in the order of use', () => {
    const before = open(SLAB);
    const judged = before.findings.open.flatMap((f) => judgedFix(f, before) ?? []);
    expect(judged.map((j) => j.held)).toEqual([undefined]);
  });

  const idle = '  allow salt-out-of-range because it was so once\n';
  test('a file is mended to its end, however much there is', () => {
    const before = open(SLAB.replace('  80 g', `${idle.repeat(250)}  80 g`));
    const after = mended(before);
    expect(after.text).toBe(mended(open(SLAB)).text);
    expect(after.findings.open).toEqual([]);
    expect(applyEdits(before.document, editsBetween(before.document, after.document))).toEqual(after.document);
  });

  test('and of one code alone where that is asked', () => {
    const before = open(SLAB.replace('  80 g', `${idle.repeat(3)}  80 g`));
    expect(mended(before, 'allow-without-effect').text).toBe(SLAB);
    expect(mended(before, 'unknown-food')).toBe(before);
  });

  const ORDERED =
    'recipe Slab\n  80 g      butter\n  60 g      honey\n  200 g     rolled oats\n  do Melt the butter.\n  do Stir in the honey.\n  do Add the oats.\n';
  test.each([
    ['a tablespoon in one letter', ORDERED.replace('80 g  ', '3 T   ')],
    ['prose that would become a step', ORDERED.replace('  do Add', '  Serve warm with cream.\n  do Add')],
    [
      'an ingredient that no step takes',
      ORDERED.replace('  60 g      honey\n', '  60 g      honey\n  20 g      walnuts\n'),
    ],
    ['a reason that only the cook has', ORDERED.replace('  60 g', '  allow out-of-order\n  60 g')],
    [
      'a misspelled food',
      'recipe Slab\n  80 g      buttre\n  200 g     rolled oats\n  do Melt the buttre.\n  do Add the oats.\n',
    ],
    [
      'a misspelled kind',
      'recipe Tart\npart crust as shortcurst\n  240 g     plain flour\n  130 g     butter\n  60 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n',
    ],
    ['a number with a comma', ORDERED.replace('60 g', '1,5 g')],
  ])('%s is left to the cook', (_name, text) => {
    const before = open(text);
    expect(mended(before).text).toBe(text);
  });
});
