/** The report and the hover of a measure that hangs on a food nobody knows: the range, and never a nought or a verdict that is a guess. */
import { describe, expect, test } from 'vitest';
import { bandFacts } from '../../server/src/editor/facts.ts';
import { report } from '../../server/src/publish/report.ts';
import { reportText } from '../../server/src/publish/report-text.ts';
import { viewFacts } from '../../server/src/publish/view/facts.ts';
import { printedReport } from '../../server/src/publish/view/printed.ts';
import { open } from '../support/harness.ts';

const COOKIES = (sugar: string) =>
  `recipe Biscuits as cookie\n  yield   20 biscuits\n  200 g     plain flour\n  100 g     butter\n  120 g     ${sugar}\n  do Beat everything together.\n`;

const worked = (sugar: string) => {
  const { recipe, findings } = open(COOKIES(sugar));
  const whole = report(recipe, findings);
  const measure = whole.parts[0]?.measures.find((m) => m.name === 'sugar');
  const [part] = recipe.parts;
  const hover = part === undefined ? [] : bandFacts(part).map((fact) => JSON.stringify(fact));
  const html = printedReport(viewFacts(recipe, findings, { mode: 'print' }));
  return { measure, text: reportText(whole), html, hover: hover.join('\n') };
};

describe('the sugar of biscuits', () => {
  test('with nothing known of what sweetens them', () => {
    const { measure, text, html, hover } = worked('xylo');
    expect(measure).toMatchObject({ value_low: 0, verdict: null, hangs_on: ['xylo'] });
    expect(measure?.value_high).toBeGreaterThan(0.5);
    expect(text).toMatch(/ {2}sugar: 0 to 60 %, hangs on xylo \(usual /);
    expect(html).toContain('whatever <b>xylo</b> brings');
    expect(hover).toContain('whatever `xylo` brings; usual');
    expect(hover).toContain(', perhaps within it');
  });

  test('with a sugar of the house of which nothing is said', () => {
    const { measure, text } = (() => {
      const { recipe, findings } = open(`${COOKIES('palm crystals')}\nfood palm crystals\n  1 tsp = 4 g\n`);
      const whole = report(recipe, findings);
      return { measure: whole.parts[0]?.measures.find((m) => m.name === 'sugar'), text: reportText(whole) };
    })();
    expect(measure).toMatchObject({ verdict: null, hangs_on: ['palm crystals'] });
    expect(text).not.toMatch(/sugar: 0 %/);
  });

  test('with a known one', () => {
    const { measure, text, hover } = worked('caster sugar');
    expect(measure).toMatchObject({ verdict: 'ok', hangs_on: [] });
    expect(text).toMatch(/ {2}sugar: 60 %, as usual/);
    expect(hover).not.toContain('perhaps');
  });

  test('with one that is wholly outside whatever it is', () => {
    const { recipe, findings } = open(
      COOKIES('caster sugar').replace('100 g     butter', '10 g      butter\n  5 g       xylo'),
    );
    const fat = report(recipe, findings).parts[0]?.measures.find((m) => m.name === 'fat');
    expect(fat).toMatchObject({ verdict: 'too low', hangs_on: ['xylo'] });
  });
});
