/**
 * Knows the report of a recipe in each of its formats.
 * Refuses to know where it goes.
 */
import type { Findings } from '../checks/finding.ts';
import type { Recipe } from '../recipe/model.ts';
import { type ReportSources, report } from './report.ts';
import { reportText } from './report-text.ts';
import { viewFacts } from './view/facts.ts';
import { printedReport } from './view/printed.ts';

export const REPORT_FORMATS = ['text', 'json', 'html'] as const;
export type ReportFormat = (typeof REPORT_FORMATS)[number];

/** The recipe written out in full, with the findings of its writer's own file. */
export function reportedAs(
  format: ReportFormat,
  recipe: Recipe,
  findings: Findings,
  sources: Required<Omit<ReportSources, 'lineOf' | 'cooked'>> & Pick<ReportSources, 'cooked'>,
): string {
  if (format === 'html') {
    const label = recipe.world.measures === 'us' ? 'us' : 'eu';
    return printedReport(
      viewFacts(recipe, findings, { ...sources, mode: 'print', label, look: sources.cooked ? { cooked: true } : {} }),
    );
  }
  const worked = report(recipe, findings, sources);
  return format === 'json' ? `${JSON.stringify(worked, null, 2)}\n` : reportText(worked);
}
