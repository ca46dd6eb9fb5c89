import { type Burning, burns } from '../by-state/burns.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { severityAt } from '../by-state/verdict.ts';
import { defineCheck } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly kind: Burning;
}

interface Words {
  readonly message: string;
  readonly source: string;
}

const WORDS: Readonly<Record<Burning, Words>> = {
  blender: {
    message:
      'Hot liquid in a closed blender throws the lid off: let it cool for 10 min, fill the jug no more than a third, and leave the vent open under a cloth; or use a stick blender.',
    source: 'US Consumer Product Safety Commission and makers of blenders, on hot liquids (from memory)',
  },
  'frozen in fat': {
    message:
      'Frozen, it makes the hot fat boil over and catch fire: thaw it all through, 24 h in the fridge for every 2 kg, and dry it inside and out.',
    source: 'USDA FSIS and US Consumer Product Safety Commission, on frying turkeys (2021 to 2023)',
  },
  'wet in fat': {
    message:
      'Wet, it makes the hot fat boil over and catch fire: drain it and dry it inside and out before it goes in, with the flame off.',
    source: 'USDA FSIS and US Consumer Product Safety Commission, on frying turkeys (2021 to 2023)',
  },
  'brim of fat': {
    message: 'Hot fat foams as food goes in, and what runs over burns: fill the pan by a third, by half at the most.',
    source: 'UK fire services and USDA FSIS, deep fat frying (from memory)',
  },
  'smoking fat': {
    message: 'Fat that smokes is about to catch fire: fry at 160 to 190 °C, and take it off the heat once it smokes.',
    source: 'UK fire services and USDA FSIS, deep fat frying (from memory)',
  },
  egg: {
    message:
      'An egg in its shell goes off in a microwave oven, or when it is bitten into: boil it in a pan, or break it and prick the yolk.',
    source: 'USDA FSIS, microwave ovens and food safety; FDA (for consumers; from memory)',
  },
  'cold swallowed': {
    message: 'Dry ice and liquid nitrogen burn the mouth and the stomach through: wait until the last of it has gone.',
    source: 'FDA, advice on liquid nitrogen and dry ice at the point of sale (2018; from memory)',
  },
  'cold shut': {
    message: 'Dry ice and liquid nitrogen swell several hundred times and burst what is closed: leave it open.',
    source: 'US OSHA and NIOSH on dry ice (from memory)',
  },
  'spirit poured': {
    message:
      'Flames climb along a spirit into the bottle: take the pan off the heat, pour it in from a cup, and only then light it.',
    source: 'UK Health and Safety Executive, catering: flambé (from memory)',
  },
  'spirit boiled': {
    message:
      'What rises from boiling spirit burns at any flame: thin it first, or warm it in hot water, away from gas.',
    source: 'UK Health and Safety Executive, flammable vapours in kitchens (from memory)',
  },
  pressure: {
    message:
      'Filled so far, what foams shuts the valve of a pressure cooker: two thirds at most, a half for pulses, grains and whatever swells.',
    source: 'makers of pressure cookers and US extension services (from memory)',
  },
  sealed: {
    message: 'What is closed bursts when it is heated: open the tin or jar, or empty it into a pan, first.',
    source: 'USDA FSIS and makers of tins (from memory)',
  },
  lye: {
    message:
      'Water that is poured on lye boils up and spits it: put cold water in a bowl of glass or steel, never aluminium, and sprinkle the lye into it, in goggles and gloves.',
    source: 'US OSHA and NIOSH on sodium hydroxide (from memory)',
  },
};

const found = foundAgain<Values>(
  overJourneys((_house, journey) =>
    burns(journey).map(({ kind, level, part, line, start, end }) => ({
      at: { part, line, start, end },
      ...severityAt(level),
      values: { kind },
    })),
  ),
);

