/** Knows how much quicker or slower yeast works at a temperature. Refuses to know doughs. */

/** °C: gas comes quickest at 38 and slower above (Gisslen 2014); below the first and above the last nothing rises (fitted to rates of the trade, in the form of Rosso 1993; judgement). */
const LEAST = -5;
const BEST = 37;
const MOST = 46;

/** Against 25 °C, where it is 1. */
export const yeastRate = (celsius: number): number => rate(celsius) / rate(25);

function rate(t: number): number {
  if (t <= LEAST || t >= MOST) return 0;
  return (
    ((t - MOST) * (t - LEAST) ** 2) /
    ((BEST - LEAST) * ((BEST - LEAST) * (t - BEST) - (BEST - MOST) * (BEST + LEAST - 2 * t)))
  );
}
