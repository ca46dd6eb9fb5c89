/**
 * Knows why a check found nothing in one recipe: it is off, nothing of its kind is there, a measure is not known or lies in its band.
 * Refuses to run the check, and to guess: where none of that tells, it says what was looked at and what could not be.
 */
import { contentsOf } from '../recipe/measures/contents.ts';
import { bandText, measureText, whatever } from '../recipe/measures/measure-text.ts';
import { measure } from '../recipe/measures/measures.ts';
import type { Part } from '../recipe/model.ts';
import type { Check, PartCheck, Scene } from './check.ts';

/** The reasons, a sentence each, with lines counted from 1. At least one. */
export function whySilent(check: Check, scene: Scene): readonly string[] {
  if (scene.house.severities[check.code] === 'off') return [`\`${check.code}\` is off in this house's quern.json.`];
  switch (check.scope) {
    case 'allows':
      return scene.outline.allows.length === 0
        ? ['The file has no `allow` line.']
        : [`Each of its ${count(scene.outline.allows.length, '`allow` line')} accepts something.`];
    case 'line':
      return [lines(check.asks, scene)];
    case 'list':
    case 'part':
      return check.measures === undefined ? lookedAt(scene) : scene.recipe.parts.flatMap((p) => held(p, check, scene));
    case 'recipe':
      return lookedAt(scene);
  }
}

/** Of a check that asks lines: how many it asked. */
function lines(asks: string, { document }: Scene): string {
  const all = document.lines;
  if (asks === 'faulty') {
    const faulty = all.filter((line) => line.faults.length > 0).length;
    return faulty === 0
      ? `All ${count(all.length, 'line')} can be read.`
      : `${count(faulty, 'line')} cannot be read as written, for another reason.`;
  }
  const asked = all.filter((line) => line.statement.kind === asks).length;
  return asked === 0
    ? `The file has no \`${asks}\` line.`
    : `Nothing is wrong with its ${count(asked, `\`${asks}\` line`)}.`;
}

/** Of a formula: what the part is judged by, and where it lies. */
function held(part: Part, { measures = [] }: Pick<PartCheck, 'measures'>, { recipe }: Scene): readonly string[] {
  const { head } = part;
  const line = (recipe.partsAt[part.index] ?? 0) + 1;
  const named = head.name === '' ? 'The list' : `The ${head.name}`;
  const subject = `${named} (line ${line})`;
  if (head.ingredients.length === 0) return [`${subject} lists nothing.`];
  if (head.kind === undefined)
    return [
      head.kindNode === undefined
        ? `${subject} does not say what it is: a formula is held against a kind, such as \`${recipe.parts.length > 1 ? `part ${head.name}` : `recipe ${recipe.name}`} as shortcrust\`.`
        : `${subject} is called \`${head.kindNode.text}\`, which is no kind that is known.`,
    ];
  const { kind } = head;
  const judged = kind.measures.filter((m) => measures.includes(m.measure));
  if (judged.length === 0) return [`${subject} is ${kind.name}, which is not judged by this.`];
  const contents = contentsOf(part);
  return judged.map(({ measure: name, usual, source }) => {
    const value = measure(name, contents);
    return value.known
      ? `${subject} has ${measureText(name, value.value.low, value.value.high)}${whatever(value.open)}; usual for ${kind.name} is ${bandText(name, usual)} (${source}).`
      : `${subject}: not known, because ${value.why}.`;
  });
}

/** Of every other check: what there was to look at, and what could not be judged. */
function lookedAt({ recipe, document }: Scene): readonly string[] {
  const { parts, partsAt } = recipe;
  const ingredients = parts.reduce((sum, { head }) => sum + head.ingredients.length, 0);
  const steps = parts.reduce((sum, part) => sum + part.steps.length, 0);
  if (ingredients === 0 && steps === 0) return ['The file lists nothing and has no steps.'];
  const unread = document.lines.flatMap(({ statement }, at) => (statement.kind === 'unread' ? [at + 1] : []));
  const unknown = parts.flatMap(({ head, index }) =>
    head.ingredients
      .filter(({ food }) => food === undefined)
      .map(({ line, name }) => `\`${name}\` (line ${(partsAt[index] ?? 0) + line + 1})`),
  );
  return [
    `It was looked for in ${count(ingredients, 'ingredient')} and ${count(steps, 'step')}.`,
    ...(steps === 0 ? ['Without steps, what is done is not known.'] : []),
    ...(unread.length === 0
      ? []
      : [`Not read, and so not judged: ${unread.length === 1 ? 'line' : 'lines'} ${unread.join(', ')}.`]),
    ...(unknown.length === 0 ? [] : [`Not one known food, so that little is judged of it: ${unknown.join(', ')}.`]),
  ];
}

const count = (n: number, noun: string): string => `${n} ${n === 1 ? noun : `${noun}s`}`;
