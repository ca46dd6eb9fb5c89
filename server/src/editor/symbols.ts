/**
 * Knows the outline of a file as a tree: recipe, parts, ingredients and steps; trials; foods.
 * Needs the bound recipe for grams. Refuses to know icons.
 */

import { keptOn } from '../notation/kept.ts';
import type { Block } from '../notation/outline.ts';
import type { Line, Span } from '../notation/tree.ts';
import type { Part, Recipe } from '../recipe/model.ts';
import { titleOf } from '../recipe/names/title.ts';
import { sameName } from '../recipe/words.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { baseOf } from './inherited.ts';
import { fileName, lineFromWhole } from './place.ts';
import { sayGrams, textOf } from './words.ts';

export interface SymbolNode {
  readonly name: string;
  readonly detail: string;
  readonly kind: 'recipe' | 'part' | 'ingredient' | 'step' | 'trial' | 'food';
  /** First and last line of the document, and the name on the first. */
  readonly from: number;
  readonly to: number;
  readonly nameAt: Span;
  readonly children: readonly SymbolNode[];
}

/** So many rows are an outline still: of a longer file the steps are left out, of a much longer one the ingredients too. */
const MOST_WITH_STEPS = 700;
const MOST_WITH_INGREDIENTS = 5000;

export function symbols(snapshot: Snapshot): SymbolNode[] {
  const { outline, recipe } = snapshot;
  const depth = depthFor(recipe);
  const own = recipe.parts.flatMap((part) => partNodes(part, recipe.partsAt[part.index] ?? 0, depth));
  const parts = snapshot.whole === snapshot ? own : variantNodes(snapshot, own);
  const trials = outline.trials.map((block) => trialNode(block));
  const foods = outline.foods.map((block) => foodNode(block));
  if (outline.recipe === undefined) return byLine([...parts, ...trials, ...foods]);
  const { at, line } = outline.recipe;
  const inside = (n: SymbolNode) => n.from > at && n.kind !== 'food';
  const nodes = byLine([...parts, ...trials, ...foods]);
  const children = nodes.filter(inside);
  const others = nodes.filter((n) => !inside(n));
  const name = titleOf(line.statement).name;
  const { recipe: cooked, document } = snapshot.whole;
  const made = cooked.yield?.node;
  const madeLine = cooked.yield === undefined ? undefined : document.lines[cooked.yield.at];
  const amount = made?.amount;
  const lastField = outline.head.at(-1)?.at ?? at;
  const root: SymbolNode = {
    name: name?.text ?? 'recipe',
    detail:
      amount === undefined || madeLine === undefined
        ? ''
        : madeLine.text.slice(amount.start, made?.of?.end ?? amount.end),
    kind: 'recipe',
    from: at,
    to: children.reduce((last, n) => Math.max(last, n.to), Math.max(at, lastField)),
    nameAt: name ?? whole(line),
    children,
  };
  return byLine([root, ...others]);
}

const byLine = (nodes: readonly SymbolNode[]): SymbolNode[] => [...nodes].sort((a, b) => a.from - b.from);

type Depth = 'parts' | 'ingredients' | 'steps';

function depthFor({ parts }: Recipe): Depth {
  const count = (of: (part: Part) => number) => parts.reduce((sum, part) => sum + of(part), 0);
  const ingredients = parts.length + count((p) => p.head.ingredients.length);
  if (ingredients > MOST_WITH_INGREDIENTS) return 'parts';
  return ingredients + count((p) => p.steps.length) > MOST_WITH_STEPS ? 'ingredients' : 'steps';
}

interface KeptNodes {
  readonly at: number;
  readonly depth: Depth;
  readonly nodes: readonly SymbolNode[];
}

const BY_PART = keptOn<Part, KeptNodes>();

/** The same nodes again for a part that has neither changed nor moved. */
function partNodes(part: Part, at: number, depth: Depth): readonly SymbolNode[] {
  const kept = BY_PART.get(part);
  if (kept?.at === at && kept.depth === depth) return kept.nodes;
  const nodes = makePartNodes(part, at, depth);
  BY_PART.set(part, { at, depth, nodes });
  return nodes;
}

