/** What a variant has from its base: the file it names, the part it takes, and the base's line where its own differs. */
import type { Line } from '../../notation/tree.ts';
import type { Recipe } from '../../recipe/model.ts';
import { titleOf } from '../../recipe/names/title.ts';
import { sameName, wordsOf } from '../../recipe/words.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { figure } from '../facts.ts';
import { type BasePart, baseOf, inheritedBy, partFrom } from '../inherited.ts';
import { fileName, holds, originOf, placeOf } from '../place.ts';
import { listOf } from '../words.ts';
import type { Fact, Hover, HoverSource } from './fact.ts';
import { ingredientFacts, subtitleOf } from './ingredient.ts';
import { partFacts } from './part.ts';
import { wholeFacts } from './recipe.ts';

export const hoverBase: HoverSource = (snapshot, { line, at, character }) => {
  const { statement, keyword } = line;
  switch (statement.kind) {
    case 'from': {
      const { file } = statement;
      const words = file && { start: keyword?.start ?? file.start, end: file.end };
      if (file === undefined || !holds(words, character)) return undefined;
      const base = baseOf(snapshot)?.base;
      if (base === undefined) return undefined;
      return {
        at: placeOf(at, words),
        title: fileName(file.text),
        ...(base.recipe.name !== '' && { subtitle: base.recipe.name }),
        facts: [...partsFact(base.recipe), ...wholeFacts(base.recipe), ...changesFact(snapshot)],
      };
    }
    case 'part': {
      const words = [statement.file, statement.filePart].find((s) => holds(s, character));
      const [found] = words === undefined ? [] : (partFrom(snapshot, at) ?? []);
      if (words === undefined || found === undefined) return undefined;
      return {
        at: placeOf(at, words),
        title: found.part.head.name === '' ? fileName(found.base.uri) : found.part.head.name,
        subtitle: `from ${fileName(found.base.uri)}`,
        facts: [
          ...partFacts(found.base, found.part).filter((f) => f.kind !== 'figure' || f.label !== 'Written'),
          writtenFact(found),
        ],
      };
    }
    case 'swap':
    case 'drop': {
      const old = statement.kind === 'swap' ? statement.old : statement.name;
      const base = holds(old, character) ? inheritedBy(snapshot, at) : undefined;
      if (old === undefined || base === undefined) return undefined;
      return {
        at: placeOf(at, old),
        title: base.text,
        ...subtitleOf(base.ingredient),
        facts: [baseFact('Listed', base.path, base.at.line), ...ingredientFacts(base.part, base.ingredient)],
      };
    }
    case 'step': {
      if (!holds(keyword, character)) return undefined;
      const base = stepOfBase(snapshot, at);
      if (base === undefined) return undefined;
      return {
        at: placeOf(at, keyword),
        title: 'A step of its own',
        facts: [baseFact('In the base', base.path, base.line, base.text)],
      };
    }
    default:
      return undefined;
  }
};

function writtenFact({ base, part }: BasePart): Fact {
  const { path, line } = originOf(base, base.recipe.partsAt[part.index] ?? 0);
  return baseFact('Written', path, line);
}

/** The hover with what the base says on the same line, where it says something else. */
export function besideBase(snapshot: Snapshot, line: number, hover: Hover): Hover {
  const fact = ingredientOfBase(snapshot, line) ?? fieldOfBase(snapshot, line);
  return fact === undefined ? hover : { ...hover, facts: [fact, ...hover.facts] };
}

function ingredientOfBase(snapshot: Snapshot, line: number): Fact | undefined {
  const base = inheritedBy(snapshot, line);
  return base && baseFact('In the base', base.path, base.at.line, base.text);
}

