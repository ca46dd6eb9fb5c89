import { trimmed } from '../../measure/number-text.ts';
import { degreesIn } from '../../recipe/journey/degrees.ts';
import { notedStays } from '../../recipe/journey/noted.ts';
import { type Lagging, lagging } from '../by-state/lagging.ts';
import { overJourneys } from '../by-state/over-journeys.ts';
import { tooDeep } from '../by-state/too-deep.ts';
import { isQuestion, type TooWarm, tooWarm, tooWarmByNote } from '../by-state/too-warm.ts';
import { severityAt } from '../by-state/verdict.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain, oncePerPlace } from '../found-again.ts';
import { CAUTION, type HoldingLimits, holdingLimits, timeText } from './limits.ts';

interface Values {
  readonly kind: Exclude<TooWarm['kind'], 'figure'> | Lagging['kind'] | 'in one pot';
  /** At the least, and at the most; not known of what is only said to be put by. */
  readonly low?: number;
  readonly high?: number;
  readonly limitMin: number;
  /** Of one large pot: its weight, and how long the same takes in shallow pans. */
  readonly kg?: number;
  readonly panMin?: number;
  readonly panCm?: number;
  readonly limits: HoldingLimits;
  readonly source: string;
}

/** Where it stands, and the sum behind it. */
function placed(
  { kind, level, start, end, minutes, limitMin }: TooWarm,
  at: { readonly part?: number; readonly line: number },
  limits: HoldingLimits,
): Found<Values> {
  const isCooling = kind === 'in the room' || kind === 'to the middle' || kind === 'to the end';
  const { section } = isCooling ? limits.cooling : limits.leftOut;
  return {
    at: { ...at, start, end },
    ...severityAt(level),
    values: {
      kind: kind as Values['kind'],
      ...(minutes && { low: minutes.low, high: minutes.high }),
      limitMin,
      limits,
      source: `${limits.title}, ${section}`,
    },
  };
}

const foundInNotes = foundAgain<Values>((recipe, house) => {
  const limits = holdingLimits(house.foodSafety);
  const found = notedStays(recipe).flatMap((noted) => {
    const each = tooWarmByNote(house, noted);
    return each === undefined || each.kind === 'figure' ? [] : placed(each, { line: noted.line }, limits);
  });
  return oncePerPlace(found);
});

const found = foundAgain<Values>(
  overJourneys((house, journey) => {
    const limits = holdingLimits(house.foodSafety);
    const slow = lagging(journey).map(({ kind, level, part, line, start, end, source }) => ({
      at: { part, line, start, end },
      ...severityAt(level),
      values: { kind, limitMin: limits.leftOut.min, limits, source },
    }));
    const warm = tooWarm(house, journey).flatMap((each) => {
      const { part, line } = each.stay;
      return each.kind === 'figure' || isQuestion(each) ? [] : placed(each, { part, line }, limits);
    });
    const said = new Set(warm.map(({ at: { part, line } }) => `${part}.${line}`));
    const deep = tooDeep(house, journey).flatMap(({ level, stay: { part, line }, start, end, minutes, ...each }) =>
      said.has(`${part}.${line}`)
        ? []
        : {
            at: { part, line, start, end },
            severity: level,
            values: {
              kind: 'in one pot' as const,
              low: minutes.low,
              high: minutes.high,
              limitMin: each.limitMin,
              kg: each.kg,
              panMin: each.panMin,
              panCm: each.panCm,
              limits,
              source: `${limits.title}, ${limits.cooling.section}`,
            },
          },
    );
    return slow.length + deep.length === 0 ? warm : [...warm, ...slow, ...deep];
  }),
);

/** As `overnight` is read. */
const NIGHT = { low: 480, high: 960 };

/** `6 h`, `8 h to 16 h`, `Overnight` */
function spentText({ low = 0, high = 0 }: Values): string {
  if (low === NIGHT.low && high === NIGHT.high) return 'Overnight';
  if (low === high) return timeText(low);
  return Number.isFinite(high) && high > 0
    ? `${low > 0 ? `${timeText(low)} to ` : ''}${timeText(high)}`
    : `${timeText(low)} or more`;
}

/** `3 h`, `1.5 h` */
const hours = (minutes: number): string => `${trimmed(Math.round(minutes / 30) / 2, 1)} h`;

const inF = (celsius: number): string => degreesIn(celsius, 'F', 'food') ?? '';