/** A nameless part lends its lines to the recipe. */
function makePartNodes(part: Part, at: number, depth: Depth): SymbolNode[] {
  const { head } = part;
  const { lines } = head.source;
  const listed = depth === 'parts' ? [] : head.ingredients;
  const steps = depth === 'steps' ? part.steps : [];
  const children = byLine([
    ...listed.map((i): SymbolNode => {
      const line = lines[i.line];
      return {
        name: i.name,
        detail: i.weighed.known
          ? sayGrams(i.weighed.grams)
          : line === undefined || i.node.amount === undefined
            ? ''
            : textOf(line, i.node.amount),
        kind: 'ingredient',
        from: at + i.line,
        to: at + i.line,
        nameAt: i.nameNode,
        children: [],
      };
    }),
    ...steps.map((step): SymbolNode => {
      const line = lines[step.line];
      const text = line === undefined ? '' : textOf(line, step.sentence);
      return {
        name: shorten(text),
        detail: '',
        kind: 'step',
        from: at + step.line,
        to: at + step.line,
        nameAt: step.sentence,
        children: [],
      };
    }),
  ]);
  if (!head.source.named) return children;
  const first = lines[0];
  const { name } = titleOf(first?.statement);
  return [
    {
      name: name?.text ?? 'part',
      detail: partDetail(part),
      kind: 'part',
      from: at,
      to: at + lastSaying(lines),
      nameAt: name ?? (first === undefined ? { start: 0, end: 0 } : whole(first)),
      children,
    },
  ];
}

/** Its own parts as they weigh with what they inherit, what it swaps and adds, and the parts it only inherits. */
function variantNodes(snapshot: Snapshot, own: readonly SymbolNode[]): SymbolNode[] {
  const { whole } = snapshot;
  const base = baseOf(snapshot);
  const nodes: SymbolNode[] = own.map((node) => {
    const part = whole.recipe.parts.find((p) => node.kind === 'part' && sameName(p.head.name, node.name));
    return part === undefined ? node : { ...node, detail: partDetail(part) };
  });
  for (const part of whole.recipe.parts) {
    const at = whole.recipe.partsAt[part.index] ?? 0;
    const { path } = lineFromWhole(whole, at);
    if (part.head.name !== '' && path !== undefined && base !== undefined)
      nodes.push({
        name: part.head.name,
        detail: [partDetail(part), `from ${fileName(path)}`].filter((t) => t !== '').join(', '),
        kind: 'part',
        from: base.line,
        to: base.line,
        nameAt: base.file,
        children: [],
      });
    for (const ingredient of part.head.ingredients) {
      const from = lineFromWhole(whole, at + ingredient.line);
      const statement = from.path === undefined ? snapshot.document.lines[from.line]?.statement : undefined;
      if (statement?.kind !== 'swap' && statement?.kind !== 'add') continue;
      nodes.push({
        name: ingredient.name,
        detail: ingredient.weighed.known ? sayGrams(ingredient.weighed.grams) : '',
        kind: 'ingredient',
        from: from.line,
        to: from.line,
        nameAt: statement.ingredient.name ?? { start: 0, end: 0 },
        children: [],
      });
    }
  }
  return nodes;
}

function partDetail({ head }: Part): string {
  const grams = head.massG.high > 0 && !head.nominal ? sayGrams(head.massG) : '';
  return [head.kind?.name ?? head.kindNode?.text ?? '', grams].filter((t) => t !== '').join(', ');
}

function trialNode({ at, lines }: Block): SymbolNode {
  const first = lines[0];
  const statement = first?.statement;
  const trial = statement?.kind === 'trial' ? statement : undefined;
  const verdict = lines.find((l) => l.statement.kind === 'verdict')?.statement;
  return {
    name: `trial ${trial?.date?.text ?? ''}`.trim(),
    detail: [trial?.by?.text, verdict?.kind === 'verdict' ? verdict.value?.text : undefined]
      .filter((t) => t !== undefined)
      .join(', '),
    kind: 'trial',
    from: at,
    to: at + lastSaying(lines),
    nameAt: trial?.date ?? (first === undefined ? { start: 0, end: 0 } : whole(first)),
    children: [],
  };
}

function foodNode({ at, lines }: Block): SymbolNode {
  const first = lines[0];
  const name = first?.statement.kind === 'food' ? first.statement.name : undefined;
  const like = lines.find((l) => l.statement.kind === 'like')?.statement;
  return {
    name: name?.text ?? 'food',
    detail: like?.kind === 'like' && like.name !== undefined ? `like ${like.name.text}` : '',
    kind: 'food',
    from: at,
    to: at + lastSaying(lines),
    nameAt: name ?? (first === undefined ? { start: 0, end: 0 } : whole(first)),
    children: [],
  };
}

/** The last line that is not blank. */
export function lastSaying(lines: readonly Line[]): number {
  const last = lines.findLastIndex((l) => l.statement.kind !== 'blank' || l.comment !== undefined);
  return Math.max(last, 0);
}

const whole = (line: Line): Span => ({ start: line.keyword?.start ?? 0, end: line.text.trimEnd().length });

const shorten = (text: string): string => (text.length > 60 ? `${text.slice(0, 59).trimEnd()}…` : text || 'do');
