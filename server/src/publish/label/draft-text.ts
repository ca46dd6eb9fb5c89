/**
 * Knows the draft of a label as plain text: what it assumes, the facts of each side a line a row, the ingredients, and what to ask.
 */
import type { LabelDraft, ReferenceSaid } from './draft.ts';
import { euRows, type FactsRow, usRows } from './facts-rows.ts';
import { ingredientsSaid } from './said.ts';

export const SIDES = ['both', 'us', 'eu'] as const;

export function draftText(title: string, draft: LabelDraft, side: (typeof SIDES)[number]): string {
  return [
    title,
    ...draft.assumes.map((sentence) => `  ${sentence}`),
    ...(side === 'eu' ? [] : ['', ...usLines(draft)]),
    ...(side === 'us' ? [] : ['', ...euLines(draft)]),
    ...(draft.ask.length === 0 ? [] : ['', 'To ask', ...draft.ask.map((sentence) => `  ${sentence}`)]),
    '',
  ].join('\n');
}

function usLines(draft: LabelDraft): string[] {
  const { reference, serving, servings, facts, contains } = draft.us;
  return [
    'United States: Nutrition Facts (21 CFR 101.9)',
    ...(servings === null ? [] : [`  ${servings.text} servings in all that it makes`]),
    `  Serving size ${serving ?? (facts === null ? 'not known' : `${facts.of}${facts.mass_g === null ? '' : ` (${Math.round(facts.mass_g)} g)`}, as the yield has it`)}`,
    ...(reference === null ? [] : [`  reference amount ${referenceSaid(reference)}`]),
    ...(facts === null ? ['  no facts: nothing says what a serving is'] : rows(usRows(facts), draft)),
    `  Contains: ${contains.length === 0 ? 'none of the list is found' : contains.join(', ')}${notKnownFor(draft)}`,
  ];
}

const notKnownFor = ({ brings_not_known: names }: LabelDraft): string =>
  names.length === 0 ? '' : `; not known for ${names.join(', ')}`;

/** `80 g: cakes, medium (21 CFR 101.12(b))`. */
export const referenceSaid = ({ name, grams, measure }: ReferenceSaid): string =>
  `${[measure, grams === null ? null : `${grams} g`].filter((each) => each !== null).join(', ')}: ${name} (21 CFR 101.12(b))`;

function euLines(draft: LabelDraft): string[] {
  const { ingredients, nutrition } = draft.eu;
  return [
    'European Union: Regulation 1169/2011',
    `  Ingredients: ${ingredientsSaid(ingredients)}`,
    ...(nutrition === null
      ? ['  no nutrition declaration: a weight is not known']
      : ['  per 100 g', ...rows(euRows(nutrition), draft)]),
  ];
}

function rows(all: readonly FactsRow[], { not_known_for: missing }: LabelDraft): string[] {
  const [first, ...others] = all.map(({ figure, from }) => (figure === null ? missing[from]?.join(', ') : undefined));
  // Where every row lacks the same, it is said once.
  if (first !== undefined && others.every((names) => names === first))
    return [`  no figure is known for want of ${first}`];
  return all.map(({ name, within, figure, from }) => {
    const names = missing[from] ?? [];
    const unknown = names.length === 0 ? 'not known' : `not known for ${names.join(', ')}`;
    const daily = figure?.daily_percent === undefined ? '' : `  ${figure.daily_percent} %`;
    const said = figure === null ? `${name} ${unknown}` : rowSaid(name, figure.text);
    return `  ${'  '.repeat(within)}${said}${daily}`;
  });
}

/** `Total Fat 12 g`, `Includes 4 g Added Sugars`; calories have no unit. */
export const rowSaid = (name: string, figure: string): string =>
  name === ADDED ? `Includes ${figure} ${name}` : `${name} ${figure.replace(/^(\d+) kcal$/, '$1')}`;

const ADDED = 'Added Sugars';
