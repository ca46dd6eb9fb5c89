import { picturesOf } from '../../recipe/pictures.ts';
import { fileName, holds, placeOf } from '../place.ts';
import type { HoverSource } from './fact.ts';

/** The picture itself, and in which words who does not see it is told what is on it. */
export const hoverPicture: HoverSource = (snapshot, { at, line, character }) => {
  const { statement } = line;
  if (statement.kind !== 'picture' || !holds(statement.file, character)) return undefined;
  const shown = picturesOf(snapshot.outline).find((picture) => picture.at === at);
  const file = snapshot.picture(statement.file.text);
  if (shown === undefined || file?.kind !== 'there') return undefined;
  const own = statement.words !== undefined;
  return {
    at: placeOf(at, statement.file),
    title: fileName(file.path),
    subtitle: SHOWS[shown.of.kind],
    facts: [
      { kind: 'picture', path: file.path, alt: shown.alt },
      {
        kind: 'text',
        text: own
          ? `Who does not see it is told: ${shown.alt}`
          : `Who does not see it is told: ${shown.alt}. Words of its own stand behind a comma.`,
      },
    ],
  };
};

const SHOWS = { dish: 'the dish', step: 'the step above', trial: 'what a trial gave' } as const;
