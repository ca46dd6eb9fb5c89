/**
 * Knows what a text promises to those who must not eat a thing, and whether a food of the list keeps the promise.
 * Refuses to take what is negated, conditional or said of another dish for a promise.
 */
import data from '../../../data/claims.json' with { type: 'json' };
import { allergensOf } from '../../food/allergens.ts';
import { bookIdOf, type Composition, type Food } from '../../food/food.ts';
import { once } from '../../measure/once.ts';
import type { Span } from '../../notation/tree.ts';
import { wordsOf } from '../../recipe/words.ts';

export interface Claim {
  /** `gluten-free` */
  readonly claim: string;
  /** Where it is written down. */
  readonly rule: string;
  readonly nouns?: readonly string[];
  readonly said?: readonly string[];
  readonly allergens?: readonly string[];
  readonly classes?: readonly string[];
  readonly foods?: readonly string[];
  readonly except?: readonly string[];
  /** Grams in 100 g from which on a food breaks it. */
  readonly over?: Readonly<Partial<Record<keyof Composition, number>>>;
  readonly asks?: readonly string[];
  readonly askWords?: readonly string[];
  /** Allergens that a word of `askWords` does not excuse. */
  readonly askUnless?: readonly string[];
  readonly remarks?: readonly { readonly foods: readonly string[]; readonly words: string }[];
  readonly by?: readonly string[];
  /** What is said of a food that breaks it by what it is. */
  readonly breaks?: string;
}

export interface Claimed extends Span {
  readonly claim: Claim;
}

const CLAIMS: readonly Claim[] = data.claims;

/** Where a text makes a claim: of a title and a tag, or of prose, in which the words before a food are about that food. */
export function claimsIn(text: string, isFood?: (words: string) => boolean): readonly Claimed[] {
  return found(text, (span) => isMeant(text, span, isFood));
}

/** A claim in a step, where its sentence begins, and what stands behind it in its clause. */
export interface ClaimTold extends Claimed {
  readonly from: number;
  readonly after: string;
}

/** Where a step may tell of the dish that it keeps a claim; `no milk` is one only of what contains none. */
export function claimsToldIn(text: string): readonly ClaimTold[] {
  const isTold = (span: Span): boolean =>
    isMeant(text, span, undefined) &&
    (!LACKS.test(text.slice(span.start, span.end)) || UNSAID().holds.test(text.slice(0, span.start))) &&
    (!UNSAID().people.test(text.slice(span.start, span.end)) || UNSAID().suits.test(text.slice(0, span.start))) &&
    // `Vegan guests?`: of what is named behind it, and asked.
    UNSAID().goesOn.test(text.slice(span.end)) &&
    !ASKED.test(text.slice(span.end));
  return found(text, isTold).map((claimed) => ({
    ...claimed,
    from: sentenceFrom(text, claimed.start),
    after: text.slice(claimed.end),
  }));
}

const ASKED = /^[^.;!:]*\?/;
const LACKS = /^(?:no|without|not)\b/i;

function sentenceFrom(text: string, to: number): number {
  let from = 0;
  for (const match of text.slice(0, to).matchAll(SENTENCE_END)) from = match.index + match[0].length;
  return from;
}
const SENTENCE_END = /[.;!?:](?=\s)/gu;

function found(text: string, isSo: (span: Span) => boolean): readonly Claimed[] {
  if (!MAY_CLAIM.test(text)) return NONE;
  const words = compared(text);
  return PATTERNS().flatMap(({ claim, mayStandIn, pattern }): readonly Claimed[] => {
    if (!mayStandIn(words)) return NONE;
    for (const match of text.matchAll(pattern())) {
      const span = { start: match.index, end: match.index + match[0].length };
      if (isSo(span)) return [{ ...span, claim }];
    }
    return NONE;
  });
}

const NONE: readonly never[] = [];

const either = (words: readonly string[]): string =>
  words.map((word) => word.replaceAll(/[- ]/g, '[-\\s]').replaceAll("'", "['’]")).join('|');

/** A text in which a word is looked for before its pattern is made: each takes as long to make as a recipe to check. */
const compared = (text: string): string => text.toLowerCase().replaceAll(/[-\s]/g, ' ').replaceAll('’', "'");

