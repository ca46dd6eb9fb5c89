/** View 1 and its frame: structure as a browser reads it (parse5), every state of the page, and that all of a recipe is on it once. */
import { type DefaultTreeAdapterMap, parse } from 'parse5';
import { describe, expect, test } from 'vitest';
import { type PageWish, pageFacts } from '../../../server/src/editor/page/facts.ts';
import { recordTrial } from '../../../server/src/edits/record-trial.ts';
import { allViews, viewPage } from '../../../server/src/publish/view/views.ts';
import type { Snapshot } from '../../../server/src/workspace/snapshot.ts';
import { EXAMPLES, open, openInKitchen } from '../../support/harness.ts';

type Node = DefaultTreeAdapterMap['node'];
type Element = DefaultTreeAdapterMap['element'];

const attr = (of: Element, name: string): string | undefined => of.attrs.find((a) => a.name === name)?.value;
const classes = (of: Element): readonly string[] => (attr(of, 'class') ?? '').split(' ');

function all(html: string, wanted: (of: Element) => boolean): Element[] {
  const found: Element[] = [];
  const walk = (node: Node): void => {
    if ('attrs' in node && wanted(node)) found.push(node);
    if ('childNodes' in node) for (const child of node.childNodes) walk(child);
  };
  walk(parse(html));
  return found;
}

function words(node: Node): string {
  if ('value' in node && node.nodeName === '#text') return node.value;
  return 'childNodes' in node ? node.childNodes.map(words).join('') : '';
}

const plainly = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();
const textsOf = (html: string, wanted: (of: Element) => boolean): string[] =>
  all(html, wanted).map((element) => plainly(words(element)));
const byClass =
  (name: string) =>
  (of: Element): boolean =>
    classes(of).includes(name);

const page = (snapshot: Snapshot, wish: PageWish = {}): string => viewPage(pageFacts(snapshot, wish), 'recipe');
const example = (path: string): Snapshot => openInKitchen(EXAMPLES.find(([p]) => p === path)?.[1] ?? '', path);
const DRAFT = example('first-draft.quern');
const TART = example('pastry/lemon-tart.quern');

const OATS = `recipe Oat slab
  yield   12 squares
  pan     square 20 x 4 cm

part base
  200 g     rolled oats
  100 g     butter
  1 pinch   fine salt
  3 large   eggs, beaten
  do Melt the butter and stir in the oats, eggs and salt.
  do Bake at 180 C for 25 min, until the centre reads 80 C.
`;

describe.each(EXAMPLES)('%s', (path, text) => {
  const snapshot = openInKitchen(text, path);
  const facts = pageFacts(snapshot);
  const html = viewPage(facts, 'recipe');

  test.runIf(facts.nothing === undefined)('has each ingredient and step once, each with its line', () => {
    const { sections } = facts.page;
    const rows = (of: 'ul' | 'ol') =>
      all(html, (e) => e.tagName === 'li' && e.parentNode?.nodeName === of && !isOther(e.parentNode)).map((li) => {
        const link = li.childNodes.flatMap((child) => linksIn(child))[0];
        return Number(link === undefined ? Number.NaN : attr(link, 'data-line'));
      });
    expect(rows('ul')).toEqual(sections.flatMap((s) => s.ingredients.map(({ line }) => line)));
    expect(rows('ol')).toEqual(sections.flatMap((s) => s.method.map(({ line }) => line)));
    const lines = snapshot.document.lines.length;
    for (const line of [...rows('ul'), ...rows('ol')]) expect(line).toBeLessThanOrEqual(lines);
  });

  test('has no script and no style of its own, one first heading, and no key twice', () => {
    for (const made of [html, allViews(facts)]) {
      expect(all(made, (e) => e.tagName === 'script' || attr(e, 'style') !== undefined)).toEqual([]);
      expect(all(made, (e) => e.tagName === 'h1')).toHaveLength(1);
      const ids = all(made, (e) => attr(e, 'id') !== undefined).map((e) => attr(e, 'id'));
      expect(new Set(ids).size).toBe(ids.length);
    }
    const keys = all(html, (e) => attr(e, 'data-key') !== undefined).map((e) => attr(e, 'data-key'));
    expect(new Set(keys).size).toBe(keys.length);
  });

  test('tells each finding once, open or accepted, with its code', () => {
    const told = all(html, byClass('finding')).map((e) => attr(e, 'data-key'));
    expect(told.sort()).toEqual(facts.nothing === undefined ? facts.findings.map(({ key }) => key).sort() : []);
  });

  test('weighs a part as the sum of the grams that it shows', () => {
    for (const { mass_g: mass, ingredients } of facts.report.parts) {
      if (mass === null) continue;
      const sum = ingredients.reduce((grams, i) => grams + (i.optional ? 0 : (i.grams ?? 0)), 0);
      expect(Math.abs(mass - sum)).toBeLessThan(0.06);
    }
  });
});

