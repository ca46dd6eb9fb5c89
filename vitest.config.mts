import { defineConfig } from 'vitest/config';

/** Tables are imported as text, in tests as in the bundles. */
const tablesAsText = {
  name: 'tables-as-text',
  enforce: 'pre' as const,
  transform(code: string, id: string) {
    return id.endsWith('.tsv') ? { code: `export default ${JSON.stringify(code)};`, map: null } : undefined;
  },
};

export default defineConfig({
  plugins: [tablesAsText],
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', 'tests/workbench/**'],
    setupFiles: ['tests/support/seed.ts'],
    // Properties over any text take seconds, more on a busy machine: how quick something is, the bench says.
    testTimeout: 60_000,
  },
});
