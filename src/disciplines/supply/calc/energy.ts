/** Energy over days and weeks, and its price. */
import { formula, type Take } from '../../../kernel/index.ts';
import { power } from './takes.ts';

const energy = {
  symbol: 'E',
  of: 'energy',
  means: 'energy',
  from: 0,
  because: 'what is given back is reckoned apart',
  typical: [1e5, 2e8],
} as const satisfies Take;

/**
 * Energy of a power over a time.
 *
 * E = P·t
 * @param power P [W]
 * @param time t [s]
 * @returns E [J]
 * @throws OutsideRange for negative time
 */
export const energyOver = formula({
  name: 'energy-over-time',
  gives: { symbol: 'E', of: 'energy', means: 'energy' },
  takes: {
    power: { ...power, slope: 'up' },
    time: {
      symbol: 't',
      of: 'time',
      means: 'time',
      from: 0,
      because: 'time goes forward',
      slope: 'up',
      typical: [1, 31557600],
    },
  },
  steps: ({ power: P, time }, step) => step('E', 'P*t', P * time, 'energy'),
  assumes: ['steady mean power'],
  source: [{ id: 'own-derivation', at: 'energy' }],
  checked: [{ kind: 'independent', against: '5 W for a year of 8760 hours are 43.8 kWh' }],
  accuracy: 'exact',
});

/**
 * Price of an energy.
 *
 * c = E·k
 * @param energy E [J]
 * @param price k, for each unit of energy [¤/J]
 * @returns c [¤]
 * @throws OutsideRange for a negative price
 */
export const energyPrice = formula({
  name: 'energy-price',
  gives: { symbol: 'c', of: 'money', means: 'price of the energy' },
  takes: {
    energy: { ...energy, slope: 'up' },
    price: {
      symbol: 'k',
      of: 'money-per-energy',
      means: 'price of energy',
      from: 0,
      because: 'nobody is paid for taking it',
      slope: 'up',
      typical: [3e-8, 2e-7],
    },
  },
  steps: ({ energy: E, price }, step) => step('c', 'E*k', E * price, 'money'),
  assumes: ['one price at all hours'],
  source: [{ id: 'own-derivation', at: 'energy' }],
  checked: [{ kind: 'independent', against: '43.8 kWh at 0.30 for each kWh are 13.14' }],
  accuracy: 'exact',
});

/**
 * Mean power of a machine that is open part of the time and stands by for the rest.
 *
 * P_w = s·P_o + (1 − s)·P_c
 * @param share s, share of the time that it is open [-]
 * @param open P_o, mean power while open [W]
 * @param closed P_c, power while closed [W]
 * @returns P_w [W]
 * @throws OutsideRange for a share above all
 */
export const openAndClosed = formula({
  name: 'open-and-closed-power',
  gives: { symbol: 'P_w', of: 'power', means: 'mean power day and night' },
  takes: {
    share: {
      symbol: 's',
      of: 'duty',
      means: 'share of the time that the machine is open',
      from: 0,
      to: 1,
      because: 'a day has 24 hours',
      slope: 'either',
      typical: [0.2, 0.6],
    },
    open: { ...power, symbol: 'P_o', means: 'mean power while open', slope: 'up' },
    closed: { ...power, symbol: 'P_c', means: 'power while closed', slope: 'up', typical: [1, 10] },
  },
  steps: ({ share, open, closed }, step) =>
    step('P_w', 's*P_o + (1 - s)*P_c', share * open + (1 - share) * closed, 'power'),
  assumes: ['every day alike'],
  source: [{ id: 'own-derivation', at: 'energy' }],
  checked: [{ kind: 'law', against: 'a mean lies between its parts' }],
  accuracy: 'exact',
});
