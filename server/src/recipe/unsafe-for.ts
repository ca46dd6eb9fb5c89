/**
 * Knows which lines of a list are not for everyone, for whom not, and as what, from `data/unsafe-for.tsv`; and whom a recipe says it is for.
 * Refuses to know what the steps do.
 */
import unsafeText from '../../data/unsafe-for.tsv';
import type { FoodClass } from '../food/food.ts';
import { once } from '../measure/once.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';
import { keptOn } from '../notation/kept.ts';
import type { Line, Span, TextField, TextNode } from '../notation/tree.ts';
import { type Spoken, spokenIn, type Thing } from '../prose/things.ts';
import { foodOf } from './list/stand-in.ts';
import { foodsIn, isNamedAs, isOneOf, lineWords } from './listed-name.ts';
import type { Ingredient, Part, Recipe } from './model.ts';
import { titleOf } from './names/title.ts';
import { thingsOf } from './things-said.ts';
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
  const add = (said: readonly EaterSaid[]): void => {
    for (const each of said) if (!found.some(({ eater }) => eater === each.eater)) found.push(each);
  };
  for (const { at, line } of outline.recipe === undefined ? outline.head : [outline.recipe, ...outline.head]) {
    const said = saidOnLine(line);
    if (said.length > 0) add(said.map((each) => ({ ...each, line: at })));
  }
  for (const part of parts) add(saidInPart(part));
  return found;
}

const ON_LINE = keptOn<Line, readonly EaterSaid[]>();

/** Of a line above the parts, as if it were the first. */
function saidOnLine(line: Line): readonly EaterSaid[] {
  let said = ON_LINE.get(line);
  if (said === undefined) {
    said = textsOf(line).flatMap((text) =>
      text === undefined ? NOBODY : eatersIn(spokenIn(text.text), { from: text.start, line: 0 }),
    );
    ON_LINE.set(line, said);
  }
  return said;
}

function textsOf({ statement }: Line): readonly (TextNode | undefined)[] {
  switch (statement.kind) {
    case 'recipe':
      return [titleOf(statement).name];
    case 'tags':
      return statement.tags;
    case 'yield':
      return [statement.of];
    case 'text':
      return PROSE.has(statement.field) ? [statement.value] : [];
    default:
      return [];
  }
}

const IN_PART = keptOn<Part, readonly EaterSaid[]>();

function saidInPart(part: Part): readonly EaterSaid[] {
  let said = IN_PART.get(part);
  if (said === undefined) {
    const { index, steps } = part;
    const { named, lines } = part.head.source;
    const name = named ? titleOf(lines[0]?.statement).name : undefined;
    const inName =
      name === undefined ? NOBODY : eatersIn(spokenIn(name.text), { from: name.start, line: 0, part: index });
    const inSteps = steps.flatMap((step) => eatersIn(thingsOf(step), { from: 0, line: step.line, part: index }));
    const onList = part.head.ingredients.flatMap(babyMilkIn);
    said =
      inName.length + inSteps.length + onList.length === 0
        ? NOBODY
        : [...inName, ...inSteps, ...onList.map((each) => ({ ...each, part: index }))];
    IN_PART.set(part, said);
  }
  return said;
}

const NOBODY: readonly EaterSaid[] = [];

/** Milk that nobody else drinks says who eats. */
const babyMilkIn = ({ name, line, nameNode: { start, end } }: Ingredient): readonly EaterSaid[] =>
  spokenIn(name).some(({ is }) => is === 'baby milk') ? [{ eater: 'baby', start, end, line }] : NOBODY;

function eatersIn(
  spoken: readonly Spoken[],
  { from, ...place }: { readonly from: number; readonly line: number; readonly part?: number },
): readonly EaterSaid[] {
  if (spoken.length === 0) return NOBODY;
  return spoken.flatMap(({ is, start, end }) => {
    const eater = EATERS.find((each) => each === is);
    return eater === undefined ? NOBODY : [{ eater, start: from + start, end: from + end, ...place }];
  });
}
