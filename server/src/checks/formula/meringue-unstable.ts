import type { FoodClass } from '../../food/food.ts';
import type { Craft } from '../../prose/event.ts';
import { deed, does, nameSpeaksOf } from '../../recipe/journey/deeds.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { sugarSolids, yolkShare } from '../../recipe/measures/shares.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';
import { type BandValues, ingredientPlace, mostBringing, outsideBand, sayBand } from './band.ts';
import { mendAmount } from './mend.ts';

type Values =
  | { readonly what: 'sugar'; readonly band: BandValues }
  | { readonly what: 'yolk' | 'fat'; readonly name: string };

export default defineCheck<Values>({
  code: 'meringue-unstable',
  title: 'A foam of egg white will weep, fall or not whip up',
  family: 'formula',
  severity: 'warning',
  scope: 'part',
  measures: ['sugar per white'],
  source: {
    kind: 'publication',
    title: 'published formulas (Farmer 1910, Library of Cookery 1918-25 and others), by the band of each kind',
  },
  explain: `**What it computes.** Sugar per egg white by weight: 0.5 to 1 for a soft meringue on a pie, 1.5 to 2.2 for one that dries hard, 0.4 to 1 in an angel food cake. It also looks for what the white cannot be whipped with: yolk, whole egg, butter, oil, cream.

**Why it matters.** Sugar binds the water of the white. With too little the foam drains and weeps; with too much it whips up slowly and stays heavy. A trace of yolk or fat takes the place of the protein on the bubbles, and the foam does not rise.

**What to do.** Bring the sugar into the band. Keep yolk away from the white, and fold fat in at the end only.

**Silent** for a whole egg that is separated, for nuts, cocoa and chocolate that are folded in, and where a weight is not known.`,
  *find(part) {
    if (part.head.kind?.measures.some((m) => m.measure === 'sugar per white') !== true) return;
    for (const side of ['low', 'high'] as const)
      for (const found of outsideBand(part, 'sugar per white', side, () => ingredientPlace(mainSugar(part))))
        yield { ...found, values: { what: 'sugar', band: found.values } };
    if (contentsOf(part) === part.head.ingredients) yield* spoilers(part);
  },
  say: (values) =>
    values.what === 'sugar'
      ? sayBand(values.band)
      : values.what === 'yolk'
        ? { message: `Yolk in the ${values.name} keeps the white from whipping up: use egg whites alone.` }
        : { message: `Fat keeps the white from whipping up: fold the ${values.name} in at the end, if at all.` },
  fix: (values, scene) => (values.what !== 'sugar' ? [] : mendAmount(values.band, scene, mainSugar)),
  examples: {
    good: [
      'recipe Meringues\npart meringue as meringue\n  4 large   egg whites\n  240 g     caster sugar\n  do Whisk the egg whites and rain in the sugar until stiff and glossy.\n  do Bake at 100 C for 1 h 30 min until dry.\n',
      'recipe Nut meringue\npart meringue as meringue\n  150 g     egg whites\n  280 g     caster sugar\n  100 g     hazelnuts, roasted and chopped\n  do Whisk the egg whites and rain in the sugar until stiff.\n  do Fold in the hazelnuts.\n  do Bake at 120 C for 1 h until dry.\n',
    ],
    bad: [
      {
        text: 'recipe Meringues\npart meringue as meringue\n  4 large   egg whites\n  25 g      caster sugar\n# "caster sugar" meringue-unstable *: weeps and falls\n  do Whisk the egg whites and rain in the sugar until stiff.\n  do Bake at 100 C for 1 h 30 min until dry.\n',
        after: {
          'Write 67 g caster sugar, 42 g more':
            'recipe Meringues\npart meringue as meringue\n  4 large   egg whites\n  67 g      caster sugar\n  do Whisk the egg whites and rain in the sugar until stiff.\n  do Bake at 100 C for 1 h 30 min until dry.\n',
        },
      },
      'recipe Meringues\npart meringue as meringue\n  4 large   egg whites\n  1 large   egg yolk\n# "egg yolk" meringue-unstable: keeps the white from whipping up\n  240 g     caster sugar\n  do Whisk the egg whites with the egg yolk and rain in the sugar until stiff.\n  do Bake at 100 C for 1 h 30 min until dry.\n',
    ],
  },
});

const mainSugar = (part: Part): Ingredient | undefined => mostBringing(part, sugarSolids);

/** Yolk is a fault; other fat is most often folded in, and asked about. */
function* spoilers(part: Part): Generator<Found<Values>> {
  for (const ingredient of part.head.ingredients) {
    const { food, node, name } = ingredient;
    const at = ingredientPlace(ingredient);
    if (food === undefined || at === undefined || ingredient.optional) continue;
    const separated = nameSpeaksOf(node.preparation?.text ?? '', 'egg half');
    if (yolkShare(food) > 0 && !separated) yield { at, values: { what: 'yolk', name } };
    else if (FATTY.has(food.class) && !isFolded(ingredient, part))
      yield { at, values: { what: 'fat', name }, severity: 'info' };
  }
}

const FATTY: ReadonlySet<FoodClass> = new Set(['fat', 'oil', 'cream']);

/** It goes in when the foam is made, or on something else. */
const LATER = deed(
  ({ act, craft }) =>
    act === 'eat' ||
    act === 'cover' ||
    act === 'ready' ||
    (act === 'put' && craft !== 'line') ||
    (craft !== undefined && ON_SOMETHING.has(craft)),
);
const ON_SOMETHING: ReadonlySet<Craft> = new Set(['fold', 'spread', 'grease', 'brush', 'line', 'pipe', 'top', 'layer']);

function isFolded(ingredient: Ingredient, part: Part): boolean {
  const uses = part.ledger.find((e) => e.ingredient === ingredient)?.uses ?? [];
  return uses.every((u) => {
    const step = u.part === part.index ? part.steps[u.step] : undefined;
    return step === undefined || does(step, LATER);
  });
}
