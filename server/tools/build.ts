/**
 * Bundles the artefacts into dist/, minified; what the server and the command share as a text of its own, the tables packed; and writes
 * the pages of the findings beside them, and what of others is in them. `--watch` rebuilds the bundles on change.
 */
import './tables-as-text.ts';
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { crc32 } from 'node:zlib';
import * as esbuild from 'esbuild';
import { minifySync } from 'rolldown/utils';
import { ownText, type SplitModule, sharedBody } from './shared-text.ts';
import { TABLES_NAME, TablePack } from './table-pack.ts';
import { writeThirdParty } from './third-party.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const own = JSON.parse(await readFile(`${root}package.json`, 'utf8')) as Parameters<typeof writeThirdParty>[2];

/** The command says in one line when Node is too old for it, before anything else is loaded. */
const NEEDS_NODE =
  "if(Number(process.versions.node.split('.')[0])<20){process.stderr.write('quern needs Node 20 or later; this is '+process.version+'\\n');process.exit(2)}";

const tables = new TablePack(`${root}server/data`);
const TABLES = 'tables.br';

const BUNDLE: esbuild.BuildOptions = {
  absWorkingDir: root,
  bundle: true,
  minify: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  define: { QUERN_BUNDLED: 'true', QUERN_VERSION: JSON.stringify(own.version) },
  legalComments: 'none',
  logLevel: 'warning',
};

/**
 * Writes the outputs in ASCII alone. esbuild leaves other characters in regular expressions, and one of them makes the
 * engine hold the whole bundle at two bytes a character and read it half as fast.
 */
const inAscii: esbuild.Plugin = {
  name: 'in-ascii',
  setup(build) {
    build.initialOptions.write = false;
    build.onEnd(async ({ outputFiles = [] }) => {
      await mkdir(`${root}dist`, { recursive: true });
      for (const { path, text } of outputFiles) await writeFile(path, asciiOf(renamed(path, text)));
    });
  },
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

/** What starts each program, before anything is loaded. */
const HEADS = { server: '', cli: `#!/usr/bin/env node\n${NEEDS_NODE}` };
const SHARED = 'engine.js';

/**
 * Writes what server and command have in common once, and each of them as its own text and what starts it
 * (`host/launch.ts`): one function of both texts, that can be told what was compiled of it.
 */
const launched: esbuild.Plugin = {
  name: 'launched',
  setup(build) {
    build.initialOptions.write = false;
    build.initialOptions.metafile = true;
    build.onEnd(async ({ outputFiles = [], metafile }) => {
      if (metafile === undefined || outputFiles.length === 0) return;
      const module = (name: string): SplitModule => ({
        text: asciiOf(renamed(`${name}.mjs`, outputFiles.find(({ path }) => basename(path) === name)?.text ?? '')),
        nodeImports:
          metafile.outputs[`dist/${name}`]?.imports.filter(
            ({ external, kind }) => external === true && kind === 'import-statement',
          ).length ?? 0,
      });
      const body = sharedBody(module(SHARED));
      const head = `/*${crc32(body)}*/`;
      await mkdir(`${root}dist`, { recursive: true });
      await writeFile(`${root}dist/${SHARED}`, head + body);
      const tablesHead = await tables.write(`${root}dist/${TABLES}`);
      for (const [name, starts] of Object.entries(HEADS)) {
        const own = ownText(
          module(`${name}.js`),
          SHARED,
          `exports,require,module,__filename,QUERN_COMPILED,${TABLES_NAME}`,
        );
        await esbuild.build({
          ...BUNDLE,
          define: {
            QUERN_BEFORE: JSON.stringify(own.before),
            QUERN_SHARED: JSON.stringify(SHARED),
            QUERN_SHARED_HEAD: JSON.stringify(head),
            QUERN_TABLES_FILE: JSON.stringify(TABLES),
            QUERN_TABLES_HEAD: JSON.stringify(tablesHead),
            QUERN_BEHIND: JSON.stringify(own.behind),
            QUERN_SUM: String(crc32(own.before + head + body + own.behind)),
          },
          banner: { js: starts },
          entryPoints: { [name]: 'server/src/host/launch.ts' },
          outdir: 'dist',
        });
      }
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

const asciiOf = (text: string): string => text.replace(/[^\0-\x7f]/g, escapeUnit);

const escapeUnit = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;

const builds: esbuild.BuildOptions[] = [
  {
    ...BUNDLE,
    plugins: [editorIsNew, inAscii],
    entryPoints: { client: 'client/src/extension.ts' },
    external: ['vscode'],
    outdir: 'dist',
  },
  {
    ...BUNDLE,
    plugins: [inAscii],
    entryPoints: { page: 'client/src/page/script/page.ts' },
    platform: 'browser',
    format: 'iife',
    target: 'chrome134',
    outdir: 'dist',
  },
  {
    ...BUNDLE,
    plugins: [tables.plugin, launched],
    entryPoints: { server: 'server/src/server.ts', cli: 'server/src/cli.ts' },
    external: ['./server.js'],
    format: 'esm',
    splitting: true,
    chunkNames: SHARED.replace(/\.js$/, ''),
    outdir: 'dist',
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
