import { mustBe } from '../../../kernel/index.ts';
import { axisOf, motorsOf } from '../calc/axis-book.ts';
import { addHomeSwitches, axesThat, axisName, isPair, type AxisCheck } from './axes.ts';

export const squaring: AxisCheck = {
  code: 'MOTION-410',
  asks: 'Has each side of an axis with several motors a switch of its own to be squared on?',
  subjects: axesThat(isPair),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const sides = motorsOf(axis).length;
    const most = Math.max(axis.switches?.min?.length ?? 0, axis.switches?.max?.length ?? 0);
    const here = most === 0 ? 'no home switch' : most === 1 ? 'one home switch' : `${most} home switches`;
    return mustBe(most >= sides, {
      says: () =>
        most >= sides
          ? `The ${sides} sides of ${name} are squared on a switch each.`
          : `${name} has ${sides} motors and ${here}: it cannot tell when its sides stand askew.`,
      levers: () => [addHomeSwitches(context.book, name, axis.switches?.min ?? [], sides)],
    });
  },
};
