import { describe, expect, it } from 'vitest';
import { sayAloud, sayFindings, sayInBar, sayMass, sayRecord } from '../../client/src/status-words.ts';

describe('the status', () => {
  it.each([
    [{ error: 0, warning: 0, info: 0, hint: 0 }, 'No findings'],
    [{ error: 1, warning: 0, info: 0, hint: 0 }, '1 error'],
    [{ error: 0, warning: 1, info: 1, hint: 1 }, '1 warning, 1 note, 1 hint'],
    [{ error: 2, warning: 3, info: 4, hint: 5 }, '2 errors, 3 warnings, 4 notes, 5 hints'],
  ])('counts the findings %o', (counts, said) => {
    expect(sayFindings(counts)).toBe(said);
  });

  it.each([
    [null, 'Weight not known'],
    [{ low: 0, high: 0 }, '0 g'],
    [{ low: 2.5, high: 2.5 }, '2.5 g'],
    [{ low: 1385.4, high: 1385.4 }, '1385 g'],
    [{ low: 1385.1, high: 1385.4 }, '1385 g'],
    [{ low: 1370, high: 1400 }, '1370–1400 g'],
    [{ low: 9999, high: 9999 }, '9999 g'],
    [{ low: 12_400, high: 12_400 }, '12.4 kg'],
    [{ low: 9_900, high: 10_500 }, '9.9–10.5 kg'],
  ])('says the weight %o', (mass, said) => {
    expect(sayMass(mass)).toBe(said);
  });

  it.each([
    [{ state: 'never cooked', trials: 0, latest: null }, 'Never cooked'],
    [{ state: 'cooked as written', trials: 1, latest: '2026-09-14' }, 'Cooked as written, tried on 2026-09-14'],
    [
      { state: 'cooked, changed since', trials: 3, latest: '2026-09-14' },
      'Cooked, changed since, 3 trials, the last on 2026-09-14',
    ],
  ] as const)('says the record %o', (record, said) => {
    expect(sayRecord(record)).toBe(said);
  });

  const quiet = { error: 0, warning: 0, info: 0, hint: 0 };
  const status = {
    version: 1,
    uri: 'file:///k/slab.quern',
    documentVersion: 1,
    findings: quiet,
    massG: { low: 1385, high: 1385 },
    yield: '12 squares',
    record: { state: 'never cooked', trials: 0, latest: null },
  } as const;

  it.each([
    [{}, '○ 1385 g, 12 squares'],
    [{ massG: { low: 1385, high: 1500, isLeast: true } }, '○ at least 1385 g, 12 squares'],
    [{ findings: { ...quiet, warning: 2, info: 4 } }, '○ 1385 g, 12 squares, 2 warnings'],
    [{ findings: { ...quiet, error: 1, warning: 2 }, yield: null }, '○ 1385 g, 1 error'],
    [{ record: { state: 'cooked, changed since', trials: 1, latest: '2026-09-14' } }, '◐ 1385 g, 12 squares'],
    [{ record: { state: 'cooked as written', trials: 1, latest: '2026-09-14' } }, '● 1385 g, 12 squares'],
    // A file of foods.
    [{ record: null, massG: null, yield: null }, 'No findings'],
  ] as const)('says in the bar %o', (changed, said) => {
    expect(sayInBar({ ...status, ...changed })).toBe(said);
  });

  it('has no tick for what was never cooked, and says it', () => {
    expect(sayInBar(status)).not.toMatch(/[✓✔☑]|check/);
    expect(sayAloud(status)).toEqual(['Never cooked.', '1385 g of ingredients, makes 12 squares.', 'No findings.']);
  });
});
