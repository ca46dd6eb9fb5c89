/**
 * Knows how our values become the protocol's, and back: places, findings, hovers, edits.
 * Refuses to decide anything about recipes.
 */
import type {
  Diagnostic,
  MarkupContent,
  TextEdit as ProtocolEdit,
  Hover as ProtocolHover,
  Range,
  WorkspaceEdit,
} from 'vscode-languageserver';
import type { Finding } from '../checks/finding.ts';
import type { Severity } from '../checks/severity.ts';
import type { ActionEdit } from '../editor/code-actions.ts';
import type { Fact, Hover } from '../editor/hover/fact.ts';
import type { Place } from '../editor/place.ts';
import { lineEnd, type TextEdit } from '../edits/text-edit.ts';
import type { PositionRange } from '../notation/document.ts';
import { markdownText } from '../publish/markdown-text.ts';
import { visible } from '../publish/visible.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import type { Abilities } from './capabilities.ts';

export const rangeOf = ({ line, start, end }: Place): Range => ({
  start: { line, character: start },
  end: { line, character: end },
});

const SEVERITIES: Readonly<Record<Severity, 1 | 2 | 3 | 4>> = { error: 1, warning: 2, info: 3, hint: 4 };

/** Findings about what no step uses, drawn faded. */
const UNNECESSARY: ReadonlySet<string> = new Set(['unused-ingredient', 'unused-part']);

