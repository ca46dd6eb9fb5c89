/**
 * Bundles the three artefacts into dist/, minified; the server and the command each as a text and a file that starts it. `--watch` rebuilds on change.
 */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { crc32 } from 'node:zlib';
import * as esbuild from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { version } = JSON.parse(await readFile(`${root}package.json`, 'utf8')) as { version: string };

/** The command says in one line when Node is too old for it, before anything else is loaded. */
const NEEDS_NODE =
  "if(Number(process.versions.node.split('.')[0])<20){process.stderr.write('quern needs Node 20 or later; this is '+process.version+'\\n');process.exit(2)}";

const BUNDLE: esbuild.BuildOptions = {
  absWorkingDir: root,
  bundle: true,
  minify: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  loader: { '.tsv': 'text' },
  define: { QUERN_BUNDLED: 'true', QUERN_VERSION: JSON.stringify(version) },
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
      for (const { path, text } of outputFiles) await writeFile(path, asciiOf(text));
    });
  },
};

/** Writes a bundle as a text within what starts it (`host/launch.ts`): one file, that can be told what was compiled of it. */
const launched = (name: string, head: string): esbuild.Plugin => ({
  name: 'launched',
  setup(build) {
    build.initialOptions.write = false;
    build.onEnd(async ({ outputFiles: [main] = [] }) => {
      if (main === undefined) return;
      const text = `(function(exports,require,module,__filename,QUERN_COMPILED){${asciiOf(main.text)}})`;
      await esbuild.build({
        ...BUNDLE,
        define: { QUERN_MAIN: JSON.stringify(text), QUERN_MAIN_SUM: String(crc32(text)) },
        banner: { js: head },
        entryPoints: { [name]: 'server/src/host/launch.ts' },
        outdir: 'dist',
      });
    });
  },
});

const asciiOf = (text: string): string => text.replace(/[^\0-\x7f]/g, escapeUnit);

const escapeUnit = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;

const builds: esbuild.BuildOptions[] = [
  {
    ...BUNDLE,
    plugins: [inAscii],
    entryPoints: { client: 'client/src/extension.ts' },
    external: ['vscode'],
    outdir: 'dist',
  },
  { ...BUNDLE, plugins: [launched('server', '')], entryPoints: { server: 'server/src/server.ts' }, outdir: 'dist' },
  {
    ...BUNDLE,
    plugins: [launched('cli', `#!/usr/bin/env node\n${NEEDS_NODE}`)],
    entryPoints: { cli: 'server/src/cli.ts' },
    external: ['./server.js'],
    outdir: 'dist',
  },
];

if (argv.includes('--watch')) {
  for (const options of builds) await (await esbuild.context({ ...options, logLevel: 'info' })).watch();
} else {
  await Promise.all(builds.map((options) => esbuild.build(options)));
  // The package has no "type", and none of its parents may lend one.
  await writeFile(`${root}dist/package.json`, '{"type":"commonjs"}\n');
}
