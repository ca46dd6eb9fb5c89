/**
 * Knows how one picture stands on a page.
 * Refuses to know where on it.
 */
import { escapeHtml } from '../escape-html.ts';
import type { ReportPicture } from '../pictures.ts';

/** The image, which waits until it is scrolled to. */
export const pictureHtml = ({ src, alt, line }: ReportPicture): string =>
  `<img class="picture" src="${escapeHtml(src)}" alt="${escapeHtml(alt)}" loading="lazy" data-key="picture-${line}">`;
