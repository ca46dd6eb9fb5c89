/** View 2: measures on their strips, the one that is turned, and the list in grams and shares. */
import { describe, expect, test } from 'vitest';
import { pageOf } from '../../../server/src/editor/page/page.ts';
import { viewFacts } from '../../../server/src/publish/view/facts.ts';
import { scaleOf } from '../../../server/src/publish/view/formula/strip.ts';
import { formulaView } from '../../../server/src/publish/view/formula.ts';
import type { Look } from '../../../server/src/publish/view/look.ts';
import { open } from '../../support/harness.ts';

const CRUST = `recipe Crust
part crust as shortcrust
  200 g     plain flour
  100 g     unsalted butter
  120 g     water
  2 g       fine salt

  do Rub the butter into the flour and salt and bind with the water.
`;

const live = (text: string, look: Look = {}, readOnly?: string): string =>
  pageOf(open(text), { view: 'formula', look, ...(readOnly !== undefined && { readOnly }) }).html;

function written(text: string, mode: 'read' | 'print'): string {
  const { recipe, findings } = open(text);
  return formulaView(viewFacts(recipe, findings, { mode }));
}

/** The table of ingredients alone. */
const listOf = (html: string): string => html.split('<h2>Ingredients')[1] ?? '';

/** The text of a row of a table that begins with the name, its cells parted by `|`. */
function row(html: string, name: string): string | undefined {
  const rows = html.match(/<tr[^>]*>.*?<\/tr>/gs) ?? [];
  const texts = rows.map((r) =>
    r
      .replace(/<svg.*?<\/svg>/gs, '')
      .replace(/<span class="narrow">.*?<\/span>/gs, '')
      .replace(/<\/t[hd]>/g, '|')
      .replace(/<[^>]+>/g, '')
      .trim(),
  );
  return texts.find((t) => t.startsWith(name));
}

describe('the strip', () => {
  test('a band is the middle third, and what lies on both sides is as wide', () => {
    const { at, ends } = scaleOf([0.18, 0.4]);
    expect([0.18, 0.29, 0.4].map(at)).toEqual([100 / 3, 50, 200 / 3].map((n) => expect.closeTo(n, 6)));
    expect(ends.map((end) => at(end))).toEqual([expect.closeTo(0, 6), expect.closeTo(100, 6)]);
  });

  test('of what nothing is less than the axis begins at the band', () => {
    expect(scaleOf([0, 0.02])).toMatchObject({ fromBand: true, isOpen: false });
    expect(scaleOf([null, 0.1]).at(0)).toBeCloseTo(100 / 3, 6);
  });

  test('a band without a most goes on to the right', () => {
    const { at, isOpen } = scaleOf([0.85, null]);
    expect(isOpen).toBe(true);
    expect(at(0.85)).toBeCloseTo(100 / 3, 6);
    expect(at(1.7)).toBeCloseTo(200 / 3, 6);
  });

  test('below nothing, as of temperatures', () => {
    expect(scaleOf([-3.6, -1.7]).at(-2.65)).toBeCloseTo(50, 6);
  });
});

describe('measures', () => {
  test('each says what is divided by what, its value, what is usual, and what would mend it', () => {
    const html = live(CRUST);
    // 120 g of water and the 17.9 g in 100 g of butter (USDA SR26, NDB 01145) on 200 g of flour are 69 %.
    expect(row(html, 'water per flour')).toBe(
      'water per flour|69||18–53|88 g water, 32 g less, brings 53 %Write it Turn it|',
    );
    expect(row(html, 'fat per flour')).toMatch(/^fat per flour\|41\|\|28–70\|Turn it\|$/);
    expect(row(html, 'salt per flour')).toMatch(/\|1\|\|up to 2\|/);
  });

  test('one outside is bold, has the mark of its finding, and is joined to where the fix brings it', () => {
    const html = live(CRUST.replace('120 g     water', '160 g     water'));
    expect(html).toMatch(/aria-label="warning".*?<b>water per flour<\/b>/);
    const drawn = /data-key="measure-crust-hydration".*?<\/svg><\/td>/s.exec(html)?.[0] ?? '';
    expect(drawn).toContain('<path class="warning"');
    expect(drawn).toContain('<circle class="after"');
    expect(drawn).toContain('<line class="to"');
    // Far past the end: at 95 %, and an arrow says that it goes on.
    expect(drawn).toContain('x="95%"');
    expect(drawn).toContain('class="way"');
  });

  test('what is not known is said with its reason, and hatched', () => {
    const html = live(CRUST.replace('120 g     water', '1 packet  water'));
    const hydration = row(html, 'water per flour');
    expect(hydration).toMatch(/\|not known\|.*the weight of water is not known/i);
    expect(html).toMatch(/data-key="measure-crust-hydration".*?class="notknown"/s);
  });

  test('what hangs on a food that nobody knows is a span without a disc, and is not turned', () => {
    const html = live(`${CRUST.replace('2 g       fine salt', '40 g      grunglewort')}`);
    const fat = /<tr data-key="measure-crust-fat".*?<\/tr>/s.exec(html)?.[0] ?? '';
    expect(fat).toContain('class="span"');
    expect(fat).not.toContain('<circle');
    expect(fat).toContain('whatever <b>grunglewort</b> brings');
    expect(fat).not.toContain('data-do="turn"');
  });

  test('parts without a kind are named in one sentence', () => {
    const two = `${CRUST}\npart plums\n  300 g     plums\n  do Toss.\n\npart nuts\n  30 g      walnuts\n  do Scatter.\n`;
    expect(live(two)).toContain('Plums and nuts say no kind, so nothing is held against them.');
    expect(live('recipe R\npart plums\n  300 g  plums\n')).toContain('No part says what kind it is');
    expect(live('recipe R\n')).toContain('No ingredient is listed');
  });

  test('only what may be written can be pressed: not in a browser, in print, or read only', () => {
    for (const html of [
      written(CRUST, 'read'),
      written(CRUST, 'print'),
      live(CRUST, { turn: { part: 'crust', measure: 'hydration', value: 0.3 } }, 'The file is read only.'),
    ]) {
      expect(html).not.toContain('data-do');
      expect(html).not.toContain('type="range"');
      expect(html).toContain('water per flour');
    }
  });
});

