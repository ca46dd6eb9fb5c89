import { describe, expect, test } from 'vitest';
import { compareMarks, type MarkedFinding, readMarks } from './marks.ts';

const finding = (over: Partial<MarkedFinding> = {}): MarkedFinding => ({
  code: 'unused-part',
  severity: 'info',
  usual: 'info',
  line: 1,
  start: 5,
  end: 9,
  message: 'No later step uses the base',
  fixes: [],
  ...over,
});

describe('marks', () => {
  test('are removed from the text and refer to the line above them', () => {
    const { text, marks } = readMarks(
      'recipe X\npart base\n#    ^^^^ unused-part *: no later\n# "base" dough-too-wet warning\n  do Mix.\n',
    );
    expect(text).toBe('recipe X\npart base\n  do Mix.\n');
    expect(marks).toEqual([
      { line: 1, start: 5, end: 9, code: 'unused-part', fix: true, words: 'no later', anywhere: false },
      { line: 1, start: 5, end: 9, code: 'dough-too-wet', severity: 'warning', fix: false, anywhere: false },
    ]);
  });

  test('ordinary comments are none', () => {
    expect(readMarks('# recipe of the house\n  # ^^^^ not at the start\n').marks).toEqual([]);
  });

  test('a quoted text must stand once in the line', () => {
    expect(() => readMarks('a b a\n# "a" syntax\n')).toThrow(/once/);
    expect(() => readMarks('a b\n# "c" syntax\n')).toThrow(/once/);
  });

  test('pair one to one with findings', () => {
    const { marks } = readMarks('recipe X\npart base\n#    ^^^^ unused-part\n');
    expect(compareMarks(marks, [finding()])).toEqual([]);
    expect(compareMarks(marks, [])).toEqual(['missed: unused-part at 2:5-9']);
    expect(compareMarks(marks, [finding({ start: 4 })])).toEqual(['misplaced: unused-part at 2:4-9, marked at 2:5-9']);
    expect(compareMarks(marks, [finding({ severity: 'error' })])).toEqual(['unused-part is error, marked info']);
    expect(compareMarks(marks, [finding(), finding()])).toEqual([
      'unexpected: unused-part at 2:5-9: No later step uses the base',
    ]);
    expect(compareMarks(marks, [finding({ fixes: ['Write it'] })])).toEqual([
      'unused-part has fixes that are not marked: Write it',
    ]);
  });

  test('a wrong message fails', () => {
    const { marks } = readMarks('recipe X\npart base\n#    ^^^^ unused-part: something else\n');
    expect(compareMarks(marks, [finding()])).toHaveLength(1);
  });
});
