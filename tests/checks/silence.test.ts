/** Why a check found nothing in a recipe, as `explain CODE FILE` says it. */
import { describe, expect, test } from 'vitest';
import { CHECKS } from '../../server/src/checks/index.ts';
import { explainOn } from '../../server/src/publish/page.ts';
import type { Settings } from '../../server/src/workspace/settings.ts';
import { open } from '../support/harness.ts';

function onPage(code: string, text: string, settings?: Partial<Settings>): string {
  const check = CHECKS.find((c) => c.code === code);
  if (check === undefined) throw new Error(`no check ${code}`);
  const snapshot = open(text, settings);
  const { open: found, accepted } = snapshot.findings;
  const page = explainOn(check, [...found, ...accepted], snapshot, 'it');
  return page.slice(page.indexOf('## In it'));
}

const CRUST =
  'recipe Crust as shortcrust\n  200 g     plain flour\n  100 g     butter\n  50 g      water\n  do Rub the butter into the flour and bind with the water.\n';

test.each<[why: string, code: string, text: string, words: string]>([
  ['a part of no kind', 'dough-too-wet', CRUST.replace(' as shortcrust', ''), 'does not say what it is'],
  ['a kind that is not known', 'dough-too-wet', CRUST.replace('shortcrust', 'shrotcrust'), 'no kind that is known'],
  ['a kind judged by other measures', 'jam-wont-set', CRUST, 'is shortcrust, which is not judged by this'],
  ['a measure in its band', 'fat-out-of-range', CRUST, 'usual for shortcrust is'],
  [
    'a weight that is not known',
    'dough-too-wet',
    CRUST.replace('50 g      water', '1 blob    xyloquartz'),
    'not known, because',
  ],
  [
    'a part that lists nothing',
    'dough-too-wet',
    'recipe Crust\npart dough as shortcrust\n  do Knead.\n',
    'lists nothing',
  ],
  ['no line of the sort', 'allow-without-reason', CRUST, 'The file has no `allow` line.'],
  ['lines that can all be read', 'syntax', CRUST, 'lines can be read'],
  ['nothing to accept', 'allow-without-effect', CRUST, 'The file has no `allow` line.'],
  ['steps that give no cause', 'undercooked', CRUST, 'It was looked for in 3 ingredients and 1 step.'],
  [
    'no steps',
    'unused-ingredient',
    'recipe Crust\n  200 g     plain flour\n',
    'Without steps, what is done is not known.',
  ],
  ['a food that is not known', 'undercooked', CRUST.replace('butter\n', 'xyloquartz\n'), '`xyloquartz` (line 3)'],
  ['an empty file', 'raw-egg', '', 'The file lists nothing and has no steps.'],
])('%s', (_, code, text, words) => {
  const on = onPage(code, text);
  expect(on).toContain('Nothing of it is found in it.');
  expect(on).toContain(words);
});

describe('of what is found and not shown', () => {
  const UNUSED = 'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Toast the oats.\n';
  test('a level that the house turned off', () => {
    expect(onPage('unused-ingredient', UNUSED, { severities: { 'unused-ingredient': 'off' } })).toContain(
      '`unused-ingredient` is off',
    );
  });

  test('an `allow` with its reason', () => {
    const text = UNUSED.replace('  80 g', '  allow unused-ingredient because it is spread on at table\n  80 g');
    expect(onPage('unused-ingredient', text)).toContain('Accepted there by an `allow` line: it is spread on at table.');
  });
});

test.each(CHECKS)('$code says something of every good example', (check) => {
  for (const text of check.examples.good) {
    const on = onPage(check.code, text);
    if (on.includes('Nothing of it is found')) expect(on).toMatch(/^- \S/m);
  }
});
