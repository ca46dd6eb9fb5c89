import { describe, expect, it } from 'vitest';
import { lensesOf } from '../support/in-text.ts';

const TART = `recipe Plum tart
  yield   8 slices
  time    20 min at work, 50 min in the oven

part crust as shortcrust
  200 g     plain flour
  100 g     butter
  50 g      water
  do Rub the butter into the flour and bring together with the water.

part fruit
  400 g     plums
  50 g      caster sugar
  do Lay the plums with the sugar in the crust and bake at 190 C for 50 min until soft.

trial 2026-09-14 by Ines
  verdict change
`;

describe('what stands above a recipe and its parts', () => {
  // By hand: 350 g + 450 g = 800 g, of 8 slices 100 g each; 50 g of water and the 16 % of butter that is water, to 200 g flour.
  it('says weights, times, the last trial and the measure that governs, and offers what one click does', () => {
    expect(lensesOf(TART)).toEqual([
      '1: 800 g, 100 g each uncooked · 70 min, 20 min at work · tried 2026-09-14: change',
      '1: [scale]',
      '1: [trial]',
      '1: [page]',
      '5: 350 g · water per flour 33 %, usual 18 to 53 % · goes into fruit',
      '11: 450 g',
    ]);
  });

  it('names the measure that is outside its band before any other', () => {
    const wet = TART.replace('50 g      water', '150 g     water');
    expect(lensesOf(wet)[4]).toMatch(/^5: 450 g · water per flour 83 %, above the usual 18 to 53 %/);
  });

  it('says what there is at least where a weight is not known, and of a share nothing', () => {
    const unknown = TART.replace('400 g     plums', '3         zzyzx');
    expect(lensesOf(unknown)[0]).toMatch(/^1: at least 400 g · /);
  });

  it('costs what the house says, at least where a price is missing', () => {
    const { FLOUR } = { FLOUR: 'wheat-flour-plain' };
    expect(lensesOf(TART, 'recipe', new Map([[FLOUR, { perG: 0.001 }]]))[0]).toContain(' · costs at least 0.20 · ');
    expect(lensesOf(TART, 'recipe')[0]).not.toContain('cost');
  });

  it('is short where it is wanted short, and nothing where it is off or there is no recipe', () => {
    expect(lensesOf(TART, 'recipe').map((l) => l.slice(0, 2))).toEqual(['1:', '1:', '1:', '1:']);
    expect(lensesOf(TART, 'off')).toEqual([]);
    expect(lensesOf('food plums\n  water 85 %\n')).toEqual([]);
    expect(lensesOf('recipe Bare\n')).toEqual([]);
  });
});
