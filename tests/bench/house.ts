/** A house of recipes on the disk: those of the example kitchen and the whole recipes of the tests, over and over, each file another text. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Recipes that build on no other and describe no food, of 20 to 60 lines: what people keep. */
export const REAL_RECIPES: readonly string[] = ['examples', 'tests/kitchen/works']
  .flatMap((folder) =>
    (readdirSync(join(root, folder), { recursive: true }) as string[])
      .filter((name) => name.endsWith('.quern'))
      .sort()
      .map((name) => readFileSync(join(root, folder, name), 'utf8')),
  )
  .sort((a, b) => b.length - a.length)
  .filter((text) => {
    const lines = text.split('\n').length;
    return (
      lines >= 20 && lines <= 60 && /^recipe /m.test(text) && !/^\s*(?:from|food)\s|\sfrom\s\S+\.quern/m.test(text)
    );
  });

export interface House {
  readonly path: string;
  readonly pathOf: (recipe: number) => string;
  readonly textOf: (recipe: number) => string;
  readonly remove: () => void;
}

export function writeHouse(recipes: number): House {
  const path = mkdtempSync(join(tmpdir(), 'quern-house-'));
  const remove = () => rmSync(path, { recursive: true, force: true });
  process.on('exit', remove);
  const pathOf = (i: number) => join(path, String(Math.floor(i / 100)), `recipe-${i}.quern`);
  const textOf = (i: number) => `${REAL_RECIPES[i % REAL_RECIPES.length]}\n# ${i}\n`;
  writeFileSync(join(path, 'quern.json'), '{}\n');
  for (let i = 0; i < recipes; i++) {
    if (i % 100 === 0) mkdirSync(join(path, String(i / 100)));
    writeFileSync(pathOf(i), textOf(i));
  }
  return { path, pathOf, textOf, remove };
}
