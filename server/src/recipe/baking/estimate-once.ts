/** Knows the estimate of a load, worked out once for the same figures. Refuses to know recipes. */
import { estimate, type HeatEstimate, type Load } from '../../heat/estimate.ts';
import { heatKinds } from '../../heat/kinds.ts';
import { onceByText } from '../../measure/once.ts';

/** The same again for the same figures, so that an edit of something else costs nothing. */
export const estimateOnce = (load: Load): HeatEstimate | undefined =>
  byFigures(JSON.stringify({ ...load, kind: load.kind.name }));

const byFigures = onceByText(
  (figures: string): HeatEstimate | undefined => {
    const load = JSON.parse(figures) as Omit<Load, 'kind'> & { readonly kind: string };
    const kind = heatKinds().get(load.kind);
    return kind === undefined ? undefined : estimate({ ...load, kind });
  },
  { texts: 500, letters: 2000 },
);
