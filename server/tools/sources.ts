/**
 * Knows where figures have their source: rows of the tables and objects of the JSON under `server/data`, declarations and remarks of the code.
 * Refuses to know what hangs on them.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export type Trust = 'named' | 'common practice' | 'from memory' | 'none';

export interface Sourced {
  /** From `server/` on. */
  readonly file: string;
  /** What the figure is of: the first cells of a row, the path in a JSON, a line of code. */
  readonly of: string;
  /** In full, not in the short words of the tables. */
  readonly source: string;
  readonly trust: Trust;
  readonly figures: number;
}

const SERVER = join(import.meta.dirname, '..');

/** Written by tools out of other tables, or of words alone and said so in their first line. */
const GENERATED = /(?:keys|endings|forms)\.tsv$/;

/** Every source of the project beside its figures. */
export function allSources(): readonly Sourced[] {
  const data = filesBelow('data').filter((file) => !GENERATED.test(file));
  return [
    ...data.filter((file) => file.endsWith('.tsv')).flatMap(ofTable),
    ...data.filter((file) => file.endsWith('.json')).flatMap((file) => ofJson(file, JSON.parse(read(file)), '', '')),
    ...filesBelow('src')
      .filter((file) => file.endsWith('.ts'))
      .flatMap(ofCode),
  ];
}

const read = (file: string): string => readFileSync(join(SERVER, file), 'utf8');
const filesBelow = (folder: string): string[] =>
  readdirSync(join(SERVER, folder), { recursive: true, encoding: 'utf8' })
    .map((file) => `${folder}/${file.replaceAll('\\', '/')}`)
    .sort();

function trustIn(source: string): Trust {
  if (/from memory/i.test(source)) return 'from memory';
  if (/common practice|judgement|practice$/i.test(source)) return 'common practice';
  return source === '' ? 'none' : 'named';
}

/** The short words of the food tables (`src/food/tables.ts`) and of the others. */
const SHORT: Readonly<Record<string, string>> = {
  practice: 'common practice, no source',
  packs: 'pack labels (from memory)',
  varies: 'pack labels vary (from memory)',
  none: 'not published in the tables at hand',
  'M&W': 'McCance and Widdowson, The Composition of Foods (from memory)',
};
const inFull = (cell: string): string => SHORT[cell] ?? (cell.startsWith('NDB ') ? `USDA SR26, ${cell}` : cell);

/** A row is one source; where it has none of its own, that of its food or of the table's first line. */
function ofTable(file: string): Sourced[] {
  const [about = '', head = '', ...rows] = read(file).trimEnd().split('\n');
  const columns = head.split('\t');
  const at = columns.findIndex((column) => /source$/.test(column));
  const otherwise = /empty source is the NDB/i.test(about) ? 'USDA SR26, the row of the food' : about;
  return rows.map((row) => {
    const cells = row.split('\t');
    const own = at === -1 ? '' : inFull(cells[at] ?? '');
    const source = own === '' ? otherwise : own;
    const figures = cells.filter((cell) => /^-?[\d.]+(?:e-?\d+)?%?$/.test(cell)).length;
    const [id = '', ...more] = cells.slice(0, 3);
    return {
      file,
      of: [id, ...more].filter((cell) => cell !== '').join(', '),
      source,
      trust: trustIn(source),
      figures,
    };
  });
}

const SOURCE_FIELD = /^(?:source|holdsSource|section|rule)$/;

/** An object with a source of its own is one; the figures of those within it are theirs. A name of the `sources` of its file stands for that. */
function ofJson(file: string, value: unknown, path: string, inherited: string): Sourced[] {
  const found: Sourced[] = [];
  const named = nestedSources(value);
  const walk = (at: unknown, where: string, source: string): number => {
    if (typeof at === 'number') return 1;
    if (typeof at !== 'object' || at === null) return 0;
    const own = Object.entries(at)
      .flatMap(([key, field]) => (SOURCE_FIELD.test(key) && typeof field === 'string' ? [named[field] ?? field] : []))
      .join('; ');
    let figures = 0;
    for (const [key, field] of Object.entries(at)) {
      const name = Array.isArray(at) ? nameOf(field, key) : key;
      figures += walk(field, where === '' ? name : `${where}, ${name}`, own === '' ? source : own);
    }
    if (own === '') return figures;
    found.push({ file, of: where, source: own, trust: trustIn(own), figures: Math.max(1, figures) });
    return 0;
  };
  const left = walk(value, path, inherited);
  if (left > 0) found.push({ file, of: '(all else)', source: '', trust: 'none', figures: left });
  return found;
}

function nestedSources(value: unknown): Readonly<Record<string, string>> {
  if (typeof value !== 'object' || value === null || !('sources' in value)) return {};
  const { sources } = value;
  if (typeof sources !== 'object' || sources === null) return {};
  return Object.fromEntries(Object.entries(sources).map(([key, words]) => [key, String(words)]));
}

/** What an entry of a list is called: by its own name, measure or id. */
function nameOf(value: unknown, index: string): string {
  if (typeof value !== 'object' || value === null) return index;
  for (const [key, name] of Object.entries(value))
    if (/^(?:name|measure|id|component)$/.test(key) && typeof name === 'string') return name;
  return index;
}

const NAMES_SOURCE =
  /from memory|common practice|judgement|\b(?:USDA|FDA|CFR|FSIS|NIST|UCUM|OIML|ASHRAE|EFSA|NHS|Regulation|Directive)\b|\((?:[^()]*\b)?(?:18|19|20)\d\d\b/;

/** A remark or a text in quotes that names a source, or says that there is none. Examples of checks are recipes, and are left out. */
function ofCode(file: string): Sourced[] {
  const text = read(file);
  return [...text.matchAll(/\/\*\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:[^'\\\n]|\\.)*'|`(?:[^`\\]|\\.)*`/g)].flatMap((match) => {
    const [piece] = match;
    if (piece.startsWith('`') || !NAMES_SOURCE.test(piece) || /^\/\*\*\s*\*?\s*Knows/.test(piece)) return [];
    const line = text.slice(0, match.index).split('\n').length;
    const source = piece.replace(/^\/\*\*|\*\/$|^\/\/|\n\s*\*/g, ' ').replace(/^'|'$/g, '');
    const words = source.replace(/\s+/g, ' ').trim();
    if (words === 'from memory' || words === 'common practice, no source') return declared(file, text, match.index);
    return [{ file, of: `line ${line}`, source: words, trust: trustIn(words), figures: 1 }];
  });
}

/** A check's `kind: 'from memory'` with the title beside it; elsewhere the words are code's own. */
function declared(file: string, text: string, at: number): Sourced[] {
  const [, kind = '', more] = /^'([^']*)'(?:,\s*title:\s*(?:'([^']*)'|\w+))?/.exec(text.slice(at)) ?? [];
  if (!/kind: $/.test(text.slice(0, at)) || /^'[^']*';|^'[^']*' }/.test(text.slice(at)) === (kind === 'from memory'))
    return [];
  const line = text.slice(0, at).split('\n').length;
  const source = more === undefined ? kind : `${more} (${kind})`;
  return [{ file, of: `line ${line}`, source, trust: trustIn(kind), figures: 1 }];
}
