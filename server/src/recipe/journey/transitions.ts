/**
 * Knows what each act does to what it is done to, as a table: whether bodies are put together, whether time passes, and where they then lie.
 * Refuses to know sentences and bodies.
 */
import type { Act, PlaceKind } from '../../prose/event.ts';

export interface Transition {
  /** All that it takes lies together afterwards. */
  readonly joins: boolean;
  /** What it takes of the list goes to what is being worked at, where it names nothing else. */
  readonly adds: boolean;
  /** Time that is said passes while it lies; `placed`: only where a place is said too. */
  readonly lies: 'yes' | 'placed' | 'no';
  /** Where it lies if nobody says. `as it lay`: where it is if that is cold, frozen or hot, else in a room; `ask`: nobody can tell. */
  readonly place: PlaceKind | 'as it lay' | 'ask';
  /** It is the food that is spoken of next. */
  readonly focus: boolean;
}

const row = (
  joins: boolean,
  adds: boolean,
  lies: Transition['lies'],
  place: Transition['place'] = 'as it lay',
  focus = true,
): Transition => ({ joins, adds, lies, place, focus });

export const TRANSITIONS: Readonly<Record<Act, Transition>> = {
  heat: row(true, false, 'no'),
  cool: row(false, false, 'yes', 'room'),
  freeze: row(false, false, 'yes', 'frozen'),
  thaw: row(false, false, 'yes', 'ask'),
  stay: row(false, false, 'yes'),
  rise: row(true, false, 'yes', 'room'),
  steep: row(true, true, 'yes', 'ask'),
  dry: row(false, false, 'yes'),
  smoke: row(true, false, 'yes', 'smoker'),
  pack: row(true, false, 'placed'),
  close: row(true, false, 'placed'),
  open: row(false, false, 'no'),
  cover: row(true, true, 'placed'),
  combine: row(true, true, 'placed'),
  divide: row(false, false, 'placed'),
  reserve: row(false, false, 'placed'),
  return: row(true, true, 'no'),
  remove: row(false, false, 'placed'),
  put: row(true, true, 'placed'),
  cut: row(false, false, 'placed'),
  mince: row(false, false, 'placed'),
  pierce: row(true, true, 'placed'),
  stuff: row(true, true, 'placed'),
  shape: row(true, false, 'placed'),
  ready: row(false, false, 'no', 'as it lay', false),
  read: row(false, false, 'no'),
  adjust: row(false, false, 'no', 'as it lay', false),
  eat: row(false, false, 'placed'),
  discard: row(false, false, 'no', 'as it lay', false),
  unknown: row(true, true, 'placed'),
};
