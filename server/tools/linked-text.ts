/**
 * Makes of the modules that a bundler split texts that need no module loader: each is the body of a function that gives what its module
 * exports, and a program is the functions it needs, one after the other.
 * Refuses to know what stands in them.
 */

/** A split module as the bundler wrote it, minified. */
export interface SplitModule {
  readonly text: string;
  /** The other modules it imports, by the name they are imported by: `./chunk-1.js`. */
  readonly from: readonly string[];
}

/** What a program's function is given: what a module has, and what `host/launch.ts` adds. */
const PARAMETERS = 'exports,require,module,__filename,QUERN_COMPILED,QUERN_TABLES';

/** What stands around and between the texts of a program; `given` is what a module's function gave. */
export const AROUND = {
  start: `(function(${PARAMETERS}){"use strict";`,
  before: (given: string): string => `var ${given}=(function(){`,
  behind: '})();',
  end: '})',
} as const;

/** The text of a module whose exports others import: the body of a function that returns them. */
export function sharedText(module: SplitModule, given: (from: string) => string): string {
  const [text, names] = exporting(requiring(module, given));
  return `${text}return{${names.map(([local, exported]) => `${exported}:${local}`)}}`;
}

/** The text of a program's own module, which hands its exports to who loads it. */
export function entryText(module: SplitModule, given: (from: string) => string): string {
  const [text, names] = exporting(requiring(module, given));
  return text + names.map(([local, exported]) => `exports.${exported}=${local};`).join('');
}

const IMPORT = /import(?:(?:\*as ([\w$]+) |\{([^{}]*)\}| ([\w$]+) )from)?"([^"]+)";/g;

/** The text with its imports of split modules as what their functions gave, and all others as calls of `require`. */
function requiring({ text, from }: SplitModule, given: (from: string) => string): string {
  const met = new Set<string>();
  const required = text.replace(IMPORT, (_, whole?: string, names?: string, single?: string, path = '') => {
    met.add(path);
    const isGiven = from.includes(path);
    const what = isGiven ? given(path) : `require("${path}")`;
    // What is wanted for what it does was run when its function was.
    if (whole === undefined && names === undefined && single === undefined) return isGiven ? '' : `${what};`;
    // What Node has is its default.
    const all = isGiven ? whole : (whole ?? single);
    return `var ${all ?? `{${renamed(pairs(names ?? `default as ${single}`))}}`}=${what};`;
  });
  const missed = from.filter((path) => !met.has(path));
  const left = /(?:^|[;}])import[^\w(.][^;]{0,80}/.exec(required);
  if (missed.length > 0 || left !== null)
    throw new Error(`imports that are not understood: ${[...missed, ...(left ?? [])].join(', ')}`);
  return required;
}

/** The text without the statement that exports, and the names in it. */
function exporting(text: string): [text: string, names: [string, string][]] {
  const names = /export\{([^{}]*)\};?\s*$/.exec(text);
  return names === null ? [text, []] : [text.slice(0, names.index), pairs(names[1] ?? '')];
}

/** `a as b,c` as pairs. */
function pairs(names: string): [string, string][] {
  return names.split(',').map((name) => {
    const [from = '', to = from] = name.split(' as ');
    return [from, to];
  });
}

const renamed = (names: readonly [string, string][]): string => names.map((pair) => pair.join(':')).join();
