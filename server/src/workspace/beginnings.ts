/**
 * Knows the files with which a folder of recipes is begun: its settings, how git keeps it, what is checked at a commit and on a server.
 * Refuses to write one, and to know which are there.
 */
import type { Measures } from '../measure/systems.ts';
import { DEFAULTS } from './settings.ts';

export interface Beginning {
  /** Where it goes: the folder of the recipes, the root of its repository, or where git looks for hooks. */
  readonly at: 'house' | 'root' | 'hooks';
  readonly name: string;
  readonly text: string;
  readonly executable?: true;
  /** What a file of that name that is there already lacks, in words; undefined where it lacks nothing. */
  readonly lacking: (there: string) => string | undefined;
}

/** `inside` is the way from the root of the repository to the recipes, '' where they are one: `kitchen/recipes`. */
export function beginningsOf(measures: Measures, inside: string): readonly Beginning[] {
  return [
    {
      at: 'house',
      name: 'quern.json',
      text: `${JSON.stringify({ measures, foodSafety: DEFAULTS.foodSafety }, null, 2)}\n`,
      lacking: () => undefined,
    },
    {
      at: 'root',
      name: '.gitattributes',
      text: `${ATTRIBUTES}\n`,
      lacking: (there) => (/^\s*\*\.quern\s/m.test(there) ? undefined : `add the line \`${ATTRIBUTES}\``),
    },
    { at: 'hooks', name: 'pre-commit', text: hook(inside), executable: true, lacking: lacksCheck },
    { at: 'root', name: '.github/workflows/recipes.yml', text: workflow(inside), lacking: lacksCheck },
  ];
}

/** Lines end alike on every machine, and `git config diff.quern.command "npx --no -- quern diff"` has git tell changes as a cook would. */
const ATTRIBUTES = '*.quern text diff=quern';

const lacksCheck = (there: string): string | undefined =>
  /\bquern check\b/.test(there) ? undefined : 'add the line `npx --no -- quern check`';

/** As a word of the shell. */
const quoted = (path: string): string => `'${path.replaceAll("'", "'\\''")}'`;

/** Nothing is fetched: `--no` takes Quern where it is installed, in the folder or for all. */
const hook = (inside: string): string => `#!/bin/sh
# Made by \`quern init\`. No recipe is committed with an error in it; \`git commit --no-verify\` goes past this.
cd ${quoted(inside === '' ? '.' : `./${inside}`)} || exit 1
if ! npx --no -- quern --version > /dev/null 2>&1; then
  echo 'quern is not installed, so no recipe was checked: install it, or commit with --no-verify' >&2
  exit 1
fi
if git rev-parse --verify --quiet HEAD > /dev/null; then
  exec npx --no -- quern check --since HEAD
fi
exec npx --no -- quern check
`;

const workflow = (
  inside: string,
): string => `# Made by \`quern init\`: checks the recipes, and says what is found on the lines of a pull request.
# Quern is installed as package.json names it; where that is not there, the variable QUERN_PACKAGE of the repository says from where:
# whatever \`npm install\` takes, such as a packed file that is kept in it.
name: recipes
on:
  pull_request:
  push:
    branches: [main]
permissions:
  contents: read
jobs:
  check:
    runs-on: ubuntu-latest
    steps:
      - uses: actions/checkout@v4
      - uses: actions/setup-node@v4
        with:
          node-version: 22
      - name: Install
        env:
          QUERN_PACKAGE: \${{ vars.QUERN_PACKAGE }}
        run: |
          if [ -f package-lock.json ]; then npm ci; else npm install --no-save "$QUERN_PACKAGE"; fi
      - name: Check
        working-directory: ${JSON.stringify(inside === '' ? '.' : inside)}
        run: npx --no -- quern check --format github
`;
