/** Every feature of the server. */
import type { Feature } from '../feature.ts';
import { codeActionsFeature } from './code-actions.ts';
import { diagnosticsFeature } from './diagnostics.ts';
import { explainFeature } from './explain.ts';
import { hoverFeature } from './hover.ts';
import { scaleFeature } from './scale.ts';

export const FEATURES: readonly Feature[] = [
  diagnosticsFeature,
  hoverFeature,
  codeActionsFeature,
  scaleFeature,
  explainFeature,
];
