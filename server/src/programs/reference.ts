/** Knows how the notation's reference is told, whole or by what is asked of it. Refuses to know where it lies. */

/** The sections whose heading, or else whose text, has all the words; without words its headings. */
export function referenceOn(reference: string, about: string): string {
  const sections = reference.split(/^(?=#{1,3} )/mu);
  const words = about
    .toLowerCase()
    .split(/\s+/u)
    .filter((word) => word !== '');
  if (words.length === 0) return sections.map((section) => section.split('\n', 1)[0] ?? '').join('\n');
  const has = (text: string): boolean => words.every((word) => text.toLowerCase().includes(word));
  const named = sections.filter((section) => has(section.split('\n', 1)[0] ?? ''));
  const found = named.length > 0 ? named : sections.filter(has);
  return found.length > 0
    ? found.join('\n')
    : `Nothing of the reference has \`${about}\`. Its headings:\n\n${referenceOn(reference, '')}`;
}
