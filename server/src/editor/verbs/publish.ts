/** The page for readers, as `format` says: html, markdown, text or json-ld. */
import { PUBLISH_FORMATS } from '../../publish/published.ts';
import { published } from '../asked-for.ts';
import { textIn } from '../page/acts/act.ts';
import type { Verb } from './verb.ts';

export const publish: Verb = {
  takes: ['format?'],
  title: 'Publish the recipe',
  run: ({ snapshot, arg }) => {
    const named = textIn(arg, 'format') ?? 'markdown';
    const format = PUBLISH_FORMATS.find((each) => each === named);
    if (format === undefined) return { refused: `A page is one of ${PUBLISH_FORMATS.join(', ')}.` };
    const had = published(snapshot, format, 'weight-first', false);
    return had.ok ? { text: had.value.text } : { refused: had.why };
  },
};
