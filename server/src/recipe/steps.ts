/**
 * Knows the steps of one part: what each mentions, and what its mentions take of this part and of earlier ones.
 * Refuses to know how much is left. A step whose line and names an edit did not reach is the same object as before.
 */
import { keptOn } from '../notation/kept.ts';
import type { Line } from '../notation/tree.ts';
import { boundEvents } from './journey/bind.ts';
import { heatsOf } from './journey/figures.ts';
import { isMadeReady, timesTaken } from './made-ready.ts';
import type { IngredientRef, Mention, OutsideUse, OvenSetting, PartHead, Step, Use } from './model.ts';
import { findMentions, wordsSaid } from './names/mentions.ts';
import type { NameIndex } from './names/names.ts';

/** The steps of a part with what their mentions take, from its own list and from others. */
export interface BoundSteps {
  readonly steps: readonly Step[];
  /** By own ingredient; a hole where no step takes of it. */
  readonly own: readonly (readonly Use[] | undefined)[];
  readonly outside: readonly OutsideUse[];
  /** Earlier parts that are mentioned. */
  readonly includes: readonly number[];
  /** Those of them that are not only eaten with it. */
  readonly mixes: readonly number[];
  readonly lastOven: OvenSetting | undefined;
}

/** What a part was before an edit. */
export interface Lent {
  readonly bound: BoundSteps;
  readonly head: PartHead;
  /** Its sentences see the names that they saw. */
  readonly sameNames: boolean;
}

/** The steps of a part; `heads` are those of all parts up to it at least. */
export function bindSteps(index: number, heads: readonly PartHead[], names: NameIndex, lent?: Lent): BoundSteps {
  const head = heads[index];
  if (head === undefined) return NO_STEPS;
  const steps = readSteps(head, index, names, lent);
  if (lent?.sameNames && sameItems(steps, lent.bound.steps)) return lent.bound;
  return sortUses(steps, index, heads, lent?.bound.outside ?? NO_USES);
}

export const NO_USES: readonly OutsideUse[] = [];
const NO_STEPS: BoundSteps = { steps: [], own: [], outside: NO_USES, includes: [], mixes: [], lastOven: undefined };

function readSteps({ source }: PartHead, index: number, names: NameIndex, lent: Lent | undefined): Step[] {
  const steps: Step[] = [];
  const stepAt = lent === undefined ? undefined : stepsBefore(lent, source.lines);
  for (let line = 0; line < source.lines.length; line++) {
    const statement = source.lines[line]?.statement;
    if (statement?.kind !== 'step') continue;
    const { sentence } = statement;
    const old = stepAt?.(line);
    if (old === undefined) {
      const mentions = findMentions(sentence, index, names);
      steps.push({ line, sentence, mentions });
    } else if (lent?.sameNames) {
      steps.push(old.line === line ? old : { ...old, line });
    } else {
      const mentions = findMentions(sentence, index, names);
      const same = old.line === line && sameMentions(mentions, old.mentions);
      steps.push(same ? old : { ...old, line, mentions });
    }
  }
  return steps;
}

/** The step that a line was before the edit, for the lines above and below what was edited. */
function stepsBefore({ head, bound }: Lent, lines: readonly Line[]): (line: number) => Step | undefined {
  const old = head.source.lines;
  const most = Math.min(lines.length, old.length);
  let above = 0;
  while (above < most && lines[above] === old[above]) above++;
  let below = 0;
  while (below < most - above && lines[lines.length - 1 - below] === old[old.length - 1 - below]) below++;
  const byLine = new Map(bound.steps.map((step) => [step.line, step]));
  return (line) =>
    line < above
      ? byLine.get(line)
      : line >= lines.length - below
        ? byLine.get(line - lines.length + old.length)
        : undefined;
}

