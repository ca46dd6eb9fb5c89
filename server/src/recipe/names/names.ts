/**
 * Knows every name a sentence may mention: the ingredients and the parts, by full name, head noun and food.
 * Refuses to know amounts, so that changing one leaves the mentions as they are.
 */
import type { Ingredient, NamedRef, PartHead, Run } from '../model.ts';
import { unreadLines } from '../part.ts';
import { type Call, type Calls, callsOf, callsOfPart, othersOf, yieldedBy } from './calls.ts';
import { RunList } from './run-list.ts';
import { indexFrom, indexWhere } from './sorted.ts';

/** The runs that begin with one word. Those named weakly count only where nothing else is named so. */
export interface Runs {
  readonly strong: RunList;
  readonly weak: RunList;
}

/** The names that the steps of each part can mention: its own and those of the parts before it. */
export class NameIndex {
  private heads: readonly PartHead[] = [];
  /** Which names begin with a word: the place of the only one, or all in ascending order. */
  private readonly places = new Map<string, number | number[]>();
  /** What was asked for so far: of most words nobody asks. */
  private readonly made = new Map<string, OpenRuns>();

  constructor(heads: readonly PartHead[]) {
    this.become(heads);
  }

  /** Takes the names of these parts in place of those it has; does again only what differs. */
  become(heads: readonly PartHead[]): void {
    const before = this.heads;
    this.heads = heads;
    if (before.length !== heads.length) {
      this.places.clear();
      this.made.clear();
      for (let part = 0; part < heads.length; part++) this.append(part);
      return;
    }
    for (let part = 0; part < heads.length; part++) {
      const [old, now] = [before[part], heads[part]];
      if (old !== now && old !== undefined && now !== undefined && !sameCalls(old, now)) this.replace(part, old, now);
    }
  }

  /** The runs that begin with the word, of all parts. */
  beginning(word: string): Runs | undefined {
    const places = this.places.get(word);
    if (places === undefined) return undefined;
    let runs = this.made.get(word);
    if (runs === undefined) {
      runs = this.make(word, places);
      this.made.set(word, runs);
    }
    return runs;
  }

  /** The next part below one that is called so, or has something that is: what is named above it is not meant there. */
  nextNaming({ words, isPart, weak }: ChangedRun, part: number): number | undefined {
    const runs = this.beginning(words[0] ?? '');
    const run = (weak ? runs?.weak : runs?.strong)?.of(words);
    if (run === undefined) return undefined;
    const named = run.parts[indexFrom(run.parts, part + 1)];
    if (isPart) return named;
    const listed = run.lists[indexWhere(run.lists, (list) => list.part > part)]?.part;
    return named === undefined || listed === undefined ? (named ?? listed) : Math.min(named, listed);
  }

  /** Every run, as long as all are wanted. */
  *all(): Generator<{ readonly run: Run; readonly weak: boolean }> {
    for (const word of this.places.keys()) {
      const runs = this.beginning(word);
      for (const run of runs?.strong.runs ?? []) yield { run, weak: false };
      for (const run of runs?.weak.runs ?? []) yield { run, weak: true };
    }
  }

  private append(part: number): void {
    const head = this.heads[part];
    if (head === undefined) return;
    for (const first of callsOfPart(head).keys()) this.put(first, part * MOST);
    for (let i = 0; i < head.ingredients.length; i++)
      for (const first of callsOf(head.ingredients[i] as Ingredient).keys()) this.put(first, part * MOST + i + 1);
  }

  private put(first: string, place: number): void {
    const places = this.places.get(first);
    if (places === undefined) this.places.set(first, place);
    else if (typeof places === 'number') this.places.set(first, [places, place]);
    else places.push(place);
  }

