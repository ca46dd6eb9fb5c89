/**
 * Knows how one food of a list is swapped for its equivalent, so that the formula keeps what it had, and what moves all the same.
 * Refuses a swap that the rest of the list cannot make good.
 */

import { type Component, compose, shareOf } from '../food/composition.ts';
import type { Adjustment, Equivalent, StandIn } from '../food/equivalents.ts';
import type { Food } from '../food/food.ts';
import { likelyGrams } from '../food/weigh.ts';
import { kitchenGrams, numberText } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import { middle } from '../measure/quantity.ts';
import type { Document } from '../notation/document.ts';
import { statedSpan, takesOf } from '../notation/item-amounts.ts';
import type { Ingredient } from '../recipe/ingredient.ts';
import type { TakenUse } from '../recipe/ledger.ts';
import type { Part, Recipe } from '../recipe/recipe.ts';
import { ADJECTIVES, singular, wordsOf } from '../recipe/words.ts';
import { grownBy, keepColumn } from './amount-text.ts';
import { isOnOwnLine, lineOf, newLine } from './list-line.ts';
import { dropped, saidBehind } from './said-behind.ts';
import { setCount, setGrams } from './set-amount.ts';
import { deleteLine, insertLineAfter, replaceSpan, type TextEdit } from './text-edit.ts';

/** Grams of a component in the whole part. */
export interface Move {
  readonly component: 'water' | 'fat' | 'sugar' | 'salt' | 'egg';
  readonly beforeG: number;
  readonly afterG: number;
}

export interface Substitution {
  readonly equivalent: Equivalent;
  /** `Swap the butter for 120 g unsalted butter, with 2 g more salt`. */
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** What the part holds before and after; empty where the composition of a line is not known. */
  readonly moves: readonly Move[];
  readonly said: readonly string[];
}

interface Amount {
  readonly food: Food;
  readonly name: string;
  readonly grams: number;
  /** As written: `120 g`, `4 large`. */
  readonly text: string;
}

interface Change {
  readonly food: Food;
  readonly name: string;
  /** Undefined where the list has no such line yet. */
  readonly line: Ingredient | undefined;
  readonly deltaG: number;
}

/** The swap as edits of the list and of the steps; undefined where it cannot be made. */
export function substitute(
  document: Document,
  recipe: Recipe,
  part: Part,
  ingredient: Ingredient,
  equivalent: Equivalent,
): Substitution | undefined {
  const { node, weighed, food } = ingredient;
  if (food === undefined || !weighed.known || ingredient.percent !== undefined) return undefined;
  if (node.amount?.kind !== 'measured' || node.bought !== undefined || node.name === undefined) return undefined;
  if (node.name.start < node.amount.end || !isOnOwnLine(part, ingredient)) return undefined;
  if (takesOf(node) !== undefined || node.rest !== undefined || ingredient.others !== undefined) return undefined;
  if (equivalent.form !== undefined && equivalent.form !== formOf(ingredient)) return undefined;
  const plan = planOf(recipe, part, ingredient, equivalent);
  if (plan === undefined) return undefined;
  const { amounts, changes } = plan;
  if (amounts.some((a) => clashes(part, ingredient, a.name))) return undefined;
  const edits = listEdits(document, recipe, part, ingredient, amounts);
  const added: Amount[] = amounts.slice(1);
  for (const change of changes) {
    if (change.line === undefined) {
      const grams = kitchenGrams(change.deltaG);
      const amount = { food: change.food, name: change.name, grams, text: `${trimmed(grams, 2)} g` };
      edits.push(
        insertLineAfter(
          document,
          lineOf(recipe, part, ingredient),
          newLine(document, recipe, part, ingredient, amount.text, amount.name),
        ),
      );
      added.push(amount);
    } else if (isUsedUp(change) && !isOnOwnLine(part, change.line)) return undefined;
    else if (isUsedUp(change))
      edits.push(
        deleteLine(document, lineOf(recipe, part, change.line)),
        ...unsaid(document, recipe, part, change.line),
      );
    else edits.push(...changed(recipe, part, change, change.line, equivalent));
  }
  const [main] = amounts;
  if (main === undefined) return undefined;
  const entry = part.ledger.find((e) => e.ingredient === ingredient);
  for (const use of entry?.uses ?? []) edits.push(...mentionEdits(document, recipe, use, main, added));
  return {
    equivalent,
    title: `${titleOf(ingredient, amounts, changes)}${equivalent.aside === undefined ? '' : ` (${equivalent.aside})`}`,
    edits,
    moves: movesOf(part, ingredient, amounts, changes),
    said: equivalent.said === undefined ? [] : [equivalent.said],
  };
}

