/**
 * Knows the page of a finding: what it means, its source, its examples and how to accept it, as Markdown.
 * Refuses to know any one recipe.
 */

import type { Check, Scene, Source } from '../checks/check.ts';
import { type AcceptedFinding, type Finding, workOf } from '../checks/finding.ts';
import { whySilent } from '../checks/silence.ts';
import { capital } from '../recipe/words.ts';
import { markdownLine, markdownText } from './markdown-text.ts';
import { visibleLine } from './visible.ts';

/** The page of one check, in Markdown. */
export function explainPage(check: Check): string {
  const bad = check.examples.bad.map((e) => (typeof e === 'string' ? e : e.text));
  return [
    `# ${check.code}`,
    '',
    `${check.title}. *${capital(check.family)}; ${LEVELS[check.severity]}*`,
    '',
    check.explain,
    '',
    `**Source.** ${sourceText(check.source)}.`,
    '',
    '## An example that raises it',
    '',
    ...bad.slice(0, 1).map(block),
    '',
    '## One that does not',
    '',
    ...check.examples.good.slice(0, 1).map(block),
    '',
    '## To accept it',
    '',
    `Write on the line above, or at the head of the part or recipe, with your reason:`,
    '',
    '```quern',
    `allow ${check.code} because …`,
    '```',
    '',
  ].join('\n');
}

/** The page with what is found of it in one recipe, and the arithmetic line by line; where that is nothing, why. `shown` is the file's name. */
export function explainOn(
  check: Check,
  findings: readonly (Finding | AcceptedFinding)[],
  scene: Scene,
  shown: string,
): string {
  const here = findings.filter((f) => f.code === check.code);
  const found = here.flatMap((f) => {
    const work = workOf(f, scene);
    return [
      `**Line ${f.at.line + 1}.** ${markdownLine(f.said.message)}`,
      ...('reason' in f ? ['', `Accepted there by an \`allow\` line: ${markdownText(f.reason)}.`] : []),
      ...(work.length === 0 ? [] : ['', ...work.map(markdownLine)]),
      '',
      `Source: ${markdownText(f.said.source ?? sourceText(check.source))}.`,
      '',
    ];
  });
  const name = markdownText(visibleLine(shown));
  const silent = () => whySilent(check, scene).map((why) => `- ${markdownLine(why)}`);
  if (found.length === 0) found.push(`Nothing of it is found in ${name}.`, '', ...silent(), '');
  return `${explainPage(check)}\n## In ${name}\n\n${found.join('\n')}`;
}

/** One line a check, by family. */
export function explainList(checks: readonly Check[]): string {
  const width = Math.max(...checks.map((c) => c.code.length));
  const families = [...new Set(checks.map((c) => c.family))];
  return families
    .map((family) => {
      const rows = checks
        .filter((c) => c.family === family)
        .map((c) => `  ${c.code.padEnd(width)}  ${c.severity.padEnd(7)}  ${c.title}`);
      return `${family}\n${rows.join('\n')}\n`;
    })
    .join('\n');
}

export function sourceText(source: Source): string {
  return source.kind === 'publication'
    ? source.title
    : source.kind === 'from memory' && !source.title.includes('from memory')
      ? `${source.title} (from memory)`
      : source.kind === 'from memory'
        ? source.title
        : source.kind;
}

const LEVELS = { error: 'an error', warning: 'a warning', info: 'information', hint: 'a hint' } as const;
const MARK = /^#\s+(?:[\^~]+|"[^"]*"|recipe)\s+[a-z-]+.*$/;

/** An example without the marks that make it a test. */
function block(example: string): string {
  const lines = example
    .trimEnd()
    .split('\n')
    .filter((line) => !MARK.test(line));
  return ['```quern', ...lines, '```'].join('\n');
}
