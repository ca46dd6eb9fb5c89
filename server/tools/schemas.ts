/**
 * Writes the JSON Schema of every document that the command line prints, from the types that it is made by. `tests/programs/schemas.test.ts`
 * holds what is printed against them, and writes a stale one anew.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { createGenerator } from 'ts-json-schema-generator';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The documents, by the command that prints them. */
export const DOCUMENTS = {
  check: 'CheckJson',
  report: 'ReportJson',
  'report-folder': 'RecipesJson',
  label: 'LabelJson',
  scale: 'ScaledJson',
  convert: 'ConvertedJson',
  weigh: 'WeighedJson',
  diff: 'DiffJson',
  plan: 'PlanJson',
  config: 'ConfigJson',
  error: 'ErrorJson',
} as const;

export type DocumentName = keyof typeof DOCUMENTS;

export const schemaFile = (name: DocumentName): string => `${root}server/schemas/${name}.schema.json`;

/** Each schema as text. */
export function schemaTexts(): ReadonlyMap<DocumentName, string> {
  const generator = createGenerator({
    path: `${root}server/src/cli/formats/shapes.ts`,
    tsconfig: `${root}tsconfig.json`,
    skipTypeCheck: true,
    // A field is added freely: who reads a document leaves alone what it does not know.
    additionalProperties: true,
    topRef: true,
    sortProps: false,
  });
  return new Map(
    (Object.entries(DOCUMENTS) as [DocumentName, string][]).map(([name, type]) => [
      name,
      `${JSON.stringify(generator.createSchema(type), null, 2)}\n`,
    ]),
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const [name, text] of schemaTexts()) writeFileSync(schemaFile(name), text);
