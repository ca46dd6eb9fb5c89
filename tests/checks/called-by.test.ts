/** What a pudding of rice lacks to be soft, and a dish that is called by its shape. */
import { expect, test } from 'vitest';
import { onlyCheck, open } from '../support/harness.ts';

const count = (text: string): number => open(text, onlyCheck('out-of-proportion')).findings.open.length;
const pudding = (rice: string, milk: string, title = 'Rice pudding'): string =>
  `recipe ${title}\n  ${rice} short-grain rice\n  ${milk} whole milk\n  40 g caster sugar\n  do Simmer the rice in the milk with the sugar for 35 min, stirring, until creamy.\n`;

test.each([
  [pudding('450 g', '1 l'), 1],
  [pudding('300 g', '600 ml', 'Coconut rice pudding'), 1],
  [pudding('100 g', '1 l'), 0],
  [pudding('200 g', '800 ml'), 0],
  [pudding('200 g', '400 ml', 'Milk rice'), 0],
])('%s: %i', (text, found) => {
  expect(count(text)).toBe(found);
});

test.each([
  ['Shortbread fingers', '16 g', 1],
  ['Scone rounds', '40 g', 0],
  ['Shortbread squares', '160 g', 0],
  ['Cheese wedges', '16 g', 0],
])('a shape behind the name of a dish is that dish: %s of %s butter: %i', (title, butter, found) => {
  const text = `recipe ${title}\n  240 g plain flour\n  ${butter} butter\n  80 g caster sugar\n  do Rub the butter into the flour and sugar and bake at 160 C for 40 min until gold.\n`;
  expect(open(text, onlyCheck('unlike-its-name')).findings.open).toHaveLength(found);
});
