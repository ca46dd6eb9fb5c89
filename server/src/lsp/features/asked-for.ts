import { converted, published, readConversion, reported, weighedWords } from '../../editor/asked-for.ts';
import { PUBLISH_FORMATS } from '../../publish/published.ts';
import { REPORT_FORMATS } from '../../publish/reported.ts';
import { editsOf } from '../convert.ts';
import { type Feature, onRequest } from '../feature.ts';
import {
  type ConvertParams,
  convertRequest,
  type DocumentAnswer,
  type PublishParams,
  publishRequest,
  type ReportParams,
  reportRequest,
  type ScaleAnswer,
  messageVersion as version,
  type WeighParams,
  weighRequest,
} from '../messages.ts';

const NOT_OPEN = 'The recipe is not open.';
const refuse = (why: string) => ({ version, ok: false, why }) as const;

/** What the terminal prints, for a client that shows or saves it. */
export const askedForFeature: Feature = {
  requests: [
    onRequest<PublishParams, DocumentAnswer>(
      publishRequest.method,
      refuse('Quern could not publish this recipe; its log says why.'),
      ({ uri, format: name, measures, proved }, view) => {
        const snapshot = view.snapshot(uri);
        const format = PUBLISH_FORMATS.find((f) => f === name);
        if (snapshot === undefined) return refuse(NOT_OPEN);
        if (format === undefined) return refuse(`A page is one of ${PUBLISH_FORMATS.join(', ')}.`);
        const order = measures === 'measure-first' ? 'measure-first' : 'weight-first';
        const had = published(snapshot, format, order, proved === true);
        return had.ok ? { version, ok: true, ...had.value } : refuse(had.why);
      },
      ({ uri }) => uri,
    ),
    onRequest<ReportParams, DocumentAnswer>(
      reportRequest.method,
      refuse('Quern could not work this recipe out; its log says why.'),
      ({ uri, format: name }, view) => {
        const snapshot = view.snapshot(uri);
        const format = REPORT_FORMATS.find((f) => f === name);
        if (snapshot === undefined) return refuse(NOT_OPEN);
        if (format === undefined) return refuse(`A report is one of ${REPORT_FORMATS.join(', ')}.`);
        const had = reported(snapshot, format, view.prices(snapshot));
        return had.ok ? { version, ok: true, text: had.value, said: [] } : refuse(had.why);
      },
      ({ uri }) => uri,
    ),
    onRequest<ConvertParams, ScaleAnswer>(
      convertRequest.method,
      refuse('Quern could not convert this recipe; its log says why.'),
      ({ uri, to: name, both, lines }, view) => {
        const snapshot = view.snapshot(uri);
        const to = readConversion(name);
        if (snapshot === undefined) return refuse(NOT_OPEN);
        if (to === undefined) return refuse(`There is no \`${name}\` to convert to.`);
        const had = converted(snapshot, { to, both: both === true, ...(lines && { lines }) });
        if (!had.ok) return refuse(had.why);
        const { edits, changes, said } = had.value;
        return { version, ok: true, edits: editsOf(snapshot, edits), changes, said };
      },
      ({ uri }) => uri,
    ),
    onRequest<WeighParams, DocumentAnswer>(
      weighRequest.method,
      refuse('Quern could not weigh this; its log says why.'),
      ({ uri, words }, view) => {
        const had = weighedWords(words, view.textAt(uri, ''));
        return had.ok ? { version, ok: true, text: had.value.join('\n'), said: [] } : refuse(had.why);
      },
    ),
  ],
};
