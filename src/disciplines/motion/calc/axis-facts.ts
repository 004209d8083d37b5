/** The facts of an axis, worked out from the book: profile, demand, inertia, what hangs on it. */
import { need, provide, type Provider } from '../../../contract/index.ts';
import { constant, greatest, type Value } from '../../../kernel/index.ts';
import * as facts from '../facts.ts';
import type { MotionBook, SeenAxis } from '../schema.ts';
import {
  axisOf,
  beltOf,
  counted,
  groupOf,
  isRaising,
  layersOf,
  massOf,
  motorsOf,
  shareOf,
  type MotionContext,
} from './axis-book.ts';
import { axisForce, inertiaTogether, loadInertia, turningAtMotor } from './axis-load.ts';
import { backDrivingTorque, driveTorque, shaftSpeed, standingTorque } from './axis-torque.ts';
import { drumRadius, topRadius } from './drum.ts';
import { pulleyRadius } from './pulley.ts';
import {
  easedAcceleration,
  easingSpeed,
  sCurveRampTime,
  sCurveReachedAcceleration,
  sCurveReachedSpeed,
  sCurveTravelTime,
} from './s-curve.ts';
import { leadRadius, screwBackDriving, screwEfficiency, screwInertia } from './screw.ts';
import { reachedSpeed, travelTime } from './trapezoid.ts';

const UPRIGHT = constant(Math.PI / 2, 'angle', 'a line hangs upright');
const LEVEL = constant(0, 'angle', 'level where nothing else is said');
const NO_FORCE = constant(0, 'force', 'none said');
const NO_INERTIA = constant(0, 'inertia', 'none said');
const REST = constant(0, 'speed', 'at rest');
const STEADY = constant(0, 'acceleration', 'at an even speed');
/** Half of the angle between the flanks. */
const FLANKS = {
  square: constant(0, 'angle', 'flanks of a square thread stand upright'),
  trapezoidal: constant(Math.PI / 12, 'angle', 'flanks of a trapezoidal thread lean by 15°', {
    id: 'lead-screw-formulas',
  }),
} as const;

export const inclineOf = (axis: SeenAxis): Value => (axis.drive === 'hoist' ? UPRIGHT : (axis.incline ?? LEVEL));

/** Where nothing is said of the width, the line is taken to lie in the layers that the drum is meant for. */
const layersFor = (axis: SeenAxis): Value => {
  const drum = groupOf(axis, 'drum');
  if (drum.width !== undefined && drum['dead-turns'] !== undefined && axis.travel !== undefined) return layersOf(axis);
  return drum.layers === undefined
    ? constant(1, 'count', 'layers, while width and dead turns are not stated')
    : counted(drum, 'layers');
};

const radius = (context: MotionContext, name: string): Value => {
  const axis = axisOf(context, name);
  const { reduction } = axis;
  if (axis.drive === 'belt')
    return pulleyRadius.work({
      teeth: counted(axis, 'pulley-teeth'),
      pitch: need(beltOf(context, axis), 'pitch').pitch,
      reduction,
    });
  if (axis.drive === 'screw') return leadRadius.work({ lead: need(groupOf(axis, 'screw'), 'lead').lead, reduction });
  return drumRadius.work({
    drum: need(groupOf(axis, 'drum'), 'diameter').diameter,
    line: need(groupOf(axis, 'line'), 'diameter').diameter,
    reduction,
  });
};

/** The radius at which the load pulls hardest: that of the uppermost layer on a drum. */
export const pullingRadius = (context: MotionContext, name: string): Value => {
  const axis = axisOf(context, name);
  if (axis.drive !== 'hoist') return context.get(facts.effectiveRadius, name);
  return topRadius.work({
    drum: need(groupOf(axis, 'drum'), 'diameter').diameter,
    line: need(groupOf(axis, 'line'), 'diameter').diameter,
    layers: layersFor(axis),
    reduction: axis.reduction,
  });
};

/** Pulley, drum or screw about its own shaft. */
const ownInertia = (axis: SeenAxis): Value => {
  if (axis.drive === 'belt') return axis['pulley-inertia'] ?? NO_INERTIA;
  if (axis.drive === 'hoist') return axis.drum?.inertia ?? NO_INERTIA;
  const { diameter, length } = groupOf(axis, 'screw');
  return diameter === undefined || length === undefined ? NO_INERTIA : screwInertia.work({ diameter, length });
};

