/**
 * Bundles the programs into dist/, minified: what starts each as a file of its own, their texts and the tables packed together in another;
 * and writes the pages of the findings beside them, and what of others is in them. `--small` packs as small as can be, which takes some
 * seconds; `--named` leaves every function its name, for a profile; `--watch` rebuilds the bundles on change.
 */
import './tables-as-text.ts';
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import * as esbuild from 'esbuild';
import { minifySync } from 'rolldown/utils';
import { linkedPrograms } from './linked-programs.ts';
import { packParts, Tables } from './pack.ts';
import { shownExamples } from './shown-examples.ts';
import { writeThirdParty } from './third-party.ts';
import { unasked } from './unasked.ts';
import { unshown } from './unshown.ts';
import { wordsGiven, wordsIn } from './words.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const own = JSON.parse(await readFile(`${root}package.json`, 'utf8')) as Parameters<typeof writeThirdParty>[2];

/** The command says in one line when Node is too old for it, before anything else is loaded. */
const NEEDS_NODE =
  "if(Number(process.versions.node.split('.')[0])<20){process.stderr.write('quern needs Node 20 or later; this is '+process.version+'\\n');process.exit(2)}";

interface Program {
  readonly name: string;
  readonly entry: string;
  readonly hasTables: boolean;
  readonly isGuest: boolean;
  /** What stands before all that starts it in Node. */
  readonly starts?: string;
}

/** Both are started by one file (`client/src/web/launch.ts`). */
const CLIENT_OF_WEB = 'client.web';
const SERVER_OF_WEB = 'server.web';

/** In the order in which their texts are packed: of the first there is the least to unpack. */
const PROGRAMS = [
  { name: 'client', entry: 'client/src/extension.ts', hasTables: false, isGuest: true, starts: '' },
  { name: CLIENT_OF_WEB, entry: 'client/src/extension.web.ts', hasTables: false, isGuest: true },
  {
    name: 'cli',
    entry: 'server/src/cli.ts',
    hasTables: true,
    isGuest: false,
    starts: `#!/usr/bin/env node\n${NEEDS_NODE}`,
  },
  { name: 'server', entry: 'server/src/server.ts', hasTables: true, isGuest: false, starts: '' },
  { name: 'api', entry: 'server/src/api.ts', hasTables: true, isGuest: true, starts: '' },
  { name: 'mcp', entry: 'server/src/mcp.ts', hasTables: true, isGuest: false, starts: '' },
  { name: SERVER_OF_WEB, entry: 'server/src/server.web.ts', hasTables: true, isGuest: true },
] as const satisfies readonly Program[];

const PACK = 'quern.br';
const WORDS = 'words.bin';
const effort = argv.includes('--small') ? 'small' : 'quick';
const isNamed = argv.includes('--named');
const tables = new Tables(`${root}server/data`);

const BUNDLE: esbuild.BuildOptions = {
  absWorkingDir: root,
  bundle: true,
  minifySyntax: true,
  minifyWhitespace: true,
  minifyIdentifiers: !isNamed,
  platform: 'node',
  target: 'node20',
  outdir: 'dist',
  define: { QUERN_BUNDLED: 'true', QUERN_VERSION: JSON.stringify(own.version) },
  legalComments: 'none',
  logLevel: 'warning',
};

/** What a module is given in an extension host, and no worker. */
const OF_MODULE =
  'var QUERN_MODULE=typeof module=="object"?module:void 0,QUERN_REQUIRE=typeof require=="function"?require:void 0;';

const OF_BROWSER = { platform: 'browser', format: 'iife', target: 'chrome134' } as const;

/** The parts of the protocol's library that are for a browser stand beside those for Node, which the rest of a build is for. */
const libraryOfBrowser: esbuild.Plugin = {
  name: 'library-of-browser',
  setup(build) {
    build.onResolve({ filter: /^vscode-[a-z-]+\/browser$/ }, ({ path }) => ({
      path: join(root, 'node_modules', dirname(path), 'lib/browser/main.js'),
    }));
  },
};

