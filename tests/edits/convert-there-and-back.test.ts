/**
 * Tolerances of a conversion: grams in other measures and back within 3 %, temperatures in the food to the degree, ovens to the mark of a dial.
 * What is found of a recipe stays found.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { wrongPlaces } from '../../server/src/checks/finding.ts';
import { CHECKS } from '../../server/src/checks/index.ts';
import { CONVERSIONS, type ConvertTo } from '../../server/src/edits/conversion.ts';
import { convertRecipe } from '../../server/src/edits/convert.ts';
import { likelyGrams } from '../../server/src/food/weigh.ts';
import { nodeFiles } from '../../server/src/host/files.ts';
import { degreesIn } from '../../server/src/recipe/journey/degrees.ts';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { RECIPES } from '../outside/faults/corpus.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';
import { readMarks } from '../support/marks.ts';

const converted = (snapshot: Snapshot, to: ConvertTo): Snapshot => {
  const { document, recipe, findings } = snapshot;
  return snapshot.after(convertRecipe(document, recipe, { to, marked: wrongPlaces(findings) }).edits);
};

const CORPUS: readonly Snapshot[] = [
  ...nodeFiles()
    .recipesBelow(resolve('tests/kitchen'))
    .map((path) => open(readMarks(readFileSync(path, 'utf8')).text)),
  ...CHECKS.flatMap(({ examples: { bad } }) => bad).map((example) =>
    open(readMarks(typeof example === 'string' ? example : example.text).text),
  ),
  ...EXAMPLES.map(([path, text]) => openInKitchen(text, path)),
  ...RECIPES.map(({ snapshot }) => snapshot),
];

/** The lines of the lists that are known by weight, those that follow another's left out: grams and the line as written. */
function grams({ recipe, document }: Snapshot): (readonly [key: string, grams: number, line: string])[] {
  return recipe.parts.flatMap(({ head, index }) =>
    head.ingredients.flatMap(({ weighed, percent, line }, i) =>
      weighed.known && percent === undefined
        ? [[`${index}.${i}`, likelyGrams(weighed), document.lines[(recipe.partsAt[index] ?? 0) + line]?.text ?? '']]
        : [],
    ),
  );
}

/** A scale shows no less. */
const LEAST_G = 0.06;

describe('grams', () => {
  const WAYS: readonly (readonly [ConvertTo, ConvertTo])[] = [
    ['us', 'weight'],
    ['us', 'metric'],
    ['metric', 'us'],
    ['weight', 'us'],
  ];
  test.each(WAYS)(
    'to %s, and from there to %s, stay within 3 %%',
    (there, back) => {
      let lines = 0;
      const off: string[] = [];
      for (const before of CORPUS) {
        const once = converted(before, there);
        const twice = converted(once, back);
        const now = [new Map(grams(once).map((g) => [g[0], g])), new Map(grams(twice).map((g) => [g[0], g]))];
        for (const [key, was, line] of grams(before))
          for (const after of now) {
            lines++;
            const [, is = Number.NaN, written] = after.get(key) ?? [];
            const isNear = Math.abs(is - was) <= Math.max(0.03 * was, LEAST_G) + 1e-9;
            if (!isNear) off.push(`${line} => ${written}: ${was} => ${is} g`);
          }
      }
      expect(off).toEqual([]);
      expect(lines).toBeGreaterThan(5000);
    },
    180_000,
  );
});

/** What says that a figure is not meant: all errors, and some warnings. */
const doubts = ({ findings }: Snapshot) =>
  findings.open.filter(({ check, severity }) => check.doubtsFigure === true || severity === 'error');

const DOUBTED = CORPUS.filter((snapshot) => doubts(snapshot).length > 0);

describe('what is marked', () => {
  test.each(CONVERSIONS)('%s: no error, and no doubt of a figure, is converted away', (to) => {
    const gone = DOUBTED.flatMap((before) => {
      const after = converted(before, to);
      const left = doubts(after).map(({ code }) => code);
      return doubts(before).flatMap(({ code, at }) => {
        if (left.includes(code)) {
          left.splice(left.indexOf(code), 1);
          return [];
        }
        // What a doubt was raised by may be on the other scale now; what it stands on is not.
        const isThere =
          code === 'implausible-temperature' && after.document.lines[at.line] === before.document.lines[at.line];
        return isThere ? [] : [`${code}: ${before.text}`];
      });
    });
    expect(gone).toEqual([]);
    expect(DOUBTED.length).toBeGreaterThan(100);
  });
});

test('a pressure that is said in pounds is no weight', () => {
  const step = '  do Process 25 minutes at 11 pounds.';
  const broth = open(`recipe Broth\n  2 lb      beef bones\n  do Fill hot jars with it and put on lids.\n${step}\n`);
  const { text } = converted(broth, 'metric');
  expect(text).toContain('907 g');
  expect(text).toContain(step);
});

describe('temperatures', () => {
  test('in the food come back as they were, or a degree further on the safe side', () => {
    for (let c = 50; c <= 120; c++) {
      const back = Number(degreesIn((Number(degreesIn(c, 'F', 'food')) - 32) / 1.8, 'C', 'food'));
      expect(back - c, `${c} C`).toBeGreaterThanOrEqual(0);
      expect(back - c, `${c} C`).toBeLessThanOrEqual(1);
    }
  });

  test('of an oven come back to a mark of its dial, within 10 °C', () => {
    for (let c = 100; c <= 250; c += 10) {
      const f = Number(degreesIn(c, 'F', 'oven'));
      expect(f % 5, `${c} C`).toBe(0);
      const back = Number(degreesIn((f - 32) / 1.8, 'C', 'oven'));
      expect(back % 5, `${c} C`).toBe(0);
      expect(Math.abs(back - c), `${c} C`).toBeLessThanOrEqual(10);
    }
  });
});
