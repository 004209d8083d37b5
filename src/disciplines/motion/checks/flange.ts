import { need } from '../../../contract/index.ts';
import { atMost } from '../../../kernel/index.ts';
import { axisOf, groupOf, layersOf } from '../calc/axis-book.ts';
import { pileHeight } from '../calc/drum-room.ts';
import { axesThat, axisName, isHoist, type AxisCheck } from './axes.ts';

export const flange: AxisCheck = {
  code: 'MOTION-240',
  asks: 'Do the flanges keep a turn that has gone astray on top of the others?',
  subjects: axesThat(isHoist),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const layers = layersOf(axis);
    const pile = pileHeight.work({ layers, line: need(groupOf(axis, 'line'), 'diameter').diameter });
    return atMost(pile, need(groupOf(axis, 'drum'), 'flange').flange, {
      says: ({ demand, limit }) =>
        `With one turn astray the line of ${name} lies ${demand} high; the flanges are ${limit} high.`,
      beside: { layers },
      levers: () => [
        { turn: `axes.${name}.drum.flange`, toward: 'higher', means: 'higher flanges' },
        { turn: `axes.${name}.drum.width`, toward: 'higher', means: 'a wider drum' },
      ],
    });
  },
};
