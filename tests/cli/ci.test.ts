/** The command line in continuous integration: formats for machines, what changed since a revision, baselines, settings told. */
import { describe, expect, test } from 'vitest';
import type { Git } from '../../server/src/workspace/git.ts';
import { quern } from '../support/fake-io.ts';
import { sarifErrors } from '../support/published-schema.ts';

const WET =
  'recipe Crust with butter\n  yield   1 crust\n\npart crust as shortcrust\n  200 g     plain flour\n  100 g     butter\n  120 g     water\n\n  do Rub the butter into the flour and bind with the water.\n';
const ALLOWED = WET.replace('  120 g', '  allow dough-too-wet because a hot-water crust, as agreed\n  120 g');
const RAW =
  'recipe Chicken\n  yield   4 portions\n\npart bird as roast\n  800 g     chicken breast\n  8 g       fine salt\n\n  do Salt the chicken breast.\n  do Roast at 180 C for 20 min, until the centre reads 60 C.\n';
const COMMA = WET.replace('120 g', '50,5 g');

interface Log {
  readonly version: string;
  readonly runs: readonly {
    readonly tool: {
      readonly driver: { readonly rules: readonly { id: string; help: { text: string; markdown: string } }[] };
    };
    readonly results: readonly Result[];
  }[];
}
interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: string;
  readonly suppressions?: readonly { kind: string; justification: string }[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
  readonly fixes?: readonly object[];
  readonly relatedLocations?: readonly { physicalLocation: { artifactLocation: { uri: string } } }[];
  readonly locations: readonly { physicalLocation: { artifactLocation: { uri: string }; region: object } }[];
}

async function sarif(args: readonly string[], files: Readonly<Record<string, string>>) {
  const { out, exit } = await quern(['check', '--format', 'sarif', ...args], files);
  const log = JSON.parse(out) as Log;
  const [run] = log.runs;
  if (run === undefined) throw new Error('no run');
  return { log, run, exit };
}

describe('a finding that a base brings', () => {
  const files = {
    'bases/crust.quern': WET.replace('120 g', '50 g'),
    'tart.quern':
      'recipe Tart\n  yield   1 tart\n\npart crust from bases/crust.quern\n\ntrial 2026-09-14\n  tested  000\n',
  };

  test('names the line of the base, in words for people and as a place for machines', async () => {
    for (const format of ['pretty', 'compact', 'github']) {
      const { out } = await quern(['check', 'tart.quern', '--format', format], files);
      expect(out).toMatch(/record the trial\. \(see bases\/crust\.quern:6\)/);
    }
    const { out } = await quern(['check', 'tart.quern', '--format', 'json'], files);
    const [, finding] = JSON.parse(out).files[0].findings;
    expect(finding.related[0]).toEqual({
      path: 'bases/crust.quern',
      range: { start: { line: 5, character: 0 }, end: { line: 5, character: 1 } },
      message: 'It comes from this line of the base.',
    });
    const { run, log } = await sarif(['tart.quern'], files);
    expect(sarifErrors(log)).toEqual([]);
    expect(run.results[1]?.relatedLocations?.map((r) => r.physicalLocation.artifactLocation.uri)).toEqual([
      'bases/crust.quern',
      'tart.quern',
    ]);
  });
});

