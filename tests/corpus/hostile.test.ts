/** What crashed once, hung, or told after an edit another thing than afresh: `npm run fuzz` keeps it here, and the laws hold of it from then on. */
import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { holdsAlone, holdsInSession, session } from '../fuzz/laws.ts';

const FOLDER = 'tests/corpus/hostile';
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith('.quern'));
const client = await session();
afterAll(() => client.close());

describe.each(FILES)('%s', (file) => {
  const text = readFileSync(`${FOLDER}/${file}`, 'utf8');

  test('holds by itself', () => expect(() => holdsAlone(text)).not.toThrow());

  test('holds in a session', () => expect(holdsInSession(text, client)).resolves.toBeUndefined());
});
