/**
 * Knows findings as a SARIF log: OASIS Static Analysis Results Interchange Format 2.1.0.
 * Accepted findings and those of a baseline are in it as suppressed, so that nothing is hidden from whoever reads it.
 */
import type { Check, Fix } from '../../checks/check.ts';
import { CHECKS } from '../../checks/index.ts';
import type { Severity } from '../../checks/severity.ts';
import { fingerprintText } from '../../publish/fingerprint.ts';
import { explainPage, sourceText } from '../../publish/page.ts';
import type { CheckedFile, CheckedFinding } from '../checked-file.ts';
import { jsonItem, jsonWith, type Printing } from './printing.ts';
import { relatedPlaces, type Shown } from './related.ts';

const LEVELS: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', info: 'note', hint: 'note' };

interface Suppression {
  readonly kind: 'inSource' | 'external';
  readonly justification: string;
}

/** The log of one run. */
export function sarif(version: string, shownAs: Shown): Printing {
  const rules: Check[] = [];
  const results: string[] = [];
  return {
    add(file) {
      const seen = new Map<string, number>();
      const result = (finding: CheckedFinding, suppressions: readonly Suppression[]) => {
        const check = CHECKS.find((c) => c.code === finding.code);
        if (check !== undefined && !rules.includes(check)) rules.push(check);
        const rule = rules.findIndex((r) => r.code === finding.code);
        results.push(jsonItem(resultOf(file, finding, rule, suppressions, seen, shownAs), DEPTH));
      };
      for (const f of file.open) result(f, []);
      for (const f of file.accepted) result(f, [{ kind: 'inSource', justification: f.reason }]);
      for (const f of file.known) result(f, [{ kind: 'external', justification: 'It stands in the baseline.' }]);
    },
    text(_, problems) {
      const log = {
        $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
        version: '2.1.0',
        runs: [
          {
            tool: { driver: { name: 'Quern', version, semanticVersion: version, rules: rules.map(ruleOf) } },
            invocations: [
              {
                executionSuccessful: problems.length === 0,
                toolConfigurationNotifications: problems.map((text) => ({
                  level: 'warning',
                  message: { text: sarifText(text) },
                })),
              },
            ],
            columnKind: 'utf16CodeUnits',
            results: [],
          },
        ],
      };
      return jsonWith(log, 'results', results, DEPTH);
    },
  };
}

/** A result stands in the list of a run, which stands in that of the log. */
const DEPTH = 4;

function ruleOf(check: Check): object {
  return {
    id: check.code,
    shortDescription: { text: `${check.title}.` },
    fullDescription: { text: firstParagraph(check.explain) },
    help: { text: `${check.explain}\n\nSource: ${sourceText(check.source)}.`, markdown: explainPage(check) },
    defaultConfiguration: { level: LEVELS[check.severity] },
    properties: { tags: [check.family] },
  };
}

function resultOf(
  file: CheckedFile,
  finding: CheckedFinding,
  ruleIndex: number,
  suppressions: readonly Suppression[],
  seen: Map<string, number>,
  shownAs: Shown,
): object {
  const key = fingerprintText(finding.fingerprint);
  const nth = (seen.get(key) ?? 0) + 1;
  seen.set(key, nth);
  const artifactLocation = locationOf(file.shown);
  const fixes = finding.fixes.map((fix) => fixOf(fix, artifactLocation));
  const related = relatedPlaces(finding, file.shown, shownAs).map(({ path, at, message }, id) => ({
    id,
    message: { text: sarifText(message) },
    physicalLocation: { artifactLocation: locationOf(path), region: regionOf(at) },
  }));
  return {
    ruleId: finding.code,
    ruleIndex,
    level: LEVELS[finding.severity],
    message: { text: sarifText(finding.message) },
    locations: [{ physicalLocation: { artifactLocation, region: regionOf(finding.at) } }],
    ...(related.length > 0 && { relatedLocations: related }),
    partialFingerprints: { 'quernFinding/v1': nth === 1 ? key : `${key}|${nth}` },
    ...(suppressions.length > 0 && { suppressions }),
    ...(fixes.length > 0 && { fixes }),
  };
}

function fixOf(fix: Fix, artifactLocation: object): object {
  const replacements = fix.edits.map(({ start, end, text }) => ({
    deletedRegion: {
      startLine: start.line + 1,
      startColumn: start.character + 1,
      endLine: end.line + 1,
      endColumn: end.character + 1,
    },
    insertedContent: { text },
  }));
  return { description: { text: sarifText(`${fix.title}.`) }, artifactChanges: [{ artifactLocation, replacements }] };
}

function regionOf(at: CheckedFinding['at']): object {
  return { startLine: at.line + 1, startColumn: at.start + 1, endLine: at.line + 1, endColumn: at.end + 1 };
}

/** Relative to where the command ran, by a base that the reader sets; absolute where the file lies elsewhere. */
function locationOf(shown: string): object {
  const slashed = shown.replaceAll('\\', '/');
  const encoded = slashed.split('/').map(encodeURIComponent).join('/');
  if (slashed.startsWith('/')) return { uri: `file://${encoded}` };
  const drive = /^([A-Za-z]):\//.exec(slashed);
  if (drive !== null) return { uri: `file:///${drive[1]}:/${encoded.slice(encoded.indexOf('/') + 1)}` };
  return { uri: encoded, uriBaseId: '%SRCROOT%' };
}

/** In a message, what stands in brackets would be a link (SARIF 2.1.0, 3.11.6, from memory). */
const sarifText = (text: string): string => text.replace(/[\\[\]]/g, '\\$&');

const firstParagraph = (markdown: string): string =>
  markdown
    .trim()
    .split(/\n\s*\n/)[0]
    ?.replace(/\s+/g, ' ') ?? '';