describe('turning', () => {
  const turn = (value: number, measure = 'hydration', part = 'crust') =>
    live(CRUST, { turn: { part, measure, value } });

  test('a slider on the strip’s own scale, a field of the same value, the grams that change, and the two ways out', () => {
    const html = turn(0.3);
    const range = /<input type="range"[^>]*>/.exec(html)?.[0] ?? '';
    // 18 to 53 %: the ends are as far again on both sides.
    expect(range).toMatch(/min="-17" max="88" step="1"/);
    expect(range).toMatch(/value="30"/);
    expect(range).toMatch(/data-home="18" data-end="53" data-page="5"/);
    expect(range).toContain('aria-label="bring water per flour to, per cent"');
    expect(html).toMatch(/<input data-key="turn-field-crust-hydration"[^>]*value="30"/);
    // 0.30 × 200 g less the butter's 16 g or so.
    expect(html).toMatch(/<b>water 120 g → <span class="looked">4[0-9](?:\.\d)? g<\/span><\/b>/);
    const keys = html.match(/data-key="[^"]*"/g) ?? [];
    expect(new Set(keys).size).toBe(keys.length);
    expect(html).toContain('the crust then weighs');
    expect(html).toContain('data-do="adjust"');
    expect(html).toContain('data-do="leave"');
  });

  test('what cannot be had is said, and nothing can be written', () => {
    const html = turn(0.02);
    expect(html).toMatch(/can come no lower than/);
    expect(html).not.toContain('data-do="adjust"');
    expect(html).toContain('data-do="leave"');
  });

  test.each([
    ['a part there is not', 'pie', 'hydration'],
    ['a measure there is not', 'crust', '__proto__'],
    ['one of another kind', 'crust', 'freezing point'],
  ])('%s is not turned', (_, part, measure) => {
    expect(turn(0.3, measure, part)).not.toContain('type="range"');
  });
});

describe('the list', () => {
  const TART = `recipe Tart
part case as sweet paste
  240 g     plain flour
  130 g     unsalted butter
  1 large   egg yolk
  70 g      ice water
  salt, to taste
  do Rub all.

part cream
  140 g     ground hazelnuts
  110 g     caster sugar
  25 g      plain flour
  2 large   eggs
  120 g     unsalted butter
  do Beat all.
`;

  test('grams, spread, shares of the flour and of all', () => {
    const html = live(TART.replace('25 g      plain', '90 g      plain'));
    // 130 / 240, 130 / 330, and of what all weighs (sums by hand).
    expect(row(listOf(html), 'unsalted butter')).toMatch(/^unsalted butter\|\|130\|\|54\.2\|39\.4\|1\d\.\d\|\|$/);
    expect(row(listOf(html), 'egg yolk')).toMatch(/^egg yolk\|1 large\|17\|\d\d–\d\d\|7\.\d\|5\.\d\|/);
    expect(row(listOf(html), 'plain flour')).toContain('|240||100|72.7|');
  });

  test('flour that only binds a part measures nothing of it, and is no flour of the whole', () => {
    const [crust = '', cream = ''] = live(TART).split('Cream</th>');
    expect(row(cream, 'caster sugar')).toMatch(/^caster sugar\|\|110\|\|\|\|11\.\d\|/);
    expect(row(crust, 'plain flour')).toContain('|240||100|100|');
  });

  test('without flour both columns go', () => {
    const html = live('recipe R\npart plums\n  300 g     plums\n  30 g      caster sugar\n  do Toss.\n');
    expect(html).not.toContain('of flour');
    expect(row(listOf(html), 'plums')).toMatch(/^plums\|\|300\|\|90\.9\|\|$/);
    expect(row(listOf(html), 'In all')).toMatch(/^In all\|\|330\|\|100\|\|$/);
  });

  test('what has no weight is named, hatched, and in no sum', () => {
    const html = live(TART.replace('70 g      ice water', '1 packet  ice water'));
    expect(html).toContain('% of what<br>is known');
    expect(row(listOf(html), 'ice water')).toContain('not known');
    expect(row(listOf(html), 'Known')).toBeDefined();
    expect(row(listOf(html), 'In all')).toBeUndefined();
    expect(html).toMatch(/What this weighs is not known.*<b>ice water<\/b>/);
  });

  test('to taste is no gap', () => {
    const html = live(TART);
    expect(row(listOf(html), 'salt')).toContain('to taste');
    expect(row(listOf(html), 'In all')).toBeDefined();
  });

  test('a part in percentages has no grams', () => {
    const html = live(
      'recipe L\npart dough as lean bread\n  100 %     bread flour\n  65 %      water\n  2 %       fine salt\n  1 %       instant yeast\n  do Knead.\n',
    );
    expect(row(listOf(html), 'Dough')).toContain('in per cent');
    expect(row(listOf(html), 'water')).toMatch(/^water\|65 %\|\|\|65\.0\|/);
  });
});

test('names are text, wherever they stand', () => {
  const html = live(
    'recipe <i>R\npart <b>p as shortcrust\n  200 g     <script>alert(1)</script>\n  1 glug    a"b<c>\n  do Mix.\n',
    {
      turn: { part: '<b>p', measure: 'hydration' },
    },
  );
  expect(html).not.toMatch(/<script|<i>R|<b>p/);
});
