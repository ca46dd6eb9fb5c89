/** The report as HTML: all six views once, black on white, nothing to press, and nothing that a browser would load or run. */
import { parse } from 'parse5';
import { describe, expect, test } from 'vitest';
import { VIEWS } from '../../../server/src/publish/view/look.ts';
import { STYLE } from '../../../server/src/publish/view/style.ts';
import { quern } from '../../support/fake-io.ts';
import { EXAMPLES } from '../../support/harness.ts';
import { elementsOf, faultsIn, textOf } from '../../support/view.ts';

const TWO_LINES = 'recipe Maple butter\n  250 g  unsalted butter, soft\n  80 g  maple syrup\n';

const reported = async (text: string): Promise<{ readonly out: string; readonly body: string }> => {
  const { out, exit } = await quern(['report', 'a.quern', '--format', 'html'], { 'a.quern': text });
  expect(exit).toBe(0);
  return { out, body: /<body>(.*)<\/body>/s.exec(out)?.[1] ?? '' };
};

describe('a recipe of two lines', () => {
  test('has all views after one another, each with a heading, and none of the links between them', async () => {
    const { body } = await reported(TWO_LINES);
    const sections = elementsOf(body, 'section').flatMap(({ attrs }) => attrs.filter(({ name }) => name === 'id'));
    expect(sections.map(({ value }) => value).filter((id) => VIEWS.some((view) => view === id))).toEqual([...VIEWS]);
    expect(elementsOf(body, 'nav')).toEqual([]);
    expect(elementsOf(body, 'h1').map(textOf)).toEqual(['Maple butter']);
    expect(elementsOf(body, 'main')).toHaveLength(1);
  });

  test('has nothing to press, and what a field would hold as a figure', async () => {
    const { body } = await reported(TWO_LINES);
    for (const name of ['button', 'input', 'select', 'details', 'script', 'iframe', 'form', 'a'])
      expect(elementsOf(body, name).map(textOf)).toEqual([]);
    expect(body).toContain('Where the water of the whole comes from');
  });

  test('says what is not known', async () => {
    const { body } = await reported(TWO_LINES);
    expect(body).toContain('A serving is not known');
    expect(body).toContain('<b>No prices are known.</b>');
    expect(body).toContain('<b>None yet.</b>');
  });
});

test.each(EXAMPLES)(
  '%s: no drawing without its figures, no style of its own, and a policy that loads nothing',
  async (path, text) => {
    const { out, exit } = await quern(['report', path, '--format', 'html'], { ...Object.fromEntries(EXAMPLES) });
    expect(exit).toBe(0);
    expect(text).not.toBe('');
    expect(out).toContain(`content="default-src 'none'; style-src 'unsafe-inline'"`);
    expect(parse(out)).toBeDefined();
    expect(faultsIn(/<body>(.*)<\/body>/s.exec(out)?.[1] ?? '')).toEqual([]);
  },
);

test('on paper: margins of 16 mm, no page begun behind a heading or within a row, and no colour', () => {
  const print = STYLE.slice(STYLE.indexOf('@media print'));
  expect(print).toContain('@page { margin: 16mm; }');
  expect(print).toMatch(/h2, h3, thead, caption \{ break-after: avoid; \}/);
  expect(print).toMatch(/li, tr, [^}]*break-inside: avoid;/);
  for (const [, colour = ''] of print.matchAll(/(#[\da-f]{3,8})\b/g)) {
    const digits = colour.slice(1);
    const size = digits.length === 3 ? 1 : 2;
    expect(new Set(digits.match(new RegExp(`.{${size}}`, 'g'))).size).toBe(1);
  }
});
