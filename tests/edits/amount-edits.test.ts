/** Properties of the edits that change amounts, on every example and on generated and hostile texts. */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { CONVERSIONS, type ConvertTo } from '../../server/src/edits/conversion.ts';
import { convertRecipe } from '../../server/src/edits/convert.ts';
import { scaleRecipe } from '../../server/src/edits/scale.ts';
import type { ScaleTarget } from '../../server/src/edits/scale-target.ts';
import { applyEdits, type TextEdit } from '../../server/src/edits/text-edit.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { quernText } from '../support/arbitrary.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';
import { recipeText } from './generated-recipes.ts';
import { keptWords } from './kept-words.ts';

// Properties take as long as the machine lets them.
vi.setConfig({ testTimeout: 120_000 });

type Opened = ReturnType<typeof open>;

function scaled(snapshot: Opened, target: ScaleTarget): string | undefined {
  const result = scaleRecipe(snapshot.document, snapshot.recipe, target);
  return result.ok ? apply(snapshot, result.scaling.edits) : undefined;
}

const converted = (snapshot: Opened, to: ConvertTo, both = false): string =>
  apply(snapshot, convertRecipe(snapshot.document, snapshot.recipe, { to, both }).edits);

function apply({ document }: Opened, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => a.start.line - b.start.line || a.start.character - b.start.character);
  ordered.forEach((edit, i) => {
    const next = ordered[i + 1];
    if (next?.start.line === edit.start.line) expect(next.start.character).toBeGreaterThanOrEqual(edit.end.character);
  });
  return printDocument(applyEdits(document, edits));
}

/** Ingredients with grams, by part and line. */
const weights = ({ recipe }: Opened): Map<string, { readonly grams: number; readonly unit: string }> =>
  new Map(
    recipe.parts.flatMap((p) =>
      p.head.ingredients.flatMap((i) => {
        const { amount } = i.node;
        const unit = amount?.kind === 'measured' ? (amount.unit?.symbol ?? 'piece') : '';
        return i.weighed.known
          ? [
              [
                `${p.index}:${i.line}`,
                { grams: i.weighed.typical ?? (i.weighed.grams.low + i.weighed.grams.high) / 2, unit },
              ] as const,
            ]
          : [];
      }),
    ),
  );

const factor = fc.constantFrom(0.25, 1 / 3, 0.5, 0.7, 1.1, 1.5, 2, 3, 4.2);
const target: fc.Arbitrary<ScaleTarget> = fc.oneof(
  factor.map((by): ScaleTarget => ({ kind: 'by', by })),
  fc.constantFrom<ScaleTarget>(
    { kind: 'pan', words: 'round 28 x 4 cm' },
    { kind: 'yield', words: '18' },
    { kind: 'yield', words: '24 rolls of 60 g' },
    { kind: 'mass', words: '1.2 kg' },
    { kind: 'whole eggs' },
  ),
);

/** By how much a kitchen's rounding may miss, as a share: a tenth of a gram below ten, half a per cent above, a quarter piece. */
const slack = (grams: number, unit: string): number =>
  unit === 'piece'
    ? 0.3
    : unit === 'g' || unit === 'kg' || unit === 'ml' || unit === 'l' || unit === 'dl'
      ? 0.006 + 0.06 / grams
      : 0.12;

describe('scaling', () => {
  test('by k and then by 1/k gives back the original within rounding', () => {
    fc.assert(
      fc.property(recipeText, factor, (text, by) => {
        const before = open(text);
        const there = scaled(before, { kind: 'by', by });
        const back = there === undefined ? undefined : scaled(open(there), { kind: 'by', by: 1 / by });
        expect(back).toBeDefined();
        const after = weights(open(back ?? ''));
        const between = weights(open(there ?? ''));
        for (const [key, { grams, unit }] of weights(before)) {
          const mid = between.get(key);
          expect(mid, `${key} lost in\n${there}`).toBeDefined();
          const off = Math.abs((after.get(key)?.grams ?? 0) / grams - 1);
          expect(off, `${key}, ${unit}, ${by}\n${text}\n${there}\n${back}`).toBeLessThan(
            slack(grams, unit) + slack(mid?.grams ?? grams, mid?.unit ?? unit),
          );
        }
      }),
      { numRuns: 80 },
    );
  });

  test('exactly, it is exact: there is no rounding in the list', () => {
    fc.assert(
      fc.property(recipeText, factor, (text, by) => {
        const before = open(text);
        const after = weights(open(scaled(before, { kind: 'by', by, exact: true }) ?? ''));
        for (const [key, { grams }] of weights(before))
          expect(Math.abs((after.get(key)?.grams ?? 0) / (grams * by) - 1)).toBeLessThan(0.002);
      }),
      { numRuns: 40 },
    );
  });

  test('ratios of weights of ten grams and more are kept within 1 %', () => {
    fc.assert(
      fc.property(recipeText, factor, (text, by) => {
        const before = open(text);
        const after = weights(open(scaled(before, { kind: 'by', by }) ?? ''));
        const errors = [...weights(before)]
          .filter(([, w]) => w.unit === 'g' && w.grams >= 10 && w.grams * by >= 10)
          .map(([key, w]) => (after.get(key)?.grams ?? 0) / (w.grams * by));
        if (errors.length > 1) expect(Math.max(...errors) / Math.min(...errors)).toBeLessThan(1.0101);
      }),
      { numRuns: 80 },
    );
  });

  test('keeps every line, comment, line end and word', () => {
    fc.assert(
      fc.property(recipeText, target, (text, size) => {
        const after = scaled(open(text), size);
        const words = (t: string) =>
          keptWords(size.kind === 'pan' ? t.replace(/pan {5}.*/, '') : t.replace(/\(\d+ g beaten\)/g, ''));
        if (after !== undefined) expect(words(after)).toEqual(words(text));
      }),
      { numRuns: 80 },
    );
  });

  test('on hostile text throws nothing, and loses no line', () => {
    fc.assert(
      fc.property(quernText, target, (text, size) => {
        const after = scaled(open(text), size);
        if (after !== undefined) expect(after.split(/\r\n|\n|\r/)).toHaveLength(text.split(/\r\n|\n|\r/).length);
      }),
      { numRuns: 80 },
    );
  });
});

