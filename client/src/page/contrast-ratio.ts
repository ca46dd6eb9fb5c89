// Knows how far two colours stand apart, by WCAG 2.2.

/** Red, green and blue, each from 0 to 255. */
export type Colour = readonly [number, number, number];

/** From 1, the same, to 21, black and white. */
export function contrastOf(a: Colour, b: Colour): number {
  const [one, other] = [luminance(a), luminance(b)];
  return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
}

function luminance([red, green, blue]: Colour): number {
  const linear = (channel: number): number => {
    const share = channel / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
}