/** Another line whose name ends in the new one, or in which the new one ends: the steps could not tell them apart. */
function clashes(part: Part, but: Ingredient, name: string): boolean {
  const words = wordsOf(name).join(' ');
  return part.head.ingredients.some((i) => {
    const other = wordsOf(i.name).join(' ');
    return i !== but && (` ${other}`.endsWith(` ${words}`) || ` ${words}`.endsWith(` ${other}`));
  });
}

const formOf = ({ name, node }: Ingredient): 'sheets' | 'powder' => {
  const count = node.amount?.kind === 'measured' ? node.amount.quantity.count : undefined;
  return count === 'sheet' || count === 'leaf' || wordsOf(name).some((w) => w === 'sheet' || w === 'leaf')
    ? 'sheets'
    : 'powder';
};

const gramsOf = ({ weighed }: Ingredient): number => (weighed.known ? likelyGrams(weighed) : 0);

/** What is written in the place of the ingredient, and what other lines give or take; undefined where it does not come out. */
function planOf(
  recipe: Recipe,
  part: Part,
  ingredient: Ingredient,
  equivalent: Equivalent,
): { readonly amounts: readonly Amount[]; readonly changes: readonly Change[] } | undefined {
  const { book } = recipe.world;
  const from = ingredient.food;
  const grams = gramsOf(ingredient);
  if (from === undefined || !(grams > 0)) return undefined;
  let adjusts = equivalent.adjusts;
  for (let tries = 0; tries <= equivalent.adjusts.length; tries++) {
    const unknowns: Unknown[] = [];
    const fixed: { readonly food: Food; readonly grams: number }[] = [];
    const place = (food: Food | undefined, of: StandIn | Adjustment): boolean => {
      if (food === undefined) return false;
      if (of.per !== undefined) fixed.push({ food, grams: of.per * grams });
      else if (of.keeps !== undefined) unknowns.push({ food, keeps: of.keeps, of });
      return true;
    };
    const lines = new Map(adjusts.map((a) => [a, lineFor(part, ingredient, a)] as const));
    if (!equivalent.to.every((to) => place(book.byId(to.food), to))) return undefined;
    if (!adjusts.every((a) => place(lines.get(a)?.food ?? book.byId(FOOD_OF[a.role] ?? a.role), a))) return undefined;
    const solved = solve(unknowns, fixed, { food: from, grams });
    if (solved === undefined) return undefined;
    const gramsFor = (of: StandIn | Adjustment): number =>
      of.per === undefined ? (solved[unknowns.findIndex((u) => u.of === of)] ?? 0) : of.per * grams;
    const failing = adjusts.find((a) => !canGive(lines.get(a), gramsFor(a), a, equivalent));
    if (failing !== undefined) {
      if (failing.may !== 'skip') return undefined;
      adjusts = adjusts.filter((a) => a !== failing);
      continue;
    }
    const amounts: Amount[] = [];
    const listed: Change[] = [];
    for (const to of equivalent.to) {
      const food = book.byId(to.food);
      if (food === undefined || !(gramsFor(to) > 0)) return undefined;
      const line = part.head.ingredients.find((i) => i !== ingredient && i.food === food);
      // What is on the list already gets more; but the food itself would then stand there twice.
      if (line === undefined) amounts.push(amountOf(ingredient, food, to, gramsFor(to), equivalent));
      else if (amounts.length === 0 || line.percent !== undefined || !line.weighed.known) return undefined;
      else listed.push({ food, name: line.name, line, deltaG: gramsFor(to) });
    }
    const changes = adjusts.flatMap((a): Change[] => {
      const line = lines.get(a);
      const food = line?.food ?? book.byId(FOOD_OF[a.role] ?? a.role);
      const deltaG = gramsFor(a);
      if (food === undefined || Math.abs(deltaG) < (a.role === 'water' ? 0.5 : 0.05)) return [];
      return [{ food, name: line?.name ?? NAME_OF[a.role] ?? food.name, line, deltaG }];
    });
    return { amounts, changes: [...listed, ...changes] };
  }
  return undefined;
}

const FOOD_OF: Readonly<Record<string, string>> = { salt: 'table-salt', water: 'water' };
const NAME_OF: Readonly<Record<string, string>> = { salt: 'fine salt', water: 'water' };

