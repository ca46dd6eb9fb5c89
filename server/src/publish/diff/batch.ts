/**
 * Knows how many times one recipe's batch another is, and when two amounts are the same at that batch.
 * Refuses to know what comes of an amount that is not.
 */
import { likelyGrams } from '../../food/weigh.ts';
import type { Quantity } from '../../measure/quantity.ts';
import { totalOf } from '../../measure/total.ts';
import type { AmountNode } from '../../notation/tree.ts';
import type { Ingredient } from '../../recipe/model.ts';

/** Amounts this near each other are the same but for rounding in the kitchen. */
export const NEAR = 0.02;
export const near = (a: number, b: number): boolean => Math.abs(a / b - 1) <= NEAR;

/** The factor that most amounts agree on; 1 unless more than half of them, and two at least, say otherwise. */
export function batchOf(pairs: readonly (readonly [Ingredient, Ingredient])[], byYield: number | undefined): number {
  const ratios = pairs.flatMap(([a, b]) => ratioOf(a, b) ?? []);
  const votes = (of: number) => ratios.filter((r) => near(r, of)).length;
  let best = 1;
  for (const candidate of [...(byYield === undefined ? [] : [byYield]), ...ratios])
    if (votes(candidate) > votes(best)) best = candidate;
  const won = votes(best) >= 2 && votes(best) > ratios.length / 2 && !near(best, 1);
  return won ? plainFactor(best, byYield) : 1;
}

/** 1.4968 is one and a half: the yield's own ratio, or the nearest plain number. */
function plainFactor(factor: number, byYield: number | undefined): number {
  if (byYield !== undefined && near(byYield, factor)) return byYield;
  const plain = Math.round(factor * 12) / 12;
  return plain > 0 && near(plain, factor) ? plain : factor;
}

function ratioOf(a: Ingredient, b: Ingredient): number | undefined {
  const fromG = gramsOf(a);
  const toG = gramsOf(b);
  return fromG === null || toG === null || fromG <= 0 ? undefined : toG / fromG;
}

export const gramsOf = ({ weighed }: Ingredient): number | null => (weighed.known ? likelyGrams(weighed) : null);

export function sameAmount(a: AmountNode | undefined, b: AmountNode | undefined, batch: number): boolean {
  if (a?.kind === 'free' || b?.kind === 'free' || a === undefined || b === undefined) return a?.kind === b?.kind;
  const [x, y] = [a.quantity, b.quantity];
  const [all, now] = [totalOf(x, 'us'), totalOf(y, 'us')];
  // `1 lb 4 oz` and `20 oz` are one amount, however many terms either has.
  if ((isSeveral(x) || isSeveral(y)) && all !== undefined && now !== undefined)
    return all.dimension === now.dimension && near(now.low, all.low * batch) && near(now.high, all.high * batch);
  const alike =
    x.unit === y.unit && x.count === y.count && x.size === y.size && x.about === y.about && x.bias === y.bias;
  return alike && near(y.low, x.low * batch) && near(y.high, x.high * batch);
}

const isSeveral = ({ plus, upTo }: Quantity): boolean => plus !== undefined || upTo !== undefined;
