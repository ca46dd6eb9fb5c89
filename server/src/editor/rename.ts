/**
 * Knows how an ingredient or part is given another name: in the list, in the steps in the form each has there, in trials and swaps.
 * Refuses, with the reason, a name that would not be read back as written.
 */
import { replaceSpan, type TextEdit } from '../edits/text-edit.ts';
import type { Position } from '../notation/document.ts';
import { readLine } from '../notation/statements.ts';
import type { Statement } from '../notation/tree.ts';
import { bindBare } from '../recipe/list/bare-line.ts';
import { bindIngredients } from '../recipe/list/ingredient.ts';
import type { Ingredient, World } from '../recipe/model.ts';
import { titleOf } from '../recipe/names/title.ts';
import { sameName, singular, wordsOf } from '../recipe/words.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { type Named, namedAt, type Occurrence, occurrences } from './occurrences.ts';
import type { Place } from './place.ts';

export type Renamed =
  | { readonly ok: true; readonly edits: readonly TextEdit[] }
  | { readonly ok: false; readonly why: string };

/** What would be renamed, and its name as listed. */
export function prepareRename(snapshot: Snapshot, position: Position): { at: Place; name: string } | undefined {
  const found = namedAt(snapshot, position);
  const name = found === undefined ? undefined : nameOf(snapshot, found.named);
  return found === undefined || name === undefined || name === '' ? undefined : { at: found.at, name };
}

export function rename(snapshot: Snapshot, position: Position, newName: string): Renamed {
  const found = namedAt(snapshot, position);
  return found === undefined
    ? refuse('Put the caret on an ingredient or a part.')
    : renameNamed(snapshot, found.named, newName);
}

/** The same for an ingredient or part that was found otherwise. */
export function renameNamed(snapshot: Snapshot, named: Named, newName: string): Renamed {
  const name = nameOf(snapshot, named);
  if (name === undefined) return refuse('Put the caret on an ingredient or a part.');
  const to = newName.trim().replace(/\s+/g, ' ');
  if (to === '') return refuse('Write a name.');
  const why = clash(snapshot, named, to);
  if (why !== undefined) return refuse(why);
  const places = occurrences(snapshot, named);
  const defined = places.find((o) => o.role === 'definition');
  if (defined === undefined || !readsBack(snapshot, defined, named, to)) return refuse(unreadable(to));
  const heads = headsBeside(snapshot, named);
  const calls = callsOf(snapshot, named, name, to);
  const edits = places.flatMap((place) => {
    const written = textAt(snapshot, place);
    // The lemon itself, where the list takes its juice.
    const said = sameName(written, name) ? { old: name, to } : calls;
    const text =
      place.role === 'definition'
        ? to
        : place.role === 'mention'
          ? mentionText(place, written, said.old, said.to, heads)
          : said.to;
    return text === undefined || text === written ? [] : [replaceSpan(place.line, place, text)];
  });
  return { ok: true, edits: [...edits, ...swapEdits(snapshot, named, calls.old, calls.to)] };
}

export const unreadable = (name: string): string =>
  `\`${name}\` cannot be read as a name: use words, without commas, brackets, \`=\` or \`#\`.`;

const refuse = (why: string): Renamed => ({ ok: false, why });

export function nameOf({ recipe }: Snapshot, named: Named): string | undefined {
  const head = recipe.parts[named.part]?.head;
  if (named.kind === 'part') return head?.name;
  const ingredient = head?.ingredients[named.index];
  return named.other === undefined ? ingredient?.nameNode.text : ingredient?.others?.[named.other]?.name.text;
}

/** What it is called in the steps, before and after: of `juice of 1 lemon`, lemon juice. */
function callsOf({ recipe }: Snapshot, named: Named, name: string, to: string): { old: string; to: string } {
  const ingredient = named.kind === 'part' ? undefined : recipe.parts[named.part]?.head.ingredients[named.index];
  if (ingredient === undefined || ingredient.name === ingredient.nameNode.text) return { old: name, to };
  return { old: ingredient.name, to: `${singularOf(to)} ${ingredient.name.split(' ').at(-1) ?? ''}` };
}

function clash({ recipe }: Snapshot, named: Named, to: string): string | undefined {
  if (named.kind === 'part')
    return recipe.parts.some((p) => p.index !== named.part && sameName(p.head.name, to))
      ? `Another part is called ${to}.`
      : undefined;
  return recipe.parts[named.part]?.head.ingredients.some((i, index) => index !== named.index && sameName(i.name, to))
    ? `The list already has ${to}.`
    : undefined;
}

