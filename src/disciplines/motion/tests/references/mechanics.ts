/** Belts, screws, drums and travels: values that others have worked out. */
import type { Reference } from './reference.ts';

const INCH = 0.0254;
const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;

/** Trapezoids: distance, speed asked for, acceleration → time. */
export const trapezoids: readonly Reference<{ distance: number; asked: number; acceleration: number }>[] = [
  {
    kind: 'independent',
    source: 'independent-computation',
    given: { distance: 0.5, asked: 0.25, acceleration: 1 },
    gives: 2.25,
    within: 0.005,
  },
  {
    kind: 'independent',
    source: 'independent-computation',
    given: { distance: 0.05, asked: 0.25, acceleration: 1 },
    gives: 0.44721,
    within: 5e-6,
  },
  {
    kind: 'published-secondary',
    source: 'profile-by-thirds',
    given: { distance: 4, asked: 6, acceleration: 18 },
    gives: 1,
    within: 0.0005,
  },
];

/** S-curves: → time. */
export const sCurves: readonly Reference<{ distance: number; asked: number; acceleration: number; jerk: number }>[] = [
  {
    kind: 'independent',
    source: 'independent-computation',
    given: { distance: 0.5, asked: 0.25, acceleration: 1, jerk: 10 },
    gives: 2.35,
    within: 0.005,
  },
  {
    kind: 'published-secondary',
    source: 'profile-by-thirds',
    given: { distance: 4, asked: 6, acceleration: 27, jerk: 243 },
    gives: 1,
    within: 0.0005,
  },
];

/** Length of one S-curve ramp. The formula printed beside this table does not give its values; the kinematics do. */
export const sCurveRamps: readonly Reference<{ speed: number; acceleration: number; jerk: number }>[] = [
  4000, 8000,
].map((jerk) => ({
  kind: 'published-secondary',
  source: 's-curve-ramp-distance',
  given: { speed: 10 * INCH, acceleration: 200 * INCH, jerk: jerk * INCH },
  gives: (jerk === 4000 ? 0.5 : 0.375) * INCH,
  within: (jerk === 4000 ? 0.05 : 0.0005) * INCH,
}));

/** Screw jack: raising torque of a square thread. */
export const screwJack = {
  kind: 'published',
  source: 'screw-statics',
  given: { force: 10_000 * POUND_FORCE, lead: 0.5 * INCH, mean: 2 * INCH, friction: 0.2 },
  gives: 2840 * POUND_FORCE * INCH,
  within: 5 * POUND_FORCE * INCH,
} as const;

/** Half of the buckling force is this factor · 10⁴ · d⁴/L², in N with d and L in mm. */
export const bucklingFactors: readonly Reference<{ ends: number }>[] = [
  // 1.2475 with the modulus of the source: its 1.3 was rounded twice, by way of 1.25.
  { kind: 'published', source: 'screw-buckling', given: { ends: 0.25 }, gives: 1.3, within: 0.055 },
  { kind: 'published', source: 'screw-buckling', given: { ends: 2 }, gives: 10, within: 0.5 },
  { kind: 'published', source: 'screw-buckling', given: { ends: 4 }, gives: 20, within: 0.5 },
];

/** Critical speed over C·d/L², in rpm·inch. */
export const criticalSpeedFactor: Reference<Record<string, never>> = {
  kind: 'published',
  source: 'screw-critical-speed',
  given: {},
  gives: 4.76e6,
  // The source does not say which steel; 0.01·10⁶ would be half a digit, its steel differs from ours by 0.2 %.
  within: 0.01e6,
};

/** Distance of the fairlead in half widths, rounded up to whole ones by the sources. */
export const fleetDistances: readonly Reference<{ degrees: number }>[] = [
  { kind: 'published-secondary', source: 'fleet-angle-distance', given: { degrees: 1.5 }, gives: 38, within: 1 },
  { kind: 'published-secondary', source: 'fleet-angle-distance', given: { degrees: 2 }, gives: 29, within: 1 },
  { kind: 'published', source: 'fleet-angle-limits', given: { degrees: 3 }, gives: 19, within: 1 },
  { kind: 'published', source: 'fleet-angle-limits', given: { degrees: 5 }, gives: 12, within: 1 },
];

/** A drum: barrel and rope diameter, width, layers → line that it holds. */
export const drumOf940Feet: Reference<{ drum: number; line: number; width: number; layers: number }> = {
  kind: 'published-secondary',
  source: 'drum-capacity-example',
  given: { drum: 10 * INCH, line: 0.5 * INCH, width: 12 * INCH, layers: 10 },
  gives: 940 * 12 * INCH,
  within: 5 * 12 * INCH,
};

/** Rack and pinion: 5 lb at 1.5 in, 15 ft/s. */
export const rackExample = {
  kind: 'published',
  source: 'rack-sizing-example',
  mass: 5 * POUND,
  radius: 1.5 * INCH,
  speed: 15 * 12 * INCH,
  inertia: 11.25 * POUND * INCH ** 2,
  inertiaWithin: 0.005 * POUND * INCH ** 2,
  revolutions: 19.1,
  revolutionsWithin: 0.05,
  // Printed as three significant digits: 200 × the printed 19.1.
  steps: 3820,
  stepsWithin: 5,
} as const;

/** Belt axis: 2 kg, 2 m/s², μ = 0.02, 20 teeth of 2 mm. */
export const beltAxis = {
  kind: 'independent',
  source: 'independent-computation',
  mass: 2,
  acceleration: 2,
  resistance: 0.02 * 2 * 9.80665,
  teeth: 20,
  pitch: 0.002,
  radius: 6.3662e-3,
  radiusWithin: 5e-8,
  force: 4.3923,
  forceWithin: 5e-5,
  torque: 0.027962,
  torqueWithin: 5e-7,
  torqueAt95: 0.029434,
  torqueAt95Within: 5e-7,
  inertia: 8.1057e-5,
  inertiaWithin: 5e-10,
  ratio: 2.7,
  ratioWithin: 0.005,
} as const;

/** Hoist: 0.6 kg on a drum of 6.5 mm radius. */
export const hoist = {
  kind: 'independent',
  source: 'independent-computation',
  mass: 0.6,
  radius: 6.5e-3,
  standing: 0.038246,
  lifting: 0.042146,
  within: 5e-7,
} as const;

/** Torques for times → root mean square. */
export const rms = {
  kind: 'independent',
  source: 'independent-computation',
  torques: [0.05, 0.015, -0.02, 0],
  times: [0.25, 1.75, 0.25, 1],
  gives: 0.018553,
  within: 5e-7,
} as const;

/** Toothed belts of 2 mm pitch. */
export const belts = {
  kind: 'independent',
  source: 'independent-computation',
  length2020: 1.04,
  length2020Within: 5e-5,
  length2060: 0.281623,
  length2060Within: 5e-7,
  wrap1660: 153.002,
  wrap1660Within: 5e-4,
  mesh1660: 6.8,
  mesh1660Within: 5e-3,
  noteTension: 19.354,
  noteTensionWithin: 5e-4,
} as const;