function sortUses(
  steps: readonly Step[],
  index: number,
  heads: readonly PartHead[],
  before: readonly OutsideUse[],
): BoundSteps {
  const own: (Use[] | undefined)[] = [];
  const outside: OutsideUse[] = [];
  let includes: number[] | undefined;
  const mixes: number[] = [];
  let lastOven: OvenSetting | undefined;
  const sentences = steps.map(({ sentence }) => sentence.items);
  for (let s = 0; s < steps.length; s++) {
    const step = steps[s] as Step;
    for (const mention of step.mentions) {
      const ready = MAY_READY.has(mention.portion.kind) && isMadeReady(step, mention);
      const use: Use = {
        part: index,
        step: s,
        line: step.line,
        mention,
        ready,
        times: timesTaken(step, mention, sentences),
      };
      if (mention.part !== undefined && mention.part !== index) {
        includes ??= [];
        if (!includes.includes(mention.part)) includes.push(mention.part);
        if (!mixes.includes(mention.part) && !isEaten(step, mention)) mixes.push(mention.part);
        outside.push({ of: mention.part, use });
      }
      for (const ref of isShared(mention, heads) ? mention.ingredients : chosen(mention.ingredients, own)) {
        if (ref.part !== index) outside.push({ of: ref.part, ingredient: ref.ingredient, use });
        else {
          const uses = own[ref.ingredient];
          if (uses === undefined) own[ref.ingredient] = [use];
          else uses.push(use);
        }
      }
    }
    for (const { of, celsius, written } of heatsOf(step))
      if (of === 'oven') lastOven = { celsiusLow: celsius.low, fan: written[0]?.fan === true };
  }
  keepSame(outside, before);
  return { steps, own, outside, includes: includes ?? NO_INDEXES, mixes, lastOven };
}

/** Whether all that is done with it is to eat it. */
function isEaten(step: Step, mention: Mention): boolean {
  const all = boundEvents(step).filter(({ names }) => names.some((name) => name.mention === mention));
  return all.length > 0 && all.every(({ event }) => event.act === 'eat');
}

/** `Melt the butter`, `pare all five lemons`. */
const MAY_READY: ReadonlySet<Mention['portion']['kind']> = new Set(['plain', 'amount', 'rest']);

const NO_INDEXES: readonly number[] = [];

/** Puts the uses of before in the place of equal ones, from both ends. */
function keepSame(uses: OutsideUse[], before: readonly OutsideUse[]): void {
  const keep = (at: number, old: OutsideUse | undefined): boolean => {
    const same = old !== undefined && isSameUse(uses[at], old);
    if (same) uses[at] = old;
    return same;
  };
  let first = 0;
  while (first < uses.length && keep(first, before[first])) first++;
  for (let last = uses.length - 1; last >= first && keep(last, before[before.length - uses.length + last]); last--);
}

const isSameUse = (a: OutsideUse | undefined, b: OutsideUse): boolean =>
  a?.use.mention === b.use.mention &&
  a.ingredient === b.ingredient &&
  a.of === b.of &&
  a.use.step === b.use.step &&
  a.use.line === b.use.line;

/** All that fit are meant, or it is not known which: each then has a use. Lines of one name are taken in turn instead. */
function isShared(mention: Mention, heads: readonly PartHead[]): boolean {
  if (mention.every) return true;
  const [first] = mention.ingredients;
  return first !== undefined && mention.ingredients.some((ref) => nameOf(ref, heads) !== nameOf(first, heads));
}

const nameOf = (ref: IngredientRef, heads: readonly PartHead[]): string | undefined =>
  heads[ref.part]?.ingredients[ref.ingredient]?.name;

/** Of several that fit, the first that no step has taken from. */
function chosen(
  refs: readonly IngredientRef[],
  own: readonly (readonly Use[] | undefined)[],
): readonly IngredientRef[] {
  if (refs.length < 2) return refs;
  const fresh = refs.find((r) => own[r.ingredient] === undefined) ?? refs[0];
  return fresh === undefined ? refs : [fresh];
}

function sameMentions(a: readonly Mention[], b: readonly Mention[]): boolean {
  return a.length === b.length && a.every((one, i) => isSame(one, b[i]));
}

/** Of one sentence: what is named, by which words, and how much of it. */
function isSame(a: Mention, b: Mention | undefined): boolean {
  return (
    b !== undefined &&
    a.from === b.from &&
    a.to === b.to &&
    a.whole.start === b.whole.start &&
    a.part === b.part &&
    a.weak === b.weak &&
    a.every === b.every &&
    a.verb === b.verb &&
    a.portion.kind === b.portion.kind &&
    a.ingredients.length === b.ingredients.length &&
    a.ingredients.every((r, i) => r.part === b.ingredients[i]?.part && r.ingredient === b.ingredients[i]?.ingredient)
  );
}

const SAID = keptOn<BoundSteps, ReadonlySet<string>>();

/** Every word by which the steps may mention something. */
export function wordsOfSteps(bound: BoundSteps): ReadonlySet<string> {
  let said = SAID.get(bound);
  if (said === undefined) {
    said = new Set(bound.steps.flatMap((step) => wordsSaid(step.sentence)));
    SAID.set(bound, said);
  }
  return said;
}

export function sameItems<T>(a: readonly T[], b: readonly T[]): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
