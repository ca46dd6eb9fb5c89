/**
 * Knows what a temperature in a sentence is the temperature of: the oven, the food, or what is around it; and whose time a duration is.
 * Refuses to judge whether it is enough: that is for the checks.
 */

import type { Range } from '../measure/quantity.ts';
import { celsiusOf } from '../notation/celsius.ts';
import type { DurationNode, Sentence, SentenceItem, TemperatureNode } from '../notation/tree.ts';
import { baseForm, type VerbClass, verbClass } from './verbs.ts';

export type HeatRole =
  | 'oven'
  | 'food'
  /** A fridge, a proving place, a water bath. */
  | 'surroundings'
  /** Fat, syrup or liquid on the stove. */
  | 'liquid'
  | 'unknown';

export interface HeatReading {
  readonly node: TemperatureNode;
  readonly celsius: Range;
  readonly role: HeatRole;
  /** The nearest verb before it. */
  readonly verb?: string;
  readonly verbClass?: VerbClass;
  /** Where in the food: `centre`, `thickest part`. */
  readonly inside: boolean;
}

export interface TimeReading {
  readonly node: DurationNode;
  readonly verb?: string;
  readonly verbClass?: VerbClass;
}

export function readHeat(sentence: Sentence): HeatReading[] {
  const readings: HeatReading[] = [];
  sentence.items.forEach((item, at) => {
    // Nobody can say how hot `250 degrees` is: no check judges it.
    if (item.kind !== 'temperature' || item.unit === 'unsaid') return;
    const near = verbBefore(sentence.items, at);
    const inside = saysInside(sentence.items, at);
    readings.push({
      node: item,
      celsius: celsiusOf(item),
      role: roleOf(sentence.items, at, item, near, inside),
      ...near,
      inside,
    });
  });
  return readings;
}

export function readTimes(sentence: Sentence): TimeReading[] {
  const readings: TimeReading[] = [];
  sentence.items.forEach((item, at) => {
    if (item.kind !== 'duration' || isLimit(sentence.items, at)) return;
    readings.push({ node: item, ...verbBefore(sentence.items, at) });
  });
  return readings;
}

/** `within 2 h`, `up to 3 d`, `keeps 4 d`: a limit, and no time that the recipe takes. */
function isLimit(items: readonly SentenceItem[], at: number): boolean {
  const [before, earlier] = [items[at - 1], items[at - 2]];
  if (before?.kind !== 'word') return false;
  return (
    LIMITS.has(before.word) ||
    (before.word === 'to' && earlier?.kind === 'word' && earlier.word === 'up') ||
    (before.word === 'for' && earlier?.kind === 'word' && LIMITS.has(earlier.word))
  );
}

const LIMITS: ReadonlySet<string> = new Set(['within', 'keeps', 'keep', 'every', 'than', 'under']);

interface Near {
  readonly verb?: string;
  readonly verbClass?: VerbClass;
}

/** Words that look like verbs after these are none: `the heat`, `a boil`. */
const BEFORE_NOUNS = new Set([
  'the',
  'a',
  'an',
  'of',
  'in',
  'low',
  'medium',
  'high',
  'gentle',
  'full',
  'rolling',
  'its',
  'your',
  'with',
]);

const KEPT: ReadonlySet<string> = new Set(['keep', 'keeps', 'kept', 'hold', 'held', 'stay']);

/** What is creamed stands after the verb; `milk and cream to 60 C` is a list. */
const CREAMED: ReadonlySet<string> = new Set([
  'the',
  'together',
  'both',
  'all',
  'butter',
  'it',
  'until',
  'till',
  'well',
]);

/** `It can be kept at 50 C`: a verb of its own, whatever simmered before. */
const PAST: ReadonlyMap<string, string> = new Map([
  ['kept', 'keep'],
  ['held', 'hold'],
]);

/** The nearest verb before an item, in any clause of the sentence. */
function verbBefore(items: readonly SentenceItem[], at: number): Near {
  for (let i = at - 1; i >= 0; i--) {
    const item = items[i];
    if (item?.kind !== 'word') continue;
    const word = PAST.get(item.word) ?? item.word;
    const kind = verbClass(word);
    if (kind === undefined) continue;
    const before = items[i - 1];
    const after = items[i + 1];
    if (before?.kind === 'word' && BEFORE_NOUNS.has(before.word) && i > 0) continue;
    if (item.word === 'cream' && i > 0 && !(after?.kind === 'word' && CREAMED.has(after.word))) continue;
    // `keep warm` is keeping.
    if (before?.kind === 'word' && (item.word === 'warm' || item.word === 'cool') && KEPT.has(before.word)) continue;
    if (/(?:ed)$/.test(item.word) && before?.kind === 'word' && ['until', 'till', 'is', 'are'].includes(before.word))
      continue;
    return { verb: baseForm(word), verbClass: kind };
  }
  return {};
}

const READS = new Set([
  'reads',
  'read',
  'reading',
  'reaches',
  'reach',
  'reached',
  'registers',
  'register',
  'shows',
  'hits',
  'probe',
  'thermometer',
]);
const INSIDE = new Set([
  'centre',
  'center',
  'core',
  'inside',
  'internal',
  'middle',
  'thickest',
  'deepest',
  'internally',
  'thigh',
  'bone',
]);
const OVEN_WORDS = new Set(['oven', 'shelf']);
const AROUND = new Set([
  'fridge',
  'refrigerator',
  'freezer',
  'cellar',
  'room',
  'place',
  'cupboard',
  'bath',
  'prover',
  'larder',
  'cabinet',
  'walk-in',
  'icebox',
]);
const TINS: ReadonlySet<string> = new Set(['tin', 'tins', 'tray', 'moulds', 'molds']);
const LEAST_TIN_C = 190;
const FATS = new Set(['oil', 'fat', 'lard', 'dripping', 'fryer']);

