// Knows the patterns of files that Quern's server registers with the editor, in the place of the library of all patterns that the client's
// library brings: `**/*.quern`, `**/*.{jpg,png}`, `**`. It refuses to know sets of characters and what is not to be matched.

/** Where it stands for the library, by its name there. */
export class Minimatch {
  private readonly whole: RegExp;

  constructor(glob: string, options: { readonly nocase?: boolean } = {}) {
    this.whole = new RegExp(`^${expressionOf(glob)}$`, options.nocase === true ? 'i' : '');
  }

  match(path: string): boolean {
    return this.whole.test(path);
  }

  makeRe(): RegExp {
    return this.whole;
  }
}

const PARTS = /\*\*\/|\*\*|\*|\?|\{([^{}]*)\}|[.+^$()|[\]\\{}]/g;

const expressionOf = (glob: string): string =>
  glob.replace(PARTS, (part, either: string | undefined) => {
    if (either !== undefined) return `(?:${either.split(',').map(expressionOf).join('|')})`;
    return EXPRESSIONS[part] ?? `\\${part}`;
  });

/** Names do not go over a `/`. */
const EXPRESSIONS: Readonly<Record<string, string>> = { '**/': '(?:.*/)?', '**': '.*', '*': '[^/]*', '?': '[^/]' };
