import { describe, expect, it } from 'vitest';
import { codeActions } from '../../server/src/editor/code-actions.ts';
import { actionsAt, afterAction, fixture } from '../support/at-cursor.ts';

const WET = `recipe Slab
  yield   12 squares

part base as shortcrust
  200 g     plain flour
  100 g     butter
  150 g     wa$0ter
  do Rub the butter into the flour and bring together with the water.
`;

describe('quick fixes', () => {
  it('offers the fixes of a finding, the first preferred, then to allow it', () => {
    const titles = actionsAt(WET, 'quickfix');
    expect(titles[0]).toMatch(/^Write .* water.*!$/);
    expect(titles.filter((t) => t.endsWith('!'))).toHaveLength(1);
    expect(titles.at(-1)).toBe('Allow dough-too-wet here, with a reason');
  });

  it('offers nothing where no finding is near', () => {
    expect(actionsAt(WET.replace('wa$0ter', 'water').replace('yield', 'yi$0eld'), 'quickfix')).toEqual([]);
  });

  it('writes the allow line above, and leaves the reason to the cook', () => {
    const after = afterAction(WET, 'Allow dough-too-wet here, with a reason');
    expect(after).toContain('  allow dough-too-wet because \n  150 g     water\n');
  });

  it('never offers to allow a line that cannot be read', () => {
    expect(actionsAt('recipe A\n  St$0ir everything well.\n', 'quickfix').some((t) => t.startsWith('Allow'))).toBe(
      false,
    );
  });

  it('takes a selection over several lines', () => {
    const two = 'recipe A\n$0  0,5 g  salt\n  2 blobs olive oil\n$0  do Mix the salt and the oil.\n';
    const titles = actionsAt(two, 'quickfix').join('\n');
    expect(titles).toMatch(/0\.5/);
    expect(titles).toMatch(/unknown-unit/);
  });
});

describe('mending everything at once', () => {
  const IDLE =
    'recipe A\n  500 g     plain flour\n  allow dough-too-$0wet because it is a batter\n  300 g     water\n  allow pan-overfull because it is a tray\n  do Mix the flour and the water.\n';
  const MENDED = 'recipe A\n  500 g     plain flour\n  300 g     water\n  do Mix the flour and the water.\n';
  it('makes the fixes that change nothing that was understood', () => {
    expect(afterAction(IDLE, 'Mend everything that changes no quantity')).toBe(MENDED);
  });

  it('or all of one kind, where there are several', () => {
    const all = 'Mend every allow-without-effect that leaves no choice';
    expect(actionsAt(IDLE, 'quickfix')).toContain(all);
    expect(afterAction(IDLE, all)).toBe(MENDED);
    const one = IDLE.replace(/ {2}allow pan.*\n/, '');
    expect(actionsAt(one, 'quickfix')).not.toContain(all);
  });

  it('goes on to what only then can be mended', () => {
    const list = (lines: string) =>
      `recipe Slab\n${lines}  do Melt the butter.\n  do Stir in the honey.\n  do Add the oats.\n`;
    const [oats, butter, honey] = ['  200 g     rolled oats\n', '  80 g      butter\n', '  60 g      honey\n'];
    const before = list(`${oats}${butter}  allow pan-over$0full because it is a tray\n${honey}`);
    expect(afterAction(before, 'Mend everything that changes no quantity')).toBe(list(`${butter}${honey}${oats}`));
  });

  it('leaves a line that was not read to the cook, who may mend it alone', () => {
    const commas = 'recipe A\n  0,$05 kg    plain flour\n  1,5 tsp   salt\n  Mix the flour and the salt.\n';
    expect(actionsAt(commas, 'source.fixAll.quern')).toEqual([]);
    expect(actionsAt(commas, 'quickfix')).toEqual(['Write `0.5`!']);
  });

  it('is not offered where nothing is sure', () => {
    expect(actionsAt(WET, 'source.fixAll.quern')).toEqual([]);
  });
});

describe('a printed recipe that was pasted', () => {
  const CARD =
    '$0Flapjack\n\nServes 8\n\n- 200 g rolled oats\n• 80 g butter or\n90 g margarine\n\n1. Mix all of it. Bake at 180°C.\n';

  it('is turned into the notation in one step', () => {
    expect(afterAction(CARD, 'Tidy this draft')).toBe(
      'recipe Flapjack\n  Serves 8\n\n  200 g     rolled oats\n  80 g      butter or 90 g margarine\n\n  do Mix all of it.\n  do Bake at 180 C.',
    );
  });

  it.each([
    'recipe Flapjack\n$0  200 g     rolled oats\n  do Mix.\n',
    'food flour\n$0  like plain flour\n  100 g x\n',
    '$0\n',
  ])('is none in %j', (text) => {
    expect(actionsAt(text, 'refactor.rewrite')).not.toContain('Tidy this draft');
  });
});

describe('another size', () => {
  const SIZED = WET.replace('wa$0ter', 'water').replace('yield', 'yi$0eld');

  it("is offered where the size is spoken of, and in nobody's way elsewhere", () => {
    const titles = (text: string) =>
      actionsAt(text, 'refactor.rewrite').filter((title) => title.startsWith('Scale the'));
    expect(titles(WET)).toEqual([]);
    expect(titles(`$0${SIZED.replace('$0', '')}`)).toEqual(titles(SIZED));
    expect(titles(SIZED.replace('$0', '').replace(/do .*/, 'do $0'))).toEqual([]);
  });

  it('offers half, double, triple and round yields near', () => {
    expect(actionsAt(SIZED, 'refactor.rewrite').filter((title) => title.startsWith('Scale'))).toEqual([
      'Scale the recipe by half',
      'Scale the recipe by two',
      'Scale the recipe by three',
      'Scale the recipe to 10 squares',
      'Scale the recipe to 16 squares',
      'Scale the recipe to 20 squares',
    ]);
  });

  it('scales list, sentences and yield', () => {
    const after = afterAction(SIZED, 'Scale the recipe by two');
    expect(after).toContain('yield   24 squares');
    expect(after).toContain('400 g     plain flour');
  });

  it('is not offered for a file of foods', () => {
    expect(actionsAt('food house flour\n  like plain flour\n$0', 'refactor.rewrite')).toEqual([]);
  });
});

describe('hostile text', () => {
  it.each([
    '',
    '$0',
    '\0$0',
    'recipe\n$0part\n  1\n  do',
    '  allow $0',
    '<<<<<<< HEAD\n$0  1 g flour\n=======\n>>>>>>> x\n',
  ])('%j throws nothing', (text) => {
    const { snapshot, range } = fixture(text);
    const actions = codeActions(
      snapshot,
      range,
      () => true,
      (e) => {
        throw e;
      },
    );
    for (const action of actions) action.edits();
  });
});
