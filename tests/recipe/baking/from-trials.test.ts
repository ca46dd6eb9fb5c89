import { describe, expect, test } from 'vitest';
import { startTrial } from '../../../server/src/editor/trial.ts';
import { ovenTimes } from '../../../server/src/recipe/baking/oven-time.ts';
import { ovenTimeText } from '../../../server/src/recipe/baking/said.ts';
import type { Estimated } from '../../../server/src/recipe/baking/time-in-oven.ts';
import type { HouseOvens } from '../../../server/src/recipe/model.ts';
import { edited } from '../../support/at-cursor.ts';
import { open } from '../../support/harness.ts';

const CAKE = `recipe Pound cake as pound cake
  pan     loaf 21 x 11 x 7 cm
  225 g     butter, soft
  225 g     caster sugar
  225 g     eggs
  225 g     plain flour
  do Cream the butter and the sugar, beat in the eggs and fold in the flour.
  do Bake at 170 C for 60-65 min until the centre reads 98 C.
`;
const OVENS: HouseOvens = { 'lower deck': { fan: false, offset: -8 }, 'top oven': { fan: true } };

function timeOf(trials = '', ovens: HouseOvens = OVENS): Estimated {
  const [time] = ovenTimes(open(`${CAKE}${trials}`, { ovens }).recipe);
  if (time?.is !== 'estimated') throw new Error('declined');
  return time;
}
const trial = (lines: string, day = '10') => `\ntrial 2026-09-${day}\n  ${lines.replaceAll('; ', '\n  ')}\n`;
const widthOf = ({ estimate: { low, high } }: Estimated) => high / low;

describe('what a trial teaches of the time in the oven', () => {
  const plain = timeOf();

  test('narrows the range, and moves the middle towards what it took', () => {
    const longer = Math.round(plain.estimate.likely * 1.15);
    const { estimate, trials } = timeOf(trial(`took ${longer} min to bake`));
    expect(trials).toBe(1);
    expect(estimate.likely).toBeGreaterThan(plain.estimate.likely * 1.05);
    expect(estimate.likely).toBeLessThan(longer);
    expect(estimate.high / estimate.low).toBeLessThan(widthOf(plain));
  });

  test('what took longer in an oven known to be cold teaches less of the recipe', () => {
    const longer = Math.round(plain.estimate.likely * 1.1);
    const unnamed = timeOf(trial(`took ${longer} min to bake`));
    const named = timeOf(trial(`took ${longer} min to bake in the lower deck`));
    expect(named.oven).toEqual({ name: 'lower deck', fan: false, offset: -8 });
    expect(named.load.oven.stages.map(({ celsius }) => celsius)).toEqual([162]);
    // What the cold oven explains is not the recipe's: beside its own computed time it is off by less.
    const cold = timeOf(trial(`took ${Math.round(plain.estimate.likely)} min to bake in lower deck`));
    expect(cold.estimate.likely).toBeGreaterThan(plain.estimate.likely);
    expect(named.estimate.likely).toBeLessThan(longer * 1.03);
    expect(unnamed.oven).toBeUndefined();
    expect(ovenTimeText(named)).toContain('162 °C in lower deck (170 °C by its dial)');
  });

  test('the next time is for the oven of the last trial, and the other ovens tell less', () => {
    const took = Math.round(plain.estimate.likely * 1.1);
    const both = trial(`took ${took} min to bake in lower deck`) + trial('took 58 min to bake in top oven', '20');
    const time = timeOf(both);
    expect(time.oven?.name).toBe('top oven');
    expect(time.load.oven.fan).toBe(true);
    expect(time.trials).toBe(2);
  });

  test('how warm it went in takes the place of what is assumed', () => {
    const time = timeOf(trial(`took 68 min to bake; started at 5 C`));
    expect(time.load.startC).toBe(5);
    expect(time.startAssumed).toBe(false);
    expect(ovenTimeText(time)).toContain('5 °C as it goes in (measured in a trial)');
    const warm = timeOf(trial('took 68 min to bake'));
    // From the cold 68 min is quick, so that the recipe is quicker than the model by more.
    expect(time.estimate.likely / warm.estimate.likely).toBeLessThan(1.05);
  });

  test('where it was stopped is what its time is held against', () => {
    const early = timeOf(
      trial(`took ${Math.round(plain.estimate.likely * 0.85)} min to bake; reached 88 C in the centre`),
    );
    const done = timeOf(
      trial(`took ${Math.round(plain.estimate.likely * 0.85)} min to bake; reached 98 C in the centre`),
    );
    expect(early.estimate.likely).toBeGreaterThan(done.estimate.likely);
  });

  test.each([
    ['a range', 'took 70-75 min to bake'],
    ['a blank', 'took … min to bake'],
    ['a time of something else', 'took 2 h to chill in the fridge'],
    ['a time that was not in an oven', 'took 70 min to bake in the fridge'],
    ['what is far off', 'took 6 h to bake'],
  ])('nothing is learned from %s', (_, took) => {
    const time = timeOf(trial(took));
    expect(time.trials).toBe(0);
    expect(time.estimate).toEqual(plain.estimate);
  });

  test.each(['constructor', '__proto__', 'toString'])('an oven that is called %s is not known of the house', (name) => {
    expect(timeOf(trial(`took 68 min to bake in ${name}`)).oven).toBeUndefined();
  });
});

describe('a new trial', () => {
  const started = (ovens: HouseOvens) => {
    const snapshot = open(CAKE, { ovens });
    return edited(snapshot, startTrial(snapshot, '2026-11-25')?.edits ?? []).slice(CAKE.length);
  };

  test('has the estimate beside its blank, and the oven where the house has one', () => {
    const said = / {2}# the steps say 60-65 min; likely \d+ min \(\d+ to \d+\)$/m;
    expect(started({})).toMatch(/^ {2}took {4}… min to bake {2}#/m);
    expect(started({})).toMatch(said);
    expect(started({ 'lower deck': {} })).toMatch(/^ {2}took {4}… min to bake in lower deck {2}#/m);
    expect(started(OVENS)).toMatch(/^ {2}took {4}… min to bake {2}#/m);
  });

  test('filled in, is learned from', () => {
    const [time] = ovenTimes(open(CAKE + started({}).replace('took    …', 'took    70')).recipe);
    expect(time?.is === 'estimated' && time.trials).toBe(1);
  });
});
