/** Gathers what the studies found for the figures: every point of it was asked of the whole machine. */
import { constant, type Value } from '../../../kernel/index.ts';
import { driveOf, driverEntry, loopOf, motorOf } from '../calc/motor-facts.ts';
import { pullOut, shaftTorque } from '../calc/pull-out.ts';
import { demand } from '../facts.ts';
import { MOST_USE, type CurrentUse } from '../figures/current.ts';
import { scaleOf } from '../figures/scale.ts';
import type { SubstituteSlice } from '../figures/substitute.ts';
import { lowestCurrent } from '../studies/lowest-current.ts';
import { slice } from '../studies/slice.ts';
import { pairsOf } from './tables.ts';
import type { Sheet } from './words.ts';

const CURVE = 32;
const SLICE_POINTS = 5;

/** Share of its torque that a motor uses on an axis with its current multiplied, at the stated middle of all ranges. */
const useWith = (sheet: Sheet, axis: string, motor: string, times: number): number => {
  const { torqueConstant, phaseInductance, teeth, detentTorque, ironDrag } = motorOf(sheet, motor);
  const { peakCurrent, railVoltage } = driveOf(sheet, motor);
  const peak: Value = constant(peakCurrent.number * times, 'current', 'current along the figure');
  const electric = {
    constant: torqueConstant,
    loop: loopOf(sheet, motor),
    inductance: phaseInductance,
    teeth,
    volts: railVoltage,
  };
  const uses = sheet
    .get(demand, axis)
    .points.filter((point) => point.motor === motor)
    .map(({ torque, motorSpeed: speed }) => {
      const given = shaftTorque.work({
        magnet: pullOut.work({ ...electric, peak, speed }),
        detent: detentTorque,
        iron: ironDrag,
        speed,
      });
      return given.number > 0 ? torque.number / given.number : Infinity;
    });
  return Math.max(...uses);
};

/** How much of their torque the motors of a driver use over its current. */
export const currentUseOf = (sheet: Sheet, driver: string): CurrentUse | undefined => {
  const { current } = driverEntry(sheet, driver);
  const moved = pairsOf(sheet).filter(([, motor]) => sheet.book.motors?.[motor]?.driver === driver);
  if (current === undefined || moved.length === 0) return undefined;
  const { tried, lowest } = sheet.study(lowestCurrent, { driver });
  const { unit, of } = scaleOf(sheet, 'current', current.number);
  return {
    driver,
    unit,
    middle: Array.from({ length: CURVE }, (_, k) => (1.25 * (k + 1)) / CURVE).map((times) => [
      of(current.number * times),
      Math.min(MOST_USE * 10, Math.max(...moved.map(([axis, motor]) => useWith(sheet, axis, motor, times)))),
    ]),
    tried: tried
      .filter(({ use }) => Number.isFinite(use))
      .map(({ ampere, use, verdict }) => ({ at: [of(ampere), use], verdict })),
    now: of(current.number),
    lowestText: lowest?.text ?? '',
    ...(lowest ? { lowest: of(lowest.ampere) } : {}),
  };
};

const labels = { 'phase-inductance': 'inductance of a phase', 'holding-torque': 'holding torque' } as const;

/** A slice through the motors that would do, and what of the present one was kept. */
export const substituteOf = (
  sheet: Sheet,
  axis: string,
  motor: string,
): { readonly drawn: SubstituteSlice; readonly rest: readonly (readonly [string, string])[] } | undefined => {
  const { points, rest } = sheet.study(slice, { axis, motor, points: SLICE_POINTS });
  if (points.length === 0) return undefined;
  const facts = motorOf(sheet, motor);
  const part = sheet.book.parts?.[sheet.book.motors?.[motor]?.part ?? ''];
  const torque = scaleOf(sheet, 'torque', facts.holdingTorque.number);
  const inductance = scaleOf(sheet, 'inductance', facts.phaseInductance.number);
  const stated = (key: keyof typeof labels, of: (si: number) => number): readonly [number, number] => {
    const { low, high } = sheet.ends(() => part![key]!);
    return [of(low), of(high)];
  };
  return {
    drawn: {
      axis,
      motor,
      across: { label: labels['phase-inductance'], unit: inductance.unit },
      up: { label: labels['holding-torque'], unit: torque.unit },
      points: points.map(({ across, up, verdict }) => ({ across: inductance.of(across), up: torque.of(up), verdict })),
      now: { across: stated('phase-inductance', inductance.of), up: stated('holding-torque', torque.of) },
    },
    rest,
  };
};

/** One motor for each kind of part on each axis: others alike would give the same slice again. */
export const unlikePairs = (sheet: Sheet): readonly (readonly [axis: string, motor: string])[] => {
  const seen = new Set<string>();
  return pairsOf(sheet).filter(([axis, motor]) => {
    const { part, winding } = sheet.book.motors?.[motor] ?? {};
    const key = `${axis}/${part ?? ''}/${winding ?? ''}`;
    return !seen.has(key) && seen.add(key);
  });
};
