/** Every declared formula of axes, for the index of formulas. */
import type { Formula } from '../../../kernel/index.ts';
import * as load from './axis-load.ts';
import * as torque from './axis-torque.ts';
import * as benchAxis from './bench-axis.ts';
import * as beltStretch from './belt-stretch.ts';
import * as beltTension from './belt-tension.ts';
import * as drum from './drum.ts';
import * as drumRoom from './drum-room.ts';
import * as pulley from './pulley.ts';
import * as sCurve from './s-curve.ts';
import * as screw from './screw.ts';
import * as screwLimits from './screw-limits.ts';
import * as slack from './slack.ts';
import * as trapezoid from './trapezoid.ts';
import * as unpowered from './unpowered.ts';

export const axisFormulas: readonly Formula[] = [
  trapezoid,
  sCurve,
  load,
  torque,
  pulley,
  beltTension,
  beltStretch,
  drum,
  drumRoom,
  slack,
  unpowered,
  screw,
  screwLimits,
  benchAxis,
].flatMap((file) => Object.values(file) as unknown as readonly Formula[]);
