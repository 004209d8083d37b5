import { need } from '../../../contract/index.ts';
import { atMost, constant } from '../../../kernel/index.ts';
import { axisOf, groupOf } from '../calc/axis-book.ts';
import { greatestForce } from '../calc/axis-facts.ts';
import { bucklingForce } from '../calc/screw-limits.ts';
import { axesThat, axisName, isScrew, type AxisCheck } from './axes.ts';

const source = { id: 'screw-buckling', at: 'eq. 5' } as const;
const ends = {
  'fixed-free': constant(0.25, 'ratio', 'one end fixed, one free', source),
  'supported-supported': constant(1, 'ratio', 'both ends supported, Euler', {
    id: 'own-derivation',
    at: 'column on hinges',
  }),
  'fixed-supported': constant(2, 'ratio', 'one end fixed, one supported', source),
  'fixed-fixed': constant(4, 'ratio', 'both ends fixed', source),
} as const;

export const screwBuckling: AxisCheck = {
  code: 'MOTION-525',
  asks: 'Does the screw bear the push without buckling?',
  subjects: axesThat(isScrew),
  run: (context, subject) => {
    const name = axisName(subject);
    const screw = need(groupOf(axisOf(context, name), 'screw'), 'root-diameter', 'length', 'ends');
    const most = bucklingForce.work({ root: screw['root-diameter'], length: screw.length, ends: ends[screw.ends] });
    return atMost(greatestForce(context, name), most, {
      says: ({ demand, limit }) => `The screw of ${name} pushes with ${demand}; it buckles at ${limit}.`,
      advice: { share: 0.5, because: 'makers of screws keep half in reserve', source },
      levers: () => [
        { turn: `axes.${name}.screw.root-diameter`, toward: 'higher', means: 'a thicker screw' },
        { turn: `axes.${name}.acceleration`, toward: 'lower', means: 'accelerate more gently' },
      ],
    });
  },
};
