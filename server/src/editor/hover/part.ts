/** A part by its name: its weight, what it is made of, and where it stands in the bands of its kind. */

import type { Part } from '../../recipe/model.ts';
import { nameSpan } from '../../recipe/part.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { bandFacts, figure, incompleteFacts, partComposition } from '../facts.ts';
import { holds, lineOfPart, placeOf, sayLine } from '../place.ts';
import { listOf, sayGrams, saySum } from '../words.ts';
import type { Fact, HoverSource } from './fact.ts';

export const hoverPart: HoverSource = (snapshot, { line, part, inPart, at, character }) => {
  if (part === undefined || inPart !== 0 || line.statement.kind !== 'part') return undefined;
  const span = nameSpan(part.head);
  const whole = { start: line.keyword?.start ?? span.start, end: span.end };
  if (!holds(whole, character)) return undefined;
  return {
    at: placeOf(at, whole),
    title: part.head.name === '' ? 'part' : part.head.name,
    ...(part.head.kind && { subtitle: part.head.kind.name }),
    facts: partFacts(snapshot, part),
  };
};

export function partFacts(snapshot: Snapshot, part: Part): Fact[] {
  const facts = [...massFacts(part), ...incompleteFacts(snapshot, [part])];
  const composition = partComposition(part);
  if (composition !== undefined) facts.push(composition);
  facts.push(...bandFacts(part));
  const takers = new Set(part.usesByLater.map(({ use }) => use.part));
  if (takers.size > 0) {
    const names = [...takers].map((p) => snapshot.recipe.parts[p]?.head.name ?? '');
    facts.push(figure('Taken up by', listOf(names)));
  } else if (!part.isLast && part.head.name !== '') facts.push(figure('Taken up by', 'no later part'));
  const line = lineOfPart(snapshot, part.index, 0);
  facts.push(figure('Written', `on ${sayLine(snapshot, line)}`));
  return facts;
}

function massFacts(part: Part): Fact[] {
  const { massG, ingredients, nominal, flourG } = part.head;
  const facts: Fact[] = [];
  if (massG.high > 0) {
    facts.push(
      nominal
        ? figure('Weight', 'set by no weight and no yield: all is in percent of the flour')
        : figure('Weight', saySum(massG)),
    );
  } else if (ingredients.length > 0) facts.push(figure('Weight', 'not known'));
  if (flourG.low > 0 && !nominal) facts.push(figure('Flour', sayGrams(flourG)));
  const inside = part.includes.map((head) =>
    head.massG.complete ? `${head.name} (${sayGrams(head.massG)})` : head.name,
  );
  if (inside.length > 0) facts.push(figure('With', listOf(inside)));
  return facts;
}
