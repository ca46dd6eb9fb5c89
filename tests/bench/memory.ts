/** The memory and the processor time of another process, as its operating system counts them. */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';

/** Resident now, in MB of 1024 KB; undefined where it cannot be read. */
export function residentMb(pid: number): number | undefined {
  return statusMb(pid, 'VmRSS') ?? psMb(pid);
}

/** The most that was resident so far; now, where the system does not keep that. */
export function peakMb(pid: number): number | undefined {
  return statusMb(pid, 'VmHWM') ?? psMb(pid);
}

/** Spent so far on all processors, in seconds; undefined where it cannot be read. */
export function processorS(pid: number): number | undefined {
  try {
    const text = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // After the name, which may hold blanks: fields 14 and 15 of proc(5), in hundredths of a second.
    const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
    const ticks = Number(fields[11]) + Number(fields[12]);
    return Number.isFinite(ticks) ? ticks / 100 : undefined;
  } catch {
    return undefined;
  }
}

/** Milliseconds that the main thread of a process has worked so far; undefined where that cannot be read. */
export function mainThreadMs(pid: number): number | undefined {
  try {
    const [ns] = readFileSync(`/proc/${pid}/schedstat`, 'utf8').split(' ');
    return ns === undefined || !Number.isFinite(Number(ns)) ? undefined : Number(ns) / 1e6;
  } catch {
    return undefined;
  }
}

/** Milliseconds that all threads of a process that still run have worked so far; undefined where that cannot be read. */
export function threadsMs(pid: number): number | undefined {
  try {
    const threads = readdirSync(`/proc/${pid}/task`);
    return threads.reduce((sum, id) => {
      const [ns] = readFileSync(`/proc/${pid}/task/${id}/schedstat`, 'utf8').split(' ');
      return sum + Number(ns) / 1e6;
    }, 0);
  } catch {
    return undefined;
  }
}

/** What a process has written to and shares with no other, in MB; undefined where it cannot be read. */
export function privateMb(pid: number): number | undefined {
  try {
    const [, kb] = /^Private_Dirty:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/smaps_rollup`, 'utf8')) ?? [];
    return kb === undefined ? undefined : Number(kb) / 1024;
  } catch {
    return undefined;
  }
}

/** The processes that a process has started and that still run. */
export function childrenOf(pid: number): number[] {
  try {
    const text = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8');
    return text
      .split(' ')
      .filter((id) => id !== '')
      .map(Number);
  } catch {
    return [];
  }
}

function statusMb(pid: number, field: string): number | undefined {
  try {
    const [, kb] = new RegExp(`^${field}:\\s+(\\d+) kB`, 'm').exec(readFileSync(`/proc/${pid}/status`, 'utf8')) ?? [];
    return kb === undefined ? undefined : Number(kb) / 1024;
  } catch {
    return undefined;
  }
}

function psMb(pid: number): number | undefined {
  const { stdout, status } = spawnSync('ps', ['-o', 'rss=', '-p', String(pid)], { encoding: 'utf8' });
  return status === 0 && Number(stdout) > 0 ? Number(stdout) / 1024 : undefined;
}
