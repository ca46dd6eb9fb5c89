/**
 * Knows what a page for readers says of a recipe, in order: head, times, ingredients as they are used, method, cautions, allergens.
 * Refuses to know how it is laid out, and to promise what nobody cooked.
 */

import type { Finding, Findings } from '../checks/finding.ts';
import { statedSpan } from '../notation/item-amounts.ts';
import type { Span } from '../notation/tree.ts';
import { withoutComment } from '../notation/without-comment.ts';
import { linesNotUnderstood } from '../recipe/list/not-understood.ts';
import type { Ingredient, Part, Recipe, World } from '../recipe/model.ts';
import { calledName } from '../recipe/names/title.ts';
import { readTrials, type Trial } from '../recipe/trials/trials.ts';
import { yieldWords } from '../recipe/yield.ts';
import { cautionsFor } from './cautions.ts';
import { euLabel, type Label, usLabel } from './declared.ts';
import { DAILY_NOTE, figureText } from './label.ts';
import { nutritionOf } from './nutrition.ts';
import { aheadOf, type PageTimes, pageTimes } from './page-times.ts';
import { type PlacedFinding, type Proof, placedIn, proofOf, stateText } from './proof.ts';
import { sayOwnLine } from './report.ts';
import { allergenNames, allergensOf } from './report-allergens.ts';
import type { Report } from './report-shape.ts';
import { saidOf } from './said-of.ts';
import { type Piece, panText, proseText, type Scales, stepPieces, temperatureText } from './step-text.ts';
import { type MeasuresOrder, type PageAmount, pageAmount, prettyAmount, prettyFigures } from './two-measures.ts';

export interface PageOptions {
  readonly measures: MeasuresOrder;
  /** Whose rounding the nutrition figures follow. */
  readonly label: 'us' | 'eu';
  /** The lists as the cook wrote them, where nothing is said, or as the steps take things up. */
  readonly order?: 'as-written' | 'as-used';
  /** Both where nothing is said. */
  readonly scales?: Scales;
  /** Where the words of a step are cut, by its line in the recipe, from 0: what is marked there begins or ends. */
  readonly cutsOn?: (line: number) => readonly number[];
  /** The line of the writer's file, from 1, by that of the recipe, from 0. */
  readonly lineOf?: (line: number) => number;
}

export interface ReaderPage {
  readonly title: string;
  readonly by?: string;
  readonly makes?: string;
  readonly pan?: string;
  readonly oven?: string;
  readonly serve?: string;
  readonly notes: readonly string[];
  readonly source?: string;
  readonly tags: readonly string[];
  readonly proof: Proof;
  readonly state: string;
  readonly times: PageTimes;
  /** What can be done ahead, in the order of the work. */
  readonly ahead: readonly string[];
  readonly sections: readonly PageSection[];
  readonly allergens: Report['allergens'];
  /** Lines that say something which is in no figure of the page, as written, and where: `line 7`. */
  readonly notUnderstood: readonly { readonly where: string; readonly text: string }[];
  readonly cautions: readonly string[];
  readonly nutrition?: Label;
  /** Ingredients that the nutrition figures leave out. */
  readonly notCounted: readonly string[];
}

export interface PageSection {
  /** Empty for a recipe of one nameless part. */
  readonly name: string;
  /** The pan that it alone goes into. */
  readonly pan?: string;
  /** Of its heading, as of an ingredient; absent for a nameless one. */
  readonly line?: number;
  readonly ingredients: readonly PageIngredient[];
  readonly steps: readonly string[];
  /** The same steps in runs. */
  readonly method: readonly PageStep[];
}

export interface PageStep {
  /** As of an ingredient. */
  readonly line: number;
  readonly pieces: readonly Piece[];
}

export interface PageIngredient extends PageAmount {
  /** From 1, in the writer's file: of what comes from another, the line that takes it in. */
  readonly line: number;
  /** Where on its line the amount stands. */
  readonly amountAt?: Span;
  /** No amount is written, and nobody may take as much as he likes. */
  readonly howMuch?: true;
  /** The line is not understood, and stands as it is written. */
  readonly unread?: true;
  readonly name: string;
  readonly preparation?: string;
  /** The amount as bought, before trimming. */
  readonly bought?: string;
  readonly note?: string;
  readonly optional: boolean;
  /** It is the section of that name. */
  readonly section?: string;
}

