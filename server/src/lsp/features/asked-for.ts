import { published, reported, turnable, weighedWords } from '../../editor/asked-for.ts';
import { runVerb, VERBS } from '../../editor/verbs.ts';
import { PUBLISH_FORMATS } from '../../publish/published.ts';
import { REPORT_FORMATS } from '../../publish/reported.ts';
import { editsOf } from '../convert.ts';
import { type Feature, onRequest } from '../feature.ts';
import {
  type ChangeParams,
  changeRequest,
  type DocumentAnswer,
  type MeasuresAnswer,
  type MeasuresParams,
  measuresRequest,
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
    onRequest<ChangeParams, ScaleAnswer>(
      changeRequest.method,
      refuse('Quern could not work this out; its log says why.'),
      ({ uri, verb: name, arg }, view) => {
        const snapshot = view.snapshot(uri);
        const verb = Object.hasOwn(VERBS, name) ? VERBS[name] : undefined;
        if (snapshot === undefined) return refuse(NOT_OPEN);
        if (verb === undefined) return refuse(`There is no verb \`${name}\`.`);
        const prices = () => view.prices(snapshot);
        const answered = runVerb(verb, { snapshot, arg, today: view.today(), prices });
        if ('refused' in answered) return refuse(answered.refused);
        if (!('edits' in answered)) return refuse(`\`${name}\` changes nothing.`);
        const { edits, changes, said } = answered;
        return { version, ok: true, edits: editsOf(snapshot, edits), changes, said };
      },
      ({ uri }) => uri,
    ),
    onRequest<MeasuresParams, MeasuresAnswer>(
      measuresRequest.method,
      { version, parts: [] },
      ({ uri }, view) => {
        const snapshot = view.snapshot(uri);
        return { version, parts: snapshot === undefined ? [] : turnable(snapshot) };
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
