import { readText } from '../../edits/read-text/read-text.ts';
import type { Command } from '../command.ts';
import { housesFor, INPUT_OPTIONS, readOne } from '../inputs.ts';
import { type Exit, UsageError } from '../io.ts';

export const read: Command = {
  name: 'read',
  usage: 'FILE [--stdin --stdin-name NAME]',
  summary: 'a printed recipe, or schema.org JSON-LD, turned into the notation',
  options: { ...INPUT_OPTIONS },
  examples: [
    'quern read scones.txt > scones.quern',
    'quern read page.html > tart.quern      # its JSON-LD',
    'pbpaste | quern read --stdin',
  ],
  async run(options, io): Promise<Exit> {
    const input = await readOne(options, io);
    const result = readText(input.text, housesFor(io).of(input.path).house.world);
    if (result.ingredients === 0)
      throw new UsageError(`no list of ingredients was found in \`${input.shown}\`: one a line, the amount first`);
    io.document(result.text);
    for (const { line, what, printed } of result.missed)
      io.err(
        `${input.shown}:${line}: not understood as ${what === 'ingredient' ? 'an ingredient' : `a ${what}`}: ${printed}\n`,
      );
    return 0;
  },
};
