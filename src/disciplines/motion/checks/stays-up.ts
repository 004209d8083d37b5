import { need } from '../../../contract/index.ts';
import { atMost, type Advice, type Lever, type Shown } from '../../../kernel/index.ts';
import { axisOf, isRaising, sleeps } from '../calc/axis-book.ts';
import { backTorque } from '../calc/axis-facts.ts';
import { driverNameOf, motorOf } from '../calc/motor-facts.ts';
import { axisName, isScrew, motorName, motorsOfAxesThat, type AxisCheck } from './axes.ts';

const brake = (name: string): Lever => ({
  set: [{ path: `axes.${name}.unpowered`, text: 'brake' }],
  means: 'a brake that holds without power',
});

const shorted = (name: string): Lever => ({
  set: [{ path: `axes.${name}.unpowered`, text: 'windings shorted' }],
  means:
    'short the windings by the normally-closed contacts of the drive relay: the load then sinks slowly and does not stay up',
});

/** Ways to let a raised load down without harm. */
export const landingLevers = (name: string): readonly Lever[] => [shorted(name), brake(name)];

const knocks: Advice = {
  share: 0.5,
  because: 'a knock turns the motor over its detent, and once it turns the detent averages out',
  source: { id: 'hoist-experience' },
};

/** What holds a load at rest without current: friction, which is counted in the torque, and detent. */
const againstDetent = (
  context: Parameters<AxisCheck['run']>[0],
  name: string,
  motor: string,
  { when, goes, levers }: { readonly when: string; readonly goes: string; readonly levers: () => readonly Lever[] },
) =>
  atMost(backTorque(context, name), motorOf(context, motor).detentTorque, {
    says: ({ demand, limit, verdict }: Shown) =>
      verdict === 'holds'
        ? `${when} ${name} stays where it is: its load turns with ${demand}, the detent of ${motor} holds ${limit}.`
        : verdict === 'tight'
          ? `${when} ${name} stays where it is until a knock starts it: its load turns with ${demand}, the detent of ${motor} holds ${limit}, and nothing once it turns.`
          : `${when} ${name} ${goes}: its load turns with ${demand}, the detent of ${motor} holds ${limit}, and nothing once it turns.`,
    advice: knocks,
    levers,
  });

const staysUpOf = (code: string, asks: string, which: AxisCheck['subjects']): AxisCheck => ({
  code,
  asks,
  subjects: which,
  run: (context, subject) => {
    const name = axisName(subject);
    if (need(axisOf(context, name), 'unpowered').unpowered !== 'free') return null;
    return againstDetent(context, name, motorName(subject), {
      when: 'Without power',
      goes: 'runs down',
      levers: () => [brake(name), shorted(name)],
    });
  },
});

export const staysUp = staysUpOf(
  'MOTION-210',
  'Does a raised load stay up when the drive is off?',
  motorsOfAxesThat((axis) => isRaising(axis) && !isScrew(axis)),
);

export const screwStaysUp = staysUpOf(
  'MOTION-510',
  'Does a load on a screw stay up when the drive is off?',
  motorsOfAxesThat((axis) => isRaising(axis) && isScrew(axis)),
);

/** A catch that bears a raised load of an axis while its drive is off. */
export const caught = (name: string): Lever => ({
  set: [{ path: `axes.${name}.rests-on`, text: 'a catch' }],
  means: 'a catch that bears the load while nobody plays',
});

export const staysUpIdle: AxisCheck = {
  code: 'MOTION-215',
  asks: 'Does a raised load on shorted windings stay where it is while nobody plays?',
  subjects: motorsOfAxesThat(isRaising),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const motor = motorName(subject);
    if (axis.unpowered !== 'windings shorted' || !sleeps(context, motor)) return null;
    if (need(axis, 'rests-on')['rests-on'] !== 'its drive') return null;
    return againstDetent(context, name, motor, {
      when: 'While nobody plays',
      goes: 'sinks, for shorted windings brake and do not hold',
      levers: () => [
        caught(name),
        brake(name),
        {
          set: [{ path: `drivers.${driverNameOf(context, motor)}.standing-by`, text: 'powered' }],
          means: `keep the drive of ${name} on while nobody plays`,
        },
      ],
    });
  },
};
