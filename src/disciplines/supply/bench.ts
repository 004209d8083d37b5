/** What of supplies can be measured at the bench. */
import { ammeter, benchChecks, voltmeter, type BenchTest } from '../../contract/index.ts';
import type { Formula } from '../../kernel/index.ts';
import { sagFromVolts } from './calc/bench.ts';
import type { SupplyBook } from './schema.ts';

/** The error that goes with the reading is the same both times, and stands apart. */
const twice = { share: 0 } as const;

export const bench: readonly BenchTest[] = [
  {
    name: 'rail-sag',
    fact: 'supplies.*.rails.*.sag',
    of: 'resistance',
    title: 'sag for each ampere',
    readings: {
      lightVolts: {
        ...voltmeter({ means: 'volts at the smaller current', example: '24.12 V' }),
        ...twice,
        rest: 0.005,
      },
      light: { ...ammeter({ means: 'smaller current', example: '0.5 A' }), ...twice },
      heavyVolts: {
        ...voltmeter({ means: 'volts at the greater current', example: '23.94 V' }),
        ...twice,
        rest: 0.005,
      },
      heavy: { ...ammeter({ means: 'greater current', example: '4 A' }), ...twice },
    },
    gives: {
      by: 'formula',
      formula: sagFromVolts as unknown as Formula,
      open: {
        scale: {
          low: 0.985,
          high: 1.016,
          means: 'true over read of what both meters share: 0.5 % of volts, 1 % of ampere',
        },
      },
    },
    times: [3, 10],
    procedure: [
      'One meter in series with a lamp or power resistor, the other at the terminals of the supply on its low-voltage side. Keep both on one range.',
      'Read both with a small load, then with one near the limit of the rail, each within ten seconds.',
      'No motor, and nothing that switches on and off by itself.',
    ],
    cautions: [
      'Only the low-voltage side: mains is for people licensed for it, in approved enclosures, and nobody opens that side here.',
      'Pull the plug, wait, and measure that capacitors are discharged before you touch or connect anything.',
      'Lamps and resistors get hot enough to burn skin and wood; a short circuit behind a strong supply is a fire: fuse in place.',
    ],
    shows: ['.limit', '.volts'],
  },
];

export const readingChecks = benchChecks<SupplyBook>(bench, { above: 'SUPPLY-910', below: 'SUPPLY-911' });
