/**
 * Knows how the parts of a recipe are bound together: what later parts take of each, what each takes in, and the oven it begins with.
 * After an edit only the parts it reached are made again; the others are the same objects, so that findings can hang on them.
 */
import { eachInPieces, type InPieces } from '../measure/in-pieces.ts';
import { once } from '../measure/once.ts';
import { settle } from './ledger.ts';
import type { OutsideUse, OvenSetting, Part, PartHead, Use, World } from './model.ts';
import { NameIndex, sameNames } from './names/names.ts';
import { NO_REACH, PartWords, reachOf, saysChanged } from './names/reach.ts';
import { calledName } from './names/title.ts';
import { listedNames } from './part.ts';
import { type BoundSteps, bindSteps, NO_USES, sameItems } from './steps.ts';

/** The parts of a recipe with what an edit needs to bind them again. */
export interface Bound {
  readonly parts: readonly Part[];
  readonly heads: readonly PartHead[];
  readonly steps: readonly BoundSteps[];
  /** What later parts take of each part, in order. */
  readonly later: readonly (readonly OutsideUse[])[];
  /** The oven in force when each part begins. */
  readonly ovens: readonly (OvenSetting | undefined)[];
  /** Handed on from edit to edit, and brought up to date by each. */
  readonly names: NameIndex;
  readonly words: PartWords;
  /** The parts with a line that may take from an earlier one, in order. */
  readonly taking: readonly number[];
  /** The last part of each name, in lower case. */
  readonly byName: () => ReadonlyMap<string, number>;
}

/** The parts of these heads; `oven` is the one given above them. `before` lends what has not changed. */
export function* bindParts(
  heads: readonly PartHead[],
  oven: OvenSetting | undefined,
  world: World,
  before: Bound | undefined,
): InPieces<Bound> {
  return before?.heads.length === heads.length
    ? bindAgain(heads, oven, world, before)
    : yield* bindAll(heads, oven, world, before);
}

function* bindAll(
  heads: readonly PartHead[],
  oven: OvenSetting | undefined,
  world: World,
  before: Bound | undefined,
): InPieces<Bound> {
  const names = new NameIndex(heads);
  // What stands above the first part that differs sees the names that it saw.
  let same = 0;
  while (same < heads.length && heads[same] === before?.heads[same]) same++;
  const steps = yield* eachInPieces(
    heads,
    (_, i) => (i < same ? before?.steps[i] : undefined) ?? bindSteps(i, heads, names),
  );
  const frame: Frame = {
    heads,
    steps,
    later: usesOutside(steps),
    ovens: ovensBefore(steps, oven),
    names,
    words: new PartWords(),
    taking: indexesOf(heads, isTaking),
    byName: once(() => indexByName(heads)),
  };
  const isCalledAnew = saysChanged(before?.heads ?? heads, heads);
  const parts = yield* eachInPieces(heads, (_, i) => {
    const now = frameOf(i, frame);
    const old = before?.parts[i];
    const stands = old !== undefined && isSamePart(old, now) && !isCalledAnew(steps[i] as BoundSteps);
    return stands ? old : settled(now, frame, world);
  });
  return { ...frame, parts };
}

/** As many parts as before: what an edit in a line leaves. The others are not even looked at. */
function bindAgain(heads: readonly PartHead[], oven: OvenSetting | undefined, world: World, before: Bound): Bound {
  const { names, words } = before;
  const changed = indexesOf(heads, (head, i) => head !== before.heads[i]);
  const renamed = changed.filter((i) => !sameNames(before.heads[i] as PartHead, heads[i] as PartHead));
  names.become(heads);
  const reach = renamed.length === 0 ? NO_REACH : reachOf(renamed, heads, names, before);
  const steps = before.steps.slice();
  for (const i of new Set([...changed, ...reach.steps])) {
    const [bound, head] = [before.steps[i] as BoundSteps, before.heads[i] as PartHead];
    steps[i] = bindSteps(i, heads, names, { bound, head, sameNames: !reach.steps.has(i) });
  }
  const rebound = indexesOf(steps, (bound, i) => bound !== before.steps[i]);
  const again = new Set([...changed, ...rebound, ...reach.words]);
  const later = laterAfter(rebound, steps, before, again);
  const ovens = ovensAfter(rebound, steps, oven, before, again);
  const isCalledAnew = renamed.some((i) => heads[i]?.name !== before.heads[i]?.name);
  const taking = takingAfter(changed, heads, before);
  const gone = new Set(changed.map((i) => before.heads[i]));
  for (const i of changed) for (const { use } of before.later[i] ?? []) again.add(use.part);
  if (isCalledAnew) for (const i of taking) again.add(i);
  else for (const i of taking) if (before.parts[i]?.includes.some((head) => gone.has(head))) again.add(i);
  const byName = isCalledAnew ? once(() => indexByName(heads)) : before.byName;
  const frame: Frame = { heads, steps, later, ovens, names, words, taking, byName };
  const parts = before.parts.slice();
  for (const i of again) {
    const [old, now] = [before.parts[i] as Part, frameOf(i, frame)];
    if (reach.words.has(i) || !isSamePart(old, now)) parts[i] = settled(now, frame, world);
  }
  return { ...frame, parts };
}

/** The indexes of what it holds for, in order. */
function indexesOf<T>(list: readonly T[], holds: (item: T, index: number) => boolean): number[] {
  const indexes: number[] = [];
  for (let i = 0; i < list.length; i++) if (holds(list[i] as T, i)) indexes.push(i);
  return indexes;
}

const isTaking = (head: PartHead | undefined): boolean => head !== undefined && listedNames(head).size > 0;

