/** One cause, one finding; and none of the family bookkeeping on a line that is being typed. */
import { describe, expect, test } from 'vitest';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { open } from '../support/harness.ts';

const codes = (snapshot: Snapshot): string[] => snapshot.findings.open.map((f) => f.code);

describe('one cause is told of once', () => {
  test.each<[string, string, string[]]>([
    [
      'a misspelled food is not also unused, nor its right spelling unlisted',
      'recipe Slab\n  200 g     rolled oats\n  80 g      walnutz\n  do Toast the oats and fold in the walnuts.\n',
      ['unknown-food'],
    ],
    [
      'a repeated line is not also unused',
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  20 g      butter\n  do Rub the butter into the oats.\n',
      ['repeated-ingredient'],
    ],
    [
      'what is added without an amount is not also a line that cannot be read',
      'recipe Slab\n  200 g     rolled oats\n  add parsley\n  do Toast the oats with the parsley.\n',
      ['missing-amount'],
    ],
    [
      'an ambiguous word leaves nothing over',
      'recipe Slab\n  200 g     rolled oats\n  100 g     caster sugar\n  80 g      brown sugar\n  do Rub half the sugar into the oats.\n',
      ['ambiguous-mention'],
    ],
    [
      'a unit that is none is not also a food that is unknown, or a measure without weight',
      'recipe Bowl\n  200 g     rolled oats\n  2 blobs   olive oil\n  do Toss the oats in the olive oil.\n',
      ['unknown-unit'],
    ],
    [
      'a fridge in the wrong unit is not also held too warm',
      'recipe Custard as stirred custard\n  500 ml    whole milk\n  4 large   egg yolks\n  60 g      caster sugar\n  do Whisk the yolks, sugar and milk and stir over a low heat until it reads 82 C.\n  do Cool over ice and keep in the fridge at 40 C.\n',
      ['implausible-temperature'],
    ],
    [
      'mince without a figure is told of once, however many risks are in it',
      'recipe Loaf\n  400 g     minced beef\n  400 g     minced pork\n  2 large   eggs\n  do Mix the beef, pork and eggs.\n  do Bake at 180 C for 1 h until brown.\n',
      ['no-safe-temperature'],
    ],
    [
      'a curd too sweet is told of once, and not by what is for ices',
      'recipe Curd as stirred custard\n  200 ml    double cream\n  200 g     caster sugar\n  4 large   egg yolks\n  60 g      butter\n  do Whisk the cream, sugar, yolks and butter and stir over a low heat until it reads 82 C.\n',
      ['sugar-out-of-range'],
    ],
    [
      'an ice without sugar is hard, and not also low in solids',
      'recipe Melon ice as sorbet\n  900 g     watermelon, pureed\n  20 g      caster sugar\n  do Blend the watermelon with the sugar, chill and churn.\n',
      ['freeze-out-of-range'],
    ],
    [
      'milk powder without measure is sandy, and not also high in milk solids',
      'recipe Milk ice as ice cream\n  500 g     whole milk\n  250 g     double cream\n  140 g     caster sugar\n  120 g     skimmed milk powder\n  do Heat the milk, cream, sugar and milk powder to 85 C, chill at 4 C and churn.\n',
      ['freeze-out-of-range'],
    ],
    [
      'a bake with neither time nor sign is not also told that it has no sign',
      'recipe Slab\n  200 g     rolled oats\n  do Bake the oats at 180 C.\n',
      ['time-missing'],
    ],
  ])('%s', (_name, text, want) => {
    expect(codes(open(text))).toEqual(want);
  });
});

describe('a line that is being typed', () => {
  const start = 'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n';
  const at = (line: number, character: number) => ({ line, character });
  const type = (snapshot: Snapshot, text: string, version: number) => {
    const line = snapshot.document.lines.length - 1;
    const end = at(line, snapshot.document.lines[line]?.text.length ?? 0);
    return snapshot.edited(version, [{ range: { start: end, end }, text }]);
  };

  test('waits with bookkeeping until it has an end', () => {
    const before = open(start);
    expect(codes(before)).toEqual([]);
    const half = type(before, '  do Brush with the rest of the butter.', 2);
    expect(codes(half)).toEqual([]);
    expect(codes(type(half, '\n', 3))).toEqual(['overdrawn-amount']);
  });

  test('is judged when another line is edited', () => {
    const before = open(start);
    void before.findings;
    const half = type(before, '  do Brush with the rest of the butter.', 2);
    expect(codes(half)).toEqual([]);
    const elsewhere = half.edited(3, [{ range: { start: at(1, 2), end: at(1, 5) }, text: '210' }]);
    expect(codes(elsewhere)).toEqual(['overdrawn-amount']);
  });

  test('of another family is judged at once', () => {
    const before = open(start);
    void before.findings;
    expect(codes(type(before, '  do Bake at 350 C for 20 min until gold.', 2))).toEqual(['implausible-temperature']);
  });

  test('that ends a file as it is read from disk is judged', () => {
    expect(codes(open(`${start}  do Brush with the rest of the butter.`))).toEqual(['overdrawn-amount']);
  });
});

describe('an allow without effect', () => {
  const draft = (allow: string) =>
    `recipe Slab\n  200 g     rolled oats\n  ${allow}\n  80 g      butter\n  do Toast the oats.\n`;

  test('is found where nothing is accepted', () => {
    expect(codes(open(draft('allow leftover-amount because it is for the tin')))).toEqual([
      'allow-without-effect',
      'unused-ingredient',
    ]);
  });

  test('is not found where something is', () => {
    const snapshot = open(draft('allow unused-ingredient because it is for the tin'));
    expect(codes(snapshot)).toEqual([]);
    expect(snapshot.findings.accepted.map((f) => f.code)).toEqual(['unused-ingredient']);
  });

  test('says so when the house has turned the check off', () => {
    const snapshot = open(draft('allow unused-ingredient because it is for the tin'), {
      severities: { 'unused-ingredient': 'off' },
    });
    expect(snapshot.findings.open.map((f) => f.said.message)).toEqual([
      'The house has turned `unused-ingredient` off, so there is nothing to accept: take the line away.',
    ]);
  });

  test('is silent in what builds on another file', () => {
    const text =
      'recipe Slab\n  from    base.quern\n  allow unused-ingredient because it is for the tin\n  swap butter for 80 g margarine\n';
    expect(codes(open(text))).not.toContain('allow-without-effect');
  });
});
