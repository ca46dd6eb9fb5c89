import { usedAgain } from '../by-state/marinade-again.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { rinsedOver, soiledAgain, stuffedAhead } from '../by-state/soiled.ts';
import { severityAt } from '../by-state/verdict.ts';
import { washedBirds } from '../by-state/washed-bird.ts';
import { defineCheck } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly flesh: string;
  /** It lay in this, it was on this, or it is filled too early. */
  readonly kind: 'marinade' | 'tool' | 'stuffed' | 'rinsed' | 'washed';
}

const found = foundAgain<Values>(
  overJourneys((_house, journey) =>
    [
      ...usedAgain(journey).map((each) => ({ ...each, kind: 'marinade' as const })),
      ...soiledAgain(journey),
      ...rinsedOver(journey),
      ...stuffedAhead(journey),
      ...washedBirds(journey),
    ].map(({ level, part, line, start, end, flesh, kind }) => ({
      at: { part, line, start, end },
      ...severityAt(level),
      values: { flesh: flesh.startsWith('raw ') ? flesh.slice(4) : flesh, kind },
    })),
  ),
);

export default defineCheck<Values>({
  code: 'raw-contact',
  title: 'What raw flesh lay in, or was on, touches what is eaten',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      'FDA Food Code 2022, 3-302.11(A); USDA FSIS, poultry: marinade that touched raw meat is boiled before it is used',
  },
  explain: `**What it computes.** Which raw meat, poultry or fish waits in what is wet (a marinade, yoghurt, a sauce), and whether a step after the cooking puts that on what is eaten, stirs it into something, or serves it; which board, knife, bowl, plate, brush or bag it was on, and whether a step says that the same one is used for what is eaten as it is; whether it is washed above what stands there to be eaten raw; whether a raw bird is washed as it comes, and whether one is stuffed and kept before it goes in the oven.

**Why it matters.** The bowl that raw chicken lay in holds what the chicken held: Salmonella and Campylobacter. The flesh is cooked; what it lay in is not.

**What to do.** Set some aside before the flesh goes in (\`pour half of the marinade into a clean bowl\`), boil what is left, or throw it away. Take a clean board and plate, or wash them in hot soapy water. Fill a bird just before it is cooked.

It is a warning where the words only point (\`what is left in the bowl\`). **Silent** where a share was kept apart before, where it is boiled afterwards, for what is brushed on while the food cooks, and for what is mixed into mince, which is fried with it; for a board of which nobody says that it is the same, or that is washed; and for what is cooked afterwards.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ flesh, kind }) => ({
    message: `${kind === 'washed' ? `Washing the raw ${flesh} splashes what is on it over sink and worktop: pat it dry instead, the heat does the rest.` : kind === 'marinade' ? `The raw ${flesh} lay in this: boil it before it is eaten, or set some aside before the raw goes in.` : kind === 'rinsed' ? `Water off the raw ${flesh} splashes on what stands below and is eaten as it is: wash no raw flesh, or take that away first.` : kind === 'tool' ? `This touched the raw ${flesh}, and then food that is eaten as it is: take a clean one, or wash it in hot soapy water first.` : `Filled ahead, the ${flesh} keeps what is in its middle warm and wet for hours: keep the stuffing cold apart, and fill it just before it is cooked.`} ${CAUTION}`,
    source:
      kind === 'stuffed'
        ? 'USDA FSIS, Stuffing and Food Safety (for consumers; from memory)'
        : kind === 'washed'
          ? 'USDA FSIS, Washing Raw Poultry: Our Science, Your Choice (2019; from memory)'
          : 'FDA Food Code 2022, 3-302.11(A)',
  }),
  examples: {
    good: [
      'recipe Chicken skewers\npart marinade\n  100 g     soy sauce\n  30 g      honey\n  do Whisk the soy sauce and honey.\npart skewers\n  500 g     chicken breast\n  do Turn the chicken in half of the marinade and chill at 4 C for 4 h.\n  do Grill until it reads 75 C in the middle.\n  do Serve with the rest of the marinade.\n',
      'recipe Patties in rolls\n  500 g     minced pork\n  4         bread rolls\n  do Knead the pork with 1 roll and keep cold.\n  do Fry until it reads 72 C in the middle.\n  do Serve in the rolls.\n',
      'recipe Chicken skewers\n  500 g     chicken breast\n  100 g     soy sauce\n  30 g      honey\n  do Mix the chicken with the soy sauce and honey and chill at 4 C for 4 h.\n  do Lift out the chicken and grill until it reads 75 C in the middle.\n  do Boil what is left for 5 min and serve as a sauce.\n',
      'recipe Brined chicken\n  1.8 kg    chicken\n  120 g     fine salt\n  2 l       water\n  do Stir the salt into the water, put in the chicken and chill at 4 C for 8 h.\n  do Rinse the chicken, dry it and roast at 190 C for 1 h 20 min, until the thigh reads 75 C.\n',
    ],
    bad: [
      'recipe Chicken skewers\npart marinade\n  100 g     soy sauce\n  30 g      honey\n  do Whisk the soy sauce and honey.\npart skewers\n  500 g     chicken breast\n  do Turn the chicken in the marinade and chill at 4 C for 4 h.\n  do Grill until it reads 75 C in the middle.\n  do Spoon over the marinade.\n# "Spoon over the marinade" raw-contact: chicken breast lay in this\n',
      'recipe Chicken skewers\n  500 g     chicken thigh\n  200 g     plain yogurt\n  do Stir the chicken with the yogurt and chill at 4 C overnight.\n  do Lift out the chicken and grill until it reads 75 C in the middle.\n  do Do not waste the yogurt: ladle it over.\n# "ladle it over" raw-contact warning: chicken thigh lay in this\n',
      'recipe Chicken tikka\n  500 g     chicken thigh\n  200 g     plain yogurt\n  20 g      sunflower oil\n  do Stir the chicken with the yogurt and oil and chill at 4 C overnight.\n  do Lift out the chicken and grill until it reads 75 C in the middle.\n  do Scrape what is left into a bowl and serve with the chicken.\n# "Scrape what is left into a bowl" raw-contact warning: chicken thigh lay in this\n',
      'recipe Turkey and cucumber\n  500 g     turkey breast\n  200 g     cucumber\n  do Dice the turkey. With the same knife and board, slice the cucumber.\n# "slice" raw-contact: clean one\n  do Fry the turkey until it reads 75 C and serve with the cucumber.\n',
      'recipe Roast chicken\n  1.8 kg    chicken\n  20 g      fine salt\n  do Rinse the chicken under the cold tap, dry it and rub with the salt.\n# "Rinse" raw-contact warning: Washing\n  do Roast at 190 C for 1 h 20 min, until the thigh reads 75 C.\n',
      'recipe Chicken for Sunday\n  1.8 kg    chicken\n  300 g     cooked rice\n  100 g     onion\n  do Mix the rice and onion and stuff the chicken. Keep in the fridge overnight.\n# "Keep" raw-contact: Filled ahead\n  do Roast at 180 C for 2 h, until the middle of the stuffing reads 75 C.\n',
    ],
  },
});
