/** Salt of what is eaten: of a filling by all that it goes into, and for each who eats. */
import { expect, test } from 'vitest';
import { onlyCheck, open } from '../support/harness.ts';

const isFound = (text: string): boolean => open(text, onlyCheck('too-salty')).findings.open.length > 0;

const pasty = (salt: string, more = ''): string =>
  `recipe Pasties\n  yield 6 pasties\npart filling\n  400 g beef mince\n  200 g potatoes, diced\n  1 onion, chopped\n  ${salt} fine salt\n  do Fry the beef with the onion, potatoes and salt for 15 min.\n${more}part pasties\n  500 g ready-rolled shortcrust pastry\n  do Fill the pastry with the filling and bake at 200 C for 30 min until the centre reads 75 C.\n`;
const stew = (salt: string, makes = 'serves 4'): string =>
  `recipe Bean stew\n  yield ${makes}\n  800 g tinned tomatoes\n  500 g pork shoulder, diced\n  400 g tinned white beans, drained\n  ${salt}\n  do Simmer the pork with the tomatoes, beans and salt for 2 h until tender.\n`;

test.each([
  [pasty('70 g')],
  [stew('2 tbsp fine salt')],
  [stew('30 g sea salt')],
  [
    stew('2 tbsp fine salt')
      .replace('800 g tinned tomatoes', '800 ml coconut milk')
      .replace('tomatoes', 'coconut milk'),
  ],
])('too much: %s', (text) => {
  expect(isFound(text)).toBe(true);
});

test.each([
  [pasty('8 g')],
  // Thinned by what it goes into, and not all of it is eaten.
  [pasty('30 g')],
  [pasty('70 g', '  do Rinse the beef and drain it.\n')],
  [stew('2 tsp fine salt')],
  [stew('2 tbsp fine salt', 'serves 12')],
  [stew('2 tbsp fine salt', '2 l')],
])('as much as is eaten, or nobody knows: %s', (text) => {
  expect(isFound(text)).toBe(false);
});
