/** The table under "How a step is read" in syntaxes/README.md, held to what the hover says of each sentence. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { hoverAt } from '../support/at-cursor.ts';

const page = readFileSync(new URL('../../syntaxes/README.md', import.meta.url), 'utf8');
const section = page.split('### How a step is read')[1]?.split(/^## /m)[0] ?? '';
const rows = [...section.matchAll(/^\| (.*\*\*.*\*\*.*?) +\| (.*?) +\|$/gm)].map(
  ([, written = '', understood = '']) => [written, understood] as const,
);

const FOODS = { chicken: '1.5 kg chicken thighs', stock: '1 l chicken stock', dough: '500 g strong flour' };

/** A recipe of the foods that a sentence speaks of. */
const recipe = (written: string): string =>
  [
    'recipe Supper',
    ...Object.entries(FOODS).flatMap(([word, line]) => (written.includes(word) ? [`  ${line}`] : [])),
    `  do ${written.replace('**', '$0').replaceAll('**', '')}`,
  ].join('\n');

describe('a sentence of the table is understood as it says there', () => {
  it('there are some', () => expect(rows.length).toBeGreaterThan(12));
  it.each(rows)('%s', (written, understood) => {
    const said = (hoverAt(recipe(written)) ?? '')
      .split('\n')
      .filter((line) => /^(Understood|Said): /.test(line))
      .map((line) => line.replace(/^Understood: /, '').replace(/^Said: /, 'said '));
    expect(said.join('; ')).toBe(understood);
  });
});
