/** Knows paths of texts that lie on no disk: with `/`, and of one root. */

/** The path of `name` seen from a folder: `a/../b.quern`, `/b.quern`. */
export function posix(folder: string, name: string): string {
  const names: string[] = [];
  for (const each of (name.startsWith('/') ? name : `${folder}/${name}`).split('/'))
    if (each === '..') names.pop();
    else if (each !== '' && each !== '.') names.push(each);
  return `/${names.join('/')}`;
}
