/**
 * Knows which words of a sentence mention an ingredient or a part, and the portion each takes.
 * Refuses to know amounts and what is left: a mention that several ingredients fit keeps them all.
 */
import type { Sentence, SentenceItem } from '../../notation/tree.ts';
import type { Listed, Mention, NamedRef, Portion, Run } from '../model.ts';
import { FUNCTION_WORDS, wordsOf } from '../words.ts';
import type { NameIndex } from './names.ts';
import { isDoneWith, isOrder, isOrderForLong, isVerbHere } from './names-as-verbs.ts';
import { portionBefore } from './portions.ts';
import type { RunList } from './run-list.ts';
import { isShape } from './shapes.ts';
import { indexFrom, indexWhere } from './sorted.ts';
import { SEASON, SINGULARS } from './sorts.ts';

/** What a run of words names. */
interface Meant {
  /** Of one part; none when a part is named. */
  readonly named: Listed['refs'];
  readonly part: number;
  /** By all words of their names. */
  readonly full: boolean;
  readonly longer: Listed['refs'];
  readonly weak: boolean;
  /** Items the run covers. */
  readonly items: number;
  readonly words: number;
}

/** The words of a sentence as they are compared, with the item each comes from. */
export interface Compared {
  readonly words: readonly string[];
  readonly items: readonly number[];
}

/** The mentions of a sentence in a part, from left to right; none overlaps another. The list is that of one step alone. */
export function findMentions(sentence: Sentence, part: number, names: NameIndex): readonly Mention[] {
  const { items } = sentence;
  const compared = compare(items);
  const found: Mention[] = [];
  let w = 0;
  while (w < compared.words.length) {
    const at = compared.items[w] as number;
    const item = items[at] as SentenceItem;
    let mention: Mention | undefined;
    if (item.kind === 'forced') {
      mention = forcedMention(items, at, part, names);
      w++;
    } else if (item.kind !== 'word') {
      w++;
    } else {
      mention = item.word === 'rest' ? bareRest(items, at, found) : undefined;
      const meant = mention === undefined ? longestRun(compared, w, part, names) : undefined;
      if (meant !== undefined && isWaterOf(compared, w + meant.words)) {
        w += meant.words + 1;
        continue;
      }
      if (meant !== undefined) mention = mentionOf(items, at, meant, part, found.at(-1));
      w += meant?.words ?? 1;
    }
    if (mention !== undefined) found.push(mention);
  }
  return found;
}

/** `A cup of the pasta water` takes neither the pasta nor the water that it was boiled in. */
const isWaterOf = ({ words }: Compared, at: number): boolean => words[at] === 'water' && words[at - 1] !== 'water';

/** The words that a sentence may mention something by, as they are compared. */
export function wordsSaid(sentence: Sentence): readonly string[] {
  return sentence.items.flatMap((item) =>
    item.kind === 'word' ? wordsOf(item.word) : item.kind === 'forced' ? wordsOf(item.name.text) : [],
  );
}

/** Whether a sentence has one of the words of a name, as they are compared. */
export const saysOneOf = (sentence: Sentence, words: ReadonlySet<string>): boolean =>
  wordsSaid(sentence).some((word) => words.has(word));

/** `… in half the oil, then brown the beef in the rest.`: of what the sentence last took a portion. */
function bareRest(items: readonly SentenceItem[], at: number, found: readonly Mention[]): Mention | undefined {
  const item = items[at];
  const before = items[at - 1];
  const after = items[at + 1];
  if (item?.kind !== 'word' || item.word !== 'rest' || before?.kind !== 'word' || before.word !== 'the')
    return undefined;
  if (after?.kind === 'word' && !['and', 'over', 'on', 'in', 'into', 'with', 'then', 'for', 'to'].includes(after.word))
    return undefined;
  const last = found.findLast(
    (m) =>
      m.ingredients.length > 0 &&
      (m.portion.kind === 'share' || m.portion.kind === 'amount' || m.portion.kind === 'some') &&
      !m.verb,
  );
  if (last === undefined) return undefined;
  const whole = { start: before.start, end: item.end };
  return {
    ...last,
    start: item.start,
    end: item.end,
    whole,
    portion: { kind: 'rest' },
    bare: true,
    forced: false,
    from: at,
    to: at,
  };
}

export function compare(items: readonly SentenceItem[]): Compared {
  const words: string[] = [];
  const from: number[] = [];
  for (let i = 0; i < items.length; i++) {
    const item = items[i] as SentenceItem;
    if (item.kind === 'word') {
      for (const word of wordsOf(item.word)) {
        words.push(word);
        from.push(i);
      }
    } else {
      // No name has an empty word, so that no run passes it.
      words.push('');
      from.push(i);
    }
  }
  return { words, items: from };
}