describe('SARIF', () => {
  test.each<[string, string[], Record<string, string>]>([
    ['nothing found', [], { 'a.quern': WET.replace('120 g', '50 g') }],
    ['a warning with a fix', [], { 'a.quern': WET }],
    ['an accepted finding', [], { 'a.quern': ALLOWED }],
    [
      'a safety finding and one with related places',
      [],
      { 'a.quern': RAW, 'b.quern': `${WET}  do Add 10 g of the butter.\n` },
    ],
    ['a mistake in the settings', [], { 'a.quern': WET, 'quern.json': '{ "measure": "us" }' }],
    ['a file that has no name', ['a b/ü #1.quern'], { 'a b/ü #1.quern': COMMA }],
  ])('%s keeps to the published schema', async (_, args, files) => {
    const { log } = await sarif(args, files);
    expect(sarifErrors(log)).toEqual([]);
  });

  test('the schema would catch a log that does not', () => {
    expect(sarifErrors({ version: '2.1.0', runs: [{ tool: {} }] })).not.toEqual([]);
  });

  test('a result points at its rule, with help, a relative place, a fingerprint and a fix', async () => {
    const { run, exit } = await sarif([], { 'pies/a b.quern': WET });
    const [result] = run.results;
    expect(result).toMatchObject({
      ruleId: 'dough-too-wet',
      level: 'warning',
      partialFingerprints: { 'quernFinding/v1': 'dough-too-wet|Crust with butter|crust|water' },
    });
    expect(result?.locations[0]?.physicalLocation).toEqual({
      artifactLocation: { uri: 'pies/a%20b.quern', uriBaseId: '%SRCROOT%' },
      region: { startLine: 7, startColumn: 13, endLine: 7, endColumn: 18 },
    });
    expect(result?.fixes).toHaveLength(1);
    const rule = run.tool.driver.rules[result?.ruleIndex ?? -1];
    expect(rule?.id).toBe('dough-too-wet');
    expect(rule?.help.markdown).toContain('# dough-too-wet');
    expect(exit).toBe(0);
  });

  test('the fingerprint outlives lines above it, and tells two alike apart', async () => {
    const print = async (text: string) =>
      (await sarif([], { 'a.quern': text })).run.results.map((r) => r.partialFingerprints['quernFinding/v1']);
    expect(await print(`# A remark.\n\n${WET}`)).toEqual(await print(WET));
    const twice = await print(WET.replace('  120 g     water', '  50,5 g    water\n  50,5 g    water'));
    expect(new Set(twice).size).toBe(twice.length);
  });

  test('what was accepted is suppressed, with its reason', async () => {
    const { run } = await sarif([], { 'a.quern': ALLOWED });
    expect(run.results.find((r) => r.ruleId === 'dough-too-wet')?.suppressions).toEqual([
      { kind: 'inSource', justification: 'a hot-water crust, as agreed' },
    ]);
  });
});

describe('GitHub annotations and one line a finding', () => {
  test('the message and the properties are escaped', async () => {
    const { out } = await quern(['check', '--format', 'github', 'a,b.quern'], { 'a,b.quern': WET });
    expect(out).toMatch(
      /^::warning file=a%2Cb\.quern,line=7,endLine=7,col=13,endColumn=\d+,title=quern%3A dough-too-wet::/,
    );
    expect(out).toMatch(/is \d+ %25;/);
    expect(out.trim().split('\n')).toHaveLength(1);
  });

  test('an error is one, information is a notice, and nothing found prints nothing', async () => {
    const { out } = await quern(['check', '--format', 'github', 'a.quern'], { 'a.quern': RAW });
    expect(out).toMatch(/^::error file=a\.quern,line=9,/m);
    const good = await quern(['check', '--format', 'github'], { 'a.quern': WET.replace('120 g', '50 g') });
    expect([good.out, good.exit]).toEqual(['', 0]);
  });

  test('compact is the lines alone', async () => {
    const { out } = await quern(['check', '--format', 'compact'], { 'a.quern': WET });
    expect(out).toMatch(/^a\.quern:7:13: warning: .+ \[dough-too-wet\]\n$/);
  });
});

function gitOf(changed: readonly string[], before: Readonly<Record<string, string>> = {}): Git {
  return {
    changedSince: (_, revision) =>
      revision === 'main'
        ? { known: true, value: changed.map((p) => `/kitchen/${p}`) }
        : { known: false, why: `git knows no revision \`${revision}\`` },
    repositoryAt: () => ({ known: false, why: 'not asked' }),
    textAt: (path) => {
      const text = before[path.replace('/kitchen/', '')];
      return text === undefined ? { known: false, why: 'not there' } : { known: true, value: text };
    },
  };
}

