import { need } from '../../../contract/index.ts';
import { atMost, mustBe, type Lever } from '../../../kernel/index.ts';
import { axisOf, motorsOf, sleeps } from '../calc/axis-book.ts';
import { electricalTurn } from '../calc/pulley.ts';
import { motorOf } from '../calc/motor-facts.ts';
import { effectiveRadius } from '../facts.ts';
import { axesThat, axisName, isPair, type AxisCheck } from './axes.ts';

export const relaxing: AxisCheck = {
  code: 'MOTION-420',
  asks: 'Are sides that relax while the drives are off squared again before they stand too far askew?',
  subjects: axesThat(isPair),
  run: (context, subject) => {
    const name = axisName(subject);
    const axis = axisOf(context, name);
    const [first] = motorsOf(axis);
    if (!motorsOf(axis).some((one) => sleeps(context, one))) return null;
    const turn = electricalTurn.work({
      radius: context.get(effectiveRadius, name),
      teeth: motorOf(context, first!).teeth,
    });
    const everyPlay: Lever = {
      set: [{ path: `axes.${name}.squares`, text: 'every play' }],
      means: 'square it before every play',
    };
    if (need(axis, 'squares').squares === 'switching on')
      return mustBe(false, {
        says: () =>
          `The drives of ${name} sleep between plays, a side can slip each time, and only switching on squares it again.`,
        because: [turn],
        levers: () => [everyPlay],
      });
    return atMost(turn, need(axis, 'skew').skew, {
      says: ({ demand, limit }) =>
        `With its drives off a side of ${name} can wake up ${demand} beside where it went to sleep; ${limit} does no harm.`,
      levers: () => [{ turn: `axes.${name}.skew`, toward: 'higher', means: 'wheels that bear more skew' }],
    });
  },
};
