const WORDS: Readonly<Record<string, [string, string]>> = {
  error: ['error', 'errors'],
  warning: ['warning', 'warnings'],
  info: ['note', 'notes'],
  hint: ['hint', 'hints'],
  file: ['file', 'files'],
  finding: ['finding', 'findings'],
};

/** How many there are of something, in its number: `1 note`, `2 files`. */
export function plural(count: number, word: string): string {
  const [one, many] = WORDS[word] ?? [word, `${word}s`];
  return `${count} ${count === 1 ? one : many}`;
}