/** `trials` are those of the recipe's own file; `placed` and `sayLine` say where its writer finds findings and lines. */
export function readerPage(
  recipe: Recipe,
  findings: Findings,
  options: PageOptions,
  trials: readonly Trial[] = readTrials(recipe.outline),
  placed: readonly PlacedFinding[] = placedIn(findings),
  sayLine: (line: number) => string = sayOwnLine,
): ReaderPage {
  const proof = proofOf(recipe, placed, trials);
  const texts = headTexts(recipe);
  const nutrition = nutritionOf(recipe, trials);
  const label = options.label === 'us' ? usLabel(nutrition) : euLabel(nutrition);
  const pan = recipe.pan && panText(recipe.pan.node, lineAt(recipe, recipe.pan.at), options.scales);
  const oven = recipe.oven && temperatureText(recipe.oven.node, 'oven');
  const makes = yieldText(recipe);
  const notUnderstood = linesNotUnderstood(recipe).map(({ at, text }) => ({ where: sayLine(at), text }));
  const all: readonly Finding[] = [...findings.open, ...findings.accepted];
  return {
    title: recipe.name === '' ? 'A recipe without a name' : recipe.name,
    ...given('by', texts('by').map(plain)[0]),
    ...given('makes', makes),
    ...given('pan', pan),
    ...given('oven', oven),
    ...given('serve', texts('serve').map(proseText)[0]),
    notes: texts('note').map(proseText),
    ...given('source', texts('source').map(plain)[0]),
    tags: recipe.outline.head.flatMap(({ line: { statement } }) =>
      statement.kind === 'tags' ? statement.tags.map((t) => t.text) : [],
    ),
    proof,
    state: stateText(proof),
    times: pageTimes(recipe),
    ahead: aheadOf(recipe),
    sections: recipe.parts
      .map((part) => sectionOf(part, recipe, options))
      .filter((s) => s.ingredients.length + s.steps.length > 0),
    allergens: allergensOf(recipe),
    notUnderstood,
    cautions: [...unreadCautions(notUnderstood), ...cautionsFor(all)],
    ...(label !== null && label.energy !== null && { nutrition: label }),
    notCounted: nutrition.notCounted,
  };
}

const given = <K extends string>(key: K, value: string | undefined): { readonly [key in K]?: string } =>
  (value === undefined || value === '' ? {} : { [key]: value }) as { readonly [key in K]?: string };

function headTexts(recipe: Recipe): (field: string) => string[] {
  return (field) =>
    recipe.outline.head.flatMap(({ line: { statement } }) =>
      statement.kind === 'text' && statement.field === field && statement.value !== undefined
        ? [statement.value.text.trim()]
        : [],
    );
}

const lineAt = (recipe: Recipe, at: number): string => recipe.outline.head.find((h) => h.at === at)?.line.text ?? '';

function yieldText(recipe: Recipe): string | undefined {
  const node = recipe.yield?.node;
  if (node?.amount === undefined) return undefined;
  const words = yieldWords(node, lineAt(recipe, recipe.yield?.at ?? -1));
  return words && prettyFigures(words);
}

/** What is said on the page of lines that it shows as written, or not at all. */
function unreadCautions(lines: ReaderPage['notUnderstood']): string[] {
  if (lines.length === 0) return [];
  const named = lines.map(({ where, text }) => `“${text}” (${where})`);
  return [
    `Not all of this recipe is understood, and what follows is in no weight, figure or list of allergens here: ${named.join(', ')}.`,
  ];
}

// Ingredients and steps.

function sectionOf(part: Part, recipe: Recipe, options: PageOptions): PageSection {
  const { head } = part;
  const { order = 'as-written', scales = 'both', lineOf = (line) => line + 1, cutsOn = () => [] } = options;
  const base = recipe.partsAt[part.index] ?? 0;
  const textOf = (line: number) => head.source.lines[line]?.text ?? '';
  const placed = (line: number) => lineOf(base + line);
  const listed = order === 'as-used' ? inOrderOfUse(part) : head.ingredients;
  const items = listed
    .filter(({ line }) => !head.notUnderstood.includes(line))
    .map((ingredient): Item => {
      const { line, node } = ingredient;
      const at = statedSpan(node);
      return {
        at: line,
        line: placed(line),
        ...calledOnPage(ingredient, textOf(line), recipe.world, options.measures),
        ...given('preparation', prettyFigures(plain(saidOf(ingredient, head)))),
        ...given('bought', boughtText(ingredient, textOf(line))),
        ...given('note', node.note && plain(node.note.text)),
        optional: ingredient.optional,
        ...(at !== undefined && { amountAt: at }),
        ...(node.amount === undefined && !ingredient.free && node.takes === undefined && { howMuch: true }),
        ...given('section', ingredient.ofPart === undefined ? undefined : sectionNamed(ingredient.name, recipe)),
      };
    });
  // As written: whoever reads it may understand it.
  const unread = head.notUnderstood.map((line): Item => {
    return {
      at: line,
      line: placed(line),
      first: '',
      name: plain(withoutComment(head.source.lines[line])),
      optional: false,
      unread: true,
    };
  });
  const ingredients = [...items, ...unread];
  if (order === 'as-written') ingredients.sort((a, b) => a.at - b.at);
  const method = part.steps
    .map((step) => ({
      line: placed(step.line),
      pieces: stepPieces(step, textOf(step.line), scales, cutsOn(base + step.line)),
    }))
    .filter(({ pieces }) => pieces.length > 0);
  return {
    name: head.name,
    ...(head.source.named && { line: placed(0) }),
    ...given('pan', head.pan && panText(head.pan.node, textOf(head.pan.line), scales)),
    ingredients: ingredients.map(({ at: _, ...ingredient }) => ingredient),
    steps: method.map(({ pieces }) => pieces.map(({ text }) => text).join('')),
    method,
  };
}

