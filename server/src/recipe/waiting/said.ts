/** Knows what is worked out of a wait in a cook's words. Refuses to work it out. */
import { trimmed } from '../../measure/number-text.ts';
import type { Stay } from '../journey/bodies.ts';
import type { Recipe } from '../model.ts';
import { type CoolingStay, coolingOf } from './cooling.ts';
import { type RisingStay, risingOf } from './rising.ts';
import { type ThawingStay, thawingOf } from './thawing.ts';

/** What is said of a stay, under which word; none where nothing can be worked out. */
export interface WaitSaid {
  readonly label: 'Cools' | 'Thaws' | 'Rises';
  readonly words: string;
}

export function waitSaid(recipe: Recipe, stay: Stay): WaitSaid | undefined {
  const cooling = coolingOf(recipe, stay);
  if (cooling !== undefined) return { label: 'Cools', words: coolingText(cooling) };
  const thawing = thawingOf(recipe, stay);
  if (thawing !== undefined) return { label: 'Thaws', words: thawingText(thawing) };
  const rising = risingOf(recipe, stay);
  return rising && { label: 'Rises', words: risingText(rising) };
}

const DEPTHS: Readonly<Record<CoolingStay['by'], string>> = { said: '', tin: ' in its tin', pot: ' as one pot' };

function coolingText({ kg, depth, by, place, fromC, passes }: CoolingStay): string {
  const when = passes
    .map(
      ({ celsius, cooled: { likely, range } }) =>
        `to ${celsius} °C in about ${timeText(likely)} (${timeText(range.low)} to ${timeText(range.high)})`,
    )
    .join(', ');
  return `in the middle from ${fromC} °C ${when}, from ${trimmed(kg, 1)} kg, ${trimmed(depth * 100, 0)} cm deep${DEPTHS[by]}, ${placeText(place.name, place.celsius)}; an estimate: a thermometer decides`;
}

const thawingText = ({ kg, place, celsius, minutes }: ThawingStay): string =>
  `through in ${timeText(minutes.low)} to ${timeText(minutes.high)}, from ${trimmed(kg, 1)} kg in one piece, ${placeText(place, celsius)}; an estimate: a thermometer decides`;

function risingText({ percent, celsius, rate, likely, minutes, coolsFirst }: RisingStay): string {
  const works = Math.abs(rate - 1) < 0.05 ? '' : `, where it works ${trimmed(rate, 2)} times as fast as at 25 °C`;
  const cools = coolsFirst ? '; a warm dough rises on until it is cold, in 2 to 4 h for 1 kg' : '';
  return `likely to double in about ${timeText(likely)} (${timeText(minutes.low)} to ${timeText(minutes.high)}), from ${trimmed(percent, 2)} % of instant yeast on the flour at ${trimmed(celsius, 0)} °C${works}${cools}; an estimate: the dough decides`;
}

const placeText = (name: string, celsius: number): string =>
  `${name === 'cold water' ? 'in cold water' : name === 'ice bath' ? 'in an ice bath' : `in a ${name}`} at ${trimmed(celsius, 0)} °C`;

/** Rounded as far as it is known: `45 min`, `2.5 h`, `3 days`. */
export function timeText(minutes: number): string {
  if (minutes < 90) return `${Math.max(5, Math.round(minutes / 5) * 5)} min`;
  if (minutes < 36 * 60)
    return `${trimmed(minutes < 600 ? Math.round(minutes / 30) / 2 : Math.round(minutes / 60), 1)} h`;
  return `${trimmed(Math.round(minutes / 720) / 2, 1)} days`;
}
