/**
 * Knows what differs in the head of two recipes: name, fields, pan, yield.
 * Refuses to know the parts, but for what each of a counted yield weighs.
 */
import { middle } from '../../measure/quantity.ts';
import type { PlacedLine } from '../../notation/outline.ts';
import type { Recipe } from '../../recipe/model.ts';
import { near } from './batch.ts';
import type { Change } from './change.ts';
import { saidBy, sameWords } from './written.ts';

interface Yields {
  readonly from?: string;
  readonly to?: string;
  readonly ratio?: number;
}

export function yieldsOf(before: Recipe, after: Recipe): Yields {
  const [a, b] = [before.yield?.node, after.yield?.node];
  const from = a === undefined ? undefined : yieldText(before);
  const to = b === undefined ? undefined : yieldText(after);
  const same = a?.amount?.unit?.symbol === b?.amount?.unit?.symbol;
  const [low, high] = [a?.amount && middle(a.amount.quantity), b?.amount && middle(b.amount.quantity)];
  return {
    ...(from !== undefined && { from }),
    ...(to !== undefined && { to }),
    ...(same && low !== undefined && high !== undefined && low > 0 && high > 0 && { ratio: high / low }),
  };
}

function yieldText(recipe: Recipe): string {
  const line = recipe.yield === undefined ? undefined : recipe.outline.head.find((h) => h.at === recipe.yield?.at);
  return line === undefined ? '' : saidBy(line);
}

export function yieldChange(before: Recipe, after: Recipe): Change[] {
  const from = before.yield === undefined ? null : yieldText(before);
  const to = after.yield === undefined ? null : yieldText(after);
  return sameWords(from, to) ? [] : [{ kind: 'yield', from, to, eachFromG: eachG(before), eachToG: eachG(after) }];
}

function eachG({ parts, yield: made }: Recipe): number | null {
  const amount = made?.node.amount;
  if (amount === undefined || amount.unit !== undefined || !(amount.quantity.low > 0)) return null;
  if (!parts.every((p) => p.head.massG.complete && !p.head.nominal)) return null;
  return parts.reduce((sum, p) => sum + p.head.massG.likely, 0) / middle(amount.quantity);
}

const FIELDS = new Set(['text', 'pan', 'oven', 'time', 'tags', 'from']);

export function fieldChanges(before: Recipe, after: Recipe, batch: number): Change[] {
  const changes: Change[] = [];
  if (before.name !== after.name) changes.push({ kind: 'field', field: 'name', from: before.name, to: after.name });
  const [a, b] = [fieldsOf(before.outline.head), fieldsOf(after.outline.head)];
  // As many more pans as the batch is bigger are no change of their own.
  if (batch !== 1 && moreOfThePan(before, after, batch)) for (const fields of [a, b]) fields.delete('pan');
  for (const field of new Set([...a.keys(), ...b.keys()])) {
    const [was, is] = [a.get(field) ?? [], b.get(field) ?? []];
    const dropped = was.filter((text) => !is.some((other) => sameWords(text, other)));
    const added = is.filter((text) => !was.some((other) => sameWords(text, other)));
    for (let i = 0; i < Math.max(dropped.length, added.length); i++)
      changes.push({ kind: 'field', field, from: dropped[i] ?? null, to: added[i] ?? null });
  }
  return changes;
}

function moreOfThePan({ pan: a }: Recipe, { pan: b }: Recipe, batch: number): boolean {
  if (a === undefined || b === undefined || a.node.shape !== b.node.shape) return false;
  const sizes = [a, b].map(({ node }) => `${node.sizes.map((n) => n.value).join(' ')} ${node.unit?.symbol ?? ''}`);
  return sizes[0] === sizes[1] && near(b.node.count, a.node.count * batch);
}

function fieldsOf(head: readonly PlacedLine[]): Map<string, string[]> {
  const fields = new Map<string, string[]>();
  for (const placed of head) {
    const { statement } = placed.line;
    if (!FIELDS.has(statement.kind)) continue;
    const field = statement.kind === 'text' ? statement.field : statement.kind;
    fields.set(field, [...(fields.get(field) ?? []), saidBy(placed)]);
  }
  return fields;
}
