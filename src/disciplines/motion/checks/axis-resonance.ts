import { atLeast, constant, least } from '../../../kernel/index.ts';
import { axisOf, massOf, motorsOf, softestDrive } from '../calc/axis-book.ts';
import { springFrequency, stepTone, toneDistance } from '../calc/belt-stretch.ts';
import { motorOf } from '../calc/motor-facts.ts';
import { effectiveRadius, travelProfile } from '../facts.ts';
import { axesThat, axisName, isBelt, type AxisCheck } from './axes.ts';

const CLEAR = constant(0.2, 'ratio', 'distance of a steady tone from a natural frequency', { id: 'axis-experience' });
/** Unequal phases sound once and twice in an electrical turn, full steps four times. */
const MULTIPLES = [1, 2, 4].map((times) => constant(times, 'count', 'times in an electrical turn'));

export const axisResonance: AxisCheck = {
  code: 'MOTION-150',
  asks: 'Does a steady tone of the motor stay clear of the swing of carriage and belt?',
  subjects: axesThat(isBelt),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const { teeth } = motorOf(context, motorsOf(axis)[0]!);
    const radius = context.get(effectiveRadius, name);
    const natural = springFrequency.work({ stiffness: softestDrive(context, axis), mass: massOf(axis) });
    const reached = context.get(travelProfile, name).speed;
    const speeds = axis['approach-speed'] === undefined ? [reached] : [reached, axis['approach-speed']];
    const distances = speeds.flatMap((speed) =>
      MULTIPLES.map((multiple) =>
        toneDistance.work({ tone: stepTone.work({ speed, radius, teeth, multiple }), natural }),
      ),
    );
    return atLeast(least(...distances), CLEAR, {
      says: ({ demand, limit }) =>
        `The nearest steady tone of ${name} lies ${demand} of the natural frequency away from it; ${limit} keeps it quiet.`,
      beside: { 'natural frequency': natural },
      levers: () => [
        { turn: `axes.${name}.speed`, toward: 'higher', means: 'travel faster' },
        { turn: `axes.${name}.approach-speed`, toward: 'higher', means: 'meet the switches faster' },
        { turn: `axes.${name}.approach-speed`, toward: 'lower', means: 'meet the switches more slowly' },
        { substitute: `axes.${name}.belt`, kind: 'belt', means: 'a stiffer belt' },
      ],
    });
  },
};
