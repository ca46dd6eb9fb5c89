/** Raw flour of a part that no later one names, where one of them cooks what it does not list. Common practice, no source. */
import { expect, test } from 'vitest';
import { onlyCheck, open } from '../../support/harness.ts';

const severities = (frying: string): readonly string[] =>
  open(
    `recipe Beignets\n  yield 30 beignets\n  serve Hot.\npart dough as enriched bread\n  450 g bread flour\n  50 g sugar\n  7 g instant yeast\n  250 ml whole milk\n  1 egg\n  do Knead all for 8 min, cover and chill at 4 C overnight.\n  do Roll out 6 mm thick and cut into 30 squares. Leave for 30 min.\npart frying\n  2 l sunflower oil\n  100 g icing sugar\n  do Heat the oil to 185 C.\n  do ${frying}\n`,
    onlyCheck('raw-flour'),
  ).findings.open.map(({ severity }) => severity);

test.each<[string, readonly string[]]>([
  ['Fry the beignets for 3 min until golden. Bury in the icing sugar and serve.', ['info']],
  ['Fry the dough for 3 min until golden. Bury in the icing sugar and serve.', []],
])('%s', (frying, found) => {
  expect(severities(frying)).toEqual(found);
});

test('a piping bag is no pack that is sealed', () => {
  const text =
    'recipe Churros\npart dough as choux\n  250 ml water\n  60 g butter\n  150 g plain flour\n  3 eggs\n  do Boil the water with the butter, beat in the flour, cool and beat in the eggs. Put in a bag with a star nozzle.\npart frying\n  1.5 l sunflower oil\n  do Heat the oil to 180 C. Pipe in lengths and fry for 5 min until golden.\n';
  expect(open(text, onlyCheck('low-acid-preserve')).findings.open).toHaveLength(0);
});
