/**
 * Knows how the times of a recipe are stated in its head: `20 min at work, 50 min in the oven`, `prep 20 min, cook 50 min`.
 * Refuses to know the steps that they are held against.
 */
import { takeAmount } from './amounts.ts';
import type { Cursor } from './cursor.ts';
import { durationOf, joinedDuration } from './readings.ts';
import { isNumber, Kind, type Token } from './tokens.ts';
import type { Draft, DurationNode, StatedTime, SyntaxFault, TimeRole } from './tree.ts';

const ROLES: ReadonlyMap<string, TimeRole> = new Map([
  ...words('work', 'work working prep preparation preparing active hands-on hands making'),
  ...words('cooking', 'oven stove cook cooking bake baking roast roasting fry frying simmer simmering'),
  ...words(
    'waiting',
    'wait waiting rest resting chill chilling cool cooling rise rising prove proving proof proofing inactive marinate marinating soak soaking freeze freezing fridge',
  ),
  ...words('total', 'total all altogether ready start overall'),
]);

function words(role: TimeRole, list: string): [string, TimeRole][] {
  return list.split(' ').map((word) => [word, role]);
}

const FILLERS: ReadonlySet<string> = new Set(
  'at in on to the a of for from time times and plus then more about takes finish table'.split(' '),
);
/** A line of its own may open with these: `Prep: 20 min`, `Ready in 1 h`. */
export const OPENERS: ReadonlySet<string> = new Set([
  'prep',
  'preparation',
  'cook',
  'cooking',
  'baking',
  'total',
  'ready',
  'active',
  'hands-on',
]);

/** Whether a line without a keyword states times. */
export function saysTime(tokens: readonly Token[]): boolean {
  if (!OPENERS.has(tokens[0]?.written?.word ?? '')) return false;
  let at = 1;
  while (tokens[at]?.kind === Kind.Colon || /^(?:time|in|about)$/.test(tokens[at]?.written?.word ?? '')) at++;
  const unit = tokens.slice(at + 1).find((t) => t.written !== undefined)?.written?.unit;
  return tokens[at]?.written === undefined && isNumber(tokens[at]?.kind ?? Kind.End) && unit?.dimension === 'time';
}

/** What a stretch between two commas says. */
interface Stretch {
  duration?: DurationNode;
  role?: TimeRole;
}

/** The times of a line, and the first token that is none of them. */
export function timesOf(
  line: string,
  cursor: Cursor,
  faults: SyntaxFault[],
): { readonly stated: readonly StatedTime[]; readonly stray?: Token } {
  const stretches: Draft<Stretch>[] = [{}];
  let stray: Token | undefined;
  for (let { token } = cursor; token !== undefined; { token } = cursor) {
    const { at } = cursor;
    let last = stretches.at(-1) as Draft<Stretch>;
    const role = ROLES.get(token.written?.word ?? '');
    const opens =
      token.kind === Kind.About ||
      token.kind === Kind.Overnight ||
      (token.written === undefined && isNumber(token.kind));
    if (opens) {
      const duration = durationOf(line, takeAmount(cursor), faults);
      const joined = last.duration && duration && joinedDuration(last.duration, duration);
      if (duration === undefined) stray ??= token;
      else if (joined !== undefined) last.duration = joined;
      else {
        // `20 min prep 50 min cook`: a second time begins the next.
        if (last.duration !== undefined) {
          last = {};
          stretches.push(last);
        }
        last.duration = duration;
      }
    } else if (role !== undefined) {
      // `prep 20 min cook 50 min`
      if (last.role !== undefined && last.duration !== undefined) {
        last = {};
        stretches.push(last);
      }
      last.role ??= role;
    } else if (token.written === undefined) {
      if (token.kind === Kind.Comma || /^[;•|·/+]$/.test(line.slice(token.start, token.end))) stretches.push({});
    } else if (token.written.word === 'and' && last.duration !== undefined && last.role !== undefined)
      stretches.push({});
    else if (!FILLERS.has(token.written.word)) stray ??= token;
    if (cursor.at === at) cursor.at++;
  }
  const stated = stretches.flatMap(({ duration, role }) =>
    duration === undefined ? [] : [{ duration, role: role ?? 'total' }],
  );
  return { stated, ...(stray && { stray }) };
}
