/** Knows texts that lie beside the program itself, and are part of it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Undefined where it was not installed with it. */
export function textBeside(program: string, name: string): string | undefined {
  try {
    return readFileSync(join(program, name), 'utf8');
  } catch {
    return undefined;
  }
}
