/**
 * Knows which parts are called by their names before they stand (`fill with the filling`, whose part comes below), and in which order parts
 * are made then: what is called for comes first.
 * Refuses to know ledgers: what is below is taken from no list.
 */
import { keptOn } from '../../notation/kept.ts';
import type { Mention, Part, Recipe, Step } from '../model.ts';
import { type Call, callsOfName } from '../names/calls.ts';
import { compare, matches } from '../names/mentions.ts';
import { isOrder } from '../names/names-as-verbs.ts';
import { portionBefore } from '../names/portions.ts';
import { calledName } from '../names/title.ts';
import { listedNames } from '../part.ts';

/** A way to call a part. */
interface Named {
  readonly call: Call;
  readonly part: number;
}

/** The ways to call all parts of a recipe, by first word. */
interface Names {
  readonly key: string;
  readonly byFirst: ReadonlyMap<string, readonly Named[]>;
  /** Parts by the name that a line of a list may have. */
  readonly byLine: ReadonlyMap<string, readonly number[]>;
}

/** On what an edit hands on that calls no part anew. */
const NAMES = keptOn<Recipe['byName'], Names>();

function namesOf({ parts, byName }: Recipe): Names {
  let names = NAMES.get(byName);
  if (names === undefined) {
    names = namesIn(parts.map(({ head }) => head.name));
    NAMES.set(byName, names);
  }
  return names;
}

function namesIn(all: readonly string[]): Names {
  const byLine = new Map<string, number[]>();
  const byFirst = new Map<string, Named[]>();
  for (const [part, name] of all.entries()) {
    if (name !== '') {
      const called = calledName(name).toLowerCase();
      byLine.set(called, [...(byLine.get(called) ?? []), part]);
    }
    for (const [first, calls] of callsOfName(name)) {
      const named = calls.filter(({ weak }) => !weak).map((call) => ({ call, part }));
      byFirst.set(first, [...(byFirst.get(first) ?? []), ...named]);
    }
  }
  return { key: all.join('\n'), byFirst, byLine };
}

interface Kept {
  readonly key: string;
  readonly index: number;
  readonly takers: string;
  readonly step: Step;
}

const KEPT = keptOn<Step, Kept>();

/** The step with what it calls by the name of a part below; the same object where it calls none. */
function withAhead(step: Step, index: number, names: Names, takers: readonly number[]): Step {
  const kept = KEPT.get(step);
  const by = takers.join(' ');
  if (kept?.key === names.key && kept.index === index && kept.takers === by) return kept.step;
  const ahead = aheadIn(step, index, names, takers);
  const now = ahead.length === 0 ? step : { ...step, mentions: merged(step.mentions, ahead) };
  KEPT.set(step, { key: names.key, index, takers: by, step: now });
  return now;
}

function aheadIn(
  { sentence: { items }, mentions }: Step,
  index: number,
  { byFirst }: Names,
  takers: readonly number[],
): readonly Mention[] {
  const found: Mention[] = [];
  const said = compare(items);
  for (let w = 0; w < said.words.length; w++) {
    let best: Named | undefined;
    for (const named of byFirst.get(said.words[w] as string) ?? []) {
      const { words } = named.call;
      // `Line a tart tin`: the tart that takes this pastry is no part of it.
      if (named.part <= index || takers.includes(named.part)) continue;
      if (words.length > (best?.call.words.length ?? 0) && matches(words, said.words, w)) best = named;
    }
    if (best === undefined) continue;
    const from = said.items[w] as number;
    const to = said.items[w + best.call.words.length - 1] as number;
    const [first, end] = [items[from], items[to]];
    // `The peanut sauce` is no fish sauce.
    const isTaken = mentions.some((m) => m.from <= to && m.to >= from && m.to - m.from >= to - from);
    if (first === undefined || end === undefined || isTaken || isOrder(items, from, best.call.words.length)) continue;
    const before = portionBefore(items, from);
    const span = { start: first.start, end: end.end };
    found.push({
      ...span,
      portion: before.portion,
      whole: { ...span, start: Math.min(items[before.from]?.start ?? first.start, first.start) },
      ingredients: [],
      part: best.part,
      forced: false,
      verb: false,
      weak: false,
      every: false,
      from,
      to,
    });
    w += best.call.words.length - 1;
  }
  return found;
}

const merged = (mentions: readonly Mention[], ahead: readonly Mention[]): readonly Mention[] =>
  [...mentions.filter((m) => !ahead.some((of) => m.from <= of.to && m.to >= of.from)), ...ahead].sort(
    (one, other) => one.start - other.start,
  );

