/** Every example file: quiet where quiet is right, laid out, and safe to break anywhere. */
import { describe, expect, test } from 'vitest';
import { printDocument } from '../../server/src/notation/document.ts';
import { layout } from '../../server/src/notation/layout.ts';
import { EXAMPLES, openInKitchen } from '../support/harness.ts';

describe.each(EXAMPLES)('%s', (file, text) => {
  const snapshot = openInKitchen(text, file);

  test('prints back', () => expect(printDocument(snapshot.document)).toBe(text));

  test.runIf(file !== 'first-draft.quern')('is laid out canonically', () => {
    expect(layout(snapshot.document).join('\n')).toBe(snapshot.document.lines.map((l) => l.text).join('\n'));
  });

  test.runIf(file !== 'first-draft.quern')('raises nothing', () => {
    expect(snapshot.findings.open.map((f) => `${f.at.line + 1}: ${f.code}: ${f.said.message}`)).toEqual([]);
  });

  test('throws nowhere when it is cut short or loses a line', () => {
    for (let end = 0; end < text.length; end += 7) openInKitchen(text.slice(0, end));
    const lines = text.split('\n');
    for (const i of lines.keys()) openInKitchen(lines.toSpliced(i, 1).join('\n'));
  });
});

test('the first draft shows at least twelve findings, and says that it does', () => {
  const [, text = ''] = EXAMPLES.find(([file]) => file === 'first-draft.quern') ?? [];
  expect(text.split('\n')[0]).toMatch(/^# .*shows/);
  const findings = openInKitchen(text).findings.open;
  expect(findings.length).toBeGreaterThanOrEqual(12);
  expect(new Set(findings.map((f) => f.code)).size).toBeGreaterThanOrEqual(12);
});

test('there are at least ten recipes', () => {
  expect(EXAMPLES.filter(([, text]) => /^recipe /m.test(text)).length).toBeGreaterThanOrEqual(11);
});
