/**
 * What is told of how others did it is no step, unless the recipe goes on to do as they did. The recipes are invented; what may stand warm for
 * how long is FDA Food Code 2022, 3-501.16 and 3-501.19.
 */
import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const SAFETY = new Set(['safety', 'formula']);

const loud = (...steps: readonly string[]): string[] =>
  open(
    `recipe Test\n  2 kg shin of beef\n  2 l water\n  do Simmer the beef in the water for 4 h.\n${steps.map((step) => `  do ${step}\n`).join('')}`,
  ).findings.open.flatMap(({ code, severity, check }) =>
    SAFETY.has(check.family) && (severity === 'error' || severity === 'warning') ? [code] : [],
  );

const COLD = 'Cool the pot over ice to 4 C within 2 h and put it in the fridge.';

describe('told of others', () => {
  test.each([
    `Our grandmothers let the pot stand warm from one week to the next. ${COLD}`,
    `The hotel I trained in left it on the bench till evening. ${COLD}`,
    `${COLD} My aunt left hers on the dresser for a week. Eat yours in 3 days.`,
    `The old cook left the pot on the bench overnight. Half the street was sick for it. ${COLD}`,
    `I used to leave mine to cool on the stove overnight. Now: ${COLD}`,
    `${COLD} Don't clap the lid on and push it to the back of the stove overnight like my flatmate did.`,
    `${COLD} Never put the lid on and leave it on the bench overnight as the neighbour does.`,
    `${COLD} The shelf on the porch was abolished.`,
    `The old book says to leave the pot on the doorstep overnight. I do not. ${COLD}`,
    `Mrs Tarn's receipt would have it keep till Sunday upon a stone shelf. I do not: ${COLD}`,
    `Cousin Nell keeps hers on the porch for a week. Cousin Nell has also had a bad night. ${COLD}`,
  ])('%s', (step) => {
    expect(loud(step)).toEqual([]);
  });
});

describe('told of others, and done here', () => {
  test.each([
    'Our grandmothers let the pot stand warm from one week to the next, and so do we.',
    'The hotel I trained in left it on the bench till evening, and I do the same.',
    'My aunt left hers on the dresser for a week. Leave yours on the dresser for a week too.',
    'The old cook left the pot on the bench overnight. Nobody was ever sick for it.',
    'My gran always left the pot on the bench overnight.',
    'Put the lid on and push it to the back of the stove till morning, like my flatmate did.',
    'We do it as my flatmate did: lid on and left on the bench overnight.',
    'Do not stir it. Leave it on the bench overnight as my gran does.',
    'Do not fuss: leave it on the bench overnight the way my mother did.',
    'The fridge was retired. The pot stands on the sideboard overnight.',
    'The cool box was retired, so the pot sits on the bench overnight.',
    "Mrs Tarn's receipt would have it stand till the morrow upon a stone shelf. I do the same.",
    'Uncle Arvid leaves his on the jetty overnight, and so do we.',
    'Leave it to cool on the stove overnight. Now put it in the fridge.',
  ])('%s', (step) => {
    expect(loud(step)).toContain('cooling-too-slow');
  });
});