/** The line that an adjustment is made on: salt, a liquid (water before any other), or the food itself. */
function lineFor(part: Part, but: Ingredient, { role, may }: Adjustment): Ingredient | undefined {
  const lines = part.head.ingredients.filter(
    (i) => i !== but && i.weighed.known && i.food !== undefined && !i.optional && i.percent === undefined,
  );
  if (role === 'salt') return lines.find((i) => i.food?.class === 'salt');
  if (role !== 'water') return lines.find((i) => i.food?.id === role);
  const water = lines.find((i) => i.food?.class === 'water');
  const other = lines.filter((i) => may === 'refuse' && LIQUIDS.has(i.food?.class ?? ''));
  return (
    water ??
    other.reduce<Ingredient | undefined>((a, b) => (a === undefined || gramsOf(b) > gramsOf(a) ? b : a), undefined)
  );
}

const LIQUIDS: ReadonlySet<string> = new Set(['milk', 'juice', 'stock', 'drink']);

/** Whether the list has the line, and enough on it; a line may be used up only where the steps can do without its name. */
function canGive(
  line: Ingredient | undefined,
  deltaG: number,
  { may, role }: Adjustment,
  { byPiece }: Equivalent,
): boolean {
  if (Math.abs(deltaG) < 0.05) return true;
  if (line === undefined) return may === 'add' && deltaG > 0;
  const left = gramsOf(line) + deltaG;
  // More water is not more milk.
  if (deltaG > 0 && role === 'water' && line.food?.class !== 'water') return false;
  return left >= 0.05 * gramsOf(line) || (byPiece === true && left > -0.05 * gramsOf(line));
}

interface Unknown {
  readonly food: Food;
  readonly keeps: Component;
  readonly of: StandIn | Adjustment;
}

/** Grams of every unknown, so that each kept component comes out as it was; undefined where a share is not known. */
function solve(
  unknowns: readonly Unknown[],
  fixed: readonly { readonly food: Food; readonly grams: number }[],
  old: { readonly food: Food; readonly grams: number },
): number[] | undefined {
  const rows: number[][] = [];
  for (const { keeps } of unknowns) {
    const share = (food: Food): number => (shareOf(food.per100, keeps) ?? Number.NaN) / 100;
    const wanted = share(old.food) * old.grams - fixed.reduce((sum, f) => sum + share(f.food) * f.grams, 0);
    rows.push([...unknowns.map((u) => share(u.food)), wanted]);
  }
  const n = unknowns.length;
  for (let k = 0; k < n; k++) {
    const pivot = rows
      .slice(k)
      .reduce((best, row, i) => (Math.abs(row[k] ?? 0) > Math.abs(rows[best]?.[k] ?? 0) ? k + i : best), k);
    [rows[k], rows[pivot]] = [rows[pivot] ?? [], rows[k] ?? []];
    const own = rows[k] ?? [];
    const lead = own[k] ?? 0;
    if (!(Math.abs(lead) > 1e-6)) return undefined;
    rows.forEach((row, i) => {
      if (i === k) return;
      const times = (row[k] ?? 0) / lead;
      own.forEach((v, c) => {
        row[c] = (row[c] ?? 0) - times * v;
      });
    });
  }
  const solved = rows.map((row, k) => (row[n] ?? Number.NaN) / (row[k] ?? Number.NaN));
  return solved.every((v) => Number.isFinite(v)) ? solved : undefined;
}

/** As a kitchen writes it: pieces for pieces, sheets by number, else grams. */
function amountOf(ingredient: Ingredient, food: Food, to: StandIn, grams: number, { byPiece }: Equivalent): Amount {
  const amount = ingredient.node.amount;
  const rounded = kitchenGrams(grams);
  if (to.sheetG !== undefined) {
    const sheets = Math.max(1, Math.round((grams / to.sheetG) * 2)) / 2;
    const text = `${numberText(sheets, 'plain')} ${sheets > 1 ? 'sheets' : 'sheet'} = ${trimmed(rounded, 2)} g`;
    return { food, name: to.name, grams: rounded, text };
  }
  if (byPiece === true && amount?.kind === 'measured' && amount.unit === undefined && amount.counted === undefined) {
    const one = amount.quantity.high <= 1;
    const name = one ? to.name.replace(/s$/, '') : to.name;
    const size = amount.sized?.text;
    const number =
      amount.high === undefined ? numberText(amount.low.value, 'plain') : `${amount.low.value}-${amount.high.value}`;
    return { food, name, grams, text: size === undefined ? number : `${number} ${size}` };
  }
  return { food, name: to.name, grams: rounded, text: `${trimmed(rounded, 2)} g` };
}

