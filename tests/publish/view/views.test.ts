import { parse } from 'parse5';
import { expect, test } from 'vitest';
import { pageFacts } from '../../../server/src/editor/page/facts.ts';
import { VIEWS } from '../../../server/src/publish/view/look.ts';
import { STYLE } from '../../../server/src/publish/view/style.ts';
import { allViews, viewPage } from '../../../server/src/publish/view/views.ts';
import { EXAMPLES, openInKitchen } from '../../support/harness.ts';

const [, TEXT = ''] = EXAMPLES.find(([path]) => path === 'pastry/lemon-tart.quern') ?? [];
const TART = openInKitchen(TEXT, 'pastry/lemon-tart.quern');

test('each view stands in the same frame', () => {
  const facts = pageFacts(TART, { line: 3 });
  const heads = VIEWS.map((view) => viewPage(facts, view).split('<nav')[0]);
  expect(new Set(heads).size).toBe(1);
});

test('a page has all views once, and the policy of a webview refuses nothing of it', () => {
  const html = allViews(pageFacts(TART));
  for (const view of VIEWS) expect(html.split(`<section id="${view}"`)).toHaveLength(2);
  expect(parse(html)).toBeDefined();
  expect(html).not.toMatch(/<script|style="/);
  expect(STYLE).not.toMatch(/url\((?!#)/);
});
