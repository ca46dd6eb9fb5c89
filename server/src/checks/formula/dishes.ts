/**
 * Knows which mixtures are dishes by what they are mostly made of, and no brine, rub, spice mix or pickle.
 */
import type { Mixture } from '../../recipe/measures/mixture.ts';

/** Of the whole, what a dish is made of; less of it lies in a brine, a rub or a spice mix (judgement). */
const MAIN = 0.3;
/** Meat and flour of the whole that no culture makes a ferment: it lies in yoghurt, or is baked with it (judgement). */
const BODY = 0.15;
/** Acid and vinegar of the whole from which it is a pickle or a condiment (judgement). */
const SOUR = 0.004;
const VINEGAR = 0.06;

export function isDish({ massG, of, has }: Mixture): boolean {
  const body = of.flesh + of.flour;
  const main = body + of.egg + of.milk + Math.max(of.plant, of['cooks to spoil']);
  return main >= massG * MAIN && (body >= massG * BODY || !has.has('culture')) && !has.has('curing');
}

/** So sour that it keeps, and is eaten by the spoon. */
export const isSour = ({ massG, acidG, of }: Mixture): boolean =>
  acidG >= massG * SOUR || of.vinegar >= massG * VINEGAR;
