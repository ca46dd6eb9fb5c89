/**
 * Knows a finding as it stands in the JSON of `check` and `report`.
 */

import type { Finding } from '../checks/finding.ts';
import type { Severity } from '../checks/severity.ts';
import { sourceText } from './page.ts';
import { round } from './rounded.ts';

/** What a finding says. */
interface Saying {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly value: number | null;
  readonly unit: string | null;
  readonly band: readonly [number | null, number | null] | null;
  readonly source: string;
}

/** A finding as plain data. */
export interface PlainFinding extends Saying {
  readonly at: Finding['at'];
}

export interface FindingJson extends Saying {
  readonly range: RangeJson;
}

/** Lines and characters count from 0, characters in UTF-16 units. */
export interface RangeJson {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

export const plainFinding = ({ code, severity, said, at, check }: Finding): PlainFinding => ({
  code,
  severity,
  message: said.message,
  at,
  value: said.value === undefined ? null : round(said.value, 4),
  unit: said.unit ?? null,
  band: said.band ?? null,
  source: said.source ?? sourceText(check.source),
});

export const findingJson = ({ code, severity, message, at, value, unit, band, source }: PlainFinding): FindingJson => ({
  code,
  severity,
  message,
  range: { start: { line: at.line, character: at.start }, end: { line: at.line, character: at.end } },
  value,
  unit,
  band,
  source,
});
