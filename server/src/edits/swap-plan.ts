/**
 * Knows what is written in the place of a food that is swapped, and what other lines give or take so that the formula keeps what it had.
 * Refuses a swap that the rest of the list cannot make good.
 */
import { type Component, shareOf } from '../food/composition.ts';
import type { Adjustment, Equivalent, StandIn } from '../food/equivalents.ts';
import type { Food } from '../food/food.ts';
import { likelyGrams } from '../food/weigh.ts';
import { kitchenGrams, numberText } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import type { Ingredient, Part, Recipe } from '../recipe/model.ts';

export interface Amount {
  readonly food: Food;
  readonly name: string;
  readonly grams: number;
  /** As written: `120 g`, `4 large`. */
  readonly text: string;
}

export interface Change {
  readonly food: Food;
  readonly name: string;
  /** Undefined where the list has no such line yet. */
  readonly line: Ingredient | undefined;
  readonly deltaG: number;
}

export const gramsOf = ({ weighed }: Ingredient): number => (weighed.known ? likelyGrams(weighed) : 0);

/** What is written in the place of the ingredient, and what other lines give or take; undefined where it does not come out. */
export function planOf(
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

export const isUsedUp = ({ line, deltaG }: Change): boolean =>
  line !== undefined && gramsOf(line) + deltaG < 0.05 * gramsOf(line);

export const COMPONENT_OF = { water: 'water', fat: 'fat', sugar: 'sugars', salt: 'salt' } as const;
