/**
 * Knows a house's own template: a text with named holes, `{{title}}`, and stretches for what is there, `{{#recipe}} … {{/recipe}}`, into which the
 * pieces of a page are laid.
 * Refuses to run anything that a template says, as it may come with somebody else's recipes; and a hole that nothing fills.
 */
import mustache from 'mustache';

export type Filled = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly why: string };

/** Texts as the format wants them; things with texts of their own, lists of such, or null where a page has none. */
export interface Pieces {
  readonly [name: string]: string | null | Pieces | readonly Pieces[];
}

/** The template with its holes filled. An unknown hole, or none at all, is said. */
export function fillTemplate(template: string, pieces: Pieces): Filled {
  const holes = Object.keys(pieces)
    .map((name) => `{{${name}}}`)
    .join(', ');
  const refused = (why: string): Filled => ({ ok: false, why: `${why}; there are ${holes}` });
  let tokens: readonly Token[];
  try {
    tokens = mustache.parse(template);
  } catch (error) {
    return refused(`the template cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  if (!tokens.some(([kind]) => kind !== 'text')) return refused('the template has no hole');
  const unknown = unknownIn(tokens, [pieces]);
  if (unknown !== undefined) return refused(`the template has no use for {{${unknown}}}`);
  // The pieces are escaped already, each for its format.
  return { ok: true, text: mustache.render(template, pieces, {}, { escape: (text: unknown) => String(text) }) };
}

/** What the library calls a piece of a template: its kind, its name, where it stands, and what stands within. */
type Token = ReturnType<typeof mustache.parse>[number];

/** The first name that means nothing where it stands; `around` has the nearest things last. */
function unknownIn(tokens: readonly Token[], around: readonly Pieces[]): string | undefined {
  for (const [kind, name, , , within] of tokens) {
    if (kind === 'text' || kind === '!' || kind === '=') continue;
    // Another template is none of the pieces.
    if (kind === '>') return `> ${name}`;
    const found = name === '.' ? around.at(-1) : meant(name, around);
    if (found === undefined) return name;
    if (!Array.isArray(within)) continue;
    // Within what a page does not have nothing is laid.
    if (found === null) continue;
    const own = Array.isArray(found) ? found[0] : typeof found === 'object' ? found : undefined;
    if (Array.isArray(found) && own === undefined) continue;
    const unknown = unknownIn(within, own === undefined ? around : [...around, own as Pieces]);
    if (unknown !== undefined) return unknown;
  }
  return undefined;
}

/** `recipe.title`, of the nearest thing that has its first name. */
function meant(name: string, around: readonly Pieces[]): Pieces[string] | undefined {
  const [first = '', ...rest] = name.split('.');
  const holder = around.findLast((each) => Object.hasOwn(each, first));
  let found: Pieces[string] | undefined = holder?.[first];
  for (const part of rest) {
    const at: Pieces | undefined =
      typeof found === 'object' && found !== null && !Array.isArray(found) ? (found as Pieces) : undefined;
    found = at !== undefined && Object.hasOwn(at, part) ? at[part] : undefined;
  }
  return found;
}
