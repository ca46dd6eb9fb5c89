/** What is dropped into boiling water, cools in its jars, is kept cold while it is mixed, or was smoked: common practice, no source, and each beside a twin that is told of. */
import { expect, test } from 'vitest';
import { open } from '../../support/harness.ts';

const told = (text: string): readonly string[] =>
  open(text).findings.open.flatMap(({ code, severity }) =>
    (severity === 'error' || severity === 'warning') && CODES.has(code) ? [code] : [],
  );
const CODES = new Set(['raw-flour', 'cooling-too-slow', 'held-too-warm', 'comes-too-early', 'allergen-claim']);

const GNOCCHI =
  'recipe Gnocchi\n  serves  4\n  1 kg      boiled potatoes\n  250 g     plain flour\n  1 large   egg\n  do Knead the potatoes with the flour and egg and shape.\n';
const TOMATOES =
  'recipe Tomatoes for the shelf\n  10 kg     tomatoes\n  14 tbsp   bottled lemon juice\n  do Crush the tomatoes and boil for 5 min.\n  do Put 2 tbsp of the lemon juice in each hot quart jar.\n  do Fill with the hot tomatoes and close the jars.\n';
const SAUSAGE = 'recipe Sausage\n  1 kg      minced pork\n  17 g      fine salt\n  100 ml    red wine\n';
const CHOWDER =
  'recipe Chowder\n  500 g     clams\n  100 ml    clam juice\n  100 ml    milk\n  do Boil all for 10 min.\n';

test.each<[string, readonly string[]]>([
  [`${GNOCCHI}  do Drop the gnocchi into boiling salted water in batches; when they float, lift out and serve.\n`, []],
  [`${GNOCCHI}  do Roll into ropes, cut and serve.\n`, ['raw-flour']],
  [
    `${TOMATOES}  do Process in a boiling-water canner for 45 min.\n  do Cool for 12 h to 24 h, and store in a cool place for up to 1 year.\n`,
    [],
  ],
  [
    `${SAUSAGE}  do Mix for 2 min, keeping the mixture below 6 C.\n  do Fry in patties until the centre reads 71 C.\n`,
    [],
  ],
  [
    `${SAUSAGE}  do Mix for 2 min, and keep for 2 days below 9 C.\n  do Fry in patties until the centre reads 71 C.\n`,
    ['held-too-warm'],
  ],
  [
    'recipe Bacon\n  2 kg      pork belly\n  45 g      fine salt\n  5 g       curing salt no. 1\n  do Rub the salts into the belly and cure at 3 C for 7 d.\n  do Smoke at 95 C until the centre reads 65 C.\n  do Cool and slice. Fry before eating.\n',
    [],
  ],
  [
    'recipe Chicken\n  4 of 180 g skinless chicken breasts\n  6 g       fine salt\n  do Heat the water bath to 65 C. Season the chicken with the salt and seal in bags.\n  do Cook in the bath at 65 C for 1 h 30 min.\n',
    [],
  ],
  [`${CHOWDER}  note Contains shellfish (clams) and milk.\n`, []],
  [`${CHOWDER}  note Contains fish and milk.\n`, ['allergen-claim']],
])('%s', (text, codes) => expect(told(text)).toEqual(codes));
