/**
 * Makes of the modules that a bundler split, one shared text and one of each program's own, functions that need no module
 * loader: the shared one returns what it has to give, and the own one stands around it.
 */

/** A split module as esbuild writes it, minified. */
export interface SplitModule {
  readonly text: string;
  /** How many import statements of Node's modules stand in it. */
  readonly nodeImports: number;
}

/** A program's text before and behind the shared one. */
export interface OwnText {
  readonly before: string;
  readonly behind: string;
}

/** The body of a function that returns what the module exports. */
export function sharedBody(shared: SplitModule): string {
  const [text, names] = parted(requiring(shared), /export\{([^{}]*)\};?\s*$/);
  return `${text}return{${names.map(([local, exported]) => `${exported}:${local}`)}}`;
}

/** What goes around that body, which was imported as `from`: together a function with these parameters. */
export function ownText(own: SplitModule, from: string, parameters: string): OwnText {
  const [text, names] = parted(requiring(own), new RegExp(`^import\\{([^{}]*)\\}from"\\./${from}";`));
  return {
    before: `(function(${parameters}){"use strict";var{${renamed(names)}}=(function(){`,
    behind: `})();${text}})`,
  };
}

/** The text with its imports of Node's modules as calls of `require`. */
function requiring({ text, nodeImports }: SplitModule): string {
  let understood = 0;
  const required = text.replace(/import\{([^{}]*)\}from("node:[\w/]+");/g, (_, names: string, from: string) => {
    understood++;
    return `var{${renamed(pairs(names))}}=require(${from});`;
  });
  if (understood !== nodeImports)
    throw new Error(`${understood} of ${nodeImports} imports of Node's modules understood`);
  return required;
}

/** The text without the statement, and the names in it. */
function parted(text: string, statement: RegExp): [text: string, names: [string, string][]] {
  const names = statement.exec(text)?.[1];
  if (names === undefined) throw new Error(`no ${statement.source}`);
  return [text.replace(statement, ''), pairs(names)];
}

/** `a as b,c` as pairs. */
function pairs(names: string): [string, string][] {
  return names.split(',').map((name) => {
    const [from = '', to = from] = name.split(' as ');
    return [from, to];
  });
}

const renamed = (names: readonly [string, string][]): string => names.map((pair) => pair.join(':')).join();
