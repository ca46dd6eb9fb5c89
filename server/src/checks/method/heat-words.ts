/**
 * Knows how a check calls what is heated, and a time in a cook's words.
 * Refuses to judge.
 */
import { trimmed } from '../../measure/number-text.ts';
import type { NamedBy } from './written-heat.ts';

/** What is of no kind, as it is called. */
const CALLED: Readonly<Record<string, string>> = {
  any: 'any food',
  'any flesh': 'meat or fish',
  'any dough': 'a dough with yeast',
  'any batter': 'cake, pastry or biscuits',
  'any custard': 'a custard',
  'any fat': 'frying',
  'any fish': 'fish and shellfish',
  'any poultry': 'poultry',
  'any beating': 'beating',
  'any kneading': 'kneading',
  'any churning': 'churning',
  'any frying': 'frying in a pan',
  'any pot': 'a pot without meat',
  'any meat pot': 'a pot',
  'any pulse': 'dried beans',
  'any tough meat': 'a cut to stew',
  'any meat to shred': 'meat that is to come apart',
  'any large meat to shred': 'so large a piece that is to come apart',
  'any ice': 'ice cream that hardens',
  'any leaven': 'a starter',
  'any leftovers': 'what is warmed again',
  'any vegetable': 'vegetables and fruit',
  'any potato': 'potatoes',
  'any potato to drain': 'potatoes',
  'any rice to drain': 'rice',
  'any lentil to drain': 'lentils to drain',
  'any tender shellfish': 'shellfish',
  'any large fat': 'frying',
  'any rice': 'rice',
  'any pasta': 'pasta',
  'any egg': 'eggs',
  'any egg to peel': 'eggs to peel',
  'any yeast': 'yeast',
  'any culture': 'a live culture',
  'any chocolate': 'chocolate',
  'any cultured milk': 'milk with a culture in it',
};

/** `cookie`, `meringue or meat or fish`, `scone (taken from the title)` */
export function calledAs(of: string, by: NamedBy | undefined): string {
  const called = of
    .split(' or ')
    .map((each) => CALLED[each] ?? each)
    .join(' or ');
  return by === undefined ? called : `${called} (taken from ${by})`;
}

const HOUR = 60;
const DAY = 1440;

/** `45 s`, `40 min`, `2 h`, `1 h 30 min`, `3 days` */
export function spanText(minutes: number): string {
  if (minutes < 1) return `${trimmed(minutes * HOUR, 0)} s`;
  if (minutes >= 2 * DAY) return `${trimmed(minutes / DAY, 0)} days`;
  const hours = Math.floor(minutes / HOUR);
  const rest = Math.round(minutes - hours * HOUR);
  if (minutes < 2 * HOUR && rest > 0 && hours > 0) return `${hours} h ${rest} min`;
  return hours === 0 ? `${trimmed(minutes, minutes < 10 ? 1 : 0)} min` : `${trimmed(minutes / HOUR, 1)} h`;
}