export default defineCheck<Values>({
  code: 'cooling-too-slow',
  title: 'Perishable food lies warm for too long',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title: 'FDA Food Code 2022, 3-501.13, 3-501.14 and 3-501.19; USDA FSIS, danger zone (for consumers)',
  },
  explain: `**What it computes.** Where everything lies after each step, how warm it is there and for how long, from what the steps say; for whatever is perishable by then (meat, fish, egg, dairy, stock, or cooked vegetables, pulses, rice and pasta, and neither sour, sweet, salt nor dry enough to keep). Minutes between the cold and the hot limit add up until it is heated through. What cools from hot may take 2 h to 21 °C, and 6 h in all to 5 °C; what is left out has 4 h (2 h by the home rule), and raw meat and fish that thaw no more. What is put by in a room or a larder with no word of for how long passes what time alone allows, and so does what stands there until an hour that only the writer knows.

**Why it matters.** Spores of Clostridium perfringens and Bacillus cereus survive the boil, and between 50 and 20 °C they double every quarter of an hour. A deep pot left on the stove overnight is the classic outbreak.

**What to do.** Spread it in shallow trays, set it over ice, divide it, stir; write \`cool to 21 C within 2 h and to 5 C within 6 h in all\`. Where the step names no place, or one that may be cold, write which.

It is a warning where the place or the time is a conclusion; where nobody knows it, \`disposition-unsaid\` asks. A pot of 4 kg or more that goes hot and whole into the cold is reckoned by its size: so long its middle stays warm there, at the quick end and at the slow one. Meat that goes frozen into a slow cooker, or is cooked in it on warm, and fish that thaws in its vacuum pack, are named too. **Silent** for breads, cakes, jam, pickles and ferments, for what cools in the fridge in small amounts, over ice or in a blast chiller, and for what is closed in jars (\`low-acid-preserve\`) or kept in oil (\`garlic-in-oil\`).`,
  find: ({ recipe, house }) => {
    const noted = foundInNotes(recipe, house);
    const all = found(recipe, house);
    return noted.length === 0 ? all : [...all, ...noted];
  },
  say: (values) => {
    const { kind, low, high = 0, limitMin, limits, source, kg = 0, panMin = 0, panCm = 0 } = values;
    const { fromC, middleC, middleMin, endC, endMin } = limits.cooling;
    const rule = `it must pass from ${fromC} to ${middleC} °C (${inF(fromC)} to ${inF(middleC)} °F) within ${timeText(middleMin)} and reach ${endC} °C (${inF(endC)} °F) within ${timeText(endMin)} in all`;
    const spent = spentText(values);
    const message = {
      'to the middle': `${spent} to ${middleC} °C is too slow: ${rule}.`,
      'to the end': `${spent} to ${endC} °C is too slow: ${rule}.`,
      'in the room': `${spent} in the room is too slow for this to cool: ${rule}. Use shallow trays, ice or a chiller.`,
      'left out': `${spent} left out is too long for this: ${timeText(limitMin)} at most, and then eaten or thrown away.`,
      'kept for days': `${spent} out of the cold is too long for this: neither its acid nor its culture keeps egg and milk for days. Keep it at ${limits.cold.celsius} °C, ${limits.cold.fahrenheit} °F, or below.`,
      'in one pot': `${trimmed(kg, 0)} kg in one pot, put hot into the cold, takes ${hours(low ?? 0)} to ${hours(high)} to ${middleC} °C in the middle (an estimate): ${rule}. Divide it: ${panCm} cm deep in open pans it takes about ${hours(panMin)}, less on ice or stirred.`,
      thaws: `Frozen flesh thaws too warm there: thaw it at ${limits.cold.celsius} °C, ${limits.cold.fahrenheit} °F, or below, or in cold running water.`,
      'from frozen': 'Frozen, it lies for hours in a slow cooker before it is hot: thaw it in the fridge first.',
      'on warm': 'On warm, a slow cooker keeps hot what is hot, and cooks nothing: cook it on low or high.',
      'in its pack': `Thawed in a pack with no air in it, fish grows what botulism comes of: take it out of the pack, and thaw it at ${limits.cold.celsius} °C, ${limits.cold.fahrenheit} °F, or below.`,
      stuffed:
        'A raw bird with a warm filling is cooked at once: fill it right before it goes into the oven, or bake the filling by itself.',
      'set down': `It stands there until a time that only the writer knows: ${timeText(limitMin)} at most out of the cold. Write how long, or where it is kept cold.`,
      'on a shelf': `This does not keep there: keep it at ${limits.cold.celsius} °C, ${limits.cold.fahrenheit} °F, or below, or freeze it. Out of the cold, ${timeText(limitMin)} at most.`,
    }[kind];
    return {
      message: `${message} ${CAUTION}`,
      ...(low !== undefined && { value: low, unit: 'min' }),
      band: [null, limitMin],
      source,
    };
  },
  examples: {
    good: [
      'recipe Tomato salad\n  1 kg      tomatoes, seeded and diced\n  100 g     onions, chopped\n  8 g       fine salt\n  do Mix the tomatoes, onions and salt and let stand for 30 min.\n',
      'recipe Bone broth as stock\n  2 kg      beef bones\n  4 l       water\n  do Simmer the bones in the water for 6 h and strain.\n  do Cool to 21 C within 2 h and to 5 C within 6 h in all.\n',
      'recipe Chicken broth as stock\n  3 kg      chicken wings\n  10 l      water\n  do Simmer the chicken wings in the water for 3 h and strain.\n  do Divide among shallow trays and put them in the fridge.\n',
      'recipe Loaf\n  500 g     bread flour\n  330 g     whole milk\n  9 g       fine salt\n  5 g       instant yeast\n  do Mix the flour, milk, salt and yeast and prove at 24 C for 2 h.\n  do Bake at 220 C for 35 min until the centre reads 95 C.\n  do Cool on a rack for 3 h.\n',
      'recipe Rice pudding\n  1 l       whole milk\n  120 g     pudding rice\n  60 g      caster sugar\n  do Simmer the rice in the milk with the sugar for 40 min.\n  do Cool for 30 min, then chill at 4 C overnight.\n',
    ],
    bad: [
      'recipe Tomato salad\n  1 kg      tomatoes, diced\n  100 g     onions, chopped\n  8 g       fine salt\n  do Mix the tomatoes, onions and salt and keep at room temperature for 3 days.\n# "for 3 days" cooling-too-slow: left out\n',
      'recipe Lemon curd\n  150 ml    lemon juice\n  200 g     caster sugar\n  100 g     butter\n  3 large   eggs\n  do Stir the juice, sugar, butter and eggs over simmering water until it reads 82 C, 12 min.\n  do Pour into sterilised jars, seal and store in the larder.\n# "larder" cooling-too-slow warning: does not keep there\n',
      'recipe Chicken broth as stock\n  1.5 kg    chicken wings\n  3 l       water\n  do Simmer the chicken wings in the water for 3 h and strain.\n  do Leave to cool on the stove overnight.\n#                               ^^^^^^^^^ cooling-too-slow: shallow trays\n',
      'recipe Rice pudding\n  1 l       whole milk\n  120 g     pudding rice\n  60 g      caster sugar\n  do Simmer the rice in the milk with the sugar for 40 min.\n  do Cool to 21 C within 4 h and chill at 4 C.\n# "within 4 h" cooling-too-slow: too slow\n',
      'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Stand at room temperature for 5 h.\n# "for 5 h" cooling-too-slow: left out\n',
      'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Stand for 3 h on the worktop.\n  do Set out on the sideboard for 2 h.\n# "for 2 h" cooling-too-slow: 5 h left out\n',
      'recipe Beef stew as braise\n  1 kg      stewing beef\n  500 g     beef stock\n  do Simmer the beef in the stock for 2 h.\n  do Set it on the window sill and take it up when the choir breaks up.\n# "window sill" cooling-too-slow warning: only the writer knows\n  do Ladle into bowls.\n',
      'recipe Pot roast\n  1.5 kg    frozen beef brisket\n  500 g     beef stock\n  do Put the frozen brisket in the slow cooker with the stock and cook on low for 10 h until tender.\n# "Put" cooling-too-slow: thaw it\n',
      'recipe Chicken broth as stock\n  3 kg      chicken wings\n  10 l      water\n  do Simmer the chicken wings in the water for 3 h and strain.\n  do Put the hot pot in the fridge.\n# "fridge" cooling-too-slow warning: in one pot\n',
      'recipe Fried rice\n  500 g     cooked rice, left out overnight\n# "overnight" cooling-too-slow: left out\n  2 tbsp    sunflower oil\n  do Fry the rice in the oil until piping hot.\n',
    ],
  },
});
