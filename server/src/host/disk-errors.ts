/**
 * Knows what the errors of the disk are called.
 */

const WORDS: Readonly<Record<string, string>> = {
  ENOSPC: 'there is no room left on its disk',
  EDQUOT: 'there is no room left on its disk',
  EROFS: 'its disk is read-only',
  ENOENT: 'its folder is not there',
  ENOTDIR: 'its folder is not there',
  EISDIR: 'it is a folder',
  ENAMETOOLONG: 'its name is too long',
  ELOOP: 'it is a link to itself',
};

/** Why something could not be done; `denied` where that is a matter of permission. */
export function diskErrorWords(error: unknown, denied: string): string {
  const code = codeOf(error);
  if (code === 'EACCES' || code === 'EPERM') return denied;
  return WORDS[code] ?? (error instanceof Error ? error.message : String(error));
}

/** `ENOENT`; empty for an error of another kind. */
export const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
