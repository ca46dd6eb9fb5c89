/** What is typed and taken back was worked out before: the very same findings, wherever nothing around the text has changed. */
import { describe, expect, test } from 'vitest';
import { makeHouse } from '../../server/src/workspace/houses.ts';
import type { Bases, Loaded } from '../../server/src/workspace/ports.ts';
import { DEFAULTS, parseSettings } from '../../server/src/workspace/settings.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';

const { house } = makeHouse(DEFAULTS);
const LOAF =
  'recipe Loaf as lean bread\n  500 g  bread flour\n  600 g  water\n  10 g   salt\n  3 g    instant yeast\n  do Mix the flour, water, salt and yeast.\n  do Bake at 220 C for 40 min';
const codes = ({ findings }: Snapshot) => findings.open.map(({ code, at }) => `${code} ${at.line}`);

function typed(snapshot: Snapshot, line: number, character: number, text: string, length = 0): Snapshot {
  const range = { start: { line, character }, end: { line, character: character + length } };
  const after = snapshot.edited(snapshot.version + 1, [{ range, text }]);
  void after.findings;
  return after;
}

describe('a state that was there before', () => {
  const first = Snapshot.open('loaf.quern', 1, LOAF, house);
  void first.findings;

  test('is found again, letter by letter', () => {
    const states = [first];
    for (const letter of 'xyz') states.push(typed(states.at(-1) ?? first, 1, 14, letter));
    let back = states.at(-1) ?? first;
    for (const state of states.slice(0, -1).reverse()) {
      back = typed(back, 1, 14, '', 1);
      expect(back.text).toBe(state.text);
      expect(back.findings).toBe(state.findings);
      expect(codes(back)).toEqual(codes(Snapshot.open('loaf.quern', 1, back.text, house)));
    }
  });

  test('is another one in another house', () => {
    const { settings } = parseSettings('{ "severities": { "dough-too-wet": "off" } }', DEFAULTS);
    const changed = typed(first, 1, 14, 'x').inHouse(makeHouse(settings).house);
    const back = typed(changed, 1, 14, '', 1);
    expect(codes(first)).toContain('dough-too-wet 2');
    expect(codes(back)).not.toContain('dough-too-wet 2');
  });

  test('has a last line that is being typed, if that is what was taken back', () => {
    const last = LOAF.split('\n').length - 1;
    const text = `${LOAF}\n  do Add the cream`;
    const open = Snapshot.open('loaf.quern', 1, text, house);
    void open.findings;
    const back = typed(typed(open, last + 1, 18, 's'), last + 1, 18, '', 1);
    expect(back.text).toBe(text);
    expect(codes(back.refreshed())).toEqual(codes(open));
    expect(back.holdsBack).toBe(
      open.findings.open.some((f) => f.check.family === 'bookkeeping' && f.at.line === last + 1),
    );
  });

  test('of a variant builds on its base as that is now', () => {
    const at: { base: Loaded } = { base: { path: 'base.quern', text: LOAF } };
    const bases: Bases = { load: (_, name) => (name === 'base.quern' ? at.base : undefined) };
    const text = 'recipe Seeded\n  from base.quern\n  30 g sesame seeds\n';
    const open = Snapshot.open('seeded.quern', 1, text, house, bases);
    void open.findings;
    const changed = typed(open, 1, 17, 'x');
    at.base = { path: 'base.quern', text: `${LOAF}\n  do Scatter the sesame seeds on it.\n` };
    const back = typed(changed, 1, 17, '', 1);
    expect(codes(back)).toEqual(codes(Snapshot.open('seeded.quern', 1, text, house, bases)));
    expect(codes(back)).not.toEqual(codes(open));
  });
});
