import { replaceSpan } from '../../edits/text-edit.ts';
import { gramsText, percentRange } from '../../measure/number-text.ts';
import { middle, type Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import { isFlour } from '../../recipe/list/ingredient.ts';
import { gramsOf } from '../../recipe/measures/brought.ts';
import type { Kind } from '../../recipe/measures/kind.ts';
import type { Ingredient } from '../../recipe/model.ts';
import type { ListedPart } from '../../recipe/recipe.ts';
import { defineCheck, type Found, type Said } from '../check.ts';

interface Asked {
  readonly name: string;
  readonly percent: Range;
  /** What it is taken for, in grams, and of what. */
  readonly grams: number;
  readonly words: string;
  /** What weighs most in its part, and what the percentage of that would be, in grams. */
  readonly heaviest: string;
  readonly ofHeaviest: number;
  /** Up to the name. */
  readonly gap: Span;
}

/** What it is said to be of is not on the list, or not alone there. */
interface Astray {
  readonly of: string;
}

type Values = Asked | Astray;

export default defineCheck<Values>({
  code: 'percent-of-what',
  title: 'A percentage does not say of what',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'list',
  doubtsFigure: true,
  source: { kind: 'common practice, no source' },
  explain: `In a dough a percentage is of the flour, in a ferment or a cure of all that is weighed there: so the trade has it. Anywhere else \`1.5 % salt\` can be of the meat, or of everything, or of the spoon of flour that binds the sauce.

**What it computes.** What the percentage is taken for now, and what it would be of the heaviest food of its part. What a percentage is said to be of must stand on the list of its part.

**What to do.** Write of what it is, with two blanks before the name (\`1.5 % of the beef  fine salt\`), or its weight. Where only one food is weighed beside it, this is information. **Silent** in doughs, pastries, cakes, batters, ferments and cures, where flour is a quarter of what is weighed or more, and where the whole list is in percentages.`,
  find: (part) => [...strayShares(part), ...asksOf(part)],
  say: (values) => ('of' in values ? sayAstray(values) : sayAsked(values)),
  fix: (values, _scene, at) =>
    'of' in values
      ? []
      : [
          {
            title: `Write \`of the ${values.heaviest}\``,
            effect: 'amounts' as const,
            edits: [replaceSpan(at.line, values.gap, ` of the ${values.heaviest}  `)],
          },
          {
            title: `Write \`${gramsText(values.grams)} g\``,
            effect: 'amounts' as const,
            edits: [replaceSpan(at.line, at, `${gramsText(values.grams)} g`)],
          },
        ],
  examples: {
    good: [
      'recipe Burgers\n  yield   8 burgers\n  1 kg      beef mince\n  200 g     onions, chopped\n  1.5 % of the beef  fine salt\n  do Mix the beef with the onions and the salt.\n  do Shape and fry for 10 min, until the centre reads 71 C.\n',
      'recipe Loaf as lean bread\n  yield   1 loaf\n  500 g     bread flour\n  65 %      water\n  2 %       fine salt\n  1 %       instant yeast\n  do Knead everything for 10 min and prove for 2 h.\n  do Bake at 230 C for 40 min until it reads 96 C.\n',
      'recipe Kraut as lacto-ferment\n  yield   1 jar\n  2 kg      white cabbage, shredded\n  2 %       fine salt\n  do Rub the salt into the cabbage and press it into a jar, under its brine.\n  do Ferment at 18 C for 3 weeks.\n',
    ],
    bad: [
      {
        text: 'recipe Meat loaf\n  1 kg      beef mince\n  200 g     onions, chopped\n  1.5 %     fine salt\n# ^^^^^ percent-of-what *: 15 g\n  do Mix everything and bake at 180 C until it reads 74 C.\n',
        after: {
          'Write `of the beef mince`':
            'recipe Meat loaf\n  1 kg      beef mince\n  200 g     onions, chopped\n  1.5 % of the beef mince  fine salt\n  do Mix everything and bake at 180 C until it reads 74 C.\n',
        },
      },
      'recipe Roast\n  2 kg      pork shoulder\n  1.5 %     fine salt\n# ^^^^^ percent-of-what info *: 30 g\n  do Rub the salt into the pork and roast at 150 C until it reads 90 C.\n',
      'recipe Burgers\n  1 kg      beef mince\n  1.5 % of the bef  fine salt\n#              ^^^ percent-of-what: no one\n  do Mix and fry until it reads 71 C.\n',
      'recipe Stew\n  1 kg      stewing beef\n  20 g      plain flour\n  1.5 %     fine salt\n# ^^^^^ percent-of-what *: flour\n  do Braise everything at 150 C for 3 h.\n',
    ],
  },
});

function* strayShares({ head }: ListedPart): Iterable<Found<Values>> {
  for (const { node, weighed, percent, line } of head.ingredients) {
    const { shareOf } = node;
    if (percent === undefined || shareOf === undefined || weighed.known) continue;
    yield { at: { line, start: shareOf.start, end: shareOf.end }, values: { of: shareOf.text } };
  }
}

function* asksOf(part: ListedPart): Iterable<Found<Values>> {
  const { ingredients } = part.head;
  if (!ingredients.some(isAsked)) return;
  const heaviest = heaviestOf(part);
  if (heaviest === undefined) return;
  for (const i of ingredients) {
    const { amount } = i.node;
    if (!isAsked(i) || amount === undefined || i.percent === undefined || !i.weighed.known) continue;
    const values: Values = {
      name: i.name,
      percent: i.percent,
      grams: gramsOf(i),
      words: i.weighed.reason.words,
      heaviest: heaviest.name,
      ofHeaviest: (heaviest.grams * middle(i.percent)) / 100,
      gap: { start: amount.end, end: i.nameNode.start },
    };
    const at = { line: i.line, start: amount.start, end: amount.end };
    yield { at, values, ...(heaviest.alone && { severity: 'info' as const }) };
  }
}

const isAsked = ({ percent, node }: Ingredient): boolean => percent !== undefined && node.shareOf === undefined;

const sayAstray = ({ of }: Astray): Said => ({
  message: `The list has no one \`${of}\` of known weight to take a percentage of: write its name as it stands there.`,
});

const sayAsked = ({ name, percent, grams, words, heaviest, ofHeaviest }: Asked): Said => ({
  message: `${percentRange(percent.low / 100, percent.high / 100)} of what? The ${name} is taken as ${gramsText(grams)} g, ${words}; of the ${heaviest} it would be ${gramsText(ofHeaviest)} g. Write of what it is, or its weight.`,
  value: grams,
  unit: 'g',
});

/** Groups of kinds whose percentages have a meaning in the trade. */
const SETTLED: ReadonlySet<Kind['group']> = new Set(['dough', 'pastry', 'cake', 'batter', 'ferment']);
/** From this share of flour on a part is a dough, whatever it is called. */
const FLOURY = 0.25;

interface Heaviest {
  readonly name: string;
  readonly grams: number;
  /** Nothing else is weighed there. */
  readonly alone: boolean;
}

/** What weighs most in a part where a percentage may be of anything. */
function heaviestOf({ head }: ListedPart): Heaviest | undefined {
  if (head.nominal || (head.kind !== undefined && SETTLED.has(head.kind.group))) return undefined;
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
