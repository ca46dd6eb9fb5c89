/**
 * Knows whose cup, pint or spoon a house measures by.
 * Refuses to know how much it holds: the unit does.
 */

/** Whose cup, pint or spoon it is. */
export type MeasureSystem = 'US' | 'metric' | 'imperial' | 'Australian';

/** The systems a house measures by: of each unit it takes the first that has one. Where a cup is metric, a pint is imperial. */
export const SYSTEMS = {
  us: ['US'],
  metric: ['metric', 'imperial'],
  british: ['metric', 'imperial'],
  australian: ['Australian', 'metric', 'imperial'],
  canadian: ['metric', 'imperial'],
  imperial: ['imperial', 'metric'],
} as const satisfies Readonly<Record<string, readonly MeasureSystem[]>>;

/** What a cup, pint or spoon holds depends on the house. */
export type Measures = keyof typeof SYSTEMS;

/** Every house there is, the default first. */
export const MEASURES_CHOICES = Object.keys(SYSTEMS) as readonly Measures[];
