/**
 * Whatever a recipe says, it is shown as the words that it is. Outside oracles: markdown-it, which draws the editor's own previews, and
 * parse5, which reads HTML as browsers do.
 */
import fc from 'fast-check';
import MarkdownIt from 'markdown-it';
import { type DefaultTreeAdapterMap, parse } from 'parse5';
import { describe, expect, test } from 'vitest';
import { CHECKS } from '../../server/src/checks/index.ts';
import { htmlPage } from '../../server/src/publish/html.ts';
import { jsonLd } from '../../server/src/publish/json-ld.ts';
import { markdownLine, markdownText } from '../../server/src/publish/markdown-text.ts';
import { explainOn } from '../../server/src/publish/page.ts';
import { markdownPage } from '../../server/src/publish/plain-pages.ts';
import { readerPage } from '../../server/src/publish/reader-page.ts';
import { viewFacts } from '../../server/src/publish/view/facts.ts';
import { printedReport } from '../../server/src/publish/view/printed.ts';
import { visible, visibleLine } from '../../server/src/publish/visible.ts';
import { open } from '../support/harness.ts';

const HOSTILE = [
  '<img src=x onerror=alert(1)>',
  '<script>alert(1)</script>',
  '</script><script>alert(1)</script>',
  '<!--',
  '![x](https://evil.example/x.png)',
  '[go](command:workbench.action.quit)',
  '[go]: https://evil.example',
  '<https://evil.example>',
  '&lt;img&gt;',
  '&#60;img&#62;',
  '`code` <b>',
  '` <i> `` ',
  '**bold** _soft_ ~~gone~~',
  '$x^2$',
  '|a|b|',
  '\\[go](command:x)',
  '\\',
  '# head',
  '- point',
  '+ point',
  '1. point',
  '1986) a year',
  '---',
  '===',
  '~~~',
  '```',
  '    code',
  '"><svg onload=alert(1)>',
  '\u202egnp\u202c',
  '\u001b[31mred\u0007',
  '\u2028',
];
const hostile = fc.constantFrom(...HOSTILE);
const words = fc.oneof(
  hostile,
  fc.string({ unit: 'grapheme', maxLength: 12 }),
  fc.array(fc.oneof(hostile, fc.constantFrom('a', ' ', 'flour', '3')), { maxLength: 4 }).map((all) => all.join('')),
);
const oneLine = words.map((text) => text.replace(/[\r\n]/g, ' '));

/** A recipe with hostile words wherever words may stand. */
const recipe = fc.array(oneLine, { minLength: 9, maxLength: 9 }).map(
  ([title, by, note, part, food, prep, step, why, source]) => `recipe Slab ${title}
  by      ${by}
  note    ${note}
  source  ${source}
  yield   12 ${title}
part ${part}
  200 g     plain flour, ${prep}
  100 g     butter
  3 g       ${food}
  allow unused-ingredient because ${why}
  20 g      honey
  do Rub 150 g of the butter into the flour. ${step}
  do ${step}
trial 2026-09-14 by ${by}
  note    ${note}
`,
);

type Node = DefaultTreeAdapterMap['node'];
/** The elements of a page with their attributes, in order, and what it says. */
function htmlOf(page: string): { readonly elements: readonly string[]; readonly text: string } {
  const elements: string[] = [];
  let text = '';
  const walk = (node: Node): void => {
    if (node.nodeName === '#comment') elements.push('#comment');
    if (node.nodeName === '#text' && 'value' in node) text += node.value;
    if ('attrs' in node) elements.push(`${node.tagName} ${node.attrs.map(nameOf).join(' ')}`.trim());
    if ('childNodes' in node) for (const child of node.childNodes) walk(child);
  };
  walk(parse(page));
  return { elements, text };
}

/** Of a way to another place of the same page it is said. */
const nameOf = ({ name, value }: { readonly name: string; readonly value: string }): string =>
  name === 'href' && value.startsWith('#') ? 'within' : name;

// As the editor's previews read it: HTML is let through.
const markdown = new MarkdownIt({ html: true, linkify: false });

const ALLOWED =
  /^(?:a(?: class)? within$|html|head|body|title|style|main|meta|h[123]|p|ul|ol|li|dl|dt|dd|section|table|thead|tbody|tr|td|th|caption|span|strong|em|b|code|pre|br|hr|blockquote|script type|footer|div|time|nav|figure|article|header|svg|defs|symbol|rect|path|circle|pattern|line|use|small)\b/;

/** Of the report printed: its drawings, and its head and foot. */
const DRAWN = /^(?:svg|defs|symbol|rect|path|circle|line|text|header|footer|figcaption|small|i|tbody|tfoot)\b/;
const CONTROLS = /[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f]/;

describe('a page as HTML', () => {
  test('has the elements of Quern alone, and says what was written', () => {
    fc.assert(
      fc.property(recipe, (text) => {
        const { recipe: read, findings } = open(text);
        const page = readerPage(read, findings, { measures: 'weight-first', label: 'us' });
        const made = htmlPage(page);
        const { elements } = htmlOf(made);
        expect(elements.filter((e) => !ALLOWED.test(e) || /\bon\w+|src|href/.test(e))).toEqual([]);
        expect(elements.filter((e) => e.startsWith('script')).length).toBeLessThanOrEqual(1);
        expect(made).not.toMatch(CONTROLS);
        const printed = printedReport(viewFacts(read, findings, { mode: 'print' }));
        const all = htmlOf(printed).elements;
        expect(all.filter((e) => !(ALLOWED.test(e) || DRAWN.test(e)) || /\bon\w+|src|href/.test(e))).toEqual([]);
        expect(printed).not.toMatch(CONTROLS);
        const { text: said } = htmlOf(htmlPage(page));
        expect(said.replaceAll('\u00a0', ' ')).toContain(
          page.title.replace(/[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f]/g, '\ufffd').replaceAll('\u00a0', ' '),
        );
      }),
      { numRuns: 150 },
    );
  });
});

