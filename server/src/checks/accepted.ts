/**
 * Knows which findings the writer accepts: with `allow` on the line above, or at the head of the part or the recipe.
 */
import type { TextNode } from '../notation/tree.ts';
import type { Scene } from './check.ts';
import type { AcceptedFinding, Finding, Findings } from './finding.ts';

/** An `allow` line with a reason. */
export interface PlacedAllow {
  readonly at: number;
  readonly code: TextNode;
}

/** `allow CODE because REASON` accepts a finding on the next line, or on the part or recipe at whose head it stands. */
export function sortAccepted(
  findings: readonly Finding[],
  scene: Scene,
): Findings & { readonly idle: readonly PlacedAllow[] } {
  const byCode = new Map<string, Allow[]>();
  for (const { at, line } of scene.outline.allows) {
    const { statement } = line;
    if (statement.kind !== 'allow' || statement.code === undefined || statement.reason === undefined) continue;
    const { code, reason } = statement;
    const allow = { at, code, reason: reason.text, next: nextStatement(scene, at), reach: reachOf(scene, at) };
    const alike = byCode.get(code.text);
    if (alike === undefined) byCode.set(code.text, [allow]);
    else alike.push(allow);
  }
  if (byCode.size === 0) return { open: findings, accepted: [], idle: [] };
  const open: Finding[] = [];
  const accepted: AcceptedFinding[] = [];
  const used = new Set<PlacedAllow>();
  for (const finding of findings) {
    let reason: string | undefined;
    for (const allow of byCode.get(finding.code) ?? []) {
      if (!accepts(allow, finding)) continue;
      used.add(allow);
      reason ??= allow.reason;
    }
    if (reason === undefined) open.push(finding);
    else accepted.push({ ...finding, reason });
  }
  const idle = [...byCode.values()].flat().filter((a) => !used.has(a));
  return { open, accepted, idle: idle.sort((a, b) => a.at - b.at) };
}

interface Allow extends PlacedAllow {
  readonly reason: string;
  /** The line it stands before. */
  readonly next: number;
  readonly reach: number | 'recipe' | undefined;
}

const accepts = ({ next, reach }: Allow, { at, part }: Finding): boolean =>
  next === at.line || reach === 'recipe' || (reach !== undefined && reach === part);

/** The next line that says something. */
function nextStatement(scene: Scene, from: number): number {
  const { lines } = scene.document;
  for (let at = from + 1; at < lines.length; at++) {
    const kind = lines[at]?.statement.kind;
    if (kind !== 'blank' && kind !== 'allow') return at;
  }
  return -1;
}

/** The part, or the recipe, at whose head the line stands: nothing but its own fields and other allows before it. */
function reachOf(scene: Scene, at: number): number | 'recipe' | undefined {
  const { partsAt } = scene.recipe;
  const part = partsAt.findLastIndex((start) => start <= at);
  if (part < 0) return scene.outline.recipe !== undefined && scene.outline.recipe.at < at ? 'recipe' : undefined;
  const start = partsAt[part] ?? 0;
  const named = scene.outline.parts[part]?.source.named ?? false;
  for (let line = named ? start + 1 : start; line < at; line++) {
    const kind = scene.document.lines[line]?.statement.kind;
    if (kind !== 'blank' && kind !== 'allow') return undefined;
  }
  return part;
}
