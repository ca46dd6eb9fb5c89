/** A finding's code and, in a cook's words, what it means. */
export type CodeTitle = { readonly code: string; readonly title: string };

/** Every code the extension's manifest offers under `quern.severities`, in its order: the one list the client has. */
export function codesInManifest(manifest: unknown): CodeTitle[] {
  const setting = follow(manifest, ['contributes', 'configuration', 'properties', 'quern.severities', 'properties']);
  return Object.entries(record(setting)).map(([code, entry]) => {
    const title = record(entry).description;
    return { code, title: typeof title === 'string' ? title : '' };
  });
}

function follow(value: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>((at, key) => record(at)[key], value);
}

function record(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}
