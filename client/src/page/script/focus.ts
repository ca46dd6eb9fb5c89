// Knows where the keys go once what was pressed is gone from the page: to what has come in its place, never to nowhere.

import { findingsIn, focusFinding } from './findings.ts';
import { focusLine } from './rows.ts';

/** What was pressed, and where. */
export type Pressed = {
  readonly on: HTMLElement;
  readonly does: string | undefined;
  /** Of a finding: its key, and which of all findings it was. */
  readonly finding?: { readonly key: string; readonly at: number };
  /** The keys of what it stands in, the nearest first. */
  readonly within: readonly string[];
};

export function pressedAt(root: ParentNode, on: HTMLElement): Pressed {
  const pressed = { on, does: on.dataset.do };
  const within: string[] = [];
  for (
    let of = on.closest<HTMLElement>('[data-key]');
    of !== null;
    of = of.parentElement?.closest('[data-key]') ?? null
  )
    if (of.dataset.key !== undefined) within.push(of.dataset.key);
  const finding = on.closest<HTMLElement>('.finding');
  if (finding === null) return { ...pressed, within };
  const all = findingsIn(root);
  return { ...pressed, within, finding: { key: finding.dataset.key ?? '', at: all.indexOf(finding) } };
}

/** Whether what was pressed has come to something; a finding is mended once it is gone. Nobody's keys are taken who is elsewhere by now. */
export function focusAfter(root: ParentNode, { on, does, finding, within }: Pressed): boolean {
  const all = findingsIn(root);
  if (finding !== undefined && all.some(({ dataset }) => dataset.key === finding.key)) return false;
  const { activeElement: at } = document;
  // What was shown meanwhile is not what it comes to; a button in its place is another.
  if (at === on && on.dataset.do === does) return false;
  const isLost = at === null || at === document.body || at === on;
  if (!document.hasFocus() || !isLost) return true;
  const next = finding === undefined ? undefined : all[Math.min(finding.at, all.length - 1)];
  if (next === undefined) focusFirst(root, within);
  else focusFinding(next);
  return true;
}

const STOPS = ['[data-line]', 'button', 'input', 'select', 'a[href]'];

/** On a slider that has come; else in the nearest that is still there of what it stood in: a line before whatever can be pressed. */
function focusFirst(root: ParentNode, within: readonly string[]): void {
  const slider = root.querySelector<HTMLElement>('main input[type=range]');
  if (slider !== null) {
    slider.focus();
    return;
  }
  for (const key of within) {
    const place = root.querySelector(`[data-key="${CSS.escape(key)}"]`);
    const stop = STOPS.flatMap((kind) => place?.querySelector<HTMLElement>(kind) ?? [])[0];
    if (stop !== undefined) {
      focusLine(stop);
      return;
    }
  }
}
