/**
 * Knows how what a command says is put on a machine: the one place where it is escaped for the terminal.
 */
import { visible, visibleLine } from '../publish/visible.ts';
import type { Io, Machine } from './io.ts';

/** The machine, where nothing of a recipe or of the name of a file moves the caret, hides a line or writes another. */
export function shownOn(machine: Machine): Omit<Io, 'trouble'> {
  return {
    ...machine,
    out: (text) => machine.out(visible(text)),
    err: (text) => machine.err(visible(text)),
    progress: (text) => machine.progress(visibleLine(text)),
    document: (text) => machine.out(machine.isTerminal ? visible(text) : text),
    painted: (lines) => machine.out(lines),
  };
}
