/**
 * Knows the kinds that egg sets, by name: their doneness is a temperature.
 */
export const EGG_DISHES: ReadonlySet<string> = new Set([
  'baked custard',
  'quiche',
  'cheese filling',
  'stirred custard',
]);
