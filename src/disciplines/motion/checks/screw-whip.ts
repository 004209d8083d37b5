import { need } from '../../../contract/index.ts';
import { atMost, constant } from '../../../kernel/index.ts';
import { axisOf, groupOf } from '../calc/axis-book.ts';
import { shaftSpeed } from '../calc/axis-torque.ts';
import { leadRadius } from '../calc/screw.ts';
import { criticalSpeed } from '../calc/screw-limits.ts';
import { travelProfile } from '../facts.ts';
import { axesThat, axisName, isScrew, type AxisCheck } from './axes.ts';

const source = { id: 'screw-critical-speed' } as const;
const ends = {
  'fixed-free': constant(0.36, 'ratio', 'one end fixed, one free', source),
  'supported-supported': constant(1, 'ratio', 'both ends supported', source),
  'fixed-supported': constant(1.47, 'ratio', 'one end fixed, one supported', source),
  'fixed-fixed': constant(2.23, 'ratio', 'both ends fixed', source),
} as const;

export const screwWhip: AxisCheck = {
  code: 'MOTION-520',
  asks: 'Does the screw turn slowly enough not to whip?',
  subjects: axesThat(isScrew),
  run: (context, subject) => {
    const name = axisName(subject);
    const screw = need(groupOf(axisOf(context, name), 'screw'), 'lead', 'root-diameter', 'length', 'ends');
    const turning = shaftSpeed.work({
      speed: context.get(travelProfile, name).speed,
      radius: leadRadius.work({ lead: screw.lead }),
    });
    const critical = criticalSpeed.work({ root: screw['root-diameter'], length: screw.length, ends: ends[screw.ends] });
    return atMost(turning, critical, {
      says: ({ demand, limit }) => `The screw of ${name} turns at ${demand}; it whips at ${limit}.`,
      advice: { share: 0.8, because: 'at most 80 % of the critical speed is safe', source },
      levers: () => [
        { turn: `axes.${name}.speed`, toward: 'lower', means: 'travel more slowly' },
        { turn: `axes.${name}.screw.lead`, toward: 'higher', means: 'a steeper screw' },
        { turn: `axes.${name}.screw.root-diameter`, toward: 'higher', means: 'a thicker screw' },
      ],
    });
  },
};