/** Packs the texts of the programs, and writes what starts each of them (`host/launch.ts`). */
const launched: esbuild.Plugin = {
  name: 'launched',
  setup(build) {
    build.initialOptions.write = false;
    build.initialOptions.metafile = true;
    build.onEnd(async ({ outputFiles = [], metafile }) => {
      if (metafile === undefined || outputFiles.length === 0) return;
      const modules = outputFiles.map(({ path, text }) => ({ path, text: asciiOf(renamed(path, text)) }));
      const { groups, programs } = linkedPrograms(PROGRAMS, modules, metafile, await tables.text());
      const { packed, ends } = await packParts(groups, effort);
      await mkdir(`${root}dist`, { recursive: true });
      await writeFile(`${root}dist/${PACK}`, packed);
      await writeFile(`${root}dist/${WORDS}`, await wordsIn(packed, effort));
      const told = new Map(
        PROGRAMS.map(({ name }, at) => [name, JSON.stringify({ file: PACK, packedBytes: ends[at], ...programs[at] })]),
      );
      for (const { name, ...program } of PROGRAMS)
        if ('starts' in program)
          await esbuild.build({
            ...BUNDLE,
            format: 'cjs',
            define: { QUERN_PROGRAM: told.get(name) ?? '' },
            banner: { js: program.starts },
            entryPoints: { [name]: 'server/src/host/launch.ts' },
            external: ['./launch-rarely.js'],
          });
      await esbuild.build({
        ...BUNDLE,
        format: 'cjs',
        entryPoints: { 'launch-rarely': 'server/src/host/launch-rarely.ts' },
      });
      await esbuild.build({
        ...BUNDLE,
        ...OF_BROWSER,
        plugins: [wordsGiven],
        define: { QUERN_CLIENT: told.get(CLIENT_OF_WEB) ?? '', QUERN_SERVER: told.get(SERVER_OF_WEB) ?? '' },
        banner: { js: OF_MODULE },
        entryPoints: { web: 'client/src/web/launch.ts' },
      });
      const { exports = [] } = metafile.outputs['dist/api.js'] ?? {};
      await writeFile(`${root}dist/api.mjs`, `import api from './api.js';export const {${exports.join()}}=api;\n`);
    });
  },
};

/** Writes what a page loads by itself. */
const asFile: esbuild.Plugin = {
  name: 'as-file',
  setup(build) {
    build.initialOptions.write = false;
    build.onEnd(async ({ outputFiles = [] }) => {
      await mkdir(`${root}dist`, { recursive: true });
      for (const { path, text } of outputFiles) await writeFile(path, asciiOf(renamed(path, text)));
    });
  },
};

/** What esbuild minified with its names chosen anew, so that one is used as often as can be: a tenth less once it is packed. */
function renamed(path: string, text: string): string {
  if (isNamed) return text;
  const { code, errors } = minifySync(path, text, {
    compress: false,
    mangle: true,
    codegen: { removeWhitespace: true },
  });
  if (errors.length > 0) throw new Error(`${path}: ${errors.map(({ message }) => message).join('; ')}`);
  return code;
}

/** esbuild leaves other characters in regular expressions, and one of them makes the engine hold a whole text at two bytes a character and read it half as fast. */
const asciiOf = (text: string): string => text.replace(/[^\0-\x7f]/g, escapeUnit);

const escapeUnit = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;

const builds: readonly esbuild.BuildOptions[] = [
  {
    ...BUNDLE,
    plugins: [unasked, libraryOfBrowser, tables.plugin, shownExamples, unshown, launched],
    // The reference of the notation, which programs ask for.
    loader: { '.md': 'text' },
    entryPoints: Object.fromEntries(PROGRAMS.map(({ name, entry }) => [name, entry])),
    external: ['vscode', './server.js', './mcp.js'],
    format: 'esm',
    splitting: true,
  },
  {
    ...BUNDLE,
    ...OF_BROWSER,
    plugins: [asFile],
    entryPoints: {
      page: 'client/src/page/script/page.ts',
      browser: 'client/src/page/script/browser.ts',
      markdown: 'client/src/markdown/preview.ts',
    },
  },
];

if (argv.includes('--watch')) {
  for (const options of builds) await (await esbuild.context({ ...options, logLevel: 'info' })).watch();
} else {
  const built = await Promise.all(builds.map((options) => esbuild.build({ ...options, metafile: true })));
  const inputs = built
    .flatMap(({ metafile }) => Object.values(metafile.outputs).flatMap(({ inputs }) => Object.entries(inputs)))
    .flatMap(([path, { bytesInOutput }]) => (bytesInOutput > 0 ? [path] : []));
  await writeThirdParty(root, inputs, own);
  // The package has no "type", and none of its parents may lend one.
  await writeFile(`${root}dist/package.json`, '{"type":"commonjs"}\n');
  await writePages(`${root}dist/pages`);
}

/** The page of each finding as a file, for editors that have no place of their own for it. */
async function writePages(folder: string): Promise<void> {
  const [{ CHECKS }, { explainPage }] = await Promise.all([
    import('../src/checks/index.ts'),
    import('../src/publish/page.ts'),
  ]);
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  await Promise.all(CHECKS.map((check) => writeFile(`${folder}/${check.code}.md`, explainPage(check))));
}
