/**
 * Knows the page of a kind and that of a food, as Markdown: what parts of the kind are held against, and what is known of the food.
 * Refuses to know any one recipe.
 */
import type { FoodBook } from '../food/book.ts';
import { COMPONENTS, compose } from '../food/composition.ts';
import type { Food } from '../food/food.ts';
import { gramsText, trimmed } from '../measure/number-text.ts';
import { MEASURES } from '../recipe/measures/definitions.ts';
import type { Kind } from '../recipe/measures/kind.ts';
import { KINDS, kindInHouse } from '../recipe/measures/kinds.ts';
import { bandText } from '../recipe/measures/measure-text.ts';
import type { World } from '../recipe/model.ts';
import { capital } from '../recipe/words.ts';
import { markdownText } from './markdown-text.ts';

export interface TypePage {
  readonly title: string;
  readonly markdown: string;
}

/** What pages are called: `kind-sweet-paste`, `food-wheat-flour-plain`. */
export const kindPageName = ({ name }: Kind): string => `kind-${name.replaceAll(' ', '-')}`;
export const foodPageName = ({ id }: Food): string => `food-${id}`;

/** The page of that name as a house has it; undefined where there is none. */
export function typePage(name: string, { book, bands }: Pick<World, 'book' | 'bands'>): TypePage | undefined {
  const kind = KINDS.find((each) => kindPageName(each) === name);
  if (kind !== undefined) return { title: kind.name, markdown: kindPage(kindInHouse(kind, bands)) };
  const food = foodNamed(name, book);
  return food && { title: food.name, markdown: foodPage(food) };
}

const foodNamed = (name: string, book: FoodBook): Food | undefined =>
  name.startsWith('food-') ? book.byId(name.slice('food-'.length)) : undefined;

function kindPage({ name, group, also = [], measures }: Kind): string {
  const rows = measures.map(({ measure, usual, implausible, source }) =>
    row([capital(MEASURES[measure].words), bandText(measure, usual), bandText(measure, implausible), source]),
  );
  const outside = measures.flatMap(({ measure, below, above, raise, lower }) => [
    ...(below === undefined || below === '' ? [] : [sentence(measure, 'below', below, raise)]),
    ...(above === undefined || above === '' ? [] : [sentence(measure, 'above', above, lower)]),
  ]);
  return [
    `# ${name}`,
    '',
    [`Of the ${group}s`, ...(also.length === 0 ? [] : [`also called ${also.join(', ')}`])].join('; '),
    '',
    ...(rows.length === 0
      ? ['Nothing of it is held against figures.']
      : [row(['measure', 'usual', 'fails outside', 'source']), row(['---', '---', '---', '---']), ...rows]),
    '',
    ...outside.map((words) => `- ${words}`),
    '',
  ].join('\n');
}

const sentence = (measure: keyof typeof MEASURES, side: string, outcome: string, change: string | undefined): string =>
  `${capital(MEASURES[measure].words)} ${side} the usual: ${outcome}${change === undefined || change === '' ? '' : `. To mend it, ${change}`}`;

function foodPage(food: Food): string {
  const { totals } = compose([{ food, grams: 100 }]);
  const rows = COMPONENTS.map((component) => {
    const { grams, known } = totals[component];
    return row([component, known ? `${gramsText(grams)} g` : 'not known']);
  });
  const measures = food.measures.map(
    ({ unit, form, grams, source }) =>
      `- 1 ${unit}${form === undefined ? '' : `, ${form}`}: ${range(grams)} (${markdownText(source)})`,
  );
  const { trim } = food;
  return [
    `# ${markdownText(food.name)}`,
    '',
    `A ${food.class}${food.house === true ? ' of the house' : ''}. Source: ${markdownText(food.source)}`,
    '',
    row(['in 100 g', '']),
    row(['---', '---']),
    ...rows,
    '',
    ...measures,
    ...(trim === undefined ? [] : [`- Trim: usually ${trimmed(trim.share * 100, 0)} % (${markdownText(trim.what)})`]),
    '',
  ].join('\n');
}

const range = ({ low, high }: { readonly low: number; readonly high: number }): string =>
  gramsText(low) === gramsText(high) ? `${gramsText(low)} g` : `${gramsText(low)} to ${gramsText(high)} g`;

const row = (cells: readonly string[]): string => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
