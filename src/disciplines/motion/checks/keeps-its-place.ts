import { atMost } from '../../../kernel/index.ts';
import { axisOf } from '../calc/axis-book.ts';
import { travelProfile } from '../facts.ts';
import { axesThat, axisName, type AxisCheck } from './axes.ts';

export const keepsItsPlace: AxisCheck = {
  code: 'MOTION-620',
  asks: 'Is the axis driven well below the speed at which it was seen to lose its place?',
  subjects: axesThat((axis) => axis['loses-place-at'] !== undefined),
  run: (context, subject) => {
    const name = axisName(subject);
    const lost = axisOf(context, name)['loses-place-at'];
    if (lost === undefined) return null;
    return atMost(context.get(travelProfile, name).speed, lost, {
      says: ({ demand, limit }) => `${name} travels at ${demand}; on trial it lost its place at ${limit}.`,
      advice: { share: 0.8, because: 'one trial on one day does not know wear, a cold morning or a low mains voltage' },
      levers: () => [{ turn: `axes.${name}.speed`, toward: 'lower', means: 'travel more slowly' }],
    });
  },
};
