/** Standing by for weeks, and what a week of power costs. */
import { NotStated, atMost } from '../../../kernel/index.ts';
import { energyPrice } from '../calc/energy.ts';
import { standingByPower, weekEnergy } from '../facts.ts';
import { drivesOff, type SupplyCheck } from './common.ts';

const off = (book: Parameters<typeof drivesOff>[0]) => drivesOff(book, Object.keys(book.drivers ?? {}));

export const standingBy: SupplyCheck = {
  code: 'SUPPLY-180',
  asks: 'Does standing by take no more from the socket than is allowed?',
  subjects: (book) =>
    book.energy?.['standing-by'] === undefined ? [] : [{ designations: [], at: 'energy.standing-by' }],
  run: (context) => {
    const limit = context.book.energy?.['standing-by'];
    if (limit === undefined) return null;
    return atMost(context.get(standingByPower, 'site'), limit, {
      says: ({ demand, limit: most }) =>
        `While nobody plays the machine takes ${demand} from the socket; ${most} is allowed.`,
      levers: () => off(context.book),
    });
  },
};

export const weekCost: SupplyCheck = {
  code: 'SUPPLY-185',
  asks: 'Does a week of power cost no more than is allowed?',
  subjects: (book) => (book.energy?.week === undefined ? [] : [{ designations: [], at: 'energy.week' }]),
  run: (context) => {
    const limit = context.book.energy?.week;
    if (limit === undefined) return null;
    const price = context.book.site?.['energy-price'];
    if (price === undefined) throw new NotStated(['site.energy-price']);
    return atMost(energyPrice.work({ energy: context.get(weekEnergy, 'site'), price }), limit, {
      says: ({ demand, limit: most }) => `A week of power costs ${demand}; ${most} is allowed.`,
      levers: () => off(context.book),
    });
  },
};
