/**
 * Knows what every part leaves to judge in the end: where its food lay, and the bodies that it put down last.
 * Refuses to know which parts share food. A piece is the same object for as long as nothing that its foods meet is another.
 */
import type { Body, Stay } from './bodies.ts';
import type { FoldedPart } from './folded-part.ts';

export interface Piece {
  readonly folded: FoldedPart;
  /** As its list says, and its steps; without those of which a later step tells by the clock how long they are. */
  readonly stays: readonly Stay[];
  /** That nothing can happen to any more, and that are there at the end. */
  readonly bodies: readonly Body[];
  /** Those that are there. */
  readonly open: readonly Body[];
}

/** The pieces by place; those of before where neither the part nor what its foods meet is another. `other`: parts whose foods are no longer as they were. */
export function piecesOf(
  folded: readonly FoldedPart[],
  other: ReadonlySet<number>,
  before: { readonly folded: readonly FoldedPart[]; readonly pieces: readonly Piece[] } | undefined,
): readonly Piece[] {
  // Which stays the clock tells of hangs on no food that they share.
  const isTold = folded.some(({ tells }) => tells.length > 0) || before?.folded.some(({ tells }) => tells.length > 0);
  let fates: Fates | undefined;
  return folded.map((each, at) => {
    const piece = before?.folded[at] === each ? before.pieces[at] : undefined;
    if (piece !== undefined && !isTold && !meets(each, other)) return piece;
    fates ??= fatesIn(folded);
    return make(each, at, fates);
  });
}

const meets = ({ part, touches }: FoldedPart, other: ReadonlySet<number>): boolean =>
  other.size > 0 && (other.has(part.index) || touches.some((index) => other.has(index)));

/** What became of bodies and stays behind the part that they are of. */
interface Fates {
  /** The place at which a body was taken last. */
  readonly taken: ReadonlyMap<number, number>;
  /** As it was changed last where it stood, and the place. */
  readonly changed: ReadonlyMap<number, { readonly at: number; readonly body: Body }>;
  readonly told: ReadonlySet<Stay>;
}

function fatesIn(folded: readonly FoldedPart[]): Fates {
  const taken = new Map<number, number>();
  const changed = new Map<number, { at: number; body: Body }>();
  const told = new Set<Stay>();
  folded.forEach((each, at) => {
    for (const id of each.taken) taken.set(id, at);
    for (const body of each.changed) changed.set(body.id, { at, body });
    for (const stay of each.tells) told.add(stay);
  });
  return { taken, changed, told };
}

function make(folded: FoldedPart, at: number, { taken, changed, told }: Fates): Piece {
  const { listed, stays, ended, made } = folded;
  const open = made.flatMap(({ body }): readonly Body[] => {
    if ((taken.get(body.id) ?? at) > at) return [];
    const now = changed.get(body.id);
    return [now !== undefined && now.at > at ? now.body : body];
  });
  const all = listed.length === 0 ? stays : [...listed, ...stays];
  return {
    folded,
    stays: told.size === 0 ? all : all.filter((stay) => !told.has(stay)),
    bodies: ended.length === 0 ? open : [...ended, ...open],
    open,
  };
}
