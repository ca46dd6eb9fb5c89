/**
 * Knows how the sorted table of forms is packed into the bundles, at two thirds of its size, and unpacked when the first word is looked up.
 * Refuses to know what stands in it.
 */

/** A packed table begins with this, the table itself with a remark. */
const PACKED = '=';
/** The letter for a form that shares no beginning with the one before. */
const NONE = 48;
/** So many letters may be shared: those behind `Z` have a backslash among them, which a bundle writes as two. */
const MOST = 42;

/** The forms, each with how many letters it shares with the one before, and behind them what stands beside each. */
export function packedForms(table: string): string {
  const rows = table.split('\n').slice(1, -1);
  let before = '';
  const forms = rows.map((row) => {
    const form = row.slice(0, row.indexOf('\t'));
    let shared = 0;
    while (shared < MOST && shared < form.length && form[shared] === before[shared]) shared++;
    before = form;
    return String.fromCharCode(NONE + shared) + form.slice(shared);
  });
  const beside = rows.map((row) => row.slice(row.indexOf('\t') + 1));
  return [PACKED, ...forms, ...beside].join('\n');
}

/** The table, of which nobody asks for the remark; a table that is not packed is given back as it is. */
export function unpackedForms(text: string): string {
  if (!text.startsWith(PACKED)) return text;
  const lines = text.split('\n');
  const count = (lines.length - 1) / 2;
  const rows = ['#'];
  let before = '';
  for (let i = 1; i <= count; i++) {
    const line = lines[i] as string;
    before = before.slice(0, line.charCodeAt(0) - NONE) + line.slice(1);
    rows.push(`${before}\t${lines[count + i]}`);
  }
  return `${rows.join('\n')}\n`;
}
