/** The judge of answers sees what is wrong with one. */
import { expect, it } from 'vitest';
import { faultsOf, linesOf, tokenFaults } from './well-formed.ts';

const LINES = linesOf('recipe A\r\n  100 g  🧈 butter\n');
const range = (l: number, a: number, m: number, b: number) => ({
  start: { line: l, character: a },
  end: { line: m, character: b },
});

it.each([
  [{ range: range(0, 0, 0, 8) }, undefined],
  [{ range: range(0, 0, 0, 9) }, 'outside the text'],
  [{ range: range(3, 0, 3, 0) }, 'outside the text'],
  [{ range: range(1, 9, 1, 10) }, 'cuts a character in two'],
  [{ range: range(1, 4, 1, 2) }, 'ends before it begins'],
  [{ range: range(0, 0, 0, 4), selectionRange: range(0, 2, 0, 6) }, 'does not hold its name'],
  [{ range: range(0, 0, 0, 4), parent: { range: range(0, 1, 0, 8) } }, 'is not in its parent'],
  [
    {
      a: [
        { range: range(0, 0, 0, 4), newText: '' },
        { range: range(0, 3, 0, 6), newText: '' },
      ],
    },
    'overlap',
  ],
  [
    {
      a: [
        { range: range(0, 0, 0, 4), newText: '' },
        { range: range(0, 4, 0, 4), newText: '' },
      ],
    },
    undefined,
  ],
  [{ uri: 'file:///other', range: range(9, 0, 9, 0) }, undefined],
  [{ position: { line: 0, character: -1 } }, 'is no place'],
] as const)('%j', (answer, fault) => {
  const faults = faultsOf(answer, LINES, 'file:///this');
  if (fault === undefined) expect(faults).toEqual([]);
  else expect(faults.join('\n')).toContain(fault);
});

it.each([
  [[0, 0, 6, 0, 0, 1, 2, 3, 0, 0], undefined],
  [[1, 2, 3, 0, 0, 0, 1, 2, 0, 0], 'overlaps'],
  [[0, 4, 6, 0, 0], 'outside its line'],
  [[1, 10, 3, 0, 0], 'cuts a character'],
  [[0, 0, 0, 0, 0], 'out of order'],
  [[0, 0, 1, 0], 'five numbers'],
])('tokens %j', (data, fault) => {
  const faults = tokenFaults(data, LINES);
  if (fault === undefined) expect(faults).toEqual([]);
  else expect(faults.join('\n')).toContain(fault);
});
