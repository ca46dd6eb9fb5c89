import { gramsText, trimmed } from '../../measure/number-text.ts';
import { exactly, type Range } from '../../measure/quantity.ts';
import { baseOf, dimensionOf } from '../../measure/unit.ts';
import { sentenceIn } from '../../notation/sentence.ts';
import type { SentenceItem, Span } from '../../notation/tree.ts';
import { ofOneIn } from '../../prose/counted-pieces.ts';
import { saysEach } from '../../prose/counts.ts';
import { dividedIn, type EachSaid, eachSaidIn, makesIn } from '../../prose/printed-pieces.ts';
import { sheetSaid } from '../../prose/thickness.ts';
import type { Part, Recipe, Step, World } from '../../recipe/model.ts';
import type { YieldNode } from '../../recipe/yield.ts';
import { defineCheck, type Found, type Place } from '../check.ts';
import { divisions } from '../method/yield-mismatch.ts';
import { onceFor } from '../once.ts';
import { overParts } from '../over-parts.ts';
import { NOTHING } from './foods-named.ts';
import { type InHand, inHandAt, inPotMl, madeInAll } from './in-hand.ts';
import { notesOf, placeIn } from './notes.ts';
import { otherGrids, otherNumbers } from './other-numbers.ts';
import { isSameNoun, type Made, yieldOf } from './pieces-made.ts';

/** So many of each, which is another amount than there is; or, where `noun` is given, another number than the yield has. */
interface Values {
  readonly count: number;
  readonly each: number;
  readonly there: Range;
  readonly unit?: 'g' | 'ml';
  readonly noun?: string;
  /** Who says the other number. */
  readonly by?: string;
  readonly vessel?: true;
  /** They are cut out of a sheet. */
  readonly cut?: true;
}

/** How far apart they may be: what is weighed by eye, left in the bowl, lost in the oven (judgement). */
const PIECES = { most: 1.1, least: 0.6 };
const PIECES_ML = { most: 1.35, least: 0.6 };
/** Vessels are not filled to the brim, and are called by the next round size. */
const VESSELS = { most: 1.5, least: 1 / 1.5 };
/** What cooks in a pot may stand above its rim for a while (judgement). */
const POT = { most: Number.POSITIVE_INFINITY, least: 0.8 };
const IN_ALL = { most: 1.35, least: 0.5 };
/** `About 20` may be 24; further off than the other another thing is counted: each of several logs, one tray. */
const FAR_COUNT = 1.3;
const OTHER_COUNT = 4;

