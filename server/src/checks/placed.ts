/**
 * Knows where in the document a finding stands, and the order of findings.
 * Refuses to know how it was found.
 */
import type { Part, Recipe } from '../recipe/model.ts';
import type { Check, Found, Place, Said, Scene } from './check.ts';
import type { Finding } from './finding.ts';

/** A finding as its unit gave it, before it has a place in the document. */
export interface Local {
  readonly check: Check;
  readonly found: Found<unknown>;
  readonly said: Said;
  /** The line of its part, or of the document, from which its own counts. */
  readonly line: number;
  /** The part whose check found it. */
  readonly part: number | undefined;
}

/** What the checks of lines and parts found in one part. */
export interface Chunk {
  readonly part: Part;
  readonly at: number;
  /** How many lines the part has. */
  readonly size: number;
  readonly whole: boolean;
  /** By place. */
  readonly locals: readonly Local[];
  /** In the part's own lines, by place. */
  readonly own: readonly Finding[];
  readonly elsewhere: readonly Loose[];
  /** Other parts that places are counted from, and where these began. */
  readonly others: readonly { readonly index: number; readonly at: number | undefined }[];
}

/** A finding that need not stand among those of its part; `of` is the part whose check found it, and beyond all parts what one found in the file. */
export interface Loose {
  readonly finding: Finding;
  readonly of: number;
}

export const NONE: readonly never[] = [];

/** Whether what was placed for a part stands where it would be placed now. */
export const stands = (chunk: Chunk | undefined, part: Part, { partsAt, inherits }: Recipe): boolean =>
  chunk?.part === part &&
  chunk.at === partsAt[part.index] &&
  chunk.whole !== inherits &&
  chunk.others.every(({ index, at }) => partsAt[index] === at);

export function placeAll(locals: readonly Local[], part: Part, at: number, whole: boolean, scene: Scene): Chunk {
  const size = part.head.source.lines.length;
  const own: Finding[] = [];
  const elsewhere: Loose[] = [];
  const others: { index: number; at: number | undefined }[] = [];
  const seeOther = ({ part: index }: Place) => {
    if (index !== undefined && index !== part.index) others.push({ index, at: scene.recipe.partsAt[index] });
  };
  for (const local of locals) {
    const finding = place(local, scene, at);
    const below = finding.at.line - at;
    const inside = below >= 0 && below < size && isIn(local.found.at, part);
    if (inside) own.push(finding);
    else elsewhere.push({ finding, of: part.index });
    seeOther(local.found.at);
    for (const { at: place } of local.said.related ?? NONE) seeOther(place);
  }
  return { part, at, size, whole, locals, own, elsewhere, others };
}

const isIn = ({ part: index }: Place, part: Part): boolean => index === undefined || index === part.index;

/** A place in the document: the first line of its unit, or of the part it names, added. */
function documentLine(at: Place, scene: Scene, base: number): number {
  return at.line + (at.part === undefined ? base : (scene.recipe.partsAt[at.part] ?? 0));
}

/** `base` is the line of the document from which the local finding counts. */
export function place({ check, found, said, line, part }: Local, scene: Scene, base: number): Finding {
  const set = scene.house.severities[check.code];
  const severity = set === undefined || set === 'off' ? (found.severity ?? check.severity) : set;
  const absolute = (at: Place) => ({ line: documentLine(at, scene, base + line), start: at.start, end: at.end });
  const owner = found.at.part ?? part;
  return {
    check,
    code: check.code,
    severity,
    at: absolute(found.at),
    said,
    related: said.related === undefined ? NONE : said.related.map((r) => ({ at: absolute(r.at), message: r.message })),
    found,
    ...(owner !== undefined && { part: owner }),
  };
}

/** Whether a finding of the whole file would be placed where it is. */
export function standsStill({ at, found, said }: Finding, scene: Scene): boolean {
  // How far related places moved is not kept: they are placed again.
  return said.related === undefined && documentLine(found.at, scene, 0) === at.line;
}

/** The order of findings in one part. */
export const byOrder = (a: Local, b: Local): number =>
  a.line + a.found.at.line - (b.line + b.found.at.line) ||
  a.found.at.start - b.found.at.start ||
  (a.check.code < b.check.code ? -1 : 1);

const byPlace = (a: Finding, b: Finding): number =>
  a.at.line - b.at.line || a.at.start - b.at.start || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0);

export const sortLoose = (loose: readonly Loose[]): readonly Loose[] =>
  loose.length < 2 ? loose : [...loose].sort((a, b) => byPlace(a.finding, b.finding));

/** Two lists in the order of places as one; of what is alike, what an earlier part's check found comes first. */
export function merged(near: readonly Finding[], loose: readonly Loose[]): readonly Finding[] {
  if (loose.length === 0) return near;
  const all: Finding[] = [];
  let next = 0;
  for (const { finding, of } of loose) {
    for (let other = near[next]; other !== undefined; other = near[++next]) {
      const order = byPlace(other, finding);
      if (order > 0 || (order === 0 && (other.part ?? -1) > of)) break;
      all.push(other);
    }
    all.push(finding);
  }
  for (; next < near.length; next++) all.push(near[next] as Finding);
  return all;
}
