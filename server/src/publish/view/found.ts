/**
 * Knows how a finding stands by its line: its shape, its first sentence, its fixes as buttons, and its code, which opens the rest.
 * Refuses to know where the line stands.
 */
import { escapeHtml } from '../escape-html.ts';
import { doing } from './controls.ts';
import type { Reading } from './facts.ts';
import type { Level, ViewFinding, ViewFix } from './finding.ts';
import { checkWords, mark } from './marks.ts';

/** The findings of a line, by the line, each shown once. */
export class Notes {
  private readonly byLine = new Map<number, ViewFinding[]>();
  private readonly facts: Reading;

  constructor(facts: Reading) {
    this.facts = facts;
    // Of what is looked at the lines are others than those that were judged.
    if (facts.mode === 'read' || facts.looking !== undefined) return;
    for (const finding of facts.findings) {
      // It is said over the facts already.
      if (finding.code === 'missing-file' && facts.missing.some(({ line }) => line === finding.line)) continue;
      const of = this.byLine.get(finding.line);
      if (of === undefined) this.byLine.set(finding.line, [finding]);
      else of.push(finding);
    }
  }

  /** Those of a line that are open. */
  on(line: number): readonly ViewFinding[] {
    return (this.byLine.get(line) ?? []).filter(({ accepted }) => accepted === undefined);
  }

  /** Those of a line, told once. */
  tell(line: number | undefined): string {
    const findings = line === undefined ? undefined : this.byLine.get(line);
    if (line === undefined || findings === undefined) return '';
    this.byLine.delete(line);
    return findings.map((finding) => foundHtml(finding, this.facts)).join('');
  }

  /** Those that no line has told so far, of lines before one or of all, each with a way to its line. */
  tellRest(before = Number.POSITIVE_INFINITY): string {
    const lines = [...this.byLine.keys()].filter((line) => line < before);
    return lines
      .map((line) => {
        const called =
          this.facts.mode === 'live'
            ? `<a class="at" href="#line-${line}" data-line="${line}">Line ${line}</a>`
            : `Line ${line}`;
        return `<li><span class="amount">${called}</span>${this.tell(line)}</li>`;
      })
      .join('\n');
  }
}

/** The gravest of some; undefined of none. */
export const gravest = (findings: readonly ViewFinding[]): Level | undefined =>
  (['error', 'warning', 'note'] as const).find((level) => findings.some((finding) => finding.level === level));

function foundHtml(finding: ViewFinding, facts: Reading): string {
  const { key, level, first, accepted } = finding;
  const said = `${mark(level, true)} ${checkWords(first)}`;
  if (accepted !== undefined)
    return `<div class="finding accepted" id="${key}" data-key="${key}">${said} <i>accepted: ${escapeHtml(accepted)}</i></div>`;
  return `<div class="finding" id="${key}" data-key="${key}">${said}${facts.mode === 'live' ? `<div class="fixes">${fixes(finding, facts)}${trial(finding, facts)}${more(finding)}</div>` : printed(finding)}</div>`;
}

/** The first is a button; of more than two the others are links behind it. */
function fixes(finding: ViewFinding, { readOnly }: Reading): string {
  const [first, second, ...others] = readOnly === undefined ? finding.fixes : [];
  if (first === undefined) return '';
  if (second === undefined) return `${fixButton(finding, first)} `;
  if (others.length === 0) return `${fixButton(finding, first)} ${fixButton(finding, second)} `;
  const links = [second, ...others].map((fix) => fixButton(finding, fix, 'plain'));
  return `${fixButton(finding, first)} <span class="soft small">or ${links.join(', ')}</span> `;
}

/** What is not as it was cooked is cooked again. */
const trial = ({ code }: ViewFinding, { readOnly }: Reading): string =>
  code === 'untested-change' && readOnly === undefined ? `${doing('trial', {}, 'Begin a trial of today')} ` : '';

const fixButton = ({ code, line, start }: ViewFinding, { title }: ViewFix, looks: '' | 'plain' = ''): string =>
  doing('fix', { code, line, start, title }, title.replaceAll('`', ''), looks);

const more = ({ key, code, rest, source }: ViewFinding): string =>
  `<details data-key="${key}-more"><summary>${escapeHtml(code)}</summary>${rest === '' ? '' : `${checkWords(rest)} `}Source: ${escapeHtml(source)}. ${doing('explain', { code }, 'More on this', 'plain')}</details>`;

const printed = ({ code, rest }: ViewFinding): string =>
  `${rest === '' ? '' : ` ${checkWords(rest)}`} <span class="soft small">${escapeHtml(code)}</span>`;
