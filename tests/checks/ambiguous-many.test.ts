import { expect, test } from 'vitest';
import { fixesOf } from '../../server/src/checks/finding.ts';
import { open } from '../support/harness.ts';

test('of many that could be meant, some are named and offered, and the others counted', () => {
  const names = Array.from(
    { length: 30 },
    (_, i) => `z${String.fromCharCode(97 + (i % 26), 97 + Math.floor(i / 26))} flour`,
  );
  const list = names.map((name) => `  10 g     ${name}\n`).join('');
  const snapshot = open(`recipe Mix\n${list}  do Sift half the flour.\n`);
  const finding = snapshot.findings.open.find(({ code }) => code === 'ambiguous-mention');
  expect(finding?.said.message).toContain('or one of 20 others: write which.');
  expect(finding === undefined ? [] : fixesOf(finding, snapshot)).toHaveLength(10);
});
