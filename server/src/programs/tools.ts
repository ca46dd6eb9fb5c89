/**
 * Knows what is offered to programs that speak the Model Context Protocol: each tool with what it takes, as JSON Schema, and the words in
 * which the command line is asked for it. Refuses to know the protocol. None of them writes.
 */
import { UsageError } from '../cli/io.ts';
import { CONVERSIONS } from '../edits/conversion.ts';
import { MEASURES_CHOICES } from '../measure/systems.ts';

/** What a tool was called with; nothing is taken on trust. */
export type Given = Readonly<Record<string, unknown>>;

export interface Tool {
  readonly name: string;
  readonly title: string;
  readonly description: string;
  /** By name, as JSON Schema. */
  readonly takes: Readonly<Record<string, object>>;
  readonly needs: readonly string[];
  /** It is of a recipe: a file below the folder, or a text. */
  readonly of?: 'recipe' | 'recipe or folder';
  /** The command and its options, without the file. */
  readonly args: (given: Given) => readonly string[];
}

const FORMAT = {
  type: 'string',
  enum: ['text', 'json'],
  description: 'text as a cook reads it (the default), or the whole document as JSON',
};
const words = (description: string) => ({ type: 'string', description });

export const TOOLS: readonly Tool[] = [
  {
    name: 'check',
    title: 'Check recipes',
    description:
      'Findings for a recipe or a folder of recipes: what will fail or hurt someone, by how much, and what to do. A finding of safety is never to be talked away; local codes and licensed practice decide.',
    takes: { format: FORMAT },
    needs: [],
    of: 'recipe or folder',
    args: (given) => ['check', '--format', formatOf(given) === 'json' ? 'json' : 'compact'],
  },
  {
    name: 'report',
    title: 'Work a recipe out',
    description:
      'A recipe in grams, percentages, composition, measures against their usual bands, times, oven estimates with ranges, nutrition, allergens and cost. What is not known is said so, and is never nought.',
    takes: { format: FORMAT },
    needs: [],
    of: 'recipe or folder',
    args: (given) => ['report', '--format', formatOf(given)],
  },
  {
    name: 'scale',
    title: 'Scale a recipe',
    description:
      'The text of a recipe at another size. Give one of by, to, to_mass, to_pan and have. The file stays as it is.',
    takes: {
      by: { type: 'number', exclusiveMinimum: 0, description: 'how many times as much' },
      to: words('a yield: 12 slices, 24 rolls of 60 g'),
      to_mass: words('a weight: 900 g'),
      to_pan: words('a tin: round 28 x 3 cm'),
      have: words('what there is of one ingredient: 230 g plums'),
      part: words('of this part alone'),
    },
    needs: [],
    of: 'recipe',
    args: (given) => ['scale', ...options(given, ['by', 'to', 'to_mass', 'to_pan', 'have', 'part'])],
  },
  {
    name: 'convert',
    title: 'Convert the measures of a recipe',
    description:
      'The text of a recipe in other measures, or with its temperatures on another scale. The file stays as it is.',
    takes: { to: { type: 'string', enum: CONVERSIONS } },
    needs: ['to'],
    of: 'recipe',
    args: (given) => ['convert', ...options(given, ['to'])],
  },
  {
    name: 'weigh',
    title: 'Weigh an amount',
    description: 'The grams of an amount of a food, with the reason and the source: 1 1/2 cup plain flour.',
    takes: {
      amount: words('an amount and a food, as a recipe lists it'),
      measures: { type: 'string', enum: MEASURES_CHOICES, description: 'whose cups and spoons' },
      format: FORMAT,
    },
    needs: ['amount'],
    args: (given) => [
      'weigh',
      '--format',
      formatOf(given),
      ...options(given, ['measures']),
      '--',
      text(given, 'amount'),
    ],
  },
  {
    name: 'explain',
    title: 'Explain a finding',
    description:
      'The page of a finding: what it computes, why it matters, what to do, when it is silent. Without a code, the list of all.',
    takes: { code: words('the finding, such as dough-too-wet') },
    needs: [],
    args: (given) => ['explain', ...(given.code === undefined ? [] : ['--', text(given, 'code')])],
  },
];

/** `to_mass` is `--to-mass`; what is not given is left out. */
const options = (given: Given, names: readonly string[]): string[] =>
  names.flatMap((name) => (given[name] === undefined ? [] : [`--${name.replaceAll('_', '-')}=${text(given, name)}`]));

/** A text, or a number written out. */
export function text(given: Given, name: string): string {
  const value = given[name];
  if (typeof value === 'string' || (typeof value === 'number' && Number.isFinite(value))) return String(value);
  throw new UsageError(`\`${name}\` is a text`);
}

function formatOf(given: Given): 'text' | 'json' {
  const format = given.format === undefined ? 'text' : text(given, 'format');
  if (format !== 'text' && format !== 'json') throw new UsageError('`format` is text or json');
  return format;
}
