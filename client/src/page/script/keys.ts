// Knows what the keys do on the page, beside what they do in every page.

import { goToFinding } from './findings.ts';
import { moveByKey } from './rows.ts';

export type Keyed = {
  /** To the line of the text, with the keys. */
  readonly go: (line: HTMLElement) => void;
  readonly press: (element: HTMLElement) => void;
  readonly undo: () => void;
};

/** Whether a key was one of the page's. */
export function pressKey(page: HTMLElement, event: KeyboardEvent, { go, press, undo }: Keyed): boolean {
  const { target, key, shiftKey, altKey, ctrlKey, metaKey } = event;
  if (!(target instanceof HTMLElement)) return false;
  if (key === 'F8') {
    goToFinding(page, shiftKey ? -1 : 1);
    return true;
  }
  if (altKey) return false;
  const isPlain = !ctrlKey && !metaKey;
  if (key === 'Escape' && isPlain) return leave(page, press);
  if (target instanceof HTMLInputElement && target.type === 'range') return isPlain && turn(target, key, press);
  if (target instanceof HTMLInputElement || target instanceof HTMLSelectElement) return false;
  if (key === 'z' && !isPlain && !shiftKey) {
    undo();
    return true;
  }
  if (!isPlain) return false;
  if (key === 'Enter' && target.matches('[data-line]:not(button, [data-do])')) {
    go(target);
    return true;
  }
  return moveByKey(key, target);
}

/** What is being turned is left by Escape. */
function leave(page: HTMLElement, press: (element: HTMLElement) => void): boolean {
  const button = page.querySelector<HTMLElement>('[data-do="leave"]');
  if (button !== null) press(button);
  return button !== null;
}

/** Home and End go to the ends of what is usual, Page keys by the step that the slider names. */
function turn(slider: HTMLInputElement, key: string, press: (element: HTMLElement) => void): boolean {
  const { home, end, page } = slider.dataset;
  const by = Number(page);
  const to: Readonly<Record<string, number>> = {
    Home: home === undefined ? Number.NaN : Number(home),
    End: end === undefined ? Number.NaN : Number(end),
    PageUp: slider.valueAsNumber + by,
    PageDown: slider.valueAsNumber - by,
  };
  const value = Object.hasOwn(to, key) ? to[key] : undefined;
  if (value === undefined || !Number.isFinite(value)) return false;
  slider.valueAsNumber = value;
  press(slider);
  return true;
}
