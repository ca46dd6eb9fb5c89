/**
 * Knows the kinds a part can be `as`, and the bands each is judged by.
 * Refuses to know the part: `measures.ts` works out its values.
 */

import batter from '../../../data/kinds/batter.json' with { type: 'json' };
import cake from '../../../data/kinds/cake.json' with { type: 'json' };
import custard from '../../../data/kinds/custard.json' with { type: 'json' };
import dough from '../../../data/kinds/dough.json' with { type: 'json' };
import ferment from '../../../data/kinds/ferment.json' with { type: 'json' };
import pastry from '../../../data/kinds/pastry.json' with { type: 'json' };
import preserve from '../../../data/kinds/preserve.json' with { type: 'json' };
import sauce from '../../../data/kinds/sauce.json' with { type: 'json' };
import savoury from '../../../data/kinds/savoury.json' with { type: 'json' };
import seasoning from '../../../data/kinds/seasoning.json' with { type: 'json' };
import sweet from '../../../data/kinds/sweet.json' with { type: 'json' };
import { onceByText } from '../../measure/once.ts';
import type { Range } from '../../measure/quantity.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Band, HouseBands, Kind, KindMeasure } from './kind.ts';

export const KINDS = [
  ...pastry,
  ...dough,
  ...cake,
  ...batter,
  ...custard,
  ...sweet,
  ...ferment,
  ...preserve,
  ...seasoning,
  ...sauce,
  ...savoury,
] as unknown as readonly Kind[];

const BY_NAME: ReadonlyMap<string, Kind> = new Map(
  KINDS.flatMap((kind) => [kind.name, ...(kind.also ?? [])].map((name) => [name.toLowerCase(), kind] as const)),
);

/** The kind that words name, in any case. Titles are asked about at every edit, and a folder repeats its kinds. */
export const kindNamed = onceByText(
  (words: string): Kind | undefined => BY_NAME.get(words.trim().toLowerCase().replace(/\s+/g, ' ')),
  { texts: 500 },
);

/** What a cook calls a part of a kind in a later step, whatever its name: `pour the custard into the case`. */
const CALLED: Readonly<Record<string, readonly string[]>> = {
  pastry: ['pastry', 'crust', 'case', 'shell', 'dough'],
  dough: ['dough'],
  cake: ['batter'],
  batter: ['batter'],
  custard: ['custard'],
  sauce: ['sauce'],
};

/** The kind's own names, and those of its family. */
export const callNames = ({ name, also = [], group, called = CALLED[group] ?? [] }: Kind): readonly string[] => [
  name,
  ...also,
  ...called,
];

const IN_HOUSE = keptOn<HouseBands, Map<string, Kind>>();

/** A kind with the house's bands in the place of its own; the implausible one is widened to hold them. */
export function kindInHouse(kind: Kind, bands: HouseBands | undefined): Kind {
  const own = bands?.[kind.name];
  if (bands === undefined || own === undefined) return kind;
  const kinds = IN_HOUSE.get(bands) ?? new Map<string, Kind>();
  IN_HOUSE.set(bands, kinds);
  let set = kinds.get(kind.name);
  if (set === undefined) {
    set = { ...kind, measures: kind.measures.map((m) => withBand(m, own[m.measure])) };
    kinds.set(kind.name, set);
  }
  return set;
}

function withBand(measure: KindMeasure, usual: Band | undefined): KindMeasure {
  if (usual === undefined) return measure;
  const [low, high] = measure.implausible;
  const widest = (a: number | null, b: number | null, pick: (...n: number[]) => number) =>
    a === null || b === null ? null : pick(a, b);
  const implausible: Band = [widest(low, usual[0], Math.min), widest(high, usual[1], Math.max)];
  return { ...measure, usual, implausible, source: 'this house: quern.json' };
}

export type Verdict = 'ok' | 'low' | 'high' | 'too low' | 'too high';

/**
 * Where a measure lies: outside is what surely is; how far, what it likely is. Where that is far past all that works, one end of the
 * range in the band is no comfort: a tablespoon was taken for a teaspoon.
 */
export function verdictOn({ value, likely }: { value: Range; likely?: Range }, measure: KindMeasure): Verdict {
  const sure = verdictOf(value.low, value.high, measure);
  if (likely === undefined || sure === 'too high' || sure === 'too low') return sure;
  const at = verdictOf(likely.low, likely.high, measure);
  if (at === `too ${sure}`) return at;
  const [worstLow, worstHigh] = measure.implausible;
  const isFar =
    (at === 'too high' && worstHigh !== null && likely.low > worstHigh * FAR) ||
    (at === 'too low' && worstLow !== null && likely.high < worstLow / FAR);
  return isFar ? at : sure;
}

/** Past the edge of what works by so many times: the spread of a heaped cup is less (USDA SR26: flour 120 to 150 g). */
const FAR = 1.25;

/** Where an interval of values lies: only what is wholly outside a band is called outside. */
export function verdictOf(low: number, high: number, measure: KindMeasure): Verdict {
  const [usualLow, usualHigh] = measure.usual;
  const [worstLow, worstHigh] = measure.implausible;
  if (worstHigh !== null && low > worstHigh) return 'too high';
  if (worstLow !== null && high < worstLow) return 'too low';
  if (usualHigh !== null && low > usualHigh) return 'high';
  if (usualLow !== null && high < usualLow) return 'low';
  return 'ok';
}
