/**
 * Knows from the words of a step whether food lies about: on what verb, where, and whether until the next day.
 * Refuses to know whether it may, and for how long.
 */

import { celsiusOf } from '../../notation/celsius.ts';
import type { SentenceItem } from '../../notation/tree.ts';
import type { Part, Step } from '../../recipe/recipe.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { asWritten, inAnyForm, isOn, says, wordList } from '../../recipe/step-words.ts';
import { baseForm } from '../../recipe/verbs.ts';
import { lying, lyingForm } from './lying-verbs.ts';
import { hasFlesh, isFlesh } from './perishable.ts';

/** `Until morning` is as long as overnight. */
export const NIGHT = asWritten('morning', 'night', 'breakfast', 'day', 'tomorrow');
const TILL: ReadonlySet<string> = new Set(['until', 'till', 'to']);
const DAYS: ReadonlySet<string> = new Set(['breakfast', 'day', 'tomorrow']);

const NEXT: ReadonlySet<string> = new Set(['next', 'following']);
const WHOLE: ReadonlySet<string> = new Set(['all', 'whole']);

/** `Until the next day`, `all day`; not `serve the next day`. */
export function isNight(items: readonly SentenceItem[], at: number): boolean {
  const word = wordAt(items, at);
  if (!isOn(NIGHT, word)) return false;
  if (!DAYS.has(word)) return true;
  const before = [1, 2, 3].map((back) => wordAt(items, at - back));
  const last = before[0] ?? '';
  if (word === 'day' && WHOLE.has(last)) return true;
  return before.some((w) => TILL.has(w)) && (word !== 'day' || NEXT.has(last));
}

const COLD: ReadonlySet<string> = new Set([
  'fridge',
  'refrigerator',
  'refrigerate',
  'refrigerated',
  'chill',
  'chilled',
  'chiller',
  'ice',
  'iced',
  'freezer',
  'freeze',
  'cold',
  'blast',
]);
const ROOM: ReadonlySet<string> = new Set([
  'room',
  'counter',
  'bench',
  'worktop',
  'table',
  'out',
  'sill',
  'stove',
  'ambient',
  'kitchen',
  'hob',
  'burner',
  'windowsill',
  'garage',
  'side',
  'sideboard',
  'dresser',
  'trestle',
  'sink',
  'range',
  'hearth',
  'hotplate',
  'board',
  'shed',
  'porch',
  'conservatory',
  'balcony',
  'doorstep',
  'outside',
  'outdoors',
  'hamper',
]);
/** In these lies what has its own acid or salt; raw meat does not keep by it. */
const STEEPED: ReadonlySet<string> = new Set(['marinate', 'brine', 'steep', 'soak', 'cure']);
/** Nor by thawing. */
const KEEPS_NO_FLESH: ReadonlySet<string> = new Set([...STEEPED, 'thaw', 'defrost']);
const COOLING = lying(
  'cool',
  'leave',
  'stand',
  'rest',
  'keep',
  'store',
  'hold',
  'sit',
  'set',
  'put',
  'park',
  'forget',
  'firm',
  'lie',
  'wait',
  'remain',
  'stay',
  'come',
  'submerge',
  'immerse',
  'sink',
  ...KEEPS_NO_FLESH,
);
const SIMMERING = inAnyForm(
  'simmer',
  'boil',
  'bubble',
  'bubbling',
  'blip',
  'cook',
  'braise',
  'stew',
  'poach',
  'steam',
  'bake',
  'roast',
  'smoke',
  'grill',
  'fry',
  'render',
  'reduce',
);
const BEFORE_ORDER: ReadonlySet<string> = new Set(['and', 'then', 'to', 'or', 'it', 'them']);

/** `Put the pot on the hob and simmer for 5 h`, `left simmering`: the time is how long it cooks. Not `leave the boiled rice`. */
function isOrderToCook(items: readonly SentenceItem[], at: number): boolean {
  const item = items[at];
  if (item?.kind !== 'word' || !isOn(SIMMERING, item.word)) return false;
  const before = items[at - 1];
  if (item.word.endsWith('ing')) return before?.kind === 'word' && !ARTICLES.has(before.word);
  return item.word === baseForm(item.word) && (before?.kind !== 'word' || BEFORE_ORDER.has(before.word));
}

const ARTICLES: ReadonlySet<string> = new Set([
  'the',
  'a',
  'of',
  'after',
  'from',
  'without',
  'stop',
  'stops',
  'finish',
]);
/** Without one of these before a time, the time is of something else. */
export const TELLING = wordList((word) => word === 'within' || COOLING.has(word));
/** Before it is cooked, or in something that keeps it. */
const OTHERWISE: ReadonlySet<string> = new Set([
  'marinate',
  'soak',
  'brine',
  'cure',
  'ferment',
  'prove',
  'proof',
  'rise',
  'thaw',
  'steep',
  'dry',
  'oven',
  'warm',
]);

/** A verb of lying about, and its place in the sentence. */
interface Lying {
  readonly word: string;
  readonly at: number;
}

