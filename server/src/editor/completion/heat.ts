/** A temperature where a sentence asks for one: what the rules of food safety ask of its foods first, then what is usual for the kind. */
import { groupOf, type Limit, limitOf } from '../../checks/safety/limits.ts';
import { figureBehind } from '../../prose/expected.ts';
import { degreesIn } from '../../recipe/journey/degrees.ts';
import { heatsOf } from '../../recipe/journey/figures.ts';
import { type UsualHeat, usualHeatsOf } from '../../recipe/measures/usual-heats.ts';
import type { Recipe } from '../../recipe/model.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Completion, Typing } from './item.ts';

/** Behind `at`, `reads` and their like, before a figure is typed; none where no kind or food says one. */
export function heatsHere({ snapshot, part, before, character }: Typing): readonly Completion[] {
  if (part === undefined || !/\s$/.test(before) || figureBehind(before) !== 'temperature') return [];
  const of = INSIDE.test(before) ? 'food' : AROUND.test(before) ? 'around' : 'oven';
  const scale = scaleIn(snapshot.recipe);
  const limit = of === 'food' ? strictest(snapshot, part.index) : undefined;
  const usual = usualHeatsOf(part.head.kind?.name, of).filter(({ celsius }) => celsius >= (limit?.celsius ?? 0));
  const rows: readonly Pick<UsualHeat, 'celsius' | 'words'>[] = [
    ...(limit === undefined ? [] : [{ celsius: limit.celsius, words: `at least, ${limit.source}` }]),
    ...usual.map(({ celsius, words, source }) => ({
      celsius,
      words: `usual for ${part.head.kind?.name ?? ''}, ${words}; ${source}`,
    })),
  ];
  return rows.flatMap(({ celsius, words }): Completion[] => {
    const degrees = degreesIn(celsius, scale, of);
    if (degrees === undefined) return [];
    const text = `${degrees} ${scale}`;
    return [{ label: text, kind: 'value', detail: words, start: character, end: character, text, filter: text }];
  });
}

const INSIDE = /\b(?:reads?|reach(?:es)?|centre|center|middle|core|inside|thickest)\b[^.;]*$/i;
const AROUND = /\b(?:prove|proof|rise|rest|ferment|stand|keep|hold)\b[^.;]*$/i;

/** The highest limit among the foods listed so far; undefined where none is a risk raw. */
function strictest({ recipe, house }: Snapshot, upTo: number): Limit | undefined {
  const groups = new Set(
    recipe.heads
      .slice(0, upTo + 1)
      .flatMap(({ ingredients }) =>
        ingredients.flatMap(({ food }) => (food === undefined ? [] : (groupOf(food) ?? []))),
      ),
  );
  const limits = [...groups].map((group) => limitOf(group, house.foodSafety));
  return limits.reduce<Limit | undefined>((a, b) => (a === undefined || b.celsius > a.celsius ? b : a), undefined);
}

/** The scale that the recipe writes in. */
function scaleIn({ parts, oven }: Recipe): 'C' | 'F' {
  const written = oven?.node ?? parts.flatMap(({ steps }) => steps.flatMap((step) => heatsOf(step)))[0]?.written[0];
  return written?.unit === 'F' ? 'F' : 'C';
}
