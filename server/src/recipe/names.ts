/**
 * Knows every name a sentence may mention: the ingredients and the parts, by full name, head noun and food.
 * Refuses to know amounts, so that changing one leaves the mentions as they are.
 */
import type { Ingredient } from './ingredient.ts';
import { ADJECTIVES, FUNCTION_WORDS, wordsOf } from './words.ts';

export interface IngredientRef {
  readonly part: number;
  /** Index in the part's ingredients. */
  readonly ingredient: number;
}

/** What a run of words may name. `weak` names count only where nothing else is named so. */
export interface NameKey {
  readonly words: readonly string[];
  readonly full: boolean;
  readonly weak: boolean;
  readonly part: number;
  /** Absent when the part itself is named. */
  readonly ingredient?: number;
}

/** The names of one part; one object for equal names, so that it can key caches. */
export interface PartNames {
  readonly signature: string;
  readonly name: string;
  readonly ingredients: readonly { readonly name: string; readonly foodNames: readonly string[] }[];
}

const INTERNED = new Map<string, WeakRef<PartNames>>();

export function partNames(name: string, ingredients: readonly Ingredient[]): PartNames {
  // Preparation and note count too: a step may speak of what they name.
  const signature = `${name}\n${ingredients.map(({ name: of, food, node }) => [of, food?.id, node.preparation?.text, node.note?.text].join('\t')).join('\n')}`;
  const known = INTERNED.get(signature)?.deref();
  if (known !== undefined) return known;
  const names: PartNames = {
    signature,
    name,
    ingredients: ingredients.map((i) => ({
      name: i.name,
      foodNames: i.food === undefined ? [] : [i.food.name, ...i.food.names],
    })),
  };
  if (INTERNED.size > 5000) INTERNED.clear();
  INTERNED.set(signature, new WeakRef(names));
  return names;
}

/** The names that the steps of one part can mention: its own and those of the parts before it. */
export class NameIndex {
  private readonly byFirst = new Map<string, NameKey[]>();
  private readonly weakByFirst = new Map<string, NameKey[]>();

  constructor(parts: readonly PartNames[]) {
    parts.forEach((part, p) => {
      this.addPart(part, p);
    });
  }

  /** Keys that begin with the word and belong to parts up to the given one. */
  beginning(word: string, upTo: number): readonly NameKey[] {
    return (this.byFirst.get(word) ?? NONE).filter((k) => k.part <= upTo);
  }

  beginningWeakly(word: string, upTo: number): readonly NameKey[] {
    return (this.weakByFirst.get(word) ?? NONE).filter((k) => k.part <= upTo);
  }

  has(word: string): boolean {
    return this.byFirst.has(word) || this.weakByFirst.has(word);
  }

  private addPart(part: PartNames, p: number): void {
    const words = wordsOf(part.name);
    for (const run of suffixes(words))
      this.add({ words: run, full: run.length === words.length, weak: false, part: p });
    part.ingredients.forEach(({ name, foodNames }, ingredient) => {
      const full = wordsOf(name);
      for (const run of suffixes(full))
        this.add({ words: run, full: run.length === full.length, weak: false, part: p, ingredient });
      const of = full.indexOf('of');
      if (of > 0) this.add({ words: full.slice(0, of), full: false, weak: false, part: p, ingredient });
      const or = full.indexOf('or');
      if (or > 0)
        for (const run of suffixes(full.slice(0, or)))
          this.add({ words: run, full: false, weak: false, part: p, ingredient });
      // Eggs are separated in the steps: their yolks and whites are still the eggs.
      if (full.at(-1) === 'egg')
        for (const half of ['yolk', 'white']) this.add({ words: [half], full: false, weak: true, part: p, ingredient });
      const vocabulary = new Set<string>();
      for (const other of foodNames) {
        const run = wordsOf(other);
        for (const word of run) vocabulary.add(word);
        this.add({ words: run, full: false, weak: true, part: p, ingredient });
      }
      for (const word of full.slice(0, -1)) {
        if (vocabulary.has(word) && !ADJECTIVES.has(word) && !FUNCTION_WORDS.has(word))
          this.add({ words: [word], full: false, weak: true, part: p, ingredient });
      }
    });
  }

  private add(key: NameKey): void {
    const [first] = key.words;
    if (first === undefined) return;
    const map = key.weak ? this.weakByFirst : this.byFirst;
    const keys = map.get(first);
    if (keys === undefined) map.set(first, [key]);
    else keys.push(key);
  }
}

const NONE: readonly NameKey[] = [];

/** The name, then what is left of it from each later word on: `dark brown sugar`, `brown sugar`, `sugar`. */
const suffixes = (words: readonly string[]): string[][] => words.map((_, i) => words.slice(i));
