/**
 * Knows of what a figure is that only the place tells where something lies.
 * Refuses to know the words beside it (`temperatures.ts`).
 */
import { type EventDraft, NO_TEMPERATURES } from './clauses.ts';
import type { Act, HeatOf, PlaceKind, TemperatureSaid } from './event.ts';

/** `Place in a cabinet, dial at 60 C`: a figure that nothing beside it is of is of the place that the clause before says. */
export function passFigures(event: EventDraft, before: EventDraft): void {
  if (event.act !== 'unknown' || before.temperatures.length > 0) return;
  if (event.where.length > 0 || event.temperatures.some(({ sure }) => sure !== 'unread')) return;
  const of = heatAt(before);
  if (of === undefined) return;
  before.temperatures = event.temperatures.map((said) => inferred(said, of));
  event.temperatures = NO_TEMPERATURES;
}

/** `dry at 45 C and finish at 60 C`, `bake at 220 C, then at 180 C`: a figure that nothing is named of is of what the one before is of. */
export function goOn(event: EventDraft, before: EventDraft): void {
  const of = before.temperatures.at(-1)?.of;
  if (of === undefined || of === 'food' || of === 'nothing' || !GOES_ON.has(event.act)) return;
  event.temperatures = event.temperatures.map((said) => inferred(said, of));
}

const GOES_ON: ReadonlySet<Act> = new Set(['adjust', 'heat', 'rise']);

export const inferred = (said: TemperatureSaid, of: HeatOf): TemperatureSaid =>
  said.sure === 'unread' ? { ...said, of, sure: 'inferred' } : said;

/** Of what a figure is that the place of an event has. */
export function heatAt({ where }: EventDraft): HeatOf | undefined {
  const place = where.find(({ way, not }) => !not && (way === 'at' || way === 'to'))?.is;
  return place && HEAT_AT[place];
}

/** Of what a figure is that a place is at. */
const HEAT_AT: Readonly<Partial<Record<PlaceKind, HeatOf>>> = {
  frozen: 'around',
  cold: 'around',
  cool: 'around',
  room: 'around',
  outdoors: 'around',
  warm: 'around',
  hot: 'around',
  oven: 'oven',
  bath: 'medium',
};
