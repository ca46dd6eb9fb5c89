/**
 * Knows which parts are called by their names before they stand (`fill with the filling`, whose part comes below), and in which order parts
 * are made then: what is called for comes first.
 * Refuses to know ledgers: what is below is taken from no list.
 */
import { keptOn } from '../../notation/kept.ts';
import { compare, isOrder, type Mention, matches } from '../mentions.ts';
import { type Call, callsOfPart } from '../names.ts';
import { listedPart } from '../part.ts';
import { portionBefore } from '../portions.ts';
import type { Part, Step } from '../recipe.ts';

/** A way to call a part. */
interface Named {
  readonly call: Call;
  readonly part: number;
}

/** The ways to call all parts of a recipe, by first word. */
interface Names {
  readonly key: string;
  readonly byFirst: ReadonlyMap<string, readonly Named[]>;
}

let last: Names | undefined;

function namesOf(parts: readonly Part[]): Names {
  const key = parts.map(({ head }) => head.name).join('\n');
  if (last?.key === key) return last;
  const byFirst = new Map<string, Named[]>();
  for (const { head, index } of parts)
    for (const [first, calls] of callsOfPart(head)) {
      const named = calls.filter(({ weak }) => !weak).map((call) => ({ call, part: index }));
      byFirst.set(first, [...(byFirst.get(first) ?? []), ...named]);
    }
  last = { key, byFirst };
  return last;
}

interface Kept {
  readonly key: string;
  readonly index: number;
  readonly step: Step;
}

const KEPT = keptOn<Step, Kept>();

/** The step with what it calls by the name of a part below; the same object where it calls none. */
function withAhead(step: Step, index: number, names: Names): Step {
  const kept = KEPT.get(step);
  if (kept?.key === names.key && kept.index === index) return kept.step;
  const ahead = aheadIn(step, index, names);
  const now = ahead.length === 0 ? step : { ...step, mentions: merged(step.mentions, ahead) };
  KEPT.set(step, { key: names.key, index, step: now });
  return now;
}

function aheadIn({ sentence: { items }, mentions }: Step, index: number, { byFirst }: Names): readonly Mention[] {
  const found: Mention[] = [];
  const said = compare(items);
  for (let w = 0; w < said.words.length; w++) {
    let best: Named | undefined;
    for (const named of byFirst.get(said.words[w] as string) ?? []) {
      const { words } = named.call;
      if (named.part > index && words.length > (best?.call.words.length ?? 0) && matches(words, said.words, w))
        best = named;
    }
    if (best === undefined) continue;
    const from = said.items[w] as number;
    const to = said.items[w + best.call.words.length - 1] as number;
    const [first, end] = [items[from], items[to]];
    const isTaken = mentions.some((mention) => mention.from <= to && mention.to >= from);
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

const merged = (a: readonly Mention[], b: readonly Mention[]): readonly Mention[] =>
  [...a, ...b].sort((one, other) => one.start - other.start);

/** A part, with its steps as they call parts above and below. */
export interface Placed {
  readonly part: Part;
  readonly steps: readonly Step[];
}

/** The parts in the order in which they are made: as they stand, but what one calls for before it. */
export function inOrder(parts: readonly Part[]): readonly Placed[] {
  if (parts.length < 2) return parts.map((part) => ({ part, steps: part.steps }));
  const names = namesOf(parts);
  const placed: Placed[] = [];
  const begun = new Set<number>();
  const make = (index: number): void => {
    const part = parts[index];
    if (part === undefined || begun.has(index)) return;
    begun.add(index);
    const steps = index === parts.length - 1 ? part.steps : part.steps.map((step) => withAhead(step, index, names));
    for (const { mentions } of steps)
      for (const mention of mentions) if (mention.part !== undefined && mention.part > index) make(mention.part);
    for (const { head, index: of } of parts)
      if (of > index && head.name !== '' && listedPart(part.head, head.name) !== undefined) make(of);
    placed.push({ part, steps });
  };
  parts.forEach((_, index) => {
    make(index);
  });
  return placed;
}
