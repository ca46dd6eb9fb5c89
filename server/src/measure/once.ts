/**
 * Knows how what never changes is worked out when it is first asked for, and kept: a table, what a text is, what hangs on an object.
 * Refuses to keep what could come out otherwise another time.
 */

/** A reading that is done when it is first asked for, and kept. */
export function once<T>(read: () => T): () => T {
  let value: { readonly of: T } | undefined;
  return () => {
    value ??= { of: read() };
    return value.of;
  };
}

/** Letters of the longest text that is kept, and how many of them: then all are forgotten. */
interface Most {
  readonly texts: number;
  readonly letters?: number;
}

/** The function, which works out each text once: the words of a folder come again. */
export function onceByText<K extends string, V>(make: (text: K) => V, { texts, letters = 200 }: Most): (text: K) => V {
  const kept = new Map<K, V>();
  return (text) => {
    const known = kept.get(text);
    if (known !== undefined || kept.has(text)) return known as V;
    const value = make(text);
    if (text.length > letters) return value;
    if (kept.size >= texts) kept.clear();
    kept.set(text, value);
    return value;
  };
}

/** The function, which works out each object once while it lives; for few objects, that live long. */
export function onceByObject<K extends object, V>(make: (of: K) => V): (of: K) => V {
  const kept = new WeakMap<K, { readonly value: V }>();
  return (of) => {
    let known = kept.get(of);
    if (known === undefined) {
      known = { value: make(of) };
      kept.set(of, known);
    }
    return known.value;
  };
}
