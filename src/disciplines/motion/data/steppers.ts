/**
 * What a hybrid stepper of 1.8° of a frame and body length is likely to be, one coil a phase. From experience, no source:
 * wide on purpose, and every one of these is a doubt until it is measured.
 */
type Range = readonly [low: number, high: number];

export interface StepperRow {
  readonly frame: number;
  /** Body length [m]. */
  readonly body: number;
  /** Holding torque [N·m]. */
  readonly holding: Range;
  /** Rotor inertia [kg·m²]. */
  readonly rotor: Range;
  /** Copper heat at the rated current in both phases [W]. */
  readonly heat: Range;
  /** Rated currents with which such motors are wound [A]. */
  readonly rated: Range;
  /** Inductance over resistance [s]. */
  readonly time: Range;
  /** Detent torque [N·m]. */
  readonly detent: Range;
  /** Drag of the iron with speed [N·m·s/rad]. */
  readonly iron: Range;
  /** Mass [kg]. */
  readonly mass: Range;
}

const row = (
  frame: number,
  body: number,
  holding: Range,
  rotor: Range,
  heat: Range,
  rated: Range,
  time: Range,
  detent: Range,
  iron: Range,
  mass: Range,
): StepperRow => ({
  frame,
  body: body / 1000,
  holding,
  rotor: [rotor[0] / 1e7, rotor[1] / 1e7],
  heat,
  rated,
  time: [time[0] / 1000, time[1] / 1000],
  detent: [detent[0] / 1000, detent[1] / 1000],
  iron: [iron[0] / 1000, iron[1] / 1000],
  mass,
});

/** Body in mm, rotor in g·cm², heat in W, current in A, time in ms, detent in mN·m, iron in mN·m·s/rad. */
export const stepperTable: readonly StepperRow[] = [
  row(11, 32, [0.04, 0.08], [8, 12], [3, 6], [0.4, 1], [0.7, 1.6], [2, 5], [0.01, 0.08], [0.1, 0.13]),
  row(11, 51, [0.09, 0.15], [17, 22], [4, 8], [0.4, 1], [0.7, 1.6], [3, 8], [0.02, 0.12], [0.18, 0.22]),
  row(14, 34, [0.1, 0.2], [10, 16], [4, 8], [0.4, 1.2], [0.9, 2], [4, 12], [0.02, 0.15], [0.15, 0.22]),
  row(17, 34, [0.2, 0.32], [32, 42], [5, 9], [0.6, 2], [1, 2.4], [8, 20], [0.05, 0.4], [0.2, 0.26]),
  row(17, 40, [0.33, 0.48], [48, 60], [6, 11], [0.6, 2], [1.2, 2.6], [10, 25], [0.06, 0.5], [0.26, 0.32]),
  row(17, 48, [0.42, 0.62], [64, 84], [7, 12], [0.6, 2], [1.2, 2.8], [12, 30], [0.08, 0.6], [0.33, 0.4]),
  row(17, 60, [0.6, 0.85], [95, 115], [8, 14], [0.6, 2], [1.4, 3], [15, 40], [0.1, 0.8], [0.45, 0.55]),
  row(23, 41, [0.45, 0.75], [110, 150], [8, 13], [1, 4], [1.6, 3.6], [15, 45], [0.1, 1.2], [0.42, 0.5]),
  row(23, 51, [0.7, 1.1], [200, 280], [9, 15], [1, 4], [1.8, 4], [20, 60], [0.15, 1.6], [0.55, 0.65]),
  row(23, 56, [0.9, 1.3], [250, 330], [10, 16], [1, 4], [1.8, 4.2], [30, 70], [0.2, 2], [0.62, 0.75]),
  row(23, 76, [1.5, 2.1], [430, 530], [13, 20], [1, 4], [2.2, 4.8], [45, 100], [0.3, 3], [0.95, 1.15]),
  row(23, 100, [2.2, 3.1], [650, 860], [15, 25], [1, 4], [2.4, 5.2], [60, 140], [0.4, 4], [1.3, 1.6]),
  row(24, 88, [2.4, 3.3], [750, 950], [16, 26], [2, 5], [2.6, 5.6], [60, 140], [0.4, 4], [1.3, 1.6]),
  row(34, 68, [2.6, 3.8], [1000, 1500], [18, 30], [2.5, 6.5], [4, 9], [60, 180], [0.6, 5], [1.6, 2]),
  row(34, 98, [4.5, 6.2], [1800, 2300], [22, 36], [2.5, 6.5], [4.5, 10], [100, 280], [1, 8], [2.6, 3.1]),
];

/** Bodies as close as this are taken for the same [m]. */
const NEAR = 0.0045;

/** The row of that frame and about that body, if there is one. */
export const stepperRow = (frame: number, body: number): StepperRow | undefined =>
  stepperTable
    .filter((one) => one.frame === frame && Math.abs(one.body - body) <= NEAR)
    .sort((a, b) => Math.abs(a.body - body) - Math.abs(b.body - body))[0];

/** Share of critical damping after a step. */
export const ringingRange: Range = [0.02, 0.12];
/** Detent over holding torque: published as 5 to 10 %, met from 3 %. */
export const detentShare: Range = [0.03, 0.1];
