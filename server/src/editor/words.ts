/**
 * Knows how weights, shares and times are said to a cook.
 * Refuses to know where they are shown.
 */
import type { Weighed } from '../food/food.ts';
import { gramsText, percentRange, percentText, trimmed } from '../measure/number-text.ts';
import type { Range } from '../measure/quantity.ts';
import type { Line, Span } from '../notation/tree.ts';
import type { ShareOfSum } from '../recipe/measures/flour-shares.ts';

/** `120 g`, `120 to 150 g`, `1.2 kg`. */
export function sayGrams(grams: Range): string {
  if (grams.low >= 10_000) return `${span(grams, (g) => trimmed(g / 1000, 1))} kg`;
  return `${span(grams, gramsText)} g`;
}

/** A sum of weights; where it is not whole, what there is at least. */
export const saySum = ({ low, high, complete }: Range & { readonly complete: boolean }): string =>
  complete ? sayGrams({ low, high }) : `at least ${sayGrams({ low, high: low })}`;

/** The weight with the likeliest figure where it is not the middle: `120 to 150 g, likely 125 g`. */
export function sayWeight(weighed: Extract<Weighed, { known: true }>): string {
  const { grams, typical } = weighed;
  const likely = typical === undefined || gramsText(grams.low) === gramsText(grams.high) ? undefined : typical;
  return likely === undefined ? sayGrams(grams) : `${sayGrams(grams)}, likely ${gramsText(likely)} g`;
}

/** The likely share, and how far it may be off: `34 %`, `34 % (31 to 38 %)`. */
export function sayShare({ likely, range }: ShareOfSum): string {
  const spread = percentRange(range.low, range.high);
  const share = percentText(likely);
  return spread === share ? share : `${share} (${spread})`;
}

/** `65 % of the flour`; where a starter brings some too, `65 % of the flour listed, 60 % of all flour`. */
export function sayOfFlour(
  { listed, all }: { readonly listed: ShareOfSum; readonly all?: ShareOfSum },
  say: (share: ShareOfSum) => string = sayShare,
): string {
  return all === undefined
    ? `${say(listed)} of the flour`
    : `${say(listed)} of the flour listed, ${say(all)} of all flour`;
}

/** `35 to 40 min`, `45 min to 2 h`. */
export function sayMinutesRange(range: Range): string {
  return range.high < 90 && range.low >= 1 ? `${span(range, (min) => trimmed(min, 1))} min` : span(range, sayMinutes);
}

/** `45 min`, `1 h 30 min`, `2 d`. */
function sayMinutes(min: number): string {
  if (min < 1) return `${trimmed(min * 60, 0)} s`;
  if (min < 90) return `${trimmed(min, 1)} min`;
  if (min >= 48 * 60) return `${trimmed(min / 1440, 1)} d`;
  const hours = Math.floor(min / 60);
  const rest = Math.round(min - hours * 60);
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

export function span(range: Range, write: (n: number) => string): string {
  const low = write(range.low);
  const high = write(range.high);
  return low === high ? low : `${low} to ${high}`;
}

export const textOf = (line: Line, { start, end }: Span): string => line.text.slice(start, end);

export const listOf = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
