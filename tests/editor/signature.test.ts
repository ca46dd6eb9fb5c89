import { describe, expect, it } from 'vitest';
import { signature } from '../../server/src/editor/signature.ts';
import { fixture } from '../support/at-cursor.ts';

/** The line that is shown, the slot under the caret in `‹ ›`. */
function signatureAt(text: string, byKey = false): string | undefined {
  const { snapshot, range } = fixture(text);
  const found = signature(snapshot, range.start, byKey);
  const shown = found?.signatures[found.active];
  if (shown === undefined) return undefined;
  const { label, slots, slot } = shown;
  const at = slot === undefined ? undefined : slots[slot];
  return at === undefined
    ? label
    : `${label.slice(0, at.start)}‹${label.slice(at.start, at.end)}›${label.slice(at.end)}`;
}

describe('the slots of a line', () => {
  it.each([
    ['  pan $0', 'pan round ‹WIDTH› x DEPTH cm'],
    ['  pan round $0', 'pan round ‹WIDTH› x DEPTH cm'],
    ['  pan round 24 x $0', 'pan round WIDTH ‹x DEPTH› cm'],
    ['  pan rectangle 30 x 2$00 x 4 cm', 'pan rectangle LENGTH ‹x WIDTH› x DEPTH cm'],
    ['  pan rectangle 30 x 20 x $0', 'pan rectangle LENGTH x WIDTH ‹x DEPTH› cm'],
    ['  pan 12 x ring 8 x $0', 'pan ring WIDTH ‹x HOLE› x DEPTH cm'],
    ['  pan lo$0', 'pan round ‹WIDTH› x DEPTH cm'],
    ['trial $0', 'trial ‹DATE› by NAME'],
    ['trial 2026-09-14 by $0', 'trial DATE ‹by NAME›'],
    ['trial 2026-09-14\n  took 52 min to $0', 'took TIME ‹to VERB› in OVEN'],
    ['trial 2026-09-14\n  used 90 g $0', 'used AMOUNT ‹NAME› in PART'],
    ['trial 2026-09-14\n  weighed 1385 g out of $0', 'weighed AMOUNT ‹out of PLACE›'],
    ['  swap butter for $0', 'swap NAME ‹for AMOUNT› NAME'],
    ['  swap butter for 120 g $0', 'swap NAME for AMOUNT ‹NAME›'],
    ['food $0', 'food ‹NAME›'],
    ['food flour of the mill\n  1 cup $0', '‹MEASURE› = GRAMS g'],
    ['food flour of the mill\n  1 cup = $0', 'MEASURE ‹= GRAMS g›'],
    ['food flour of the mill\n  price 1.40 per $0', 'price MONEY ‹per AMOUNT›'],
  ])('%j', (line, shown) => {
    expect(signatureAt(`recipe A\n${line}`)).toBe(shown);
  });

  it.each(['  pan round 24 x 3 cm # the old $0one', '  note Keeps $0well.', '  200 g $0 flour', '$0', '  pan$0'])(
    'nothing at %j',
    (line) => {
      expect(signatureAt(`recipe A\n${line}`)).toBeUndefined();
    },
  );
});

const CAKE = (step: string) => `recipe Cake
part base
  200 g     plain flour
  100 g     butter
  2 tsp     baking powder
  to taste  nutmeg
  do Rub half the butter into the flour.
  do ${step}
  do Melt the rest of the butter.
part top
  50 g      honey
  do $1
`;

describe('what is left while a step is typed', () => {
  it.each([
    ['at its beginning', '$0', 'left: butter 50 g, baking powder ≈ and nutmeg'],
    ['as it is typed', 'Stir in the baking powder and 20 g of the butter$0', 'left: butter 30 g and nutmeg'],
  ])('%s', (_when, step, shown) => {
    // 2 tsp of baking powder weigh what the book says of them, whatever that is.
    const found = signatureAt(CAKE(step).replace('$1', ''));
    expect(found?.replace(/baking powder [\d. to]+ g/, 'baking powder ≈')).toBe(shown);
  });

  it('names the parts that nobody has taken', () => {
    const top = CAKE('Stir.').replace('$1', '$0');
    expect(signatureAt(top)).toBe('left: honey 50 g and base');
    expect(signatureAt(top.replace('$0', 'Spread the honey over the base.$0'))).toBe('left: nothing');
  });

  it('comes up by itself only where the step begins', () => {
    expect(signatureAt(CAKE('$0').replace('$1', ''), true)).toBeDefined();
    expect(signatureAt(CAKE('Stir in $0').replace('$1', ''), true)).toBeUndefined();
    expect(signatureAt('recipe A\n  do $0')).toBeUndefined();
  });
});
