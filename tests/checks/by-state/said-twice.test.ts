/** A line said twice is two steps: what is wrong with the second stands at the second. */
import { expect, test } from 'vitest';
import { open } from '../../support/harness.ts';

const FRIED = '  do Fry portions over medium heat for 12 min, until the centre reads 71 C.';
const TEXT = `recipe "Sausages"
  yields 12
  1 kg pork shoulder, minced
  20 g salt
  do Mix the pork with the salt until sticky.
${FRIED}
  do Shape into 12 sausages and chill at 4 C for 1 h.
${FRIED}
`;

test('what is heated again is told where it is', () => {
  const lines = open(TEXT).findings.open.filter(({ code }) => code === 'undercooked');
  expect(lines.map(({ at, said }) => [TEXT.split('\n')[at.line], at.line, said.band])).toEqual([
    [FRIED, 7, [74, null]],
  ]);
});
