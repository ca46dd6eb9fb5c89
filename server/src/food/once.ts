/** A reading that is done when it is first asked for, and kept. */
export function once<T>(read: () => T): () => T {
  let value: { readonly of: T } | undefined;
  return () => {
    value ??= { of: read() };
    return value.of;
  };
}