function longestRun(compared: Compared, from: number, part: number, names: NameIndex): Meant | undefined {
  const word = compared.words[from] ?? '';
  const runs = word === '' ? undefined : names.beginning(word);
  if (runs === undefined) return undefined;
  const strong = longestOf(runs.strong, false, compared, from, part);
  if (strong !== undefined && strong.part === part && strong.named.length > 0) return strong;
  const weak = longestOf(runs.weak, true, compared, from, part);
  if (strong !== undefined && strong.part !== part) {
    // The allspice is the allspice berries listed here, and not the ground allspice of the part above.
    const isHere = strong.named.length > 0 && weak?.part === part && weak.words >= strong.words;
    return isHere && weak.named.length === 1 && weak.named.every(({ shared }) => !shared) ? weak : strong;
  }
  // In a part `beef`, which does not name itself, the beef is the brisket on its list.
  return strong === undefined || (weak?.part === part && weak.words >= strong.words) ? weak : strong;
}

function longestOf(runs: RunList, weak: boolean, compared: Compared, from: number, part: number): Meant | undefined {
  const best = runs.longestAt(compared.words, from, (run) => isSeen(run, part));
  if (best === undefined) return undefined;
  const last = from + best.words.length - 1;
  const item = compared.items[last];
  // The run must end where a word of the sentence ends.
  if (item === undefined || compared.items[last + 1] === item) return undefined;
  const { refs, part: named, full, longer = NO_REFS } = narrow(best, part);
  const items = item - (compared.items[from] ?? 0) + 1;
  return { named: refs, part: named, full, longer, weak, items, words: best.words.length };
}

const isSeen = ({ lists, parts }: Run, part: number): boolean =>
  (lists[0]?.part ?? Number.POSITIVE_INFINITY) <= part || (parts[0] ?? Number.POSITIVE_INFINITY) <= part;

export function matches(words: readonly string[], said: readonly string[], from: number): boolean {
  for (let i = 1; i < words.length; i++) if (said[from + i] !== words[i]) return false;
  return true;
}

/** This part's ingredients first, then the name of the nearest part, then the ingredients of the nearest earlier part. */
function narrow({ lists, parts }: Run, part: number): Listed {
  const list = lists[indexWhere(lists, (l) => l.part > part) - 1];
  if (list?.part === part) return list;
  const named = parts[indexFrom(parts, part + 1) - 1];
  return named !== undefined
    ? { refs: NO_REFS, part: named, full: false }
    : (list ?? { refs: NO_REFS, part, full: false });
}

const NO_REFS: Listed['refs'] = [];

function mentionOf(
  items: readonly SentenceItem[],
  at: number,
  meant: Meant,
  part: number,
  previous: Mention | undefined,
): Mention | undefined {
  const { weak } = meant;
  const first = items[at];
  const to = at + meant.items - 1;
  const last = items[to];
  if (first === undefined || last === undefined) return undefined;
  const before = portionBefore(items, at);
  const named = longerSaid(items, at, meant) ?? asDescribed(items, at, inNumber(meant, isPlural(last), before.portion));
  const isPart = named.length === 0;
  const several = named.length > 1;
  const allOfIt = several && named.every(({ shared }) => shared);
  // `Roast at 325 F`, with a rib roast on the list.
  if (!isPart && meant.words === 1 && isOrderForLong(items, at)) return undefined;
  // A part does not name itself, and a weak name that fits several names none of them, unless it is a word for them all.
  if (isPart ? meant.part === part || isOrder(items, at, meant.words) : weak && several && !allOfIt) return undefined;
  if (isGivenOff(items[to + 1]) || isUsedWater(items, at)) return undefined;
  const one = meant.words === 1 && first.kind === 'word' ? first.word : '';
  // `The green tops` are no greens, and who seasons with something says so.
  if (
    weak &&
    !isPart &&
    named.every(({ shared }) => shared) &&
    (SINGULARS.has(one) || (one === SEASON && isDoneWith(items, at)))
  )
    return undefined;
  // `Slice the beef`, `cut into slices`: no sliced onion.
  if (weak && !isPart && isShape(wordsOf(one)[0] ?? '') && (!isPlural(last) || isResult(items, at))) return undefined;
  const verb = meant.words === 1 && !isPart && (isVerbHere(items, at) || (weak && one === SEASON));
  const inherited = inheritedPortion(items, before, at, previous);
  // `Mix the two cheeses`: all that are listed.
  const isCount = several && isPlural(last) && countOf(before.portion) === named.length;
  // `Half the walnut mixture` is of what they were mixed into.
  const next = items[to + 1];
  const isMixed = next?.kind === 'word' && next.word === 'mixture';
  const own: Portion = isCount ? { kind: 'all' } : isMixed ? { kind: 'plain' } : before.portion;
  const portion: Portion = verb ? { kind: 'some' } : (inherited ?? own);
  const from = verb || inherited !== undefined ? at : before.from;
  const { start } = first;
  const { end } = last;
  const every = allOfIt || (several && isPlural(last) && (portion.kind === 'all' || portion.kind === 'plain'));
  const whole = { start: Math.min(items[from]?.start ?? start, start), end };
  const ingredients = named.map(({ ref }) => ref);
  const mention = { start, end, portion, whole, forced: false, verb, weak, from: at, to, ingredients, every };
  return isPart ? { ...mention, part: meant.part } : mention;
}