function saysInside(items: readonly SentenceItem[], at: number): boolean {
  const after = collect(items, at, 1, 8);
  // `Roast at 200 C to an internal 74 C`: what stands right before another figure is said of that one.
  const own = leadsToAnother(items, at) ? [] : after;
  return collect(items, at, -1, 8).some((w) => INSIDE.has(w)) || own.some((w) => INSIDE.has(w));
}

function leadsToAnother(items: readonly SentenceItem[], at: number): boolean {
  for (let i = at + 1, words = 0; i < items.length && words < 8; i++) {
    const item = items[i];
    if (item?.kind === 'temperature') return true;
    if (item === undefined || endsClause(item)) return false;
    if (item.kind === 'word') words++;
  }
  return false;
}

const endsClause = (item: SentenceItem): boolean =>
  item.kind === 'mark'
    ? /[.;,:]/.test(item.mark)
    : item.kind === 'word' && (item.word === 'until' || item.word === 'till');

const STIRRING: ReadonlySet<string> = new Set(['stir', 'whisk']);
/** Below this a figure beside `roast to` or `fry to` is the food's. */
const LEAST_OVEN_C = 100;
/** `Bake at 120 C, then drop to 90 C`. */
const SETTING: ReadonlySet<string> = new Set(['drop', 'turn', 'reduce', 'lower', 'down', 'heat', 'temperature']);

function roleOf(
  items: readonly SentenceItem[],
  at: number,
  node: TemperatureNode,
  near: Near,
  inside: boolean,
): HeatRole {
  if (node.fan || node.unit === 'gas') return 'oven';
  const before = clauseBefore(items, at);
  const after = clauseAfter(items, at);
  const all = [...before, ...after];
  if (before.some((w) => READS.has(w)) || inside) return 'food';
  if (all.some((w) => OVEN_WORDS.has(w)) || near.verb === 'preheat') return 'oven';
  const previous = before.at(-1);
  if (before.includes('until') && previous !== 'at') return 'food';
  // `Grill to 62 C`, `roast at 200 C to 74 C`: no oven and no fat is that cool.
  const inFood =
    previous === 'to' && celsiusOf(node).high < LEAST_OVEN_C && !before.some((w) => SETTING.has(baseForm(w)));
  if (isLateSign(items, at, node) || isDoneAt(before, node)) return 'food';
  if (near.verbClass === 'oven') return inFood || (previous === 'to' && near.verb === 'reheat') ? 'food' : 'oven';
  if (all.some((w) => AROUND.has(w))) return 'surroundings';
  if (near.verbClass === 'cooling' || near.verbClass === 'resting')
    return (previous === 'to' && before.at(-2) !== 'set') || previous === 'below' || previous === 'under'
      ? 'food'
      : 'surroundings';
  if (near.verb === 'fry' || near.verb === 'deep-fry' || near.verb === 'shallow-fry') return inFood ? 'food' : 'liquid';
  // Fat in a tin is made hot in the oven, for a batter to go in.
  if (all.some((w) => FATS.has(w)))
    return celsiusOf(node).low >= LEAST_TIN_C && all.some((w) => TINS.has(w)) ? 'oven' : 'liquid';
  if (near.verbClass === 'stove')
    return previous === 'to' || previous === 'above' || previous === 'over' || before.includes('to')
      ? 'food'
      : 'liquid';
  if (
    ['turn', 'reduce', 'lower', 'raise', 'set', 'finish', 'drop'].includes(near.verb ?? '') &&
    celsiusOf(node).low >= 100
  )
    return 'oven';
  // `Cook, stirring, to 82 C`
  if (previous === 'to' && STIRRING.has(near.verb ?? '') && celsiusOf(node).high < LEAST_OVEN_C) return 'food';
  return 'unknown';
}

const DONE: ReadonlySet<string> = new Set(['done', 'ready', 'pull', 'pulled', 'remove']);

/** `The bird is done at 74 C`, `pull it at 63 C`. */
const isDoneAt = (before: readonly string[], node: TemperatureNode): boolean =>
  before.at(-1) === 'at' && before.slice(-3).some((w) => DONE.has(w)) && celsiusOf(node).high < LEAST_OVEN_C;

/** `Fry until golden, 74 C`: a figure by itself after a sign, and too cool for an oven or for fat. */
function isLateSign(items: readonly SentenceItem[], at: number, node: TemperatureNode): boolean {
  const comma = items[at - 1];
  if (comma?.kind !== 'mark' || comma.mark !== ',' || celsiusOf(node).high >= LEAST_OVEN_C) return false;
  const sign = collect(items, at - 1, -1, 8);
  return sign.includes('until') || sign.includes('till');
}

const clauseBefore = (items: readonly SentenceItem[], at: number): string[] => collect(items, at, -1, 10).reverse();
const clauseAfter = (items: readonly SentenceItem[], at: number): string[] => collect(items, at, 1, 6);

/** Words from an item outwards, until the clause ends. */
function collect(items: readonly SentenceItem[], at: number, step: 1 | -1, most: number): string[] {
  const words: string[] = [];
  for (let i = at + step; i >= 0 && i < items.length && words.length < most; i += step) {
    const item = items[i];
    if ((item?.kind === 'mark' && /[.;,:]/.test(item.mark)) || item?.kind === 'temperature') break;
    if (step > 0 && item !== undefined && endsClause(item)) break;
    if (item?.kind === 'word') words.push(item.word);
  }
  return words;
}
