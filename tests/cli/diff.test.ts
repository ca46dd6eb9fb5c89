import { describe, expect, test } from 'vitest';
import { quern } from '../support/fake-io.ts';

const CRUST =
  'recipe Crust\n  yield   1 crust\n\n  200 g     plain flour\n  100 g     butter\n  50 g      water\n\n  do Rub the butter into the flour and bind with the water.\n';
const files = { 'a.quern': CRUST, 'b.quern': CRUST.replace('100 g', '80 g '), 'c.quern': `${CRUST}# A remark.\n` };

describe('diff', () => {
  test.each<[string, string[], number, RegExp]>([
    ['two files', ['a.quern', 'b.quern'], 0, /^ *butter down 20 g/m],
    ['with --exit-code', ['a.quern', 'b.quern', '--exit-code'], 1, /butter/],
    ['the same text', ['a.quern', 'a.quern', '--exit-code'], 0, /^the same text$/m],
    ['another remark', ['a.quern', 'c.quern', '--exit-code'], 0, /^nothing that a cook would do otherwise$/m],
    ['one file only', ['a.quern'], 2, /^$/],
    ['three', ['a.quern', 'b.quern', 'c.quern'], 2, /^$/],
    ['a file that is not there', ['a.quern', 'no.quern'], 2, /^$/],
    ['a revision without git', ['HEAD:a.quern', 'b.quern'], 2, /^$/],
  ])('%s', async (_, args, exit, out) => {
    const ran = await quern(['diff', ...args], files);
    expect(ran.exit).toBe(exit);
    expect(ran.out).toMatch(out);
  });

  test('as a text converter of git: a fact a line, by the house it runs in', async () => {
    const { out } = await quern(['diff', '--textconv', '/tmp/blob/own.quern'], {
      '/tmp/blob/own.quern': CRUST.replace('200 g     plain flour', '2 cup     quayside flour'),
      'foods.quern': 'food quayside flour\n  like    plain flour\n  1 cup = 130 g\n',
      'quern.json': '{}',
    });
    expect(out).toContain('  quayside flour: 260 g\n');
    expect(out).toContain('  do Rub the butter into the flour and bind with the water.\n');
  });

  test('help shows how git is told of it', async () => {
    expect((await quern(['diff', '--help'])).out).toMatch(/git config diff\.quern\.command/);
  });
});
