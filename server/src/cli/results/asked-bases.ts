/**
 * Knows what a file asked of the files around it while it was checked, and whether it would be told the same again.
 * Refuses to know where they lie.
 */
import type { Bases } from '../../workspace/ports.ts';

/** One question, with what it was asked of, and the answer's sum. */
export type Asked = readonly [question: Question, from: string, name: string, answer: string];

type Question = 'load' | 'why' | 'near' | 'picture' | 'pictureNames' | 'pathOf';

type Ask = (from: string, name: string) => unknown;

/** The bases, which write down each question once. */
export function writingDown(
  bases: Bases,
  digest: (text: string) => string,
): { readonly bases: Bases; readonly asked: () => readonly Asked[] } {
  const asked = new Map<string, Asked>();
  const noted =
    (question: Question, ask: Ask): Ask =>
    (from, name) => {
      const answer = ask(from, name);
      const key = JSON.stringify([question, from, name]);
      if (!asked.has(key)) asked.set(key, [question, from, name, sumOf(answer, digest)]);
      return answer;
    };
  return {
    bases: Object.fromEntries(
      questionsOf(bases).map(([question, ask]) => [question, noted(question, ask)]),
    ) as unknown as Bases,
    asked: () => [...asked.values()],
  };
}

/** Whether every question has the answer that it had. */
export function isToldTheSame(asked: readonly Asked[], bases: Bases, digest: (text: string) => string): boolean {
  const questions = new Map(questionsOf(bases));
  return asked.every(([question, from, name, answer]) => {
    const ask = questions.get(question);
    return ask !== undefined && sumOf(ask(from, name), digest) === answer;
  });
}

/** All that a file may ask; a base that another kind of house gives more of has its questions here. */
function questionsOf(bases: Bases): readonly (readonly [Question, Ask])[] {
  const { load, why, near, picture, pictureNames, pathOf } = bases;
  const all: readonly (readonly [Question, Ask | undefined])[] = [
    ['load', load],
    ['why', why],
    ['near', near],
    ['picture', picture],
    ['pictureNames', pictureNames],
    ['pathOf', pathOf],
  ];
  return all.flatMap(([question, ask]) => (ask === undefined ? [] : [[question, ask] as const]));
}

const sumOf = (answer: unknown, digest: (text: string) => string): string =>
  answer === undefined ? '' : digest(JSON.stringify(answer));