/** Whether the line with the new name in it is read with just that name. */
function readsBack(snapshot: Snapshot, place: Place, named: Named, to: string): boolean {
  const line = snapshot.document.lines[place.line];
  if (line === undefined || /[\r\n]/.test(to)) return false;
  const { statement } = readLine(line.text.slice(0, place.start) + to + line.text.slice(place.end));
  if (named.kind === 'part') return statement.kind === 'part' && titleOf(statement).name?.text === to;
  if (wordsOf(to).length === 0) return false;
  const { world } = snapshot.house;
  const all = snapshot.recipe.parts[named.part]?.head.ingredients ?? [];
  const before = all.filter((i) => i.line === all[named.index]?.line);
  const after = bindLine(statement, world);
  const renamed = all[named.index];
  const now = renamed && after[before.indexOf(renamed)];
  if (now === undefined || after.length !== before.length) return false;
  return (named.other === undefined ? now.nameNode : now.others?.[named.other]?.name)?.text === to;
}

function bindLine(statement: Statement, world: World): readonly Ingredient[] {
  if (statement.kind === 'unread') return statement.bare === undefined ? [] : bindBare(statement.bare, 0, world);
  const node = statement.kind === 'add' ? statement.ingredient : statement;
  return node.kind === 'ingredient' ? bindIngredients(node, 0, world) : [];
}

const textAt = (snapshot: Snapshot, { line, start, end }: Place): string =>
  snapshot.document.lines[line]?.text.slice(start, end) ?? '';

/** The last words of the other names a sentence could mean. */
function headsBeside({ recipe }: Snapshot, named: Named): ReadonlySet<string> {
  const heads = recipe.parts.flatMap((p) => [
    ...(named.kind === 'part' && p.index === named.part ? [] : [p.head.name]),
    ...p.head.ingredients
      .filter((_, i) => !(named.kind === 'ingredient' && p.index === named.part && i === named.index))
      .map((i) => i.name),
  ]);
  return new Set(heads.map((name) => wordsOf(name).at(-1) ?? ''));
}

/** The new name in the form the old one has in a sentence: whole or by its last word, one or many. */
function mentionText(
  { mention }: Occurrence,
  written: string,
  old: string,
  to: string,
  heads: ReadonlySet<string>,
): string | undefined {
  if (mention?.verb || (mention?.every ?? false)) return undefined;
  const words = wordsOf(written);
  const whole = words.length >= wordsOf(old).length;
  const head = to.split(' ').at(-1) ?? to;
  const headWord = wordsOf(head)[0] ?? '';
  // `flour` still names wholemeal flour.
  if (!whole && !mention?.weak && words.join(' ') === headWord) return undefined;
  const short = !whole && !mention?.weak && !heads.has(headWord);
  const text = short ? head : to;
  const many = isPlural(written) && !isPlural(old);
  const one = !isPlural(written) && isPlural(old);
  const formed = many ? pluralOf(text) : one ? singularOf(text) : text;
  return /^\p{Lu}/u.test(written) ? formed.slice(0, 1).toUpperCase() + formed.slice(1) : formed;
}

function isPlural(name: string): boolean {
  const last =
    name
      .toLowerCase()
      .split(/[^\p{L}']+/u)
      .filter((w) => w !== '')
      .at(-1) ?? '';
  return last.endsWith('s') && singular(last) !== last;
}

function pluralOf(name: string): string {
  if (isPlural(name)) return name;
  if (/(?:[sxz]|[cs]h)$/.test(name)) return `${name}es`;
  return /[^aeiou]y$/.test(name) ? `${name.slice(0, -1)}ies` : `${name}s`;
}

function singularOf(name: string): string {
  const words = name.split(' ');
  const last = words.pop() ?? '';
  return [...words, singular(last)].join(' ');
}

/** `swap` and `drop` lines that speak of an ingredient by the same name. */
function swapEdits(snapshot: Snapshot, named: Named, old: string, to: string): TextEdit[] {
  if (named.kind === 'part') return [];
  const edits: TextEdit[] = [];
  snapshot.document.lines.forEach(({ statement }, at) => {
    const name = statement.kind === 'swap' ? statement.old : statement.kind === 'drop' ? statement.name : undefined;
    if (name !== undefined && sameName(name.text, old)) edits.push(replaceSpan(at, name, to));
  });
  return edits;
}