export default defineCheck<Values>({
  code: 'burn-or-burst',
  title: 'Something boils over, bursts or burns whoever cooks or eats it',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'from memory',
    title:
      'USDA FSIS on frying turkeys and on microwave ovens, FDA on dry ice and liquid nitrogen, UK HSE on flambé, makers of pressure cookers',
  },
  explain: `**What it computes.** Whether a step shuts what boils in a blender, lowers a frozen or wet joint into deep fat, heats a pan full of fat, fat until it smokes, or an egg in its shell in a microwave oven, serves dry ice or shuts it in, pours a spirit over a flame or boils it, fills a pressure cooker to the brim, heats a closed tin, or pours water on lye.

**Why it matters.** Steam, hot fat and flame hurt more cooks than germs do.

**What to do.** What the message says of each.

It is a warning where only a lid goes on something hot, or less is said. **Silent** for stick blenders, small batches with the vent open, what was thawed and dried, small pieces, dry ice around what is kept cold, a measured spirit off the heat, and canning.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ kind }) => {
    const { message, source } = WORDS[kind];
    return { message: `${message} ${CAUTION}`, source };
  },
  examples: {
    good: [
      'recipe Lye bath\n  40 g      food-grade lye\n  1 l       water\n  do Pour the water into a steel bowl and sprinkle in the lye, stirring until clear.\n',
      'recipe Chips\n  1 kg      potatoes\n  2 l       sunflower oil\n  do Heat the oil in a deep pan, filled no more than a third of the way to the brim, to 180 C.\n  do Fry the potatoes for 6 min until golden.\n',
      'recipe Carrot soup\n  1 kg      carrots\n  1.5 l     water\n  do Boil the carrots in the water for 25 min and cool for 15 min.\n  do Blend in small batches, with the vent of the lid open under a cloth.\n',
      'recipe Fried turkey\n  5 kg      frozen turkey\n  10 l      groundnut oil\n  do Thaw the turkey in the fridge for 3 days and dry it inside and out.\n  do Heat the oil to 175 C, lower in the turkey and fry for 45 min, until it reads 74 C.\n',
      'recipe Bananas\n  4         bananas\n  60 g      butter\n  50 ml     rum\n  do Fry the bananas in the butter for 4 min until golden.\n  do Take the pan off the heat, pour in the rum and light it.\n',
    ],
    bad: [
      'recipe Lye bath\n  40 g      food-grade lye\n  1 l       water\n  do Put the lye in a steel bowl, pour on the water and stir until clear.\n# "pour on" burn-or-burst: sprinkle the lye into it\n',
      'recipe Chips\n  1 kg      potatoes\n  2 l       sunflower oil\n  do Fill a deep pan to the top with the oil, and heat it to 180 C.\n# "Fill" burn-or-burst: by half at the most\n  do Fry the potatoes for 6 min until golden.\n',
      'recipe Doughnuts\n  12        doughnuts\n  2 kg      lard\n  do Melt the lard in a brimful pot, and heat to 175 C.\n# "Melt" burn-or-burst: by half at the most\n  do Fry the doughnuts for 3 min.\n',
      'recipe Carrot soup\n  1 kg      carrots\n  1.5 l     water\n  do Boil the carrots in the water for 25 min.\n  do Fill the blender to the brim with the boiling soup, clamp the lid down and whizz.\n# "whizz" burn-or-burst: throws the lid off\n',
      'recipe Fried turkey\n  5 kg      frozen turkey\n  10 l      groundnut oil\n  do Heat the oil to 175 C, lower in the turkey and fry for 45 min, until it reads 74 C.\n# "fry" burn-or-burst: Frozen\n',
      'recipe Eggs\n  3 large   eggs\n  do Put the eggs in their shells in a mug and microwave for 4 min until hard.\n# "microwave" burn-or-burst: in its shell\n',
      'recipe Punch\n  1 l       apple juice\n  100 g     dry ice\n  do Pour the juice into glasses, drop a piece of dry ice into each and drink.\n# "drop" burn-or-burst: burn the mouth\n',
      'recipe Bananas\n  4         bananas\n  60 g      butter\n  50 ml     rum\n  do Fry the bananas in the butter for 4 min until golden.\n  do Pour the rum from the bottle over the flame.\n# "Pour" burn-or-burst: into the bottle\n',
    ],
  },
});
