import { need } from '../../../contract/index.ts';
import { atMost, constant } from '../../../kernel/index.ts';
import { axisOf, groupOf, layersOf, stopOf } from '../calc/axis-book.ts';
import type { MotionContext } from '../calc/axis-book.ts';
import { slackRoom } from '../calc/slack.ts';
import { axesThat, axisName, isHoist, type AxisCheck } from './axes.ts';

const NO_LEVER = constant(0, 'length', 'nothing takes up slack');

/** Slack that finds room on lever and drum. */
export const roomFor = (context: MotionContext, name: string, withLever: boolean) => {
  const axis = axisOf(context, name);
  return slackRoom.work({
    lever: (withLever ? axis['slack-room'] : undefined) ?? NO_LEVER,
    flange: need(groupOf(axis, 'drum'), 'flange').flange,
    layers: layersOf(axis),
    line: need(groupOf(axis, 'line'), 'diameter').diameter,
  });
};

export const overrunOnSlack: AxisCheck = {
  code: 'MOTION-270',
  asks: 'Does the slack that runs out until the hoist stands find room?',
  subjects: axesThat((axis) => isHoist(axis) && axis['slack-switch'] !== undefined),
  run: (context, subject) => {
    const name = axisName(subject);
    const runsOut = stopOf(axisOf(context, name), need(axisOf(context, name), 'speed').speed);
    return atMost(runsOut, roomFor(context, name, true), {
      says: ({ demand, limit }) =>
        `After the slack switch ${demand} of line still runs off ${name}; ${limit} finds room.`,
      levers: () => [
        { turn: `axes.${name}.stopping.acceleration`, toward: 'higher', means: 'stop harder when the line goes slack' },
        { turn: `axes.${name}.speed`, toward: 'lower', means: 'lower more slowly' },
        { turn: `axes.${name}.slack-room`, toward: 'higher', means: 'a lever with a longer way' },
        { turn: `axes.${name}.drum.flange`, toward: 'higher', means: 'higher flanges' },
      ],
    });
  },
};
