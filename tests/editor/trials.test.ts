import { describe, expect, it } from 'vitest';
import { status } from '../../server/src/editor/status.ts';
import { startTrial } from '../../server/src/editor/trial.ts';
import { edited, fixture, hoverAt } from '../support/at-cursor.ts';
import { kitchenOf } from '../support/kitchen.ts';

const CAKE = `recipe Cake
  200 g     plain flour
  100 g     butter
  do Rub the butter into the flour and bake for 35-40 min until the centre reads 96 C.
  do Turn over and bake for 5 min.

trial 2026-08-01 by Ines
  took    44 min to bake
  reached 97 C in the centre
  weighed 270 g out of the oven

trial 2026-09-14 by Tomasz
  took    38 min to bake
  took    6 min to bake
  reached 95 C in the centre
  used    210 g plain flour
  weighed 280 g out of the oven
  verdict change
`;
const at = (words: string): string => {
  expect(CAKE).toContain(words);
  return CAKE.replace(words, `${words}$0`);
};

describe('hover over what several trials measured', () => {
  it.each([
    [
      'a time of a step, each trial by the step it came nearest to',
      'for 35-4',
      ['44 min', '38 min'],
      '38 to 44 min, 41 min on average',
    ],
    ['another step with the same verb', 'bake for 5', ['6 min'], undefined],
    ['a temperature in the food', 'reads 9', ['97 C', '95 C'], '95 to 97 °C, 96 °C on average'],
    ['the line of a trial', 'reached 97', ['97 C', '95 C'], '95 to 97 °C, 96 °C on average'],
    ['what was weighed', 'weighed 28', ['270 g', '280 g'], '270 to 280 g, 275 g on average'],
  ])('%s', (_what, words, each, spread) => {
    const said = hoverAt(at(words)) ?? '';
    expect([...said.matchAll(/^Trial of \S+: (.*)$/gm)].map((m) => m[1])).toEqual(each);
    expect(/^Spread: (.*)$/m.exec(said)?.[1]).toBe(spread);
  });

  it('says beside a weight out of the oven what usually comes out', () => {
    expect(hoverAt(at('weighed 28'))).toMatch(/^Usual: 2\d\d to 2\d\d g, of 300 g of ingredients$/m);
    expect(hoverAt(at('used    21')) ?? '').not.toMatch(/Usual/);
    const one = CAKE.slice(0, CAKE.indexOf('\ntrial 2026-09')).replace('weighed 27', 'weighed 27$0');
    expect(hoverAt(one)).toMatch(/Usual: /);
  });

  it('says nothing of trials where there are none', () => {
    expect(hoverAt(CAKE.slice(0, CAKE.indexOf('trial')).replace('35-40 min', '35-40 m$0in'))).not.toMatch(
      /Trial|Spread/,
    );
  });
});

describe('a new trial', () => {
  it('is not begun where what the recipe builds on is not there, and is where a swap meets nothing', () => {
    const started = (base: string) =>
      startTrial(
        kitchenOf({
          'base.quern': CAKE,
          'v.quern': `recipe Late$0\n  from    ${base}\n  swap lard for 90 g butter\n  20 g      oats\n`,
        }).snapshot,
        '2026-09-14',
      );
    expect(started('gone.quern')).toBeUndefined();
    expect(started('base.quern')).toBeDefined();
  });

  it('stands at the end, with the caret on the first blank', () => {
    const { snapshot } = fixture(CAKE);
    const started = startTrial(snapshot, '2026-11-25');
    const after = edited(snapshot, started?.edits ?? []);
    expect(after.startsWith(CAKE)).toBe(true);
    expect(after.slice(CAKE.length)).toMatch(
      /^\ntrial 2026-11-25\n {2}took {4}… min to bake {2}# the steps say 35-40 min\n {2}reached … C in the centre {2}# the steps say 96 C\n/,
    );
    const { line = 0, start = 0, end = 0 } = started?.first ?? {};
    expect(after.split('\n')[line]?.slice(start, end)).toBe('…');
  });

  it('carries a mark that says, pointed at, what is another since', () => {
    const plain = CAKE.slice(0, CAKE.indexOf('\ntrial'));
    const { snapshot } = fixture(plain);
    const cooked = edited(snapshot, startTrial(snapshot, '2026-11-25')?.edits ?? []).replace('tested  ', 'tested  $0');
    expect(hoverAt(cooked)).toMatch(/^tested .*\nNow: as it was cooked$/m);
    const changed = cooked.replace('100 g     butter', '120 g     butter').replace('for 5 min', 'for 8 min');
    expect(hoverAt(changed)).toMatch(/^Changed since: line 3, line 5$/m);
    expect(hoverAt(cooked.replace('  do Turn over and bake for 5 min.\n', ''))).toMatch(
      /^Changed since: something was taken out$/m,
    );
  });

  it('of a variant tests the recipe as a cook cooks it, so that nothing is changed since', () => {
    const files = {
      'cake.quern': CAKE.slice(0, CAKE.indexOf('\ntrial')),
      'rye.quern': 'recipe Rye cake$0\n  from    cake.quern\n  swap plain flour for 200 g rye flour\n',
    };
    const { snapshot } = kitchenOf(files);
    const after = edited(snapshot, startTrial(snapshot, '2026-11-25')?.edits ?? []);
    const cooked = kitchenOf({ ...files, 'rye.quern': after.replace('recipe', 're$0cipe') }).snapshot;
    expect(status(snapshot).record).toEqual({ state: 'never cooked', trials: 0 });
    expect(status(cooked).record).toEqual({ state: 'cooked as written', trials: 1, latest: '2026-11-25' });
    expect(cooked.findings.open.map((f) => f.code)).not.toContain('untested-change');
    const changed = kitchenOf({
      ...files,
      'cake.quern': files['cake.quern'].replace('100 g     butter', '120 g     butter'),
      'rye.quern': after.replace('recipe', 're$0cipe'),
    }).snapshot;
    expect(status(changed).record?.state).toBe('cooked, changed since');
    expect(changed.findings.open.map((f) => f.code)).toContain('untested-change');
  });

  it('is not started in a file of foods, nor for a recipe without a line', () => {
    expect(startTrial(fixture('food quay flour\n  like    plain flour\n').snapshot, '2026-11-25')).toBeUndefined();
    expect(startTrial(fixture('recipe\n').snapshot, '2026-11-25')).toBeUndefined();
    expect(status(fixture('food quay flour\n').snapshot).record).toBeUndefined();
  });
});

describe('a line of a trial', () => {
  const offeredAt = (line: string) =>
    kitchenOf({
      'quern.json': '{ "ovens": { "lower deck": { "fan": true, "offset": -8 }, "top": {} } }',
      'cake.quern': `${CAKE}\ntrial 2026-10-01\n  ${line}`,
    });

  it.each([
    ['took    46 min to bake in $0', 'lower deck', '  took    46 min to bake in lower deck'],
    ['took    46 min to bake in the lo$0', 'lower deck', '  took    46 min to bake in the lower deck'],
    ['took    46 min to $0', 'bake', '  took    46 min to bake'],
    ['star$0', 'started', '  started '],
  ])('%s offers %s', (line, label, completed) => {
    expect(offeredAt(line).completed(label)).toBe(completed);
  });
});
