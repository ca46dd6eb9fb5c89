/**
 * Knows what a recipe or part is called, and the kind that is written behind its name: the notation keeps both readings of ` as `.
 * Refuses to judge the kind.
 */
import type { Statement, TextNode, TitleNode } from '../../notation/tree.ts';
import { namesKind } from '../measures/near-kind.ts';

export interface Title {
  readonly name?: TextNode;
  readonly as?: TextNode;
}

const NONE: Title = {};

/** `crust as shortcrust` is a crust; `Fish as the French do it` is all name. Empty for what has no title. */
export function titleOf(statement: Statement | undefined): Title {
  if (statement?.kind !== 'recipe' && statement?.kind !== 'part') return NONE;
  const { title, ofKind }: TitleNode = statement;
  const parted = ofKind !== undefined && (ofKind.name === undefined || ofKind.kind === undefined || isKind(statement));
  if (!parted) return title === undefined ? NONE : { name: title };
  const { name, kind } = ofKind;
  return { ...(name && { name }), ...(kind && { as: kind }) };
}

/** A word or two behind a part's `as` are always meant as one: no part is called so. */
function isKind({ kind: of, ofKind }: { readonly kind: 'recipe' | 'part' } & TitleNode): boolean {
  const words = ofKind?.kind?.text ?? '';
  return namesKind(words) || (of === 'part' && /^[\p{Ll}-]+(?: [\p{Ll}-]+)?$/u.test(words));
}

/** A part's title without what it says in brackets or behind a comma: `filling (make ahead)` is the filling. */
export const calledName = (title: string): string =>
  /[(,]/.test(title)
    ? title
        .replace(/\([^()]*\)/g, ' ')
        .replace(/,.*$/, '')
        .trim() || title
    : title.trim() || title;

/** What names the dish: all of `Strawberry, rhubarb and ginger jam`, of which each comma only goes on. */
export const dishNames = (title: string): readonly string[] =>
  LISTED.test(title) ? [calledName(title), title] : [calledName(title)];
const LISTED = /^\S+(?: \S+)?(?:, \S+(?: \S+)?)*,? (?:and|&) /;
