/**
 * Knows how the parts of a recipe are bound together: what later parts take of each, what each takes in, and the oven it begins with.
 * After an edit only the parts it reached are made again; the others are the same objects, so that findings can hang on them.
 */
import { once } from '../food/once.ts';
import { settle, type Use } from './ledger.ts';
import { NameIndex, sameNames } from './names.ts';
import { listedNames, type PartHead } from './part.ts';
import { NO_REACH, reachOf } from './reach.ts';
import type { OutsideUse, OvenSetting, Part } from './recipe.ts';
import { type BoundSteps, bindSteps, NO_USES, sameItems } from './steps.ts';
import type { World } from './world.ts';

/** The parts of a recipe with what an edit needs to bind them again. */
export interface Bound {
  readonly parts: readonly Part[];
  readonly heads: readonly PartHead[];
  readonly steps: readonly BoundSteps[];
  /** What later parts take of each part, in order. */
  readonly later: readonly (readonly OutsideUse[])[];
  /** Handed on from edit to edit, and changed by each. */
  readonly names: NameIndex;
  /** The last part of each name, in lower case. */
  readonly byName: () => ReadonlyMap<string, number>;
}

/** The parts of these heads; `oven` is the one given above them. `before` lends what has not changed. */
export function bindParts(
  heads: readonly PartHead[],
  oven: OvenSetting | undefined,
  world: World,
  before: Bound | undefined,
): Bound {
  return before?.heads.length === heads.length
    ? bindAgain(heads, oven, world, before)
    : bindAll(heads, oven, world, before);
}

function bindAll(
  heads: readonly PartHead[],
  oven: OvenSetting | undefined,
  world: World,
  before: Bound | undefined,
): Bound {
  const names = new NameIndex(heads);
  // What stands above the first part that differs sees the names that it saw.
  let same = 0;
  while (same < heads.length && heads[same] === before?.heads[same]) same++;
  const steps = heads.map((_, i) => (i < same ? before?.steps[i] : undefined) ?? bindSteps(i, heads, names));
  const frame = { heads, steps, later: usesOutside(steps), names, byName: once(() => indexByName(heads)) };
  const ovens = ovensBefore(steps, oven);
  const parts = heads.map((_, i) => {
    const now = frameOf(i, frame, ovens);
    const old = before?.parts[i];
    return old !== undefined && isSamePart(old, now) ? old : settled(now, frame, world);
  });
  return { ...frame, parts };
}

function bindAgain(heads: readonly PartHead[], oven: OvenSetting | undefined, world: World, before: Bound): Bound {
  const changed: number[] = [];
  for (let i = 0; i < heads.length; i++) if (heads[i] !== before.heads[i]) changed.push(i);
  const renamed = changed.filter((i) => !sameNames(before.heads[i] as PartHead, heads[i] as PartHead));
  before.names.become(heads);
  const reach = renamed.length === 0 ? NO_REACH : reachOf(renamed, heads, before);
  const steps = before.steps.slice();
  for (const i of new Set([...changed, ...reach.steps])) {
    const [bound, head] = [before.steps[i] as BoundSteps, before.heads[i] as PartHead];
    steps[i] = bindSteps(i, heads, before.names, { bound, head, sameNames: !reach.steps.has(i) });
  }
  const isCalledAnew = renamed.some((i) => heads[i]?.name !== before.heads[i]?.name);
  const frame = {
    heads,
    steps,
    later: laterAfter(steps, before),
    names: before.names,
    byName: isCalledAnew ? once(() => indexByName(heads)) : before.byName,
  };
  const ovens = ovensBefore(steps, oven);
  const gone = new Set(changed.map((i) => before.heads[i]));
  const parts = before.parts.slice();
  for (let i = 0; i < heads.length; i++) {
    const old = before.parts[i] as Part;
    const isLeft =
      old.head === heads[i] &&
      old.steps === steps[i]?.steps &&
      old.usesByLater === frame.later[i] &&
      isSameOven(old.ovenBefore, ovens[i]) &&
      !isCalledAnew &&
      !(old.includes.length > 0 && old.includes.some((head) => gone.has(head))) &&
      !reach.words.has(i);
    if (isLeft) continue;
    const now = frameOf(i, frame, ovens);
    if (reach.words.has(i) || !isSamePart(old, now)) parts[i] = settled(now, frame, world);
  }
  return { ...frame, parts };
}

/** All of a part but its ledger. */
type PartFrame = Omit<Part, 'ledger'>;
type Frame = Omit<Bound, 'parts'>;

function frameOf(index: number, frame: Frame, ovens: readonly (OvenSetting | undefined)[]): PartFrame {
  const { heads } = frame;
  return {
    index,
    head: heads[index] as PartHead,
    steps: (frame.steps[index] as BoundSteps).steps,
    includes: takenIn(index, frame),
    heads,
    usesByLater: frame.later[index] ?? NO_USES,
    ovenBefore: ovens[index],
    isLast: index === heads.length - 1,
  };
}

const NO_PARTS: readonly PartHead[] = [];

/** The earlier parts that one takes in: by a mention in its steps, or by a line of its list (`200 g poolish`). */
function takenIn(index: number, { heads, steps, byName }: Frame): readonly PartHead[] {
  const mentioned = steps[index]?.includes ?? [];
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
  new Map(heads.map((head, i) => [head.name.toLowerCase(), i]));

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

/** The same after some parts were bound anew. */
function laterAfter(steps: readonly BoundSteps[], before: Bound): readonly (readonly OutsideUse[])[] {
  let later: (readonly OutsideUse[])[] | undefined;
  for (let i = 0; i < steps.length; i++) {
    const [old, now] = [before.steps[i], steps[i]];
    if (old === undefined || now === undefined || old === now || sameItems(old.outside, now.outside)) continue;
    later ??= before.later.slice();
    for (const of of new Set([...old.outside, ...now.outside].map((use) => use.of))) {
      const all = later[of] ?? NO_USES;
      later[of] = [
        ...all.filter(({ use }) => use.part < i),
        ...now.outside.filter((use) => use.of === of),
        ...all.filter(({ use }) => use.part > i),
      ];
    }
  }
  return later ?? before.later;
}

/** The oven in force when each part begins. */
function ovensBefore(
  steps: readonly BoundSteps[],
  first: OvenSetting | undefined,
): readonly (OvenSetting | undefined)[] {
  let oven = first;
  return steps.map(({ lastOven }) => {
    const before = oven;
    oven = lastOven ?? oven;
    return before;
  });
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
    );
  });
  return { ...part, ledger };
}