function takingAfter(changed: readonly number[], heads: readonly PartHead[], before: Bound): readonly number[] {
  const others = changed.filter((i) => isTaking(before.heads[i]) !== isTaking(heads[i]));
  if (others.length === 0) return before.taking;
  const left = before.taking.filter((i) => !others.includes(i));
  return [...left, ...others.filter((i) => isTaking(heads[i]))].sort((a, b) => a - b);
}

/** All of a part but its ledger. */
type PartFrame = Omit<Part, 'ledger'>;
type Frame = Omit<Bound, 'parts'>;

function frameOf(index: number, frame: Frame): PartFrame {
  const { heads } = frame;
  return {
    index,
    head: heads[index] as PartHead,
    steps: (frame.steps[index] as BoundSteps).steps,
    includes: takenIn(index, frame, 'includes'),
    mixes: takenIn(index, frame, 'mixes'),
    heads,
    usesByLater: frame.later[index] ?? NO_USES,
    ovenBefore: frame.ovens[index],
    isLast: index === heads.length - 1,
  };
}

const NO_PARTS: readonly PartHead[] = [];

/** The earlier parts that one takes in: by a mention in its steps, or by a line of its list (`200 g poolish`). */
function takenIn(index: number, { heads, steps, byName }: Frame, how: 'includes' | 'mixes'): readonly PartHead[] {
  const mentioned = steps[index]?.[how] ?? [];
  const listed = heads[index] === undefined ? undefined : listedNames(heads[index]);
  if (mentioned.length === 0 && (listed === undefined || listed.size === 0)) return NO_PARTS;
  const indexes = new Set(mentioned);
  for (const name of listed?.keys() ?? []) {
    const at = byName().get(name);
    if (at !== undefined && at < index) indexes.add(at);
  }
  return [...indexes].map((i) => heads[i]).filter((h): h is PartHead => h !== undefined);
}

const indexByName = (heads: readonly PartHead[]): ReadonlyMap<string, number> =>
  new Map(heads.map((head, i) => [calledName(head.name).toLowerCase(), i]));

/** What later parts take of each part, in order. */
function usesOutside(steps: readonly BoundSteps[]): readonly (readonly OutsideUse[])[] {
  const later: OutsideUse[][] = [];
  for (const { outside } of steps) {
    for (const use of outside) {
      const uses = later[use.of];
      if (uses === undefined) later[use.of] = [use];
      else uses.push(use);
    }
  }
  return Array.from(steps, (_, i) => later[i] ?? NO_USES);
}

/** The same after some parts were bound anew; adds the parts of which other things are taken now. */
function laterAfter(
  rebound: readonly number[],
  steps: readonly BoundSteps[],
  before: Bound,
  again: Set<number>,
): Bound['later'] {
  let later: (readonly OutsideUse[])[] | undefined;
  for (const i of rebound) {
    const [old, now] = [before.steps[i]?.outside ?? NO_USES, steps[i]?.outside ?? NO_USES];
    if (sameItems(old, now)) continue;
    later ??= before.later.slice();
    for (const of of new Set([...old, ...now].map((use) => use.of))) {
      const all = later[of] ?? NO_USES;
      again.add(of);
      later[of] = [
        ...all.filter(({ use }) => use.part < i),
        ...now.filter((use) => use.of === of),
        ...all.filter(({ use }) => use.part > i),
      ];
    }
  }
  return later ?? before.later;
}

function ovensBefore(steps: readonly BoundSteps[], first: OvenSetting | undefined): Bound['ovens'] {
  let oven = first;
  return steps.map(({ lastOven }) => {
    const before = oven;
    oven = lastOven ?? oven;
    return before;
  });
}

/** The same after some parts were bound anew, or the oven above them all changed; adds the parts that begin with another. */
function ovensAfter(
  rebound: readonly number[],
  steps: readonly BoundSteps[],
  first: OvenSetting | undefined,
  before: Bound,
  again: Set<number>,
): Bound['ovens'] {
  const isSet = ({ lastOven }: BoundSteps, i: number) => isSameOven(lastOven, before.steps[i]?.lastOven);
  if (isSameOven(first, before.ovens[0]) && rebound.every((i) => isSet(steps[i] as BoundSteps, i))) return before.ovens;
  const ovens = ovensBefore(steps, first);
  for (let i = 0; i < ovens.length; i++) if (!isSameOven(ovens[i], before.ovens[i])) again.add(i);
  return ovens;
}

const isSameOven = (a: OvenSetting | undefined, b: OvenSetting | undefined): boolean =>
  a === b || (a?.celsiusLow === b?.celsiusLow && a?.fan === b?.fan);

/** Whether nothing that a part is made of has changed. */
function isSamePart(before: Part, now: PartFrame): boolean {
  return (
    before.index === now.index &&
    before.head === now.head &&
    sameItems(before.steps, now.steps) &&
    before.isLast === now.isLast &&
    isSameOven(before.ovenBefore, now.ovenBefore) &&
    sameItems(before.includes, now.includes) &&
    sameItems(before.mixes, now.mixes) &&
    sameItems(before.usesByLater, now.usesByLater)
  );
}

function settled(part: PartFrame, { steps }: Frame, world: World): Part {
  const own = steps[part.index]?.own ?? [];
  const later: (Use[] | undefined)[] = [];
  for (const { ingredient, use } of part.usesByLater) {
    if (ingredient === undefined) continue;
    const uses = later[ingredient];
    if (uses === undefined) later[ingredient] = [use];
    else uses.push(use);
  }
  const ledger = part.head.ingredients.map((ingredient, i) => {
    const [here, there] = [own[i], later[i]];
    return settle(
      ingredient,
      here === undefined ? (there ?? []) : there === undefined ? here : [...here, ...there],
      world,
      part.heads,
    );
  });
  return { ...part, ledger };
}
