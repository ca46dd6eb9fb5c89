import { expect, test } from 'vitest';
import { scaleRecipe } from '../../server/src/edits/scale.ts';
import { MOST_IN_PART, MOST_LINES, MOST_PARTS } from '../../server/src/notation/limits.ts';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { open } from '../support/harness.ts';

const list = (count: number, line = '  10 g plain flour') => Array.from({ length: count }, () => line).join('\n');
const errors = (snapshot: Snapshot) =>
  snapshot.findings.open.filter((f) => f.severity === 'error').map((f) => `${f.at.line} ${f.code}: ${f.said.message}`);

test('a part of as many lines as may be is worked out whole', () => {
  const snapshot = open(`recipe A\npart dough\n${list(MOST_IN_PART - 1)}\n\n# the end\n`);
  expect(errors(snapshot)).toEqual([]);
  expect(snapshot.recipe.parts[0]?.head.ingredients).toHaveLength(MOST_IN_PART - 1);
});

test('the first line past the limit of a part says so, and its part is not judged by weight', () => {
  const snapshot = open(`recipe A\npart dough\n${list(MOST_IN_PART + 50)}\npart lid\n  10 g butter\n`);
  expect(errors(snapshot)).toEqual([
    expect.stringMatching(/^1001 syntax: This cannot be read: a part holds 1,000 lines at most.*`part NAME`\.$/),
  ]);
  const [dough, lid] = snapshot.recipe.parts;
  expect(dough?.head.ingredients).toHaveLength(MOST_IN_PART - 1);
  expect(dough?.head.notUnderstood).toEqual([MOST_IN_PART]);
  expect(lid?.head.ingredients).toHaveLength(1);
});

test('it says so among steps too', () => {
  const snapshot = open(`recipe A\n  10 g butter\n${list(MOST_IN_PART, '  do Melt the butter.')}\n`);
  expect(errors(snapshot).map((e) => e.split(':')[0])).toEqual(['1001 syntax']);
  expect(snapshot.recipe.parts[0]?.head.notUnderstood).toEqual([MOST_IN_PART]);
});

test('the first part past their limit says so', () => {
  const snapshot = open(`recipe A\n${'part dough\n  10 g butter\n'.repeat(MOST_PARTS + 2)}`);
  expect(errors(snapshot)).toEqual([expect.stringMatching(/^4001 syntax: .*a file holds 2,000 parts at most/)]);
  expect(snapshot.recipe.parts).toHaveLength(MOST_PARTS);
});

test('the first line past the limit of a file says so', () => {
  const notes = '  note    It is so.\n'.repeat(MOST_LINES);
  const snapshot = open(`recipe A\n${notes}  10 g butter\n`);
  expect(errors(snapshot)).toEqual([expect.stringMatching(/^20000 syntax: .*a file holds 20,000 lines at most/)]);
});

test('what is not worked out whole is not scaled', () => {
  const { document, recipe } = open(`recipe A\n  yield 4 buns\n${list(MOST_IN_PART + 1)}\n`);
  expect(scaleRecipe(document, recipe, { kind: 'by', by: 2 })).toMatchObject({
    ok: false,
    why: expect.stringContaining('more lines than are worked out'),
  });
});

test('a part that grows past the limit, and back, is read as if it were opened so', () => {
  const text = `recipe A\npart dough\n${list(MOST_IN_PART - 1)}\n`;
  const range = { start: { line: 5, character: 0 }, end: { line: 5, character: 0 } };
  const before = open(text);
  void before.findings;
  const grown = before.edited(2, [{ range, text: '  1 g salt\n' }]);
  expect(errors(grown)).toEqual(errors(open(grown.text)));
  expect(errors(grown)).toHaveLength(1);
  const inside = grown.edited(3, [{ range, text: '  2 g salt\n' }]);
  expect(errors(inside)).toEqual(errors(open(inside.text)));
  const shrunk = inside.edited(4, [{ range: { start: range.start, end: { line: 7, character: 0 } }, text: '' }]);
  expect(shrunk.text).toBe(text);
  expect(errors(shrunk)).toEqual([]);
});
