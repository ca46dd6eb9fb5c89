/**
 * What a program imports: `import { check, report, scale } from 'quern'`. The same work as the command line, read only, with nothing sent
 * anywhere; each answer has the shape that `server/schemas` describes.
 */
import { today } from './host/clock.ts';
import { nodeIo } from './host/node.ts';
import { answersFrom } from './programs/answers.ts';

export type * from './cli/formats/shapes.ts';
export type { Asking, Plan, Recipe, Scale } from './programs/asking.ts';

export const { check, report, scale, convert, weigh, diff, plan, format, publish, explain } = answersFrom({
  disk: (printed) => ({ ...nodeIo(), ...printed }),
  today,
});
