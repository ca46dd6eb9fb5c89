// Knows how the keys move within a list: each list is one stop of the Tab key, and arrows go from line to line.

const GROUPS = 'ol, ul, table';

/** What of an element's list can be gone to; nothing where it stands in none. */
function linesAround(element: Element): HTMLElement[] {
  const group = element.closest(GROUPS);
  return group === null ? [] : linesOf(group);
}

function linesOf(group: Element): HTMLElement[] {
  const all = [...group.querySelectorAll<HTMLElement>('[data-line]')];
  return all.filter((line) => line.closest(GROUPS) === group && line.closest('.finding, button') === null);
}

const isStop = (line: HTMLElement): boolean => line.getAttribute('tabindex') === '0';

/** Leaves one stop in each list: the line that has the focus, or had it, or the first. */
export function stopOnce(root: ParentNode): void {
  for (const group of root.querySelectorAll('main :is(ol, ul, table)')) stopAt(linesOf(group));
}

function stopAt(
  lines: readonly HTMLElement[],
  stop = lines.find((line) => line === document.activeElement) ?? lines.find(isStop) ?? lines[0],
): void {
  for (const line of lines) line.tabIndex = line === stop ? 0 : -1;
}

const STEPS: Readonly<Record<string, (at: number, last: number) => number>> = {
  ArrowDown: (at, last) => Math.min(at + 1, last),
  ArrowUp: (at) => Math.max(at - 1, 0),
  Home: () => 0,
  End: (_, last) => last,
};

/** Moves by a key; false where the key, or the place, is none of a list's. */
export function moveByKey(key: string, from: HTMLElement): boolean {
  const step = Object.hasOwn(STEPS, key) ? STEPS[key] : undefined;
  const lines = step === undefined ? [] : linesAround(from);
  const at = lines.indexOf(from);
  if (step === undefined || at < 0) return false;
  focusLine(lines[step(at, lines.length - 1)], lines);
  return true;
}

/** Puts the focus on a line of a list, which is its stop from then on. */
export function focusLine(line: HTMLElement | undefined, lines = line === undefined ? [] : linesAround(line)): void {
  if (line === undefined) return;
  if (lines.includes(line)) stopAt(lines, line);
  line.focus();
}
