/**
 * Knows a page for readers as Markdown, and as plain text to paste under a video or a post.
 */
import { capital } from '../recipe/words.ts';
import { markdownText } from './markdown-text.ts';
import {
  allergenLines,
  factText,
  headFacts,
  ingredientText,
  ingredientWords,
  nutritionLines,
  type PageSection,
  type ReaderPage,
} from './reader-page.ts';

/** The pieces of a page, for a template of the house. */
export interface TextPieces {
  readonly title: string;
  readonly head: string;
  readonly ingredients: string;
  readonly method: string;
  readonly notes: string;
  readonly cautions: string;
  readonly allergens: string;
  readonly nutrition: string;
  readonly state: string;
}

export function markdownPage(page: ReaderPage): string {
  const p = markdownPieces(page);
  return joined([
    `# ${p.title}`,
    p.head,
    p.state,
    p.cautions,
    p.ingredients,
    p.method,
    p.notes,
    p.allergens,
    p.nutrition,
  ]);
}

export function markdownPieces(page: ReaderPage): TextPieces {
  const facts = headFacts(page).map((fact) => `- **${fact.name}:** ${markdownText(factText(fact))}`);
  const nutrition = nutritionLines(page);
  const many = page.sections.length > 1;
  const headed = (s: PageSection, body: string) =>
    many && s.name !== '' ? `### ${markdownText(capital(s.name))}\n\n${body}` : body;
  return {
    title: markdownText(page.title),
    head: joined([
      page.by === undefined ? '' : `*By ${markdownText(page.by)}*`,
      facts.join('\n'),
      page.ahead.length === 0 ? '' : `**Ahead of time**\n\n${page.ahead.map((a) => `- ${markdownText(a)}`).join('\n')}`,
    ]).trimEnd(),
    ingredients: joined([
      '## Ingredients',
      ...page.sections
        .filter((s) => s.ingredients.length > 0)
        .map((s) =>
          headed(
            s,
            s.ingredients
              .map((i) => {
                const { amount, rest } = ingredientWords(i);
                return amount === ''
                  ? `- ${markdownText(rest)}`
                  : `- **${markdownText(amount)}** ${markdownText(rest)}`;
              })
              .join('\n'),
          ),
        ),
    ]).trimEnd(),
    method: joined([
      '## Method',
      ...page.sections
        .filter((s) => s.steps.length > 0)
        .map((s) => headed(s, s.steps.map((step, i) => `${i + 1}. ${markdownText(step)}`).join('\n'))),
    ]).trimEnd(),
    notes: notesOf(page).length === 0 ? '' : joined(['## Notes', ...notesOf(page).map(markdownText)]).trimEnd(),
    cautions: page.cautions.length === 0 ? '' : `> **Take care.** ${page.cautions.map(markdownText).join(' ')}`,
    allergens: joined(['## Allergens', allergenLines(page).map(markdownText).join('\\\n')]).trimEnd(),
    nutrition:
      nutrition === undefined
        ? ''
        : joined([
            '## Nutrition',
            `${markdownText(nutrition.title)}.`,
            [
              '| | |',
              '| --- | --- |',
              ...nutrition.rows.map(([name, value]) => `| ${markdownText(name)} | ${markdownText(value)} |`),
            ].join('\n'),
            nutrition.note === undefined ? '' : markdownText(nutrition.note),
          ]).trimEnd(),
    state: `*${markdownText(page.state)}*`,
  };
}

export function textPage(page: ReaderPage): string {
  const p = textPieces(page);
  return joined([p.title, p.head, p.state, p.cautions, p.ingredients, p.method, p.notes, p.allergens, p.nutrition]);
}

export function textPieces(page: ReaderPage): TextPieces {
  const nutrition = nutritionLines(page);
  const many = page.sections.length > 1;
  const named = (s: PageSection) => (many && s.name !== '' ? [`${capital(s.name)}:`] : []);
  return {
    title: page.title.toUpperCase(),
    head: [
      ...(page.by === undefined ? [] : [`By ${page.by}`]),
      ...headFacts(page).map((fact) => `${fact.name}: ${factText(fact)}`),
      ...(page.ahead.length === 0 ? [] : [`Ahead of time: ${page.ahead.join('; ')}`]),
    ].join('\n'),
    ingredients: joined([
      'INGREDIENTS',
      ...page.sections
        .filter((s) => s.ingredients.length > 0)
        .map((s) => [...named(s), ...s.ingredients.map((i) => `- ${ingredientText(i)}`)].join('\n')),
    ]).trimEnd(),
    method: joined([
      'METHOD',
      ...page.sections
        .filter((s) => s.steps.length > 0)
        .map((s) => [...named(s), ...s.steps.map((step, i) => `${i + 1}. ${step}`)].join('\n')),
    ]).trimEnd(),
    notes: notesOf(page).length === 0 ? '' : joined(['NOTES', ...notesOf(page)]).trimEnd(),
    cautions: page.cautions.length === 0 ? '' : `TAKE CARE: ${page.cautions.join(' ')}`,
    allergens: joined(['ALLERGENS', allergenLines(page).join('\n')]).trimEnd(),
    nutrition:
      nutrition === undefined
        ? ''
        : [
            `NUTRITION. ${nutrition.title}: ${nutrition.rows.map(([name, value]) => `${name.toLowerCase()} ${value}`).join(', ')}.`,
            ...(nutrition.note === undefined ? [] : [nutrition.note]),
          ].join('\n'),
    state: page.state,
  };
}

const notesOf = ({ notes, source }: ReaderPage): string[] => [
  ...notes,
  ...(source === undefined ? [] : [`From: ${source}`]),
];

const joined = (blocks: readonly string[]): string => `${blocks.filter((b) => b !== '').join('\n\n')}\n`;
