/**
 * JSON-LD held against the types of schema.org, as the package that carries their schemas has them.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { SCHEMA_ORG } from './published-schema.ts';

/**
 * Every property is one of its type or of a type above it, and every value fits: JSON-LD lets any property hold several values, so that lists
 * are looked at one by one; a text may stand where a type is wanted (schema.org, "Conformance").
 */
export function schemaOrgErrors(node: Record<string, unknown>, path = ''): string[] {
  const type = String(node['@type'] ?? '');
  const properties = propertiesOf(type);
  if (properties === undefined) return [`${path}: no type ${type}`];
  return Object.entries(node).flatMap(([name, value]): string[] => {
    if (name.startsWith('@')) return [];
    const schema = properties.get(name);
    if (schema === undefined) return [`${path}/${name}: ${type} has no such property`];
    return (Array.isArray(value) ? value : [value]).flatMap((v: unknown, i): string[] => {
      const at = `${path}/${name}/${i}`;
      if (typeof v === 'object' && v !== null) return schemaOrgErrors(v as Record<string, unknown>, at);
      return typeof v === 'string' || fits(schema, v) ? [] : [`${at}: ${JSON.stringify(v)} is no value of it`];
    });
  });
}

const SCHEMAS = new Map<string, ReadonlyMap<string, unknown> | undefined>();

/** The properties of a type with those it has from the types above. */
function propertiesOf(type: string): ReadonlyMap<string, unknown> | undefined {
  if (SCHEMAS.has(type)) return SCHEMAS.get(type);
  const file = join(SCHEMA_ORG, `${type}.schema.json`);
  let properties: Map<string, unknown> | undefined;
  if (/^\w+$/.test(type) && existsSync(file)) {
    const schema = JSON.parse(readFileSync(file, 'utf8')) as {
      properties?: Record<string, unknown>;
      allOf?: { $ref?: string }[];
      anyOf?: { $ref?: string }[];
    };
    properties = new Map(Object.entries(schema.properties ?? {}));
    for (const { $ref = '' } of [...(schema.allOf ?? []), ...(schema.anyOf ?? [])])
      for (const [name, of] of propertiesOf($ref.replace('schema:', '')) ?? []) properties.set(name, of);
  }
  SCHEMAS.set(type, properties);
  return properties;
}

const ajv = new Ajv2020({ strict: false });

/** Whether a plain value is allowed: one of the schema's own plain alternatives. */
function fits(schema: unknown, value: unknown): boolean {
  const alternatives = (s: unknown): unknown[] => {
    if (typeof s !== 'object' || s === null) return [];
    const { anyOf, oneOf, $ref } = s as { anyOf?: unknown[]; oneOf?: unknown[]; $ref?: string };
    const inner = anyOf ?? oneOf;
    return inner === undefined ? ($ref === undefined ? [s] : []) : inner.flatMap(alternatives);
  };
  return alternatives(schema).some((s) => ajv.validate(s as object, value));
}