/** Enough to find the finding again in a later text. */
export interface FindingData {
  readonly code: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

export function diagnosticOf(finding: Finding, snapshot: Snapshot, abilities: Abilities): Diagnostic {
  const { code, at, said, related } = finding;
  const data: FindingData = { code, ...at };
  const href = abilities.codeDescription ? abilities.pageOf(code) : undefined;
  return {
    range: rangeOf(at),
    severity: SEVERITIES[finding.severity],
    source: 'quern',
    code,
    ...(href !== undefined && { codeDescription: { href } }),
    message: visible(said.message),
    ...(UNNECESSARY.has(code) && { tags: [1] }),
    ...(abilities.relatedInformation &&
      related.length > 0 && {
        relatedInformation: related.map((r) => ({
          location: { uri: r.file === undefined ? snapshot.uri : uriOfPath(r.file), range: rangeOf(r.at) },
          message: visible(r.message),
        })),
      }),
    data,
  };
}

export const diagnosticsOf = (snapshot: Snapshot, abilities: Abilities): Diagnostic[] =>
  snapshot.findings.open.map((finding) => diagnosticOf(finding, snapshot, abilities));

export function hoverOf(hover: Hover, abilities: Abilities): ProtocolHover {
  return { range: rangeOf(hover.at), contents: factsOf(hover, abilities.hoverMarkdown, abilities) };
}

/** Title and facts, in the form the client shows. */
export function factsOf(facts: Omit<Hover, 'at'>, markdown: boolean, abilities: Abilities): MarkupContent {
  return markdown
    ? { kind: 'markdown', value: hoverMarkdown(facts, abilities) }
    : { kind: 'plaintext', value: hoverText(facts) };
}

export function hoverMarkdown({ title, subtitle, facts }: Omit<Hover, 'at'>, abilities: Abilities): string {
  const head = `**${markdownText(title)}**${subtitle === undefined ? '' : ` · ${markdownText(subtitle)}`}`;
  const sources = sourcesOf(facts);
  const pictures = facts.flatMap((fact) => (fact.kind === 'picture' ? ['', factMarkdown(fact, abilities)] : []));
  const lines = facts.flatMap((fact) => (fact.kind === 'picture' ? [] : [`- ${factMarkdown(fact, abilities)}`]));
  const foot = sources.length === 0 ? [] : ['', ...sources.map((s, i) => `${mark(i)} *${markdownText(s)}*  `)];
  return [head, ...pictures, ...(lines.length > 0 ? ['', ...lines] : []), ...foot].join('\n');

  function factMarkdown(fact: Fact, { explainCommand, pageOf, sizedPictures }: Abilities): string {
    switch (fact.kind) {
      case 'figure':
        return `${markdownText(fact.label)}: ${markdownText(fact.value)}${fact.source === undefined ? '' : ` ${mark(sources.indexOf(fact.source))}`}`;
      case 'text':
        return markdownText(fact.text);
      case 'picture':
        return `![${markdownText(fact.alt)}](${inMarkdown(uriOfPath(fact.path))}${sizedPictures ? '|width=400' : ''})`;
      case 'page': {
        const link =
          explainCommand === undefined
            ? pageOf(fact.code)
            : `command:${explainCommand}?${encodeURIComponent(JSON.stringify([fact.code]))}`;
        return link === undefined ? markdownText(factText(fact)) : `[What ${markdownText(fact.code)} means](${link})`;
      }
    }
  }
}

/** What would end the address. */
const inMarkdown = (uri: string): string => uri.replaceAll('(', '%28').replaceAll(')', '%29');

const MARKS = ['¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'];
const mark = (i: number): string => MARKS[i] ?? '';

const sourcesOf = (facts: readonly Fact[]): string[] => [
  ...new Set(facts.flatMap((f) => (f.kind === 'figure' && f.source !== undefined ? [f.source] : []))),
];

export function hoverText({ title, subtitle, facts }: Omit<Hover, 'at'>): string {
  const head = subtitle === undefined ? title : `${title} · ${subtitle}`;
  return [head, ...facts.map(factText)].join('\n');
}

function factText(fact: Fact): string {
  switch (fact.kind) {
    case 'figure':
      return `${fact.label}: ${fact.value}${fact.source === undefined ? '' : ` [${fact.source}]`}`;
    case 'text':
      return fact.text;
    case 'picture':
      return `${fact.path}: ${fact.alt}`;
    case 'page':
      return `Read more: quern explain ${fact.code}`;
  }
}

/** Edits of one document; their line feeds become the document's own line end. */
export function editsOf(snapshot: Snapshot, edits: readonly TextEdit[]): ProtocolEdit[] {
  const eol = lineEnd(snapshot.document);
  return edits.map(({ start, end, text }) => ({ range: { start, end }, newText: withEol(text, eol) }));
}

/** The edits as one change of the workspace, held to the version they were made for where the client can. */
export function workspaceEditOf(snapshot: Snapshot, edits: readonly ActionEdit[], abilities: Abilities): WorkspaceEdit {
  if (!abilities.documentChanges) return { changes: { [snapshot.uri]: editsOf(snapshot, edits) } };
  const eol = lineEnd(snapshot.document);
  const changes = edits.map(({ start, end, text, snippet }) =>
    snippet !== undefined && abilities.snippetEdits
      ? { range: { start, end }, snippet: { kind: 'snippet' as const, value: withEol(snippet, eol) } }
      : { range: { start, end }, newText: withEol(text, eol) },
  );
  return {
    documentChanges: [{ textDocument: { uri: snapshot.uri, version: snapshot.version }, edits: changes }],
  };
}

const withEol = (text: string, eol: string): string => (eol === '\n' ? text : text.replaceAll('\n', eol));

/** A range as the client sent it, numbers made whole and not negative. */
export function readRange(range: Range): PositionRange {
  return { start: readPosition(range.start), end: readPosition(range.end) };
}

export const readPosition = ({ line, character }: { line: number; character: number }) => ({
  line: Math.max(0, Math.trunc(Number(line) || 0)),
  character: Math.max(0, Math.trunc(Number(character) || 0)),
});

/**
 * The path of a `file:` URI, as the machine spells paths; for a file of another provider, its scheme, whoever has it, and its path:
 * `vscode-vfs://github/ann/kitchen/pie.quern`. Undefined for a text that lies in no folder, as an old version or one that has no name.
 */
export function pathOfUri(uri: string): string | undefined {
  let url: URL;
  try {
    url = new URL(uri);
  } catch {
    return undefined;
  }
  const isOnDisk = url.protocol === 'file:';
  if (!isOnDisk && !isHeld(url)) return undefined;
  let path: string;
  try {
    path = decodeURIComponent(url.pathname);
  } catch {
    return undefined;
  }
  if (!isOnDisk) return `${url.protocol}${url.host === '' ? '' : `//${url.host}`}${path}`;
  if (url.host !== '') return `//${url.host}${path}`.replaceAll('/', '\\');
  // What the disk finds has its own slashes, and editors write the drive either way.
  return /^\/[A-Za-z]:/.test(path) ? path.charAt(1).toLowerCase() + path.slice(2).replaceAll('/', '\\') : path;
}

/** Of what lies in a folder of its provider there is one version alone. */
const isHeld = ({ protocol, pathname, search, hash }: URL): boolean =>
  pathname.startsWith('/') && search === '' && hash === '' && !NO_FILES.has(protocol);
const NO_FILES: ReadonlySet<string> = new Set(['untitled:', 'git:', 'http:', 'https:']);

/** The URI of a path; only where it begins as on Windows are its backslashes slashes. */
export function uriOfPath(path: string): string {
  const elsewhere = /^([A-Za-z][\w+.-]+:(?:\/\/[^/]*)?)(\/.*)$/.exec(path);
  if (elsewhere !== null) {
    const [, before = '', below = ''] = elsewhere;
    return before + below.split('/').map(encodeURIComponent).join('/');
  }
  const isWindows = /^(?:[A-Za-z]:|\\\\)/.test(path);
  const slashed = isWindows ? path.replaceAll('\\', '/') : path;
  const encoded = slashed.split('/').map(encodeURIComponent).join('/');
  if (slashed.startsWith('//')) return `file:${encoded}`;
  return `file://${slashed.startsWith('/') ? '' : '/'}${encoded}`;
}
