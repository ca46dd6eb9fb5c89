/**
 * Knows how another size, other measures or other degrees are looked at, and how one goes back to the text.
 * Refuses to change the text.
 */
import type { Look } from '../../../publish/view/look.ts';
import { madeOf, ownDegrees, ownMeasures } from '../../../publish/view/own.ts';
import { lookedAt } from '../looked.ts';
import { type Act, numberIn, textIn } from './act.ts';

/** The most pieces that anybody looks at. */
const MOST_PIECES = 100_000;

/** Carries `{ to }`, or what the field holds. */
export const lookMakes: Act = ({ snapshot, arg, value, look }) => {
  const to = numberIn(arg, 'to') ?? (typeof value === 'number' ? value : undefined);
  const { recipe } = snapshot.whole;
  const text = madeOf(recipe);
  const { makes: _, makesOf: __, ...rest } = look;
  if (text === undefined) return { refused: 'The text does not say one number of what it makes.' };
  if (to === undefined || !(to > 0) || to > MOST_PIECES) return { look: rest };
  if (to === text) return { look: rest };
  const wish: Look = { ...rest, makes: to, makesOf: text };
  const { why } = lookedAt(snapshot.whole, wish);
  return why === undefined ? { look: wish } : { refused: why };
};

/** Carries `{ to }`: `weight-first` or `measure-first`. */
export const lookMeasures: Act = ({ snapshot, arg, look }) => {
  const to = textIn(arg, 'to');
  const { measures: _, ...rest } = look;
  const wanted = to === 'weight-first' || to === 'measure-first' ? to : undefined;
  return {
    look: wanted === undefined || wanted === ownMeasures(snapshot.whole.recipe) ? rest : { ...rest, measures: wanted },
  };
};

/** Carries `{ to }`: `C` or `F`. */
export const lookDegrees: Act = ({ snapshot, arg, look }) => {
  const to = textIn(arg, 'to');
  const { degrees: _, ...rest } = look;
  const wanted = to === 'C' || to === 'F' ? to : undefined;
  return {
    look: wanted === undefined || wanted === ownDegrees(snapshot.whole.recipe) ? rest : { ...rest, degrees: wanted },
  };
};

/** Carries `{ to }`: `cooked`, or as the food goes in. */
export const lookCooked: Act = ({ arg, look: { cooked: _, ...rest } }) => ({
  look: textIn(arg, 'to') === 'cooked' ? { ...rest, cooked: true } : rest,
});

/** To what the text says. */
export const lookBack: Act = ({ look: { makes: _, makesOf: __, measures: ___, degrees: ____, ...rest } }) => ({
  look: rest,
});