// Letters of all scripts would make the patterns larger by far.
const LETTERS = 'A-Za-z\\u00c0-\\u024f';
const WORD = `[${LETTERS}'’]+`;
/** Between the things that something is free from. */
const LISTED = '(?:, (?:and |or )?|,? and |,? or | ?& ?| ?/ ?)';
/** How it is told that somebody may eat it, and up to which they are named. */
const SAFE_FOR = `(?:safe|fine|suitable|ok|okay|good|right|perfect|ideal) (?:for|with|to (?:give|serve)(?: to)?) (?:(?!(?:but|not?|except|unless) )${WORD},? ){0,8}`;
const END = `(?![${LETTERS}\\d])`;
const START = `(?<![${LETTERS}\\d])`;

interface Pattern {
  readonly claim: Claim;
  /** Whether a compared text has a word of it. */
  readonly mayStandIn: (words: string) => boolean;
  readonly pattern: () => RegExp;
  /** The same of what says of a line that it keeps the claim. */
  readonly mayKeepIn: (words: string) => boolean;
  readonly kept: () => RegExp;
}

const PATTERNS = once((): readonly Pattern[] =>
  CLAIMS.map((claim) => {
    const { nouns = [], said = [], by = [] } = claim;
    const words = [...nouns, ...said].map(compared);
    const keeping = by.map(compared);
    const source = once(() => sourceOf(nouns, said));
    const mayStandIn = (text: string): boolean => words.some((word) => text.includes(word));
    return {
      claim,
      mayStandIn,
      mayKeepIn: (text) => mayStandIn(text) || keeping.some((word) => text.includes(word)),
      pattern: once(() => new RegExp(source(), 'gi')),
      kept: once(() => new RegExp(by.length === 0 ? source() : `${source()}|${anyOf(by)}`, 'i')),
    };
  }),
);

function sourceOf(nouns: readonly string[], said: readonly string[]): string {
  const noun = either(nouns);
  const forms = [
    ...(noun === ''
      ? []
      : [
          `(?:${noun})[-\\s]?free`,
          `free (?:from|of) (?:any |all )?(?:${WORD}${LISTED}){0,5}(?:${noun})`,
          // `Without milk, eggs or nuts`; `no sugar and milk` is two things.
          `(?:without|no) (?:any )?(?:${WORD}, ){0,4}${WORD},? n?or (?:${noun})`,
          `(?:without|no) (?:any )?(?:${WORD}, ){0,4}(?:${noun})(?:, ${WORD}){0,3},? n?or ${WORD}`,
          `(?:without|no)[-\\s](?:any )?(?:${noun})`,
          `(?<=\\b(?:contains?|has|have|with) )neither (?:${WORD} nor )?(?:${noun})`,
          `not (?:an?|one|any) (?:${noun})(?= (?:in|is))`,
          `(?:${noun})[-\\s](?:allergy[-\\s])?(?:safe|friendly)`,
          // `Children with a nut allergy can have these`
          `(?:with (?:an? )?)?(?:${noun})[-\\s]allerg(?:y|ies|ics?) (?:too )?(?:can|may) (?:eat|have|enjoy)`,
          `${SAFE_FOR}(?:${noun})(?:,? (?:and|or) (?:${WORD} )?${WORD})?[-\\s](?:allerg(?:y|ies|ics?)|intoleran(?:t|ce))`,
          // `Safe for people allergic to nuts`, `suitable for anyone who cannot eat nuts`
          `${SAFE_FOR}(?:allergic|intolerant|sensitive) to (?:${WORD} (?:and|or) )?(?:${noun})(?: (?:and|or) ${WORD})?`,
          `${SAFE_FOR}(?:avoid(?:s|ing)?|cannot|can['’]t|don['’]t|doesn['’]t|must not|do not|does not) (?:${WORD} ){0,2}(?:${WORD} (?:and|or) )?(?:${noun})(?: (?:and|or) ${WORD})?`,
          // `dairy- and egg-free`, `nut, egg and dairy free`.
          `(?:${noun})-?(?:,\\s+${WORD}-?){0,3},?\\s*(?:and|&|/)\\s*${WORD}[-\\s]free`,
        ]),
    ...(said.length === 0 ? [] : [either(said)]),
  ];
  return `${START}(?:${forms.join('|')})${END}`;
}