/** `at` is its line in the part, from 0. */
type Item = PageIngredient & { readonly at: number };

/** A part's name as it is written, of what a list calls it. */
const sectionNamed = (called: string, { heads }: Recipe): string | undefined =>
  heads.find(({ name }) => calledName(name) === called)?.name;

/** With the alternatives that stand within the name: `butter or margarine`. */
function nameOnPage({ name, node, others = [] }: Ingredient): string {
  const whole = node.name;
  const within =
    whole !== undefined && others.some((other) => other.name.start >= whole.start && other.name.end <= whole.end);
  return within ? whole.text : name;
}

/** Its amount and its name; what is taken out of something is said as it is written: `juice of 1 lemon`. */
function calledOnPage(
  ingredient: Ingredient,
  line: string,
  world: World,
  order: MeasuresOrder,
): PageAmount & { readonly name: string } {
  const { takes, takesToo, taken, amount, name } = ingredient.node;
  if (takes !== undefined && name !== undefined)
    return { first: '', name: prettyFigures(plain(line.slice(taken?.start ?? 0, name.end))) };
  if (takesToo !== undefined && amount !== undefined && name !== undefined && ingredient.name !== name.text) {
    const words = takesToo.map(({ text }) => text).join(' and ');
    return { first: '', name: prettyFigures(plain(`${words} of ${line.slice(amount.start, name.end)}`)) };
  }
  return { ...pageAmount(ingredient, line, world, order), name: plain(nameOnPage(ingredient)) };
}

function boughtText({ node: { bought } }: Ingredient, line: string): string | undefined {
  return bought?.kind === 'measured' ? prettyAmount(bought, line) : undefined;
}

const plain = (text: string): string => text.replace(/\\(.)/g, '$1').replace(/\s+/g, ' ').trim();

/** As the steps take them up; what only a later part uses comes after, and what none uses last. */
function inOrderOfUse(part: Part): readonly Ingredient[] {
  const first = (index: number): number => {
    const use = part.ledger[index]?.uses[0];
    return use === undefined
      ? Number.MAX_SAFE_INTEGER
      : (use.part - part.index) * 1e9 + use.step * 1e5 + Math.min(use.mention.start, 99_999);
  };
  return part.head.ingredients
    .map((ingredient, index) => ({ ingredient, at: first(index), index }))
    .sort((a, b) => a.at - b.at || a.index - b.index)
    .map(({ ingredient }) => ingredient);
}

// Words that every layout uses.

/** `1 h 25 min`, `2 d 3 h`. */
export function minutesText(total: number): string {
  const [days, hours, rest] = [Math.floor(total / 1440), Math.floor((total % 1440) / 60), Math.round(total % 60)];
  const words = [days > 0 ? `${days} d` : '', hours > 0 ? `${hours} h` : '', rest > 0 ? `${rest} min` : ''];
  return words.filter((w) => w !== '').join(' ') || '0 min';
}

export interface HeadFact {
  readonly name: string;
  readonly value: string;
  /** What is worth less ink. */
  readonly more?: string;
}

/** The facts under the title. */
export function headFacts(page: ReaderPage): readonly HeadFact[] {
  const { times } = page;
  const facts: [string, string | undefined][] = [
    ['Makes', page.makes],
    ['Time', times.totalMin === null ? undefined : minutesText(times.totalMin)],
    ['Pan', page.pan],
    ...page.sections.map(({ name, pan }): [string, string | undefined] => [
      name === '' ? 'Pan' : `Pan of the ${name}`,
      pan,
    ]),
    ['Oven', page.oven],
    ['Serve', page.serve],
  ];
  return facts.flatMap(([name, value]) =>
    value === undefined ? [] : [{ name, value, ...(name === 'Time' && given('more', timeText(times))) }],
  );
}

