/**
 * Knows every place of a file that names one ingredient, part or food: its own line, the steps, the trials.
 * Refuses to know what is done with them: definition, references, highlight and rename read it.
 */

import type { Position } from '../notation/document.ts';
import type { TextNode } from '../notation/tree.ts';
import type { Ingredient, Mention, Part } from '../recipe/model.ts';
import { calledName, titleOf } from '../recipe/names/title.ts';
import { sameName } from '../recipe/words.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { type Cursor, cursorAt, holds, ingredientAt, lineOfPart, namesOn, type Place, placeOf } from './place.ts';

export type Named =
  /** `other`: of its alternatives behind `or` the one that is meant, from 0. */
  | { readonly kind: 'ingredient'; readonly part: number; readonly index: number; readonly other?: number }
  | { readonly kind: 'part'; readonly part: number };

export interface Occurrence extends Place {
  /** The line that defines it, a sentence or the line of another list that takes it, or a trial that speaks of it. */
  readonly role: 'definition' | 'mention' | 'listed' | 'trial';
  readonly mention?: Mention;
}

/** The name under the cursor, and where it stands. */
export function namedAt(snapshot: Snapshot, position: Position): { named: Named; at: Place } | undefined {
  const cursor = cursorAt(snapshot, position);
  return inList(snapshot, cursor) ?? inStep(snapshot, cursor) ?? inTrial(snapshot, cursor);
}

function inList(snapshot: Snapshot, cursor: Cursor): { named: Named; at: Place } | undefined {
  const { part, inPart, line, at, character } = cursor;
  if (part === undefined) return undefined;
  const { statement } = line;
  const title = inPart === 0 && statement.kind === 'part' ? titleOf(statement).name : undefined;
  if (holds(title, character)) return { named: { kind: 'part', part: part.index }, at: placeOf(at, title) };
  const found = ingredientAt(cursor);
  if (found === undefined) return undefined;
  const { index } = found;
  const names = namesOn(found.ingredient);
  const which = names.findIndex((name) => holds(name, character));
  const name = names[which];
  if (name === undefined) return undefined;
  const own = { kind: 'ingredient' as const, part: part.index, index, ...(which > 0 && { other: which - 1 }) };
  return { named: partListed(snapshot, found.ingredient) ?? own, at: placeOf(at, name) };
}

/** The part that a line of a list takes in whole: its name is the part's. */
function partListed({ recipe }: Snapshot, { ofPart, name }: Ingredient): Named | undefined {
  const part = ofPart === undefined ? -1 : recipe.heads.findIndex((head) => calledName(head.name) === name);
  return part < 0 ? undefined : { kind: 'part', part };
}

function inStep(snapshot: Snapshot, { part, inPart, at, character }: Cursor): { named: Named; at: Place } | undefined {
  const step = part?.steps.find((s) => s.line === inPart);
  const mention = step?.mentions.find((m) => holds(m, character));
  if (part === undefined || step === undefined || mention === undefined) return undefined;
  const place = placeOf(at, nameOfMention(part, mention, step.line));
  if (mention.part !== undefined) return { named: { kind: 'part', part: mention.part }, at: place };
  // Of several that fit, the one this step takes.
  const taken = mention.ingredients.find(({ part: p, ingredient }) =>
    snapshot.recipe.parts[p]?.ledger[ingredient]?.uses.some((u) => u.mention === mention && u.part === part.index),
  );
  const ref = taken ?? mention.ingredients[0];
  if (ref === undefined) return undefined;
  const listed = snapshot.recipe.parts[ref.part]?.head.ingredients[ref.ingredient];
  const own = { kind: 'ingredient' as const, part: ref.part, index: ref.ingredient };
  return { named: (listed && partListed(snapshot, listed)) ?? own, at: place };
}

function inTrial(snapshot: Snapshot, { line, at, character }: Cursor): { named: Named; at: Place } | undefined {
  const { statement } = line;
  if (statement.kind !== 'used') return undefined;
  if (holds(statement.part, character)) {
    const part = snapshot.recipe.parts.find((p) => sameName(p.head.name, statement.part?.text ?? ''));
    return part && { named: { kind: 'part', part: part.index }, at: placeOf(at, statement.part) };
  }
  if (!holds(statement.name, character)) return undefined;
  const found = usedIngredient(snapshot, statement.name, statement.part);
  return found && { named: { kind: 'ingredient', ...found }, at: placeOf(at, statement.name) };
}

