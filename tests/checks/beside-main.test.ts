/** What goes in beside the main food, so much of it that nobody eats that, and as much where a dish is of it. Common practice, no source. */
import { describe, expect, test } from 'vitest';
import { onlyCheck, open } from '../support/harness.ts';

const told = (title: string, serves: number, line: string, step = 'Stew it all for 2 h until tender.'): number =>
  open(
    `recipe ${title}\n  serves  ${serves}\n  1 kg      stewing beef\n  800 ml    beef stock\n  ${line}\n  do ${step}\n`,
    onlyCheck('portion-implausible'),
  ).findings.open.length;

describe('more than anybody eats of it', () => {
  test.each([
    ['400 g     butter'],
    ['40 cloves garlic'],
    ['10 tbsp   ground cumin'],
    ['400 g     parsley'],
    ['30        bay leaves'],
    ['300 g     ginger, grated'],
    ['1.2 kg    smoked streaky bacon'],
    ['300 ml    lemon juice'],
  ])('%s', (line) => expect(told('Beef stew', 4, line)).toBe(1));
});

describe('a good deal, and no more', () => {
  test.each([
    ['Beef stew', 4, '100 g     butter'],
    ['Beef stew', 10, '40 cloves garlic'],
    ['Beef with forty cloves of garlic', 4, '40 cloves garlic'],
    ['Beef and parsley stew', 6, '400 g     parsley'],
    ['Beef stew', 4, '6         bay leaves'],
    ['Beef stew', 4, '2 kg      beef dripping'],
    ['Beef stew', 4, 'to taste  black pepper'],
  ])('%s for %i with %s', (title, serves, line) => expect(told(title, serves, line)).toBe(0));
  test('oil that is fried in', () =>
    expect(told('Fried beef', 4, '700 ml    sunflower oil', 'Deep-fry the beef in the oil at 180 C for 4 min.')).toBe(
      0,
    ));
});

test.each([
  ['Beef stew', 6, 0],
  ['Beef stew', 60, 1],
  ['Mushroom risotto', 8, 0],
  ['Mushroom risotto', 60, 1],
])('%s for %i: %i', (title, serves, found) => {
  expect(told(title, serves, '800 g     carrots')).toBe(found);
});

test('salt that it is baked in is not eaten', () => {
  const text =
    'recipe Bream in a salt crust\n  serves 2\n  1 bream of 800 g\n  2 kg coarse salt\n  do Bury the bream in the salt and bake at 200 C for 30 min, until it reads 63 C.\n';
  expect(open(text, onlyCheck('portion-implausible')).findings.open).toHaveLength(0);
});
