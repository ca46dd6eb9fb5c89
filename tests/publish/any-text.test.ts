/** Whatever a file holds, a page, a report and a difference come of it, and nothing throws. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { diffJson, diffText } from '../../server/src/publish/diff/words.ts';
import { diffRecipes } from '../../server/src/publish/diff.ts';
import { factsText } from '../../server/src/publish/facts-text.ts';
import { htmlPage } from '../../server/src/publish/html.ts';
import { jsonLd } from '../../server/src/publish/json-ld.ts';
import { allSteps, kitchenStep } from '../../server/src/publish/kitchen/page.ts';
import { kitchenFacts } from '../../server/src/publish/kitchen/steps.ts';
import { markdownPage, textPage } from '../../server/src/publish/plain-pages.ts';
import { readerPage } from '../../server/src/publish/reader-page.ts';
import { report } from '../../server/src/publish/report.ts';
import { reportText } from '../../server/src/publish/report-text.ts';
import { siteOf } from '../../server/src/publish/site/site.ts';
import { viewFacts } from '../../server/src/publish/view/facts.ts';
import { viewState } from '../../server/src/publish/view/state.ts';
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

test('the kitchen and a site', () => {
  const links = { step: (number: number) => `#${number}`, all: '#all', recipe: '#recipe' };
  fc.assert(
    fc.property(anyText, anyText, (text, other) => {
      const { recipe, findings } = open(text);
      const facts = kitchenFacts(recipe, findings.open, '12:00');
      expect(facts.steps).toHaveLength(recipe.parts.reduce((sum, part) => sum + part.steps.length, 0));
      for (const html of [allSteps(facts, links), ...facts.steps.map((_, i) => kitchenStep(facts, i + 1, links))])
        expect(faultsIn(html)).toEqual([]);
      const published = [text, other].map((each, i) => {
        const { recipe, findings } = open(each);
        const page = readerPage(recipe, findings, { measures: 'weight-first', label: 'eu' });
        return { name: `r${i}`, page, state: viewState(recipe, page.proof, []), pictures: [] };
      });
      const site = siteOf('Any', published);
      expect(site.ok && site.files.map(({ path }) => path)).toEqual([
        'index.html',
        'allergens.html',
        'print.html',
        'r0.html',
        'r1.html',
      ]);
      for (const { text } of site.ok ? site.files : []) {
        expect(text).not.toMatch(/\bNaN\b|\bInfinity\b|\[object Object\]/);
        expect(text.match(/<script(?! type="application\/ld\+json">)/g)).toBeNull();
        const ids = [...text.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
        expect(new Set(ids).size).toBe(ids.length);
      }
    }),
    { numRuns: 60 },
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
