/** The checks of axes, belts, hoists and screws, by code. */
import type { AxisCheck } from './axes.ts';
import { axisResonance } from './axis-resonance.ts';
import { beltOvertight } from './belt-overtight.ts';
import { beltTaut } from './belt-taut.ts';
import { beltTension } from './belt-tension.ts';
import { bendingRatio } from './bending-ratio.ts';
import { deadTurns } from './dead-turns.ts';
import { drumWidth } from './drum-width.ts';
import { flange } from './flange.ts';
import { fleetAngle } from './fleet-angle.ts';
import { keeperGap } from './keeper-gap.ts';
import { landingEnergy } from './landing-energy.ts';
import { looseTurns } from './loose-turns.ts';
import { lostMotion } from './lost-motion.ts';
import { overrunOnSlack } from './overrun-on-slack.ts';
import { keepsItsPlace } from './keeps-its-place.ts';
import { overtravel } from './overtravel.ts';
import { racking } from './racking.ts';
import { relaxing } from './relaxing.ts';
import { screwBuckling } from './screw-buckling.ts';
import { screwWhip } from './screw-whip.ts';
import { shortedBrake } from './shorted-brake.ts';
import { squaring } from './squaring.ts';
import { screwStaysUp, staysUp, staysUpIdle } from './stays-up.ts';
import { teethInMesh } from './teeth-in-mesh.ts';

export const axisChecks: readonly AxisCheck[] = [
  beltTension,
  teethInMesh,
  beltTaut,
  beltOvertight,
  lostMotion,
  axisResonance,
  staysUp,
  staysUpIdle,
  shortedBrake,
  landingEnergy,
  drumWidth,
  deadTurns,
  flange,
  keeperGap,
  fleetAngle,
  bendingRatio,
  overrunOnSlack,
  looseTurns,
  squaring,
  relaxing,
  racking,
  screwStaysUp,
  screwWhip,
  screwBuckling,
  overtravel,
  keepsItsPlace,
];