/** A part, with its steps as they call parts above and below. */
export interface Placed {
  readonly part: Part;
  readonly steps: readonly Step[];
}

const ALONE = keptOn<Part, Placed>();

function alone(part: Part): Placed {
  let placed = ALONE.get(part);
  if (placed === undefined) {
    placed = { part, steps: part.steps };
    ALONE.set(part, placed);
  }
  return placed;
}

interface Known {
  readonly names: Names;
  readonly takers: readonly number[];
  readonly placed: Placed;
  /** Parts below that it calls for, by steps and by lines. */
  readonly calls: readonly number[];
}

const KNOWN = keptOn<Part, Known>();
const NONE: readonly number[] = [];

const NAMED = keptOn<Part, readonly number[]>();

/** The parts above that the steps of one name. */
function namedBy(part: Part): readonly number[] {
  let named = NAMED.get(part);
  if (named === undefined) {
    const found = new Set<number>();
    for (const { mentions } of part.steps)
      for (const { part: of, weak } of mentions) if (of !== undefined && !weak) found.add(of);
    named = found.size === 0 ? NONE : [...found];
    NAMED.set(part, named);
  }
  return named;
}

/** By part those below that name it in their steps. */
function takersIn(parts: readonly Part[]): readonly (readonly number[])[] {
  const takers: number[][] = parts.map(() => []);
  for (const part of parts) for (const of of namedBy(part)) if (of < part.index) takers[of]?.push(part.index);
  return takers;
}

const isSame = (a: readonly number[], b: readonly number[]): boolean =>
  a === b || (a.length === b.length && a.every((each, i) => each === b[i]));

function known(part: Part, names: Names, takers: readonly number[], isLast: boolean): Known {
  const kept = KNOWN.get(part);
  if (kept?.names === names && isSame(kept.takers, takers)) return kept;
  const { index, head } = part;
  const steps = isLast ? part.steps : part.steps.map((step) => withAhead(step, index, names, takers));
  const bySteps = steps.flatMap(({ mentions }) => mentions.flatMap(({ part: of }) => of ?? NONE));
  const byLines = [...listedNames(head).keys()].flatMap((name) => names.byLine.get(name) ?? NONE);
  const calls = [...bySteps, ...byLines.toSorted((a, b) => a - b)].filter((of) => of > index);
  const isAsBefore = kept?.placed.steps.every((step, i) => step === steps[i]) === true;
  const now = { names, takers, placed: isAsBefore ? kept.placed : { part, steps }, calls };
  KNOWN.set(part, now);
  return now;
}

/** The parts in the order in which they are made: as they stand, but what one calls for before it. */
export function inOrder(recipe: Recipe): readonly Placed[] {
  const { parts } = recipe;
  if (parts.length < 2) return parts.map(alone);
  const names = namesOf(recipe);
  const takers = takersIn(parts);
  const placed: Placed[] = [];
  const begun = new Set<number>();
  const make = (index: number): void => {
    const part = parts[index];
    if (part === undefined || begun.has(index)) return;
    begun.add(index);
    const { calls, placed: own } = known(part, names, takers[index] ?? NONE, index === parts.length - 1);
    for (const of of calls) make(of);
    placed.push(own);
  };
  parts.forEach((_, index) => {
    make(index);
  });
  return placed;
}

/** The parts that others call for above them, by number. */
export function calledAhead(recipe: Recipe): ReadonlySet<number> {
  const { parts } = recipe;
  if (parts.length < 2) return new Set();
  const names = namesOf(recipe);
  const takers = takersIn(parts);
  return new Set(
    parts.flatMap((part, index) => known(part, names, takers[index] ?? NONE, index === parts.length - 1).calls),
  );
}

/** Those of them that steps name, and no list: what a list takes in may well stand below it. */
export function usedAhead(recipe: Recipe): ReadonlySet<number> {
  const used = new Set<number>();
  if (recipe.parts.length < 2) return used;
  for (const { part, steps } of inOrder(recipe))
    for (const { mentions } of steps)
      for (const { part: of } of mentions) if (of !== undefined && of > part.index) used.add(of);
  const { byLine } = namesOf(recipe);
  for (const { head } of recipe.parts)
    for (const name of listedNames(head).keys()) for (const of of byLine.get(name) ?? NONE) used.delete(of);
  return used;
}
