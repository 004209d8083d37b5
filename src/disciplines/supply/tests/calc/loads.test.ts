import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../../../../kernel/index.ts';
import {
  currentShare,
  currentTogether,
  heatingCurrent,
  inputPower,
  loadPower,
  meanPower,
  powerTogether,
  sharesTogether,
} from '../../calc/loads.ts';
import { energyOver, energyPrice, openAndClosed } from '../../calc/energy.ts';
import { efficiencyExamples, playOfServo, yearOfStandby } from '../references/supply.ts';

const YEAR = 8760 * 3600;
const KILOWATT_HOUR = 3.6e6;

describe('loads', () => {
  it('add up', () => {
    expect(currentTogether({ currents: [0.2, 0.12, 0.3] })).toBeCloseTo(0.62, 12);
    expect(powerTogether({ powers: [1, 2, 3.5] })).toBe(6.5);
    expect(loadPower({ rail: 5, current: 0.62 })).toBeCloseTo(3.1, 12);
    expect(currentShare({ demand: 2, limit: 4 })).toBe(0.5);
    expect(currentShare({ demand: 2, limit: 0 })).toBeGreaterThan(1e6);
    expect(sharesTogether({ shares: [0.5, 0.25, 0.125] })).toBe(0.875);
    expect(() => currentTogether({ currents: [0.2, -0.1] })).toThrow(OutsideRange);
  });

  it('heat by the square of their currents over the modes, as the reference says', () => {
    const { duties, currents, rms } = playOfServo;
    expect(heatingCurrent({ duties, currents })).toBeCloseTo(rms, 5);
    expect(heatingCurrent({ duties: [0.05, 0.45], currents })).toBeCloseTo(rms, 5);
    expect(() => heatingCurrent({ duties: [0, 0], currents })).toThrow(OutsideRange);
  });

  it('average over modes by their time, whether the shares add up to one or not', () => {
    expect(meanPower({ duties: [0.25, 0.75], powers: [40, 4] })).toBe(13);
    expect(meanPower({ duties: [0.1, 0.3], powers: [40, 4] })).toBeCloseTo(13, 12);
    expect(() => meanPower({ duties: [0, 0], powers: [40, 4] })).toThrow(OutsideRange);
    expect(() => meanPower({ duties: [0.5, 0.5], powers: [40] })).toThrow(OutsideRange);
  });
});

describe('a supply', () => {
  it.each(efficiencyExamples)('takes $input W for 60 W', ({ output, efficiency, input }) => {
    expect(inputPower({ output, efficiency })).toBeCloseTo(input, 2);
  });

  it('takes something for itself, and never gives more than it takes', () => {
    const input = inputPower({ output: 42.5, efficiency: 0.85, idle: 0.5 });
    expect(input).toBeCloseTo(50.5, 12);
    expect(() => inputPower({ output: 1, efficiency: 1.01 })).toThrow(OutsideRange);
  });
});

describe('standing by', () => {
  it('costs what the reference says', () => {
    const energy = energyOver({ power: yearOfStandby.power, time: YEAR });
    expect(energy / KILOWATT_HOUR).toBeCloseTo(yearOfStandby.kilowattHours, 1);
    expect(energyPrice({ energy, price: yearOfStandby.price / KILOWATT_HOUR })).toBeCloseTo(yearOfStandby.cost, 2);
    const half = energyOver({ power: yearOfStandby.half.power, time: YEAR });
    expect(energyPrice({ energy: half, price: yearOfStandby.price / KILOWATT_HOUR })).toBeCloseTo(
      yearOfStandby.half.cost,
      3,
    );
  });

  it('weighs open and closed hours', () => {
    expect(openAndClosed({ share: 9 / 24, open: 20, closed: 4 })).toBe(10);
  });
});
