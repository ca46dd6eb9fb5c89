/**
 * Every JSON document that the command line prints keeps to its schema, over the example kitchen; the schemas are made of the types.
 * Draft 7 of JSON Schema, by ajv.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { DOCUMENTS, type DocumentName, schemaFile, schemaTexts } from '../../server/tools/schemas.ts';
import { quern } from '../support/fake-io.ts';

const FOLDER = new URL('../../examples/', import.meta.url);
const FILES = Object.fromEntries(
  (readdirSync(FOLDER, { recursive: true }) as string[])
    .filter((name) => /\.(?:quern|json)$/.test(name))
    .map((name) => [name, readFileSync(new URL(name, FOLDER), 'utf8')]),
);
const RECIPES = Object.keys(FILES).filter((name) => name.endsWith('.quern') && /^recipe /m.test(FILES[name] ?? ''));

const validators = new Map<DocumentName, ReturnType<Ajv['compile']>>();
for (const name of Object.keys(DOCUMENTS) as DocumentName[])
  if (existsSync(schemaFile(name)))
    validators.set(
      name,
      new Ajv({ strict: false, allErrors: true }).compile(JSON.parse(readFileSync(schemaFile(name), 'utf8'))),
    );

function faultsOf(name: DocumentName, out: string): readonly string[] {
  const validate = validators.get(name);
  if (validate === undefined) throw new Error(`no schema for ${name}`);
  validate(JSON.parse(out));
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

test('the schemas are fresh', () => {
  const stale = [...schemaTexts()].filter(
    ([name, text]) => !existsSync(schemaFile(name)) || readFileSync(schemaFile(name), 'utf8') !== text,
  );
  for (const [name, text] of stale) writeFileSync(schemaFile(name), text);
  expect(
    stale.map(([name]) => name),
    'written anew: read and commit them',
  ).toEqual([]);
});

describe('what is printed keeps to its schema', () => {
  test.each<[DocumentName, readonly string[]]>([
    ['check', ['check', '--format', 'json']],
    ['report-folder', ['report', '.', '--format', 'json']],
    ['weigh', ['weigh', '3 large eggs', '--format', 'json']],
    ['weigh', ['weigh', '3 cups of nobody knows', '--format', 'json']],
    ['config', ['config', RECIPES[0] ?? '', '--format', 'json']],
    ['diff', ['diff', RECIPES[0] ?? '', RECIPES[1] ?? '', '--format', 'json']],
    ['error', ['report', 'nowhere.quern', '--format', 'json']],
  ])('%s: %j', async (name, args) => {
    expect(faultsOf(name, (await quern(args, FILES)).out)).toEqual([]);
  });

  test.each(RECIPES)('%s, worked out, scaled, converted and planned', async (file) => {
    expect(faultsOf('report', (await quern(['report', file, '--format', 'json'], FILES)).out)).toEqual([]);
    const others: readonly [DocumentName, readonly string[]][] = [
      ['label', ['--cooked']],
      ['scale', ['--by', '2']],
      ['convert', ['--to', 'weight']],
      ['plan', ['--serve', '19:30']],
    ];
    for (const [name, args] of others) {
      const { out } = await quern([name, file, ...args, '--format', 'json'], FILES);
      expect(faultsOf('error' in JSON.parse(out) ? 'error' : name, out)).toEqual([]);
    }
  });

  test('a document that lacks a field, or has a word in the place of grams, would be caught', async () => {
    const { out } = await quern(['report', RECIPES[0] ?? '', '--format', 'json'], FILES);
    const report = JSON.parse(out) as Record<string, unknown>;
    expect(faultsOf('report', JSON.stringify({ ...report, mass_g: 'much' }))).not.toEqual([]);
    const { findings: _, ...lacking } = report;
    expect(faultsOf('report', JSON.stringify(lacking))).not.toEqual([]);
  });
});
