import { pathOf, need } from '../../../contract/index.ts';
import { atLeast, constant, given } from '../../../kernel/index.ts';
import { axisOf } from '../calc/axis-book.ts';
import { teethInMesh as teethGripped } from '../calc/pulley.ts';
import { axesThat, axisName, isBelt, type AxisCheck } from './axes.ts';

const HALF_ROUND = constant(Math.PI, 'angle', 'half way round, where motor pulley and idler are alike');
const SIX = constant(6, 'count', 'teeth that must be in mesh', { id: 'teeth-in-mesh-text' });

export const teethInMesh: AxisCheck = {
  code: 'MOTION-120',
  asks: 'Does the belt grip enough teeth of the motor pulley?',
  subjects: axesThat(isBelt),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const teeth = given(need(axis, 'pulley-teeth')['pulley-teeth'], 'count', `${pathOf(axis)}.pulley-teeth`);
    return atLeast(teethGripped.work({ teeth, wrap: axis.wrap ?? HALF_ROUND }), SIX, {
      says: ({ demand, limit }) => `The belt of ${name} grips ${demand} teeth of the motor pulley; it wants ${limit}.`,
      levers: () => [
        { set: [{ path: `axes.${name}.pulley-teeth`, text: '20' }], means: 'a motor pulley with 20 teeth' },
        {
          set: [{ path: `axes.${name}.wrap`, text: '180°' }],
          means: 'idlers that lead the belt half way round the motor pulley',
        },
      ],
    });
  },
};
