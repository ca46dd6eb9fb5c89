import { visibleLine } from '../../server/src/publish/visible.ts';

/** Words in which the editor finds no link and no icon, in one line where every character shows. */
export const plainWords = (words: string): string => visibleLine(words).replace(/\](?=\()|\$(?=\()/g, '$& ');