/** Pulley, drum or screw, as the motor feels it. */
const turningInertia = (axis: SeenAxis): Value => {
  const own = ownInertia(axis);
  return axis.reduction === undefined ? own : turningAtMotor.work({ own, reduction: axis.reduction });
};

/** Turning inertia beside the rotor, for those who fall. */
export const shaftInertia = (axis: SeenAxis, rotor: Value): Value =>
  inertiaTogether.work({ rotor, turning: turningInertia(axis) });

const slides = (axis: SeenAxis) => {
  const { thread, lead, diameter, friction } = axis.screw ?? {};
  if (thread === undefined || thread === 'ball' || !lead || !diameter || !friction) return undefined;
  return { lead, mean: diameter, friction, flank: FLANKS[thread] };
};

const efficiencyOf = (axis: SeenAxis): Value => {
  if (axis.efficiency !== undefined) return axis.efficiency;
  const thread = slides(axis);
  if (thread) return screwEfficiency.work(thread);
  return need(axis, 'efficiency').efficiency;
};

interface Pace {
  readonly speed: Value;
  readonly acceleration: Value;
  readonly jerk?: Value;
}

/** Speed and acceleration that are reached; those asked for while the travel is not stated. */
const paceOf = (axis: SeenAxis): Pace => {
  const { speed: asked, acceleration } = need(axis, 'speed', 'acceleration');
  const { jerk, travel: distance } = axis;
  if (jerk === undefined)
    return { speed: distance ? reachedSpeed.work({ asked, acceleration, distance }) : asked, acceleration };
  const speed = distance ? sCurveReachedSpeed.work({ asked, acceleration, jerk, distance }) : asked;
  return { speed, acceleration: sCurveReachedAcceleration.work({ speed, acceleration, jerk }), jerk };
};

const profile = (context: MotionContext, name: string): facts.TravelProfile => {
  const axis = axisOf(context, name);
  const { travel: distance, acceleration: asked } = need(axis, 'travel', 'speed', 'acceleration');
  const { speed, acceleration, jerk } = paceOf(axis);
  if (jerk === undefined)
    return {
      shape: 'trapezoid',
      speed,
      acceleration,
      distance,
      totalTime: travelTime.work({ speed, acceleration, distance }),
    };
  const ramp = sCurveRampTime.work({ speed, acceleration: asked, jerk });
  return {
    shape: 's-curve',
    speed,
    acceleration,
    jerk,
    distance,
    totalTime: sCurveTravelTime.work({ distance, speed, ramp }),
  };
};

interface Moment {
  readonly phase: facts.DemandPoint['phase'];
  readonly speed: Value;
  readonly acceleration: Value;
  readonly resistance: Value;
}

const EASED = constant(0.5, 'ratio', 'half of the acceleration is left');
const WHOLE = constant(1, 'ratio', 'the whole acceleration, at the end of its stretch');

/** The worst moments of a travel, in order. */
const momentsOf = (context: MotionContext, name: string): readonly Moment[] => {
  const axis = axisOf(context, name);
  const { speed, acceleration, jerk } = paceOf(axis);
  const running =
    axis['running-force'] ?? (axis.drive === 'hoist' ? NO_FORCE : need(axis, 'running-force')['running-force']);
  const starting = axis['starting-force'];
  const moments: Moment[] = [];
  if (starting) moments.push({ phase: 'starting', speed: REST, acceleration, resistance: greatest(starting, running) });
  if (jerk === undefined) moments.push({ phase: 'accelerating', speed, acceleration, resistance: running });
  else
    moments.push(
      {
        phase: 'accelerating',
        speed: easingSpeed.work({ speed, acceleration, jerk, share: WHOLE }),
        acceleration,
        resistance: running,
      },
      {
        phase: 'easing',
        speed: easingSpeed.work({ speed, acceleration, jerk, share: EASED }),
        acceleration: easedAcceleration.work({ acceleration, share: EASED }),
        resistance: running,
      },
    );
  moments.push({ phase: 'running', speed, acceleration: STEADY, resistance: running });
  return moments;
};

const forceAt = (axis: SeenAxis, { acceleration, resistance }: Pick<Moment, 'acceleration' | 'resistance'>): Value =>
  axisForce.work({
    mass: massOf(axis),
    acceleration,
    resistance,
    pull: axis['cable-pull'] ?? NO_FORCE,
    incline: inclineOf(axis),
  });

