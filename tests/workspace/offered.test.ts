/** Every fix that is offered, made: its finding is gone, and no other has come. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fixesOf } from '../../server/src/checks/finding.ts';
import { CHECKS } from '../../server/src/checks/index.ts';
import { SEVERITIES } from '../../server/src/checks/severity.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { nodeFiles } from '../../server/src/host/files.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { offeredFixes } from '../../server/src/workspace/offered.ts';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { openAs, RECIPES } from '../outside/faults/corpus.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';
import { readMarks } from '../support/marks.ts';

type Opening = (text: string) => Snapshot;

const KITCHEN = nodeFiles()
  .recipesBelow(resolve('tests/kitchen'))
  .map((path) => readMarks(readFileSync(path, 'utf8')).text);
const OF_CHECKS = CHECKS.flatMap(({ examples: { good, bad } }) => [
  ...good,
  ...bad.map((example) => (typeof example === 'string' ? example : example.text)),
]).map((marked) => readMarks(marked).text);

const CORPUS: readonly (readonly [string, Opening])[] = [
  ...[...KITCHEN, ...OF_CHECKS].map((text) => [text, open] as const),
  ...EXAMPLES.map(([path, text]): [string, Opening] => [text, (t) => openInKitchen(t, path)]),
  ...RECIPES.map(({ file, text }): [string, Opening] => [text, (t) => openAs(file, t)]),
];

/** How many there are of a code, that are at least so grave. */
const count = ({ findings }: Snapshot, code: string, least = 0): number =>
  findings.open.filter((f) => f.code === code && SEVERITIES.indexOf(f.severity) >= least).length;

/** What is newly found, or graver, but what is only seen now that a line is read, and hints how more would be. */
function brought(before: Snapshot, after: Snapshot, isReading: boolean): string[] {
  return after.findings.open.flatMap(({ code, severity, check: { family }, said }) => {
    if (family === 'reading' ? severity === 'hint' : isReading) return [];
    const least = SEVERITIES.indexOf(severity);
    return count(after, code, least) > count(before, code, least) ? [`${code}: ${said.message}`] : [];
  });
}

/** What is wrong with a file's offered fixes, each made and read afresh. */
function faultsOf(before: Snapshot, read: Opening): string[] {
  return before.findings.open.flatMap((finding) =>
    offeredFixes(finding, before).flatMap((fix) => {
      const after = read(printDocument(applyEdits(before.document, fix.edits)));
      const stays = count(after, finding.code) >= count(before, finding.code);
      const more = brought(before, after, finding.check.family === 'reading');
      return stays || more.length > 0 ? [`${fix.title}: ${stays ? 'stays' : more.join('; ')}\n${before.text}`] : [];
    }),
  );
}

describe('every offered fix removes its finding and brings no other', () => {
  test('over every recipe there is', () => {
    let [all, offered] = [0, 0];
    for (const [text, read] of CORPUS) {
      const snapshot = read(text);
      expect(faultsOf(snapshot, read)).toEqual([]);
      for (const finding of snapshot.findings.open) {
        all += fixesOf(finding, snapshot).length;
        offered += offeredFixes(finding, snapshot).length;
      }
    }
    expect(offered).toBeGreaterThan(400);
    // A check that cannot mend what it finds is to be mended itself.
    expect(offered / all).toBeGreaterThan(0.95);
  }, 180_000);

  const KINDS = CORPUS.filter(([text]) => / as /.test(text));
  test('and where an amount in them is a slip', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...KINDS),
        fc.nat(40),
        fc.constantFrom(0.1, 0.3, 0.6, 1.8, 3, 10),
        ([text, read], at, by) => {
          const lines = text.split('\n');
          const amounts = lines.flatMap((line, i) => (/^\s+\d+(?:\.\d+)? \S/.test(line) ? [i] : []));
          const line = amounts[at % amounts.length];
          if (line === undefined) return;
          lines[line] =
            lines[line]?.replace(/\d+(?:\.\d+)?/, (n) => String(Math.round(Number(n) * by * 100) / 100)) ?? '';
          expect(faultsOf(read(lines.join('\n')), read)).toEqual([]);
        },
      ),
      { numRuns: 200 },
    );
  });
});

/** The titles offered for a code. */
const offeredFor = (text: string, code: string): string[] => {
  const snapshot = open(text);
  return snapshot.findings.open
    .filter((f) => f.code === code)
    .flatMap((f) => offeredFixes(f, snapshot))
    .map((f) => f.title);
};

const ICE =
  'recipe Milk ice\npart mix as ice cream\n  600 g     whole milk\n  200 g     double cream\n  30 g      caster sugar\n  20 g      skimmed milk powder\n  do Warm the milk, cream, sugar and milk powder to 85 C, and cool over ice to 5 C.\n  do Churn, then freeze at -18 C for 4 h.\n';

test("a band is mended within the kind's other bands", () => {
  const before = open(ICE);
  const finding = before.findings.open.find((f) => f.code === 'freeze-out-of-range');
  const [fix] = finding === undefined ? [] : fixesOf(finding, before);
  expect(fix).toBeDefined();
  const after = before.after(fix?.edits ?? []);
  expect(after.findings.open.filter((f) => f.check.family === 'formula').map((f) => f.said.message)).toEqual([]);
});

test('a temperature that cannot be meant is not mended into one at which it is eaten underdone', () => {
  const roast = (heat: string) =>
    `recipe Roast\n  1.2 kg    beef topside\n  do Roast at 180 C until the centre reads ${heat}.\n`;
  expect(offeredFor(roast('135 C'), 'implausible-temperature')).toEqual([]);
  expect(offeredFor(roast('150 C'), 'implausible-temperature')).toEqual(['Write 150 F']);
});

test('what a misspelled name hid is not held against its right spelling', () => {
  const pie = 'recipe Grill\n  800 g     chicken thihgs\n  do Fry the chicken thihgs.\n';
  expect(offeredFor(pie, 'unknown-food')).toContain('Write `chicken thigh`');
});

test('all that the steps take is listed at once', () => {
  const cakes =
    'recipe Cakes\n  300 g     butter\n  100 g     oats\n  do Soften the butter for an hour.\n  do Rub 200 g of the butter into the oats.\n  do Fry in 200 g of the butter.\n  do Brush with 50 g of the butter.\n';
  const before = open(cakes);
  const [fix] = before.findings.open
    .filter((f) => f.code === 'overdrawn-amount')
    .flatMap((f) => offeredFixes(f, before));
  expect(before.after(fix?.edits ?? []).text).toBe(cakes.replace('300 g ', '450 g '));
});

test('what is misread is the same where nothing else is asked', () => {
  for (const [text, opening] of CORPUS.filter((_, i) => i % 20 === 0))
    expect(placesOf(opening(text).misread)).toEqual(
      placesOf(opening(text).findings.open.filter(({ check }) => check.family === 'reading')),
    );
});

const placesOf = (findings: Snapshot['findings']['open']) =>
  findings.map(({ code, severity, at, said }) => ({ code, severity, at, said }));
