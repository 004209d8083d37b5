import { need } from '../../../contract/index.ts';
import { atMost } from '../../../kernel/index.ts';
import { missedShare } from '../calc/bench.ts';
import { dockOf, missesAllowed } from '../calc/book.ts';
import { eachHoist, hoistOf, type SwingCheck } from './common.ts';

export const caughtInTrials: SwingCheck = {
  code: 'SWING-065',
  asks: 'Did enough trial releases dock, let go as far out of plumb as in the worst of ordinary plays?',
  subjects: (book) => eachHoist(book).filter((subject) => book.axes?.[hoistOf(subject)]?.dock?.caught !== undefined),
  run: (context, subject) => {
    const hoist = hoistOf(subject);
    const docked = need(dockOf(context, hoist), 'caught').caught;
    return atMost(missedShare.work({ docked }), missesAllowed(context, hoist), {
      says: ({ demand, limit }) =>
        `By its trials a share of ${demand} of the lift-offs of ${hoist} misses; ${limit} may.`,
      levers: () => [{ turn: `axes.${hoist}.dock.catch`, toward: 'higher', means: 'a wider mouth, and trials anew' }],
    });
  },
};
