import { need } from '../../../contract/index.ts';
import { atMost, greatest } from '../../../kernel/index.ts';
import { axisOf, hangingOf, jogLowered, jogSwing, rides, shortest } from '../calc/book.ts';
import { sideReach } from '../calc/size.ts';
import { sidewaysAt } from '../calc/travel.ts';
import { carrierOf, cup, eachCarrier, gentler, hoistOf, type SwingCheck } from './common.ts';

export const clearOfWall: SwingCheck = {
  code: 'SWING-020',
  asks: 'Does a load that swings at the end of a travel, and as it is lowered there, stay clear of walls and windows?',
  subjects: eachCarrier,
  run: (context, subject) => {
    const [hoist, axis] = [hoistOf(subject), carrierOf(subject)];
    if (rides(context, hoist)) return null;
    const angle = jogSwing(context, hoist, axis);
    const up = sidewaysAt.work({ length: shortest(context, hoist), angle });
    const sideways = greatest(up, jogLowered(context, hoist, axis));
    const reach = sideReach.work({ sideways, half: need(hangingOf(context), 'half-width')['half-width'] });
    return atMost(reach, need(axisOf(context, axis), 'wall').wall, {
      says: ({ demand, limit }) =>
        `At the end of ${axis} the load of ${hoist} may swing out to ${demand} from the plumb line, up or on its way down; the wall is ${limit} away.`,
      beside: { 'worst swing of one drive': angle, 'middle to the side while it is up': up },
      levers: () => [
        ...gentler(axis),
        { turn: `axes.${axis}.wall`, toward: 'higher', means: 'end the travel earlier' },
        cup(hoist),
      ],
    });
  },
};
