/**
 * Knows the caution that a page for readers carries where a safety finding exists, in the usual words of the trade.
 * Refuses to make anything safe: a finding is mended in the recipe, and a caution only tells of it.
 */
import type { Finding } from '../checks/finding.ts';

/** By code. FDA Food Code 2022, 3-603.11 (consumer advisory) and the sections that the checks name. */
const CAUTIONS: Readonly<Record<string, string>> = {
  'raw-egg':
    'Contains raw or lightly cooked egg. Eating raw or undercooked egg may make you ill; use pasteurised egg for anyone old, very young, pregnant or unwell.',
  'raw-flour': 'Contains flour that is not cooked. Raw flour can carry harmful bacteria: use heat-treated flour.',
  undercooked:
    'Contains meat, poultry, fish or egg that may not be cooked through by these figures. Eating it undercooked may make you ill: check the middle with a thermometer.',
  'no-safe-temperature': 'Check with a thermometer that the middle is hot enough to be safe before you serve it.',
  'implausible-temperature': 'A temperature in this recipe looks wrong: ask before you cook by it.',
  'cooling-too-slow': 'Cool what you keep quickly, in shallow dishes, and into the fridge within 2 hours.',
  'held-too-warm': 'Do not leave it standing warm: keep it below 5 °C (41 °F) or above 57 °C (135 °F).',
  'low-acid-preserve': 'Not a recipe for keeping at room temperature: keep it in the fridge, and eat it within days.',
  'curing-salt-dose': 'Weigh the curing salt exactly: too much is poisonous.',
  'unsafe-for-them':
    'Not for everyone: somebody whom this recipe names must not eat something in it. Ask before you serve it to a baby, or to anyone pregnant, ill or old.',
  'burn-or-burst': 'A step of this recipe can burn or hurt whoever does it: read it again before you begin.',
  'natural-toxin':
    'Contains a plant or mushroom that is poisonous unless it is prepared with care: ask before you eat it.',
  'kept-too-long': 'Keep it in the fridge for 7 days at most, or freeze it.',
  'garlic-in-oil': 'Garlic in oil is kept in the fridge, for no more than 4 days.',
};

const LAST = 'Where your local food-safety rules say otherwise, they come first.';

/** The cautions for safety findings, accepted ones too; one a code. */
export function cautionsFor(findings: readonly Finding[]): string[] {
  const codes = new Set(findings.filter((f) => f.check.family === 'safety').map((f) => f.code));
  const cautions = [...codes].map(
    (code) => CAUTIONS[code] ?? 'Read the food-safety rules where you live before you cook this.',
  );
  return cautions.length === 0 ? [] : [...cautions, LAST];
}