/** Whether it cools in the room, or only lies there; undefined where it is kept hot or cold, cooks, or lies in what keeps it. */
export function whereItLies(step: Step, at: number, verb: Lying, part: Part): 'cools' | 'left out' | undefined {
  const { items } = step.sentence;
  const clause = clauseOf(items, at, verb.at);
  const raw = hasFlesh(part) && !namesNoFlesh(step, part);
  const otherwise = (w: string) => OTHERWISE.has(w) && !(raw && KEEPS_NO_FLESH.has(w));
  if (clause.some((w, i) => (COLD.has(w) && !isColdByItself(clause, i)) || otherwise(baseForm(w)))) return undefined;
  if (hasColdReading(items, at)) return undefined;
  if (verb.word === 'cool' || clause.some((w, i) => baseForm(w) === 'cool' && !isBox(clause, i))) return 'cools';
  return clause.some((w) => ROOM.has(w)) &&
    !(clause.some((w) => COOKERS.has(w)) && !says(step, OFF)) &&
    !isKeptHot(items, at)
    ? 'left out'
    : undefined;
}

/** `Soak the beans`, whatever meat goes in with them later. */
const namesNoFlesh = ({ mentions }: Step, { index, head: { ingredients } }: Part): boolean =>
  mentions.length > 0 &&
  mentions.every(
    (m) =>
      m.part === undefined &&
      m.ingredients.every((r) => {
        const of = r.part === index ? ingredients[r.ingredient] : undefined;
        const food = of && foodOf(of);
        return food !== undefined && !isFlesh(food);
      }),
  );

/** A slow cooker may stand on the counter, and a pot over a low flame on the stove. */
const COOKERS: ReadonlySet<string> = new Set(['cooker', 'slow-cooker', 'crockpot', 'crock-pot', 'simmering', 'low']);
const OFF = asWritten('off', 'unplug', 'unplugged');
const TURNS: ReadonlySet<string> = new Set(['go', 'goes', 'get', 'gets', 'turn', 'turns', 'until', 'till', 'stone']);

/** `Leave to go cold` in the room. */
const isColdByItself = (clause: readonly string[], at: number): boolean =>
  clause[at] === 'cold' && clause.some((w, i) => TURNS.has(w) && Math.abs(i - at) === 1);

/** A cool box and the sink are places. */
const isThing = (items: readonly SentenceItem[], at: number): boolean =>
  wordAt(items, at) === 'cool'
    ? BOXES.has(wordAt(items, at + 1))
    : wordAt(items, at) === 'sink' && ARTICLES.has(wordAt(items, at - 1));
const isBox = (clause: readonly string[], at: number): boolean =>
  BOXES.has(clause[at - 1] ?? '') || BOXES.has(clause[at + 1] ?? '');
const BOXES: ReadonlySet<string> = new Set(['box', 'boxes', 'bag', 'bags']);

/** The nearest verb of lying about before a duration; undefined when another verb stands nearer. */
export function verbOf(items: readonly SentenceItem[], at: number): Lying | undefined {
  for (let i = at - 1; i >= 0; i--) {
    const item = items[i];
    if (item?.kind === 'mark' && /[.;]/.test(item.mark)) return undefined;
    if (isOrderToCook(items, i)) return undefined;
    if (item?.kind === 'word' && isOn(COOLING, item.word) && !isThing(items, i))
      return { word: lyingForm(item.word), at: i };
  }
  return undefined;
}

/** The words about a duration: from its verb, or where its clause begins, to the clause's end. */
function clauseOf(items: readonly SentenceItem[], at: number, verbAt: number): string[] {
  const words: string[] = [];
  const take = (i: number): boolean => {
    const item = items[i];
    if (
      item === undefined ||
      (item.kind === 'mark' && /[.;,:]/.test(item.mark)) ||
      (item.kind === 'word' && item.word === 'then')
    )
      return false;
    if (item.kind === 'word') words.push(item.word);
    return true;
  };
  let first = at - 1;
  for (; first >= 0 && take(first); first--);
  // `Leave it on the bench until morning, about 10 h`: the place stands before a comma.
  for (; first >= verbAt; first--) {
    const item = items[first];
    if (item?.kind === 'word') words.push(item.word);
  }
  for (let i = at + 1; i < items.length && take(i); i++);
  return words;
}

const hasColdReading = (items: readonly SentenceItem[], at: number): boolean =>
  items.slice(Math.max(0, at - 4), at + 4).some((i) => i.kind === 'temperature' && celsiusOf(i).high <= 8);

/** `Set out at 65 C for 5 h`: whether that is hot enough is for `held-too-warm`. */
const HOT_C = 45;
const isKeptHot = (items: readonly SentenceItem[], at: number): boolean =>
  items.slice(Math.max(0, at - 2), at + 7).some((item, i) => {
    if (item.kind !== 'temperature' || celsiusOf(item).low < HOT_C) return false;
    const place = Math.max(0, at - 2) + i;
    const before = wordAt(items, place - 1);
    return before === 'above' || before === 'over' || (before === 'at' && place <= at + 2);
  });

export function wordAt(items: readonly SentenceItem[], i: number): string {
  const item = items[i];
  return item?.kind === 'word' ? item.word : '';
}
