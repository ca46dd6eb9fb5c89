/** Words of a step that keep food cold; not `chilled`, which may be how it is served. */
export const KEPT_COLD = ['fridge', 'refrigerator', 'refrigerate', 'chill', 'freeze', 'freezer', 'frozen'] as const;
