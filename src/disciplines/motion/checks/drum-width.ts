import { need, pathOf } from '../../../contract/index.ts';
import { atMost, constant, given } from '../../../kernel/index.ts';
import { axisOf, groupOf, layOf, lineOnDrum } from '../calc/axis-book.ts';
import { widthWanted } from '../calc/drum-room.ts';
import { axesThat, axisName, isHoist, type AxisCheck } from './axes.ts';
import type { MotionContext } from '../calc/axis-book.ts';

const ONE = constant(1, 'count', 'one layer where nothing else is said');

/** Width that the line wants in the layers that the drum is meant for. */
export const widthFor = (context: MotionContext, name: string) => {
  const axis = axisOf(context, name);
  const drum = groupOf(axis, 'drum');
  return widthWanted.work({
    length: lineOnDrum(axis),
    layers: drum.layers === undefined ? ONE : given(drum.layers, 'count', `${pathOf(drum)}.layers`),
    drum: need(drum, 'diameter').diameter,
    line: need(groupOf(axis, 'line'), 'diameter').diameter,
    lay: layOf(axis),
  });
};

export const drumWidth: AxisCheck = {
  code: 'MOTION-230',
  asks: 'Is the drum wide enough for the layers that it is meant to wind?',
  subjects: axesThat(isHoist),
  run: (context, subject) => {
    const name = axisName(subject);
    const { width } = need(groupOf(axisOf(context, name), 'drum'), 'width');
    return atMost(widthFor(context, name), width, {
      says: ({ demand, limit }) =>
        `The line of ${name} wants ${demand} of drum; there are ${limit} between the flanges.`,
      levers: () => [
        { turn: `axes.${name}.drum.width`, toward: 'higher', means: 'a wider drum' },
        { turn: `axes.${name}.drum.diameter`, toward: 'higher', means: 'a thicker drum' },
      ],
    });
  },
};
