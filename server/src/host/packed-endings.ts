/**
 * Knows how the sorted list of what the names of foods end with is packed: as the last words of the names in the tables beside it, but for those that
 * are not kept so. Made again before a program starts.
 * Refuses to know how a word is kept.
 */

/** What a table that names foods begins with, behind its remark. */
const NAMING = /^#\nid\tname\talso\t.*\n/;
/** Before a word that stands last in a name, and not on the list. */
const NONE = '-';

export function packedEndings(endings: string, tables: readonly string[]): string {
  const own = endings.split('\n').slice(1, -1);
  const made = lastWords(tables);
  const others = own.filter((word) => !made.delete(word));
  return [...others, ...[...made].map((word) => NONE + word)].join('\n');
}

/** The list, from the same tables. */
export function unpackedEndings(text: string, tables: readonly string[]): string {
  const words = lastWords(tables);
  if (text !== '')
    for (const row of text.split('\n')) {
      if (row.startsWith(NONE)) words.delete(row.slice(NONE.length));
      else words.add(row);
    }
  return `#\n${[...words].sort().join('\n')}\n`;
}

/** In small letters, of several things the one. */
function lastWords(tables: readonly string[]): Set<string> {
  const words = new Set<string>();
  for (const table of tables) {
    const [heading] = NAMING.exec(table) ?? [];
    if (heading === undefined) continue;
    for (const row of table.slice(heading.length, -1).split('\n')) {
      const [, name = '', also = ''] = row.split('\t', 3);
      for (const each of `${name};${also}`.split(';')) {
        const word = each.slice(each.lastIndexOf(' ') + 1).toLowerCase();
        words.add(word.replace(/ies$/, 'y').replace(/([^su])s$/, '$1'));
      }
    }
  }
  words.delete('');
  return words;
}
