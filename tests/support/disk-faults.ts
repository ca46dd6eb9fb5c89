/**
 * Loaded before the built command (`node --import`): at one chosen call that changes a folder, the process is killed, the call fails or
 * another program writes. Calls are counted below FAULT_BELOW alone. Refuses to know what is written there.
 */
import fs from 'node:fs';

const { FAULT_BELOW: below = '', FAULT_AT: at = '0', FAULT: how = '', FAULT_FILE: file = '' } = process.env;

const real = { ...fs };
/** Descriptors opened for writing. */
const open = new Set<number>();
let calls = 0;
let isFull = false;

type Call = (...args: never[]) => unknown;

function strike(name: string, half: () => void): void {
  calls++;
  const takesRoom = /^(?:open|write|link|copyFile)/.test(name);
  if (calls === Number(at)) {
    real.writeSync(2, `fault at ${name}\n`);
    if (how === 'kill') {
      half();
      process.kill(process.pid, 'SIGKILL');
      for (;;);
    }
    if (how === 'other writes') {
      real.writeFileSync(file, 'recipe Of another\n');
      return;
    }
    isFull = how === 'ENOSPC';
    half();
  } else if (!(isFull && takesRoom)) return;
  throw Object.assign(new Error(`${how}: injected, ${name}`), { code: how, errno: -1, syscall: name });
}

const isBelow = (target: unknown): boolean =>
  typeof target === 'number' ? open.has(target) : String(target).startsWith(below);

const onlyReads = (flags: unknown): boolean =>
  typeof flags === 'number' ? (flags & (fs.constants.O_WRONLY | fs.constants.O_RDWR)) === 0 : (flags ?? 'r') === 'r';

function replace(name: keyof typeof fs, half: (...args: never[]) => void = () => undefined): void {
  const call = real[name] as Call;
  const wrapped = (...args: never[]): unknown => {
    const [target, ...rest] = args as unknown[];
    const opens = name === 'openSync';
    const changes = isBelow(target) && !(opens && onlyReads(rest[0]));
    if (changes) strike(name, () => half(...args));
    const result = call(...args);
    if (opens && changes) open.add(result as number);
    if (name === 'closeSync') open.delete(target as number);
    return result;
  };
  Object.assign(fs, { [name]: wrapped });
}

const halfOf = (data: unknown): string | Uint8Array =>
  typeof data === 'string' ? data.slice(0, data.length / 2) : (data as Uint8Array).subarray(0, 20);

replace('openSync');
replace('writeFileSync', (target: string, data: unknown) => real.writeFileSync(target, halfOf(data)));
replace('writeSync', (target: number, data: unknown) => real.writeSync(target, String(halfOf(data))));
for (const name of [
  'fchmodSync',
  'fchownSync',
  'fsyncSync',
  'closeSync',
  'linkSync',
  'copyFileSync',
  'renameSync',
  'unlinkSync',
  'rmSync',
] as const)
  replace(name);
