/**
 * Knows what the commands of the terminal answer for an open file: its page for readers, its report, an amount by itself, what can be adjusted.
 * Refuses to know where the answers go.
 */
import type { PriceList } from '../publish/cost.ts';
import { laidOut, type PublishFormat, publishedPage } from '../publish/published.ts';
import { type ReportFormat, reportedAs } from '../publish/reported.ts';
import { weighedLine, weighingLines } from '../publish/weighing.ts';
import { MEASURES } from '../recipe/measures/definitions.ts';
import { bandText, measureText } from '../recipe/measures/measure-text.ts';
import { partMeasure, placeIn } from '../recipe/measures/part-measure.ts';
import { readTrials } from '../recipe/trials/trials.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { isBroken } from '../workspace/variant.ts';
import { sayLineIn } from './place.ts';

/** What is asked for, or why it cannot be had. */
export type Had<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

export interface Published {
  readonly text: string;
  /** What whoever publishes it is to know first. */
  readonly said: readonly string[];
}

/** The page for readers; `proved`: only of a recipe that was cooked as it is written. */
export function published(
  snapshot: Snapshot,
  format: PublishFormat,
  measures: 'weight-first' | 'measure-first',
  proved: boolean,
): Had<Published> {
  if (snapshot.outline.recipe === undefined) return no('There is no recipe in this file.');
  if (!snapshot.isWhole) return no('The recipe builds on what is not there: its findings say what is missing.');
  const label = snapshot.house.world.measures === 'us' ? 'us' : 'eu';
  const page = publishedPage(snapshot, { measures, label, sayLine: sayLineIn(snapshot), broken: isBroken });
  const { missing } = page.proof;
  if (proved && missing.length > 0) return no(`It is not proved: ${missing.join('; ')}.`);
  return yes({
    text: laidOut(page, format),
    said: page.notUnderstood.map(({ where, text }) => `Not understood, and the page says so: ${text} (${where}).`),
  });
}

/** The recipe worked out. */
export function reported(snapshot: Snapshot, format: ReportFormat, prices: PriceList): Had<string> {
  if (snapshot.outline.recipe === undefined) return no('There is no recipe in this file.');
  const { whole, outline, findings } = snapshot;
  return yes(
    reportedAs(format, whole.recipe, findings, {
      trials: readTrials(outline),
      prices,
      sayLine: sayLineIn(snapshot),
    }),
  );
}

/** An amount of a food in grams, and the reason for them. */
export function weighedWords(words: string, { house }: Snapshot): Had<readonly string[]> {
  const bound = weighedLine(words, house.world);
  return bound === undefined
    ? no('Write the amount first, such as `1 1/2 cup plain flour`.')
    : yes(weighingLines(bound));
}

export interface TurnablePart {
  /** '' of a recipe of one nameless part. */
  readonly part: string;
  readonly measures: readonly {
    readonly measure: string;
    readonly says: string;
    readonly now: string;
    readonly usual: string;
    readonly outside: boolean;
  }[];
}

/** The measures that may be brought to another value, of the file's own parts: not what nobody knows, or what hangs on it. */
export const turnable = ({ recipe }: Snapshot): readonly TurnablePart[] =>
  recipe.parts.flatMap((part) => {
    const measures = (part.head.kind?.measures ?? []).flatMap((held) => {
      const worked = partMeasure(part, held.measure);
      if (!worked.known || (worked.open ?? []).length > 0) return [];
      const verdict = placeIn(worked, held);
      return [
        {
          measure: held.measure,
          says: MEASURES[held.measure].words,
          now: measureText(held.measure, worked.value.low, worked.value.high),
          usual: bandText(held.measure, held.usual),
          outside: verdict !== undefined && verdict !== 'ok',
        },
      ];
    });
    return measures.length === 0 ? [] : [{ part: part.head.name, measures }];
  });

const yes = <T>(value: T): Had<T> => ({ ok: true, value });
const no = (why: string): Had<never> => ({ ok: false, why });
