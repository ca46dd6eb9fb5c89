/**
 * Knows which lines of the list are read and yet say two things, or none: each with what to write instead.
 * Refuses to know foods.
 */
import { isEitherFraction } from '../measure/kitchen-fraction.ts';
import { dimensionOf } from '../measure/unit.ts';
import { takenBy } from './takes.ts';
import type { IngredientNode, MeasuredNode, SyntaxFault } from './tree.ts';

/** Adds the first fault that the item has. */
export function itemFaults(line: string, item: IngredientNode, faults: SyntaxFault[]): void {
  if (faults.length > 0) return;
  const { amount, name } = item;
  if (amount?.kind === 'measured') {
    const fault =
      asTime(line, amount) ?? asThousands(line, amount) ?? asFraction(line, amount) ?? asMixed(line, amount);
    if (fault !== undefined) {
      faults.push(fault);
      return;
    }
    if (name !== undefined && beginsWithOr(name.text)) {
      if (/^or (?:so|thereabouts|nearly|more|less)\b/i.test(name.text)) {
        const detail = `write \`about\` before it: \`about ${line.slice(amount.start, amount.end)}\``;
        faults.push({ code: 'bad-number', start: name.start, end: name.end, detail });
        return;
      }
      const unit = amount.unit === undefined ? '' : ` ${line.slice(amount.unit.start, amount.unit.end)}`;
      const detail = `write a range with its unit behind it: \`1-2${unit} butter\``;
      faults.push({ code: 'bad-number', start: name.start, end: name.end, detail });
      return;
    }
  }
  for (const said of [name, item.preparation]) {
    const weight = said && AS_HEAVY.exec(said.text);
    if (said === undefined || !weight) continue;
    const detail = 'weigh it, and write the weight on a line of its own: `150 g butter`';
    faults.push({ code: 'not-a-statement', start: said.start + weight.index, end: said.end, detail });
    return;
  }
  const taken = item.takes?.find(({ text }) => takenBy(text) === undefined);
  if (taken !== undefined) {
    const detail = `say on a line of its own how much of \`${taken.text}\` it is: nothing says what a whole one gives of that`;
    faults.push({ code: 'missing-amount', start: taken.start, end: taken.end, detail });
    return;
  }
  // `whites of 2 and yolks of 4 eggs`
  const nameless = name === undefined || /^(?:and|&)(?: |$)/i.test(name.text);
  if (item.takes !== undefined && nameless && amount !== undefined)
    faults.push({
      code: 'missing-name',
      start: amount.start,
      end: amount.end,
      detail: 'say of what, each on a line of its own: `juice of 2 lemons`',
    });
}

/** Most names begin with another letter. */
const beginsWithOr = (name: string): boolean => (name.charCodeAt(0) | 32) === 111 && /^or\b/i.test(name);

/** `3 eggs, and their weight in butter`. */
const AS_HEAVY =
  // Letters of all scripts would take longer to make a pattern of than a list to read.
  /\b(?:weight in(?= [a-z\u00c0-\u024f])|(?:the same|an? equal|equal|same) (?:weight|quantity|amount|measure)s? of|the same of|as (?:many|much)(?= (?!as\b)[a-z\u00c0-\u024f]))/i;

/** No food is measured in hours or degrees. */
function asTime(line: string, { unit, start, end }: MeasuredNode): SyntaxFault | undefined {
  if (unit === undefined) return undefined;
  const dimension = dimensionOf(unit.symbol);
  if (dimension !== 'temperature' && dimension !== 'time') return undefined;
  const what = dimension === 'time' ? 'a time' : 'a temperature';
  const detail = `\`${line.slice(start, end)}\` is ${what}: write how much of the food, or start a step with \`do\``;
  return { code: 'missing-amount', start, end, detail };
}

/** `1.000` */
const SHORTEST_THOUSANDS = 5;
const TO_WEIGH: ReadonlySet<string> = new Set(['mg', 'g', 'ml']);

/** `1.000 g` may be one gram or a thousand. */
function asThousands(line: string, { low, unit }: MeasuredNode): SyntaxFault | undefined {
  if (unit === undefined || low.end - low.start < SHORTEST_THOUSANDS || !TO_WEIGH.has(unit.symbol) || low.value < 1)
    return undefined;
  const written = line.slice(low.start, low.end);
  const [, whole, thousandths] = /^(\d{1,3})\.(\d{3})$/.exec(written) ?? [];
  if (whole === undefined || thousandths === undefined) return undefined;
  const point = `${whole}.${thousandths}`.replace(/\.?0+$/, '');
  const either = [`${point} ${unit.symbol}`, `${whole}${thousandths} ${unit.symbol}`];
  const detail = `is it \`${either.join('` or `')}\`? write the one that is meant`;
  return { code: 'decimal-comma', start: low.start, end: unit.end, detail, either };
}

/** `1-3 cup` may be a third, its stroke set as a hyphen, or one to three. */
function asFraction(line: string, { low, high, unit }: MeasuredNode): SyntaxFault | undefined {
  if (unit === undefined || high === undefined) return undefined;
  const [of, from, to] = [unit, low, high].map(({ start, end }) => line.slice(start, end)) as [string, string, string];
  if (!/^\d[-–]\d$/.test(line.slice(low.start, high.end)) || !isEitherFraction(from, to, of)) return undefined;
  const either = [`${from}/${to} ${of}`, `${from} to ${to} ${of}s`];
  const detail = `is it \`${either.join('` or `')}\`? write the one that is meant`;
  return { code: 'bad-number', start: low.start, end: unit.end, detail, either };
}

/** `2 1/2-oz cans`: two of a half ounce, or of two and a half. */
function asMixed(line: string, { each, counted, low, start, end }: MeasuredNode): SyntaxFault | undefined {
  if (each === undefined || counted === undefined || low.style !== 'implied' || !/s$/i.test(counted.text))
    return undefined;
  const written = line.slice(each.low.start, each.low.end);
  const [, whole, part] = /^(\d+) +(\S+)$/.exec(written) ?? [];
  if (whole === undefined || part === undefined) return undefined;
  const unit = each.unit === undefined ? '' : line.slice(each.unit.start, each.unit.end);
  const detail = `write \`${whole} x ${part} ${unit} ${counted.text}\`, or how many there are of \`${written} ${unit}\``;
  return { code: 'bad-number', start, end, detail };
}
