import { onRail, voltsAt } from '../calc/layout.ts';
import { need } from '../../../contract/index.ts';
import { atMost, constant, greatest } from '../../../kernel/index.ts';
import { railSag } from '../calc/bench.ts';
import { modesOf, railsOf, supplyOf } from '../calc/book.ts';
import { allowedDrop } from '../calc/drop.ts';

import { inMode, railPeak } from '../facts.ts';
import { anotherSupply, membersLess, nameIn, type SupplyCheck } from './common.ts';

const FIVE_PERCENT = constant(0.05, 'ratio', 'share of the voltage that may be lost on the way', {
  id: 'voltage-drop-limits',
});

export const railKeepsVolts: SupplyCheck = {
  code: 'SUPPLY-017',
  asks: 'Does each rail whose sag was measured keep its volts when everything starts and stalls at once?',
  subjects: (book) =>
    railsOf(book)
      .filter(([supply, rail]) => book.supplies?.[supply]?.rails?.[rail]?.sag !== undefined)
      .map(([supply, rail]) => ({ designations: [rail], at: `supplies.${supply}.rails.${rail}` })),
  run: (context, subject) => {
    const rail = nameIn(subject);
    const { book } = context;
    const { sag } = need(need(need(book, 'supplies').supplies[supplyOf(book, rail)]!, 'rails').rails[rail]!, 'sag');
    const current = greatest(...modesOf(book).map((mode) => context.get(railPeak, inMode(rail, mode))));
    return atMost(
      railSag.work({ sag, current }),
      allowedDrop.work({ rail: voltsAt(context, rail), share: FIVE_PERCENT }),
      {
        says: ({ demand, limit }) =>
          `Rail ${rail} sags by up to ${demand} when everything starts and stalls at once; 5 % of it is ${limit}.`,
        levers: () => [...membersLess(onRail(context, rail)), anotherSupply(book, rail)],
      },
    );
  },
};
