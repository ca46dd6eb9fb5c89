/**
 * The site of a folder, written to a real disk: its links lead somewhere, it runs nothing, its table of allergens says what each report says,
 * and it touches no file that is not its own.
 */
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve } from 'node:path';
import { type DefaultTreeAdapterMap, parse } from 'parse5';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { main } from '../../server/src/cli/main.ts';
import { nodeIo } from '../../server/src/host/node.ts';
import { allergenCell } from '../../server/src/publish/site/allergen-table.ts';
import { schemaOrgErrors } from '../support/schema-org.ts';

const top = mkdtempSync(join(tmpdir(), 'quern-site-'));
const kitchen = join(top, 'kitchen');
const site = join(top, 'site');
afterAll(() => rmSync(top, { recursive: true }));

const SLAB = `recipe Oat slab
  yield   8 bars
  picture pictures/slab.png, Cut when cold

  200 g     rolled oats
  80 g      butter

  do Rub the butter into the oats.
  do Bake at 180 C for 20 min until golden.
`;
const UNKNOWN = `recipe Snack & <dip>
  yield   4 pots

  100 g     zorble paste
  50 g      tahini

  do Stir the zorble paste into the tahini.
`;

const put = (name: string, text: string | Uint8Array) => {
  mkdirSync(dirname(join(kitchen, name)), { recursive: true });
  writeFileSync(join(kitchen, name), text);
};

beforeEach(() => {
  rmSync(kitchen, { recursive: true, force: true });
  rmSync(site, { recursive: true, force: true });
  put('quern.json', '{}');
  put('bakes/slab.quern', SLAB);
  put('bakes/pictures/slab.png', Uint8Array.of(0x89, 0x50, 0x4e, 0x47));
  put('index.quern', UNKNOWN);
});

interface Ran {
  readonly exit: unknown;
  readonly out: string;
  readonly err: string;
}

async function publish(...args: readonly string[]): Promise<Ran> {
  let [out, err] = ['', ''];
  const machine = {
    ...nodeIo(),
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
  };
  const none = { lsp: () => undefined, mcp: () => undefined };
  const exit = await main(['publish', kitchen, '--format', 'site', '--out', site, ...args], machine, none, '0.0.0');
  return { exit, out, err };
}

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => name.split('\\').join('/'))
    .sort();
const read = (name: string): string => readFileSync(join(site, name), 'utf8');

type Node = DefaultTreeAdapterMap['node'];
type Element = DefaultTreeAdapterMap['element'];

/** Every element of a page, as another reader of HTML finds it; its errors fail the test. */
function elementsOf(html: string): Element[] {
  const errors: string[] = [];
  const found: Element[] = [];
  const visit = (node: Node): void => {
    if ('tagName' in node) found.push(node);
    if ('childNodes' in node) node.childNodes.forEach(visit);
  };
  visit(parse(html, { onParseError: ({ code }) => errors.push(code) }));
  expect(errors).toEqual([]);
  return found;
}
const attributeOf = (element: Element, name: string): string | undefined =>
  element.attrs.find((attribute) => attribute.name === name)?.value;

