/** The code after `allow`: what it means, and whether it accepts anything here. */
import { CHECKS } from '../../checks/index.ts';
import { holds, placeOf, sayLine } from '../place.ts';
import type { HoverSource } from './fact.ts';

export const hoverCode: HoverSource = (snapshot, { line, at, character }) => {
  const { statement } = line;
  if (statement.kind !== 'allow' || statement.code === undefined || !holds(statement.code, character)) return undefined;
  const { text } = statement.code;
  const check = CHECKS.find((c) => c.code === text);
  if (check === undefined)
    return {
      at: placeOf(at, statement.code),
      title: text,
      subtitle: 'not a finding of this version of Quern',
      facts: [],
    };
  const accepted = snapshot.findings.accepted.filter((f) => f.code === text);
  return {
    at: placeOf(at, statement.code),
    title: text,
    subtitle: check.title,
    facts: [
      ...accepted.map((f) => ({
        kind: 'text' as const,
        text: `Accepted on ${sayLine(snapshot, f.at.line)}: ${f.said.message}`,
      })),
      { kind: 'page', code: text },
    ],
  };
};
