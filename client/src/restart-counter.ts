/** Says after each crash whether the server should be started again. */
export type RestartCounter = {
  /** Counts a crash; false when there were too many in too short a time. */
  readonly crashed: () => boolean;
  /** Forgets all crashes: someone asked for a restart by hand. */
  readonly reset: () => void;
};

export type RestartLimits = {
  /** Crashes within the window that are followed by a new start. */
  readonly most: number;
  readonly windowMs: number;
  readonly now: () => number;
};

/** Only crashes within the window count, so a server that crashes once a day is always started again. */
export function createRestartCounter(limits: RestartLimits): RestartCounter {
  let crashesMs: number[] = [];
  return {
    crashed: () => {
      const now = limits.now();
      crashesMs = [...crashesMs.filter((at) => now - at < limits.windowMs), now];
      return crashesMs.length <= limits.most;
    },
    reset: () => {
      crashesMs = [];
    },
  };
}