function listEdits(
  document: Document,
  recipe: Recipe,
  part: Part,
  ingredient: Ingredient,
  amounts: readonly Amount[],
): TextEdit[] {
  const line = lineOf(recipe, part, ingredient);
  const { text } = document.lines[line] ?? { text: '' };
  const { amount, name } = ingredient.node;
  const stated = statedSpan(ingredient.node);
  const [main, ...more] = amounts;
  if (amount === undefined || stated === undefined || name === undefined || main === undefined) return [];
  const { end } = stated;
  const put = replaceSpan(line, { start: amount.start, end }, main.text);
  const edits = [
    put,
    ...keepColumn(line, text, end, grownBy([put])),
    ...dropped(line, saidBehind(text, ingredient.node)),
  ];
  if (name.text !== main.name) edits.push(replaceSpan(line, name, main.name));
  for (const { text: of, name: named } of more)
    edits.push(insertLineAfter(document, line, newLine(document, recipe, part, ingredient, of, named)));
  return edits;
}

/** The other line with more or less on it. */
function changed(
  recipe: Recipe,
  part: Part,
  { deltaG }: Change,
  line: Ingredient,
  { byPiece }: Equivalent,
): readonly TextEdit[] {
  const left = gramsOf(line) + deltaG;
  const amount = line.node.amount;
  if (byPiece === true && amount?.kind === 'measured' && amount.unit === undefined)
    return setCount(recipe, part.index, line, Math.round((amount.low.value * left) / gramsOf(line)))?.edits ?? [];
  return setGrams(recipe, part.index, line, kitchenGrams(left))?.edits ?? [];
}

const isUsedUp = ({ line, deltaG }: Change): boolean =>
  line !== undefined && gramsOf(line) + deltaG < 0.05 * gramsOf(line);

/** `the yolks and the whites` becomes `the yolks` where the whites are used up. */
function unsaid(document: Document, recipe: Recipe, part: Part, line: Ingredient): TextEdit[] {
  const uses = part.ledger.find((e) => e.ingredient === line)?.uses ?? [];
  return uses.flatMap(({ part: of, line: at, mention }) => {
    const number = (recipe.partsAt[of] ?? 0) + at;
    const before = (document.lines[number]?.text ?? '').slice(0, mention.whole.start);
    const join = /(?:,? and|,) $/.exec(before);
    return join === null ? [] : [replaceSpan(number, { start: join.index, end: mention.end }, '')];
  });
}

/** The steps speak of what is now in the list: the new name, and with it what goes in beside it. */
function mentionEdits(
  document: Document,
  recipe: Recipe,
  use: TakenUse,
  main: Amount,
  added: readonly Amount[],
): TextEdit[] {
  const { mention } = use;
  if (mention.ingredients.length > 1 && !mention.every) return [];
  const line = (recipe.partsAt[use.part] ?? 0) + use.line;
  const { text } = document.lines[line] ?? { text: '' };
  // `Butter the pan` is a verb; in `milk, butter and salt` it is not.
  if (mention.verb && !text.slice(mention.end).startsWith(' and ')) return [];
  const said = text.slice(mention.start, mention.end);
  const edits: TextEdit[] = [];
  const share = middle(use.taken);
  const { portion } = mention;
  const inGrams = portion.kind === 'amount' && portion.measured.unit !== undefined;
  if (inGrams && share > 0)
    edits.push(replaceSpan(line, portion.measured, `${trimmed(kitchenGrams(main.grams * share), 2)} g`));
  const takes = use.taken.high > 0 || use.before.high >= 1;
  const beside = takes
    ? added.map((a) => {
        const lead = inGrams
          ? `${trimmed(kitchenGrams(a.grams * share), 2)} g of the `
          : leadOf(text.slice(mention.whole.start, mention.start));
        return `${lead}${a.name}`;
      })
    : [];
  const named = isNamed(said, main.name) ? said : mention.forced ? `[${main.name}]` : inCase(said, main.name);
  const joined = [named, ...beside];
  const written = joined.length < 2 ? named : `${joined.slice(0, -1).join(', ')} and ${joined.at(-1)}`;
  if (written !== said) edits.push(replaceSpan(line, mention, written));
  return edits;
}

