/** An ingredient or part named in a step: what it is, and what this step takes of it. */

import { percentRange } from '../../measure/number-text.ts';
import type { Mention, Part, TakenUse } from '../../recipe/model.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { figure, overOf, sayUse, shareFacts, weightFact } from '../facts.ts';
import { holds, lineOfPart, placeOf, sayLine } from '../place.ts';
import type { Fact, HoverSource } from './fact.ts';
import { partFacts } from './part.ts';

export const hoverMention: HoverSource = (snapshot, { line, part, inPart, at, character }) => {
  const step = part?.steps.find((s) => s.line === inPart);
  const mention = step?.mentions.find((m) => holds(m.whole, character));
  if (part === undefined || mention === undefined) return undefined;
  const title = line.text.slice(mention.start, mention.end);
  const place = placeOf(at, mention.whole);
  if (mention.part !== undefined) {
    const named = snapshot.recipe.parts[mention.part];
    if (named === undefined) return undefined;
    return { at: place, title, subtitle: `the part ${named.head.name}`, facts: partFacts(snapshot, named) };
  }
  const named = mention.ingredients.flatMap(({ part: p, ingredient }) => {
    const of = snapshot.recipe.parts[p];
    const entry = of?.ledger[ingredient];
    return of === undefined || entry === undefined ? [] : [{ of, entry }];
  });
  const [only] = named;
  if (only === undefined) return undefined;
  if (named.length > 1 && !mention.every) {
    const names = named.map(({ of, entry }) =>
      nameWithLine(snapshot, of, entry.ingredient.line, entry.ingredient.name),
    );
    return {
      at: place,
      title,
      subtitle: 'could be any of these',
      facts: names.map((text) => ({ kind: 'text', text })),
    };
  }
  const facts = named.flatMap(({ of, entry }): Fact[] => {
    const use = entry.uses.find((u) => u.mention === mention && u.part === part.index);
    const name = figure('Listed', nameWithLine(snapshot, of, entry.ingredient.line, entry.ingredient.name));
    return [
      name,
      ...(use === undefined ? [] : [takenFact(entry.ingredient, use, mention)]),
      weightFact(entry.ingredient),
      ...shareFacts(of, entry.ingredient),
    ];
  });
  const food = only.entry.ingredient.food;
  const subtitle = food === undefined || food.name === title ? undefined : food.name;
  return { at: place, title, ...(subtitle !== undefined && named.length === 1 && { subtitle }), facts };
};

function takenFact(ingredient: Parameters<typeof sayUse>[0], use: TakenUse, mention: Mention): Fact {
  if (use.taken.high === 0 && mention.portion.kind === 'plain') return figure('This step', 'speaks of what lies there');
  const left = {
    low: Math.max(0, use.before.low - use.taken.high),
    high: Math.max(0, use.before.high - use.taken.low),
  };
  const takes = mention.portion.kind === 'some' ? 'takes an unmeasured portion' : `takes ${sayUse(ingredient, use)}`;
  if (use.over) return figure('This step', overOf(use).high > 0.001 ? takes : 'finds none left');
  return figure(
    'This step',
    left.high <= 0.001 ? `${takes}; none is left` : `${takes}; ${percentRange(left.low, left.high)} is left`,
  );
}

function nameWithLine(snapshot: Snapshot, part: Part, line: number, name: string): string {
  const where = part.head.name === '' ? '' : ` of the ${part.head.name}`;
  return `${name}, ${sayLine(snapshot, lineOfPart(snapshot, part.index, line))}${where}`;
}
