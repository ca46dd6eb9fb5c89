/** What a sentence says behind the last of two ways is said of both, and `both` is what was spoken of. The recipes are invented. */
import { describe, expect, test } from 'vitest';
import { open } from '../../support/harness.ts';

const dangers = (list: readonly string[], ...steps: readonly string[]): readonly string[] => {
  const text = [...list, ...steps.map((step) => `do ${step}`)].map((line) => `  ${line}`).join('\n');
  return open(`recipe Test\n${text}\n`).findings.open.flatMap(({ code, severity }) =>
    severity === 'error' || severity === 'warning' ? [code] : [],
  );
};

const PATTIES = ['600 g pork mince', '10 g fine salt'];
const SAUSAGES = ['1.2 kg pork shoulder', '300 g pork back fat', '24 g fine salt', '100 g breadcrumbs'];

describe('either of two ways', () => {
  test('the figure is of both', () => {
    const shape = 'Mix the pork with the salt and shape in patties.';
    expect(dangers(PATTIES, shape, 'Fry or grill for 12 min until the centre reads 72 C.')).toEqual([]);
    expect(dangers(PATTIES, shape, 'Fry or grill for 12 min until the centre reads 52 C.')).toContain('undercooked');
  });
  test('both of what was minced', () => {
    const steps = [
      'Mince the pork and the back fat, and keep both below 4 C.',
      'Mix in the salt and the breadcrumbs and shape in sausages.',
    ];
    expect(dangers(SAUSAGES, ...steps, 'Grill or fry for 20 min until the middle reads 72 C.')).toEqual([]);
    expect(dangers(SAUSAGES, ...steps, 'Serve with mustard.')).toContain('no-safe-temperature');
  });
});
