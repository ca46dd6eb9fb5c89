import { expect, test } from 'vitest';
import { quern } from '../support/fake-io.ts';

const BASE = 'recipe Base\n  200 g     plain flour\n  do Sift the flour.\n';
const VARIANT = 'recipe Tart\n  from    ../bases/base.quern\n';

test('in no house, a recipe may build on others below the folder that was named, or the one the command runs in', async () => {
  for (const folder of ['/kitchen', '/elsewhere']) {
    const files = { [`${folder}/tarts/tart.quern`]: VARIANT, [`${folder}/bases/base.quern`]: BASE };
    const ran = await quern(['check', folder, '--format', 'compact'], files);
    expect(ran.out).not.toContain('missing-file');
  }
});

test('and on none outside it', async () => {
  const files = { '/elsewhere/tarts/tart.quern': VARIANT, '/elsewhere/bases/base.quern': BASE };
  const ran = await quern(['check', '/elsewhere/tarts', '--format', 'compact'], files);
  expect(ran.out).toContain('`../bases/base.quern` lies outside the house');
  expect(ran.exit).toBe(1);
});
