/**
 * Knows the kinds that egg sets, by name: their doneness is a temperature.
 */
import type { Kind } from '../../recipe/measures/kind.ts';
export const EGG_DISHES: ReadonlySet<Kind['name']> = new Set([
  'baked custard',
  'quiche',
  'cheese filling',
  'stirred custard',
  'fruit curd',
]);
