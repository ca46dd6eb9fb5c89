/**
 * Knows how a tool's call is answered: the recipe found, or refused, the command asked, and what it printed.
 * Refuses to know the protocol.
 */
import { type Io, type Machine, UsageError } from '../cli/io.ts';
import { shownOn } from '../cli/shown-on.ts';
import { type Answer, ask } from './ask.ts';
import { inMemory } from './in-memory.ts';
import { referenceOn } from './reference.ts';
import { searchFor } from './search.ts';
import { type Given, TOOLS, type Tool, text } from './tools.ts';
import { within } from './within.ts';

/** The folder that was opened, and what lies beside the program. */
export interface Opened {
  readonly machine: (printed: Pick<Machine, 'out' | 'err'>) => Machine;
  /** The notation's reference, in Markdown; undefined where it is not there. */
  readonly reference: () => string | undefined;
}

export interface Told {
  readonly text: string;
  /** It could not be done; the text says why. */
  readonly failed: boolean;
}

/** Each tool's input as JSON Schema. */
export const inputSchema = ({ takes, needs, of }: Tool) => ({
  type: 'object' as const,
  properties: {
    ...(of === undefined
      ? {}
      : {
          path: {
            type: 'string',
            description: `the ${of === 'recipe' ? 'file' : 'file or folder'}, below the folder that was opened`,
          },
          text: { type: 'string', description: 'a recipe as text, in the place of a file' },
        }),
    ...takes,
  },
  required: [...needs],
  additionalProperties: false,
});

/** The tools that are no command of the command line. */
export const OTHERS: readonly Tool[] = [
  {
    name: 'search',
    title: 'Search the folder',
    description:
      'Recipes below the folder whose name, tags, parts or ingredients have all the words, with the lines and how far each is proved.',
    takes: { words: { type: 'string', description: 'what to look for: almond, sweet paste, autumn' } },
    needs: ['words'],
    args: () => [],
  },
  {
    name: 'reference',
    title: 'The notation',
    description:
      'How a recipe is written: the sections of the notation that speak of something; without words, the headings.',
    takes: { about: { type: 'string', description: 'pan, trial, part, temperature' } },
    needs: [],
    args: () => [],
  },
];

const ALL: ReadonlyMap<string, Tool> = new Map([...TOOLS, ...OTHERS].map((tool) => [tool.name, tool]));

/** Answers one call; what is wrong with it is told in words. */
export async function call(name: string, given: Given, opened: Opened): Promise<Told> {
  try {
    return await answer(name, given, opened);
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    return { text: error.message, failed: true };
  }
}

async function answer(name: string, given: Given, { machine, reference }: Opened): Promise<Told> {
  const tool = ALL.get(name);
  if (tool === undefined) throw new UsageError(`there is no tool \`${name}\`; there are ${[...ALL.keys()].join(', ')}`);
  const known = Object.keys(inputSchema(tool).properties);
  const odd = Object.keys(given).find((each) => !known.includes(each));
  if (odd !== undefined) throw new UsageError(`\`${name}\` takes no \`${odd}\`; it takes ${known.join(', ')}`);
  for (const need of tool.needs) text(given, need);
  if (name === 'reference') {
    const whole = reference();
    if (whole === undefined) throw new UsageError('the reference is not beside this program');
    return { text: referenceOn(whole, given.about === undefined ? '' : text(given, 'about')), failed: false };
  }
  if (name === 'search') return search(text(given, 'words'), machine);
  const { exit, out, err } = await asked(tool, given, machine);
  return { text: [out, err].filter((each) => each !== '').join('\n'), failed: exit === 2 };
}

function asked(tool: Tool, given: Given, machine: Opened['machine']): Promise<Answer> {
  const args = tool.args(given);
  if (tool.of === undefined) return ask(args, machine);
  if (given.text !== undefined && given.path !== undefined) throw new UsageError('give `path` or `text`, not both');
  if (given.text !== undefined) {
    const recipe = text(given, 'text');
    const today = machine({ out: () => undefined, err: () => undefined }).today();
    return ask([...args, '--stdin'], (printed) => inMemory({ files: {}, input: recipe, today }, printed));
  }
  if (given.path === undefined && tool.of === 'recipe')
    throw new UsageError('give the `path` of a recipe, or its `text`');
  const path = given.path === undefined ? '.' : text(given, 'path');
  return ask([...args, '--', path], (printed) => {
    const own = machine(printed);
    within(own, path);
    return own;
  });
}

async function search(words: string, machine: Opened['machine']): Promise<Told> {
  let err = '';
  const own = machine({
    out: () => undefined,
    err: (each) => {
      err += each;
    },
  });
  const io: Io = {
    ...shownOn(own),
    trouble: (each) => {
      err += `${each}\n`;
    },
  };
  const hits = await searchFor(words, io);
  const lines = hits.map(
    ({ path, recipe, state, lines }) =>
      `${path}: ${recipe} (${state})${lines.map(({ line, text }) => `\n  ${line}: ${text}`).join('')}`,
  );
  return {
    text: [hits.length === 0 ? 'Nothing below the folder has these words.' : lines.join('\n'), err]
      .filter((each) => each !== '')
      .join('\n'),
    failed: false,
  };
}