describe('--since', () => {
  const files = {
    'a.quern': WET,
    'b.quern': RAW,
    'variant.quern': 'recipe Wetter crust\n  from    a.quern\n',
    'second.quern': 'recipe Wettest crust\n  from    variant.quern\n',
    'foods.quern': 'food quayside flour\n  like    plain flour\n',
    'quern.json': '{}',
  };
  const checked = async (git: Git, given: Readonly<Record<string, string>> = files) => {
    const { out } = await quern(['check', '--since', 'main', '--format', 'json'], given, '', git);
    return (JSON.parse(out) as { files: { path: string }[] }).files.map((f) => f.path);
  };
  const ALL = ['a.quern', 'b.quern', 'foods.quern', 'second.quern', 'variant.quern'];

  test.each<[string, string[], string[]]>([
    ['a file that nothing builds on', ['b.quern'], ['b.quern']],
    ['a base: its variants too, however far', ['a.quern'], ['a.quern', 'second.quern', 'variant.quern']],
    ['nothing', [], []],
    ['something that is no recipe', ['README.md'], []],
    ['the settings: all', ['quern.json'], ALL],
    ['the foods: all', ['foods.quern'], ALL],
  ])('%s', async (_, changed, want) => {
    expect(await checked(gitOf(changed))).toEqual(want);
  });

  test('foods that are gone touch all, and so does a base that is gone touch what it leaves behind', async () => {
    const { 'foods.quern': foods, ...rest } = files;
    expect(await checked(gitOf(['foods.quern'], { 'foods.quern': foods }), rest)).toHaveLength(4);
    const { 'a.quern': base, ...left } = files;
    expect(await checked(gitOf(['a.quern'], { 'a.quern': base }), left)).toContain('variant.quern');
  });

  test('an unknown revision, and a text from nowhere, are bad usage', async () => {
    const unknown = await quern(['check', '--since', 'mian'], files, '', gitOf([]));
    expect([unknown.exit, unknown.err]).toEqual([2, 'quern check: --since mian: git knows no revision `mian`\n']);
    expect((await quern(['check', '--since', 'main', '--stdin'], files, WET, gitOf([]))).exit).toBe(2);
  });
});

