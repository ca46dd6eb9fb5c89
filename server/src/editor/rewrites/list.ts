/**
 * Knows the rewrites of a list: its order, two lines made one, one made two, what is bought and what is left of it.
 * Refuses to choose: each is offered where it can be made.
 */
import { writeAsBought, writeTrimmed } from '../../edits/as-bought.ts';
import { mergeLines, twinOf } from '../../edits/merge-lines.ts';
import { orderByUse } from '../../edits/order-of-use.ts';
import { writeOwnForm } from '../../edits/own-form.ts';
import { splitLine } from '../../edits/split-line.ts';
import { trimmed } from '../../measure/number-text.ts';
import type { PositionRange } from '../../notation/document.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { listOf } from '../words.ts';
import { listedAt, type Rewrite } from './rewrite.ts';

/** Every list of the file in the order in which its steps take it. */
export function orderRewrites({ document, recipe }: Snapshot): Rewrite[] {
  const edits = recipe.parts.flatMap((part) => orderByUse(document, recipe, part));
  return edits.length === 0
    ? []
    : [{ title: 'Put the lists in the order of use', kind: 'source.organizeIngredients.quern', edits: () => edits }];
}

/** What may be done with the list line at a place. */
export function lineRewrites(snapshot: Snapshot, range: PositionRange): Rewrite[] {
  const { document, recipe } = snapshot;
  const at = listedAt(snapshot, range);
  if (at === undefined) return [];
  const { part, ingredient } = at;
  const { name } = ingredient;
  const found: Rewrite[] = [];
  const own = writeOwnForm(document, recipe, part, ingredient.line);
  if (own !== undefined)
    found.push({
      title:
        own.written.length === 1
          ? `Write as ${shown(own.written)}`
          : `Write a line for each of the ${own.written.length}: ${shown(own.written)}`,
      kind: 'refactor.rewrite',
      edits: () => own.edits,
    });
  const twin = twinOf(part, ingredient);
  const merged = twin === undefined ? undefined : mergeLines(document, recipe, part, twin, ingredient);
  if (twin !== undefined && merged !== undefined)
    found.push({
      title: `Merge with the ${twin.name} above: ${merged.written}`,
      kind: 'refactor.rewrite',
      edits: () => merged.edits,
    });
  const split = splitLine(document, recipe, part, ingredient);
  if (split !== undefined)
    found.push({
      title: `Split the ${name} by its uses: ${listOf(split.written)}`,
      kind: 'refactor.rewrite',
      edits: () => split.edits,
    });
  const bought = writeAsBought(document, recipe, part, ingredient);
  const wrong = ingredient.node.bought !== undefined;
  if (bought !== undefined)
    found.push({
      title: `${wrong ? 'Correct' : 'Write'} the weight as bought: from ${trimmed(bought.grams, 2)} g`,
      kind: wrong ? 'quickfix' : 'refactor.rewrite',
      edits: () => bought.edits,
    });
  const left = writeTrimmed(recipe, part, ingredient);
  if (left !== undefined)
    found.push({
      title: `Write what trimming leaves: ${trimmed(left.grams, 2)} g ${name}`,
      kind: 'quickfix',
      edits: () => left.edits,
    });
  return found;
}

/** Lines as a title has them. */
function shown(lines: readonly string[]): string {
  const text = lines.map((line) => line.replace(/\s+/g, ' ')).join('; ');
  return text.length > LONGEST ? `${text.slice(0, LONGEST).trimEnd()}…` : text;
}

const LONGEST = 70;
