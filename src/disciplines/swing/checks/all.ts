/** The checks of the trade, by code. */
import { calmAfterDrive, calmAfterTravel } from './calm.ts';
import { caughtInTrials } from './caught.ts';
import type { SwingCheck } from './common.ts';
import { docks, headFits, leansIn, seldomMisses } from './dock.ts';
import { staysTaut } from './taut.ts';
import { clearOfWall } from './wall.ts';

export const checks: readonly SwingCheck[] = [
  calmAfterTravel,
  calmAfterDrive,
  clearOfWall,
  docks,
  headFits,
  leansIn,
  staysTaut,
  seldomMisses,
  caughtInTrials,
];
