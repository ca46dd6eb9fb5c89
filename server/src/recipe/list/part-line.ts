/**
 * Knows which lines of a list take in another part of the recipe by its name: `Pastry`, `Filling (see above)`, `1 batch of pastry`, `half the dough`.
 * Refuses to know what that part holds.
 */
import { keptOn } from '../../notation/kept.ts';
import type { PartSource } from '../../notation/outline.ts';
import type { IngredientNode, Line, TextNode } from '../../notation/tree.ts';
import type { Ingredient } from '../model.ts';
import { calledName, titleOf } from '../names/title.ts';
import { wordsOf } from '../words.ts';

/** What parts are called, by their words as they are compared. */
export type PartNames = ReadonlyMap<string, string>;

export const NO_NAMES: PartNames = new Map();

/** A line that may take in a part, if one is called so. */
interface Candidate {
  readonly line: number;
  readonly key: string;
  readonly name: TextNode;
  readonly node: IngredientNode;
  /** How many times over, or what share of it. */
  readonly share: number;
  readonly bare: boolean;
}

const keyOf = (name: string): string => wordsOf(name).join(' ');

const NAMES = keptOn<PartSource, string>();

/** What a part is called, without what stands in brackets or behind a comma; empty for the nameless one. */
function nameOf(source: PartSource): string {
  let name = NAMES.get(source);
  if (name === undefined) {
    const text = source.named ? titleOf(source.lines[0]?.statement).name?.text : undefined;
    name = text === undefined ? '' : calledName(text);
    NAMES.set(source, name);
  }
  return name;
}

/** The names of parts; where two are called alike, nobody can say which is meant. */
export function partNames(sources: readonly PartSource[]): PartNames {
  if (sources.length < 2) return NO_NAMES;
  const names = new Map<string, string>();
  const twice = new Set<string>();
  for (const source of sources) {
    const name = nameOf(source);
    const key = keyOf(name);
    if (key === '') continue;
    if (names.has(key)) twice.add(key);
    names.set(key, name);
  }
  for (const key of twice) names.delete(key);
  return names;
}

/** The lines of a part that take in another, as what they bring, by line. */
export function partLinesIn(source: PartSource, names: PartNames): ReadonlyMap<number, Ingredient> {
  const taken = new Map<number, Ingredient>();
  if (names.size === 0) return taken;
  const own = keyOf(nameOf(source));
  for (const { line, key, name, node, share, bare } of candidatesOf(source)) {
    const called = key === own ? undefined : names.get(key);
    if (called === undefined) continue;
    taken.set(line, {
      line,
      node,
      name: called,
      nameNode: name,
      match: { kind: 'unknown', near: [] },
      weighed: { known: false, why: 'it is the part of that name, weighed there' },
      optional: node.optional !== undefined,
      free: true,
      ofPart: share,
      ...(bare && { bare: true as const }),
    });
  }
  return taken;
}

/** Whether a part bound before takes in what its lines take now that parts are called so. */
export function takesTheSame(source: PartSource, ingredients: readonly Ingredient[], names: PartNames): boolean {
  if (candidatesOf(source).length === 0) return true;
  const now = partLinesIn(source, names);
  const before = ingredients.filter(({ ofPart }) => ofPart !== undefined);
  return before.length === now.size && before.every(({ line, name }) => now.get(line)?.name === name);
}

const CANDIDATES = keptOn<PartSource, readonly Candidate[]>();

function candidatesOf(source: PartSource): readonly Candidate[] {
  let candidates = CANDIDATES.get(source);
  if (candidates === undefined) {
    candidates = source.lines.flatMap((line, at) => candidateIn(line, at) ?? []);
    CANDIDATES.set(source, candidates);
  }
  return candidates;
}

function candidateIn({ statement }: Line, line: number): Candidate | undefined {
  if (statement.kind === 'unread') {
    const read = readName(statement.words);
    if (read === undefined) return undefined;
    const node = statement.bare ?? { kind: 'ingredient', name: read.name };
    return node.amount === undefined ? { line, node, share: 1, bare: true, ...read } : undefined;
  }
  if (statement.kind !== 'ingredient') return undefined;
  const { amount, name } = statement;
  if (amount?.kind !== 'measured' || name === undefined) return undefined;
  const { low, high, unit, count } = amount.quantity;
  const read = unit === undefined && count === undefined && low === high ? readName(name) : undefined;
  // `1 pear` is a pear, whatever a part is called.
  return read?.counted === true || (read !== undefined && low < 1)
    ? { line, node: statement, share: low, bare: false, ...read }
    : undefined;
}

/** The name, with what stands before and behind it that only says that it was made above. */
function readName({ start, text }: TextNode): { name: TextNode; key: string; counted: boolean } | undefined {
  if (text.length > LONGEST) return undefined;
  const before = BEFORE.exec(text)?.[0].length ?? 0;
  const name = text.slice(before).replace(BEHIND, '').trimEnd();
  const key = keyOf(name);
  if (key === '' || /[.!?:\d]/.test(name)) return undefined;
  const from = start + before;
  return {
    name: { start: from, end: from + name.length, text: name },
    key,
    counted: BATCH.test(text.slice(0, before)),
  };
}

const LONGEST = 80;
const BATCH = /(?:batch|quantity|quantities|recipe|lot|portion)/i;
const BEFORE =
  /^(?:(?:all|the|your|prepared|cooled|chilled|one|an?|full|whole) +)*(?:of +)?(?:the +)?(?:(?:full |whole )?(?:batch(?:es)?|quantit(?:y|ies)|recipes?|lots?|portions?) +(?:of +)?(?:the +)?)?/i;
/** `(see above)`, `from above`, `, chilled`, `as above`. */
const BEHIND = /\s*(?:\(.*\)|,.*|(?:from|as|made|see) +(?:above|before|earlier).*|above)\s*$/i;
