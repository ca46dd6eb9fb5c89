/**
 * Knows how much solids a boiling syrup holds by its heat at sea level, and what cooks call the stages.
 * Refuses to know what the syrup is for.
 */
import data from '../../../data/sugar-boiling.json' with { type: 'json' };

const ROWS = data.solidsAtBoilingC.rows as unknown as readonly (readonly [number, number])[];

export const SUGAR_SOURCE: string = data.source;

/** Solids, as a share, of a sugar syrup that boils at so many °C; 0 below the first row of the table, the last beyond it. */
export function solidsAtBoiling(celsius: number): number {
  const above = ROWS.findIndex(([at]) => at >= celsius);
  const [high, highPercent] = ROWS[above] ?? ROWS.at(-1) ?? [0, 0];
  if (above < 0) return highPercent / 100;
  const before = ROWS[above - 1];
  if (before === undefined) return celsius < high ? 0 : highPercent / 100;
  const [low, lowPercent] = before;
  return (lowPercent + ((highPercent - lowPercent) * (celsius - low)) / (high - low)) / 100;
}

/** The stage of boiled sugar, `soft ball`; undefined between two. */
export function sugarStage(celsius: number): string | undefined {
  return data.stages.find(({ celsius: [low = 0, high = 0] }) => celsius >= low && celsius < high)?.name;
}
