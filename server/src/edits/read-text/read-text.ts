/**
 * Knows how a recipe printed elsewhere, a plain list and a method or schema.org's JSON-LD, becomes a text of the notation.
 * Refuses to guess: what is not understood stays in its place as a comment, and is listed.
 */
import { parseDocument } from '../../notation/document.ts';
import { layout } from '../../notation/layout.ts';
import { readLine } from '../../notation/statements.ts';
import { titleOf } from '../../recipe/title.ts';
import type { World } from '../../recipe/world.ts';
import { printedAmount } from './printed-amount.ts';
import { readIngredient } from './printed-ingredient.ts';
import { type PrintedLine, type PrintedPart, type PrintedRecipe, sortLines } from './printed-recipe.ts';
import { readSteps } from './printed-step.ts';
import { readRecipeJson } from './recipe-json.ts';

export interface NotUnderstood {
  /** In the text that was read, from 1; 1 for all of JSON. */
  readonly line: number;
  readonly printed: string;
  readonly what: 'ingredient' | 'step' | 'yield' | 'line';
}

export interface ReadRecipe {
  readonly text: string;
  readonly missed: readonly NotUnderstood[];
  /** Ingredient lines understood. */
  readonly ingredients: number;
}

/** Longer than any recipe. */
const LONGEST_TEXT = 200_000;

export function readText(text: string, world: World): ReadRecipe {
  const short = text.slice(0, LONGEST_TEXT);
  const printed = readRecipeJson(short) ?? sortLines(short, (line) => readIngredient(line, world) !== undefined);
  return new Writing(world).write(printed);
}

class Writing {
  private readonly lines: string[] = [];
  private readonly missed: NotUnderstood[] = [];
  private ingredients = 0;
  private readonly world: World;

  constructor(world: World) {
    this.world = world;
  }

  write(printed: PrintedRecipe): ReadRecipe {
    this.head(printed);
    const parts = printed.parts.filter((p) => p.ingredients.length + p.steps.length > 0);
    const named = parts.length > 1;
    parts.forEach((part, i) => {
      this.part(part, named ? nameOf(part, i, parts) : '');
    });
    const document = parseDocument(`${this.lines.join('\n')}\n`);
    const text = layout(document)
      .map((line, i) => line + (document.eols[i] ?? ''))
      .join('');
    return { text, missed: this.missed, ingredients: this.ingredients };
  }

