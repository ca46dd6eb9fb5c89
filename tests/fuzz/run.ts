/**
 * `npm run fuzz -- [--seconds N] [--seed N]`: ten minutes of texts by chance, from a seed that is printed. Every text that crashes, hangs or
 * tells one thing now and another afresh becomes a file of `tests/corpus/hostile`, which the tests hold against the same laws from then on; exit 1.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, existsSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { execPath, exit } from 'node:process';
import { parseArgs } from 'node:util';
import { BUNDLE, bundled, ROOT } from '../bench/bundle.ts';

const { values } = parseArgs({ options: { seconds: { type: 'string' }, seed: { type: 'string' } } });
const seconds = Number(values.seconds ?? 600);
const seed = Number(values.seed ?? Date.now() % 2 ** 32);
const HOSTILE = `${ROOT}tests/corpus/hostile`;
/** A text that takes so long hangs. */
const HANGS_MS = 20_000;
const LOOKS_MS = 1000;

console.log(`fuzzing for ${seconds} s: npm run fuzz -- --seconds ${seconds} --seed ${seed}`);
const folder = mkdtempSync(join(tmpdir(), 'quern-fuzz-'));
const current = join(folder, 'current.quern');
await bundled('tests/fuzz/fuzz.ts', join(folder, BUNDLE));
const from = [`${ROOT}examples`, `${ROOT}tests/kitchen`, HOSTILE];
const child = spawn(execPath, [join(folder, BUNDLE), String(seconds), String(seed), current, HOSTILE, ...from], {
  stdio: ['ignore', 'pipe', 'inherit'],
});
let told = '';
child.stdout.on('data', (data) => {
  told += data;
});
let isHung = false;
const looks = setInterval(() => {
  isHung = existsSync(current) && Date.now() - statSync(current).mtimeMs > HANGS_MS;
  if (isHung) child.kill('SIGKILL');
}, LOOKS_MS);
const [status] = await once(child, 'close');
clearInterval(looks);
// What hung or brought the process down stands where it was written before.
if (status !== 0 && existsSync(current)) {
  const file = join(HOSTILE, `${isHung ? 'hangs' : 'ends'}-${seed}.quern`);
  copyFileSync(current, file);
  console.error(`${file}: ${isHung ? `not done in ${HANGS_MS / 1000} s` : `the process ended with ${status}`}`);
}
rmSync(folder, { recursive: true, force: true });
if (status !== 0) exit(1);
const { runs, own, kept, pieces, faults } = JSON.parse(told) as Record<'runs' | 'own' | 'kept' | 'pieces', number> & {
  faults: string[];
};
console.log(
  `${runs} texts from ${own}, ${kept} of which reached something new; ${pieces} pieces ran; ${faults.length} faults`,
);
exit(faults.length > 0 ? 1 : 0);