  private replace(part: number, old: PartHead, now: PartHead): void {
    const fresh = placesOf(now, part);
    for (const first of new Set([...placesOf(old, part).keys(), ...fresh.keys()])) {
      const known = this.places.get(first) ?? [];
      const all = typeof known === 'number' ? [known] : known;
      const places = fresh.get(first) ?? [];
      const from = indexFrom(all, part * MOST);
      all.splice(from, indexFrom(all, (part + 1) * MOST) - from, ...places);
      if (all.length === 0) this.places.delete(first);
      else this.places.set(first, all);
      const runs = this.made.get(first);
      if (runs !== undefined) exchange(runs, part, this.make(first, places));
    }
  }

  private make(word: string, places: number | readonly number[]): OpenRuns {
    const runs: OpenRuns = { strong: new RunList(), weak: new RunList() };
    if (typeof places === 'number') this.makeAt(places, word, runs);
    else for (const place of places) this.makeAt(place, word, runs);
    return runs;
  }

  private makeAt(place: number, word: string, runs: OpenRuns): void {
    const part = Math.floor(place / MOST);
    const head = this.heads[part] as PartHead;
    const ingredient = (place % MOST) - 1;
    const listed = head.ingredients[ingredient];
    const calls = listed === undefined ? callsOfPart(head) : callsOf(listed);
    const told = listed === undefined ? '' : toldOf(listed);
    for (const call of calls.get(word) ?? [])
      add(call.weak ? runs.weak : runs.strong, call, { part, ingredient, told });
  }
}

/** A run that names something else in a part than it did. */
export interface ChangedRun {
  readonly words: readonly string[];
  readonly weak: boolean;
  /** Whether it names, or named, the part itself. */
  readonly isPart: boolean;
}

/** The runs that name other things in a part than before. */
export function changedRuns(old: PartHead, now: PartHead): ChangedRun[] {
  const byWords = new Map<string, { readonly run: Run; readonly weak: boolean }>();
  for (const each of new NameIndex([old]).all()) byWords.set(keyOf(each), each);
  const changed: ChangedRun[] = [];
  for (const { run, weak } of new NameIndex([now]).all()) {
    const key = keyOf({ run, weak });
    const before = byWords.get(key)?.run;
    byWords.delete(key);
    const isPart = run.parts.length + (before?.parts.length ?? 0) > 0;
    if (before === undefined || !namesSame(run, before)) changed.push({ words: run.words, weak, isPart });
  }
  for (const { run, weak } of byWords.values()) changed.push({ words: run.words, weak, isPart: run.parts.length > 0 });
  return changed;
}

const keyOf = ({ run, weak }: { readonly run: Run; readonly weak: boolean }): string =>
  `${weak ? '~' : ''}${run.words.join(' ')}`;

/** Of two runs of one part. */
function namesSame(a: Run, b: Run): boolean {
  const [ours, theirs] = [a.lists[0], b.lists[0]];
  return (
    a.parts.length === b.parts.length && sameRefs(ours?.refs, theirs?.refs) && sameRefs(ours?.longer, theirs?.longer)
  );
}

const sameRefs = (ours: readonly NamedRef[] = [], theirs: readonly NamedRef[] = []): boolean =>
  ours.length === theirs.length && ours.every((named, i) => sameRef(named, theirs[i]));

const sameRef = (a: NamedRef, b: NamedRef | undefined): boolean =>
  a.ref.ingredient === b?.ref.ingredient && a.plural === b.plural && a.shared === b.shared && a.told === b.told;

/** A place is a part times this, and 1 and the index of its ingredient. No line of text has so many. */
const MOST = 2 ** 22;

function placesOf(head: PartHead, part: number): Map<string, number[]> {
  const places = new Map<string, number[]>();
  const put = (calls: Calls, place: number) => {
    for (const first of calls.keys()) {
      const known = places.get(first);
      if (known === undefined) places.set(first, [place]);
      else known.push(place);
    }
  };
  put(callsOfPart(head), part * MOST);
  head.ingredients.forEach((ingredient, i) => {
    put(callsOf(ingredient), part * MOST + i + 1);
  });
  return places;
}

interface OpenRun extends Run {
  readonly lists: { part: number; refs: NamedRef[]; full: boolean; longer?: NamedRef[] }[];
  readonly parts: number[];
}

