import { layout } from '../../notation/layout.ts';
import { visibleLine } from '../../publish/visible.ts';
import type { Command } from '../command.ts';
import { plural } from '../formats/plural.ts';
import { housesFor, INPUT_OPTIONS, type Input, readMany, snapshotOf } from '../inputs.ts';
import { refuseToWriteStdin, save, UsageError } from '../io.ts';

export const format: Command = {
  name: 'format',
  usage: '[PATH…] [--check] [--write] [--stdin --stdin-name NAME]',
  summary: 'canonical layout',
  options: { ...INPUT_OPTIONS, check: 'flag', write: 'flag' },
  examples: ['quern format tart.quern', 'quern format --write .', 'quern format --check .'],
  async run(options, io) {
    if (options.flags.has('check') && options.flags.has('write'))
      throw new UsageError('--check only looks and --write writes: give one of them');
    refuseToWriteStdin(options.flags, 'write');
    const houses = housesFor(io);
    const inputs = await readMany(options, io, houses);
    const laidOut = inputs.map((input) => ({ input, text: layOut(input, houses) }));
    const changed = laidOut.filter(({ input, text }) => text !== input.text);
    if (options.flags.has('check')) {
      for (const { input } of changed) io.out(`${visibleLine(input.shown)}\n`);
      return changed.length > 0 ? 1 : 0;
    }
    if (options.flags.has('write')) {
      save(
        changed.map(({ input, text }) => ({ path: input.path, before: input.text, text })),
        io,
      );
      io.err(`${changed.length} of ${plural(inputs.length, 'file')} laid out anew.\n`);
      return 0;
    }
    if (laidOut.length > 1)
      throw new UsageError(
        'several files: give --write to lay them out in place, or --check to list those that would change',
      );
    for (const { input, text } of laidOut) io.document(input.mark + text);
    return 0;
  },
};

function layOut(input: Input, houses: ReturnType<typeof housesFor>): string {
  const { document, outline } = snapshotOf(input, houses);
  return layout(document, outline)
    .map((line, i) => line + (document.eols[i] ?? ''))
    .join('');
}
