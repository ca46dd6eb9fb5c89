import type { Command } from '../command.ts';
import { type Exit, UsageError } from '../io.ts';
import type { Options } from '../options.ts';
import { addressOf, ServedPages } from '../served-pages.ts';
import { Shelf } from '../shelf.ts';

const MOST_PORT = 65_535;

export const serve: Command = {
  name: 'serve',
  usage: '[FOLDER|FILE] [--port N]',
  summary: 'recipes as pages in a browser on this machine, and in the kitchen one step at a time',
  options: { port: 'value' },
  examples: ['quern serve', 'quern serve recipes --port 8080', 'quern serve recipes/tart.quern'],
  async run(options, io): Promise<Exit> {
    const { web } = io;
    if (web === undefined) throw new UsageError('nothing can be served from here');
    const port = portOf(options);
    const [path = '.', ...more] = options.rest;
    if (more.length > 0) throw new UsageError(`name one folder; \`${more.join(' ')}\` is left over`);
    const absolute = io.resolve(path);
    const kind = io.kind(absolute);
    if (kind === undefined) throw new UsageError(`there is no file or folder \`${path}\``);
    const shelf = new Shelf(kind === 'folder' ? absolute : io.files.beside(absolute, '.'), io, web);
    shelf.look();
    const name = kind === 'folder' ? undefined : shelf.nameOf(absolute);
    if (name !== undefined && shelf.pathOf(name) === undefined) throw new UsageError(`\`${path}\` is no recipe`);
    const pages = new ServedPages(shelf, io, web.script());
    await web.serve(port, {
      answer: (asked) => pages.answer(asked),
      ready: (address) =>
        io.out(`${address}${addressOf(name ?? '')}\nOnly this machine is answered. Ctrl+C ends it.\n`),
      prepare: () => pages.prepare(),
    });
    return 0;
  },
};

/** 0 has one chosen. */
function portOf({ values: { port } }: Options): number {
  if (port === undefined) return 0;
  const number = Number(port);
  if (!/^\d+$/.test(port) || number < 1 || number > MOST_PORT)
    throw new UsageError(`--port is a number from 1 to ${MOST_PORT}, not \`${port}\``);
  return number;
}