function linksIn(node: Node): Element[] {
  if (!('childNodes' in node)) return [];
  return [
    ...('attrs' in node && attr(node, 'data-line') !== undefined ? [node] : []),
    ...node.childNodes.flatMap((child) => linksIn(child)),
  ];
}

const isOther = (node: Node): boolean => 'attrs' in node && classes(node).includes('others');

describe('the head', () => {
  const state = (text: string) => textsOf(page(open(text)), byClass('state'))[0];

  test.each<[string, string, string]>([
    ['never cooked', OATS, 'Never cooked.'],
    [
      'cooked, and nobody knows as what',
      `${OATS}\ntrial 2026-10-10 by Ruth\n  verdict keep\n`,
      'Cooked on 10 October 2026 by Ruth: not known whether as it stands here.',
    ],
  ])('says %s', (_, text, want) => expect(state(text)).toBe(want));

  const cooked = (text: string, marks: string) =>
    `${text}\ntrial 2026-10-03 by Ines\n  tested  ${marks}\n  verdict keep\n`;
  const marks = /tested {2}(\S+)/.exec(TESTED())?.[1] ?? '';

  test('counts the places that were changed since', () => {
    expect(state(cooked(OATS, marks))).toBe('Proved: cooked as written on 3 October 2026 by Ines.');
    expect(state(cooked(OATS.replace('100 g', '120 g'), marks))).toMatch(
      /^Cooked on 3 October 2026 by Ines, and changed since in one place: not yet cooked as it stands here\./,
    );
    expect(state(cooked(OATS.replace('100 g', '120 g').replace('180 C', '170 C'), marks))).toMatch(/in two places/);
  });

  test('is proved by nothing that somebody still has to look at', () => {
    const warned = OATS.replace('  do Melt', '  10 g      honey\n  do Melt');
    const own = /tested {2}(\S+)/.exec(TESTED(warned))?.[1] ?? '';
    expect(state(cooked(warned, own))).toMatch(/^Cooked as written on 3 October 2026 by Ines\./);
  });

  test('leads to the first of each level', () => {
    const html = page(DRAFT);
    const counts = all(html, (e) => e.tagName === 'a' && /^\d+ (?:error|warning|note)/.test(plainly(words(e))));
    expect(counts.length).toBe(3);
    for (const count of counts) {
      const to = attr(count, 'href')?.slice(1);
      expect(all(html, (e) => attr(e, 'id') === to)).toHaveLength(1);
    }
  });

  test('says what is not known, and for what', () => {
    const facts = (text: string) => textsOf(page(open(text)), (e) => e.tagName === 'dd');
    expect(facts(OATS)[1]).toMatch(/^\d+ g/);
    expect(facts(OATS.replace('100 g     butter', '100 g     butter\n  2 handfuls xyloquartz'))[1]).toBe(
      'not knownfor xyloquartz',
    );
    expect(facts('recipe Toast\n  1 slice bread\n')[0]).toBe('not said');
  });
});

/** As a trial begins in the editor, with the marks of what is tested. */
function TESTED(text = OATS): string {
  const { document, recipe } = open(text);
  return recordTrial(document, recipe, '2026-10-03')
    .edits.map((edit) => edit.text)
    .join('');
}

describe('the list and the method', () => {
  const html = page(open(OATS), { line: 8 });

  test('three columns: a pinch as a pinch, pieces first, the other measure behind', () => {
    const rows = all(html, (e) => e.tagName === 'li' && e.parentNode?.nodeName === 'ul').map((li) =>
      li.childNodes.filter((n) => n.nodeName === 'span').map((n) => plainly(words(n))),
    );
    expect(rows).toEqual([
      ['200 g', 'rolled oats', expect.stringMatching(/cup/)],
      ['100 g', 'butter', '7 tbsp'],
      ['1 pinch', 'fine salt', 'about 0.4 g'],
      // Large eggs without shell weigh about 50 g in the United States (USDA).
      ['3 large', 'eggs, beaten', 'about 150 g'],
    ]);
  });

  test('heat and time are bold, and as they are written', () => {
    expect(textsOf(html, (e) => e.tagName === 'b' && e.parentNode?.nodeName === 'a')).toEqual([
      '180 °C',
      '25 min',
      '80 °C',
    ]);
  });

  test('the row of the caret is marked, and no other', () => {
    const here = all(html, (e) => attr(e, 'aria-current') === 'true');
    expect(here.map((e) => plainly(words(e)))).toEqual(['1 pinch fine salt about 0.4 g']);
    expect(classes(here[0] as Element)).toContain('here');
  });

  test('each list is one stop of the Tab key', () => {
    for (const list of all(html, (e) => e.tagName === 'ul' || e.tagName === 'ol'))
      expect(linksIn(list).filter((link) => attr(link, 'tabindex') === '0')).toHaveLength(1);
  });
});

