/** Gathers the numbers of the figures, in the author's units. */
import { need } from '../../../contract/index.ts';
import { constant, type Value } from '../../../kernel/index.ts';
import { axisOf, counted, groupOf, layersOf, layOf } from '../calc/axis-book.ts';
import { backTorque } from '../calc/axis-facts.ts';
import { phaseLoopResistance } from '../calc/drive.ts';
import { turnsOnDrum } from '../calc/drum.ts';
import { driveOf, motorOf } from '../calc/motor-facts.ts';
import { brakingTorque, shortedTorque, sinkingSpeed } from '../calc/unpowered.ts';
import { capacity, demand, effectiveRadius, type Capacity } from '../facts.ts';
import type { Drum } from '../figures/drum.ts';
import { scaleOf } from '../figures/scale.ts';
import type { Sinking } from '../figures/sinking.ts';
import type { Trajectory } from '../figures/trajectory.ts';
import type { Sheet } from './words.ts';

const CURVE = 48;
const SURE = 7;

const turning = (ω: number): Value => constant(ω, 'angular-speed', 'speed along the figure');

/** A speed by which the capacity has visibly fallen, but within sight of the speed that is asked for. */
const farEnough = (at: Capacity['at'], fastest: number): number => {
  const still = at(turning(0)).lower.number;
  let top = fastest * 1.5;
  while (top < fastest * 6 && at(turning(top)).lower.number > still / 2) top *= 1.25;
  return top;
};

/** Capacity and demand of one motor of one axis. */
export const trajectoryOf = (sheet: Sheet, axis: string, motor: string): Trajectory => {
  const points = () => sheet.get(demand, axis).points.filter((point) => point.motor === motor);
  const { at } = sheet.get(capacity, motor);
  const fastest = Math.max(...points().map(({ motorSpeed }) => motorSpeed.number));
  const top = farEnough(at, fastest);
  const ω = Array.from({ length: CURVE + 1 }, (_, k) => (top * k) / CURVE);
  const band = ω.map((speed) => at(turning(speed)));
  const torque = scaleOf(sheet, 'torque', Math.max(...band.map(({ upper }) => upper.number)));
  const speed = scaleOf(sheet, 'angular-speed', top);
  const ends = points().map((_, k) => sheet.ends(() => points()[k]!.torque));
  const hardest = ends.reduce((best, one, k) => (one.high > ends[best]!.high ? k : best), 0);
  const start = points()[0]!;
  const place = ({ motorSpeed, torque: T }: { motorSpeed: Value; torque: Value }) =>
    [speed.of(motorSpeed.number), torque.of(T.number)] as const;
  return {
    axis,
    motor,
    speedUnit: speed.unit,
    torqueUnit: torque.unit,
    speeds: ω.map(speed.of),
    lower: band.map(({ lower }) => torque.of(lower.number)),
    upper: band.map(({ upper }) => torque.of(upper.number)),
    sure: Array.from({ length: SURE }, (_, k) => (top * k) / (SURE - 1)).map((x) => [
      speed.of(x),
      torque.of(sheet.ends(() => sheet.get(capacity, motor).at(turning(x)).lower).low),
    ]),
    // From rest up the ramp and on at speed; what the way down the other ramp asks is less.
    demand: [[0, torque.of(start.torque.number)], ...points().map(place)],
    hardest: {
      at: place(points()[hardest]!),
      torque: [torque.of(ends[hardest]!.low), torque.of(ends[hardest]!.high)],
    },
  };
};

/** The drum of a hoist. */
export const drumOf = (sheet: Sheet, name: string): Drum => {
  const axis = axisOf(sheet, name);
  const drum = need(groupOf(axis, 'drum'), 'diameter', 'width', 'flange');
  const { diameter: line } = need(groupOf(axis, 'line'), 'diameter');
  const dead = counted(groupOf(axis, 'drum'), 'dead-turns');
  const turns = turnsOnDrum.work({ travel: need(axis, 'travel').travel, drum: drum.diameter, line, dead });
  const { of } = scaleOf(sheet, 'length', drum.width.number);
  return {
    axis: name,
    diameter: of(drum.diameter.number),
    width: of(drum.width.number),
    flange: of(drum.flange.number),
    line: of(line.number),
    lay: of(layOf(axis).number),
    layers: layersOf(axis).number,
    turns: turns.number,
    dead: dead.number,
    texts: {
      diameter: sheet.show(drum.diameter),
      width: sheet.show(drum.width),
      flange: sheet.show(drum.flange),
      line: sheet.show(line),
    },
  };
};

/** How a raised load sinks on shorted windings, at the stated middle of every range. */
export const sinkingOf = (sheet: Sheet, axis: string, motor: string): Sinking => {
  const { torqueConstant, teeth, phaseInductance, phaseResistance } = motorOf(sheet, motor);
  const winding = { constant: torqueConstant, teeth, inductance: phaseInductance };
  const resistance = phaseLoopResistance.work({
    winding: phaseResistance,
    added: driveOf(sheet, motor).loopResistance,
  });
  const radius = sheet.get(effectiveRadius, axis);
  const load = backTorque(sheet, axis);
  const peak = resistance.number / (teeth.number * phaseInductance.number);
  const top = peak * 1.5;
  const speed = scaleOf(sheet, 'speed', top * radius.number);
  const torque = scaleOf(sheet, 'torque', shortedTorque.work(winding).number);
  const sinks = sheet.attempt(() => sinkingSpeed.work({ ...winding, torque: load, resistance, radius }).number);
  return {
    axis,
    motor,
    speedUnit: speed.unit,
    torqueUnit: torque.unit,
    braking: Array.from({ length: CURVE + 1 }, (_, k) => (top * k) / CURVE).map((ω) => [
      speed.of(ω * radius.number),
      torque.of(brakingTorque.work({ ...winding, speed: turning(ω), resistance }).number),
    ]),
    load: torque.of(load.number),
    ...(sinks.ok ? { sinks: [speed.of(sinks.value), torque.of(load.number)] as const } : {}),
  };
};
