/** Whom a text says it is for by a figure: an age, months gone, weeks to go; and what is only as old. */
import { expect, test } from 'vitest';
import { spokenIn } from '../../server/src/prose/things.ts';

const EATERS: ReadonlySet<string> = new Set(['baby', 'toddler', 'child', 'pregnant', 'frail']);
const whomIn = (text: string): readonly string[] => [
  ...new Set(spokenIn(text).flatMap(({ is }) => (EATERS.has(is) ? [is] : []))),
];

test.each<[string, readonly string[]]>([
  ['My eleven-month-old loves it.', ['baby']],
  ['She is seven months old, and eats all of it.', ['baby']],
  ['Mashed for a 14-month-old.', ['toddler']],
  ['For the three-year-olds of the kindergarten.', ['toddler', 'child']],
  ['Our 2 year old twins eat it by hand.', ['toddler']],
  ["For a six-year-old's party.", ['child']],
  ['Ruth is seven months along.', ['pregnant']],
  ['I was twelve weeks gone when I craved this.', ['pregnant']],
  ['My sister has ten weeks to go.', ['pregnant']],
  ['For my wife, who is due any day.', ['pregnant']],
  ['Anna is expecting.', ['pregnant']],
  // As old, and nobody.
  ['A three-year-old parmesan.', []],
  ['The vinegar is two years old.', []],
  ['A day-old loaf.', []],
  ['It feeds a starter that is ten months old.', []],
  ['The bill is due in June.', []],
  ['We are expecting twenty guests.', []],
  ['There are six weeks to go before Christmas.', []],
  ['For my father of sixty years.', []],
  ['Keep them from the two-year-olds.', []],
])('%s', (text, whom) => expect(whomIn(text)).toEqual(whom));
