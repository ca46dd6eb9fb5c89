/**
 * Knows how a recipe printed elsewhere, a plain list and a method or schema.org's JSON-LD, becomes a text of the notation.
 * Refuses to guess: what is not understood stays in its place as a comment, and is listed.
 */
import { parseDocument } from '../../notation/document.ts';
import { layout } from '../../notation/layout.ts';
import { readLine } from '../../notation/statements.ts';
import type { World } from '../../recipe/model.ts';
import { titleOf } from '../../recipe/names/title.ts';
import { plainly, withoutMarks } from './marks.ts';
import { goesOn, readIngredient } from './printed-ingredient.ts';
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

/** Longer than any recipe; what stands behind is not read. */
export const LONGEST_TEXT = 200_000;

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

  private head({ title, by, source, yields, times, notes, tags, unknown }: PrintedRecipe): void {
    const name = title === undefined ? '' : titleFor(title.text);
    if (name === '') this.lines.push('recipe Untitled');
    else this.lines.push(`recipe ${name}`);
    if (by !== undefined) this.field('by', by);
    const [made, ...more] = yields;
    if (made !== undefined) this.made(made);
    for (const line of more) this.comment(line.text);
    const stated = times.flatMap((printed) => statedTime(printed) ?? []);
    if (stated.length > 0) this.field('time', stated.join(', '));
    const plainTags = tags.map((t) => t.replace(/[^\p{L}\p{N} '-]/gu, ' ').trim()).filter((t) => t !== '');
    if (plainTags.length > 0) this.field('tags', plainTags.join(', '));
    for (const time of times) if (statedTime(time) === undefined) this.field('note', time);
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
    for (const { printed, line } of this.read(ingredients)) {
      if (line === undefined) this.miss(printed, 'ingredient');
      else {
        this.ingredients++;
        this.lines.push(`  ${line}`);
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

  /** Each printed line as the notation has it; one that ends in `or` with the next, where they are understood together. */
  private read(
    printed: readonly PrintedLine[],
  ): { readonly printed: PrintedLine; readonly line: string | undefined }[] {
    const read: { readonly printed: PrintedLine; readonly line: string | undefined }[] = [];
    for (let i = 0; i < printed.length; i++) {
      const one = printed[i] as PrintedLine;
      const next = goesOn(one.text) ? printed[i + 1] : undefined;
      const joined = next && readIngredient(`${one.text} ${withoutMarks(next.text)}`, this.world);
      if (joined !== undefined) i++;
      read.push({ printed: one, line: joined ?? readIngredient(one.text, this.world) });
    }
    return read;
  }

  private miss({ text, line }: PrintedLine, what: NotUnderstood['what']): void {
    this.missed.push({ line, printed: text, what });
    this.comment(`not understood: ${text}`);
  }

  private comment(text: string): void {
    this.lines.push(`  # ${oneLine(text)}`);
  }
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

/** `Makes about 2 dozen cookies` and `8 servings` as they stand; what only a printed page says, behind `yield`. */
function yieldLine(printed: string): string | undefined {
  const text = plainly(printed).replace(/[.]$/, '');
  const bare = text.replace(
    /^(?:recipe yield|yield|quantity|(?:sufficient|enough) for|for|cuts into)\s*[:—–-]?\s*/i,
    '',
  );
  return [text, `yield ${bare}`, `serves ${bare}`].find((line) => {
    const { statement, faults, comment } = readLine(line);
    return statement.kind === 'yield' && statement.amount !== undefined && faults.length === 0 && comment === undefined;
  });
}

/** `prep 20 mins` of `PREP: 20 MINS`; undefined where it does not read as a time. */
function statedTime(printed: string): string | undefined {
  const said = plainly(printed)
    .replace(/^time\b/i, '')
    .replace(/:|(?<!\d\s?)[—–-]|\.(?!\d)/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();
  const { statement, faults, comment } = readLine(`time ${said}`);
  return statement.kind === 'time' && statement.stated.length > 0 && faults.length === 0 && comment === undefined
    ? said
    : undefined;
}
