/**
 * Knows how a text stands in HTML, whatever it is.
 * Refuses to write any HTML.
 */

/** Text as HTML shows it, in an element and in a quoted attribute. */
export function escapeHtml(text: string): string {
  return (
    text
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
      .replaceAll('"', '&quot;')
      .replaceAll("'", '&#39;')
      // A page may not hold these at all.
      .replace(/[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f]/g, '\ufffd')
      // A line does not end between a figure and its degrees.
      .replace(/(\d) (?=°[CF])/g, '$1&nbsp;')
  );
}
