/**
 * Knows how a process ends with the one that started it, whatever it computes: another looks on, as the one that computes cannot.
 * Refuses to wait for the end of its work: what it has to say nobody hears any more.
 */
import { childProcess } from './later.ts';

/**
 * Looks once a second, with what a shell has itself: at the server ($1), at who is its parent ($2), and at its client ($3). It ends
 * with the server. The parent is known by the server's own word: a dead one may still have its number.
 */
const LOOKS = `
while kill -0 "$1" 2>/dev/null; do
  parent=
  if [ -r "/proc/$1/status" ]; then
    while read -r key value; do
      if [ "$key" = PPid: ]; then parent=$value; break; fi
    done <"/proc/$1/status"
  else
    parent=$(ps -o ppid= -p "$1" | tr -d ' ')
  fi
  if [ "$parent" != "$2" ] || ! kill -0 "$3" 2>/dev/null; then kill -9 "$1" 2>/dev/null; exit; fi
  sleep 1
done
`;

const EVERY_MS = 1000;
const AFTER_MS = 150;

/** Ends this process, by force, within two seconds of the end of its parent or of the client, which may have told its own number. */
export function endWithParent(client: number | null): void {
  const parent = process.ppid;
  // One of another user may not be asked after, nor one that cannot be seen from here.
  const seen = [client, parent].find((pid) => pid !== null && mayAsk(pid)) ?? process.pid;
  // Once the client has seen its first text: to start a process takes some ms.
  setTimeout(() => {
    if (process.platform === 'win32') lookFromWithin(seen);
    else lookFromOutside(parent, seen);
  }, AFTER_MS).unref();
}

/** A shell costs a megabyte, and a thread of this engine seventeen. */
function lookFromOutside(parent: number, client: number): void {
  const args = ['-c', LOOKS, 'quern-watch', String(process.pid), String(parent), String(client)];
  const watch = childProcess().spawn('/bin/sh', args, {
    stdio: 'ignore',
    detached: true,
    cwd: '/',
    env: { PATH: '/usr/bin:/bin' },
  });
  watch.once('error', () => lookFromWithin(client));
  watch.unref();
}

/** Where there is no shell, between two pieces of work: those are short. */
function lookFromWithin(pid: number): void {
  setInterval(() => {
    if (!mayAsk(pid)) process.exit(1);
  }, EVERY_MS).unref();
}

function mayAsk(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}