/** The bare number that a portion is. */
function countOf(portion: Portion): number | undefined {
  if (portion.kind !== 'amount') return undefined;
  const { unit, count, low, high } = portion.measured.quantity;
  return unit === undefined && count === undefined && low === high ? low : undefined;
}

/** `Into thin slices`: what it is made. */
function isResult(items: readonly SentenceItem[], at: number): boolean {
  for (let i = at - 1; i >= at - 3; i--) {
    const item = items[i];
    if (item?.kind === 'mark') return false;
    if (item?.kind === 'word' && (item.word === 'into' || item.word === 'in')) return true;
  }
  return false;
}

/** `A cup of the bean liquid` takes no beans. */
const isGivenOff = (after: SentenceItem | undefined): boolean => after?.kind === 'word' && GIVEN_OFF.has(after.word);

/** `The cooking water` */
function isUsedWater(items: readonly SentenceItem[], at: number): boolean {
  const [before, item] = [items[at - 1], items[at]];
  return item?.kind === 'word' && item.word === 'water' && before?.kind === 'word' && USED.has(before.word);
}

const USED: ReadonlySet<string> = new Set(['cooking', 'soaking', 'poaching', 'blanching']);
const GIVEN_OFF: ReadonlySet<string> = new Set(['liquid', 'liquor', 'juices', 'soaking', 'poaching', 'cooking']);

/** With `4 eggs` and `1 egg` to glaze, `the egg` is the one and `the 4 eggs` are the others; `the eggs` may be all. */
function inNumber({ named, full }: Meant, plural: boolean, portion: Portion): Listed['refs'] {
  if (named.length < 2 || !full || (plural && portion.kind !== 'amount')) return named;
  const same = named.filter((each) => each.plural === plural);
  return same.length === 1 ? same : named;
}

/** `The lukewarm milk`, of `whole milk, lukewarm` and `milk`: the one whose line alone has the word before it. */
function longerSaid(items: readonly SentenceItem[], at: number, { named, longer }: Meant): Listed['refs'] | undefined {
  const item = items[at - 1];
  if (longer.length === 0 || item?.kind !== 'word' || FUNCTION_WORDS.has(item.word)) return undefined;
  const words = wordsOf(item.word);
  const isSo = ({ told }: NamedRef): boolean => words.every((word) => wordsOf(told).includes(word));
  const [only, ...more] = named.some(isSo) ? [] : longer.filter(isSo);
  return only === undefined || more.length > 0 ? undefined : [only];
}

/** `The melted butter`, of `cold butter` and `butter, melted`: the ones whose line has the word before it. */
function asDescribed(items: readonly SentenceItem[], at: number, named: Listed['refs']): Listed['refs'] {
  let left = named;
  // `The ground spices` are all the spices.
  if (named.every(({ shared }) => shared)) return named;
  for (let i = at - 1; left.length > 1; i--) {
    const item = items[i];
    if (item?.kind !== 'word' || FUNCTION_WORDS.has(item.word)) break;
    const words = wordsOf(item.word);
    const so = left.filter(({ told }) => words.every((word) => wordsOf(told).includes(word)));
    if (so.length > 0) left = so;
  }
  return left;
}

function isPlural(item: SentenceItem): boolean {
  return item.kind === 'word' && item.word.endsWith('s') && wordsOf(item.word).at(-1) !== item.word;
}

/** `half the butter and sugar` is half of both. */
function inheritedPortion(
  items: readonly SentenceItem[],
  before: { readonly portion: Portion; readonly determined: boolean },
  at: number,
  previous: Mention | undefined,
): Portion | undefined {
  if (previous === undefined || before.determined || before.portion.kind !== 'plain') return undefined;
  if (previous.portion.kind !== 'share' && previous.portion.kind !== 'some') return undefined;
  if (previous.verb || previous.to !== at - 2) return undefined;
  const join = items[at - 1];
  return join?.kind === 'word' && join.word === 'and' ? previous.portion : undefined;
}

/** The ingredient, or earlier part, that the bracketed words name exactly or by head noun. */
function forcedMention(
  items: readonly SentenceItem[],
  at: number,
  part: number,
  names: NameIndex,
): Mention | undefined {
  const item = items[at];
  if (item?.kind !== 'forced') return undefined;
  const words = wordsOf(item.name.text);
  const run = longestRun({ words, items: words.map((_, i) => i) }, 0, part, names);
  const meant = run !== undefined && run.words === words.length ? run : undefined;
  const before = portionBefore(items, at);
  const whole = { start: items[before.from]?.start ?? item.start, end: item.end };
  const mention = {
    start: item.start,
    end: item.end,
    portion: before.portion,
    whole,
    ingredients: (meant?.named ?? NO_REFS).map(({ ref }) => ref),
    forced: true,
    verb: false,
    weak: false,
    every: false,
    from: at,
    to: at,
  };
  return meant !== undefined && meant.named.length === 0 ? { ...mention, part: meant.part } : mention;
}
