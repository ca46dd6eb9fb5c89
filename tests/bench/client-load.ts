/** How long an editor waits for the client's own text: it loads it where all extensions run, so all of them wait. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT } from './bundle.ts';
import { median } from './figures.ts';

export interface ClientLoad {
  /** Processor time in ms, with nothing kept of an earlier start. */
  readonly firstMs: number;
  /** The same with what was kept. */
  readonly againMs: number;
}

/** Every name of the editor's interface is there, and gives itself whatever is asked of it. */
const LOAD = `
const any = new Proxy(function () {}, {
  get: (of, key) => key === Symbol.toPrimitive ? () => '' : key === 'prototype' ? of.prototype : key === 'then' ? undefined : any,
  apply: () => any,
  construct: () => ({}),
});
const Module = require('node:module');
const load = Module._load;
const [client, ...names] = process.argv.slice(1);
const editor = Object.fromEntries(names.map((name) => [name, any]));
Module._load = function (name, ...rest) {
  return name === 'vscode' ? editor : load.call(this, name, ...rest);
};
const before = process.cpuUsage();
require(client);
const { user, system } = process.cpuUsage(before);
process.stdout.write(String((user + system) / 1000));
`;

export function measureClientLoad(tries: number): ClientLoad {
  const interfaces = readFileSync(`${ROOT}node_modules/@types/vscode/index.d.ts`, 'utf8');
  const names = interfaces.matchAll(/^\texport (?:abstract )?(?:class|enum|namespace|const|function) (\w+)/gm);
  const args = ['-e', LOAD, `${ROOT}dist/client.js`, ...new Set([...names].map(([, name = '']) => name))];
  const kept = mkdtempSync(join(tmpdir(), 'quern-client-'));
  const once = (env: NodeJS.ProcessEnv): number =>
    Number(spawnSync(process.execPath, args, { encoding: 'utf8', env: { ...process.env, ...env } }).stdout);
  const all = (env: NodeJS.ProcessEnv): number => median(Array.from({ length: tries }, () => once(env))) ?? Number.NaN;
  try {
    once({ NODE_COMPILE_CACHE: kept });
    return { firstMs: all({ NODE_DISABLE_COMPILE_CACHE: '1' }), againMs: all({ NODE_COMPILE_CACHE: kept }) };
  } finally {
    rmSync(kept, { recursive: true });
  }
}
