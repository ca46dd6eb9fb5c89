/**
 * Knows a house's own template: a text with named holes, `[[title]]`, into which the pieces of a page are laid.
 * Refuses any logic: a hole is filled or it is a mistake.
 */
export type Filled = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly why: string };

const HOLE = /\[\[\s*([a-z][a-z-]*)\s*\]\]/g;

/** The template with its holes filled. An unknown hole, or none at all, is said. */
export function fillTemplate(template: string, pieces: Readonly<Record<string, string>>): Filled {
  const names = [...template.matchAll(HOLE)].map((m) => m[1] ?? '');
  const holes = Object.keys(pieces)
    .map((name) => `[[${name}]]`)
    .join(', ');
  if (names.length === 0) return { ok: false, why: `the template has no hole; there are ${holes}` };
  const unknown = names.find((name) => !Object.hasOwn(pieces, name));
  if (unknown !== undefined)
    return { ok: false, why: `the template has no use for [[${unknown}]]; there are ${holes}` };
  return { ok: true, text: template.replace(HOLE, (_, name: string) => pieces[name] ?? '') };
}
