import { replaceSpan } from '../../edits/text-edit.ts';
import { FLESH, type FoodClass } from '../../food/food.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';

interface Values {
  readonly name: string;
  /** Names of foods it could be. */
  readonly near: readonly string[];
  readonly ambiguous: boolean;
  /** What it is held to be for safety, by its noun. */
  readonly noun?: FoodClass;
  readonly raw?: true;
  /** What cannot be worked out without it. */
  readonly grams: boolean;
  readonly free: boolean;
  readonly ingredient: Ingredient;
}

/** `carrots and onions`: to write one of them would leave the other out. */
const isSeveral = (name: string): boolean => /\band\b|&/i.test(name);

export default defineCheck<Values>({
  code: 'unknown-food',
  title: 'A food is not known',
  family: 'reading',
  severity: 'info',
  scope: 'part',
  source: {
    kind: 'publication',
    title: 'USDA National Nutrient Database for Standard Reference, release 26 (2013): the built-in foods',
  },
  explain: `What an ingredient weighs by the cup, and the water, fat, sugar, salt and protein it brings, come from the food book. A name the book does not have leaves a hole: the part's composition is not known, and its formula is judged by the least and the most that the food could bring, so that only what is outside whatever it is gets said. By the cup or the piece it is weighed where it could be one of several foods that all have a weight, or is a milk, a cream, a juice or a stock by its noun.

For safety such a food counts as what its noun is, and raw (\`cockerel fillet\` as poultry); where that is an animal, an egg, a milk or a vegetable this is a warning, else information.

Write one of the near names, or describe the food in a \`food\` block of the house: \`food smoked butter\`, then \`like butter\`. Of what is added to taste only a name that nobody knows is said, as its allergens are not known. Silent for a line that takes from an earlier part by its name (\`200 g poolish\`).`,
  *find(part) {
    for (const ingredient of part.head.ingredients) {
      const { match, node } = ingredient;
      if (
        match.kind === 'food' ||
        isTaken(ingredient.name, part) ||
        node.name === undefined ||
        (ingredient.free && match.kind !== 'unknown') ||
        part.head.notUnderstood.includes(ingredient.line)
      )
        continue;
      const foods = match.kind === 'ambiguous' ? match.foods : match.near;
      const values: Values = {
        name: ingredient.name,
        near: foods.slice(0, 3).map((f) => f.name),
        ambiguous: match.kind === 'ambiguous',
        grams: ingredient.weighed.known,
        free: ingredient.free,
        ...(match.kind === 'unknown' && match.class !== undefined && { noun: match.class }),
        ...(match.kind === 'unknown' && match.raw && { raw: true }),
        ingredient,
      };
      const { start, end } = ingredient.nameNode;
      const at = { line: ingredient.line, start, end };
      yield values.noun !== undefined && STAPLE.has(values.noun) ? { at, values, severity: 'warning' } : { at, values };
    }
  },
  say: ({ name, near, ambiguous, grams, free, noun, raw }) => {
    const choices = near.map((n) => `\`${n}\``).join(', ');
    const effect = free
      ? 'so nobody knows which allergens it brings'
      : grams
        ? 'so what it brings is not worked out'
        : 'so it cannot be weighed';
    const between = grams ? 'so what it brings is only known between them' : effect;
    if (ambiguous && isSeveral(name))
      return {
        message: `\`${name}\` are several foods under one amount, ${between}: write each on a line of its own, with its amount.`,
      };
    if (ambiguous) return { message: `\`${name}\` could be ${choices}, ${between}: write which.` };
    const advice =
      near.length > 0
        ? `did you mean ${choices}? Else describe it in a \`food\` block`
        : `describe it in a \`food\` block: \`food ${name}\`, then \`like\` a food it resembles`;
    const held = noun !== undefined && raw ? ` For safety it counts as raw ${noun}.` : '';
    return { message: `\`${name}\` is not in the food book, ${effect}: ${advice}.${held}` };
  },
  fix: ({ near, ingredient, ambiguous }, { recipe }, at) => {
    const { nameNode: name } = ingredient;
    if (ambiguous && isSeveral(name.text)) return [];
    const entry = recipe.parts.flatMap((p) => p.ledger).find((e) => e.ingredient === ingredient);
    // The steps go on naming it.
    const mentions = (entry?.uses ?? []).map(({ part, line, mention }) => ({
      line: (recipe.partsAt[part] ?? 0) + line,
      mention,
    }));
    return near.map((write) => ({
      title: `Write \`${write}\``,
      effect: 'words' as const,
      edits: [
        replaceSpan(at.line, name, write),
        ...mentions.map(({ line, mention }) => replaceSpan(line, mention, write)),
      ],
    }));
  },
  examples: {
    good: [
      'recipe Loaf\n  yield   1 loaf\npart poolish\n  100 g     bread flour\n  100 g     water\n  do Stir the flour into the water and stand overnight.\npart dough\n  200 g     poolish\n  300 g     bread flour\n  6 g       fine salt\n  do Knead the poolish with the flour and salt.\n',
      'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n',
    ],
    bad: [
      'recipe Slab\n  200 g     rolled oats\n  80 g      buttre\n# "buttre" unknown-food *: butter\n  do Rub the buttre into the oats.\n',
      'recipe Slab\n  200 g     rolled oats\n  80 g      xyloquartz\n# "xyloquartz" unknown-food: food book\n  do Rub the xyloquartz into the oats.\n',
      'recipe Slab\n  200 g     rolled oats\n  to taste  xyloquartz\n# "xyloquartz" unknown-food: which allergens it brings\n  do Toast the oats and strew with the xyloquartz.\n',
      'recipe Steak\n  600 g     cockerel fillet\n# "cockerel fillet" unknown-food warning *: raw poultry\n  20 g      butter\n  do Fry the cockerel fillet in the butter until it reads 75 C.\n',
    ],
  },
});

/** Of these the gap is in what can hurt, or in most of the dish. */
const STAPLE: ReadonlySet<FoodClass> = new Set<FoodClass>([...FLESH, 'egg', 'milk', 'vegetable']);

/** The line takes so much of an earlier part. */
const isTaken = (name: string, { includes }: Part): boolean =>
  includes.some((head) => head.name.toLowerCase() === name.toLowerCase());