function timeText({ totalMin, waitingMin, stated }: PageTimes): string {
  const waits = totalMin !== null && waitingMin !== null && waitingMin > 0 && waitingMin < totalMin;
  return [
    ...(stated ? [] : ['as far as the steps say']),
    ...(waits ? [`${minutesText(waitingMin)} of it in the oven or waiting`] : []),
  ].join(', ');
}

/** A fact in one line of text. */
export const factText = ({ value, more }: HeadFact): string => (more === undefined ? value : `${value}, ${more}`);

/** One ingredient in words: `150 g (1¼ cups) plain flour, sifted (strong)`, `3 large eggs (about 150 g)`. */
export function ingredientText(i: PageIngredient): string {
  const { amount, rest } = ingredientWords(i);
  return amount === '' ? rest : `${amount} ${rest}`;
}

/** `to taste` reads better behind. */
export const isFree = ({ first }: PageIngredient): boolean => first === 'to taste' || first === 'as needed';

/** What stands behind its name, and what it is called. */
export function nameAndRest(i: PageIngredient): { readonly name: string; readonly rest: string } {
  const rest = [
    i.preparation === undefined ? '' : `, ${i.preparation}`,
    i.bought === undefined ? '' : ` (from ${i.bought})`,
    i.note === undefined ? '' : ` (${i.note})`,
    isFree(i) ? `, ${i.first}` : '',
    i.optional ? ', optional' : '',
  ].join('');
  return { name: i.name, rest };
}

/** Its amount, and what follows it. */
export function ingredientWords(i: PageIngredient): { readonly amount: string; readonly rest: string } {
  const { name, rest } = nameAndRest(i);
  const second = i.second === undefined ? '' : ` (${i.second})`;
  if (isFree(i)) return { amount: '', rest: name + rest };
  return i.counted ? { amount: i.first, rest: name + second + rest } : { amount: i.first + second, rest: name + rest };
}

/** Allergens by both lists, and what is not known: a line each. */
export function allergenLines({ allergens }: ReaderPage): string[] {
  const { us, eu, may_contain: may, check_label: labels, not_known: unknown } = allergens;
  const none = unknown.length === 0 ? 'none of the listed allergens found' : 'none found in what is known';
  const list = (names: readonly string[]) => (names.length === 0 ? none : names.join(', '));
  return [
    `Contains (United States list): ${list(us)}.`,
    `Contains (European Union list): ${list(eu)}.`,
    ...(may.us.length === 0 ? [] : [`May contain (United States list): ${may.us.join(', ')}.`]),
    ...(may.eu.length === 0 ? [] : [`May contain (European Union list): ${may.eu.join(', ')}.`]),
    ...(labels.length === 0
      ? []
      : [`Check the label: ${labels.map((label) => `${label.food} (${allergenNames(label)})`).join('; ')}.`]),
    ...(unknown.length === 0 ? [] : [`Not known for: ${unknown.join(', ').replace(/\.+$/, '')}.`]),
    'Read every label: foods of one name differ by maker.',
  ];
}

/** The nutrition figures as names and texts, with what they are of. */
export function nutritionLines(
  page: ReaderPage,
):
  | { readonly title: string; readonly rows: readonly (readonly [string, string])[]; readonly note?: string }
  | undefined {
  const label = page.nutrition;
  if (label === undefined) return undefined;
  const rows = [
    ['Energy', label.energy],
    ['Fat', label.fat],
    ['of which saturates', label.saturates],
    ['Carbohydrate', label.carbohydrate],
    ['of which sugars', label.sugars],
    ['Fibre', label.fibre],
    ['Protein', label.protein],
    ['Salt', label.salt],
    ['Sodium', label.sodium],
  ] as const;
  const known = rows.flatMap(([name, figure]) => (figure === null ? [] : [[name, figureText(figure)] as const]));
  const notes = [
    ...(rows.some(([, figure]) => figure?.daily_percent !== undefined) ? [`${DAILY_NOTE}.`] : []),
    ...(page.notCounted.length === 0 ? [] : [`Not counted: ${page.notCounted.join(', ')}.`]),
  ];
  return {
    title: `Worked out for ${label.of}, ${label.basis}`,
    rows: known,
    ...(notes.length > 0 && { note: notes.join(' ') }),
  };
}
