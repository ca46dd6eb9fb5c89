/**
 * Bundles the three artefacts into dist/, each one minified file. `--watch` rebuilds on change.
 */
import { readFile, writeFile } from 'node:fs/promises';
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

const builds: esbuild.BuildOptions[] = [
  { ...BUNDLE, entryPoints: { client: 'client/src/extension.ts' }, external: ['vscode'], outdir: 'dist' },
  { ...BUNDLE, entryPoints: { server: 'server/src/server.ts' }, outdir: 'dist' },
  {
    ...BUNDLE,
    entryPoints: { cli: 'server/src/cli.ts' },
    outdir: 'dist',
    banner: { js: `#!/usr/bin/env node\n${NEEDS_NODE}` },
  },
];

if (argv.includes('--watch')) {
  for (const options of builds) await (await esbuild.context({ ...options, logLevel: 'info' })).watch();
} else {
  await Promise.all(builds.map((options) => esbuild.build(options)));
  // The package has no "type", and none of its parents may lend one.
  await writeFile(`${root}dist/package.json`, '{"type":"commonjs"}\n');
}
