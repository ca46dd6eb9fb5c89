/**
 * A view of the page as a test reads it: parsed as browsers do, its tables as texts, its drawings with what stands beside them.
 */
import { type DefaultTreeAdapterMap, parseFragment } from 'parse5';
import { type ViewFacts, type ViewSources, viewFacts } from '../../server/src/publish/view/facts.ts';
import { open } from './harness.ts';

type Node = DefaultTreeAdapterMap['node'];
export type Element = DefaultTreeAdapterMap['element'];

/** What the views show of a text under the default house. */
export function factsOf(text: string, sources: Partial<ViewSources> = {}): ViewFacts {
  const { recipe, findings } = open(text);
  return viewFacts(recipe, findings, { mode: 'live', ...sources });
}

/** All elements of a name, in order. */
export const elementsOf = (html: string, name?: string): Element[] => elementsIn(parseFragment(html), name);

export function elementsIn(root: Node | undefined, name?: string): Element[] {
  const found: Element[] = [];
  const walk = (node: Node): void => {
    if ('tagName' in node && (name === undefined || node.tagName === name)) found.push(node);
    if ('childNodes' in node) for (const child of node.childNodes) walk(child);
  };
  if (root !== undefined) walk(root);
  return found;
}

export function textOf(node: Node): string {
  if (node.nodeName === '#text' && 'value' in node) return node.value;
  if (!('childNodes' in node)) return '';
  // A line that is broken is two words.
  return node.childNodes.map((child) => (child.nodeName === 'br' ? ' ' : textOf(child))).join('');
}

export const attributeOf = (element: Element, name: string): string | undefined =>
  element.attrs.find((attr) => attr.name === name)?.value;

const childrenOf = (element: Element, ...names: string[]): Element[] =>
  element.childNodes.filter((child): child is Element => 'tagName' in child && names.includes(child.tagName));

/** The rows of the table of that caption, each as the texts of its cells; `class` tells how a cell is set. */
export function tableOf(
  html: string,
  caption: string | RegExp,
): readonly (readonly { readonly text: string; readonly class: string; readonly of: Element }[])[] {
  const table = elementsOf(html, 'table').find((each) => {
    const [said] = childrenOf(each, 'caption');
    const text = said === undefined ? '' : textOf(said);
    return typeof caption === 'string' ? text === caption : caption.test(text);
  });
  if (table === undefined) return [];
  return childrenOf(table, 'thead', 'tbody', 'tfoot')
    .flatMap((part) => childrenOf(part, 'tr'))
    .map((row) =>
      childrenOf(row, 'th', 'td').map((of) => ({
        text: textOf(of).replace(/\s+/g, ' ').trim(),
        class: attributeOf(of, 'class') ?? '',
        of,
      })),
    );
}

/** The texts of one row, by its first cell. */
export const rowOf = (html: string, caption: string | RegExp, first: string): readonly string[] | undefined =>
  tableOf(html, caption)
    .find((row) => row[0]?.text === first)
    ?.map(({ text }) => text);

/**
 * What no view may have: a style or a script of its own, a figure that is none, and a drawing that neither stands in a table or key that says
 * the same nor is an image with its sentence.
 */
export function faultsIn(html: string): string[] {
  const faults = [
    ...elementsOf(html).flatMap(({ tagName, attrs }) => [
      ...(tagName === 'script' || tagName === 'style' ? [tagName] : []),
      ...attrs.flatMap(({ name, value }) =>
        name === 'style' || name.startsWith('on') || (/^(?:href|src)$/.test(name) && !value.startsWith('#'))
          ? [`${name} of ${tagName}`]
          : [],
      ),
    ]),
    ...(html.match(/>[^<]*\b(?:NaN|undefined|Infinity)\b[^<]*</g) ?? []),
    ...(html.match(/"[^"<>]*(?:NaN|undefined|Infinity)[^"<>]*"/g) ?? []),
  ];
  for (const svg of elementsOf(html, 'svg')) {
    if (attributeOf(svg, 'class') === 'point') continue;
    const isImage = attributeOf(svg, 'role') === 'img' && (attributeOf(svg, 'aria-label') ?? '') !== '';
    const isHidden = attributeOf(svg, 'aria-hidden') === 'true';
    if (!isImage && !isHidden) faults.push(`a drawing without words: ${attributeOf(svg, 'class') ?? ''}`);
    if (isHidden && attributeOf(svg, 'class') === 'draw' && (rowTextOf(svg) ?? '') === '')
      faults.push('a drawing without its figures');
  }
  return faults;
}

/** What stands in the row or the key around a drawing, or is said of the image that it is a part of. */
function rowTextOf(svg: Element): string | undefined {
  for (let node: Node | null = svg.parentNode; node !== null && 'tagName' in node; node = node.parentNode) {
    const said = attributeOf(node, 'role') === 'img' ? attributeOf(node, 'aria-label') : undefined;
    const text = said ?? (['tr', 'span', 'p'].includes(node.tagName) ? textOf(node).trim() : '');
    if (text !== '') return text;
  }
  return undefined;
}

/** Words that would be more than words on a page that does not escape. */
export const HOSTILE_NAME = '<img src=x onerror=alert(1)> "quoted" & \'so\'';