function fieldOfBase(snapshot: Snapshot, at: number): Fact | undefined {
  const own = snapshot.outline.head.find((h) => h.at === at)?.line;
  const base = own === undefined ? undefined : baseOf(snapshot)?.base;
  if (own === undefined || base === undefined) return undefined;
  const same = base.outline.head.find(({ line }) => fieldOf(line) !== undefined && fieldOf(line) === fieldOf(own));
  const text = same === undefined ? '' : bare(same.line);
  if (same === undefined || text === bare(own)) return undefined;
  const { path, line } = originOf(base, same.at);
  return baseFact('In the base', path, line, text);
}

const fieldOf = ({ statement }: Line): string | undefined =>
  statement.kind === 'text'
    ? statement.field === 'by'
      ? undefined
      : statement.field
    : statement.kind === 'yield' || statement.kind === 'pan' || statement.kind === 'oven'
      ? statement.kind
      : undefined;

const bare = ({ text, comment }: Line): string => text.slice(0, comment?.start).trim().replace(/\s+/g, ' ');

const baseFact = (label: string, path: string, line: number, text?: string): Fact => {
  const where = `line ${line + 1} of ${fileName(path)}`;
  return figure(label, text === undefined ? where : `${text} (${where})`);
};

/** Steps so alike that one was written over the other (common practice, no source). */
const ALIKE = 0.5;

/** The base's step that an own step stands for: the one with most of its words, when it says something else. */
function stepOfBase(
  snapshot: Snapshot,
  at: number,
): { readonly path: string; readonly line: number; readonly text: string } | undefined {
  const own = snapshot.outline.parts.find((p) => p.at <= at && at < p.at + p.source.lines.length);
  const text = snapshot.document.lines[at]?.text.trim() ?? '';
  const header = own?.source.lines[0]?.statement;
  const name = header?.kind === 'part' ? (titleOf(header).name?.text ?? '') : '';
  const whole = baseOf(snapshot)?.base;
  const parts: BasePart[] = [
    ...(own === undefined ? [] : (partFrom(snapshot, own.at) ?? [])),
    ...(whole?.recipe.parts ?? []).flatMap((part) =>
      whole !== undefined && sameName(part.head.name, name) ? [{ base: whole, part }] : [],
    ),
  ];
  const words = new Set(wordsOf(text));
  let best: { readonly share: number; readonly line: number; readonly base: Snapshot } | undefined;
  for (const { base, part } of parts) {
    for (const step of part.steps) {
      const line = (base.recipe.partsAt[part.index] ?? 0) + step.line;
      const theirs = new Set(wordsOf(base.document.lines[line]?.text ?? ''));
      const share = [...words].filter((w) => theirs.has(w)).length / Math.max(words.size, theirs.size, 1);
      if (share >= ALIKE && share > (best?.share ?? 0)) best = { share, line, base };
    }
  }
  const found = best?.base.document.lines[best.line];
  if (best === undefined || found === undefined || bare(found) === text.replace(/\s+/g, ' ')) return undefined;
  return { ...originOf(best.base, best.line), text: bare(found).replace(/^do /, '') };
}

function partsFact({ parts }: Recipe): Fact[] {
  const names = parts.map((p) => p.head.name).filter((n) => n !== '');
  const count = parts.reduce((sum, p) => sum + p.head.ingredients.length, 0);
  const list = figure('Inherits', `${count} ingredients${names.length === 0 ? '' : ` in ${listOf(names)}`}`);
  return [list];
}

/** What the variant itself changes. */
function changesFact({ document }: Snapshot): Fact[] {
  const count = { swap: 0, drop: 0, add: 0 };
  for (const { statement } of document.lines)
    if (statement.kind === 'swap' || statement.kind === 'drop' || statement.kind === 'add') count[statement.kind]++;
  const said = [
    count.swap > 0 ? `swaps ${count.swap}` : '',
    count.drop > 0 ? `drops ${count.drop}` : '',
    count.add > 0 ? `adds ${count.add}` : '',
  ].filter((s) => s !== '');
  return said.length === 0 ? [] : [figure('This recipe', listOf(said))];
}
