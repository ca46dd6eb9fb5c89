/** Knows a mistake in `quern.json`: its words, and where it stands. */

/** A mistake, and the keys that lead to it; none for the whole. */
export interface SettingsFault {
  readonly words: string;
  readonly path: readonly string[];
  /** The name itself is wrong, or what it is set to. */
  readonly on: 'key' | 'value';
}

export const onKey = (words: string, ...path: string[]): SettingsFault => ({ words, path, on: 'key' });
export const onValue = (words: string, ...path: string[]): SettingsFault => ({ words, path, on: 'value' });
