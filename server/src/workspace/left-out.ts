/**
 * Knows which files a house leaves out of what is checked as a folder: `"ignore": ["drafts/**"]`, as git reads such lines.
 */
import ignore from 'ignore';

/** `folder` is the house's own; a file asked for by itself is checked all the same. */
export function isLeftOut(path: string, folder: string | undefined, globs: readonly string[]): boolean {
  if (folder === undefined || globs.length === 0) return false;
  const inside = path
    .slice(folder.length)
    .replace(/^[\\/]/, '')
    .replaceAll('\\', '/');
  return (
    inside !== '' &&
    ignore()
      .add([...globs])
      .ignores(inside)
  );
}