/** `the`, `half the`: what stood before the old name goes before the new one too, but for a capital. */
const leadOf = (written: string): string => (/^\p{Lu}/u.test(written) ? written.toLowerCase() : written);

/** Whether words still name a food so called: the name or the end of it, as steps may. */
function isNamed(said: string, name: string): boolean {
  const words = wordsOf(said);
  const full = wordsOf(name);
  if (words.length === 1 && full.length > 1 && ADJECTIVES.has(words[0] ?? '')) return false;
  return words.length > 0 && full.slice(-words.length).join(' ') === words.join(' ');
}

function inCase(said: string, name: string): string {
  const one = said.length > 0 && singular(said.toLowerCase()) === said.toLowerCase() && /s$/.test(name);
  const written = one && /(?:egg yolk|egg white)s$/.test(name) ? name.slice(0, -1) : name;
  return /^\p{Lu}/u.test(said) ? `${written.charAt(0).toUpperCase()}${written.slice(1)}` : written;
}

function titleOf({ name }: Ingredient, amounts: readonly Amount[], changes: readonly Change[]): string {
  const what = amounts.map((a) => `${a.text} ${a.name}`);
  const news = changes
    .filter((c) => c.line === undefined)
    .map((c) => `${trimmed(kitchenGrams(c.deltaG), 2)} g ${c.name}`);
  const all = [...what, ...news];
  const list = all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
  const gone = changes.filter(isUsedUp).map((c) => ` and ${c.name}`);
  const others = changes
    .filter((c) => c.line !== undefined && !isUsedUp(c))
    .map((c) => `${trimmed(kitchenGrams(Math.abs(c.deltaG)), 2)} g ${c.deltaG < 0 ? 'less' : 'more'} ${c.name}`);
  return `Swap the ${name}${gone.join('')} for ${list}${others.length === 0 ? '' : `, with ${others.join(' and ')}`}`;
}

const COMPONENT_OF = { water: 'water', fat: 'fat', sugar: 'sugars', salt: 'salt' } as const;

function movesOf(
  part: Part,
  ingredient: Ingredient,
  amounts: readonly Amount[],
  changes: readonly Change[],
): readonly Move[] {
  const lines = part.head.ingredients.filter((i) => i.weighed.known && !i.free);
  const before = lines.map((i) => ({ food: i.food, grams: gramsOf(i) }));
  const after = lines.flatMap((i): { readonly food: Food | undefined; readonly grams: number }[] => {
    if (i === ingredient) return amounts.map(({ food, grams }) => ({ food, grams }));
    const deltaG = changes.find((c) => c.line === i)?.deltaG ?? 0;
    return [{ food: i.food, grams: gramsOf(i) + deltaG }];
  });
  for (const { line, food, deltaG } of changes)
    if (line === undefined) after.push({ food, grams: kitchenGrams(deltaG) });
  const [was, is] = [compose(before), compose(after)];
  const moves = (Object.keys(COMPONENT_OF) as (keyof typeof COMPONENT_OF)[]).flatMap((component): Move[] => {
    const [a, b] = [was.totals[COMPONENT_OF[component]], is.totals[COMPONENT_OF[component]]];
    return a.known && b.known ? [{ component, beforeG: a.grams, afterG: b.grams }] : [];
  });
  const eggs = (list: typeof after) =>
    list.reduce((sum, i) => sum + (i.food?.class === 'egg' ? i.grams * freshOf(i.food) : 0), 0);
  return [...moves, { component: 'egg', beforeG: eggs(before), afterG: eggs(after) }];
}

/** A gram of dried egg is that of a fresh one with as much that is not water. */
function freshOf({ id, per100 }: Food): number {
  return id.startsWith('dried') ? (100 - (per100.water ?? 0)) / (100 - EGG_WATER) : 1;
}

/** USDA SR26, NDB 01123. */
const EGG_WATER = 76.15;

/** What a swap moves, a line a component: `water 120 → 123 g`; what moves by less than a hundredth is left out. */
export function movesText(moves: readonly Move[]): string[] {
  return moves
    .filter(({ beforeG, afterG }) => Math.abs(afterG - beforeG) > Math.max(0.05, 0.01 * beforeG))
    .map(({ component, beforeG, afterG }) => `${component} ${trimmed(beforeG, 1)} → ${trimmed(afterG, 1)} g`);
}