/** A conversion says how far off a weight may be; what it writes lies in what was there. */
describe('converting', () => {
  const to = fc.constantFrom<ConvertTo>(...CONVERSIONS);

  test('keeps every line, comment, line end and word', () => {
    fc.assert(
      fc.property(recipeText, to, fc.boolean(), (text, wish, both) => {
        const drop = (t: string) =>
          t
            .replaceAll(/\b(?:large|medium|cloves?)\b/g, '')
            .replaceAll(/\babout\b/g, '')
            .replaceAll(/\b(?:gas|fan)\b/g, '');
        expect(keptWords(drop(converted(open(text), wish, both)))).toEqual(keptWords(drop(text)));
      }),
      { numRuns: 80 },
    );
  });

  test('changes no weight by more than the kitchen’s rounding', () => {
    fc.assert(
      fc.property(recipeText, fc.constantFrom<ConvertTo>('weight', 'metric', 'us', 'percent'), (text, wish) => {
        const before = open(text);
        const text2 = converted(before, wish);
        const after = weights(open(text2));
        const batch = text.includes('yield   900 g') && wish === 'percent';
        for (const [key, { grams }] of batch ? [] : weights(before)) {
          const off = Math.abs((after.get(key)?.grams ?? 0) / grams - 1);
          expect(off, `${key} ${grams} → ${after.get(key)?.grams}\n${text}\n${text2}`).toBeLessThan(
            wish === 'us' ? 0.065 + 0.1 / grams : 0.011 + 0.06 / grams,
          );
        }
      }),
      { numRuns: 80 },
    );
  });

  test('a second time changes nothing', () => {
    fc.assert(
      fc.property(recipeText, to, (text, wish) => {
        const once = converted(open(text), wish);
        expect(converted(open(once), wish)).toBe(once);
      }),
      { numRuns: 100 },
    );
  });

  test('on hostile text throws nothing, and loses no line', () => {
    fc.assert(
      fc.property(quernText, to, fc.boolean(), (text, wish, both) => {
        const after = converted(open(text), wish, both);
        expect(after.split(/\r\n|\n|\r/)).toHaveLength(text.split(/\r\n|\n|\r/).length);
      }),
      { numRuns: 80 },
    );
  });
});

/** What another size, or another measure, may really bring; a weight in place of a number of eggs is no range any more. */
const OF_SIZE: ReadonlySet<string> = new Set([
  'pan-overfull',
  'pan-underfull',
  'trial-disagrees',
  'egg-out-of-range',
  'untested-change',
  'yield-mismatch',
]);
const codes = (snapshot: Opened): string[] =>
  snapshot.findings.open
    .map((f) => f.code)
    .filter((c) => !OF_SIZE.has(c))
    .sort();

describe.each(EXAMPLES.filter(([file]) => file !== 'first-draft.quern'))('%s', (_, text) => {
  const before = openInKitchen(text);
  const whole = !before.recipe.inherits && before.recipe.parts.length > 0;

  test.runIf(whole).each([0.5, 1.5, 3])('scaled by %d is found no worse, and keeps its words', (by) => {
    const after = scaled(before, { kind: 'by', by }) ?? '';
    expect(keptWords(after)).toEqual(keptWords(text));
    const now = codes(openInKitchen(after));
    expect(
      now.filter((c) => !codes(before).includes(c)),
      after,
    ).toEqual([]);
  });

  test.each(CONVERSIONS)('in %s is found no worse', (to) => {
    const after = converted(before, to);
    const now = codes(openInKitchen(after));
    expect(
      now.filter((c) => !codes(before).includes(c)),
      after,
    ).toEqual([]);
  });
});
