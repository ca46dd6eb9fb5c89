/**
 * Bundles the programs into dist/, minified: what starts each as a file of its own, their texts and the tables packed together in another;
 * and writes the pages of the findings beside them, and what of others is in them. `--small` packs as small as can be, which takes some
 * seconds; `--watch` rebuilds the bundles on change.
 */
import './tables-as-text.ts';
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import * as esbuild from 'esbuild';
import { minifySync } from 'rolldown/utils';
import { linkedPrograms } from './linked-programs.ts';
import { packParts, Tables } from './pack.ts';
import { writeThirdParty } from './third-party.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const own = JSON.parse(await readFile(`${root}package.json`, 'utf8')) as Parameters<typeof writeThirdParty>[2];

/** The command says in one line when Node is too old for it, before anything else is loaded. */
const NEEDS_NODE =
  "if(Number(process.versions.node.split('.')[0])<20){process.stderr.write('quern needs Node 20 or later; this is '+process.version+'\\n');process.exit(2)}";

/** In the order in which their texts are packed: of the first there is the least to unpack. */
const PROGRAMS = [
  { name: 'client', entry: 'client/src/extension.ts', hasTables: false, isGuest: true, starts: '' },
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
] as const;

const PACK = 'quern.br';
const effort = argv.includes('--small') ? 'small' : 'quick';
const tables = new Tables(`${root}server/data`);

const BUNDLE: esbuild.BuildOptions = {
  absWorkingDir: root,
  bundle: true,
  minify: true,
  platform: 'node',
  target: 'node20',
  outdir: 'dist',
  define: { QUERN_BUNDLED: 'true', QUERN_VERSION: JSON.stringify(own.version) },
  legalComments: 'none',
  logLevel: 'warning',
};

/** The client's library asks whether the editor is new enough, which no editor installs without by `engines`: a fifteenth of the bundle goes into it. */
const editorIsNew: esbuild.Plugin = {
  name: 'editor-is-new',
  setup(build) {
    build.onLoad({ filter: /semver[\\/]functions[\\/](?:parse|satisfies)\.js$/ }, () => ({
      contents: 'module.exports=()=>true',
    }));
  },
};

/** The kit of the Model Context Protocol checks forms that a server has people fill in. Ours asks nobody: half of its bundle goes into it. */
const asksNobody: esbuild.Plugin = {
  name: 'asks-nobody',
  setup(build) {
    build.onLoad({ filter: /validation[\\/]ajv-provider\.js$/ }, () => ({
      contents: 'export class AjvJsonSchemaValidator{}',
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
      const { groups, programs } = linkedPrograms(PROGRAMS, modules, metafile, tables.text());
      const { packed, ends } = await packParts(groups, effort);
      await mkdir(`${root}dist`, { recursive: true });
      await writeFile(`${root}dist/${PACK}`, packed);
      for (const [at, { name, starts }] of PROGRAMS.entries())
        await esbuild.build({
          ...BUNDLE,
          format: 'cjs',
          define: { QUERN_PROGRAM: JSON.stringify({ file: PACK, packedBytes: ends[at], ...programs[at] }) },
          banner: { js: starts },
          entryPoints: { [name]: 'server/src/host/launch.ts' },
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
    plugins: [editorIsNew, asksNobody, tables.plugin, launched],
    entryPoints: Object.fromEntries(PROGRAMS.map(({ name, entry }) => [name, entry])),
    external: ['vscode', './server.js', './mcp.js'],
    format: 'esm',
    splitting: true,
  },
  {
    ...BUNDLE,
    plugins: [asFile],
    entryPoints: { page: 'client/src/page/script/page.ts' },
    platform: 'browser',
    format: 'iife',
    target: 'chrome134',
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
