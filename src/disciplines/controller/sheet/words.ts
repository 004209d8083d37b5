/** What this trade's sheet is written with. */
import type { SheetContext } from '../../../contract/index.ts';
import type { ControllerBook } from '../schema.ts';
export { attempted, left, number, ranged, table, useCell } from '../../../contract/index.ts';

export type Sheet = SheetContext<ControllerBook>;
