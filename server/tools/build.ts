/**
 * Bundles the three artefacts into dist/, each one minified file. `--watch` rebuilds on change.
 */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import * as esbuild from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { version } = JSON.parse(await readFile(`${root}package.json`, 'utf8')) as { version: string };

/** The command says in one line when Node is too old for it, before anything else is loaded. */
const NEEDS_NODE =
  "if(Number(process.versions.node.split('.')[0])<20){process.stderr.write('quern needs Node 20 or later; this is '+process.version+'\\n');process.exit(2)}";

export const BUNDLE: esbuild.BuildOptions = {
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
 * Node keeps what it compiled for the next start only of files that are loaded after it was told to. So a bundle is text
 * that its first line hands over, as if it were the file itself. It is kept in the user's own cache folder, or where
 * NODE_COMPILE_CACHE says; nothing is kept with NODE_DISABLE_COMPILE_CACHE=1.
 */
const LAUNCH = `{const {env,platform}=process,{join}=require('node:path'),home=require('node:os').homedir();
const caches=platform==='win32'?env.LOCALAPPDATA||home:platform==='darwin'?join(home,'Library','Caches'):env.XDG_CACHE_HOME||join(home,'.cache');
require('node:module').enableCompileCache?.(env.NODE_COMPILE_CACHE||join(caches,'quern'))}
`;

/**
 * Writes the outputs in ASCII alone. esbuild leaves other characters in regular expressions, and one of them makes the
 * engine hold the whole bundle at two bytes a character and read it half as fast.
 */
const writing = (head: string, launched: boolean): esbuild.Plugin => ({
  name: 'writing',
  setup(build) {
    build.initialOptions.write = false;
    build.onEnd(async ({ outputFiles = [] }) => {
      await mkdir(`${root}dist`, { recursive: true });
      for (const { path, text } of outputFiles) {
        const ascii = text.replace(/[^\0-\x7f]/g, escapeUnit);
        const whole = launched ? `${LAUNCH}module._compile(${JSON.stringify(ascii)},__filename);\n` : ascii;
        await writeFile(path, head + whole);
      }
    });
  },
});

const escapeUnit = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;

const builds: esbuild.BuildOptions[] = [
  {
    ...BUNDLE,
    plugins: [writing('', false)],
    entryPoints: { client: 'client/src/extension.ts' },
    external: ['vscode'],
    outdir: 'dist',
  },
  { ...BUNDLE, plugins: [writing('', true)], entryPoints: { server: 'server/src/server.ts' }, outdir: 'dist' },
  {
    ...BUNDLE,
    plugins: [writing(`#!/usr/bin/env node\n${NEEDS_NODE}\n`, true)],
    entryPoints: { cli: 'server/src/cli.ts' },
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
