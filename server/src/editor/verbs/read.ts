/** A printed recipe in the notation: the file, where it is one, else what is sent along as `text`, to be read. */
import { LONGEST_TEXT, readText } from '../../edits/read-text/read-text.ts';
import { editsBetween } from '../../edits/text-edit.ts';
import { parseDocument } from '../../notation/document.ts';
import { textIn } from '../page/acts/act.ts';
import { readPasted } from '../pasted.ts';
import type { Verb } from './verb.ts';

export const read: Verb = {
  takes: ['text?'],
  title: 'Read as a recipe',
  run: ({ snapshot, arg }) => {
    const given = textIn(arg, 'text');
    if (given !== undefined && given.length > LONGEST_TEXT) return { refused: 'That is too long for a recipe.' };
    const read = given === undefined ? readPasted(snapshot) : readText(given, snapshot.house.world);
    if (read === undefined || read.ingredients === 0)
      return { refused: 'No list of ingredients was found: one a line, the amount first.' };
    if (given !== undefined) return { text: read.text };
    const said = read.missed.map(({ printed }) => `Not understood: ${printed}`);
    return { edits: editsBetween(snapshot.document, parseDocument(read.text)), changes: [], said };
  },
};