describe('--baseline', () => {
  const PATH = '/kitchen/base.json';
  const update = async (files: Readonly<Record<string, string>>) => {
    const ran = await quern(['check', '--baseline', 'base.json', '--update-baseline'], files);
    return { ...ran, text: ran.written[PATH] ?? '' };
  };
  const against = (text: string, files: Readonly<Record<string, string>>, ...more: string[]) =>
    quern(['check', '--baseline', 'base.json', '--fail-on', 'warning', ...more], { ...files, 'base.json': text });

  test('what stands in it is no failure; what is new is', async () => {
    const { text } = await update({ 'a.quern': WET });
    const same = await against(text, { 'a.quern': `# Moved down.\n${WET}` });
    expect([same.exit, same.out]).toEqual([0, '1 file checked: nothing found; 1 known from the baseline.\n']);
    const more = await against(text, { 'a.quern': COMMA.replace('plain flour', 'xyloquartz') });
    expect(more.exit).toBe(1);
  });

  test('a second finding of the same kind is new', async () => {
    const { text } = await update({ 'a.quern': WET });
    const { exit } = await against(text, { 'a.quern': WET, 'b.quern': WET });
    expect(exit).toBe(1);
  });

  test('a safety finding never goes in, and never is taken off', async () => {
    const { text, exit } = await update({ 'b.quern': RAW });
    expect(text).not.toMatch(/undercooked|no-safe-temperature/);
    expect(exit).toBe(1);
    const forged = JSON.stringify({
      version: 1,
      findings: [{ code: 'undercooked', recipe: 'Chicken', part: 'bird', subject: '60 c', file: 'b.quern', count: 9 }],
    });
    const { out } = await against(forged, { 'b.quern': RAW });
    expect(out).toMatch(/\[undercooked\]/);
  });

  test('a file that was not checked keeps its entries; one that was mended loses them', async () => {
    const { text } = await update({ 'a.quern': WET, 'b.quern': WET.replace('Crust', 'Other crust') });
    const only = await quern(['check', 'a.quern', '--baseline', 'base.json', '--update-baseline'], {
      'a.quern': WET.replace('120 g', '50 g'),
      'b.quern': WET,
      'base.json': text,
    });
    expect(JSON.parse(only.written[PATH] ?? '').findings).toEqual([
      expect.objectContaining({ code: 'dough-too-wet', recipe: 'Other crust with butter', count: 1 }),
    ]);
    const mended = await against(text, { 'a.quern': WET.replace('120 g', '50 g') });
    expect(mended.err).toMatch(/1 of the baseline's findings are no more/);
  });

  test('its findings are in JSON and SARIF, apart', async () => {
    const { text } = await update({ 'a.quern': WET });
    const json = JSON.parse((await against(text, { 'a.quern': WET }, '--format', 'json')).out);
    expect(json.files[0]).toMatchObject({ findings: [], baselined: [{ code: 'dough-too-wet' }] });
    expect(json.summary).toMatchObject({ warning: 0, baselined: 1 });
    const log = JSON.parse((await against(text, { 'a.quern': WET }, '--format', 'sarif')).out) as Log;
    expect(log.runs[0]?.results[0]?.suppressions?.[0]?.kind).toBe('external');
    expect(sarifErrors(log)).toEqual([]);
  });

  test.each<[string, string[], Record<string, string>]>([
    ['not there', ['--baseline', 'base.json'], {}],
    ['no baseline', ['--baseline', 'base.json'], { 'base.json': '[1]' }],
    ['no JSON', ['--baseline', 'base.json'], { 'base.json': '{' }],
    ['no file named', ['--update-baseline'], {}],
  ])('%s is bad usage', async (_, args, files) => {
    expect((await quern(['check', ...args], { 'a.quern': WET, ...files })).exit).toBe(2);
  });
});

describe('config', () => {
  const files = {
    'a.quern': WET,
    'drafts/b.quern': WET,
    'foods.quern': 'food quayside flour\n  like    plain flour\n',
    'quern.json':
      '{ "measures": "metric", "foodSafety": "ours", "severities": { "dough-too-wet": "error" }, "ignore": ["drafts/**"] }',
  };

  test('each setting in force, with where it comes from', async () => {
    const { out } = await quern(['config', 'a.quern', '--format', 'json'], files);
    const json = JSON.parse(out);
    expect(json).toMatchObject({
      version: 1,
      file: 'a.quern',
      settings: {
        measures: { value: 'metric', from: 'quern.json' },
        foodSafety: { value: 'us-food-code-2022', from: 'the default' },
        'severities.dough-too-wet': { value: 'error', from: 'quern.json' },
        ignore: { value: ['drafts/**'], from: 'quern.json' },
      },
      foods: [{ name: 'quayside flour', from: 'foods.quern' }],
      ignored: false,
    });
    expect(json.problems[0]).toMatch(/foodSafety/);
  });

  test('as text, and for a file that the house leaves out, and one without a house', async () => {
    const { out } = await quern(['config', 'drafts/b.quern'], files);
    expect(out).toMatch(/ignored by the house/);
    expect(out).toMatch(/^ {2}measures +metric +quern\.json$/m);
    const alone = await quern(['config', 'a.quern'], { 'a.quern': WET });
    expect(alone.out).toMatch(/belongs to no house: there is no quern\.json and no foods\.quern above it/);
    expect(alone.out).toMatch(/^ {2}measures +us +the default$/m);
  });

  test('no file is bad usage', async () => expect((await quern(['config'])).exit).toBe(2));
});
