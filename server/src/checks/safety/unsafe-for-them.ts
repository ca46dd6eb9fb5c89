import { type Eater, eatersSaid } from '../../recipe/unsafe-for.ts';
import { capital } from '../../recipe/words.ts';
import { notForAll } from '../by-state/not-for-all.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly name: string;
  readonly who: Eater;
  readonly why: string;
  readonly remedy: string;
  readonly source: string;
}

const WHO: Readonly<Record<Eater, string>> = {
  baby: 'babies under a year',
  toddler: 'children under four',
  child: 'children',
  pregnant: 'anyone pregnant',
  frail: 'the ill, the very old and others with little resistance',
};

type Shared = Found<Omit<Values, 'who'> & { readonly whom: ReadonlySet<Eater> }>;

const shared = overJourneys((_house, journey) =>
  notForAll(journey).map(({ hazard, ingredient, of }): Shared => {
    const { line, name, nameNode } = ingredient;
    const { who: whom, why, remedy, source } = hazard;
    return {
      at: { part: of.part, line, start: nameNode.start, end: nameNode.end },
      ...(hazard.level === 'warning' && { severity: 'warning' as const }),
      values: { name, whom, why, remedy, source },
    };
  }),
);

/** The youngest, or whoever is named first, of those whom it harms. */
const found = foundAgain<Values>((recipe, house) => {
  const eaters = eatersSaid(recipe);
  if (eaters.length === 0) return [];
  return shared(recipe, house).flatMap(({ values: { whom, ...values }, ...place }) => {
    const said = eaters.find(({ eater }) => whom.has(eater));
    return said === undefined ? [] : [{ ...place, values: { ...values, who: said.eater } }];
  });
});

export default defineCheck<Values>({
  code: 'unsafe-for-them',
  title: 'It is meant for someone who must not eat something in it',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title: 'FDA Food Code 2022, 3-801.11; CDC, How to Prevent Listeria Infection; each hazard with its row in the data',
  },
  explain: `**What it computes.** Whom the recipe says that it is for (babies, toddlers, children, anyone pregnant, a ward, a guest with little resistance), and whether something in it is not for them: honey under a year; whole nuts, grapes and the like; raw milk and soft cheese; raw sprouts; egg, fish or meat that is not cooked through; cold sliced meat and smoked fish; raw juice.

**Why it matters.** What most people get over kills these.

**What to do.** What the message says: leave it out, cut it, or heat it through. Where it is for others, say so: \`note Not for babies under a year.\`

**Silent** where nobody is named, where they are named to be kept from it (\`not for babies\`), and for what a step cooks through, grinds or cuts lengthways. Baby carrots are no babies.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ name, who, why, remedy, source }) => ({
    message: `${capital(name)}: not for ${WHO[who]}, as ${why}. ${capital(remedy)}. ${CAUTION}`,
    source,
  }),
  examples: {
    good: [
      'recipe Baby porridge\n  yield   2 bowls\n  40 g      rolled oats\n  250 g     water\n  100 g     banana\n  do Simmer the oats in the water for 10 min and stir in the banana, mashed.\n',
      'recipe Oat bars\n  yield   12 bars\n  note    Not for babies under a year.\n  200 g     rolled oats\n  100 g     honey\n  100 g     butter\n  do Melt the butter with the honey, stir in the oats and bake at 160 C for 25 min until golden.\n',
      'recipe Fruit for toddlers\n  yield   4 bowls\n  200 g     grapes\n  do Quarter the grapes lengthways.\n',
    ],
    bad: [
      'recipe Baby porridge\n  yield   2 bowls\n  40 g      rolled oats\n  250 g     water\n  10 g      honey\n# "honey" unsafe-for-them: babies under a year\n  do Simmer the oats in the water for 10 min and stir in the honey.\n',
      'recipe Fruit cups\n  yield   4 bowls\n  tags    toddlers\n  200 g     grapes\n# "grapes" unsafe-for-them: windpipe\n  100 g     strawberries\n  do Slice the strawberries, and pile into bowls with the grapes.\n',
      'recipe Crunchy salad\n  serve   For the ward.\n  100 g     alfalfa sprouts\n# "alfalfa sprouts" unsafe-for-them: little resistance\n  200 g     carrots\n  do Grate the carrots and toss with the sprouts.\n',
      'recipe Sandwiches\n  yield   2 portions\n  note    For a pregnant friend.\n  200 g     deli ham\n# "deli ham" unsafe-for-them warning: Listeria\n  150 g     white bread\n  do Lay the ham on the bread and serve.\n',
    ],
  },
});
