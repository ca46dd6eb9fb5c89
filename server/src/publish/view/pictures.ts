/**
 * Knows where the pictures of a recipe stand on its page: those of the dish above the list, those of a step behind it.
 * Refuses to know what a trial looked like.
 */
import type { ReportPicture } from '../pictures.ts';
import type { Reading } from './facts.ts';
import { pictureHtml } from './picture.ts';

/** Of the dish, or of the step on a line, from 1. */
export const picturesOf = ({ report }: Reading, of: 'dish' | number): string => {
  const shown = report.pictures.filter(({ shows, of_line: line }) =>
    of === 'dish' ? shows === 'dish' : shows === 'step' && line === of,
  );
  return shown.map(figure).join('\n');
};

function figure(picture: ReportPicture): string {
  return `<figure class="picture">${pictureHtml(picture)}</figure>`;
}
