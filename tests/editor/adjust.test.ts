/** A measure brought to a value in the editor: the rewrites of a line and a head, the one of a finding, and the acts of the page. */
import { describe, expect, it } from 'vitest';
import { adjust, leave, turn } from '../../server/src/editor/page/acts/adjust.ts';
import { outcomeOf } from '../../server/src/editor/page/acts.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { actionsAt, afterAction } from '../support/at-cursor.ts';
import { open } from '../support/harness.ts';

const SLAB = `recipe Slab

part base as shortcrust
  200 g     plain flour
  100 g     unsalted butter
  150 g     water
  2 g       fine salt

  do Rub the butter into the flour and salt.
  do Bind with 100 g of the water, then the rest.
`;
const at = (words: string) => SLAB.replace(words, `${words.slice(0, -1)}$0${words.slice(-1)}`);
const brought = (text: string, kind: string) => actionsAt(text, kind).filter((t) => t.startsWith('Bring'));

describe('the middle of a band', () => {
  it('is offered beside the fix of a finding, which brings it to the edge', () => {
    const titles = actionsAt(at('water'), 'quickfix');
    // The middle of 18 to 52 % of 200 g is 70 g, less the water of 100 g butter.
    expect(titles.filter((t) => t.startsWith('Bring'))).toEqual([
      expect.stringMatching(/^Bring water per flour to the middle of its band: 5\d(?:\.\d)? g water, 9\d g less/),
    ]);
    expect(titles[0]).toMatch(/^Write /);
  });

  it('writes the list, and what the steps take of it', () => {
    const [title = ''] = brought(at('water'), 'quickfix');
    const after = afterAction(at('water'), title.replace(/!$/, ''));
    const grams = /(\S+) g +water/.exec(after)?.[1] ?? '';
    expect(Number(grams)).toBeLessThan(60);
    expect(after).toMatch(/with 3[0-9.]+ g of the water, then the rest/);
  });

  it('is offered on the line that it is turned by, though nothing is outside', () => {
    expect(brought(at('fine salt'), 'refactor.rewrite')).toEqual([
      // Usual is up to 2 %: the middle is 1 %, where it is.
    ]);
    const salty = at('fine salt').replace('2 g  ', '3 g  ');
    expect(brought(salty, 'refactor.rewrite')).toEqual([
      expect.stringMatching(/^Bring salt per flour to the middle of its band: 2 g fine salt, 1 g less/),
    ]);
    expect(brought(at('plain flour'), 'refactor.rewrite')).toEqual([]);
  });

  it('is offered at the head of the part for what lies outside, where no finding on it says so', () => {
    expect(brought(at('as shortcrust'), 'refactor.rewrite')).toEqual([
      expect.stringMatching(/^Bring water per flour to the middle/),
    ]);
    expect(brought(at('Rub the'), 'refactor.rewrite')).toEqual([]);
  });

  it('is not offered of what nobody knows, or without a kind', () => {
    expect(brought(at('water').replace('as shortcrust', ''), 'refactor.rewrite')).toEqual([]);
    expect(brought(at('fine salt').replace('unsalted butter', 'grunglewort'), 'refactor.rewrite')).toEqual([]);
  });
});

describe('acts of the page', () => {
  const snapshot = open(SLAB);
  const arg = { part: 'base', measure: 'hydration' };
  const done = (more: object = {}) => ({ snapshot, arg, value: null, look: { makes: 8 }, ...more });

  it('a measure is turned: what is looked at is other, the text is not', () => {
    expect(turn(done({ value: 24 }))).toEqual({
      look: { makes: 8, turn: { part: 'base', measure: 'hydration', value: 0.24 } },
    });
    expect(turn(done({ arg: { ...arg, to: 0.3 } }))).toEqual({
      look: { makes: 8, turn: { part: 'base', measure: 'hydration', value: 0.3 } },
    });
  });

  it('it is left', () => {
    expect(leave(done({ look: { makes: 8, turn: arg } }))).toEqual({ look: { makes: 8 } });
  });

  it('it is written in one step, and looked at no more', () => {
    const outcome = outcomeOf('adjust', done({ arg: { ...arg, to: 0.3 }, look: { turn: arg } }));
    if (!('edits' in outcome)) throw new Error(JSON.stringify(outcome));
    expect(outcome.look).toEqual({});
    expect(outcome.said).toMatch(/^water \d+(\.\d)? g: written\.$/);
    expect(printDocument(applyEdits(snapshot.document, outcome.edits))).not.toContain('150 g');
  });

  it.each<[string, unknown, unknown, RegExp]>([
    ['a part there is not', { ...arg, part: 'lid', to: 0.3 }, null, /not there any more/],
    ['a measure there is not', { ...arg, measure: 'toString', to: 0.3 }, null, /not there any more/],
    ['no value', arg, null, /to which value/],
    ['what cannot be had', { ...arg, to: 0.01 }, null, /can come no lower than/],
    ['nothing', null, null, /not there any more/],
    ['a list', [[]], 3, /not there any more/],
    ['a value without end', { ...arg, to: Number.POSITIVE_INFINITY }, null, /to which value/],
  ])('adjust refuses %s', (_, sent, value, words) => {
    expect(adjust(done({ arg: sent, value }))).toEqual({ refused: expect.stringMatching(words) });
  });

  it.each([['wet'], [true], [{}], [[]]])('turn refuses the value %j', (value) => {
    expect(turn(done({ value }))).toEqual({ refused: expect.stringMatching(/Write a number/) });
  });

  it('nothing is written that brings an error', () => {
    const kraut = open(
      'recipe Kraut\npart jar as lacto-ferment\n  1000 g    white cabbage\n  22 g      fine salt\n  do Rub the salt into the cabbage and pack it under its brine.\n  do Leave at 18 C for 3 weeks.\n',
    );
    const outcome = adjust({
      snapshot: kraut,
      arg: { part: 'jar', measure: 'brine salt', to: 0.005 },
      value: null,
      look: {},
    });
    expect(outcome).toEqual({ refused: expect.stringMatching(/would bring/) });
  });
});
