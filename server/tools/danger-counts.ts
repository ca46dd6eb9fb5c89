/**
 * Prints how judging by state does beside the checks: `npm run dangers -- DIR [--half odd|even] [--list] [--only CODE]`.
 * DIR holds recipes in `danger/`, each with the code that must be found in its first line (`# expect: CODE | CODE`), and in `safe/`, in which
 * none must be; or recipes that work, at any depth, where every verdict is listed that no check of safety has, and the other way round.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import './tables-as-text.ts';
import './fresh-forms.ts';

const { dangersIn } = await import('../src/checks/by-state/dangers.ts');
const { makeHouse } = await import('../src/workspace/houses.ts');
const { DEFAULTS } = await import('../src/workspace/settings.ts');
const { Snapshot } = await import('../src/workspace/snapshot.ts');

const args = process.argv.slice(2);
const [dir = '.'] = args;
const half = args[args.indexOf('--half') + 1];
const isHalved = args.includes('--half');
const list = args.includes('--list');
const only = args.includes('--only') ? args[args.indexOf('--only') + 1] : undefined;
const { house } = makeHouse(DEFAULTS);

interface Judged {
  readonly name: string;
  readonly text: string;
  /** `CODE level: why` */
  readonly verdicts: readonly { readonly code: string; readonly level: string; readonly why: string }[];
  readonly findings: readonly { readonly code: string; readonly level: string; readonly why: string }[];
}

const inHalf = (name: string): boolean => !isHalved || (name.length % 2 === 0) === (half === 'even');

function judge(path: string): Judged {
  const text = readFileSync(path, 'utf8');
  const snapshot = Snapshot.open(path, 1, text, house);
  return {
    name: basename(path),
    text,
    verdicts: dangersIn(snapshot.recipe, house),
    findings: [...snapshot.findings.open, ...snapshot.findings.accepted]
      .filter(({ check }) => check.family === 'safety')
      .map(({ code, severity, said }) => ({ code, level: severity, why: said.message })),
  };
}

const recipesIn = (folder: string): readonly Judged[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.quern') && inHalf(basename(file)))
    .sort()
    .map((file) => judge(join(folder, file)));

const expected = ({ text }: Judged): readonly string[] =>
  (/^# expect: (.*)$/m.exec(text)?.[1] ?? '')
    .replace('(no code) ', '')
    .split('|')
    .map((code) => code.trim());
const hasCode = (judged: Judged): boolean => !/^# expect: \(no code\)/m.test(judged.text);
const isGrave = ({ level }: { readonly level: string }): boolean => level === 'error' || level === 'warning';
const shown = (of: Judged['verdicts']): string =>
  of.map(({ code, level, why }) => `${code} ${level}: ${why}`).join(' · ') || '-';
const share = (n: number, of: number): string => `${n} of ${of} (${of === 0 ? 0 : Math.round((100 * n) / of)} %)`;

/** What judging by state has a verdict for; formulas, claims and units stay with their checks. */
const BY_STATE = new Set([
  'undercooked',
  'no-safe-temperature',
  'raw-egg',
  'raw-flour',
  'cooling-too-slow',
  'held-too-warm',
  'garlic-in-oil',
  'low-acid-preserve',
]);

function grid(root: string): void {
  const all = recipesIn(join(root, 'danger')).filter(hasCode);
  const those = all.filter((judged) => expected(judged).some((code) => BY_STATE.has(code)));
  const hits = (of: (judged: Judged) => Judged['verdicts'], judged: Judged): boolean =>
    of(judged).some((v) => isGrave(v) && expected(judged).includes(v.code));
  const state = those.filter((judged) => hits(({ verdicts }) => verdicts, judged));
  const near = those.filter((judged) => judged.verdicts.some((v) => isGrave(v)));
  const asked = those.filter((judged) => judged.verdicts.length > 0);
  const today = those.filter((judged) => hits(({ findings }) => findings, judged));
  const either = all.filter((j) => hits(({ verdicts }) => verdicts, j) || hits(({ findings }) => findings, j));
  console.log(
    `dangers with a state: by state ${share(state.length, those.length)}, any code ${share(near.length, those.length)}, with questions ${share(asked.length, those.length)}; by the checks ${share(today.length, those.length)}`,
  );
  console.log(
    `dangers with a code: by either ${share(either.length, all.length)}; by the checks ${share(all.filter((j) => hits(({ findings }) => findings, j)).length, all.length)}`,
  );
  const codes = new Map<string, [number, number, number]>();
  for (const judged of those) {
    const code = expected(judged)[0] ?? '';
    const [a, b, n] = codes.get(code) ?? [0, 0, 0];
    codes.set(code, [a + (state.includes(judged) ? 1 : 0), b + (today.includes(judged) ? 1 : 0), n + 1]);
  }
  for (const [code, [a, b, n]] of [...codes].sort())
    console.log(`  ${code.padEnd(22)} by state ${a}/${n}, by the checks ${b}/${n}`);
  const safe = recipesIn(join(root, 'safe'));
  const alarms = safe.filter(({ verdicts }) => verdicts.some(isGrave));
  const questions = safe.filter(({ verdicts }) => verdicts.some((v) => !isGrave(v)));
  const old = safe.filter(({ findings }) => findings.some(isGrave));
  console.log(
    `safe: false alarms by state ${share(alarms.length, safe.length)}, questions ${share(questions.length, safe.length)}; by the checks ${share(old.length, safe.length)}`,
  );
  if (!list) return;
  for (const judged of those.filter((j) => !state.includes(j)))
    console.log(
      `missed ${judged.name}: ${expected(judged).join(' | ')}; by state ${shown(judged.verdicts)}; checks ${judged.findings.map((f) => `${f.code} ${f.level}`).join(', ') || '-'}`,
    );
  for (const judged of alarms) console.log(`alarm ${judged.name}: ${shown(judged.verdicts)}`);
  for (const judged of questions) console.log(`question ${judged.name}: ${shown(judged.verdicts)}`);
}

/** Each difference between the verdicts and the checks, by code. */
function shadow(root: string): void {
  let [recipes, alike, more, less, asks] = [0, 0, 0, 0, 0];
  for (const judged of recipesIn(root)) {
    recipes++;
    const codes = (of: Judged['verdicts']) =>
      new Set(of.filter(isGrave).flatMap(({ code }) => (BY_STATE.has(code) ? code : [])));
    const [state, checks] = [codes(judged.verdicts), codes(judged.findings)];
    if (judged.verdicts.some((v) => !isGrave(v))) asks++;
    const added = [...state].filter((code) => !checks.has(code) && (only === undefined || only === code));
    const gone = [...checks].filter((code) => !state.has(code) && (only === undefined || only === code));
    if (added.length === 0 && gone.length === 0) alike++;
    more += added.length;
    less += gone.length;
    for (const code of added) console.log(`+ ${judged.name}: ${shown(judged.verdicts.filter((v) => v.code === code))}`);
    for (const code of gone) console.log(`- ${judged.name}: ${shown(judged.findings.filter((f) => f.code === code))}`);
  }
  console.log(
    `${recipes} recipes: ${alike} alike; ${more} verdicts that no check has, ${less} findings that no verdict has; questions on ${asks}`,
  );
}

const root = resolve(dir);
if (existsSync(join(root, 'danger'))) grid(root);
else shadow(root);
