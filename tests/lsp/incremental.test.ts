import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { makeHouse } from '../../server/src/workspace/houses.ts';
import { DEFAULTS } from '../../server/src/workspace/settings.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';

// Outside oracle: vscode-languageserver-textdocument, the text model of other servers.
const text = fc
  .array(
    fc.constantFrom(
      'recipe A',
      '  200 g  plain flour',
      '½ tsp',
      '°C',
      'é',
      '🍞',
      '\ud83c',
      '\n',
      '\r\n',
      '\r',
      '\t',
      '# why',
      'do Stir the flour.',
      ' ',
      'part b',
      '\0',
    ),
    { maxLength: 30 },
  )
  .map((parts) => parts.join(''));
/** Places as shares of the text: the other model loses count where a place lies outside. */
const share = fc.double({ min: 0, max: 1, noNaN: true });
const change = fc.record({ a: share, b: share, text });

describe('a snapshot after edits', () => {
  it('has the text that another text model has', () => {
    const { house } = makeHouse(DEFAULTS);
    fc.assert(
      fc.property(text, fc.array(change, { minLength: 1, maxLength: 8 }), (start, changes) => {
        const theirs = TextDocument.create('file:///a.quern', 'quern', 1, start);
        let ours = Snapshot.open('file:///a.quern', 1, start, house);
        changes.forEach(({ a, b, text: put }, i) => {
          const { length } = theirs.getText();
          const [from, to] = [Math.floor(Math.min(a, b) * length), Math.floor(Math.max(a, b) * length)];
          const range = { start: theirs.positionAt(from), end: theirs.positionAt(to) };
          TextDocument.update(theirs, [{ range, text: put }], i + 2);
          ours = ours.edited(i + 2, [{ range, text: put }]);
          expect(ours.text).toBe(theirs.getText());
        });
      }),
      { numRuns: 300 },
    );
  });
});

const MENU = `recipe Sunday lunch
  by      Harbour Lane test kitchen
  yield   900 g
  pan     round 20 x 4 cm
  oven    180 C

part dough as shortcrust
  240 g     plain flour
  130 g     butter
  60 g      ice water
  do Rub the butter into the flour and bind with the ice water.
  do Bake at 180 C for 20 min.

part custard as baked custard
  3 large   eggs
  300 ml    whole milk
  60 g      caster sugar
  do Whisk the eggs with the milk and sugar.

part glaze
  80 g      honey
  do Warm the honey to 60 C.

part thighs
  600 g     chicken thighs
  10 g      fine salt
  do Roast the thighs at 200 C for 40 min, until the centre reads 65 C.
  do Reheat the thighs until the centre reads 60 C.

part assembly
  100 g     dough
  do Pour the custard over the dough and brush with the glaze.
  do Bake at 150 C for 45 min, until the centre reads 80 C.
  do Serve with the thighs.

trial 2026-08-01
  took    30 min to bake
  used    90 g caster sugar in the custrd

trial 2026-09-14 by Ines
  took    31 min to bake
  took    9 min
  reached 72 C in the centre
  used    200 g butter
  used    90 g sugar in the custard
  weighed 2000 g out of the oven
`;

/** Lines that checks of the whole file look for. */
const PUT = [
  '',
  'part dough',
  'part custard as quiche',
  'part batter',
  'trial 2026-10-01',
  '  took    44 min to bake',
  '  reached 99 C in the centre',
  '  used    20 g fine salt in dough',
  '  weighed 500 g out of the oven',
  '  tested  xmtsacq4b',
  '  yield   400 g',
  '  oven    180 F',
  '  150 g     plain flour',
  '  2 large   egg yolks',
  '  90 g      glaze',
  '  drop salt',
  '  salt',
  '  do Serve with the glaze.',
  '  do Stir everything together.',
  '  do Roast at 200 C for 50 min, until the centre reads 58 C.',
  '  do Fill into jars, seal and keep in the larder.',
  '  allow raw-egg because it is eaten so',
  '  from    base.quern',
] as const;

/** What is done to the lines from one on. */
const lineEdit = fc.oneof(
  fc.record({ how: fc.constant('put' as const), at: fc.nat(60), put: fc.constantFrom(...PUT) }),
  fc.record({ how: fc.constant('write over' as const), at: fc.nat(60), put: fc.constantFrom(...PUT) }),
  fc.record({ how: fc.constantFrom('cut' as const, 'swap' as const, 'cut part' as const), at: fc.nat(60) }),
  fc.record({ how: fc.constant('rename' as const), at: fc.nat(60), put: fc.constantFrom('dough', 'cream', 'glazes') }),
  fc.record({ how: fc.constant('count' as const), at: fc.nat(60), put: fc.constantFrom('1', '31', '72', '900') }),
);
type LineEdit = typeof lineEdit extends fc.Arbitrary<infer E> ? E : never;

