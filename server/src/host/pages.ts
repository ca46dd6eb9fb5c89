/**
 * Knows where the pages of the findings lie as files. Refuses to know what they say.
 */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** The `file:` URI of a code's page in the folder `pages` beside a program; undefined for each where that folder is not there. */
export function pagesBeside(program: string): (code: string) => string | undefined {
  const folder = join(dirname(program), 'pages');
  let isThere: boolean | undefined;
  return (code) => {
    isThere ??= existsSync(folder);
    return isThere ? pathToFileURL(join(folder, `${code}.md`)).href : undefined;
  };
}
