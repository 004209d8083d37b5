/** From readings at a supply: what must hold whatever the readings. */
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import { railSag, sagFromVolts } from '../../calc/bench.ts';

describe('sag from volts at two currents', () => {
  it('finds the resistance in series with a stiff source, whatever the currents', () => {
    const [source, series] = [24.1, 0.045];
    for (const [light, heavy] of [
      [0, 4],
      [0.5, 3.3],
    ] as const) {
      const at = (current: number) => source - series * current;
      expect(sagFromVolts({ lightVolts: at(light), heavyVolts: at(heavy), light, heavy, scale: 1 })).toBeCloseTo(
        series,
        12,
      );
    }
  });

  it('refuses two currents that are one', () => {
    const volts = { lightVolts: 24, heavyVolts: 24, scale: 1 };
    expect(() => sagFromVolts({ ...volts, light: 2, heavy: 2 })).toThrow(OutsideRange);
  });
});

it('a rail loses twice as much at twice the current', () => {
  expect(railSag({ sag: 0.05, current: 4 })).toBeCloseTo(2 * railSag({ sag: 0.05, current: 2 }), 12);
});