  private head({ title, by, source, yields, notes, tags, unknown }: PrintedRecipe): void {
    const name = title === undefined ? '' : titleFor(title.text);
    if (name === '') this.lines.push('recipe Untitled');
    else this.lines.push(`recipe ${name}`);
    if (by !== undefined) this.field('by', by);
    const [made, ...more] = yields;
    if (made !== undefined) this.made(made);
    for (const line of more) this.comment(line.text);
    const plainTags = tags.map((t) => t.replace(/[^\p{L}\p{N} '-]/gu, ' ').trim()).filter((t) => t !== '');
    if (plainTags.length > 0) this.field('tags', plainTags.join(', '));
    for (const note of notes) this.field('note', note);
    if (source !== undefined) this.field('source', source);
    for (const line of unknown) this.miss(line, 'line');
  }

  private field(keyword: string, value: string): void {
    const line = `${keyword} ${oneLine(value).replace(/#/g, '\\#')}`;
    const { statement, faults } = readLine(line);
    if (statement.kind !== 'unread' && faults.length === 0) this.lines.push(`  ${line}`);
    else this.comment(`${keyword}: ${value}`);
  }

  private made(printed: PrintedLine): void {
    const line = yieldLine(printed.text);
    if (line === undefined) this.miss(printed, 'yield');
    else this.lines.push(`  ${line}`);
  }

  private part({ ingredients, steps }: PrintedPart, name: string): void {
    this.lines.push('');
    if (name !== '') this.lines.push(`part ${name}`);
    for (const printed of ingredients) {
      const lines = readIngredient(printed.text, this.world) ?? onlyNamed(printed.text);
      if (lines === undefined) this.miss(printed, 'ingredient');
      else {
        this.ingredients++;
        this.lines.push(...lines.map((l) => `  ${l}`));
      }
    }
    if (ingredients.length > 0 && steps.length > 0) this.lines.push('');
    for (const printed of steps) {
      for (const { line, printed: sentence } of readSteps(printed.text)) {
        if (line === undefined) this.miss({ text: sentence, line: printed.line }, 'step');
        else this.lines.push(`  ${line}`);
      }
    }
  }

  private miss({ text, line }: PrintedLine, what: NotUnderstood['what']): void {
    this.missed.push({ line, printed: text, what });
    this.comment(`not understood: ${text}`);
  }

  private comment(text: string): void {
    this.lines.push(`  # ${oneLine(text)}`);
  }
}

/** A few plain words in a list of ingredients name one, with no amount. */
function onlyNamed(printed: string): readonly string[] | undefined {
  const name = oneLine(printed)
    .replace(/^[-•*·▢□◦–]\s+/, '')
    .replace(/[.,;]$/, '');
  if (!/^[\p{L}][\p{L}' -]{2,40}$/u.test(name) || name.split(' ').length > 4) return undefined;
  const line = `as needed ${name.toLowerCase()}`;
  const { statement, faults } = readLine(line);
  return statement.kind === 'ingredient' && faults.length === 0 ? [line] : undefined;
}

const oneLine = (text: string): string =>
  text
    .replace(/[\u0000-\u001f\u2028\u2029\u0085]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** A title that the notation reads back whole: its brackets, commas and marks fall away until it does. */
function titleFor(printed: string): string {
  const plain = oneLine(printed).slice(0, 120);
  const title = /\p{Ll}/u.test(plain) ? plain : plain.charAt(0) + plain.slice(1).toLowerCase();
  const tries = [title, title.replace(/\s*\([^)]*\)/g, ''), title.replace(/[^\p{L}\p{N} '&-]/gu, ' ')].map((t) =>
    t.replace(/\s+/g, ' ').trim(),
  );
  for (const tried of [...tries, ...tries.map((t) => t.replace(/\bas\b/gi, 'like').replace(/\bfrom\b/gi, 'of'))]) {
    const { statement, faults } = readLine(`recipe ${tried}`);
    if (statement.kind === 'recipe' && faults.length === 0 && titleOf(statement).name?.text === tried) return tried;
  }
  return '';
}

function nameOf(part: PrintedPart, index: number, parts: readonly PrintedPart[]): string {
  const wanted = part.name
    .replace(/[^\p{L}\p{N} '&-]/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const { statement, faults } = readLine(`part ${wanted}`);
  const reads =
    wanted !== '' && statement.kind === 'part' && faults.length === 0 && titleOf(statement).name?.text === wanted;
  if (reads && !parts.slice(0, index).some((p) => p.name === part.name)) return wanted;
  const methods = parts.slice(0, index).filter((p) => p.name === '' && p.ingredients.length === 0).length;
  if (part.ingredients.length === 0) return methods === 0 ? 'method' : `method ${methods + 1}`;
  return index === 0 ? 'main' : `part ${index + 1}`;
}

/** `Makes about 2 dozen cookies`, `Serves 6`, `8 servings`. */
function yieldLine(printed: string): string | undefined {
  const text = oneLine(printed).replace(/[.]$/, '');
  const match =
    /^(makes|serves|feeds|servings?|yields?|yield|portions?|recipe yield|sufficient for|quantity|for)\s*[:—–-]?\s*(?:about |approximately |approx\.? |around |roughly )?/i.exec(
      text,
    );
  const word = (match?.[1] ?? '').toLowerCase();
  const rest = text.slice(match?.[0].length ?? 0);
  const { amount, rest: of } = printedAmount(rest);
  if (amount === undefined) return undefined;
  const whole = of
    .replace(/\([^)]*\)/g, '')
    .replace(/[,;].*$/, '')
    .trim();
  const people =
    /^(?:people|persons|servings?|portions?)?$/i.test(whole) &&
    (word.startsWith('serv') ||
      word === 'feeds' ||
      word.startsWith('portion') ||
      word === 'sufficient for' ||
      word === 'for' ||
      whole !== '');
  const what = people ? 'portions' : whole;
  const line = `yield ${amount} ${what}`.trim();
  const { statement, faults } = readLine(line);
  return statement.kind === 'yield' && statement.amount !== undefined && faults.length === 0 ? line : undefined;
}
