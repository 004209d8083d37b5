/** Values for the motor formulas: where each was read, or which other method gave it. */
import { independent } from './reference.ts';

const manuals = { kind: 'published', source: 'stepper-drive-manuals' } as const;
const rule = { kind: 'published', source: 'stepper-rule-of-thumb' } as const;

/** A 57 mm motor with a round plate: 1.26 N·m, 2.8 A, 0.9 Ω, 2.5 mH, 1.8°, 300 g·cm². */
export const plate = { holding: 1.26, rated: 2.8, resistance: 0.9, inductance: 2.5e-3, teeth: 50, rotor: 3e-5 };

/** Brute force over the load angle, printed to 0.0001 N·m. At 12 V. */
export const pullOutAt12V = [
  { ...independent, rpm: 60, voltageOnly: 2.7953, limited: 1.26 },
  { ...independent, rpm: 150, voltageOnly: 1.461, limited: 1.26 },
  { ...independent, rpm: 300, voltageOnly: 0.7714, limited: 0.7714 },
  { ...independent, rpm: 600, voltageOnly: 0.3914, limited: 0.3914 },
];

/** The knee by a root finder, current square to the flux. Printed to 0.1 rpm and 1 full step/s. */
export const kneeAt12V = { ...independent, rpm: 157.3, fullSteps: 524 };

/** The printed form T/(2·I) of the RMS back-EMF constant, to 0.001 V·s/rad for the plate. */
export const rmsConstant = { ...manuals, gives: 0.225 };

/** The peak constant and the electrical time of the plate. Printed to 0.00001 N·m/A and 0.001 ms. */
export const peakConstant = { ...independent, gives: 0.3182 };
export const electricalTime = { ...independent, gives: 2.778e-3 };

/** The printed rule V/(2·L·I·n), evaluated for the plate: turns a second, 0.0001. */
export const ruleOfThumb = [
  { ...rule, volts: 12, turns: 4.2857, rpm: 257.1 },
  { ...rule, volts: 24, turns: 8.5714, rpm: 514.3 },
];

/** A worked example: 0.0032 N·m in 0.3°, 4.8·10⁻⁶ kg·m²; printed 357 rad/s, 56.8 Hz. */
export const resonanceExample = {
  kind: 'published',
  source: 'resonance-example',
  torque: 0.0032,
  angle: 0.3,
  inertia: 4.8e-6,
  radians: 357,
  hertz: 56.8,
} as const;

/** The same law at 63.0 N·m/rad by a ring-down in time, printed to 0.01 Hz. */
export const resonances = [
  { ...independent, stiffness: 63, inertia: 3e-5, hertz: 230.64 },
  { ...independent, stiffness: 63, inertia: 6e-5, hertz: 163.09 },
];

/** 0.30 of 1.26 N·m, 50 teeth; printed 0.2755° and 0.153 of a full step. */
export const lag = { ...independent, load: 0.3, degrees: 0.2755, fullSteps: 0.153 };

/** Copper heat of the plate in full steps and with the rated number taken as a peak in microsteps, to 0.01 W. */
export const copper = { ...independent, full: 14.11, micro: 7.06 };

/** An example of a data sheet, p. 9: 2.5 V at a gain of 5 across 0.25 Ω is 2 A; in microsteps 1.414 A RMS. */
export const chopperExample = {
  kind: 'published',
  source: 'drv8825-datasheet',
  volts: 2.5,
  gain: 5,
  sense: 0.25,
  peak: 2,
  rmsMilliampere: 1414,
} as const;
