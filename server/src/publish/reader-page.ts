/**
 * Knows what a page for readers says of a recipe, in order: head, times, ingredients as they are used, method, cautions, allergens.
 * Refuses to know how it is laid out, and to promise what nobody cooked.
 */

import type { Finding, Findings } from '../checks/finding.ts';
import { linesNotUnderstood } from '../recipe/list/not-understood.ts';
import type { Ingredient, Part, Recipe, World } from '../recipe/model.ts';
import { calledName } from '../recipe/names/title.ts';
import { readTrials, type Trial } from '../recipe/trials/trials.ts';
import { yieldWords } from '../recipe/yield.ts';
import { cautionsFor } from './cautions.ts';
import { DAILY_NOTE, figureText } from './label.ts';
import { euLabel, type Label, nutritionOf, usLabel } from './nutrition.ts';
import { aheadOf, type PageTimes, pageTimes } from './page-times.ts';
import { type PlacedFinding, type Proof, placedIn, proofOf, stateText } from './proof.ts';
import { sayOwnLine } from './report.ts';
import { allergenNames, allergensOf } from './report-allergens.ts';
import type { Report } from './report-shape.ts';
import { saidOf } from './said-of.ts';
import { panText, proseText, stepText, temperatureText } from './step-text.ts';
import { type MeasuresOrder, type PageAmount, pageAmount, prettyAmount, prettyFigures } from './two-measures.ts';

export interface PageOptions {
  readonly measures: MeasuresOrder;
  /** Whose rounding the nutrition figures follow. */
  readonly label: 'us' | 'eu';
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
  /** Rests and make-ahead, in the order of the work. */
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
  readonly ingredients: readonly PageIngredient[];
  readonly steps: readonly string[];
}

export interface PageIngredient extends PageAmount {
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
  const pan = recipe.pan && panText(recipe.pan.node, lineAt(recipe, recipe.pan.at));
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
      .map((part) => sectionOf(part, recipe, options.measures))
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

function sectionOf(part: Part, recipe: Recipe, order: MeasuresOrder): PageSection {
  const { head } = part;
  const lineOf = (line: number) => head.source.lines[line]?.text ?? '';
  const understood = inOrderOfUse(part).filter(({ line }) => !head.notUnderstood.includes(line));
  return {
    name: head.name,
    ...given('pan', head.pan && panText(head.pan.node, lineOf(head.pan.line))),
    ingredients: [
      ...understood.map((ingredient) => ({
        ...calledOnPage(ingredient, lineOf(ingredient.line), recipe.world, order),
        ...given('preparation', prettyFigures(plain(saidOf(ingredient, head)))),
        ...given('bought', boughtText(ingredient, lineOf(ingredient.line))),
        ...given('note', ingredient.node.note && plain(ingredient.node.note.text)),
        optional: ingredient.optional,
        ...given('section', ingredient.ofPart === undefined ? undefined : sectionNamed(ingredient.name, recipe)),
      })),
      // As written: whoever reads it may understand it.
      ...head.notUnderstood.map((line) => ({ first: '', name: plain(lineOf(line)), optional: false })),
    ],
    steps: part.steps.map((step) => stepText(step, lineOf(step.line))).filter((text) => text !== ''),
  };
}

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

/** The facts under the title, each a name and what it is. */
export function headFacts(page: ReaderPage): readonly (readonly [string, string])[] {
  const { times } = page;
  const facts: [string, string | undefined][] = [
    ['Makes', page.makes],
    ['Time', timeText(times)],
    ['Pan', page.pan],
    ...page.sections.map(({ name, pan }): [string, string | undefined] => [
      name === '' ? 'Pan' : `Pan of the ${name}`,
      pan,
    ]),
    ['Oven', page.oven],
    ['Serve', page.serve],
  ];
  return facts.flatMap(([name, value]) => (value === undefined ? [] : [[name, value] as const]));
}

function timeText({ totalMin, waitingMin, stated }: PageTimes): string | undefined {
  if (totalMin === null) return undefined;
  const waits = waitingMin !== null && waitingMin > 0 && waitingMin < totalMin;
  const waiting = waits ? `, ${minutesText(waitingMin)} of it in the oven or waiting` : '';
  return `${minutesText(totalMin)}${stated ? '' : ' as far as the steps say'}${waiting}`;
}

/** One ingredient in words: `150 g (1¼ cups) plain flour, sifted (strong)`. */
export function ingredientText(i: PageIngredient): string {
  const { amount, rest } = ingredientWords(i);
  return amount === '' ? rest : `${amount} ${rest}`;
}

/** Its amount, and what follows it. */
export function ingredientWords(i: PageIngredient): { readonly amount: string; readonly rest: string } {
  const amount = i.second === undefined ? i.first : `${i.first} (${i.second})`;
  // `to taste` reads better behind.
  const free = /^(?:to taste|as needed)$/.test(i.first);
  const rest = [
    i.name,
    i.preparation === undefined ? '' : `, ${i.preparation}`,
    i.bought === undefined ? '' : ` (from ${i.bought})`,
    i.note === undefined ? '' : ` (${i.note})`,
    free ? `, ${i.first}` : '',
    i.optional ? ', optional' : '',
  ].join('');
  return { amount: free ? '' : amount, rest };
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
