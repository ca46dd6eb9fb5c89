import type { Event, Where } from '../../prose/event.ts';
import { anyDoes, deed, eventsOf } from '../../recipe/journey/deeds.ts';
import { gramsOf } from '../../recipe/measures/brought.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import { kindNamed } from '../../recipe/measures/kinds.ts';
import type { Part, Step } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { type BandValues, ingredientPlace, outsideBand, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';
import { mainSalt, saltLine } from './salt.ts';

export default defineCheck<BandValues>({
  code: 'weak-brine',
  title: 'A ferment, a cure or a brine has too little salt to keep what spoils it back',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  source: {
    kind: 'publication',
    title:
      'Michigan State University Extension, sauerkraut: 3 tbsp of salt to 5 lb of cabbage, 2.4 %; by the band of each kind',
  },
  explain: `**What it computes.** For a vegetable ferment: salt as a share of the vegetables and the water together, which is what it comes to when the brine has drawn even. For a cure: salt on the weight of the fish or meat. For a brine: salt per water.

**Why it matters.** Until the acid has formed, salt is all that keeps spoiling and dangerous organisms down. A brine that is strong in the jug is weak once the vegetables have given their water to it.

**What to do.** Weigh the salt against vegetables and water together: 2 to 2.5 % for cabbage, 2 to 5 % for others. Follow a tested recipe and local advice: this is arithmetic, not a licence.

A part without \`as\` that is left to ferment, for a day or more or for as long as it takes, and is mostly vegetables, is held against the least that is plausible.

**Silent** where the salt, the vegetables or the water are of no known weight, and for salt added to taste.`,
  *find(part) {
    const { kind } = part.head;
    if (kind === undefined || !kind.measures.some(({ measure }) => SALTS.has(measure))) {
      // A relish or a slaw that is left to turn sour is a ferment.
      if (isPlainFerment(part))
        for (const found of outsideBand(part, 'brine salt', 'low', () => ingredientPlace(mainSalt(part)), FERMENT))
          if (found.severity === 'warning') yield found;
      return;
    }
    for (const name of SALTS) yield* outsideBand(part, name, 'low', () => ingredientPlace(mainSalt(part)));
  },
  say: (values) => sayBand(values),
  fix: (values, scene) => mendAmount(values, scene, saltLine),
  examples: {
    good: [
      'recipe Kraut\npart cabbage as lacto-ferment\n  1 kg      white cabbage, shredded\n  23 g      fine salt\n  do Rub the salt into the cabbage and pack it into a jar.\n  do Ferment at 18 C for 14 d.\n',
      'recipe Cured salmon\npart salmon as cure\n  1 kg      salmon\n  60 g      fine salt\n  40 g      caster sugar\n  do Freeze the salmon at -20 C for 7 d and thaw it at 4 C.\n  do Rub the salmon with the salt and the sugar, wrap, and cure at 4 C for 48 h.\n',
    ],
    bad: [
      {
        text: 'recipe Kraut\npart cabbage as lacto-ferment\n  1 kg      white cabbage\n  9 g       fine salt\n# "fine salt" weak-brine *: 1.8 to 5 %\n  do Rub the salt into the cabbage and pack it into a jar.\n  do Ferment at 18 C for 14 d.\n',
        after: {
          'Write 19 g fine salt, 10 g more':
            'recipe Kraut\npart cabbage as lacto-ferment\n  1 kg      white cabbage\n  19 g      fine salt\n  do Rub the salt into the cabbage and pack it into a jar.\n  do Ferment at 18 C for 14 d.\n',
        },
      },
      'recipe Pickled carrots\npart jar as lacto-ferment\n  600 g     carrots, sliced\n  600 g     water\n  18 g      fine salt\n# "fine salt" weak-brine *: salt of the vegetables and the water is 1.5 %\n  do Dissolve the salt in the water and pour it over the carrots.\n  do Ferment at 18 C for 10 d.\n',
    ],
  },
});

/** Of a kind with one of these the salt is told by its own band. */
const SALTS: ReadonlySet<MeasureName> = new Set(['brine salt', 'mash salt', 'cure salt', 'salt per water']);

const FERMENT = kindNamed('lacto-ferment');
const DAY_MIN = 1440;
const FERMENTS_FOR_DAYS = deed(
  ({ craft, times }) => craft === 'ferment' && times.some(({ minutes }) => minutes.high >= DAY_MIN),
);
/** `Leave to sour in its own good time` */
const FERMENTS = deed(
  ({ craft, times, said, where }) =>
    craft === 'ferment' &&
    said === 'yes' &&
    times.every(({ kind }) => kind === 'every') &&
    where.every(({ is }) => is !== 'cold' && is !== 'frozen'),
);
/** Left for two days or more out of the cold, raw vegetables with salt turn sour or spoil. */
const LEFT_MIN = 2880;
const leaves = ({ times, where, as }: Event): boolean =>
  as !== 'before' &&
  where.every((place) => !isCold(place)) &&
  times.some(({ kind, minutes }) => (kind === 'spent' || kind === 'point') && minutes.low >= LEFT_MIN);
const isCold = ({ is, not }: Where): boolean => !not && (is === 'cold' || is === 'frozen');
const LEFT_FOR_DAYS = deed(leaves);
const KEPT_COLD = deed(({ where }) => where.some(isCold));

/** `Keep in the fridge, and pour it away after three days`: what is cold by then is left nowhere. */
function isLeftOut(steps: readonly Step[]): boolean {
  if (!anyDoes(steps, LEFT_FOR_DAYS) || !anyDoes(steps, KEPT_COLD)) return anyDoes(steps, LEFT_FOR_DAYS);
  const first = steps.flatMap(eventsOf).find((event) => leaves(event) || event.where.some(isCold));
  return first !== undefined && leaves(first);
}
const HEATS = deed(({ act, cooks }) => act === 'heat' && cooks !== 'barely');
/** What is little else than vegetables is a ferment (judgement). */
const MOST_VEGETABLES = 0.6;

/** Of the whole with its water (judgement): less is a drink or a dough. */
const LEAST_VEGETABLES = 0.3;

/** What no `as` says, but its steps and its list do. */
export function isPlainFerment(part: Part): boolean {
  const { steps, head } = part;
  const isSaid = anyDoes(steps, FERMENTS_FOR_DAYS);
  const isLeft = isSaid || ((isLeftOut(steps) || anyDoes(steps, FERMENTS)) && !anyDoes(steps, HEATS));
  if (!isLeft || mainSalt(part) === undefined) return false;
  // What is sour already needs no salt.
  if (!isSaid && head.ingredients.some(({ food }) => food?.roles.includes('acid') === true)) return false;
  let [whole, vegetables] = [0, 0];
  for (const ingredient of head.ingredients) {
    const grams = gramsOf(ingredient);
    whole += grams;
    if (ingredient.food?.class === 'vegetable') vegetables += grams;
  }
  return vegetables > 0 && vegetables >= whole * (isSaid ? LEAST_VEGETABLES : MOST_VEGETABLES);
}