export default defineCheck<Values>({
  code: 'pieces-misfit',
  title: 'Pieces, jars or litres that are printed do not fit what there is',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** Pieces or vessels of a note or a step (\`25 g balls, about 30\`, \`pour into six 120 ml ramekins\`, \`fills four 1-pound jars\`) and litres in all (\`makes about 2.5 litres\`), against what the steps have taken until then: by weight, or by the room that its composition takes, less what the stove may boil off, more for air whipped in. And the number of the yield's own pieces (\`cut into 12 biscuits\`) against the yield; of pieces by another name, where no step pairs, cuts or shares them out; of jars and glasses against every other number of them. Rows of rows (\`cut 6 by 8 into 48\`) against what they are said to be; and the yield's pieces as a cutter cuts them, with the thickness that a step says, against the dough.

**Why it matters.** Something runs out, runs over, or stays half empty.

**What to do.** Mend the number, the size, or the amounts.

**Silent** within a factor of ${VESSELS.most} for vessels and numbers, ${Math.round((PIECES.most - 1) * 100)} % above and ${Math.round((1 - PIECES.least) * 100)} % below for pieces, for one vessel that is large enough, where only some of it is shaped, where a weight is not known, and where dry food takes up water that is not listed. What a step divides as a whole \`yield-mismatch\` holds.`,
  find: ({ recipe }) => (recipe.inherits ? NONE : found(recipe)),
  say: ({ count, each, there, unit, noun, by = 'the yield', vessel, cut }) => {
    if (unit === undefined)
      return {
        message: `${trimmed(count, 1)} ${noun} here, and ${by} says ${trimmed(there.low, 1)}: mend one of them.`,
        value: count,
      };
    const all = count * each;
    if (cut)
      return {
        message: `${trimmed(count, 1)} so thick and wide weigh ${gramsText(all)} g at the least, and there is no more than ${gramsText(there.high)} g: mend the number, the cutter or the thickness.`,
        value: all,
        unit,
        band: [null, there.high],
      };
    const first = count === 1 ? '' : `${trimmed(count, 1)} of ${gramsText(each)} ${unit} ${vessel ? 'hold' : 'are'} `;
    const most = all > there.high ? `no more than ${gramsText(there.high)}` : `at least ${gramsText(there.low)}`;
    return {
      message: `${first}${gramsText(all)} ${unit}, and there is ${most} ${unit}: mend the number, the size or the amounts.`,
      value: all,
      unit,
      band: [there.low, there.high],
    };
  },
  examples: {
    good: [
      'recipe Fruit cream\n  serves  6\n  400 ml    double cream\n  200 ml    whole milk\n  70 g      caster sugar\n  do Stir the sugar into the milk and the cream.\n  do Pour into six 120 ml glasses and chill at 4 C for 4 h.\n',
      'recipe Lemon syrup\n  yield   450 ml\n  300 g     caster sugar\n  250 ml    water\n  do Heat the sugar in the water for 3 min and cool.\n',
    ],
    bad: [
      'recipe Scones\n  yield   14 scones\n  450 g     self-raising flour\n  75 g      butter\n  190 ml    whole milk\n  do Rub the butter into the flour and stir in the milk.\n  do Pat to 2.5 cm thick and stamp out with a 16 cm cutter.\n# "2.5 cm" pieces-misfit: weigh\n  do Bake at 220 C for 12 min until golden.\n',
      'recipe Ginger nuts\n  yield   20 biscuits\n  250 g     plain flour\n  150 g     caster sugar\n  100 g     butter\n  do Rub the butter into the flour and the sugar.\n  do Roll into 50 g balls, about 20 of them, and bake at 160 C for 18 min until brown.\n# "50 g balls, about 20" pieces-misfit: 20 of 50 g are 1000 g, and there is no more than 500 g\n',
      'recipe Fruit cream\n  serves  6\n  400 ml    double cream\n  200 ml    whole milk\n  70 g      caster sugar\n  do Stir the sugar into the milk and the cream.\n  do Pour into six 50 ml glasses and chill at 4 C for 4 h.\n# "six 50 ml glasses" pieces-misfit: hold 300 ml, and there is at least\n',
      'recipe Oat bars\n  yield   24 bars\n  250 g     rolled oats\n  150 g     butter\n  100 g     honey\n  do Melt the butter with the honey and stir in the oats.\n  do Bake at 160 C for 25 min until golden and cut into 12 bars.\n# "12 bars" pieces-misfit: 12 bars here, and the yield says 24\n',
    ],
  },
});

const NONE: readonly never[] = [];

const found = onceFor((recipe: Recipe): readonly Found<Values>[] => {
  const own = yieldOf(recipe);
  const { world, parts, yield: made } = recipe;
  const list: Found<Values>[] = [];
  const add = (at: Place, values: Values | undefined): void => {
    if (values !== undefined) list.push({ at, values });
  };
  const amount = made?.node.amount;
  if (made !== undefined && amount?.unit !== undefined && dimensionOf(amount.unit.symbol) === 'volume')
    add(
      { line: made.at, start: amount.start, end: amount.end },
      misfit(inAll({ ...amount.quantity, unit: amount.unit.symbol }), world, madeInAll(recipe), IN_ALL),
    );
  const said = made && sizeSaid(made.node);
  if (made !== undefined && amount !== undefined && said !== undefined) {
    const { each } = said;
    const whole = said.isOfAll ? misfit(inAll(each), world, madeInAll(recipe), IN_ALL) : undefined;
    const ofOne = misfit(
      { count: amount.quantity, each, sort: 'vessel', fills: true },
      world,
      madeInAll(recipe),
      VESSELS,
    );
    add(
      { line: made.at, start: amount.start, end: Math.max(amount.end, made.node.of?.end ?? 0) },
      said.isOfAll ? ofOne && whole : ofOne,
    );
  }
  for (const note of notesOf(recipe)) {
    for (const said of makesIn(note.items))
      add(
        placeIn(note, said),
        said.unit === undefined
          ? countMisfit(said, ownOrShaped(recipe, said, own))
          : misfit(inAll({ ...said, unit: said.unit }), world, madeInAll(recipe), IN_ALL),
      );
    for (const said of eachSaidIn(note.items)) {
      const isWhole = said.sort === 'vessel' ? said.fills : parts.length === 1;
      add(
        placeIn(note, said),
        (said.sort === 'piece' ? countMisfit({ ...said.count, noun: said.noun }, own) : undefined) ??
          misfit(said, world, madeInAll(recipe), slackOf(said), isWhole),
      );
    }
  }
  const held = new Set(divisions(recipe).flatMap(({ value }) => value.map(({ at }) => `${at.part} ${at.line}`)));
  // Of several parts, steps that say nothing of pieces have nothing to be held against.
  const steps = parts.length === 1 ? parts.map((part) => ({ part, value: part.steps })) : sayingPieces(recipe);
  for (const { part, value } of steps)
    for (const step of value) {
      const on = ({ start, end }: Span): Place => ({ part: part.index, line: step.line, start, end });
      if (held.has(`${part.index} ${step.line}`) || step.mentions.some(isPortion)) continue;
      const [said, other] = eachSaidIn(step.sentence.items);
      const values = said === undefined || other !== undefined ? undefined : stepMisfit(recipe, part, step, said);
      if (said !== undefined && values !== undefined) add(on(said), values);
      else if (parts.length === 1) {
        for (const each of dividedIn(step.sentence.items)) add(on(each), countMisfit(each, own));
        // `1 tsp jam for each` is not all of it.
        for (const { words, ...one } of said === undefined ? ofOneIn(step.sentence.items) : [])
          if (
            own !== undefined &&
            !own.serves &&
            words.some((word) => isSameNoun(word, own.noun)) &&
            !namesAny(step, one)
          )
            add(on(one), misfit({ count: own, each: one.each }, world, madeInAll(recipe), PIECES_ML));
      }
    }
  if (own !== undefined && !own.serves && own.low > 1)
    for (const { part, value } of sheets(recipe))
      for (const { line, start, end, grams } of value) {
        const there = inHandAt(part, line)?.grams;
        if (there !== undefined && there.high > 0 && own.low * grams > there.high * PIECES.most)
          add({ part: part.index, line, start, end }, { count: own.low, each: grams, there, unit: 'g', cut: true });
      }
  for (const { at, ...values } of [...otherGrids(recipe), ...otherNumbers(recipe)])
    if (list.every(({ at: { part, line } }) => part !== at.part || line !== at.line))
      list.push({ at, values: { ...values, each: 1 } });
  return list;
});

/** The volume that the yield says: of one (`8 glasses of 150 ml`), or behind a comma of either (`6 servings, about 2 litres`). */
function sizeSaid({
  amount,
  of,
}: YieldNode): { readonly each: EachSaid['each']; readonly isOfAll: boolean } | undefined {
  const { items } = sentenceIn(of?.text ?? '');
  const at = items.findIndex((item) => item.kind === 'measured');
  const one = amount?.each ?? items[at];
  const unit = one?.kind === 'measured' ? one.unit?.symbol : undefined;
  if (one?.kind !== 'measured' || unit === undefined || dimensionOf(unit) !== 'volume') return undefined;
  const isOfAll = amount?.each === undefined && !saysEach(items, at) && items.slice(0, at).some(isComma);
  return { each: { ...one.quantity, unit }, isOfAll };
}

const isComma = (item: SentenceItem): boolean => item.kind === 'mark' && item.mark === ',';

const namesAny = ({ mentions }: Step, { start, end }: Span): boolean =>
  mentions.some((each) => each.ingredients.length > 0 && each.start >= start && each.end <= end);

type Said = Pick<EachSaid, 'count' | 'each'> & { readonly sort?: EachSaid['sort']; readonly fills?: boolean };

const inAll = (each: EachSaid['each']): Said => ({ count: exactly(1), each });

type Mention = Step['mentions'][number];
/** `Half the dough` is not the whole. */
const isPortion = ({ portion }: Mention): boolean => portion.kind !== 'plain' && portion.kind !== 'all';

const slackOf = ({ sort, each }: EachSaid) =>
  sort === 'vessel' ? VESSELS : dimensionOf(each.unit) === 'mass' ? PIECES : PIECES_ML;

/** The least that one weighs which is cut out of a sheet so thick, where nothing but the yield says how many: rings have a hole, and risen dough is light (judgement). */
const sheets = overParts(({ steps }) => {
  const cut = steps.flatMap(({ line, sentence }) => {
    const said = sheetSaid(sentence);
    if (said?.cutterCm === undefined || said.pieces > 1) return [];
    return [
      {
        line,
        start: said.start,
        end: said.end,
        grams: (Math.PI / 4) * said.cutterCm ** 2 * said.thickCm * HOLED * LIGHTEST,
      },
    ];
  });
  return cut.length === 0 ? undefined : cut;
});
const HOLED = 0.8;
const LIGHTEST = 0.5;

/** The steps of each part that say how large its pieces are. */
const sayingPieces = overParts(({ steps }): readonly Step[] | undefined => {
  const saying = steps.filter(({ sentence }) => eachSaidIn(sentence.items).length > 0);
  return saying.length === 0 ? undefined : saying;
});

/** That there are too few pieces is told where no food is named that alone may be divided, and no other step shapes some of it. */
function stepMisfit(recipe: Recipe, part: Part, step: Step, said: EachSaid): Values | undefined {
  const isWhole =
    said.sort === 'vessel' ||
    (step.mentions.every(({ ingredients }) => ingredients.length === 0) &&
      sayingPieces(recipe).every(({ value }) => value.every((each) => each === step)));
  const values = misfit(said, recipe.world, inHandAt(part, step.line), slackOf(said), isWhole);
  if (values !== undefined || said.sort !== 'vessel' || said.count.low !== 1) return values;
  const ml = inPotMl(part, step, said.noun) ?? 0;
  return misfit(said, recipe.world, { grams: NOTHING, ml: { low: ml, high: ml } }, POT);
}

function misfit(
  { count, each, sort, fills }: Said,
  { measures }: World,
  inHand: InHand | undefined,
  slack: { readonly most: number; readonly least: number },
  isWhole = true,
): Values | undefined {
  const base = baseOf(each.unit, measures);
  const dimension = dimensionOf(each.unit);
  // `40 rounds of 6 cm`
  if (inHand === undefined || base === undefined || (dimension !== 'mass' && dimension !== 'volume')) return undefined;
  const unit = dimension === 'mass' ? 'g' : 'ml';
  const there = unit === 'g' ? inHand.grams : inHand.ml;
  // One vessel may be as large as it likes, but where it is said to be full.
  const mayBeMore = sort === 'vessel' && count.low === 1 && fills !== true;
  const isMore = count.low * each.low * base > there.high * slack.most && !mayBeMore;
  const isLess = isWhole && count.high * each.high * base < there.low * slack.least;
  if (!isMore && !isLess) return undefined;
  const side = isMore ? 'low' : 'high';
  return {
    count: count[side],
    each: each[side] * base,
    there,
    unit,
    ...(sort === 'vessel' && { vessel: true as const }),
  };
}

/** Another number of the yield's own pieces; of nobody knows what, of its pieces. */
function countMisfit(said: Made, own: Made | undefined): Values | undefined {
  if (own === undefined || own.noun === '' || said.low <= 0 || own.low <= 0) return undefined;
  // One braid is of several strands.
  if (said.noun === '' ? own.serves || own.high === 1 : !isSameNoun(said.noun, own.noun)) return undefined;
  const [more, less] = [said.low / own.high, own.low / said.high];
  const far = Math.max(more, less);
  return far > FAR_COUNT && far <= OTHER_COUNT
    ? { count: said.low, each: 1, there: own, noun: said.noun === '' ? own.noun : said.noun }
    : undefined;
}

/** The yield, or what the steps shape under that name: meatballs are the balls that they roll. */
function ownOrShaped({ parts }: Recipe, { noun }: Made, own: Made | undefined): Made | undefined {
  if (noun === '' || (own !== undefined && isSameNoun(noun, own.noun))) return own;
  const shaped = parts.flatMap(({ steps }) => steps.flatMap(({ sentence: { items } }) => dividedIn(items)));
  const of = shaped.find((each) => each.noun !== '' && (isSameNoun(noun, each.noun) || noun.endsWith(each.noun)));
  return of === undefined ? own : { low: of.low, high: of.high, noun };
}
