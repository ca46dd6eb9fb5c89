/** Knows how long a load takes to cool, worked out once for the same figures. Refuses to know recipes. */
import { type Cooled, type Cooling, coolingTime } from '../../heat/cooling.ts';
import { onceByText } from '../../measure/once.ts';

/** The same again for the same figures, so that an edit of something else costs nothing. */
export const cooledOnce = (cooling: Cooling, toC: number): Cooled | undefined =>
  byFigures(JSON.stringify([cooling, toC]));

const byFigures = onceByText(
  (figures: string): Cooled | undefined => coolingTime(...(JSON.parse(figures) as [Cooling, number])),
  { texts: 500, letters: 2000 },
);