/** Every place that names it, in the order of the text. */
export function occurrences(snapshot: Snapshot, named: Named): Occurrence[] {
  const part = snapshot.recipe.parts[named.part];
  if (part === undefined) return [];
  const found = named.kind === 'part' ? partPlaces(snapshot, part) : ingredientPlaces(snapshot, part, named);
  return found.sort((a, b) => a.line - b.line || a.start - b.start);
}

function partPlaces(snapshot: Snapshot, part: Part): Occurrence[] {
  const found: Occurrence[] = [];
  const first = part.head.source.lines[0]?.statement;
  const title = first?.kind === 'part' ? titleOf(first).name : undefined;
  if (title !== undefined) found.push({ ...placeOf(lineOfPart(snapshot, part.index, 0), title), role: 'definition' });
  const seen = new Set<Mention>();
  for (const { ingredient, use } of part.usesByLater) {
    if (ingredient !== undefined || seen.has(use.mention)) continue;
    seen.add(use.mention);
    found.push(mentionPlace(snapshot, use.part, use.line, use.mention));
  }
  for (const other of snapshot.recipe.parts)
    for (const { ingredient, uses } of other.ledger) {
      if (ingredient.ofPart === undefined || ingredient.name !== calledName(part.head.name)) continue;
      const line = lineOfPart(snapshot, other.index, ingredient.line);
      found.push({ ...placeOf(line, ingredient.nameNode), role: 'listed' });
      for (const use of uses) found.push(mentionPlace(snapshot, use.part, use.line, use.mention));
    }
  for (const { at, used } of usedLines(snapshot))
    if (used.part !== undefined && sameName(used.part.text, part.head.name))
      found.push({ ...placeOf(at, used.part), role: 'trial' });
  return found;
}

function ingredientPlaces(
  snapshot: Snapshot,
  part: Part,
  { index, other }: { readonly index: number; readonly other?: number },
): Occurrence[] {
  const entry = part.ledger[index];
  if (entry === undefined) return [];
  const found: Occurrence[] = [];
  const { ingredient } = entry;
  const { others = [] } = ingredient;
  const name = other === undefined ? ingredient.nameNode : others[other]?.name;
  if (name === undefined) return [];
  found.push({ ...placeOf(lineOfPart(snapshot, part.index, ingredient.line), name), role: 'definition' });
  for (const use of entry.uses) {
    const place = mentionPlace(snapshot, use.part, use.line, use.mention);
    const written = snapshot.document.lines[place.line]?.text.slice(place.start, place.end) ?? '';
    // A mention of one alternative is none of the others.
    const meant = others.findIndex((o) => sameName(o.name.text, written));
    if (meant === (other ?? -1)) found.push(place);
  }
  if (other !== undefined) return found;
  for (const { at, used } of usedLines(snapshot)) {
    const of = used.name === undefined ? undefined : usedIngredient(snapshot, used.name, used.part);
    if (used.name !== undefined && of?.part === part.index && of.index === index)
      found.push({ ...placeOf(at, used.name), role: 'trial' });
  }
  return found;
}

function mentionPlace(snapshot: Snapshot, part: number, line: number, mention: Mention): Occurrence {
  const of = snapshot.recipe.parts[part];
  const span = of === undefined ? mention : nameOfMention(of, mention, line);
  return { ...placeOf(lineOfPart(snapshot, part, line), span), role: 'mention', mention };
}

/** The name itself: without the brackets of a forced mention. */
function nameOfMention(part: Part, mention: Mention, line: number): { start: number; end: number } {
  if (!mention.forced) return mention;
  const item = part.steps.find((s) => s.line === line)?.sentence.items[mention.from];
  return item?.kind === 'forced' ? item.name : mention;
}

interface UsedLine {
  readonly at: number;
  readonly used: { readonly name?: TextNode; readonly part?: TextNode };
}

function usedLines(snapshot: Snapshot): UsedLine[] {
  return snapshot.outline.trials.flatMap((block) =>
    block.lines.flatMap(({ statement }, i) =>
      statement.kind === 'used' ? [{ at: block.at + i, used: statement }] : [],
    ),
  );
}

/** The ingredient a trial speaks of: of the part it names, else the only one so called. */
function usedIngredient(
  { recipe }: Snapshot,
  name: TextNode,
  inPart: TextNode | undefined,
): { part: number; index: number } | undefined {
  const parts = inPart === undefined ? recipe.parts : recipe.parts.filter((p) => sameName(p.head.name, inPart.text));
  const found = parts.flatMap((p) =>
    p.head.ingredients.flatMap((i: Ingredient, index) =>
      sameName(i.name, name.text) ? [{ part: p.index, index }] : [],
    ),
  );
  return found.length === 1 ? found[0] : undefined;
}
