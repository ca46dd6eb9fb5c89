/**
 * Counts the figures by what vouches for them, and lists those from memory by how much hangs on them: findings over the published recipes, the
 * faults made in them, the kitchen's recipes and the examples that name the source, and lines of those recipes that are weighed by it:
 * `npm run audit:sources [-- --most 60] [-- --practice]`.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import './tables-as-text.ts';
import './fresh-forms.ts';
import type { Snapshot } from '../src/workspace/snapshot.ts';
import { allSources, type Sourced, type Trust } from './sources.ts';

const { RECIPES } = await import('../../tests/outside/faults/corpus.ts');
const { FAULTS } = await import('../../tests/outside/faults/faults.ts');
const { brokenBy } = await import('../../tests/outside/faults/judge.ts');
const { sourceText } = await import('../src/publish/page.ts');
const { makeHouse } = await import('../src/workspace/houses.ts');
const { DEFAULTS } = await import('../src/workspace/settings.ts');
const { Snapshot: Opened } = await import('../src/workspace/snapshot.ts');

const args = process.argv.slice(2);
const most = args.includes('--most') ? Number(args[args.indexOf('--most') + 1]) : 60;
const listed: Trust = args.includes('--practice') ? 'common practice' : 'from memory';
const { house } = makeHouse(DEFAULTS);

const kitchen = ['tests/kitchen', 'examples'].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.quern'))
    .map((file) => join(folder, file)),
);

/** How often a finding says a source, by its words; a check is raised, by its code; a food stands on a line, or is weighed by a source. */
const said = new Map<string, number>();
const raised = new Map<string, number>();
const named = new Map<string, number>();
const weighed = new Map<string, number>();
const more = (of: Map<string, number>, key: string): unknown => of.set(key, (of.get(key) ?? 0) + 1);

function count({ findings, recipe }: Snapshot, isFault: boolean): void {
  for (const { code, check, said: words } of [...findings.open, ...findings.accepted]) {
    more(said, words.source ?? sourceText(check.source));
    more(raised, code);
  }
  if (isFault) return;
  for (const { ingredients } of recipe.parts.map(({ head }) => head))
    for (const { food, weighed: grams } of ingredients) {
      if (food === undefined) continue;
      more(named, food.id);
      if (grams.known) more(weighed, `${food.id}\t${grams.reason.source}`);
    }
}
for (const { snapshot } of RECIPES) count(snapshot, false);
for (const fault of FAULTS) count(brokenBy(fault), true);
for (const path of kitchen) count(Opened.open(path, 1, readFileSync(path, 'utf8'), house), false);

/** What a file decides that no finding says. */
const DECIDES: readonly (readonly [file: RegExp, codes: readonly string[]])[] = [
  [/freezing\.json/, ['freeze-out-of-range']],
  [/leavening\.(?:json|ts)/, ['leavening-out-of-range']],
  [/fermentation\.json/, ['yeast-out-of-range']],
  [/sugar-boiling\.json/, ['solids-out-of-range', 'jam-wont-set', 'implausible-temperature']],
  [/oven-loss\.json/, ['yield-mismatch']],
  [/pan-fill\.json|\bpans\.tsv/, ['pan-overfull', 'pan-underfull']],
  [/gelling\.ts/, ['gel-wont-set', 'gel-too-firm']],
  [/curing-limits/, ['curing-salt-dose']],
  [/low-acid-fruit|in-jars\.ts/, ['low-acid-preserve']],
  [/safe-temperatures|enough\.ts/, ['undercooked']],
  [/holding-limits/, ['held-too-warm', 'cooling-too-slow', 'kept-too-long']],
  [/natural-toxins/, ['natural-toxin']],
  [/unsafe-for\.tsv/, ['unsafe-for-them']],
  [/claims\.json/, ['allergen-claim']],
  [/data\/heat|src\/heat|recipe\/baking/, ['bake-time-doubtful', 'chill-too-short', 'cooling-too-slow']],
];
const codeOf = (file: string): string => /([a-z-]+)\.ts$/.exec(file)?.[1] ?? '';

/** Findings that say the source, or the check's own; of a food, the lines that are weighed by it. Shares of a file are not told apart. */
function weightOf({ file, of, source }: Sourced): { readonly findings: number; readonly lines: number } {
  const [id = ''] = of.split(', ');
  if (/foods\/(?:measures|pieces|trim)/.test(file)) return { findings: 0, lines: weighed.get(`${id}\t${source}`) ?? 0 };
  if (/foods\/(?!likeness|drained|class|lengths|strengths)/.test(file))
    return { findings: 0, lines: named.get(id) ?? 0 };
  const whole = DECIDES.find(([where]) => where.test(file))?.[1] ?? [codeOf(file)];
  const byWords = [...said]
    .filter(([words]) => source.length > 'common practice, no source'.length && words.includes(source))
    .reduce((sum, [, n]) => sum + n, 0);
  return { findings: Math.max(byWords, ...whole.map((code) => raised.get(code) ?? 0)), lines: 0 };
}

const sources = allSources();
const sum = (of: readonly Sourced[]): string =>
  `${String(of.length).padStart(6)} ${String(of.reduce((n, { figures }) => n + figures, 0)).padStart(7)}`;
const TRUSTS: readonly Trust[] = ['named', 'common practice', 'from memory', 'none'];
console.log('                     sources figures');
for (const trust of TRUSTS) console.log(`${trust.padEnd(20)} ${sum(sources.filter((s) => s.trust === trust))}`);
console.log(`${'all'.padEnd(20)} ${sum(sources)}`);

const doubtful = sources.filter(({ trust }) => trust === listed);
console.log(`\n${listed}, by file`);
const byFile = groupedBy(doubtful, ({ file }) => file);
for (const [file, of] of [...byFile].sort(([, a], [, b]) => b.length - a.length)) console.log(`${sum(of)}  ${file}`);

console.log(`\n${listed}, by what hangs on it: findings, lines of recipes, figures`);
/** Figures of a file with one source are one line. */
const grouped = [...groupedBy(doubtful, (entry) => `${entry.file}: ${keyOf(entry)}`)].map(([words, of]) => ({
  words,
  findings: Math.max(...of.map((entry) => weightOf(entry).findings)),
  lines: of.reduce((n, entry) => n + weightOf(entry).lines, 0),
  figures: of.reduce((n, { figures }) => n + figures, 0),
}));
grouped.sort((a, b) => b.findings + b.lines - a.findings - a.lines);
for (const { words, findings, lines, figures } of grouped.slice(0, most))
  console.log(`${[findings, lines, figures].map((n) => String(n).padStart(5)).join(' ')}  ${words.slice(0, 170)}`);

/** Of foods, the food too: one word stands for the source of hundreds. */
function keyOf({ file, of, source }: Sourced): string {
  return /data\/foods\//.test(file) ? `${of.split(', ')[0]}: ${source}` : source;
}

function groupedBy<T>(all: readonly T[], key: (one: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of all) groups.set(key(one), [...(groups.get(key(one)) ?? []), one]);
  return groups;
}
