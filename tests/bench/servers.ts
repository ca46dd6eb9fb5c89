/** The two servers that are measured, and what each is asked with. */
import { fileURLToPath } from 'node:url';
import { type Case, JSON_SCHEMA, jsonCase, recipeCase, type Size } from './cases.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface ServerUnderTest {
  readonly name: 'quern' | 'json';
  /** Run by the same Node as this process. */
  readonly args: readonly string[];
  /** Beside those of this process. */
  readonly env?: Readonly<Record<string, string>>;
  readonly languageId: string;
  readonly uri: string;
  /** A folder it is started on. */
  readonly rootUri?: string;
  readonly initializationOptions?: unknown;
  /** Sent as `workspace/didChangeConfiguration` before the file is opened. */
  readonly settings?: unknown;
  readonly caseOf: (size: Size) => Case;
}

export const QUERN: ServerUnderTest = {
  name: 'quern',
  args: [`${root}dist/server.js`, '--stdio'],
  languageId: 'quern',
  // On no disk, so that no folder around the file is read.
  uri: 'untitled:bench.quern',
  caseOf: recipeCase,
};

export const JSON_SERVER: ServerUnderTest = {
  name: 'json',
  args: [`${root}node_modules/vscode-langservers-extracted/bin/vscode-json-language-server`, '--stdio'],
  languageId: 'json',
  uri: 'untitled:bench.json',
  initializationOptions: { provideFormatter: true, handledSchemaProtocols: ['file'] },
  settings: {
    json: {
      validate: { enable: true },
      format: { enable: true },
      schemas: [{ fileMatch: ['*.json', 'bench.json'], url: 'file:///bench.schema.json', schema: JSON_SCHEMA }],
    },
  },
  caseOf: jsonCase,
};
