import { replaceSpan } from '../../edits/text-edit.ts';
import { gramsText, percentRange } from '../../measure/number-text.ts';
import { middle, type Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import { type Ingredient, isFlour } from '../../recipe/ingredient.ts';
import type { Part } from '../../recipe/recipe.ts';
import { defineCheck, type Found } from '../check.ts';
import { gramsOf } from '../formula/band.ts';

interface Values {
  readonly name: string;
  readonly percent: Range;
  /** What it is taken for, in grams, and of what. */
  readonly grams: number;
  readonly words: string;
  /** What weighs most in its part, and what the percentage of that would be, in grams. */
  readonly heaviest: string;
  readonly ofHeaviest: number;
  readonly amount: Span;
}

export default defineCheck<Values>({
  code: 'percent-of-what',
  title: 'A percentage does not say of what',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `In a dough a percentage is of the flour, in a ferment or a cure of all that is weighed there: so the trade has it. Anywhere else \`1.5 % salt\` can be of the meat, or of everything, or of the spoon of flour that binds the sauce.

**What it computes.** What the percentage is taken for now, and what it would be of the heaviest food of its part.

**What to do.** Write its weight, or of what it is. Where only one food is weighed beside it, this is information. **Silent** in doughs, pastries, cakes, batters, ferments and cures, where flour is a quarter of what is weighed or more, and where the whole list is in percentages.`,
  find: (part) => {
    const asked = part.head.ingredients.filter((i) => i.percent !== undefined);
    if (asked.length === 0) return [];
    const heaviest = heaviestOf(part);
    if (heaviest === undefined) return [];
    const severity = heaviest.alone ? ({ severity: 'info' } as const) : {};
    return asked.flatMap((i): Found<Values>[] => {
      const { amount } = i.node;
      if (amount === undefined || i.percent === undefined || !i.weighed.known) return [];
      const values: Values = {
        name: i.name,
        percent: i.percent,
        grams: gramsOf(i),
        words: i.weighed.reason.words,
        heaviest: heaviest.name,
        ofHeaviest: (heaviest.grams * middle(i.percent)) / 100,
        amount,
      };
      return [{ at: { line: i.line, start: amount.start, end: amount.end }, values, ...severity }];
    });
  },
  say: ({ name, percent, grams, words, heaviest, ofHeaviest }) => ({
    message: `${percentRange(percent.low / 100, percent.high / 100)} of what? The ${name} is taken as ${gramsText(grams)} g, ${words}; of the ${heaviest} it would be ${gramsText(ofHeaviest)} g. Write its weight.`,
    value: grams,
    unit: 'g',
  }),
  fix: ({ grams, ofHeaviest }, _scene, at) =>
    [...new Set([`${gramsText(ofHeaviest)} g`, `${gramsText(grams)} g`])].map((text) => ({
      title: `Write \`${text}\``,
      effect: 'amounts' as const,
      edits: [replaceSpan(at.line, at, text)],
    })),
  examples: {
    good: [
      'recipe Loaf as lean bread\n  yield   1 loaf\n  500 g     bread flour\n  65 %      water\n  2 %       fine salt\n  1 %       instant yeast\n  do Knead everything for 10 min and prove for 2 h.\n  do Bake at 230 C for 40 min until it reads 96 C.\n',
      'recipe Kraut as lacto-ferment\n  yield   1 jar\n  2 kg      white cabbage, shredded\n  2 %       fine salt\n  do Rub the salt into the cabbage and press it into a jar, under its brine.\n  do Ferment at 18 C for 3 weeks.\n',
    ],
    bad: [
      {
        text: 'recipe Meat loaf\n  1 kg      beef mince\n  200 g     onions, chopped\n  1.5 %     fine salt\n# ^^^^^ percent-of-what *: 15 g\n  do Mix everything and bake at 180 C until it reads 74 C.\n',
        after: {
          'Write `15 g`':
            'recipe Meat loaf\n  1 kg      beef mince\n  200 g     onions, chopped\n  15 g     fine salt\n  do Mix everything and bake at 180 C until it reads 74 C.\n',
        },
      },
      'recipe Roast\n  2 kg      pork shoulder\n  1.5 %     fine salt\n# ^^^^^ percent-of-what info *: 30 g\n  do Rub the salt into the pork and roast at 150 C until it reads 90 C.\n',
      'recipe Stew\n  1 kg      stewing beef\n  20 g      plain flour\n  1.5 %     fine salt\n# ^^^^^ percent-of-what *: flour\n  do Braise everything at 150 C for 3 h.\n',
    ],
  },
});

/** Groups of kinds whose percentages have a meaning in the trade. */
const SETTLED: ReadonlySet<string> = new Set(['dough', 'pastry', 'cake', 'batter', 'ferment']);
/** From this share of flour on a part is a dough, whatever it is called. */
const FLOURY = 0.25;

interface Heaviest {
  readonly name: string;
  readonly grams: number;
  /** Nothing else is weighed there. */
  readonly alone: boolean;
}

/** What weighs most in a part where a percentage may be of anything. */
function heaviestOf({ head }: Part): Heaviest | undefined {
  if (head.nominal || SETTLED.has(head.kind?.group ?? '')) return undefined;
  const weighed = head.ingredients.filter((i) => i.percent === undefined && i.weighed.known);
  const whole = weighed.reduce((sum, i) => sum + gramsOf(i), 0);
  const flour = weighed.filter(isFlour).reduce((sum, i) => sum + gramsOf(i), 0);
  if (whole <= 0 || flour >= whole * FLOURY || head.ingredients.some((i) => i.percent !== undefined && isFlour(i)))
    return undefined;
  const [first, ...rest] = weighed;
  if (first === undefined) return undefined;
  const heaviest: Ingredient = rest.reduce((most, i) => (gramsOf(i) > gramsOf(most) ? i : most), first);
  return { name: heaviest.name, grams: gramsOf(heaviest), alone: rest.length === 0 };
}
