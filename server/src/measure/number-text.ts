/**
 * Knows how a kitchen writes a number: grams without false digits, spoons and cups in fractions.
 * Refuses to know units' sizes.
 */

/** As few digits as a scale shows: 0.1 g steps under 10, whole grams above; no trailing zeros. */
export function gramsText(grams: number): string {
  const step = grams < 1 ? 0.01 : grams < 10 ? 0.1 : 1;
  return trimmed(Math.round(grams / step) * step, 2);
}

/** The likely weight, and how far it may be off where that can be seen: `125 g (120 to 150)`. */
export function likelyText(grams: number, low: number, high: number): string {
  const spread = gramsText(low) === gramsText(high) ? '' : ` (${gramsText(low)} to ${gramsText(high)})`;
  return `${gramsText(grams)} g${spread}`;
}

/** At most so many decimals, no trailing zeros. */
export function trimmed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** Three significant digits, plainly written. */
export function significant(value: number, digits = 3): string {
  if (value === 0 || !Number.isFinite(value)) return '0';
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))));
  return trimmed(value, Math.min(decimals, 6));
}

/** `31 %` of a ratio, `0.05 %` of a small one. */
export function percentText(ratio: number): string {
  const percent = ratio * 100;
  return `${trimmed(percent, percent < 0.0999 ? 2 : percent < 10 ? 1 : 0)} %`;
}

/** `31 %`, or `31 to 38 %` where the two differ as written. */
export function percentRange(low: number, high: number): string {
  const a = percentText(low);
  const b = percentText(high);
  return a === b ? a : `${a.slice(0, -2)} to ${b}`;
}

const FRACTIONS: readonly (readonly [number, string, string])[] = [
  [1 / 8, '1/8', '⅛'],
  [1 / 4, '1/4', '¼'],
  [1 / 3, '1/3', '⅓'],
  [3 / 8, '3/8', '⅜'],
  [1 / 2, '1/2', '½'],
  [5 / 8, '5/8', '⅝'],
  [2 / 3, '2/3', '⅔'],
  [3 / 4, '3/4', '¾'],
  [7 / 8, '7/8', '⅞'],
];

/** A whole number and a kitchen fraction, `1 1/2` or `1½`; undefined when none is `near` enough to the value, as a share of it. */
export function fractionText(value: number, glyph: boolean, near = 0.02): string | undefined {
  const whole = Math.floor(value + 1e-9);
  const rest = value - whole;
  if (rest < near * Math.max(value, 0.1)) return whole === 0 ? undefined : String(whole);
  if (1 - rest < near * value) return String(whole + 1);
  for (const [size, plain, sign] of FRACTIONS) {
    if (Math.abs(rest - size) > near * value) continue;
    const text = glyph ? sign : plain;
    return whole === 0 ? text : glyph ? `${whole}${text}` : `${whole} ${text}`;
  }
  return undefined;
}

/** The sign of a plain fraction, `½` of `1/2`; undefined where a kitchen has none. */
export const fractionSign = (plain: string): string | undefined => FRACTIONS.find(([, text]) => text === plain)?.[2];

/** What every vulgar fraction of Unicode stands for. */
export const VULGAR_FRACTIONS: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅕': 1 / 5,
  '⅖': 2 / 5,
  '⅗': 3 / 5,
  '⅘': 4 / 5,
  '⅙': 1 / 6,
  '⅚': 5 / 6,
  '⅐': 1 / 7,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
  '⅑': 1 / 9,
  '⅒': 1 / 10,
};
