/**
 * Knows how the arguments of a command are read: long options with a value or none, and paths.
 * Refuses to know what they mean.
 */
import { UsageError } from './io.ts';

export type OptionKind = 'flag' | 'value';

export interface Options {
  readonly values: Readonly<Record<string, string | undefined>>;
  readonly flags: ReadonlySet<string>;
  readonly rest: readonly string[];
}

/** Every other name is an option too, with a value that the command reads. */
export const ANY = '*';

/**
 * Reads `--name value`, `--name=value` and `--flag`; `--` ends the options. An unknown option is bad usage, but where the command knows its
 * options by `ANY` alone.
 */
export function readOptions(args: readonly string[], known: Readonly<Record<string, OptionKind>>): Options {
  const values: Record<string, string> = {};
  const flags = new Set<string>();
  const rest: string[] = [];
  for (let i = 0; i < args.length; i++) {
    const arg = args[i] ?? '';
    if (arg === '--') {
      rest.push(...args.slice(i + 1));
      break;
    }
    if (!arg.startsWith('--')) {
      rest.push(arg);
      continue;
    }
    const [name = '', inline] = splitOnce(arg.slice(2));
    const kind = Object.hasOwn(known, name) ? known[name] : known[ANY];
    if (kind === undefined)
      throw new UsageError(
        `there is no option --${name}; there are ${Object.keys(known)
          .map((k) => `--${k}`)
          .join(', ')}`,
      );
    if (kind === 'flag') {
      if (inline !== undefined) throw new UsageError(`--${name} takes no value`);
      flags.add(name);
      continue;
    }
    const value = inline ?? args[++i];
    if (value === undefined) throw new UsageError(`--${name} wants a value`);
    values[name] = value;
  }
  return { values, flags, rest };
}

/** The value of an option that has a few choices, or the default. */
export function choiceOf<T extends string>(options: Options, name: string, choices: readonly T[], otherwise: T): T {
  const value = options.values[name];
  if (value === undefined) return otherwise;
  const found = choices.find((c) => c === value);
  if (found === undefined) throw new UsageError(`--${name} is one of ${choices.join(', ')}, not \`${value}\``);
  return found;
}

function splitOnce(text: string): [string, string | undefined] {
  const at = text.indexOf('=');
  return at < 0 ? [text, undefined] : [text.slice(0, at), text.slice(at + 1)];
}
