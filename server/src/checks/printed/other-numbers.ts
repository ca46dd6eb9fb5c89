/**
 * Knows where a recipe counts what it makes twice, and not alike: what its steps shape or fill against the yield, the notes and the pan.
 * Refuses to know what one weighs.
 */
import type { Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import { countsIn, gridsIn, isFilled, saysNumber, squaresIn } from '../../prose/counted-pieces.ts';
import { eachSaidIn, makesIn } from '../../prose/printed-pieces.ts';
import { deed, does, speaksOf } from '../../recipe/journey/deeds.ts';
import { panSize } from '../../recipe/measures/pan-size.ts';
import type { Part, Recipe, Step } from '../../recipe/model.ts';
import { singular, wordsOf } from '../../recipe/words.ts';
import type { Place } from '../check.ts';
import { overParts } from '../over-parts.ts';
import { notesOf } from './notes.ts';
import { isSameNoun, type Made, yieldOf } from './pieces-made.ts';
import { isOneEach } from './portion-rows.ts';

export interface OtherNumber {
  readonly at: Place;
  readonly count: number;
  readonly noun: string;
  /** The other number, and who says it. */
  readonly there: Range;
  readonly by: string;
}

/** `About 20` may be 24, and a jar or two is washed to spare. */
const FAR = 1.5;
/** Further off another thing is counted. */
const OTHER = 6;
/** Of fewer the number is of something else: ropes of a plait, layers. */
const LEAST = 4;
/** Of the whole, what is the main part. */
const MAIN = 0.6;

interface Source extends Made {
  readonly by: string;
}

export function otherNumbers(recipe: Recipe): readonly OtherNumber[] {
  const own = yieldOf(recipe);
  const sources = sourcesOf(recipe, own);
  const found: OtherNumber[] = [];
  const tell = (at: Place, said: Made, there: Source | undefined): void => {
    const far = there === undefined ? 1 : Math.max(said.low / there.high, there.low / said.high);
    if (there !== undefined && far > FAR && far <= OTHER)
      found.push({ at, count: said.low, noun: said.noun, there, by: there.by });
  };
  const pan = sources.find(({ by }) => by === PAN);
  const made = recipe.yield;
  if (pan !== undefined && own !== undefined && made?.node.amount !== undefined && isOneEach(pan.noun)) {
    const { start, end } = made.node.amount;
    const noun = own.noun || 'pieces';
    if (own.serves || isFilled(own.noun)) tell({ line: made.at, start, end }, { ...own, noun }, pan);
  }
  for (const { part, value } of counting(recipe))
    for (const { step, counts } of value)
      for (const { sort, start, end, until, ...said } of counts) {
        const at = { part: part.index, line: step.line, start, end };
        if (sort === 'vessel') tell(at, said, vesselsOf(said, sources));
        else if (
          own !== undefined &&
          !own.serves &&
          own.noun !== '' &&
          own.low >= LEAST &&
          // Cheese in slices is no burger.
          !step.mentions.some((each) => each.ingredients.length > 0 && each.start > start && each.start < until) &&
          isAlone(recipe, part, step, said, own)
        )
          tell(at, { ...said, noun: said.noun || own.noun }, { ...own, by: 'the yield' });
      }
  return found;
}

/** Rows of pieces that are another number than the step or the yield says. */
export function otherGrids(recipe: Recipe): readonly OtherNumber[] {
  const own = yieldOf(recipe);
  const noun = own?.noun || 'pieces';
  const pieces = own === undefined || own.serves || own.noun === '' || own.low < LEAST ? undefined : own;
  return gridding(recipe).flatMap(({ part, value }) =>
    value.flatMap(({ step, start, end, total, ...said }): readonly OtherNumber[] => {
      const other = (count: number, there: Range, by: string): OtherNumber => {
        return { at: { part: part.index, line: step.line, start, end }, count, noun, there, by };
      };
      if (total !== undefined && said.count !== undefined)
        return total === said.count ? [] : [other(said.count, { low: total, high: total }, 'the step')];
      const count = said.count === undefined ? squaresOf(recipe, said.cm) : said.count * (recipe.pan?.node.count ?? 1);
      if (count === undefined || pieces === undefined || isOfSeveral(recipe, count, pieces)) return [];
      const far = Math.max(count / pieces.high, pieces.low / count);
      return far > FAR && far <= OTHER && isCutAtLast(recipe, step) ? [other(count, pieces, 'the yield')] : [];
    }),
  );
}

/** How many of such a side the pans give, whole ones at its edges. */
function squaresOf({ pan, world }: Recipe, cm: number): number | undefined {
  const area = pan === undefined ? undefined : panSize(pan.node, world.measures)?.bottomCm2;
  return area === undefined || cm <= 0 ? undefined : Math.round(area / cm ** 2);
}

interface Cut extends Span {
  readonly step: Step;
  readonly total?: number | undefined;
}

const gridding = overParts(({ steps }) => {
  const those = steps.flatMap(
    (step): readonly (Cut & ({ readonly count: number } | { readonly count?: undefined; readonly cm: number }))[] => [
      ...gridsIn(step.sentence.items).map((grid) => ({ step, ...grid })),
      ...squaresIn(step.sentence.items).map((squares) => ({ step, ...squares })),
    ],
  );
  return those.length === 0 ? undefined : those;
});

/** The steps that count something. */
const counting = overParts(({ steps }) => {
  const those = steps.flatMap((step) => {
    const counts = countsIn(step.sentence.items);
    return counts.length === 0 ? [] : [{ step, counts }];
  });
  return those.length === 0 ? undefined : those;
});

const PAN = 'the pan';

function sourcesOf(recipe: Recipe, own: Made | undefined): readonly Source[] {
  const { pan } = recipe.parts.find(({ head }) => head.pan !== undefined)?.head ?? recipe;
  return [
    ...(own === undefined ? [] : [{ ...own, by: 'the yield' }]),
    ...notesOf(recipe).flatMap(({ items }) =>
      [...makesIn(items), ...eachSaidIn(items).map(({ count, noun }) => ({ ...count, noun }))].map(
        ({ low, high, noun }): Source => ({ low, high, noun, by: 'the note' }),
      ),
    ),
    ...(pan?.node.form === undefined
      ? []
      : [{ low: pan.node.count, high: pan.node.count, noun: pan.node.form, by: PAN }]),
  ];
}

/** The same vessels elsewhere; else those who get one each. */
const vesselsOf = ({ noun }: Made, sources: readonly Source[]): Source | undefined =>
  sources.find((each) => isSameNoun(each.noun, noun)) ??
  (isOneEach(noun) ? sources.find(({ serves }) => serves) : undefined);

const CUTS = deed(({ act, craft }) => act === 'divide' || craft === 'cut');
const SHAPES = deed(({ act, craft }) => act === 'divide' || act === 'shape' || craft === 'cut');

const SANDWICHES = deed(({ craft }) => craft === 'layer');

/** Whether these can only be the yield's pieces: nothing says that they are put together, cut up, or of some of it. */
function isAlone(recipe: Recipe, part: Part, step: Step, said: Made, own: Made): boolean {
  const { parts } = recipe;
  const grams = parts.reduce((sum, { head }) => sum + head.massG.high, 0);
  const { head, includes } = part;
  const isMain =
    head.massG.high > grams * MAIN ||
    wordsOf(head.name).includes(singular(own.noun)) ||
    parts.every((each) => each === part || !each.steps.some((other) => does(other, SHAPES)));
  if (parts.length > 1 && !isMain && includes.length === 0) return false;
  const steps = parts.flatMap((each) => each.steps);
  if (steps.some((each) => does(each, SHAPES) && (speaksOf(each, 'each', 'batch') || each.mentions.some(isSome))))
    return false;
  const isMore = said.low > own.high;
  const times = Math.round(isMore ? said.low / own.high : own.low / said.high);
  // Tops and bottoms, and two halves.
  if (times === 2 && steps.some((each) => speaksOf(each, 'lid', 'fraction') || does(each, SANDWICHES))) return false;
  if (steps.some(({ sentence }) => saysNumber(sentence.items, times))) return false;
  return isMore || !steps.slice(steps.indexOf(step) + 1).some((each) => does(each, CUTS));
}

/** Nothing is cut behind it, and all of it is cut. */
const isCutAtLast = ({ parts }: Recipe, step: Step): boolean => {
  const steps = parts.flatMap((part) => part.steps);
  return !step.mentions.some(isSome) && !steps.slice(steps.indexOf(step) + 1).some((each) => does(each, CUTS));
};

/** `Cut 6 by 9`, where no `pan` line says how many pans there are: the yield may be that of several. */
function isOfSeveral({ pan }: Recipe, count: number, own: Made): boolean {
  const pans = Math.round(own.low / count);
  return pan === undefined && pans > 1 && Math.abs(own.low / count - pans) < pans * NEAR;
}
const NEAR = 0.1;

const isSome = ({ portion }: Step['mentions'][number]): boolean => portion.kind !== 'plain' && portion.kind !== 'all';
