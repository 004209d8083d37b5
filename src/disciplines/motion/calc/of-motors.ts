/** Every declared formula of motors and drivers, for the index of formulas. */
import type { Formula } from '../../../kernel/index.ts';
import * as backEmf from './back-emf.ts';
import * as benchMotor from './bench-motor.ts';
import * as drive from './drive.ts';
import * as midBand from './mid-band.ts';
import * as pullOut from './pull-out.ts';
import * as rating from './rating.ts';
import * as resonance from './resonance.ts';
import * as standstill from './standstill.ts';
import * as winding from './winding.ts';

export const motorFormulas: readonly Formula[] = [
  winding,
  rating,
  drive,
  pullOut,
  standstill,
  resonance,
  midBand,
  backEmf,
  benchMotor,
].flatMap((file) => Object.values(file) as unknown as readonly Formula[]);
