import { usedAgain } from '../by-state/marinade-again.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { severityAt } from '../by-state/verdict.ts';
import { defineCheck } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly flesh: string;
}

const found = foundAgain<Values>(
  overJourneys((_house, journey) =>
    usedAgain(journey).map(({ level, part, line, start, end, flesh }) => ({
      at: { part, line, start, end },
      ...severityAt(level),
      values: { flesh },
    })),
  ),
);

export default defineCheck<Values>({
  code: 'raw-contact',
  title: 'What raw flesh lay in is eaten without being boiled',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      'FDA Food Code 2022, 3-302.11(A); USDA FSIS, poultry: marinade that touched raw meat is boiled before it is used',
  },
  explain: `**What it computes.** Which raw meat, poultry or fish waits in what is wet (a marinade, yoghurt, a sauce), and whether a step after the cooking puts that on what is eaten, stirs it into something, or serves it.

**Why it matters.** The bowl that raw chicken lay in holds what the chicken held: Salmonella and Campylobacter. The flesh is cooked; what it lay in is not.

**What to do.** Set some aside before the flesh goes in (\`pour half of the marinade into a clean bowl\`), boil what is left, or throw it away.

It is a warning where the words only point (\`what is left in the bowl\`). **Silent** where a share was kept apart before, where it is boiled afterwards, and for what is brushed on while the food cooks, and for what is mixed into mince, which is fried with it.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ flesh }) => ({
    message: `The raw ${flesh} lay in this: boil it before it is eaten, or set some aside before the raw goes in. ${CAUTION}`,
  }),
  examples: {
    good: [
      'recipe Chicken skewers\npart marinade\n  100 g     soy sauce\n  30 g      honey\n  do Whisk the soy sauce and honey.\npart skewers\n  500 g     chicken breast\n  do Turn the chicken in half of the marinade and chill at 4 C for 4 h.\n  do Grill until it reads 75 C in the middle.\n  do Serve with the rest of the marinade.\n',
      'recipe Patties in rolls\n  500 g     minced pork\n  4         bread rolls\n  do Knead the pork with 1 roll and keep cold.\n  do Fry until it reads 72 C in the middle.\n  do Serve in the rolls.\n',
      'recipe Chicken skewers\n  500 g     chicken breast\n  100 g     soy sauce\n  30 g      honey\n  do Mix the chicken with the soy sauce and honey and chill at 4 C for 4 h.\n  do Lift out the chicken and grill until it reads 75 C in the middle.\n  do Boil what is left for 5 min and serve as a sauce.\n',
    ],
    bad: [
      'recipe Chicken skewers\npart marinade\n  100 g     soy sauce\n  30 g      honey\n  do Whisk the soy sauce and honey.\npart skewers\n  500 g     chicken breast\n  do Turn the chicken in the marinade and chill at 4 C for 4 h.\n  do Grill until it reads 75 C in the middle.\n  do Spoon over the marinade.\n# "Spoon over the marinade" raw-contact: chicken breast lay in this\n',
      'recipe Chicken skewers\n  500 g     chicken thigh\n  200 g     plain yogurt\n  do Stir the chicken with the yogurt and chill at 4 C overnight.\n  do Lift out the chicken and grill until it reads 75 C in the middle.\n  do Do not waste the yogurt: ladle it over.\n# "ladle it over" raw-contact warning: chicken thigh lay in this\n',
      'recipe Chicken tikka\n  500 g     chicken thigh\n  200 g     plain yogurt\n  20 g      sunflower oil\n  do Stir the chicken with the yogurt and oil and chill at 4 C overnight.\n  do Lift out the chicken and grill until it reads 75 C in the middle.\n  do Scrape what is left into a bowl and serve with the chicken.\n# "Scrape what is left into a bowl" raw-contact warning: chicken thigh lay in this\n',
    ],
  },
});
