import { describe, expect, it } from 'vitest';
import { moveLine } from '../../server/src/edits/move-line.ts';
import { edited, fixture } from '../support/at-cursor.ts';

function moved(text: string, by: 1 | -1): string | undefined {
  const { snapshot, range } = fixture(text);
  const edit = moveLine(snapshot.document, snapshot.recipe, range.start.line, by);
  return edit && edited(snapshot, [edit]);
}

const SLAB = `recipe Slab
part base
  200 g     plain flour
  # the house's own
  allow unused-ingredient because it is for dusting
  100 g     but$0ter
  30 g      honey

  do Rub the butter into the flour.
  picture rubbed.jpg
  do Bake at 180 C for 20 min.
part top
  50 g      sugar
`;

describe('a line moved within its part', () => {
  it('takes along what is accepted above it and the remark on it', () => {
    const lines = moved(SLAB, -1)?.split('\n').slice(2, 7);
    expect(lines?.map((l) => l.trim().split(/\s{2,}| /)[0])).toEqual(['#', 'allow', '100', '200', '30']);
  });

  it('and comes back', () => {
    const down = moved(SLAB, 1) ?? '';
    expect(down).toContain('  30 g      honey\n  # the house');
    expect(moved(down.replace('but', 'but$0'), -1)).toBe(SLAB.replace('$0', ''));
  });

  it('takes along the picture below a step', () => {
    const step = SLAB.replace('$0', '').replace('do Rub', 'do R$0ub');
    expect(moved(step, 1)).toContain(
      '  do Bake at 180 C for 20 min.\n  do Rub the butter into the flour.\n  picture rubbed.jpg\n',
    );
  });

  it.each([
    ['the last of a list into the steps', SLAB.replace('$0', '').replace('honey', 'ho$0ney'), 1],
    ['the first step into the list', SLAB.replace('$0', '').replace('do Rub', 'do R$0ub'), -1],
    ['the last step into the next part', SLAB.replace('$0', '').replace('do Bake', 'do B$0ake'), 1],
    ['a head', SLAB.replace('$0', '').replace('part base', 'part b$0ase'), 1],
    ['a line that is nowhere', '$0', 1],
  ] as const)('not %s', (_what, text, by) => {
    expect(moved(text, by)).toBeUndefined();
  });
});
