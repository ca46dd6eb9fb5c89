/**
 * Knows the command line: which command is meant, its help, and how a failure is told.
 * Refuses to know any command's work.
 */
import { visibleLine } from '../publish/visible.ts';
import type { Command } from './command.ts';
import { adjust } from './commands/adjust.ts';
import { check } from './commands/check.ts';
import { config } from './commands/config.ts';
import { convert } from './commands/convert.ts';
import { diff } from './commands/diff.ts';
import { explain } from './commands/explain.ts';
import { format } from './commands/format.ts';
import { init } from './commands/init.ts';
import { label } from './commands/label.ts';
import { plan } from './commands/plan.ts';
import { publish } from './commands/publish.ts';
import { read } from './commands/read.ts';
import { report } from './commands/report.ts';
import { scale } from './commands/scale.ts';
import { serve } from './commands/serve.ts';
import { trial } from './commands/trial.ts';
import { weigh } from './commands/weigh.ts';
import { errorJson } from './formats/json.ts';
import { type Exit, type Machine, UsageError } from './io.ts';
import { readOptions } from './options.ts';
import { shownOn } from './shown-on.ts';

/** All commands but `lsp` and `mcp`, which the root wires. */
export const COMMANDS: readonly Command[] = [
  check,
  report,
  label,
  scale,
  adjust,
  convert,
  format,
  weigh,
  explain,
  config,
  init,
  diff,
  publish,
  serve,
  plan,
  read,
  trial,
];

/** Runs one command. `starts` has what answers others: the language server for `lsp`, the tools for `mcp`. */
export async function main(
  args: readonly string[],
  machine: Machine,
  starts: Readonly<Record<'lsp' | 'mcp', () => void>>,
  version: string,
): Promise<Exit | 'serving'> {
  const [name = 'help', ...rest] = args;
  const io = shownOn(machine);
  if (name === 'lsp') {
    if (rest.includes('--help') || rest.includes('-h')) {
      io.out(HELP_OF_LSP);
      return 0;
    }
    if (!rest.some((arg) => /^--(?:stdio|node-ipc|socket|pipe)(?:=|$)/.test(arg))) {
      io.err('quern lsp: an editor starts it, and speaks to it over --stdio\n');
      return 2;
    }
    starts.lsp();
    return 'serving';
  }
  if (name === 'mcp') {
    if (rest.length > 0) {
      io.out(HELP_OF_MCP);
      return rest.includes('--help') || rest.includes('-h') ? 0 : 2;
    }
    starts.mcp();
    return 'serving';
  }
  if (name === 'help' || name === '--help' || name === '-h') {
    io.out(helpAll());
    return 0;
  }
  if (name === '--version' || name === 'version') {
    io.out(`${version}\n`);
    return 0;
  }
  const command = COMMANDS.find((c) => c.name === name);
  if (command === undefined) {
    io.err(
      `quern: there is no command \`${visibleLine(name)}\`; there are ${[...COMMANDS.map((c) => c.name), 'lsp', 'mcp'].join(', ')}\n`,
    );
    return 2;
  }
  // Behind `--` stand names.
  const said = rest.includes('--') ? rest.slice(0, rest.indexOf('--')) : rest;
  if (said.includes('--help') || said.includes('-h')) {
    io.out(helpOf(command));
    return 0;
  }
  const troubles = new Set<string>();
  const trouble = (words: string): void => {
    if (troubles.has(words)) return;
    troubles.add(words);
    io.err(`quern: ${visibleLine(words)}\n`);
  };
  try {
    const exit = await command.run(readOptions(rest, command.options), { ...io, trouble }, version);
    return troubles.size > 0 ? 2 : exit;
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    if (wantsJson(rest)) io.out(errorJson(error.message));
    io.err(`quern ${command.name}: ${visibleLine(error.message)}\n`);
    return 2;
  }
}

const HELP_OF_LSP = [
  'quern lsp --stdio',
  '',
  '  the language server, for an editor to start; README.md shows how for Neovim, Helix and Emacs',
  '',
].join('\n');

const HELP_OF_MCP = [
  'quern mcp',
  '',
  '  the same work for programs that speak the Model Context Protocol, over standard input and output: check, report, scale, convert, weigh,',
  '  explain, search and reference, of the folder that it is started in; it takes no options, writes nothing and sends nothing anywhere',
  '',
].join('\n');

const wantsJson = (args: readonly string[]): boolean =>
  args.includes('--format=json') || args[args.indexOf('--format') + 1] === 'json';

function helpAll(): string {
  const width = Math.max(...COMMANDS.map((c) => c.name.length));
  const rows = COMMANDS.map((c) => `  ${c.name.padEnd(width)}  ${c.summary}`);
  return [
    'quern: recipes kept as text, worked out in grams and checked',
    '',
    'quern COMMAND [options]',
    '',
    ...rows,
    `  ${'lsp'.padEnd(width)}  the language server, over --stdio`,
    `  ${'mcp'.padEnd(width)}  the same work for programs that speak the Model Context Protocol`,
    '',
    'quern COMMAND --help says more. Exit: 0 fine, 1 findings at or above the level, 2 bad usage or unreadable input.',
    '',
  ].join('\n');
}

function helpOf(command: Command): string {
  return [
    `quern ${command.name} ${command.usage}`,
    '',
    `  ${command.summary}`,
    '',
    ...command.examples.map((e) => `  ${e}`),
    '',
  ].join('\n');
}
