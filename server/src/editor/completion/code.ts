/** Codes after `allow`: those of the findings on the next line first. */
import { CHECKS } from '../../checks/index.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { all, type Completion, type Completions, NOTHING, stops, type Typing } from './item.ts';

export function completeCode({ snapshot, line, at, before, character }: Typing): Completions {
  const match = /^\s*allow\s+([a-z-]*)$/.exec(before);
  if (match === null) return because(before, character);
  const start = character - (match[1] ?? '').length;
  const hasReason = /\bbecause\b/.test(line.text.slice(character));
  const next = codesBelow(snapshot, at);
  const here = new Set(snapshot.findings.open.map((f) => f.code));
  const rank = (code: string): number => (next.has(code) ? 0 : here.has(code) ? 1 : 2);
  const items = CHECKS.filter((c) => c.code !== 'syntax' && c.code !== 'allow-without-reason').map(
    ({ code, title }): Completion => ({
      label: code,
      kind: 'code',
      detail: title,
      start,
      end: character,
      text: hasReason ? code : `${code} because `,
      snippet: hasReason ? code : stops(`${code} because <reason>`),
      filter: code,
      code,
    }),
  );
  return all(items.sort((a, b) => rank(a.label) - rank(b.label) || (a.label < b.label ? -1 : 1)));
}

function because(before: string, character: number): Completions {
  const match = /^\s*allow\s+[a-z-]+\s+(\p{L}*)$/u.exec(before);
  if (match === null) return NOTHING;
  const start = character - (match[1] ?? '').length;
  return all([
    {
      label: 'because',
      kind: 'keyword',
      detail: 'the reason is required',
      start,
      end: character,
      text: 'because ',
      filter: 'because',
    },
  ]);
}

/** Codes found on the next line that says something. */
function codesBelow(snapshot: Snapshot, at: number): ReadonlySet<string> {
  const { lines } = snapshot.document;
  let next = at + 1;
  while (next < lines.length && ['blank', 'allow'].includes(lines[next]?.statement.kind ?? '')) next++;
  return new Set(snapshot.findings.open.filter((f) => f.at.line === next).map((f) => f.code));
}
