/**
 * Knows how a file is published: the whole recipe as a page for readers, in one of the formats.
 * Refuses to know who asks, and where the page goes.
 */
import type { Finding, Findings } from '../checks/finding.ts';
import type { Outline } from '../notation/outline.ts';
import type { Recipe } from '../recipe/model.ts';
import { readTrials } from '../recipe/trials/trials.ts';
import { htmlPage } from './html.ts';
import { jsonLd } from './json-ld.ts';
import { markdownPage, textPage } from './plain-pages.ts';
import { type PlacedFinding, placedIn } from './proof.ts';
import { type PageOptions, type ReaderPage, readerPage } from './reader-page.ts';

export const PUBLISH_FORMATS = ['html', 'markdown', 'text', 'json-ld'] as const;
export type PublishFormat = (typeof PUBLISH_FORMATS)[number];

/** A file as it is written, and the recipe as a cook cooks it: a variant written out in full, else the same. */
export interface Publishable {
  readonly outline: Outline;
  readonly findings: Findings;
  readonly whole: { readonly recipe: Recipe; readonly findings: Findings };
}

export interface PublishWish extends PageOptions {
  /** Says of a line of the whole recipe where its writer finds it. */
  readonly sayLine: (line: number) => string;
  /** What a file asks of another in vain: found in the file itself, and not in the whole recipe. */
  readonly broken: (finding: Finding) => boolean;
}

export function publishedPage(file: Publishable, { sayLine, broken, ...options }: PublishWish): ReaderPage {
  const { recipe, findings } = file.whole;
  const placed = placedFindings(file, sayLine, broken);
  return readerPage(recipe, findings, options, readTrials(file.outline), placed, sayLine);
}

/** What is found in the whole recipe, each by the file and line that say it, and what a variant asks of its base in vain. */
function placedFindings(
  { findings, whole }: Publishable,
  sayLine: PublishWish['sayLine'],
  broken: PublishWish['broken'],
): PlacedFinding[] {
  if (whole.findings === findings) return placedIn(findings);
  const asked = placedIn(findings).filter(({ finding }) => broken(finding));
  return [...asked, ...whole.findings.open.map((finding) => ({ finding, where: sayLine(finding.at.line) }))];
}

/** The page as a text of a format. */
export function laidOut(page: ReaderPage, format: PublishFormat): string {
  switch (format) {
    case 'html':
      return htmlPage(page);
    case 'markdown':
      return markdownPage(page);
    case 'text':
      return textPage(page);
    case 'json-ld':
      return jsonLd(page);
  }
}