/** The greatest force that moves the axis, over its whole travel and its stops. */
export const greatestForce = (context: MotionContext, name: string): Value => {
  const axis = axisOf(context, name);
  const stop = axis.stopping?.acceleration;
  return greatest(
    ...momentsOf(context, name).map((moment) => forceAt(axis, moment)),
    ...(stop === undefined ? [] : [forceAt(axis, { acceleration: stop, resistance: NO_FORCE })]),
  );
};

/** Radii at which a motor may have it hardest: loads pull more on an outer layer, rotors turn faster on the inner one. */
const radiiOf = (context: MotionContext, name: string): readonly Value[] => {
  const [inner, outer] = [context.get(facts.effectiveRadius, name), pullingRadius(context, name)];
  return inner.number === outer.number ? [outer] : [outer, inner];
};

/** What moments ask of one motor, at the shaft. */
const pointsFor = (
  context: MotionContext,
  name: string,
  motor: string,
  moments: readonly Moment[],
  efficiency: Value,
): readonly facts.DemandPoint[] => {
  const axis = axisOf(context, name);
  const share = shareOf(axis);
  const inertia = shaftInertia(axis, context.get(facts.motorFacts.rotorInertia, motor));
  const radii = radiiOf(context, name);
  return moments.map(({ phase, speed, acceleration, resistance }): facts.DemandPoint => {
    const force = forceAt(axis, { acceleration, resistance });
    const torques = radii.map((r) => driveTorque.work({ force, radius: r, efficiency, share, inertia, acceleration }));
    return {
      motor,
      phase,
      torque: torques.length === 1 ? torques[0]! : greatest(...torques),
      motorSpeed: shaftSpeed.work({ speed, radius: context.get(facts.effectiveRadius, name) }),
    };
  });
};

const demandOf = (context: MotionContext, name: string): { readonly points: readonly facts.DemandPoint[] } => {
  const axis = axisOf(context, name);
  const efficiency = efficiencyOf(axis);
  const moments = momentsOf(context, name);
  return { points: motorsOf(axis).flatMap((motor) => pointsFor(context, name, motor, moments, efficiency)) };
};

const LOSSLESS = constant(1, 'ratio', 'losses help to stop and are not counted on');

/** What the brake ramp asks of one motor, from full speed and downhill; nothing where none of its own is stated. */
export const stoppingPoints = (context: MotionContext, name: string, motor: string): readonly facts.DemandPoint[] => {
  const axis = axisOf(context, name);
  const acceleration = axis.stopping?.acceleration;
  if (acceleration === undefined) return [];
  const { speed } = paceOf(axis);
  return pointsFor(context, name, motor, [{ phase: 'stopping', speed, acceleration, resistance: NO_FORCE }], LOSSLESS);
};

const reflected = (context: MotionContext, name: string): Value => {
  const axis = axisOf(context, name);
  return loadInertia.work({
    mass: massOf(axis),
    radius: context.get(facts.effectiveRadius, name),
    share: shareOf(axis),
    turning: turningInertia(axis),
  });
};

const standing = (context: MotionContext, name: string): Value => {
  const axis = axisOf(context, name);
  return standingTorque.work({
    mass: massOf(axis),
    incline: inclineOf(axis),
    pull: isRaising(axis) ? (axis['cable-pull'] ?? NO_FORCE) : NO_FORCE,
    radius: pullingRadius(context, name),
    share: shareOf(axis),
  });
};

/** Torque with which what hangs on the axis turns one motor backward. */
export const backTorque = (context: MotionContext, name: string): Value => {
  const axis = axisOf(context, name);
  const resting = context.get(facts.staticTorque, name);
  const thread = axis.efficiency === undefined ? slides(axis) : undefined;
  return thread
    ? screwBackDriving.work({ standing: resting, ...thread })
    : backDrivingTorque.work({ standing: resting, efficiency: efficiencyOf(axis) });
};

const axisNames = (book: MotionContext['book']): readonly string[] => Object.keys(book.axes ?? {});

export const axisFacts: readonly Provider<MotionBook>[] = [
  provide<MotionBook, facts.TravelProfile>(facts.travelProfile, profile, axisNames),
  provide<MotionBook, { readonly points: readonly facts.DemandPoint[] }>(facts.demand, demandOf, axisNames),
  provide<MotionBook, Value>(facts.reflectedInertia, reflected, axisNames),
  provide<MotionBook, Value>(facts.staticTorque, standing, axisNames),
  provide<MotionBook, Value>(facts.effectiveRadius, radius, axisNames),
];
