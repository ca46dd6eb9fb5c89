// Knows whether a file holds nothing yet that a whole recipe would stand beside: blank lines and comments alone.
// It refuses to know the notation beyond the mark of a comment.

export const isBlank = (text: string): boolean => text.split(/\r\n|\r|\n/).every((line) => /^\s*(?:#|$)/.test(line));
