import { need } from '../../../contract/index.ts';
import { atMost } from '../../../kernel/index.ts';
import { axisOf } from '../calc/axis-book.ts';
import { looseLine } from '../calc/slack.ts';
import { addSlackSwitch, axesThat, axisName, isHoist, type AxisCheck } from './axes.ts';
import { roomFor } from './overrun-on-slack.ts';

export const looseTurns: AxisCheck = {
  code: 'MOTION-280',
  asks: 'Lowered by count alone, does the line that runs out after landing stay on the drum?',
  subjects: axesThat((axis) => isHoist(axis) && axis['slack-switch'] === undefined),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = need(axisOf(context, name), 'travel', 'lands-after');
    const loose = looseLine.work({ travel: axis.travel, lands: axis['lands-after'] });
    return atMost(loose, roomFor(context, name, false), {
      says: ({ demand, limit }) =>
        `Nothing tells ${name} that its load has landed: up to ${demand} of loose line runs off a drum that has room for ${limit}.`,
      levers: () => [
        addSlackSwitch(context.book, name),
        { turn: `axes.${name}.drum.flange`, toward: 'higher', means: 'higher flanges' },
      ],
    });
  },
};
