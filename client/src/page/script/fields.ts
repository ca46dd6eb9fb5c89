// Knows what a button or field of the page asks for: an act by its name, what the page carries for it, and what the field holds.

export type Asked = { readonly act: string; readonly arg: unknown; readonly value: unknown };

/** What an element marked with `data-do` asks for. */
export function askedBy(element: HTMLElement): Asked | undefined {
  const { do: act, arg } = element.dataset;
  return act === undefined ? undefined : { act, arg: readArg(arg), value: heldBy(element) };
}

function readArg(arg: string | undefined): unknown {
  if (arg === undefined) return null;
  try {
    return JSON.parse(arg);
  } catch {
    return null;
  }
}

/** Numbers where it is a field of numbers; half a number is none. */
function heldBy(element: HTMLElement): unknown {
  if (element instanceof HTMLSelectElement) return element.value;
  if (!(element instanceof HTMLInputElement)) return null;
  if (element.type === 'checkbox') return element.checked;
  const isNumber = element.type === 'range' || element.type === 'number' || element.inputMode !== '';
  if (!isNumber) return element.value;
  const value = Number(element.value.trim().replace(',', '.'));
  return element.value.trim() === '' || !Number.isFinite(value) ? element.value : value;
}

/** A slider is heard while it moves; any other field once it is left, or Enter is pressed. */
export const isHeardAtOnce = (element: Element): boolean =>
  element instanceof HTMLInputElement && element.type === 'range';