describe('JSON-LD by itself', () => {
  test('may stand in a page, and says what was written', () => {
    fc.assert(
      fc.property(recipe, (text) => {
        const { recipe: read, findings } = open(text);
        const page = readerPage(read, findings, { measures: 'weight-first', label: 'us' });
        const data = jsonLd(page);
        expect(data).not.toMatch(/[<>&\u2028\u2029]/);
        expect(JSON.parse(data)).toMatchObject({ name: page.title });
        const { elements } = htmlOf(`<script type="application/ld+json">${data}</script>`);
        expect(elements).toEqual(['html', 'head', 'script type', 'body']);
      }),
      { numRuns: 150 },
    );
  });
});

describe('Markdown', () => {
  test('of what somebody wrote is the text that it is', () => {
    fc.assert(
      fc.property(oneLine, (text) => {
        const { elements, text: said } = htmlOf(markdown.render(`Said: ${markdownText(text)}!`));
        expect(elements).toEqual(['html', 'head', 'body', 'p']);
        const plain = (s: string) => s.replace(/[\0\ufffd]/g, '').replace(/\s+/g, ' ');
        expect(plain(said)).toBe(plain(`Said: ${text}!\n`));
      }),
      { numRuns: 1000 },
    );
  });

  test('of what somebody wrote is the same at the beginning of a paragraph', () => {
    fc.assert(
      fc.property(oneLine, (text) => {
        const trimmed = text.trim();
        fc.pre(trimmed !== '');
        const { elements } = htmlOf(markdown.render(`One.\n\n${markdownText(trimmed)}\n\nTwo.\n`));
        expect(elements).toEqual(['html', 'head', 'body', 'p', 'p', 'p']);
      }),
      { numRuns: 1000 },
    );
  });

  test('of Quern keeps its own marks and no others', () => {
    const { elements } = htmlOf(markdown.render(markdownLine('**Line 7.** The `plain flour` <b> [x](y) &lt; ` half')));
    expect(elements).toEqual(['html', 'head', 'body', 'p', 'strong', 'code']);
    fc.assert(
      fc.property(oneLine, (text) => {
        const made = htmlOf(markdown.render(`One ${markdownLine(`\`${text}\` and ${text}`)} two.`)).elements;
        expect(made.filter((e) => !/^(?:a(?: class)? within$|html|head|body|p|code|strong|em|s)$/.test(e))).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });

  test('pages for readers and pages of findings load nothing, link to nothing, and have no HTML of the recipe', () => {
    const codes = ['overdrawn-amount', 'unused-ingredient', 'unknown-food', 'dough-too-wet'];
    const checks = CHECKS.filter(({ code }) => codes.includes(code));
    expect(checks).toHaveLength(codes.length);
    fc.assert(
      fc.property(recipe, oneLine, (text, name) => {
        const snapshot = open(text);
        const { open: found, accepted } = snapshot.findings;
        const pages = checks.map((check) => explainOn(check, [...found, ...accepted], snapshot, name));
        pages.push(
          markdownPage(readerPage(snapshot.recipe, snapshot.findings, { measures: 'weight-first', label: 'us' })),
        );
        for (const page of pages) {
          const { elements } = htmlOf(markdown.render(page));
          expect(elements.filter((e) => !ALLOWED.test(e) || /\bon\w+|src|href|script/.test(e))).toEqual([]);
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe('what is visible', () => {
  test('has no character that does more than stand there', () => {
    fc.assert(
      fc.property(fc.oneof(words, fc.string({ unit: 'binary' })), (text) => {
        expect(visible(text)).not.toMatch(
          /[^\P{C}\t\n\r\p{Co}\p{Cn}\p{Cs}\u00ad\u200b-\u200d\u2060-\u2064\ufeff\u{1d173}-\u{1d17a}\u{e0000}-\u{e007f}\u0600-\u0605\u06dd\u070f\u0890\u0891\u08e2\u180e\u206a-\u206f\ufff9-\ufffb\u{110bd}\u{110cd}\u{13430}-\u{1343f}\u{1bca0}-\u{1bca3}]/u,
        );
        expect(visible(text)).not.toMatch(/\r(?!\n)/);
        expect(visibleLine(text)).not.toMatch(/[\n\r\t]/);
        expect(visible(visible(text))).toBe(visible(text));
      }),
      { numRuns: 1000 },
    );
  });

  test('leaves other text alone', () => {
    const text = 'crème brûlée\t½ tsp\r\nעוגה 200 g\nخبز 🍞';
    expect(visible(text)).toBe(text);
    expect(visible('a\u001b[2Jb\u009b\u007f\u202ec\rd')).toBe('a\\u001b[2Jb\\u009b\\u007f\\u202ec\\u000dd');
    expect(visibleLine('a\nb\tc\r\n')).toBe('a\\nb\\tc\\r\\n');
  });
});
