/**
 * Knows how what is looked at is read out of a message, which may hold anything: what is not understood is left out.
 */
import { type Look, VIEWS, type ViewName } from '../../publish/view/look.ts';
import { fieldIn, numberIn, textIn } from './acts/act.ts';

/** The most pieces that anybody looks at. */
const MOST_PIECES = 100_000;

export function readLook(sent: unknown): Look {
  const [makes, measures, degrees] = [numberIn(sent, 'makes'), textIn(sent, 'measures'), textIn(sent, 'degrees')];
  const serve = textIn(sent, 'serve');
  const makesOf = numberIn(sent, 'makesOf');
  const turn = readTurn(fieldIn(sent, 'turn'));
  const madeOf = readMadeOf(fieldIn(sent, 'madeOf'));
  return {
    ...(makes !== undefined && makes > 0 && makes <= MOST_PIECES && { makes }),
    ...(makesOf !== undefined && { makesOf }),
    ...((measures === 'weight-first' || measures === 'measure-first') && { measures }),
    ...((degrees === 'C' || degrees === 'F') && { degrees }),
    ...(turn !== undefined && { turn }),
    ...(madeOf !== undefined && { madeOf }),
    ...(serve !== undefined && /^\d{1,2}:\d{2}$/.test(serve) && { serve }),
    ...(fieldIn(sent, 'cooked') === true && { cooked: true as const }),
    ...(textIn(sent, 'order') === 'part' && { order: 'part' as const }),
  };
}

function readTurn(sent: unknown): Look['turn'] {
  const [part, measure, value] = [textIn(sent, 'part'), textIn(sent, 'measure'), numberIn(sent, 'value')];
  return part === undefined || measure === undefined
    ? undefined
    : { part, measure, ...(value !== undefined && { value }) };
}

function readMadeOf(sent: unknown): Look['madeOf'] {
  const [substance, part] = [textIn(sent, 'substance'), textIn(sent, 'part')];
  return substance === undefined && part === undefined
    ? undefined
    : { ...(substance !== undefined && { substance }), ...(part !== undefined && { part }) };
}

/** The view of a name; the first where there is none of it. */
export const readView = (name: string): ViewName => VIEWS.find((view) => view === name) ?? 'recipe';
