/** Knows what is worked out of a wait in a cook's words. Refuses to work it out. */
import { gramsText, trimmed } from '../../measure/number-text.ts';
import type { Stay } from '../journey/bodies.ts';
import type { Recipe } from '../model.ts';
import { type CoolingStay, coolingOf } from './cooling.ts';
import { type RisingStay, risingOf } from './rising.ts';
import { type SettingStay, settingOf } from './setting.ts';
import { type ThawingStay, thawingOf } from './thawing.ts';

/** What is said of a stay, under which word; none where nothing can be worked out. */
export interface WaitSaid {
  readonly label: 'Cools' | 'Sets' | 'Thaws' | 'Rises';
  readonly words: string;
}

export function waitsSaid(recipe: Recipe, stay: Stay): readonly WaitSaid[] {
  const setting = settingOf(recipe, stay);
  const cooling = coolingOf(recipe, stay);
  const thawing = thawingOf(recipe, stay);
  const rising = risingOf(recipe, stay);
  return [
    ...(setting === undefined ? [] : [{ label: 'Sets', words: settingText(setting) } as const]),
    ...(cooling === undefined ? [] : [{ label: 'Cools', words: coolingText(cooling) } as const]),
    ...(thawing === undefined ? [] : [{ label: 'Thaws', words: thawingText(thawing) } as const]),
    ...(rising === undefined ? [] : [{ label: 'Rises', words: risingText(rising) } as const]),
  ];
}

/** `in about 4 h (3 h to 5 h): …` */
function settingText(setting: SettingStay): string {
  const { likely, minutes } = setting;
  return `in about ${timeText(likely)} (${timeText(minutes.low)} to ${timeText(minutes.high)}): ${settingRests(setting)}; an estimate: a thermometer decides`;
}

/** What that is worked out from. */
export function settingRests({ kg, depth, place, fromC, toC, more }: SettingStay): string {
  const after = more === 0 ? '' : `, and ${timeText(more)} more`;
  return `${gramsText(kg * 1000)} g, ${trimmed(depth * 100, 0)} cm deep, from ${fromC} to ${toC} °C in its middle ${placeText(place.name, place.celsius)}${after}`;
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