/** Most texts make none. */
const MAY_CLAIM =
  /free|allerg|avoid|cannot|n['’]t\b|intoleran|\bnot\b|safe|friendly|neither|without|\bno\b|vegan|vegetarian|plant[-\s]based|c(?:o)?eliac|non-?\s?(?:dairy|alcohol)|less\b|halal|unsweet/i;

const { unsaid } = data;
const anyOf = (words: readonly string[]): string => `${START}(?:${either(words)})${END}`;
const UNSAID = once(() => ({
  before: new RegExp(anyOf(unsaid.before), 'i'),
  next: new RegExp(`${START}(?:${either(unsaid.next)})(?:\\s+(?:an?|the|our|some))?\\s*$`, 'i'),
  after: new RegExp(anyOf(unsaid.after), 'i'),
  people: new RegExp(`^(?:${either(unsaid.people)})$`, 'i'),
  suits: new RegExp(`${START}(?:${either(unsaid.suits)})(?:\\s+(?:all|any|the|our|your))?\\s*$`, 'i'),
  goesOn: new RegExp(`^(?:[^${LETTERS}]*$|\\s*[.,;:!)—–]|\\s+(?:${either(unsaid.goesOn)})${END})`, 'i'),
  holds: new RegExp(`${START}(?:${either(unsaid.holds)})\\s*$`, 'i'),
}));
/** What joins it to words before that are no claim makes it a claim about what follows alone: `fish and vegan chips`. */
const JOINED = new RegExp(`(?:^|[^${LETTERS}])(?:and|&|plus)\\s*$`, 'i');
const CLAUSE_END = /[.;!?:\n]|[,\s]but\s|\s[–—-]\s/gu;

function isMeant(text: string, { start, end }: Span, isFood: ((words: string) => boolean) | undefined): boolean {
  let from = 0;
  let to = text.length;
  for (const match of text.matchAll(CLAUSE_END)) {
    if (match.index + match[0].length <= start) from = match.index + match[0].length;
    else if (match.index >= end) {
      to = match.index;
      break;
    }
  }
  const before = text.slice(from, start);
  const after = text.slice(end, to);
  const not = UNSAID();
  if (not.before.test(before) || not.next.test(before) || not.after.test(behind(after))) return false;
  if (JOINED.test(before) && !startsClaim(text.slice(from, end), start - from)) return false;
  return isFood === undefined || !startsWithFood(after, isFood);
}

/** What is still about the claim: up to the next comma, with the words behind that. */
const behind = (after: string): string => /^[^,]*(?:,\s*\S+(?:\s+\S+)?)?/u.exec(after)?.[0] ?? '';

/** Another claim begins before it: `egg- and dairy-free`, `vegan and nut-free`. */
const startsClaim = (text: string, before: number): boolean => {
  const words = compared(text);
  return PATTERNS().some(({ mayStandIn, pattern }) => {
    const at = mayStandIn(words) ? text.search(pattern()) : -1;
    return at >= 0 && at < before;
  });
};

export function startsWithFood(after: string, isFood: (words: string) => boolean): boolean {
  // `Free from milk and egg` is no egg.
  if (!/^\s+(?!(?:and|or)\b)\p{L}/u.test(after)) return false;
  const [first = '', second = ''] = after.trim().split(/[^\p{L}\p{N}'’-]+/u);
  return isFood(first) || (second !== '' && isFood(`${first} ${second}`));
}

/** Whether the words of a line say of themselves that they keep it: `gluten-free soy sauce`, `vegan butter`. */
export function keepsIt(claim: Claim, line: string): boolean {
  const { mayKeepIn, kept } = BY_CLAIM().get(claim) ?? {};
  if (kept === undefined || mayKeepIn?.(compared(line)) !== true || !kept().test(line)) return false;
  return !NEGATED.test(line.replace(kept(), ''));
}

const NEGATED = new RegExp(`(?:^|[^${LETTERS}])(?:not|non|or)[^${LETTERS}]`, 'i');
const BY_CLAIM = once(() => new Map(PATTERNS().map((pattern) => [pattern.claim, pattern] as const)));

export type Verdict =
  | { readonly kind: 'keeps' }
  /** `contains milk` */
  | { readonly kind: 'breaks'; readonly why: string }
  | { readonly kind: 'asks'; readonly why: string };

const KEEPS: Verdict = { kind: 'keeps' };

/** Whether a food under a name keeps a claim. */
export function verdictOn(claim: Claim, food: Food, name: string): Verdict {
  const { allergens = NONE, classes = NONE, foods = NONE, except = NONE, over = {}, breaks = '' } = claim;
  if (except.includes(bookIdOf(food))) return KEEPS;
  const held = allergensHeld(food.allergens, allergens);
  const asked = isAsked(claim, food, name);
  if (held.length > 0 && !(asked && !held.some((name) => claim.askUnless?.includes(name))))
    return { kind: 'breaks', why: `contains ${held.join(', ')}` };
  if (classes.includes(food.class) || foods.includes(bookIdOf(food))) return { kind: 'breaks', why: breaks };
  for (const [component, least] of Object.entries(over) as [keyof Composition, number][]) {
    const share = food.per100[component] ?? 0;
    if (share >= least) return { kind: 'breaks', why: `has ${share} g of ${component} in 100 g` };
  }
  const remark = claim.remarks?.find((row) => row.foods.includes(bookIdOf(food)));
  if (remark !== undefined) return { kind: 'asks', why: remark.words };
  const label = food.allergens.label === undefined ? NONE : allergensHeld(food.allergens.label, allergens);
  if (label.length > 0) return { kind: 'asks', why: `may contain ${label.join(', ')}: its label tells` };
  if (asked) return { kind: 'asks', why: 'its label tells' };
  return food.allergens.unsaid === true && allergens.length > 0
    ? { kind: 'asks', why: 'nobody has said what it contains' }
    : KEEPS;
}

const isAsked = ({ asks = NONE, askWords = NONE }: Claim, food: Food, name: string): boolean =>
  asks.includes(bookIdOf(food)) || wordsOf(`${food.name} ${name}`).some((word) => askWords.includes(word));

/** In the words of the one law, or else of the other. */
function allergensHeld(
  { us, eu }: { readonly us: readonly string[]; readonly eu: readonly string[] },
  of: readonly string[],
): readonly string[] {
  const named = us.filter((name) => of.includes(name));
  return named.length > 0 ? named : eu.filter((name) => of.includes(name));
}

/** What a note tells that a dish contains. */
export interface ToldAllergens {
  readonly start: number;
  /** What is told, a name each, and what stands in brackets behind it. */
  readonly names: readonly string[];
  readonly beside: readonly string[];
  /** It is headed as a list, or says that there is none. */
  readonly isList: boolean;
}

export function allergensToldIn(note: string): ToldAllergens | undefined {
  const match = TELLS.exec(note);
  if (match === null) return undefined;
  const { none, label, of = '' } = match.groups ?? {};
  const outside = of.replaceAll(/\([^)]*\)?/g, ' ');
  const within = [...of.matchAll(/\(([^)]*)\)?/g)].map(([, words = '']) => words);
  const names = namesIn(outside);
  const isNone = none !== undefined || (label !== undefined && names.some((name) => TOLD_NONE.test(name)));
  // `Contains no milk` is a promise, and `Allergens: see the label` tells nothing.
  if (
    !isNone &&
    (TOLD_NONE.test(names[0] ?? '') || (label !== undefined && allergensOf(names).unknown.length > names.length / 2))
  )
    return undefined;
  return {
    start: match.index,
    names: isNone ? [] : names,
    beside: within.flatMap(namesIn),
    isList: isNone || label !== undefined,
  };
}

const namesIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/,|;|\/|&|\+|\band\b|\bor\b/)
    .map((name) => name.trim())
    .filter((name) => name !== '');

const TOLD_NONE = /^(?:no|none|nil|nothing|any)\b/;
const TELLS = new RegExp(
  '(?<=^ *note +|[.;!] +)(?:' +
    '(?<none>(?:(?:contains |has )?(?:no|none of)|free (?:from|of)) (?:(?:any|all|of|the|14|fourteen|declared|known|listed|major) )*allergens|allergen[- ]free)' +
    '|(?:(?<label>allerg(?:ens?|y|ies)(?: [a-z]+)?: ?(?:contains:? )?|contains: ?)|contains )(?<of>[^.]+))',
  'i',
);
