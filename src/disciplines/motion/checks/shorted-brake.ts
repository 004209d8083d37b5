import { need } from '../../../contract/index.ts';
import { atMost } from '../../../kernel/index.ts';
import { axisOf, isRaising } from '../calc/axis-book.ts';
import { backTorque } from '../calc/axis-facts.ts';
import { shortedTorque } from '../calc/unpowered.ts';
import { motorOf } from '../calc/motor-facts.ts';
import { axisName, motorName, motorsOfAxesThat, type AxisCheck } from './axes.ts';

export const shortedBrake: AxisCheck = {
  code: 'MOTION-220',
  asks: 'Can the shorted windings brake a raised load at all?',
  subjects: motorsOfAxesThat(isRaising),
  run: (context, subject) => {
    const name = axisName(subject);
    if (need(axisOf(context, name), 'unpowered').unpowered !== 'windings shorted') return null;
    const { torqueConstant: constant, teeth, phaseInductance: inductance } = motorOf(context, motorName(subject));
    return atMost(backTorque(context, name), shortedTorque.work({ constant, teeth, inductance }), {
      says: ({ demand, limit }) =>
        `The load of ${name} turns ${motorName(subject)} with ${demand}; its shorted windings brake at most with ${limit}.`,
      advice: {
        share: 0.7,
        because: 'inductance changes with position, and iron saturates',
        source: { id: 'hoist-experience' },
      },
      levers: () => [
        { set: [{ path: `axes.${name}.unpowered`, text: 'brake' }], means: 'a brake that holds without power' },
        { turn: `axes.${name}.moving-mass`, toward: 'lower', means: 'make the load lighter' },
      ],
    });
  },
};
