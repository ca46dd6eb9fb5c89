// Holds the extension's manifest against the client's own source and against the rules of the editor's extension
// manifest (code.visualstudio.com/api/references/extension-manifest, contribution-points).

import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import { codesInManifest } from '../../client/src/finding-codes.ts';
import { CHECKS } from '../../server/src/checks/index.ts';
import { TOKEN_MODIFIERS, TOKEN_TYPES } from '../../server/src/editor/tokens.ts';
import { LANGUAGES } from '../../server/src/food/language.ts';
import { MEASURES_CHOICES } from '../../server/src/measure/systems.ts';
import { DEFAULTS, FOOD_SAFETY_CHOICES, levelsFor, measuresSaid } from '../../server/src/workspace/settings.ts';

const root = new URL('../../', import.meta.url);
const manifest = JSON.parse(read('package.json'));
const { contributes } = manifest;
const commands: Record<string, string>[] = contributes.commands;
const settings: Record<string, Record<string, unknown>> = contributes.configuration.properties;
const source = readdirSync(new URL('client/src', root), { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .map((file) => read(`client/src/${file}`))
  .join('\n');

const WRITING = ['scale', 'convert', 'recordTrial', 'adjust', 'moveLineUp', 'moveLineDown'].map(
  (name) => `quern.${name}`,
);

describe('commands', () => {
  it('are registered exactly where they are declared', () => {
    const registered = [...source.matchAll(/registerCommand\(\s*'([^']+)'/g)].map(([, id]) => id);
    expect(registered.toSorted()).toEqual(commands.map(({ command }) => command).toSorted());
  });

  it.each(commands)('$command says under which name and when it can run', ({ category, title, enablement }) => {
    expect(category).toBe('Quern');
    expect(title).toMatch(/^[A-Z]/);
    expect(enablement).toBeTruthy();
  });

  it('are hidden from the palette where they cannot work', () => {
    const shown: Record<string, string>[] = contributes.menus.commandPalette;
    const bound = commands.filter(({ enablement }) => enablement !== 'true');
    expect(shown).toEqual(bound.map(({ command, enablement }) => ({ command, when: enablement })));
  });

  it.each(commands.filter(({ enablement }) => /editorLangId(?!.*\|\|)/.test(enablement ?? '')))(
    '$command is there once the server is, and changes no text that is read-only',
    ({ command, enablement }) => {
      expect(enablement).toContain('editorLangId == quern');
      expect(enablement).toContain('quern.active');
      const writes = WRITING.includes(command ?? '');
      expect(enablement?.includes('!editorReadonly')).toBe(writes);
    },
  );

  it('in menus are declared', () => {
    const declared = new Set(commands.map(({ command }) => command));
    const menus: Record<string, Record<string, string>[]> = contributes.menus;
    for (const entry of Object.values(menus).flat()) expect(declared).toContain(entry.command);
  });
});

describe('the walkthrough', () => {
  interface Step {
    readonly description: string;
    readonly completionEvents: readonly string[];
    readonly media: { readonly svg: string; readonly altText: string };
  }
  const steps: readonly Step[] = contributes.walkthroughs.flatMap((of: { steps: Step[] }) => of.steps);
  const declared = new Set(commands.map(({ command }) => command));

  it.each(steps)('$title: is checked off by what is done, and its picture is drawn and said', (step) => {
    const { completionEvents: events, description, media } = step;
    expect(events.length).toBeGreaterThan(0);
    for (const event of events.filter((of) => of.startsWith('onCommand:quern.')))
      expect(declared).toContain(event.slice('onCommand:'.length));
    const asked = [...description.matchAll(/\(command:([^)]+)\)/g)].map(([, command]) => command);
    expect(asked.length).toBeGreaterThan(0);
    for (const command of asked) expect(declared).toContain(command);
    const { svg, altText } = media;
    expect(altText.length).toBeGreaterThan(40);
    const drawn = read(svg);
    expect(drawn.length).toBeLessThan(6000);
    // Nothing of it comes from elsewhere, and its ink is the theme's.
    expect(drawn).not.toMatch(/<(?:image|script|use|foreignObject)|href|url\(|on\w+=/);
    expect(drawn).toContain('--vscode-editor-foreground');
  });
});

describe('the list of recipes', () => {
  it('says what to do where there is nothing to list, and by commands that are there', () => {
    const views: string[] = Object.values<{ id: string }[]>(contributes.views).flatMap((of) => of.map(({ id }) => id));
    const welcomes: { view: string; contents: string }[] = contributes.viewsWelcome;
    for (const { view, contents } of welcomes) {
      expect(views).toContain(view);
      const asked = [...contents.matchAll(/\(command:(quern\.[^)]+)\)/g)].map(([, command]) => command);
      expect(asked.length).toBeGreaterThan(0);
      for (const command of asked) expect(commands.map((c) => c.command)).toContain(command);
    }
  });
});

describe('settings', () => {
  it.each(Object.entries(settings))('%s is described, has a default and a scope', (name, setting) => {
    expect(name).toMatch(/^quern\./);
    expect(setting.markdownDescription).toMatch(/\.$/);
    expect(setting).toHaveProperty('default');
    expect(['resource', 'window']).toContain(setting.scope);
    if (Array.isArray(setting.enum)) expect(setting.enumDescriptions).toHaveLength(setting.enum.length);
  });

  it('a house may set are looked up for each file', () => {
    for (const name of ['quern.measures', 'quern.foodSafety', 'quern.severities']) {
      expect(settings[name]?.scope).toBe('resource');
    }
  });

  it('offer every code with what it means, as the checks say it', () => {
    const fresh = CHECKS.map(({ code, title }) => ({ code, title }));
    const offered = codesInManifest(manifest);
    if (!isDeepStrictEqual(offered, fresh) || !isDeepStrictEqual(offeredLevels(), levels)) offerCodes();
    expect(offered, 'package.json was stale and has been written anew: commit it').toEqual(fresh);
    expect(offeredLevels()).toEqual(levels);
  });

  it('are those that the server reads, with its defaults', () => {
    expect(settings['quern.measures']?.enum).toEqual(MEASURES_CHOICES);
    expect(settings['quern.measures']?.enumDescriptions).toEqual(MEASURES_CHOICES.map(measuresSaid));
    expect(settings['quern.language']?.enum).toEqual([...LANGUAGES, null]);
    expect(settings['quern.language']?.default).toBe(DEFAULTS.language ?? null);
    expect(settings['quern.foodSafety']?.enum).toEqual(FOOD_SAFETY_CHOICES);
    for (const name of ['measures', 'foodSafety', 'severities'] as const) {
      expect(settings[`quern.${name}`]?.default, name).toEqual(DEFAULTS[name]);
    }
  });

  it('may be missing from a manifest', () => {
    expect(codesInManifest(undefined)).toEqual([]);
  });
});

describe('the language', () => {
  it('names files that are there and can be read', () => {
    const files: string[] = [
      manifest.icon,
      contributes.languages[0].configuration,
      ...Object.values<string>(contributes.languages[0].icon),
      ...[...contributes.grammars, ...contributes.snippets].map(({ path }: { path: string }) => path),
    ];
    for (const file of files) {
      expect(existsSync(new URL(file, root)), file).toBe(true);
      if (file.endsWith('.json')) expect(() => JSON.parse(read(file))).not.toThrow();
    }
  });

  it('has a listing icon of at least 128 pixels', () => {
    const png = readFileSync(new URL(manifest.icon, root));
    // Width and height stand at bytes 16 and 20 of a PNG (ISO/IEC 15948, IHDR).
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([128, 128]);
  });

  const configuration = JSON.parse(read('syntaxes/language-configuration.json'));

  it.each([
    ['café, crème', ['café', 'crème']],
    ["the egg's white", ['the', "egg's", 'white']],
    ['½ or 1/2 or 1½ tsp', ['½', 'or', '1/2', 'or', '1½', 'tsp']],
    ['160 C, 65%, 35–40 min.', ['160', 'C', '65%', '35–40', 'min']],
    ['180°C (dough-too-wet)', ['180°C', 'dough-too-wet']],
    ['1.5 kg # e\u0301clair', ['1.5', 'kg', 'e\u0301clair']],
  ])('keeps the words of %s whole', (text, words) => {
    const { pattern, flags } = configuration.wordPattern;
    expect(text.match(new RegExp(pattern, `${flags}g`))).toEqual(words);
  });

  it.each([
    ['  do Rub in the butter.', '', 'do '],
    ['  do Rub in the butter', ' and the salt.', 'do '],
    ['  do', '', undefined],
    ['  do ', '', undefined],
    ['  do Rub in.', '  # slowly', undefined],
    ['# a comment', '', '# '],
    ['  240 g  flour  # a comment', '', undefined],
    ['  dough 240 g', '', undefined],
  ])('continues %o before %o with %o on Enter', (before, after, appended) => {
    const rules: { beforeText: string; afterText?: string; action: { appendText: string } }[] =
      configuration.onEnterRules;
    const rule = rules.find(
      ({ beforeText, afterText }) => new RegExp(beforeText).test(before) && new RegExp(afterText ?? '').test(after),
    );
    expect(rule?.action.appendText).toBe(appended);
  });

  it.each([
    ['part crust as shortcrust', true],
    ['recipe', true],
    ['partly covered', false],
    ['  do Line the part.', false],
  ])('indents after %o: %o', (line, indents) => {
    expect(new RegExp(configuration.indentationRules.increaseIndentPattern).test(line)).toBe(indents);
  });
});

describe('semantic tokens', () => {
  // code.visualstudio.com/api/language-extensions/semantic-highlight-guide, standard token types and modifiers.
  const standardModifiers = ['declaration', 'definition', 'readonly', 'static', 'deprecated', 'documentation'];

  it('have every modifier of the server described', () => {
    const described = contributes.semanticTokenModifiers.map(({ id }: { id: string }) => id);
    expect(described).toEqual(TOKEN_MODIFIERS.filter((modifier) => !standardModifiers.includes(modifier)));
  });

  it('have every type of the server coloured, and no other', () => {
    const scopes = Object.keys(contributes.semanticTokenScopes[0].scopes);
    expect([...new Set(scopes.map((selector) => selector.split('.')[0]))].toSorted()).toEqual(TOKEN_TYPES.toSorted());
  });
});

describe('the extension', () => {
  it('starts on its own files alone, and works in every folder', () => {
    expect(manifest.activationEvents).toEqual(['onWebviewPanel:quern.page']);
    expect(manifest.capabilities.untrustedWorkspaces.supported).toBe(true);
    expect(manifest.capabilities.virtualWorkspaces).toBe(true);
  });
});

const levels = CHECKS.map(levelsFor);

function offeredLevels(): unknown[] {
  const { properties } = contributes.configuration.properties['quern.severities'];
  return CHECKS.map(({ code }) => properties[code]?.enum);
}

function offerCodes(): void {
  const properties = CHECKS.map((check) => [check.code, { enum: levelsFor(check), description: check.title }]);
  contributes.configuration.properties['quern.severities'].properties = Object.fromEntries(properties);
  writeFileSync(new URL('package.json', root), `${JSON.stringify(manifest, undefined, 2)}\n`);
}

function read(path: string): string {
  return readFileSync(new URL(path, root), 'utf8');
}
