import { describe, expect, test } from 'vitest';
import type { Check } from '../../server/src/checks/check.ts';
import { fixesOf } from '../../server/src/checks/finding.ts';
import { CHECKS } from '../../server/src/checks/index.ts';
import type { Severity } from '../../server/src/checks/severity.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { checkFixture, onlyCheck, open } from '../support/harness.ts';
import { readMarks } from '../support/marks.ts';

const LEVELS: readonly Severity[] = ['hint', 'info', 'warning', 'error'];
const atLeast = (severity: Severity, least: Severity) => LEVELS.indexOf(severity) >= LEVELS.indexOf(least);

const badText = (example: Check['examples']['bad'][number]): string =>
  typeof example === 'string' ? example : example.text;
const allTexts = (check: Check): string[] =>
  [...check.examples.good, ...check.examples.bad.map(badText)].map((t) => readMarks(t).text);

/** Grams of every ingredient line, for fixes that may not change one. */
const grams = (snapshot: Snapshot): string[] =>
  snapshot.recipe.parts.flatMap((p) =>
    p.head.ingredients.flatMap((i) => (i.weighed.known ? [`${i.weighed.grams.low} ${i.weighed.grams.high}`] : [])),
  );

const syntaxErrors = (snapshot: Snapshot): number => snapshot.findings.open.filter((f) => f.code === 'syntax').length;

describe.each(CHECKS.map((check) => ({ code: check.code, check })))('$code', ({ check }) => {
  test('has a page with a title, a source and examples', () => {
    expect(check.title).toMatch(/^[A-Z].*[^.]$/);
    expect(check.explain.length).toBeGreaterThan(120);
    expect(check.explain).toMatch(/silent/i);
    expect(check.source.kind === 'common practice, no source' || check.source.title.length > 10).toBe(true);
    expect(check.examples.good.length).toBeGreaterThanOrEqual(2);
    expect(check.examples.bad.length).toBeGreaterThanOrEqual(2);
  });

  test('finds what its bad examples mark, and nothing else', () => {
    for (const example of check.examples.bad)
      expect(checkFixture(badText(example), check), badText(example)).toEqual([]);
  });

  test('is quiet on its good examples, and so are all other checks', () => {
    for (const example of check.examples.good) expect(checkFixture(example), example).toEqual([]);
  });

  test('its fixes remove the finding and bring no worse one', () => {
    for (const example of check.examples.bad) {
      const before = open(readMarks(badText(example)).text);
      const own = before.findings.open.filter((f) => f.code === check.code);
      const titles = new Set<string>();
      for (const finding of own) {
        for (const fix of fixesOf(finding, before)) {
          titles.add(fix.title);
          const text = printDocument(applyEdits(before.document, fix.edits));
          const after = open(text);
          const count = (s: Snapshot, code: string) => s.findings.open.filter((f) => f.code === code).length;
          expect(count(after, check.code), `${fix.title}\n${text}`).toBeLessThan(own.length);
          expect(syntaxErrors(after), text).toBeLessThanOrEqual(syntaxErrors(before));
          for (const other of after.findings.open) {
            if (!atLeast(other.severity, finding.severity)) continue;
            expect(
              count(after, other.code),
              `${fix.title} brings ${other.code}: ${other.said.message}\n${text}`,
            ).toBeLessThanOrEqual(count(before, other.code));
          }
          if (fix.effect !== 'amounts')
            expect(grams(after).filter((g) => grams(before).includes(g)).length, text).toBe(grams(before).length);
          if (typeof example !== 'string' && example.after?.[fix.title] !== undefined)
            expect(text).toBe(example.after[fix.title]);
        }
      }
      if (typeof example !== 'string')
        for (const title of Object.keys(example.after ?? {})) expect([...titles]).toContain(title);
    }
  });

  test('throws on no prefix of its examples, nor with a line gone', () => {
    for (const text of allTexts(check)) {
      for (let end = 0; end <= text.length; end++) open(text.slice(0, end), onlyCheck(check.code));
      const lines = text.split('\n');
      for (let i = 0; i < lines.length; i++) open(lines.toSpliced(i, 1).join('\n'));
    }
  });
});
