/** What no known order cooks is asked about where what is done to it reads as heat enough, and told of where it does not. */
import { expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const severityOf = (text: string, code: string): string | undefined =>
  open(text).findings.open.find((finding) => finding.code === code)?.severity;

const pork = (step: string): string =>
  `recipe Held pork\n  2 kg      pork shoulder\n  30 g      fine salt\n  do Rub the pork with the salt and bag it.\n  do ${step}\n`;

const custard = (step: string): string =>
  `recipe Parfait\n  6         egg yolks\n  100 g     caster sugar\n  300 ml    double cream\n  do Whisk the yolks with the sugar.\n  do ${step}\n`;

test.each([
  // Food Code 2022, 3-401.11(B)(2): 62.2 °C for 5 min.
  ['Water bath, already at 62 C when it goes in. 24 hours.', undefined],
  ['Into the fridge overnight, then slice.', 'error'],
])('%s: %s', (step, severity) => {
  expect(severityOf(pork(step), 'no-safe-temperature')).toBe(severity);
});

test('egg that is whisked cold stays an error', () => {
  expect(severityOf(custard('Fold in the cream and freeze.'), 'raw-egg')).toBe('error');
});

const toldOf = (text: string, code: string): readonly (readonly [string, string | undefined])[] =>
  open(text)
    .findings.open.filter((finding) => finding.code === code)
    .map(({ severity, said }) => [severity, /salmon fillet|pork shoulder/.exec(said.message)?.[0]]);

test('a question about one food hides no danger of another in the same part', () => {
  const text =
    'recipe Two kinds\n  2 kg      pork shoulder\n  800 g     salmon fillet\n  do Bag the pork. Water bath, already at 62 C when it goes in. 24 hours.\n  do Slice the salmon thinly and serve it beside.\n';
  expect(toldOf(text, 'no-safe-temperature')).toEqual([['error', 'salmon fillet']]);
});
