/**
 * Knows how long the parts of a recipe beat, boil, freeze and soak, by what is done alone, whatever it makes.
 * Refuses to judge.
 */
import { spansOf } from '../../heat/spans.ts';
import type { Craft, Event } from '../../prose/event.ts';
import { type BoundEvent, boundEvents } from '../../recipe/journey/bind.ts';
import { type Family, isIn } from '../../recipe/list/families.ts';
import type { Ingredient, IngredientRef, Part } from '../../recipe/model.ts';
import { overParts } from '../over-parts.ts';
import { isStoveHeat, spentIn } from './heated-on-stove.ts';
import { kindOf } from './taken-for.ts';
import type { Heated, WrittenTime } from './written-heat.ts';

const OPEN = Number.POSITIVE_INFINITY;
const WORKED: ReadonlySet<Craft | undefined> = new Set<Craft>(['beat', 'whip', 'knead', 'cream']);

export const timedByPart = overParts((part): readonly Heated[] | undefined => {
  const timed = new Map<string, WrittenTime[]>();
  /** Of what is short, all its minutes. */
  const totals = new Map<string, number>();
  const kind = kindOf(part);
  const churns = part.steps.some((step) => boundEvents(step).some(({ event: { craft } }) => craft === 'churn'));
  for (const step of part.steps)
    for (const by of boundEvents(step)) {
      const { event, names } = by;
      if (event.said !== 'yes') continue;
      if (event.act === 'heat' && kind !== undefined) {
        timed.delete(kind);
        totals.delete(kind);
      }
      const isOfPulse =
        (event.act === 'steep' || event.act === 'stay') &&
        names.some(({ mention }) =>
          mention.ingredients.some(
            ({ part: of, ingredient }) => of === part.index && isOf(part.head.ingredients[ingredient], 'pulse'),
          ),
        );
      // What sets in the cold, by the kind of its part.
      const sets = isToSet(event) && kind !== undefined && spansOf(kind, 'cold').length > 0 ? kind : undefined;
      const isLast = event.act === 'freeze' && event.craft !== 'churn' && churns;
      const of = isOfPulse ? 'any pulse' : isLast ? 'any ice' : (sets ?? actOf(by, part));
      if (of === undefined) continue;
      const spent = spentIn(event);
      timed.set(of, [
        ...(timed.get(of) ?? []),
        ...spent.map((time) => ({ ...time, part: part.index, line: step.line, at: [] })),
      ]);
      const minutes = spent.reduce((sum, { high }) => sum + high, 0);
      totals.set(of, (totals.get(of) ?? 0) + (minutes > 0 ? minutes : OPEN));
    }
  const found = [...timed].flatMap(([of, times]): readonly Heated[] =>
    times.length === 0
      ? []
      : [
          {
            way: of === kind ? 'cold' : 'none',
            of,
            spans: spansOf(of, of === kind ? 'cold' : 'none'),
            heats: [],
            times,
            totalMin: totals.get(of) ?? OPEN,
          },
        ],
  );
  return found.length === 0 ? undefined : found;
});

const isToSet = ({ act, craft, where }: Event): boolean =>
  (act === 'cool' || act === 'freeze' || (act === 'stay' && craft !== 'keep')) &&
  where.some(({ is, not }) => (is === 'cold' || is === 'frozen') && !not);

/** `any beating`, `any pot`; undefined where a time says nothing by itself. */
function actOf({ event, names }: BoundEvent, { index, head: { ingredients } }: Part): string | undefined {
  const { act, craft, cooks, lasts, medium } = event;
  if (craft === 'churn') return 'any churning';
  if (act === 'combine' && WORKED.has(craft)) return craft === 'knead' ? 'any kneading' : 'any beating';
  // What infuses waits for days, as does what lies in a bath at a figure.
  const waits = event.temperatures.length > 0 || (cooks === 'barely' && lasts === 'waits');
  if (!isStoveHeat(event) || waits) return undefined;
  // `Sweat`, `soften the onions`
  const isSoft =
    lasts === 'works' &&
    (medium?.is === 'fat' ||
      (cooks === 'barely' &&
        names.some(({ mention }) =>
          mention.ingredients.some(({ ingredient }) => isOf(ingredients[ingredient], 'juicy')),
        )));
  if (craft === 'fry' || isSoft) {
    const fried = names.flatMap(({ role, mention }) => (role === 'what' ? mention.ingredients : []));
    const isFlesh = ({ part, ingredient }: IngredientRef) => part === index && isOf(ingredients[ingredient], 'flesh');
    return fried.length > 0 && fried.every(isFlesh) ? 'any fried flesh' : 'any frying';
  }
  if (ingredients.some((each) => isOf(each, 'flesh'))) return 'any meat pot';
  return ingredients.some((each) => isOf(each, 'animal') && isOf(each, 'low acid') && !isOf(each, 'liquid'))
    ? undefined
    : 'any pot';
}

const isOf = (ingredient: Ingredient | undefined, family: Family): boolean =>
  ingredient !== undefined && isIn(ingredient, family);
