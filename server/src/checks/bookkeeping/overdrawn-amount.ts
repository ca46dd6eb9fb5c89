import { listGrams } from '../../edits/set-amount.ts';
import { replaceSpan } from '../../edits/text-edit.ts';
import { likelyGrams } from '../../food/weigh.ts';
import { gramsText } from '../../measure/number-text.ts';
import type { Act } from '../../prose/event.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import { deed, does, nameSpeaksOf, type Question, speaksOfUnnamed } from '../../recipe/journey/deeds.ts';
import { shareOf } from '../../recipe/ledger.ts';
import { isIn } from '../../recipe/list/families.ts';
import type { Ingredient, LedgerEntry, Part, Recipe, TakenUse } from '../../recipe/model.ts';
import { yieldedBy } from '../../recipe/names/calls.ts';
import { wordsOf } from '../../recipe/words.ts';
import { defineCheck, type Fix, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { overParts } from '../over-parts.ts';
import { eventsWith } from './events-with.ts';
import { ledgerSum } from './ledger-sum.ts';
import { isSeparated } from './separated.ts';

interface Values {
  readonly name: string;
  readonly use: TakenUse;
  readonly entry: LedgerEntry;
  readonly part: number;
  readonly wholeG: number | undefined;
  /** Of what the amount is counted up, where it is of several: `900 g of the fruit`. */
  readonly several: readonly LedgerEntry[];
}

export default defineCheck<Values>({
  code: 'overdrawn-amount',
  title: 'More is used in the steps than the list provides',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `A step takes an amount of an ingredient that is not there any more: an earlier step used it, all or in part. A mention without a portion (\`the butter\`) takes all that is left.

Say \`most of the butter\` or \`100 g of the butter\` in the earlier step, or list more. Silent where an earlier portion is vague (\`a little of the\`), for fat or a liquid that was heated or saved before, for a line that tells its pieces apart (\`2 onions, 1 chopped and 1 sliced\`), for pieces counted by what they were made into, and for other water than the list's (more than twice as much), where it is only on a condition, for what is left over of the dish and kept, for the next batch too, what is served of it, the rest of what it was mixed into, for eggs used as yolks and whites apart, where the list has \`plus more for dusting\` and the like, and for rounding up to 2 %.`,
  find: ({ recipe, house }) => found(recipe, house),
  say: ({ name, use, entry, part, wholeG, several }) => {
    const left = use.before.high;
    const has =
      left <= 0.02
        ? 'none is left'
        : wholeG === undefined
          ? `only ${Math.round(left * 100)} % is left`
          : `only ${gramsText(left * wholeG)} g is left`;
    const wanted = use.taken.low > 0 && wholeG !== undefined ? ` ${gramsText(use.taken.low * wholeG)} g of` : '';
    const listed = entry.ingredient.node.name;
    if (several.length > 0) {
      const grams = several.reduce(
        (sum, { ingredient: { weighed } }) => sum + (weighed.known ? likelyGrams(weighed) : 0),
        0,
      );
      const { portion } = use.mention;
      const count =
        portion.kind === 'amount' && portion.measured.unit === undefined ? portion.measured.quantity.low : undefined;
      if (count !== undefined)
        return {
          message: `This step takes ${count} of them, and the list has ${several.length}: ${namesText(several)}. Mend one of the two.`,
          value: count,
          band: [null, several.length],
        };
      const takes = use.taken.low * grams;
      return {
        message: `This step takes ${gramsText(takes)} g of ${namesText(several)}, and the list has ${gramsText(grams)} g of them in all: mend one of the two.`,
        value: takes,
        unit: 'g',
        band: [null, grams],
      };
    }
    return {
      message: `This step takes${wanted} the ${name}, but ${has}: say less in an earlier step, or list more.`,
      related: [
        {
          at: { line: entry.ingredient.line, start: listed?.start ?? 0, end: listed?.end ?? 0, part },
          message: `The list has the ${name} here.`,
        },
      ],
    };
  },
  work: ({ entry }, { recipe }) => ledgerSum(entry, recipe),
  fix: ({ name, use, entry, part, wholeG, several }, { recipe }) => {
    if (several.length > 0) return [];
    const at = (u: TakenUse) => (recipe.partsAt[u.part] ?? 0) + u.line;
    const plain = entry.uses.filter((u) => u.mention.portion.kind === 'plain' && u !== use);
    const fixes: Fix[] = [];
    const [first] = plain;
    if (first !== undefined && use.mention.portion.kind === 'rest') {
      const the = { start: first.mention.whole.start, end: first.mention.start };
      fixes.push({
        title: `Write \`most of the ${name}\` in the earlier step`,
        effect: 'words',
        edits: [replaceSpan(at(first), the, 'most of the ')],
      });
    }
    // All that is short from here on, or the next step would be the one that takes too much.
    const missing = entry.uses.reduce((sum, u) => sum + (u.over ? Math.max(0, u.taken.low - u.before.high) : 0), 0);
    if (wholeG === undefined || missing <= 0 || use.mention.portion.kind !== 'amount') return fixes;
    const listed = listGrams(recipe, part, entry.ingredient, wholeG * (1 + missing));
    if (listed === undefined) return fixes;
    // What an earlier step took whole, it now takes as the amount it was; one that only handles it leaves all of it there.
    const named = plain
      .filter((u) => u.taken.high > 0)
      .map((u) => {
        const the = { start: u.mention.whole.start, end: u.mention.start };
        return replaceSpan(at(u), the, `${gramsText(u.taken.high * wholeG)} g of the `);
      });
    return [
      ...fixes,
      { title: `List ${listed.written} ${name}`, effect: 'amounts', edits: [...listed.edits, ...named] },
    ];
  },
  examples: {
    good: [
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub 70 g of the butter into the oats.\n  do Grease the pan with 10 g of the butter.\n',
      'recipe Batter\n  200 g     plain flour\n  300 ml    whole milk\n  do Whisk a third of the milk into the flour.\n  do Thin with the remaining milk.\n',
      'recipe Sponge as sponge\n  4 large   eggs, separated\n  120 g     caster sugar\n  100 g     plain flour\n  do Beat the yolks of the eggs with the sugar.\n  do Fold in half the whites of the eggs, the flour and the rest of the whites.\n  do Bake at 170 C for 30 min until it springs back.\n',
    ],
    bad: [
      'recipe Potted shrimps\n  300 g     cooked shrimps\n  200 g     butter\n  do Melt 30 g of the butter and fry the shrimps for 2 min.\n  do Blend with 320 g of the butter.\n# "320 g of the butter" overdrawn-amount *: 170 g is left\n',
      {
        text: 'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n  do Brush the pan with 10 g of the butter.\n# "10 g of the butter" overdrawn-amount *: none is left\n',
        after: {
          'List 90 g butter':
            'recipe Slab\n  200 g     rolled oats\n  90 g      butter\n  do Rub 80 g of the butter into the oats.\n  do Brush the pan with 10 g of the butter.\n',
        },
      },
      {
        text: 'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n  do Brush with the rest of the butter.\n# "the rest of the butter" overdrawn-amount *\n',
        after: {
          'Write `most of the butter` in the earlier step':
            'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub most of the butter into the oats.\n  do Brush with the rest of the butter.\n',
        },
      },
    ],
  },
});

/** What each part finds by itself: which lists of others a step may mean is asked of the few that are left. */
const drawn = overParts((part): readonly Found<Values>[] | undefined => {
  const found = [...overdrawnIn(part)];
  return found.length === 0 ? undefined : found;
});

const found = foundAgain((recipe: Recipe): readonly Found<Values>[] =>
  drawn(recipe).flatMap(({ value }) => value.filter(({ values }) => !isOfOther(values, recipe))),
);

function* overdrawnIn(part: Part): Generator<Found<Values>> {
  for (const entry of part.ledger) {
    const use = entry.uses.find((u) => u.over);
    if (use === undefined) continue;
    const several = countedUp(use, part);
    // Told once, with the first of them.
    if (several.length > 0 && several[0] !== entry) continue;
    if (entry.ingredient.free || isSeparated(entry.ingredient, part)) continue;
    if (
      (!isMoreThanUsed(use, entry) && isHeatedBefore(entry, use, part)) ||
      isSavedBefore(entry, use, part) ||
      isOther(entry.ingredient, use)
    )
      continue;
    if (isMaybe(use, part) || isLeftOver(entry, use, part) || isServed(use, part) || isOfMixed(entry, use, part))
      continue;
    if (isOfFoam(entry, use, part) || isOfWhole(entry, use, part) || isLiftedOut(use, part)) continue;
    // `2 lemons, zest and juice`: who took the one left the other.
    if (!(use.mention.portion.kind === 'amount' && use.taken.low > 1) && yieldedBy(entry.ingredient)?.includes(' '))
      continue;
    // `plus more for dusting`: how much is more, nobody says.
    if (entry.ingredient.node.rest !== undefined) continue;
    const { weighed } = entry.ingredient;
    const wholeG = weighed.known ? (weighed.grams.low + weighed.grams.high) / 2 : undefined;
    const { start, end } = use.mention.whole;
    yield {
      at: { line: use.line, start, end, part: use.part },
      values: { name: entry.ingredient.name, use, entry, part: part.index, wholeG, several },
    };
  }
}

/** Those of a part of which an amount is said together. */
const countedUp = ({ mention }: TakenUse, { ledger }: Part): readonly LedgerEntry[] =>
  mention.every && mention.portion.kind === 'amount'
    ? ledger.filter(({ uses }) => uses.some((use) => use.mention === mention))
    : [];

/** `the currants and the sultanas` */
const namesText = (several: readonly LedgerEntry[]): string =>
  several
    .map(({ ingredient }) => `the ${ingredient.name}`)
    .join(', ')
    .replace(/, (?=[^,]*$)/, ' and ');

/** `Fry it in 20 g of the butter … 60 g of the butter`, of 70: no fat that is taken again is more than was there or went in. */
const isMoreThanUsed = (use: TakenUse, { uses }: LedgerEntry): boolean =>
  (use.mention.portion.kind === 'amount' || use.mention.portion.kind === 'share') &&
  use.taken.low > uses.slice(0, uses.indexOf(use)).reduce((sum, { taken }) => Math.min(1, sum + taken.high), 0);

/** Fat that was heated, or that something was fried in, is still there, and so is milk that was warmed with something. */
function isHeatedBefore({ ingredient, uses }: LedgerEntry, over: TakenUse, part: Part): boolean {
  const isFat = isIn(ingredient, 'fat');
  if (!isFat && !isIn(ingredient, 'liquid')) return false;
  const before = uses.filter((use) => !use.over && !use.ready && use.mention.portion.kind !== 'all');
  if (before.some((use) => eventsWith(use, part).some(({ act }) => act === 'heat'))) return true;
  // `Whisk the powder into the milk, heat …; a cupful of the warm milk`
  if (!isFat && before.some((use) => isPutTo(use, part) && isWarmedIn(use, over, part))) return true;
  // Laid over meat and baked it runs off, with the meat's own; flour takes it up.
  const lies = (family: 'flesh' | 'flour') => part.head.ingredients.some((other) => isIn(other, family));
  return isFat && lies('flesh') && !lies('flour') && before.some((use) => isHeatedIn(use, over, part));
}

/** `Drain, saving the oil; heat 2 tbsp of it`: what an earlier step took whole is there again. */
const isSavedBefore = ({ uses }: LedgerEntry, over: TakenUse, part: Part): boolean =>
  uses
    .slice(0, uses.indexOf(over))
    .some((use) => use.mention.portion.kind === 'plain' && eventsWith(use, part).some(({ act }) => act === 'reserve'));

/** Whether other things go into it, so that it gives them its name. */
const isPutTo = ({ part: index, step, mention }: TakenUse, { index: own, steps }: Part): boolean =>
  index === own &&
  (steps[step] === undefined ? [] : boundEvents(steps[step])).some(({ names }) =>
    names.some((name) => name.role !== 'what' && name.mention === mention),
  );

/** Whether what took it was heated before the other use. */
const heatedBetween = (heats: Question) => (use: TakenUse, over: TakenUse, part: Part) =>
  use.part === part.index &&
  part.steps.some((step, i) => i >= use.step && (over.part !== part.index || i <= over.step) && does(step, heats));

const WARMS = deed(({ act }) => act === 'heat');
const isWarmedIn = heatedBetween(WARMS);
const HEATS = deed(({ act, cooks }) => act === 'heat' && cooks !== 'barely');
const isHeatedIn = heatedBetween(HEATS);

/** `Add 1.5 litres of water`, where the list has the 100 ml that go in last. */
const isOther = (ingredient: Ingredient, { taken }: TakenUse): boolean =>
  isIn(ingredient, 'water') && taken.low > OTHER_WATER;

/** How many times what is listed can no longer be a slip. Judgement, no source. */
const OTHER_WATER = 2;

/** `Cool any leftover rice`, `freeze the rest of the beans`: what is not eaten of the dish, which nothing takes off the list. */
function isLeftOver({ uses }: LedgerEntry, use: TakenUse, part: Part): boolean {
  // `Lift it out with 400 ml of the kombucha for the next batch`: of what has grown since.
  const isGrown = part.steps.some((step, i) => i < use.step && i >= (uses[0]?.step ?? i) && does(step, GROWS));
  const all = eventsWith(use, part);
  // `Throw away the flour that is left`
  if (all.length > 0 && all.every(({ act }) => act === 'discard')) return true;
  const events = use.mention.portion.kind === 'rest' || isGrown ? all : [];
  return events.length > 0 && events.every(({ act }) => KEEPS.has(act) || (isGrown && act === 'remove'));
}

const GROWS = deed(({ act }) => act === 'rise');

const KEEPS: ReadonlySet<Act> = new Set<Act>(['cool', 'freeze', 'stay', 'pack', 'reserve', 'close', 'cover', 'eat']);

/** `Serve two prunes to each bowl`: they are in the pot. */
const isServed = (use: TakenUse, part: Part): boolean =>
  use.mention.portion.kind === 'amount' && eventsWith(use, part).some(({ act }) => act === 'eat');

/** `Spread with half the walnut mixture … and the rest of the nuts`: of what they were mixed into. */
const isOfMixed = ({ uses }: LedgerEntry, use: TakenUse, part: Part): boolean =>
  use.mention.portion.kind === 'rest' &&
  use.part === part.index &&
  part.steps.some(
    (step, i) =>
      i <= use.step && uses.some((before) => !before.over && before.step <= i) && speaksOfUnnamed(step, 'fraction'),
  );

/** `A third of the whites`, after `whip the whites with the sugar`: of the foam; so of minced meat with its onion, and of the salt that whites were stirred into. */
const isOfFoam = ({ ingredient, uses }: LedgerEntry, over: TakenUse, part: Part): boolean => {
  const [first] = uses;
  return (
    over.mention.portion.kind === 'share' &&
    first?.mention.portion.kind === 'plain' &&
    (nameSpeaksOf(ingredient.name, 'egg half') ||
      (isIn(ingredient, 'flesh') && !first.ready) ||
      isMostOfMix(ingredient, first, part) ||
      uses.slice(0, uses.indexOf(over)).some((use) => isPutTo(use, part)))
  );
};

/** `Mix the walnuts with the sugar and cinnamon`: half of what is still called the walnuts. */
function isMostOfMix({ weighed }: Ingredient, { mention, line }: TakenUse, { index, head, steps }: Part): boolean {
  const step = steps.find((each) => each.line === line);
  const mixed = step && boundEvents(step).find(({ names }) => names.some((name) => name.mention === mention));
  if (mixed?.event.act !== 'combine' || mixed.names.length < 2 || !weighed.known) return false;
  const grams = mixed.names
    .flatMap((name) => name.mention.ingredients)
    .map(({ part, ingredient }) => (part === index ? head.ingredients[ingredient]?.weighed : undefined))
    .reduce((sum, each) => sum + (each?.known === true ? likelyGrams(each) : 0), 0);
  return likelyGrams(weighed) >= grams * MOST;
}
const MOST = 0.5;

/** `A third of the cream`, in a part that is called `coffee cream`, once all of the cream is in it. */
const isOfWhole = ({ ingredient }: LedgerEntry, { mention, before }: TakenUse, { head }: Part): boolean =>
  mention.portion.kind === 'share' &&
  before.high <= ROUNDING &&
  wordsOf(head.name).at(-1) === wordsOf(ingredient.name).at(-1);

/** `Lift out a cupful of the potatoes`: they lie in the pot. */
const isLiftedOut = (use: TakenUse, part: Part): boolean => {
  const events = eventsWith(use, part);
  return events.length > 0 && use.taken.low < 1 && events.every(({ act }) => act === 'remove');
};

/** `The 2 1/2 cups flour`, of which another line of flour has just that, or at least that where this one never had as much; so of what was taken before. */
function isOfOther({ entry: { ingredient, uses }, use, part }: Values, { parts, world }: Recipe): boolean {
  const noun = wordsOf(ingredient.name).at(-1);
  const last = Math.max(part, use.part);
  const others = parts
    .slice(Math.max(0, last - NEAR_PARTS), last + 1)
    .flatMap(({ head }) =>
      head.ingredients.filter((each) => each !== ingredient && wordsOf(each.name).at(-1) === noun),
    );
  return uses.slice(0, uses.indexOf(use) + 1).some((each) => {
    const { portion } = each.mention;
    if (portion.kind !== 'amount') return false;
    return others.some((other) => {
      if (each !== use && other.name !== ingredient.name) return false;
      const of = shareOf(other, portion.measured.quantity, world);
      return of !== undefined && of.high <= 1 + ROUNDING && (of.low >= 1 - ROUNDING || each.taken.low > 1 + ROUNDING);
    });
  });
}
const ROUNDING = 0.02;
/** So far above it a step at the end speaks of a list (judgement). */
const NEAR_PARTS = 12;

/** `If it falls short, top up with …` */
const isMaybe = (use: TakenUse, part: Part): boolean =>
  eventsWith(use, part).some(({ said }) => said === 'if' || said === 'optional');