describe('what is written', () => {
  test('an index, a page a recipe, its picture, allergens, sheets, and the list of them', async () => {
    const { exit, out, err } = await publish();
    expect([exit, err]).toEqual([0, '']);
    expect(out).toContain('2 recipes in ');
    expect(filesIn(site)).toEqual([
      '.quern-site.json',
      'allergens.html',
      'bakes/pictures/slab.png',
      'bakes/slab.html',
      'index-recipe.html',
      'index.html',
      'print.html',
    ]);
    expect(read('bakes/slab.html')).toContain('src="pictures/slab.png" alt="Cut when cold"');
  });

  test('with the choices that a page by itself has', async () => {
    put('bakes/slab.quern', SLAB.replace('into the oats', 'until soft, then stir in the oats'));
    await publish('--order', 'as-used', '--label', 'us');
    const page = read('bakes/slab.html');
    expect(page.indexOf('>butter<')).toBeLessThan(page.indexOf('>rolled oats<'));
    expect(page).toContain('% DV');
  });

  test('every link and picture leads to something of the site, and no page runs or loads anything', async () => {
    await publish('--title', 'Harbour "Lane" <kitchen>');
    const pages = filesIn(site).filter((name) => name.endsWith('.html'));
    for (const page of pages) {
      const elements = elementsOf(read(page));
      const ids = elements.flatMap((element) => attributeOf(element, 'id') ?? []);
      expect(new Set(ids).size, `ids of ${page}`).toBe(ids.length);
      for (const element of elements) {
        const { tagName } = element;
        if (tagName === 'script') expect(attributeOf(element, 'type'), page).toBe('application/ld+json');
        expect(['iframe', 'object', 'embed', 'base', 'form', 'button', 'input'], page).not.toContain(tagName);
        for (const { name } of element.attrs) expect(name, page).not.toMatch(/^on|^style$/);
        const to = attributeOf(element, 'href') ?? attributeOf(element, 'src');
        if (to === undefined) continue;
        expect(to, page).not.toMatch(/^[a-z]+:|^\//);
        const [file = '', id] = to.split('#');
        const target = file === '' ? page : relative(site, resolve(site, dirname(page), decodeURIComponent(file)));
        expect(existsSync(join(site, target)), `${page} leads to ${to}`).toBe(true);
        if (id !== undefined && target === page) expect(ids, `${page} leads to ${to}`).toContain(id);
      }
    }
    expect(pages).toHaveLength(5);
    expect(read('index.html')).toContain('<h1>Harbour &quot;Lane&quot; &lt;kitchen&gt;</h1>');
  });

  test('each recipe carries its data, and the index none', async () => {
    await publish();
    const data = (page: string) =>
      elementsOf(read(page)).flatMap((element) => {
        const [text] = element.childNodes;
        return element.tagName === 'script' && text !== undefined && 'value' in text ? [JSON.parse(text.value)] : [];
      });
    for (const page of ['bakes/slab.html', 'index-recipe.html'])
      for (const node of data(page)) expect(schemaOrgErrors(node), page).toEqual([]);
    expect(data('bakes/slab.html')).toMatchObject([{ '@type': 'Recipe', name: 'Oat slab' }]);
    expect(data('index-recipe.html')).toMatchObject([{ '@type': 'Recipe', name: 'Snack & <dip>' }]);
    expect(data('index.html')).toEqual([]);
  });
});

describe('the table of allergens', () => {
  /** By column and row, of the first table: the European Union's. */
  const cells = (): Record<string, Record<string, string>> => {
    const [table = ''] = read('allergens.html').split('<table class="matrix">').slice(1);
    const names = [...table.matchAll(/<th scope="col">([^<]*)/g)].map(([, name]) => name ?? '').slice(1);
    return Object.fromEntries(
      [...table.matchAll(/<tr><th scope="row"><a[^>]*>([^<]*)<\/a><\/th>(.*?)<\/tr>/g)].map(
        ([, title = '', row = '']) => [
          title,
          Object.fromEntries(
            [...row.matchAll(/<td[^>]*>(.*?)<\/td>/g)].map(([, cell = ''], i) => [
              names[i],
              cell.replace(/<[^>]*>/g, ''),
            ]),
          ),
        ],
      ),
    );
  };

  test('has all fourteen of the Regulation, and never a blank', async () => {
    await publish();
    const all = cells();
    for (const row of Object.values(all)) {
      // Regulation (EU) 1169/2011, annex II: fourteen.
      expect(Object.keys(row)).toHaveLength(14);
      for (const cell of Object.values(row)) expect(['yes', 'may', 'label', 'not known', 'no']).toContain(cell);
    }
  });

  test('says of each recipe what its own report says', async () => {
    await publish();
    let report = '';
    await main(
      ['report', join(kitchen, 'bakes/slab.quern'), '--format', 'json'],
      {
        ...nodeIo(),
        out: (text: string) => {
          report += text;
        },
      },
      { lsp: () => undefined, mcp: () => undefined },
      '0.0.0',
    );
    const { allergens } = JSON.parse(report);
    const row = cells()['Oat slab'] ?? {};
    expect(row).toMatchObject({ 'cereals containing gluten': 'yes', milk: 'yes', fish: 'no' });
    for (const [name, cell] of Object.entries(row)) expect(cell, name).toBe(allergenCell(allergens, 'eu', name));
  });

  test('a food that nobody knows is never said to be free of anything', async () => {
    await publish();
    const row = cells()['Snack &amp; &lt;dip&gt;'] ?? {};
    expect(row.sesame).toBe('yes');
    expect(Object.values(row).filter((cell) => cell === 'no')).toEqual([]);
    expect(Object.values(row).filter((cell) => cell === 'not known')).toHaveLength(13);
    expect(read('allergens.html')).toContain('zorble paste');
  });
});

describe('written again', () => {
  test('nothing is touched that is as it was; one recipe changed, only what shows it', async () => {
    await publish();
    const times = () => Object.fromEntries(filesIn(site).map((name) => [name, statSync(join(site, name)).mtimeMs]));
    const before = times();
    expect((await publish()).out).toMatch(/: 0 files written, 6 as they were, 0 taken away/);
    expect(times()).toEqual(before);
    put('bakes/slab.quern', SLAB.replace('golden', 'brown'));
    await publish();
    const after = times();
    const changed = Object.keys(after).filter((name) => after[name] !== before[name]);
    expect(changed.sort()).toEqual(['.quern-site.json', 'bakes/slab.html', 'print.html']);
  });

  test('what an earlier run wrote goes with its recipe, and nothing else does', async () => {
    await publish();
    writeFileSync(join(site, 'bakes/mine.html'), 'mine');
    rmSync(join(kitchen, 'bakes'), { recursive: true });
    expect((await publish()).out).toContain('2 taken away');
    expect(filesIn(site)).toEqual([
      '.quern-site.json',
      'allergens.html',
      'bakes/mine.html',
      'index-recipe.html',
      'index.html',
      'print.html',
    ]);
  });

  test('a page that somebody changed stays when its recipe goes', async () => {
    await publish();
    writeFileSync(join(site, 'bakes/slab.html'), 'changed by hand');
    rmSync(join(kitchen, 'bakes'), { recursive: true });
    await publish();
    expect(read('bakes/slab.html')).toBe('changed by hand');
  });

  test.each([
    ['a file that is none of ours', 'index.html', 'mine', 'is none of this site'],
    ['a picture that is none of ours', 'bakes/pictures/slab.png', 'mine', 'is none of this site'],
  ])('%s is left, and nothing is written', async (_, name, text, words) => {
    mkdirSync(dirname(join(site, name)), { recursive: true });
    writeFileSync(join(site, name), text);
    const { exit, err } = await publish();
    expect([exit, err.includes(words)]).toEqual([2, true]);
    expect(filesIn(site)).toEqual([name]);
    expect(read(name)).toBe(text);
  });

  test('a page that somebody changed is not written over', async () => {
    await publish();
    writeFileSync(join(site, 'index.html'), 'changed by hand');
    const { exit, err } = await publish();
    expect([exit, err.includes('was changed since it was written')]).toEqual([2, true]);
    expect(read('index.html')).toBe('changed by hand');
  });

  test('a folder that is a link out of the site is refused', async () => {
    mkdirSync(join(top, 'elsewhere'), { recursive: true });
    mkdirSync(site);
    symlinkSync(join(top, 'elsewhere'), join(site, 'bakes'));
    const { exit, err } = await publish();
    expect([exit, err.includes('leads out of the site')]).toEqual([2, true]);
    expect(readdirSync(join(top, 'elsewhere'))).toEqual([]);
  });

  test('a list that names files elsewhere takes none of them away', async () => {
    await publish();
    const outside = join(top, 'outside.txt');
    writeFileSync(outside, 'keep');
    const list = JSON.parse(read('.quern-site.json'));
    const word = nodeIo().digest?.('keep');
    writeFileSync(
      join(site, '.quern-site.json'),
      JSON.stringify({ ...list, files: { ...list.files, '../outside.txt': word, [outside]: word } }),
    );
    await publish();
    expect(readFileSync(outside, 'utf8')).toBe('keep');
  });

  test('written over the recipes themselves, a picture is still the kitchen’s own', async () => {
    const at = ['publish', kitchen, '--format', 'site', '--out', kitchen];
    const quiet = { ...nodeIo(), out: () => undefined, err: () => undefined };
    const none = { lsp: () => undefined, mcp: () => undefined };
    expect(await main(at, quiet, none, '0.0.0')).toBe(0);
    rmSync(join(kitchen, 'bakes/slab.quern'));
    expect(await main(at, quiet, none, '0.0.0')).toBe(0);
    expect(existsSync(join(kitchen, 'bakes/pictures/slab.png'))).toBe(true);
    expect(existsSync(join(kitchen, 'bakes/slab.html'))).toBe(false);
  });
});

describe('the house’s own template', () => {
  test('lays out every page, and says a hole that it has no use for', async () => {
    put(
      'site.html',
      '<!doctype html><title>{{title}}</title><a href="{{root}}index.html">home</a>{{#index}}<ul>{{#recipes}}<li><a href="{{href}}">{{title}}</a></li>{{/recipes}}</ul>{{/index}}{{#recipe}}<main>{{ingredients}}</main>{{/recipe}}',
    );
    const template = ['--template', join(kitchen, 'site.html')];
    expect((await publish(...template)).err).toBe('');
    expect(read('index.html')).toContain('<ul><li><a href="bakes/slab.html">Oat slab</a></li>');
    expect(read('bakes/slab.html')).toMatch(
      /^<!doctype html><title>Oat slab<\/title><a href="\.\.\/index.html">home<\/a><main><section/,
    );
    put('site.html', '{{#recipe}}{{constructor}}{{/recipe}}');
    const { exit, err } = await publish(...template);
    expect([exit, err.includes('no use for {{constructor}}')]).toEqual([2, true]);
  });
});

test('what is asked wrongly is said', async () => {
  const run = async (...args: readonly string[]) => {
    let err = '';
    const machine = {
      ...nodeIo(),
      err: (text: string) => {
        err += text;
      },
    };
    return [await main(['publish', ...args], machine, { lsp: () => undefined, mcp: () => undefined }, '0.0.0'), err];
  };
  expect(await run(kitchen, '--format', 'site')).toEqual([2, expect.stringContaining('--out DIR')]);
  expect(await run(join(kitchen, 'index.quern'), '--format', 'site', '--out', site)).toEqual([
    2,
    expect.stringContaining('is none'),
  ]);
  expect(await run(join(kitchen, 'index.quern'), '--out', site)).toEqual([2, expect.stringContaining('--format site')]);
});
