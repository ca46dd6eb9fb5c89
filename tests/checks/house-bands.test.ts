import { describe, expect, test } from 'vitest';
import { readSettings } from '../../server/src/workspace/settings.ts';
import { open } from '../support/harness.ts';

const CRUST =
  'recipe Crust\n  yield   1 crust\n\npart crust as shortcrust\n  200 g     plain flour\n  100 g     butter\n  95 g      water\n\n  do Rub the butter into the flour and bind with the water.\n  do Chill at 4 C for 30 min, roll out, line the pan and chill for 30 min.\n';

describe('bands of a house', () => {
  test('move what is usual, and are named as the source', () => {
    const found = (bands: object) =>
      open(CRUST, readSettings({ bands }).settings).findings.open.filter((f) => f.code === 'dough-too-wet');
    expect(found({}).map((f) => [f.severity, f.said.band])).toEqual([['info', [0.18, 0.53]]]);
    expect(found({ shortcrust: { hydration: [0.2, 0.6] } })).toEqual([]);
    const [strict] = found({ shortcrust: { hydration: [0.2, 0.3] } });
    expect(strict?.said.source).toBe('this house: quern.json');
    expect(strict?.said.message).toContain('20 to 30 % is usual');
  });

  test.each<[object, RegExp]>([
    [{ bands: { shortcrst: {} } }, /no such kind/],
    [{ bands: { shortcrust: { egg: [0, 1] } } }, /judged by hydration/],
    [{ bands: { shortcrust: { hydration: [0.5, 0.2] } } }, /a pair, low and high/],
    [{ bands: { shortcrust: { hydration: 'wet' } } }, /a pair/],
    [{ bands: [] }, /by kind and measure/],
  ])('%j is refused with what to write', (json, words) => {
    const { settings, problems } = readSettings(json);
    expect(problems.join(' ')).toMatch(words);
    expect(open(CRUST, settings).findings.open.some((f) => f.code === 'dough-too-wet')).toBe(true);
  });
});
