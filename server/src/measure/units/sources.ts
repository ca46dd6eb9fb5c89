/**
 * Knows where the sizes of units are published, as several tables have it.
 */
export const NIST = 'NIST SP 811 (2008), appendix B; NIST HB 44, appendix C';
export const UK =
  'UK Weights and Measures Act 1985, schedule 1, and Canadian Weights and Measures Act (R.S.C. 1985, c. W-6), schedule II: gallon 4.54609 l';
export const PRACTICE = 'common practice, no source';

/** ml. */
export const US_TSP = 4.92892159375;
