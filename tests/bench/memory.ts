/** The memory of another process, as its operating system counts it. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

/** Resident now, in MB of 1024 KB; undefined where it cannot be read. */
export function residentMb(pid: number): number | undefined {
  return statusMb(pid, 'VmRSS') ?? psMb(pid);
}

/** The most that was resident so far; now, where the system does not keep that. */
export function peakMb(pid: number): number | undefined {
  return statusMb(pid, 'VmHWM') ?? psMb(pid);
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
