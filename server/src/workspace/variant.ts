/**
 * Knows how what is found in a written-out variant is placed back: on the file's own lines where they caused it,
 * else where the file names its base, with a link to the base's line.
 */
import type { Fix, Scene } from '../checks/check.ts';
import { type AcceptedFinding, type Finding, type Findings, fixesOf, workOf } from '../checks/finding.ts';
import type { TextEdit } from '../edits/text-edit.ts';
import type { Document } from '../notation/document.ts';
import type { PlacedLine } from '../notation/outline.ts';
import { type Origin, shiftOf, type WrittenOut } from './written.ts';

/** Findings of lines as they are read: a variant has its own, and its base reports the base's. */
const LINE_CODES: ReadonlySet<string> = new Set(['syntax', 'decimal-comma', 'allow-without-reason']);

/**
 * The findings of a variant: those of its own lines as read (`own`), and those of the whole, placed back.
 * `baseHas` tells whether a base by itself raises the same code on the same line, and so reports it at home.
 */
export function variantFindings(
  own: Findings,
  scene: Scene,
  whole: { readonly scene: Scene; readonly findings: Findings; readonly written: WrittenOut },
  baseHas: (path: string, line: number, code: string) => boolean,
): Findings {
  const anchor = anchorOf(scene);
  const back = <F extends Finding>(finding: F): F | undefined => {
    if (OWN_CODES.has(finding.code)) return undefined;
    const origin = whole.written.lines[finding.at.line]?.origin;
    if (origin === undefined) return undefined;
    if (origin.kind === 'own' && finding.code === 'out-of-order' && isChange(scene, origin.line)) return undefined;
    if (origin.kind === 'base' && isSaidOfDrop(finding, scene, whole.scene)) return undefined;
    // A trial tests this file alone: what a base's own trials say of the line is another matter.
    const shared = finding.check.family !== 'testing';
    if (origin.kind === 'base' && shared && baseHas(origin.path, origin.line, finding.code)) return undefined;
    return placeBack(
      finding,
      origin,
      whole.written,
      partAbove(finding.at.line, whole, scene) ?? anchor,
      whole.scene,
      scene.document,
    );
  };
  const open = [...own.open.filter((f) => OWN_CODES.has(f.code)), ...defined(whole.findings.open.map(back))];
  open.sort((a, b) => a.at.line - b.at.line || a.at.start - b.at.start || (a.code < b.code ? -1 : 1));
  const accepted: AcceptedFinding[] = [
    ...own.accepted.filter((f) => OWN_CODES.has(f.code)),
    ...defined(whole.findings.accepted.map(back)),
  ];
  return { open, accepted };
}

/** What the steps of a base go on naming is said where it is dropped. */
function isSaidOfDrop({ code, at }: Finding, { broken = [] }: Scene, { document }: Scene): boolean {
  if (code !== 'unlisted-ingredient') return false;
  const words = document.lines[at.line]?.text.slice(at.start, at.end) ?? '';
  return broken.some(({ kind, name }) => kind === 'still-named' && (name.endsWith(words) || words.endsWith(name)));
}

/** An ingredient that a variant adds or swaps stands where the tool put it, not the writer. */
function isChange(scene: Scene, line: number): boolean {
  const kind = scene.document.lines[line]?.statement.kind;
  return kind === 'add' || kind === 'swap';
}

/** What a file asks of another that is not there: found in the file itself, and not in the recipe written out. */
const BROKEN_CODES: ReadonlySet<string> = new Set(['missing-file', 'unknown-part']);

/** Whether a file asks another for what is not there. */
export const isBroken = ({ code }: Finding): boolean => BROKEN_CODES.has(code);

/** What only the file itself has: how its lines are read, and what they ask of others. */
const OWN_CODES: ReadonlySet<string> = new Set([
  ...LINE_CODES,
  ...BROKEN_CODES,
  'swap-in-two-parts',
  'picture-missing',
]);

const defined = <T>(list: readonly (T | undefined)[]): T[] => list.filter((x): x is T => x !== undefined);

