/**
 * Knows which lines of a list are not for everyone, for whom not, and as what, from `data/unsafe-for.tsv`; and whom a recipe says it is for.
 * Refuses to know what the steps do.
 */
import unsafeText from '../../data/unsafe-for.tsv';
import type { FoodClass } from '../food/food.ts';
import { once } from '../measure/once.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';
import { keptOn } from '../notation/kept.ts';
import type { Span, TextField } from '../notation/tree.ts';
import { type Spoken, spokenIn, type Thing } from '../prose/things.ts';
import type { Ingredient } from './ingredient.ts';
import { foodsIn, isNamedAs, isOneOf, lineWords } from './listed-name.ts';
import type { Recipe } from './recipe.ts';
import { foodOf } from './stand-in.ts';
import { thingsOf } from './things-said.ts';
import { titleOf } from './title.ts';
import { wordsOf } from './words.ts';

/** Those who eat, as far as rows tell them apart. */
const EATERS = ['baby', 'toddler', 'child', 'pregnant', 'frail'] as const satisfies readonly Thing[];
export type Eater = (typeof EATERS)[number];

/** As what it is not for them. */
const STATES = ['any', 'whole', 'rounds', 'unheated', 'soft', 'rare'] as const;
export type HarmfulAs = (typeof STATES)[number];

export interface Hazard {
  readonly hazard: string;
  readonly who: ReadonlySet<Eater>;
  readonly state: HarmfulAs;
  readonly level: 'error' | 'warning';
  readonly why: string;
  readonly remedy: string;
  readonly source: string;
}

interface Row extends Hazard {
  readonly classes: ReadonlySet<string>;
  readonly foods: ReadonlySet<string>;
  readonly names: readonly (readonly string[])[];
  readonly marks: ReadonlySet<string>;
  readonly not: ReadonlySet<string>;
}

const ROWS = once((): readonly Row[] =>
  rowsIn(unsafeText).map(
    ([
      hazard = '',
      who,
      classes,
      foods,
      words,
      marks,
      not,
      state = '',
      level,
      why = '',
      remedy = '',
      source = '',
    ]): Row => ({
      hazard,
      who: new Set(EATERS.filter((eater) => wordsIn(who).includes(eater))),
      classes: new Set(wordsIn(classes)),
      foods: new Set(wordsIn(foods)),
      names: wordsIn(words).map(wordsOf),
      marks: new Set(wordsIn(marks)),
      not: new Set(wordsIn(not)),
      state: STATES.find((each) => each === state) ?? 'any',
      level: level === 'warning' ? 'warning' : 'error',
      why,
      remedy,
      source,
    }),
  ),
);

const NOTHING_BEHIND: ReadonlySet<string> = new Set();
const KEPT = keptOn<Ingredient, readonly Hazard[]>();

/** What an ingredient can do to some, as it is listed. */
export function hazardsOf(ingredient: Ingredient): readonly Hazard[] {
  let kept = KEPT.get(ingredient);
  if (kept === undefined) {
    kept = ROWS().filter((row) => isOfRow(ingredient, row));
    KEPT.set(ingredient, kept);
  }
  return kept;
}

function isOfRow(ingredient: Ingredient, { classes, foods, names, marks, not }: Row): boolean {
  const of: FoodClass | undefined = foodOf(ingredient)?.class;
  const isTaken =
    (of !== undefined && classes.has(of)) ||
    foodsIn(ingredient).some((food) => classes.has(food.class)) ||
    isOneOf(ingredient, foods) ||
    isNamedAs(ingredient, names, NOTHING_BEHIND);
  if (!isTaken) return false;
  const line = lineWords(ingredient);
  return !line.some((word) => not.has(word)) && (marks.size === 0 || line.some((word) => marks.has(word)));
}

/** Someone whom the recipe is for, and where it says so: in its head, by the line of the document, or in a part. */
export interface EaterSaid extends Span {
  readonly eater: Eater;
  readonly part?: number;
  readonly line: number;
}

const SAID = keptOn<Recipe, readonly EaterSaid[]>();
const PROSE: ReadonlySet<TextField> = new Set(['note', 'serve']);

/** Each of those whom the recipe says it is for, where it says so first. */
export function eatersSaid(recipe: Recipe): readonly EaterSaid[] {
  let kept = SAID.get(recipe);
  if (kept === undefined) {
    kept = find(recipe);
    SAID.set(recipe, kept);
  }
  return kept;
}

function find({ outline, parts }: Recipe): readonly EaterSaid[] {
  const found: EaterSaid[] = [];
  const add = (spoken: readonly Spoken[], from: number, line: number, part?: number): void => {
    for (const { is, start, end } of spoken) {
      const eater = EATERS.find((each) => each === is);
      if (eater === undefined || found.some((other) => other.eater === eater)) continue;
      found.push({ eater, line, start: from + start, end: from + end, ...(part !== undefined && { part }) });
    }
  };
  for (const { at, line } of outline.recipe === undefined ? outline.head : [outline.recipe, ...outline.head]) {
    const { statement } = line;
    const texts =
      statement.kind === 'recipe'
        ? [titleOf(statement).name]
        : statement.kind === 'tags'
          ? statement.tags
          : statement.kind === 'yield'
            ? [statement.of]
            : statement.kind === 'text' && PROSE.has(statement.field)
              ? [statement.value]
              : [];
    for (const text of texts) if (text !== undefined) add(spokenIn(text.text), text.start, at);
  }
  for (const part of parts) {
    const { named, lines } = part.head.source;
    const name = named ? titleOf(lines[0]?.statement).name : undefined;
    if (name !== undefined) add(spokenIn(name.text), name.start, 0, part.index);
    for (const step of part.steps) add(thingsOf(step), 0, step.line, part.index);
  }
  return found;
}