interface OpenRuns extends Runs {
  readonly strong: RunList<OpenRun>;
  readonly weak: RunList<OpenRun>;
}

/** Puts what runs name in a part, and in no other, in the place of what they named there. */
function exchange(runs: OpenRuns, part: number, fresh: OpenRuns): void {
  for (const kind of ['strong', 'weak'] as const) {
    for (const run of runs[kind].runs) {
      const [list, named] = [indexWhere(run.lists, (l) => l.part >= part), indexFrom(run.parts, part)];
      if (run.lists[list]?.part === part) run.lists.splice(list, 1);
      if (run.parts[named] === part) run.parts.splice(named, 1);
    }
    for (const own of fresh[kind].runs) {
      const run = runs[kind].of(own.words);
      if (run === undefined) runs[kind].push(own);
      else {
        run.lists.splice(
          indexWhere(run.lists, (l) => l.part >= part),
          0,
          ...own.lists,
        );
        run.parts.splice(indexFrom(run.parts, part), 0, ...own.parts);
      }
    }
  }
}

const toldOf = ({ name, node: { preparation } }: Ingredient): string =>
  preparation === undefined ? name : `${name}, ${preparation.text}`;

interface Place {
  readonly part: number;
  /** Below 0 it is the part itself. */
  readonly ingredient: number;
  readonly told: string;
}

function add(runs: RunList<OpenRun>, call: Call, { part, ingredient, told }: Place): void {
  let run = runs.of(call.words);
  if (run === undefined) {
    run = { words: call.words, lists: [], parts: [] };
    runs.push(run);
  }
  if (ingredient < 0) {
    if (run.parts.at(-1) !== part) run.parts.push(part);
    return;
  }
  const named = {
    ref: { part, ingredient },
    plural: call.plural,
    shared: call.shared === true,
    borrowed: call.borrowed === true,
    told,
  };
  const last = run.lists.at(-1);
  if (last?.part !== part) run.lists.push({ part, refs: [named], full: call.full });
  else if (call.full && !last.full) {
    // A full name beats the last word of a longer one.
    last.full = true;
    last.longer = last.refs;
    last.refs = [named];
  } else if (last.full && !call.full) {
    last.longer = [...(last.longer ?? []), named];
  } else if (call.full === last.full && last.refs.at(-1)?.ref.ingredient !== ingredient) {
    const borrowed = last.refs.every((r) => r.borrowed);
    if (borrowed && !named.borrowed) last.refs = [named];
    else if (borrowed || !named.borrowed) last.refs.push(named);
  }
}

const sameCall = (a: Ingredient, b: Ingredient | undefined): boolean =>
  b !== undefined &&
  toldOf(a) === toldOf(b) &&
  a.food === b.food &&
  yieldedBy(a) === yieldedBy(b) &&
  othersOf(a).join() === othersOf(b).join();

/** Whether two lists are called the same, line by line. */
function sameCalls(a: PartHead, b: PartHead): boolean {
  if (hasSameList(a, b)) return true;
  return (
    a.name === b.name &&
    a.kind === b.kind &&
    a.ingredients.length === b.ingredients.length &&
    a.ingredients.every((one, i) => sameCall(one, b.ingredients[i]))
  );
}

/** One list is of two parts only where nothing but steps was changed from one to the other (`withSteps`). */
const hasSameList = (a: PartHead, b: PartHead): boolean => a.ingredients === b.ingredients;

/** Whether two lists name the same things. Preparation, note, kind and lines not read count too: a step may speak of what they name. */
export function sameNames(a: PartHead, b: PartHead): boolean {
  if (hasSameList(a, b)) return true;
  return (
    sameCalls(a, b) &&
    a.kindNode?.text === b.kindNode?.text &&
    unreadLines(a).join('\n') === unreadLines(b).join('\n') &&
    a.ingredients.every(({ node }, i) => {
      const other = b.ingredients[i]?.node;
      return node.preparation?.text === other?.preparation?.text && node.note?.text === other?.note?.text;
    })
  );
}
