/** What an error stands on is not converted away. */
import { describe, expect, test } from 'vitest';
import { quern } from '../support/fake-io.ts';

const LOAF =
  'recipe Loaf\n  oven    230 C\n  500 g     bread flour\n  330 g     water\n  10 g      fine salt\n  do Mix the flour, water and salt.\n  do Bake at 230 C for 40 min, until the centre reads 96 C.\n';

async function converted(text: string, to: string) {
  const { out, err, exit } = await quern(['convert', 'a.quern', '--to', to], { 'a.quern': text });
  expect(exit).toBe(0);
  return { lines: out.split('\n'), err };
}

describe('a conversion', () => {
  test('takes all where nothing is wrong', async () => {
    const { lines, err } = await converted(LOAF, 'fahrenheit');
    expect(lines[1]).toBe('  oven    450 F');
    expect(err).toBe('');
  });

  test('leaves an oven that cannot be meant, and says so', async () => {
    const { lines, err } = await converted(LOAF.replace('oven    230 C', 'oven    350 C'), 'fahrenheit');
    expect(lines[1]).toBe('  oven    350 C');
    expect(lines[6]).toContain('450 F');
    expect(err).toContain('note: Line 2 stays as written until what is wrong there is mended.\n');
  });

  test.each([
    ['a number with a comma', '1,500 g   bread flour'],
    ['a bracket left open', '500 g     bread flour (strong'],
    ['a number that is none', '1/0 g     bread flour'],
  ])('leaves %s', async (_name, line) => {
    const { lines, err } = await converted(LOAF.replace('500 g     bread flour', line), 'us');
    expect(lines[2]).toBe(`  ${line}`);
    expect(lines[3]).not.toContain('330 g');
    expect(err).toContain('note: Line 3 stays as written');
  });
});
