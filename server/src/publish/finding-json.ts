/**
 * Knows a finding as it stands in the JSON of `check` and `report`.
 */
import type { Severity } from '../checks/check.ts';
import type { Finding } from '../checks/finding.ts';
import { sourceText } from './page.ts';

/** Lines and characters count from 0, characters in UTF-16 units. */
export interface FindingJson {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly range: {
    readonly start: { readonly line: number; readonly character: number };
    readonly end: { readonly line: number; readonly character: number };
  };
  readonly value: number | null;
  readonly unit: string | null;
  readonly band: readonly [number | null, number | null] | null;
  readonly source: string;
}

export function findingJson(finding: Finding): FindingJson {
  const { at, said, check } = finding;
  return {
    code: finding.code,
    severity: finding.severity,
    message: said.message,
    range: { start: { line: at.line, character: at.start }, end: { line: at.line, character: at.end } },
    value: said.value === undefined ? null : Number(said.value.toFixed(4)),
    unit: said.unit ?? null,
    band: said.band ?? null,
    source: said.source ?? sourceText(check.source),
  };
}