/** The text of whole lines in the place of others, so that the last stays blank. */
function changeOf(edit: LineEdit, lines: readonly string[]): { from: number; to: number; text: string } {
  const from = edit.at % (lines.length - 1);
  const row = lines[from] ?? '';
  const next = (start: string) => {
    const at = lines.findIndex((line, i) => i >= from && line.startsWith(start));
    return at < 0 ? from : at;
  };
  switch (edit.how) {
    case 'put':
      return { from, to: from, text: `${edit.put}\n` };
    case 'write over':
      return { from, to: from + 1, text: `${edit.put}\n` };
    case 'cut':
      return { from, to: from + 1, text: '' };
    case 'swap':
      return from + 2 < lines.length
        ? { from, to: from + 2, text: `${lines[from + 1]}\n${row}\n` }
        : { from, to: from, text: '\n' };
    case 'cut part': {
      const start = next('part ');
      const end = lines.findIndex((line, i) => i > start && /^(?:part|trial) /.test(line));
      return { from: start, to: end < 0 ? start + 1 : end, text: '' };
    }
    case 'rename': {
      const at = next('part ');
      return { from: at, to: at + 1, text: `part ${edit.put}\n` };
    }
    case 'count':
      return { from, to: from + 1, text: `${row.replace(/\d+/, edit.put)}\n` };
  }
}

describe('findings after edits', () => {
  const { house } = makeHouse(DEFAULTS);
  const found = ({ findings: { open, accepted } }: Snapshot) =>
    [...open, ...accepted].map(({ code, severity, at, said, related, part }) => ({
      code,
      severity,
      at,
      said,
      related,
      part,
    }));

  it('are those of the text opened afresh', () => {
    fc.assert(
      fc.property(fc.array(lineEdit, { minLength: 1, maxLength: 10 }), fc.nat(9), (edits, branch) => {
        const made = [Snapshot.open('a.quern', 1, MENU, house)];
        for (const [i, edit] of edits.entries()) {
          // An edit may be made to an older text than the last.
          const before = (i === branch ? made[i >> 1] : undefined) ?? (made.at(-1) as Snapshot);
          void before.findings;
          const { from, to, text } = changeOf(edit, before.text.split('\n'));
          const range = { start: { line: from, character: 0 }, end: { line: to, character: 0 } };
          const after = before.edited(before.version + 1, [{ range, text }]);
          made.push(after);
          expect(found(after)).toEqual(found(Snapshot.open('a.quern', 1, after.text, house)));
        }
      }),
      { numRuns: 120 },
    );
  }, 60_000);

  it('are the same objects where an edit says nothing new', () => {
    const before = Snapshot.open('a.quern', 1, MENU, house);
    const told = before.findings;
    const line = MENU.split('\n').indexOf('  do Warm the honey to 60 C.');
    const at = { line, character: '  do Warm'.length };
    const after = before.edited(2, [{ range: { start: at, end: at }, text: ' up' }]);
    expect(told.open.map((f) => f.code)).toContain('trial-disagrees');
    expect(after.findings).toBe(told);
  });
});

describe('what a part orders and does not list', () => {
  const PARTS = [
    'part a\n  100 g     plain flour\n  do Mix the flour. Stir in sesame seeds and the leeks.\n',
    'part b\n  100 g     caster sugar\n  do Stir the sugar with the cheddar and the bread.\n',
    'part c\n  100 g     rolled oats\n  do Fold the oats into the mayonnaise.\n',
  ];
  const told = (snapshot: Snapshot) =>
    snapshot.findings.open.map(({ code, at, severity, said }) => [code, at.line, severity, said.message]);

  it.each([
    '  20 g      sesame seeds',
    '  20 g      poppy seeds',
    '  3         leeks, sliced',
    '  200 g     xyzzy',
    '  100 g     unsalted butter',
    '  50 g      cheddar',
    '  50 g      white bread',
  ])('follows `%s` in any part', (row) => {
    const { house } = makeHouse(DEFAULTS);
    for (const of of PARTS) {
      const text = `recipe X\n${PARTS.map((part) => (part === of ? part.replace('\n', `\n${row}\n`) : part)).join('')}`;
      const line = text.split('\n').indexOf(row);
      const opened = Snapshot.open('file:///a.quern', 1, text, house);
      const before = told(opened);
      const lineOf = (end: number) => ({ start: { line, character: 0 }, end: { line: end, character: 0 } });
      const without = opened.edited(2, [{ range: lineOf(line + 1), text: '' }]);
      expect(told(without)).toEqual(told(Snapshot.open('file:///a.quern', 1, without.text, house)));
      expect(told(without.edited(3, [{ range: lineOf(line), text: `${row}\n` }]))).toEqual(before);
    }
  });
});