describe('what was found', () => {
  const html = page(DRAFT);
  const found = (code: string): Element =>
    all(html, (e) => byClass('finding')(e) && new RegExp(`^${code}-\\d+$`).test(attr(e, 'id') ?? ''))[0] as Element;

  test('stands by its line, without the name of its part, its code opening the rest', () => {
    const finding = found('dough-too-wet');
    expect(plainly(words(finding))).toMatch(/^Water per flour is 89 to 90 %; 18 to 53 % is usual for shortcrust\./);
    expect(finding.parentNode?.nodeName).toBe('li');
    expect(plainly(words(finding.parentNode as Element))).toMatch(/^150 g ice water/);
    const details = finding.childNodes.flatMap((n) => ('childNodes' in n ? n.childNodes : []));
    expect(details.map((n) => n.nodeName)).toContain('details');
  });

  test('the words it is about are underlined in its level', () => {
    const marked = all(
      html,
      (e) => byClass('at')(e) && ['error', 'warning', 'note'].some((l) => classes(e).includes(l)),
    );
    const texts = marked.map((e) => plainly(words(e)));
    expect(texts).toEqual(expect.arrayContaining(['ice water', '375 °C', '68 °C', 'chedder', 'flour']));
  });

  test('more than two fixes are a button and links behind it', () => {
    const buttons = linksOf(found('unknown-food'), 'button');
    expect(buttons.map((b) => [plainly(words(b)), classes(b).includes('plain')])).toEqual([
      ['Write cheddar', false],
      ['Write reduced-fat cheddar', true],
      [expect.stringMatching(/^Write /), true],
      ['More on this', true],
    ]);
  });

  test('nothing that writes is shown where nothing may be written, and why is said once', () => {
    const shown = page(DRAFT, { readOnly: 'This file is read-only.' });
    expect(all(shown, (e) => attr(e, 'data-do') === 'fix')).toEqual([]);
    expect(shown.split('This file is read-only.')).toHaveLength(2);
  });

  test('what is accepted is soft, without buttons, with its reason', () => {
    const text = OATS.replace(
      'part base\n',
      'part base\n  allow unused-ingredient because it is for the table\n',
    ).replace('  do Melt', '  10 g      honey\n  do Melt');
    const accepted = all(page(open(text)), byClass('accepted'));
    expect(accepted.map((e) => plainly(words(e)))).toEqual([expect.stringMatching(/accepted: it is for the table$/)]);
    expect(accepted.flatMap((e) => linksOf(e, 'button'))).toEqual([]);
  });

  test('many stand beneath their lines, few in the margin', () => {
    const layout = (snapshot: Snapshot) => all(page(snapshot), (e) => e.tagName === 'main').flatMap(classes);
    expect(layout(DRAFT)).toEqual(['beneath']);
    expect(layout(open(OATS))).toEqual(['plain']);
    expect(layout(open(OATS.replace('  do Melt', '  10 g      honey\n  do Melt')))).toEqual(['noted']);
  });
});

function linksOf(node: Node, name: string): Element[] {
  if (!('childNodes' in node)) return [];
  return [
    ...('attrs' in node && node.tagName === name ? [node] : []),
    ...node.childNodes.flatMap((n) => linksOf(n, name)),
  ];
}

