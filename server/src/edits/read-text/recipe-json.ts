/**
 * Knows how a schema.org Recipe in JSON-LD, alone or in a page of HTML, is taken apart into printed lines.
 * Refuses to trust it: whatever is no text is left out.
 */
import type { PrintedLine, PrintedPart, PrintedRecipe } from './printed-recipe.ts';

type Json = Readonly<Record<string, unknown>>;

/** The recipe of a text that is JSON-LD or holds it; undefined where it is none. */
export function readRecipeJson(text: string): PrintedRecipe | undefined {
  const scripts = [...text.matchAll(/<script[^>]*application\/ld\+json[^>]*>([\s\S]*?)<\/script>/gi)].map(
    (m) => m[1] ?? '',
  );
  const sources = scripts.length > 0 ? scripts : /^\s*[[{]/.test(text) ? [text] : [];
  for (const source of sources) {
    const recipe = findRecipe(parse(source), 0);
    if (recipe !== undefined) return takeApart(recipe);
  }
  return undefined;
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Deeper than this no recipe lies. */
const DEEPEST = 8;

function findRecipe(value: unknown, depth: number): Json | undefined {
  if (typeof value !== 'object' || value === null || depth > DEEPEST) return undefined;
  if (!Array.isArray(value)) {
    const node = value as Json;
    if (listOf(node['@type']).some((t) => t === 'Recipe' || t === 'https://schema.org/Recipe')) return node;
  }
  for (const inner of Object.values(value)) {
    const found = findRecipe(inner, depth + 1);
    if (found !== undefined) return found;
  }
  return undefined;
}

function takeApart(recipe: Json): PrintedRecipe {
  const name = textOf(recipe.name);
  const by = listOf(recipe.author)
    .map((a) => textOf(a) ?? textOf((a as Json | null)?.name))
    .find((t) => t !== undefined);
  const made = listOf(recipe.recipeYield)
    .map((y) => textOf(y) ?? quantityOf(y))
    .filter((t) => t !== undefined);
  const ingredients = [...listOf(recipe.recipeIngredient), ...listOf(recipe.ingredients)].flatMap((i) =>
    lineOf(textOf(i)),
  );
  const parts = stepParts(recipe.recipeInstructions);
  const [first, ...more] = parts;
  const onlyMethod = first !== undefined && more.length === 0 && first.name === '';
  return {
    ...(name !== undefined && { title: { text: name, line: 1 } }),
    ...(by !== undefined && { by }),
    yields: longest(made).flatMap(lineOf),
    times: TIMES.flatMap(([key, role]) => timeOf(role, textOf(recipe[key]))),
    notes: [],
    tags: listOf(recipe.keywords)
      .flatMap((k) => (textOf(k) ?? '').split(','))
      .map((t) => t.trim())
      .filter((t) => t !== ''),
    parts: onlyMethod
      ? [{ name: '', ingredients, steps: first.steps }]
      : [{ name: '', ingredients, steps: [] }, ...parts],
    unknown: [],
  };
}

/** `8` and `8 slices` are often both given. */
const longest = (texts: readonly string[]): string[] => [...texts].sort((a, b) => b.length - a.length).slice(0, 1);

const TIMES = [
  ['prepTime', 'prep'],
  ['cookTime', 'cook'],
  ['totalTime', 'total'],
] as const;

/** `prep 1 h 20 min` of a duration of ISO 8601, `PT1H20M`; nothing of none, of months and of what is no duration. */
function timeOf(role: string, duration: string | undefined): string[] {
  const [all, ...counts] = /^P(?:(\d{1,3})D)?(?:T(?:(\d{1,4})H)?(?:(\d{1,4})M)?(?:\d+S)?)?$/.exec(duration ?? '') ?? [];
  if (all === undefined) return [];
  const said = ['d', 'h', 'min'].flatMap((unit, i) =>
    Number(counts[i] ?? 0) > 0 ? [`${Number(counts[i])} ${unit}`] : [],
  );
  return said.length > 0 ? [`${role} ${said.join(' ')}`] : [];
}

function quantityOf(value: unknown): string | undefined {
  if (typeof value === 'number') return String(value);
  if (typeof value !== 'object' || value === null) return undefined;
  const { value: amount, unitText } = value as Json;
  const number = typeof amount === 'number' ? String(amount) : textOf(amount);
  return number === undefined ? undefined : `${number} ${textOf(unitText) ?? ''}`.trim();
}

function stepParts(value: unknown): PrintedPart[] {
  const parts: { readonly name: string; readonly ingredients: []; readonly steps: PrintedLine[] }[] = [];
  // Steps between sections stay between them.
  const loose = (): PrintedLine[] => {
    const last = parts.at(-1);
    if (last?.name === '') return last.steps;
    const steps: PrintedLine[] = [];
    parts.push({ name: '', ingredients: [], steps });
    return steps;
  };
  const add = (step: unknown, section: PrintedLine[] | undefined, depth: number): void => {
    if (depth > DEEPEST) return;
    const text = textOf(step);
    if (text !== undefined) {
      (section ?? loose()).push(...text.split(/\n+/).flatMap(lineOf));
      return;
    }
    if (Array.isArray(step)) for (const inner of step) add(inner, section, depth + 1);
    if (typeof step !== 'object' || step === null || Array.isArray(step)) return;
    const node = step as Json;
    const types = listOf(node['@type']);
    if (types.includes('HowToSection')) {
      const steps: PrintedLine[] = [];
      add(node.itemListElement ?? node.steps, steps, depth + 1);
      parts.push({ name: (textOf(node.name) ?? 'method').toLowerCase().slice(0, 60), ingredients: [], steps });
    } else if (node.itemListElement !== undefined && textOf(node.text) === undefined)
      add(node.itemListElement, section, depth + 1);
    else add(textOf(node.text) ?? textOf(node.description) ?? textOf(node.name), section, depth + 1);
  };
  add(value, undefined, 0);
  return parts;
}

const listOf = (value: unknown): readonly unknown[] =>
  value === undefined || value === null ? [] : Array.isArray(value) ? value : [value];

const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  deg: '°',
  frac12: '½',
  frac14: '¼',
  frac34: '¾',
};

/** Text without the marks of HTML that pages leave in it. */
function textOf(value: unknown): string | undefined {
  if (typeof value !== 'string') return undefined;
  const text = value
    .replace(/<br\s*\/?>|<\/(?:p|li|div)>/gi, '\n')
    .replace(/<[^>]*>/g, '')
    .replace(/&#(\d+);/g, (_, code: string) => (Number(code) < 0x10ffff ? String.fromCodePoint(Number(code)) : ''))
    .replace(/&([a-z]+\d*);/gi, (all, name: string) => ENTITIES[name.toLowerCase()] ?? all)
    .trim();
  return text === '' ? undefined : text;
}

const lineOf = (text: string | undefined): PrintedLine[] =>
  text === undefined || text.trim() === '' ? [] : [{ text: text.trim(), line: 1 }];
