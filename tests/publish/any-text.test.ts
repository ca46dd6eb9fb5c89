/** Whatever a file holds, a page, a report and a difference come of it, and nothing throws. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { diffJson, diffText } from '../../server/src/publish/diff/words.ts';
import { diffRecipes } from '../../server/src/publish/diff.ts';
import { factsText } from '../../server/src/publish/facts-text.ts';
import { htmlPage } from '../../server/src/publish/html.ts';
import { jsonLd } from '../../server/src/publish/json-ld.ts';
import { markdownPage, textPage } from '../../server/src/publish/plain-pages.ts';
import { readerPage } from '../../server/src/publish/reader-page.ts';
import { report } from '../../server/src/publish/report.ts';
import { reportText } from '../../server/src/publish/report-text.ts';
import { viewFacts } from '../../server/src/publish/view/facts.ts';
import { allViews } from '../../server/src/publish/view/views.ts';
import { anyText } from '../support/arbitrary.ts';
import { open } from '../support/harness.ts';
import { faultsIn } from '../support/view.ts';

test('pages and reports', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const { recipe, findings } = open(text);
      for (const measures of ['weight-first', 'measure-first'] as const) {
        const page = readerPage(recipe, findings, { measures, label: 'us' });
        for (const made of [htmlPage(page), markdownPage(page), textPage(page), jsonLd(page)])
          expect(made).not.toMatch(/\bNaN\b|\bInfinity\b|\[object Object\]/);
        expect(htmlPage(page).match(/<script/g)).toHaveLength(1);
      }
      expect(reportText(report(recipe, findings))).not.toMatch(/\bNaN\b|undefined/);
      for (const mode of ['live', 'print'] as const)
        expect(faultsIn(allViews(viewFacts(recipe, findings, { mode })))).toEqual([]);
      expect(factsText(recipe)).toMatch(/^recipe/);
      expect(factsText(recipe)).not.toMatch(/^part {2}/m);
    }),
    { numRuns: 150 },
  );
});

test('differences: of a text with itself there are none', () => {
  fc.assert(
    fc.property(anyText, anyText, (a, b) => {
      const [x, y] = [open(a).recipe, open(b).recipe];
      expect(diffRecipes(x, x)).toEqual({ batch: 1, changes: [] });
      const found = diffRecipes(x, y);
      expect(diffText(found)).not.toMatch(/\bNaN\b|undefined/);
      expect(() => JSON.parse(diffJson(found, { from: 'a', to: 'b' }))).not.toThrow();
    }),
    { numRuns: 150 },
  );
});