/** The line that names the base: `from FILE`, else the first part that comes from one. */
function anchorOf(scene: Scene): { line: number; start: number; end: number } {
  const from = scene.outline.head.find(({ line }) => line.statement.kind === 'from');
  if (from !== undefined) return spanOf(from);
  const part = scene.outline.parts.find(({ source }) => {
    const first = source.lines[0]?.statement;
    return first?.kind === 'part' && first.file !== undefined;
  });
  const line = part?.source.lines[0];
  return part === undefined || line === undefined ? { line: 0, start: 0, end: 1 } : spanOf({ at: part.at, line });
}

/** The line of the file that takes the part in which a line of the whole stands, where another file gives it. */
function partAbove(
  line: number,
  { scene: { document }, written }: { readonly scene: Scene; readonly written: WrittenOut },
  own: Scene,
): Finding['at'] | undefined {
  let at = line;
  while (at > 0 && document.lines[at]?.statement.kind !== 'part') at--;
  const origin = written.lines[at]?.origin;
  const header = origin?.kind === 'own' ? own.document.lines[origin.line] : undefined;
  return origin !== undefined && header?.statement.kind === 'part' && header.statement.file !== undefined
    ? spanOf({ at: origin.line, line: header })
    : undefined;
}

const spanOf = ({ at, line }: PlacedLine) => ({
  line: at,
  start: line.text.length - line.text.trimStart().length,
  end: line.text.trimEnd().length,
});

function placeBack<F extends Finding>(
  finding: F,
  origin: Origin,
  written: WrittenOut,
  anchor: { line: number; start: number; end: number },
  scene: Scene,
  own: Document,
): F {
  const foreign = (at: Origin, message: string) =>
    at.kind === 'base' ? [{ at: { line: at.line, start: 0, end: 1 }, message, file: at.path }] : [];
  const related = finding.related.flatMap((r) => {
    const from = written.lines[r.at.line]?.origin;
    if (from === undefined) return [];
    return from.kind === 'own'
      ? [{ ...r, at: ownSpan(r.at, written, own) }]
      : [{ ...r, at: { ...r.at, line: from.line }, file: from.path }];
  });
  const fixes = () => defined(fixesOf(finding, scene).map((fix) => fixBack(fix, written, own)));
  const work = () => workOf(finding, scene);
  if (origin.kind === 'own') return { ...finding, at: ownSpan(finding.at, written, own), related, fixes, work };
  const link = foreign(origin, 'It comes from this line of the base.');
  return { ...finding, at: anchor, related: [...link, ...related], fixes, work };
}

/** The line of the file that a line written out comes from, and by how much its words stand further right there. */
function ownLine(line: number, written: WrittenOut, own: Document): { line: number; shift: number } | undefined {
  const out = written.lines[line];
  if (out?.origin.kind !== 'own') return undefined;
  return { line: out.origin.line, shift: shiftOf(out.text, own.lines[out.origin.line]?.text ?? '') };
}

/** The line has a share of what the file's own line says, which an edit there would make the whole. */
function isShare(line: number, at: number, { lines }: WrittenOut, own: Document): boolean {
  const said = own.lines[line];
  return said?.statement.kind === 'swap' && !said.text.includes(lines[at]?.text.trim() ?? '');
}

function ownSpan(at: Finding['at'], written: WrittenOut, own: Document): Finding['at'] {
  const { line, shift } = ownLine(at.line, written, own) ?? { line: at.line, shift: 0 };
  return { line, start: at.start + shift, end: at.end + shift };
}

/** A fix in the file's own lines; undefined when it would change the base, or bring back what a swap put away. */
function fixBack(fix: Fix, written: WrittenOut, own: Document): Fix | undefined {
  const edits: TextEdit[] = [];
  for (const edit of fix.edits) {
    const from = ownLine(edit.start.line, written, own);
    if (from === undefined || isShare(from.line, edit.start.line, written, own)) return undefined;
    const below = edit.end.line - edit.start.line;
    if (below > 1 || (below === 1 && edit.end.character > 0)) return undefined;
    if (below === 1 && own.lines[from.line]?.statement.kind === 'swap') return undefined;
    const [start, end] = [edit.start.character, edit.end.character];
    edits.push({
      start: { line: from.line, character: start === 0 ? 0 : start + from.shift },
      end: { line: from.line + below, character: below === 0 ? end + from.shift : end },
      text: edit.text,
    });
  }
  return { ...fix, edits };
}
