import { afterEach, describe, expect, it } from 'vitest';
import { FakeEditor, RICH } from '../support/fake-editor.ts';

const URI = 'file:///kitchen/crust.quern';
const CRUST = `recipe Plain crust
part crust as shortcrust
  1½ cups   plain flour
  ½ cup     butter, cold and cubed
  1 cup     water
  do Rub the butter into the flour.
  do Bring together with the water and chill for 30 min.
`;

let editor: FakeEditor | undefined;
afterEach(() => editor?.kill());

describe('a crust that is typed with a cup of water', () => {
  it('is too wet, with what was found and what is usual; the fix mends it; a quarter cup is quiet', async () => {
    const e = await FakeEditor.start({ capabilities: RICH });
    editor = e;
    await e.open(URI, CRUST.replace('1 cup     water', '¼ cup     water'));
    expect(await e.codes(URI)).not.toContain('dough-too-wet');

    await e.type(URI, '¼ cup     water', '1 cup     water');
    const wet = (await e.findings(URI)).find((d) => d.code === 'dough-too-wet');
    expect(wet?.message).toMatch(/water per flour is \d+.* %/);
    expect(wet?.message).toMatch(/18 to 53 % is usual for shortcrust/);
    expect(wet?.severity).toBe(2);
    expect(wet?.source).toBe('quern');
    expect(wet?.codeDescription?.href).toBe('quern-page:/dough-too-wet.md');
    if (wet === undefined) return;

    const actions = await e.codeActions(URI, wet.range, ['quickfix'], [wet]);
    const fix = actions.find((a) => a.isPreferred && a.diagnostics?.[0]?.code === 'dough-too-wet');
    expect(fix?.diagnostics).toEqual([wet]);
    expect(fix?.edit).toBeDefined();
    if (fix?.edit) await e.apply(fix.edit);
    expect(await e.codes(URI)).not.toContain('dough-too-wet');
    expect(await e.stop()).toBe(0);
  });
});
