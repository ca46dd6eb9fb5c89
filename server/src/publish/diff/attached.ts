/**
 * Knows what differs in what hangs on two recipes: trials, accepted findings, foods of their own.
 * Refuses to know what a food's lines mean.
 */

import type { Block } from '../../notation/outline.ts';
import type { Line } from '../../notation/tree.ts';
import type { Recipe } from '../../recipe/model.ts';
import { collapse } from '../../recipe/words.ts';
import type { Change } from './change.ts';
import { pairBy } from './pair.ts';
import { saidBy } from './written.ts';

export function trialChanges(before: Recipe, after: Recipe): Change[] {
  const [a, b] = [before.outline.trials.map(titleOf), after.outline.trials.map(titleOf)];
  return [
    ...a.filter((t) => !b.includes(t)).map((trial): Change => ({ kind: 'trial-dropped', trial })),
    ...b.filter((t) => !a.includes(t)).map((trial): Change => ({ kind: 'trial-added', trial })),
  ];
}

export function allowChanges(before: Recipe, after: Recipe): Change[] {
  const [a, b] = [allowsOf(before), allowsOf(after)];
  const same = (x: Allow) => (y: Allow) => x.code === y.code && x.reason === y.reason;
  return [
    ...a.filter((x) => !b.some(same(x))).map((x): Change => ({ kind: 'accepts-no-more', ...x })),
    ...b.filter((x) => !a.some(same(x))).map((x): Change => ({ kind: 'accepts', ...x })),
  ];
}

interface Allow {
  readonly code: string;
  readonly reason: string;
}

const allowsOf = ({ outline }: Recipe): Allow[] =>
  outline.allows.flatMap(({ line: { statement } }) =>
    statement.kind === 'allow' && statement.code !== undefined
      ? [{ code: statement.code.text, reason: statement.reason?.text ?? '' }]
      : [],
  );

export function foodChanges(before: readonly Block[], after: readonly Block[]): Change[] {
  const [a, b] = [before, after].map((blocks) => new Map(blocks.map((block) => [titleOf(block), block] as const)));
  const changes: Change[] = [];
  for (const [food, block] of b ?? []) {
    const was = a?.get(food);
    if (was === undefined) changes.push({ kind: 'food-added', food });
    else changes.push(...foodLines(food, was, block));
  }
  for (const food of a?.keys() ?? []) if (b?.has(food) !== true) changes.push({ kind: 'food-dropped', food });
  return changes;
}

function foodLines(food: string, was: Block, is: Block): Change[] {
  const said = (block: Block) =>
    block.lines.slice(1).flatMap((line) => (line.statement.kind === 'blank' ? [] : [wholeOf(line)]));
  const pairs = pairBy(said(was), said(is), (x, y) => x === y);
  const byWord = pairBy(pairs.dropped, pairs.added, (x, y) => x.split(' ')[0] === y.split(' ')[0]);
  return [
    ...byWord.both.map(([from, to]): Change => ({ kind: 'food', food, from, to })),
    ...byWord.dropped.map((from): Change => ({ kind: 'food', food, from, to: null })),
    ...byWord.added.map((to): Change => ({ kind: 'food', food, from: null, to })),
  ];
}

const titleOf = (block: Block): string => {
  const [first] = block.lines;
  return first === undefined ? '' : saidBy({ line: first });
};
const wholeOf = (line: Line): string => collapse(line.text.slice(0, line.comment?.start ?? line.text.length));
