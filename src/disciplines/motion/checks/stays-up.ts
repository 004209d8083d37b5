import { need } from '../../../contract/index.ts';
import { atMost, type Lever } from '../../../kernel/index.ts';
import { axisOf, isRaising } from '../calc/axis-book.ts';
import { backTorque } from '../calc/axis-facts.ts';
import { motorOf } from '../calc/motor-facts.ts';
import { axisName, isScrew, motorName, motorsOfAxesThat, type AxisCheck } from './axes.ts';

/** Ways to keep a raised load up or to let it down slowly. */
export const holdingLevers = (name: string): readonly Lever[] => [
  {
    set: [{ path: `axes.${name}.unpowered`, text: 'windings shorted' }],
    means: 'short the windings by the normally-closed contacts of the drive relay',
  },
  { set: [{ path: `axes.${name}.unpowered`, text: 'brake' }], means: 'a brake that holds without power' },
];

const staysUpOf = (code: string, asks: string, which: AxisCheck['subjects']): AxisCheck => ({
  code,
  asks,
  subjects: which,
  run: (context, subject) => {
    const name = axisName(subject);
    if (need(axisOf(context, name), 'unpowered').unpowered !== 'free') return null;
    return atMost(backTorque(context, name), motorOf(context, motorName(subject)).detentTorque, {
      says: ({ demand, limit, verdict }) =>
        verdict === 'holds'
          ? `Without power ${name} stays where it is: its load turns with ${demand}, the motor's detent holds ${limit}.`
          : `Without power ${name} may run down: its load turns with ${demand}, the motor's detent holds ${limit}, and nothing once it turns.`,
      advice: {
        share: 0.5,
        because: 'a knock turns the motor over its detent, and once it turns the detent averages out',
        source: { id: 'hoist-experience' },
      },
      levers: holdingLevers(name),
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
