/**
 * Knows the pictures of a recipe as a report has them: by their file's name from the recipe's folder on.
 * Refuses to look whether they are there, and any address that leads elsewhere: the notation takes none.
 */
import type { Outline } from '../notation/outline.ts';
import { picturesOf } from '../recipe/pictures.ts';

export interface ReportPicture {
  /** As it is written. */
  readonly file: string;
  /** The same as a page beside the recipe asks for it. */
  readonly src: string;
  /** What is to be seen: the picture's own words, else those of its step, the name of the recipe, or the day of the trial. */
  readonly alt: string;
  readonly shows: 'dish' | 'step' | 'trial';
  /** Lines from 1: its own, and that of the step or trial; null for the dish. */
  readonly line: number;
  readonly of_line: number | null;
}

/** `lineOf` says which line of the writer's file, from 1, a line of the outline is. */
export const picturesIn = (outline: Outline, lineOf = (line: number): number => line + 1): readonly ReportPicture[] =>
  picturesOf(outline).map(({ at, file, of, alt }) => ({
    file: file.text,
    src: srcOf(file.text),
    alt,
    shows: of.kind,
    line: lineOf(at),
    of_line: of.kind === 'dish' ? null : lineOf(of.line),
  }));

/** Its name as a relative address; nothing in it can lead to another place than a file. */
function srcOf(file: string): string {
  return file.replaceAll('\\', '/').split('/').map(encodeURIComponent).join('/');
}