describe('what is looked at', () => {
  test('another size: what differs is marked, times that are estimated too, and two ways on', () => {
    const html = page(open(OATS), { look: { makes: 24 } });
    expect(textsOf(html, (e) => byClass('amount')(e) && byClass('looked')(e))).toEqual([
      '400 g',
      '200 g',
      '2 pinches',
      '6 large',
    ]);
    expect(textsOf(html, byClass('looking'))[0]).toMatch(
      /^Looking at 24 squares\. The text says 12\. Write this Back to 12/,
    );
    // Twice 100 g of butter and so on (worked).
    expect(textsOf(html, (e) => e.tagName === 'dd')[1]).toMatch(/^\d+ g/);
  });

  test('it ends when the text says another size', () => {
    expect(page(open(OATS), { look: { makes: 24, makesOf: 10 } })).not.toContain('class="looking"');
  });

  test('measures and degrees: by the edits that would write them', () => {
    const html = page(open(OATS), { look: { measures: 'measure-first', degrees: 'F' } });
    expect(textsOf(html, byClass('amount'))).toEqual([
      expect.stringMatching(/cup/),
      expect.stringMatching(/cup/),
      '1 pinch',
      '3 large',
    ]);
    // 180 °C is 356 °F, which a dial calls 350 (USDA conversion tables); 80 °C is 176 °F.
    expect(textsOf(html, (e) => byClass('looked')(e) && e.parentNode?.nodeName === 'a')).toEqual(['350 °F', '176 °F']);
    expect(textsOf(html, byClass('looking'))[0]).toMatch(
      /^Looking at measures first, °F\. The text says grams first, °C\./,
    );
  });

  test('of a variant it is looked at, and not written', () => {
    const html = page(TART, { look: { makes: 20 } });
    expect(textsOf(html, byClass('looking'))[0]).toContain('It builds on another file, so it is not written here.');
    expect(html).not.toContain('look-write');
    expect(textsOf(html, (e) => byClass('amount')(e) && byClass('looked')(e))[0]).toBe('440 g');
  });
});

describe('where there is not the whole of a recipe', () => {
  test('an empty file has a heading, a sentence and a button', () => {
    const html = page(open(''));
    expect(textsOf(html, (e) => e.tagName === 'h1')).toEqual(['Nothing is written yet']);
    expect(textsOf(html, (e) => e.tagName === 'button')).toEqual(['Write a skeleton']);
    expect(page(open(''), { readOnly: 'No.' })).not.toContain('<button');
  });

  test('a file of foods says so', () => {
    const html = page(
      open('food house flour\n  like plain flour\n  price 1.20 for 1 kg\n\nfood house oats\n  like rolled oats\n'),
    );
    expect(html).toContain('2 foods of the house, 1 with a price.');
  });

  test('a base that is not there is named, with its line, and no weight is given for the whole', () => {
    const html = page(
      open(
        'recipe Tart\n  yield   8 slices\n\npart case from gone.quern : case\n\npart cream\n  200 g     double cream\n  do Whip the cream.\n',
      ),
    );
    expect(textsOf(html, byClass('empty'))[0]).toMatch(/^error ?The base is not there|^The base is not there/);
    expect(html).toContain('data-line="4"');
    expect(textsOf(html, (e) => e.tagName === 'dd')[1]).toMatch(/^not known/);
    expect(textsOf(html, (e) => e.tagName === 'li')[0]).toMatch(/^200 g double cream/);
  });

  test('a line half typed is left out, and said over the list; once the caret is elsewhere it stands as it is written', () => {
    const half = open(OATS.replace('  100 g     butter', '  100 g'));
    const typed = page(half, { line: 7 });
    expect(typed).toContain('<b>Line 7 cannot be read yet.</b>');
    expect(textsOf(typed, byClass('name'))).toEqual(['rolled oats', 'fine salt', 'eggs, beaten']);
    const left = page(half, { line: 1 });
    expect(left).not.toContain('cannot be read yet');
    expect(textsOf(left, byClass('name'))).toEqual(['rolled oats', '100 g', 'fine salt', 'eggs, beaten']);
  });

  test('a name without an amount asks how much', () => {
    expect(textsOf(page(DRAFT), byClass('amount'))).toContain('how much?');
  });
});

test('hostile names are the words that they are', () => {
  const evil = '<img src=x onerror=alert(1)>"\'&';
  const html = allViews(
    pageFacts(open(OATS.replace('Oat slab', evil).replace('part base', `part ${evil}`).replace('rolled oats', evil))),
  );
  expect(all(html, (e) => e.tagName === 'img')).toEqual([]);
  expect(textsOf(html, (e) => e.tagName === 'h1')[0]).toBe(evil);
  for (const element of all(html, () => true)) for (const { name } of element.attrs) expect(name).not.toMatch(/^on/);
});

test('of very much to mend the gravest have their fixes, so that a page of it does not keep a server', () => {
  const part = (i: number) =>
    `\npart p${i}\n  200 g     plain flour\n  50 g      chedder\n\n  do Bake the flour and the chedder at 375 C for 30 min.\n`;
  const { findings } = pageFacts(open(`recipe Long\n${Array.from({ length: 30 }, (_, i) => part(i)).join('')}`));
  const mended = findings.filter(({ fixes }) => fixes.length > 0);
  expect(mended.length).toBeGreaterThan(0);
  expect(mended.length).toBeLessThan(findings.length / 2);
  expect(new Set(mended.map(({ level }) => level))).toEqual(new Set(['error']));
});
