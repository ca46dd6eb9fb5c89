/**
 * Knows what a finding is once it has a place in the document: what was found, what is said of it, and how it may be mended.
 * Refuses to know how it was found.
 */
import type { Check, Fix, Found, Said, Scene } from './check.ts';
import { arithmetic, bandValuesIn } from './formula/arithmetic.ts';
import type { Severity } from './severity.ts';

/** A finding at its place in the document; the same object for as long as neither it nor its place changes. */
export interface Finding {
  readonly check: Check;
  readonly code: string;
  readonly severity: Severity;
  /** By line of the document. */
  readonly at: { readonly line: number; readonly start: number; readonly end: number };
  readonly said: Said;
  readonly related: readonly {
    readonly at: { readonly line: number; readonly start: number; readonly end: number };
    readonly message: string;
    /** The path of another file it stands in. */
    readonly file?: string;
  }[];
  readonly found: Found<unknown>;
  /** Fixes already placed back, of what was found in a variant written out. */
  readonly fixes?: () => readonly Fix[];
  /** Its arithmetic, likewise. */
  readonly work?: () => readonly string[];
  /** The part it belongs to, for `allow`. */
  readonly part?: number;
}

export interface AcceptedFinding extends Finding {
  readonly reason: string;
}

export interface Findings {
  readonly open: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
}

/** Where an error stands that nobody has accepted, or a figure that may not be meant. */
export const wrongPlaces = ({ open }: Findings): readonly Finding['at'][] =>
  open.flatMap(({ severity, check, at }) => (severity === 'error' || check.doubtsFigure === true ? [at] : []));

/** The fixes of a finding, worked out when asked for. */
export function fixesOf(finding: Finding, scene: Scene): readonly Fix[] {
  return finding.fixes?.() ?? finding.check.fix?.(finding.found.values, scene, finding.at) ?? [];
}

/** How a finding was computed, line by line, in Markdown; nothing where nothing is added up. */
export function workOf(finding: Finding, scene: Scene): readonly string[] {
  if (finding.work !== undefined) return finding.work();
  const { values } = finding.found;
  const held = bandValuesIn(values);
  return held === undefined ? (finding.check.work?.(values, scene) ?? []) : arithmetic(held);
}
