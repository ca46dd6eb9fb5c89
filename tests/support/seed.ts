import fc from 'fast-check';

/**
 * Properties draw the same texts in every run, so that a change is judged by what it changed. Another seed is asked for by
 * `PROPERTY_SEED=N`, a new one each time by `PROPERTY_SEED=any`.
 */
const asked = process.env.PROPERTY_SEED;
if (asked !== 'any') fc.configureGlobal({ seed: Number(asked ?? 20_261_129) });
