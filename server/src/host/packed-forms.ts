/**
 * Knows how the sorted table of forms is packed into the bundles, at two thirds of its size, and unpacked before a program starts.
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
  const packed = forms.join('\n');
  const beside = rows.map((row) => row.slice(row.indexOf('\t') + 1));
  return `${PACKED}${packed.length}\n${packed}\n${beside.join('\n')}`;
}

/** The table, of which nobody asks for the remark; a table that is not packed is given back as it is. */
export function unpackedForms(text: string): string {
  if (!text.startsWith(PACKED)) return text;
  const first = text.indexOf('\n') + 1;
  const last = first + Number(text.slice(PACKED.length, first - 1));
  const chunks = ['#\n'];
  let before = '';
  let rows: string[] = [];
  let beside = last + 1;
  for (let at = first; at < last; ) {
    const end = text.indexOf('\n', at);
    const besideEnd = text.indexOf('\n', beside);
    before = before.slice(0, text.charCodeAt(at) - NONE) + text.slice(at + 1, end);
    rows.push(before, '\t', text.slice(beside, besideEnd < 0 ? text.length : besideEnd), '\n');
    at = end + 1;
    beside = besideEnd + 1;
    // A few at a time, so that what is only in passing never grows old.
    if (rows.length >= CHUNK) {
      chunks.push(rows.join(''));
      rows = [];
    }
  }
  return chunks.join('') + rows.join('');
}

const CHUNK = 2000;
