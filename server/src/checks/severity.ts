/**
 * Knows how loud a finding is.
 */

/**
 * error: what can hurt someone, or cannot be read. warning: will fail on the bench.
 * info: a careful editor would raise it. hint: style.
 */
export type Severity = 'error' | 'warning' | 'info' | 'hint';

/** From the softest to the gravest. */
export const SEVERITIES: readonly Severity[] = ['hint', 'info', 'warning', 'error'];
