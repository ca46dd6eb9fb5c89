/**
 * Knows how printed prose becomes steps: one sentence each, with temperatures and times as the notation reads them.
 * Refuses to reword anything else.
 */
import { numberOfWord } from '../../measure/number-words.ts';
import { readLine } from '../../notation/statements.ts';
import { withoutMarks } from './marks.ts';

/** The sentences of a paragraph as `do` lines, without indent; a sentence that cannot be read whole comes back in `missed`. */
export function readSteps(printed: string): readonly { readonly line?: string; readonly printed: string }[] {
  return sentencesOf(printed).map((sentence) => {
    const line = `do ${figures(escaped(sentence))}`;
    const { statement, faults } = readLine(line);
    if (statement.kind === 'step' && faults.length === 0) return { line, printed: sentence };
    const plain = `do ${figures(sentence.replace(/[[\]#\\]/g, ' '))}`;
    const again = readLine(plain);
    return again.statement.kind === 'step' && again.faults.length === 0
      ? { line: plain, printed: sentence }
      : { printed: sentence };
  });
}

/** Characters that the notation gives a meaning. */
const escaped = (text: string): string => text.replace(/\\/g, ' ').replace(/[[\]]/g, '').replace(/#/g, '\\#');

const NO_END =
  /(?:(?<![°º˚] ?)\b(?:oz|ozs|lb|lbs|tsp|tbsp|approx|in|no|pt|qt|gal|deg|c|t|tbs|teasp|St|Mrs|Mr|Dr|pkg|temp|fahr|e\.g|i\.e)\.|\b[ABDEG-Z]\.|^\s*\d+\.)$/i;

/** Before a number these are not over: `1 hr. 30 min`; before a capital they are. */
const TIME_WORD = /\b(?:mins?|hrs?|secs?)\.$/i;

function sentencesOf(printed: string): string[] {
  const text = withoutMarks(printed).replace(/^(?:step )?\d+\s*[.):]\s+(?=\S)/i, '');
  const sentences: string[] = [];
  let from = 0;
  for (const match of text.matchAll(/[.!?]["')]?\s+(?=["'(]?[A-Z0-9])/g)) {
    const end = match.index + match[0].trimEnd().length;
    const before = text.slice(Math.max(from, match.index - 12), match.index + 1);
    if (NO_END.test(before) || (TIME_WORD.test(before) && /^\d/.test(text.slice(match.index + match[0].length))))
      continue;
    sentences.push(text.slice(from, end).trim());
    from = end;
  }
  sentences.push(text.slice(from).trim());
  return sentences.filter((s) => /\p{L}/u.test(s)).map((s) => (/[.!?)"']$/.test(s) ? s : `${s}.`));
}

const HOURS = '(?:hours?|hrs?\\.?)';

/** A temperature with its degree sign; a point behind the scale is its own unless a capital follows or the line ends. */
const inDegrees = (names: string, letter: string): RegExp =>
  new RegExp(
    String.raw`\b(\d+(?:\s*(?:-|–|to)\s*\d+)?)\s*(?:°|º|˚|[Dd]eg\.?|[Dd]egrees?|DEGREES?)\s*(?:${names}|${letter}(?:\.(?= [a-z0-9(]))?)(?![A-Za-z])`,
    'g',
  );

/** Heat and time in the notation's own figures: one scale, `30 min` for half an hour. */
function figures(sentence: string): string {
  return (
    sentence
      .replace(inDegrees('[Ff]ahrenheit|Fahr\\.', '[Ff]'), '$1 F')
      .replace(inDegrees('[Cc]elsius|[Cc]entigrade', '[Cc]'), '$1 C')
      .replace(/\b(gas mark|gas|mark) (\d)\b/gi, 'gas $2')
      // The same heat in another scale, behind the first.
      .replace(/(\d ?[CF]) ?fan\b/g, '$1 fan')
      .replace(
        /(\b\d+ ?[CF](?: fan)?)\s*[,;]?\s*(?:\(|\/|or )\s*(?:\d+(?:\s*(?:-|–|to)\s*\d+)? ?[CF](?: fan)?|gas \d)(?:\s*[/,;]\s*(?:\d+ ?[CF](?: fan)?|gas \d))*(?:\s*\))?/g,
        '$1',
      )
      .replace(new RegExp(`\\ban ${HOURS} and a half\\b`, 'gi'), '1 h 30 min')
      .replace(
        new RegExp(`\\b(one|two|three|four|five|six|\\d+) and (?:a half|one-half|1/2) ${HOURS}`, 'gi'),
        (_, n: string) => `${numberOf(n)} h 30 min`,
      )
      .replace(/\bthree[- ](?:quarters|fourths) of an hour\b/gi, '45 min')
      .replace(/\b(?:a |one[- ])?half (?:an|a|of an) hour\b|\bhalf[- ]an[- ]hour\b|\bone-half hour\b/gi, '30 min')
      .replace(/\b(?:a|one) quarter of an hour\b/gi, '15 min')
      .replace(/\b(?:an|one) hour\b/gi, '1 h')
      .replace(
        /\b(two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|forty|fifty) (?=(?:minutes?|min|hours?|days?|seconds?)\b)/gi,
        (_, n: string) => `${numberOf(n)} `,
      )
      .replace(
        /\b(two|three|four|five|ten|fifteen|twenty|thirty|forty) (to|or) (\w+) (?=(?:minutes?|min|hours?|days?)\b)/gi,
        (all, a: string, _: string, b: string) => {
          const high = numberOf(b);
          return high === b && !/^\d+$/.test(b) ? all : `${numberOf(a)} to ${high} `;
        },
      )
      .replace(/\b(\d+) or (\d+) (?=(?:minutes?|hours?|days?)\b)/g, '$1 to $2 ')
      .replace(/\bone minute\b/gi, '1 min')
  );
}

const numberOf = (word: string): string => String(numberOfWord(word) ?? word);
