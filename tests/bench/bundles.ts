/** The size of what is installed with the extension. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { deflateRawSync } from 'node:zlib';

const dist = fileURLToPath(new URL('../../dist/', import.meta.url));

export interface BundleSize {
  readonly name: string;
  readonly kb: number;
  /** As a package holds it. */
  readonly packedKb: number;
}

/** Every bundle of `dist/` that was built. */
export function bundleSizes(): BundleSize[] {
  return ['client.js', 'server.js', 'cli.js', 'quern.br'].flatMap((name) => {
    try {
      const bytes = readFileSync(dist + name);
      return [{ name, kb: bytes.length / 1024, packedKb: deflateRawSync(bytes, { level: 9 }).length / 1024 }];
    } catch {
      return [];
    }
  });
}
