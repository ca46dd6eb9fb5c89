import { expect, it } from 'vitest';
import type { PlanAnswer } from '../../server/src/lsp/messages.ts';
import { RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const RICE = 'recipe Rice\n  300 g     rice\n  600 g     water\n  do Simmer the rice in the water for 25 min.\n';
const PEAS = 'recipe Peas\n  300 g     peas\n  100 g     butter\n  do Stir the peas into the butter.\n';

it('the day of open recipes is planned backwards on one page', async () => {
  const client = await Client.connect({ capabilities: RICH, files: new Map([['/k/quern.json', '{}']]) });
  const uris = ['file:///k/rice.quern', 'file:///k/peas.quern'];
  await client.open(uris[0] ?? '', RICE);
  await client.open(uris[1] ?? '', PEAS);
  const plan = (of: readonly string[], serve: string) =>
    client.request<PlanAnswer>('quern/plan', { version: 1, uris: of, serve });
  const answer = await plan(uris, '18:00');
  expect(answer).toMatchObject({ ok: true, title: 'For 18:00' });
  const html = answer.ok ? answer.html : '';
  // Two recipes on one day: 25 min of rice to 18:00, and the peas stirred for the 5 min that are put for them.
  expect(html).toMatch(/17:35.*Rice:<\/span> Simmer/);
  expect(html).toContain('One step of work says no minutes: 5 min is put for it here');
  expect(await plan(uris, 'late')).toMatchObject({ ok: false, why: expect.stringContaining('19:30') });
  expect(await plan(['file:///k/other.quern'], '18:00')).toMatchObject({ ok: false, why: 'No recipe is open.' });
});
