/**
 * Knows how a handler is kept from taking the server down: what it throws is logged with feature, version and stack, and the empty value is answered.
 * In tests it is thrown again.
 */

export interface Fence {
  readonly log: (message: string) => void;
  readonly rethrow: boolean;
}

export function fenced<R>(fence: Fence, feature: string, version: () => number | undefined, run: () => R, empty: R): R {
  try {
    return run();
  } catch (error) {
    logFailure(fence, feature, version(), error);
    if (fence.rethrow) throw error;
    return empty;
  }
}

export function logFailure(fence: Fence, feature: string, version: number | undefined, error: unknown): void {
  const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
  fence.log(`${feature} failed${version === undefined ? '' : ` on version ${version}`}: ${what}`);
}
